/* SPDX-License-Identifier: MIT */
#include <check.h>
Suite *takeoff_suite(void);
Suite *takeoff_suite(void) { return suite_create("takeoff"); }
