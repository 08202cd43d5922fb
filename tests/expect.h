/* SPDX-License-Identifier: MIT */
/* What tests expect of a call, and chance to try it with. */
#ifndef TUNNELSIDE_EXPECT_H
#define TUNNELSIDE_EXPECT_H

#include <stddef.h>
#include <stdint.h>

#include <tunnelside/fault.h>

#define PI 3.14159265358979323846
#define GRAVITY 9.80665 /* m/s2, standard: ISO 80000-3 */

/* --- chance --- */

typedef struct dice {
    uint64_t state;
} dice;

double dice_between(dice *d, double low, double high);
int dice_below(dice *d, int limit);

/*
 * A test over many random sides, in one process: FOR_SIDES(name, count) { ... } gets each one's number. Needs check.h.
 */
#define FOR_SIDES(name, count) \
    static void name##_on(int number); \
    START_TEST(name) \
    { \
        for (int each = 0; each < (count); each++) \
            name##_on(each); \
    } \
    END_TEST \
    static void name##_on(int number)

/* Fails unless got is as near to want as it must be; NaN never is. */
#define NEAR(got, want, tolerance, what, number) check_near(__FILE__, __LINE__, got, want, tolerance, what, number)
void check_near(const char *file, int line, double got, double want, double tolerance, const char *what, int number);

/* Fails unless the call succeeds: ANSWERS(tside_x(..., &fault)) needs a tside_fault fault. */
#define ANSWERS(call) \
    do { \
        if ((call) != TSIDE_OK) \
            check_answered(__FILE__, __LINE__, &fault); \
    } while (0)
void check_answered(const char *file, int line, const tside_fault *fault);

/* Fails unless the call refuses with this status, field and relation, and leaves its output as it was. */
#define REFUSES(call, output, status, field, relation) \
    do { \
        memset(&output, 0xa5, sizeof output); \
        check_refused(__FILE__, __LINE__, call, &fault, status, field, relation, &output, sizeof output); \
        heard_held(); \
    } while (0)
void check_refused(const char *file, int line, tside_status got, const tside_fault *fault, tside_status status,
                   const char *field, tside_relation relation, const void *output, size_t size);

/*
 * Whether a fault's gap is what lacks between its value and its bound; some reasons speak of another one, and where
 * none does it is 0.
 */
int gap_stands(const tside_fault *fault);

#endif
