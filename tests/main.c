/* SPDX-License-Identifier: MIT */
/* Runs every suite that Makefile.am lists; suites.h is made from that list. */
#include <check.h>
#include <stdlib.h>

#include "heard.h"

#define SUITE(name) Suite *name##_suite(void);
#include "suites.h"
#undef SUITE

int main(void)
{
    SRunner *runner = srunner_create(NULL);
    int failed, all = !getenv("CK_RUN_SUITE") && !getenv("CK_RUN_CASE");

#define SUITE(name) srunner_add_suite(runner, name##_suite());
#include "suites.h"
#undef SUITE
    heard_nothing();
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    if (all && !failed)
        failed = heard_wrong();
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
