/* SPDX-License-Identifier: MIT */
/*
 * Which statuses the public functions were heard to return while the tests ran, and to which of them an assertion held
 * the very call: those that their comments name, no fewer and no more. Every test includes this by statuses.h, a flag
 * of the compiler.
 */
#ifndef TUNNELSIDE_HEARD_H
#define TUNNELSIDE_HEARD_H

#include <check.h>

#include <tunnelside.h>

/* Forgets what was heard before. */
void heard_nothing(void);

/* How many pairs of function and status no test held a call to though documented, or heard though not; says which. */
int heard_wrong(void);

/* How many calls were heard so far. */
int heard_calls(void);

/*
 * Whether a fault of the last call has the bound that its comment gives an argument ("from 0 to 1000"): 1 too where
 * what is refused is no number given to it, or the range has none.
 */
int heard_range(const tside_fault *fault);

/* The last call was held to what it returned: it would fail a test to return another status. */
void heard_held(void);

/* The same if a call was made since the first so many, and the words of the assertion name the status. */
void heard_named(int calls, const char *words);

/* Check's assertions, which hold a call within them to a status named within them. */
#undef ck_assert
#define ck_assert(expr) \
    do { \
        const int heard_before = heard_calls(); \
        ck_assert_msg(expr, NULL); \
        heard_named(heard_before, #expr); \
    } while (0)
#undef ck_assert_int_eq
#define ck_assert_int_eq(X, Y) \
    do { \
        const int heard_before = heard_calls(); \
        _ck_assert_int(X, ==, Y); \
        heard_named(heard_before, #Y); \
    } while (0)

#endif
