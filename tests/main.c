/* SPDX-License-Identifier: MIT */
/* Runs every suite that Makefile.am lists; suites.h is made from that list. */
#include <check.h>
#include <stdlib.h>
#include <sys/resource.h>

#include "heard.h"

#define SUITE(name) Suite *name##_suite(void);
#include "suites.h"
#undef SUITE

/*
 * A test that hangs is ended by the processor's time that it took, not by the clock's, which runs on while a busy
 * machine does other work. The limit is each process's own.
 */
static void end_what_hangs(void)
{
    enum { SECONDS = 120 }; /* the longest test takes 6 */
    struct rlimit limit;
    if (getrlimit(RLIMIT_CPU, &limit) == 0 && (limit.rlim_cur == RLIM_INFINITY || limit.rlim_cur > SECONDS)) {
        limit.rlim_cur = SECONDS;
        setrlimit(RLIMIT_CPU, &limit);
    }
}

int main(void)
{
    SRunner *runner;
    int failed, all = !getenv("CK_RUN_SUITE") && !getenv("CK_RUN_CASE");

    setenv("CK_DEFAULT_TIMEOUT", "0", 1); /* the clock's */
    runner = srunner_create(NULL);
#define SUITE(name) srunner_add_suite(runner, name##_suite());
#include "suites.h"
#undef SUITE
    heard_nothing();
    if (srunner_fork_status(runner) == CK_FORK)
        end_what_hangs();
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    if (all && !failed)
        failed = heard_wrong();
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
