/* SPDX-License-Identifier: MIT */
/* Runs every suite that Makefile.am lists; suites.h is made from that list. */
#include <check.h>
#include <stdlib.h>

#define SUITE(name) Suite *name##_suite(void);
#include "suites.h"
#undef SUITE

int main(void)
{
    SRunner *runner = srunner_create(NULL);
    int failed;

#define SUITE(name) srunner_add_suite(runner, name##_suite());
#include "suites.h"
#undef SUITE
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
