/* SPDX-License-Identifier: MIT */
/* Refusing, as the library's files share it. */
#ifndef TUNNELSIDE_I_FAULT
#define TUNNELSIDE_I_FAULT

#include <math.h>

#include <tunnelside/fault.h>

/* --- refusing: each fills the fault, if there is one, and returns the status --- */

tside_status tside_i_bound(tside_fault *fault, const char *field, const char *unit, double value,
                           tside_relation relation, double bound);
tside_status tside_i_refuse(tside_fault *fault, tside_status status, const char *field, const char *other,
                            const char *reason);
tside_status tside_i_refuse_value(tside_fault *fault, tside_status status, const char *field, const char *other,
                                  const char *reason, const char *unit, double value, tside_relation relation,
                                  double bound, double gap);

/* What of a refusal is constant: told once, in a table of the file's, so that the code that refuses is small. */
typedef struct tside_i_refusal {
    tside_status status;
    tside_relation relation;
    const char *field, *other, *reason, *unit;
} tside_i_refusal;

tside_status tside_i_refuse_by(tside_fault *fault, const tside_i_refusal *refusal, double value, double bound,
                               double gap);

/* Refuses and returns; all but value, bound and gap are constants. */
#define REFUSE(fault, status, field, other, reason, unit, value, relation, bound, gap) \
    do { \
        static const tside_i_refusal refusal = {status, relation, field, other, reason, unit}; \
        return tside_i_refuse_by(fault, &refusal, value, bound, gap); \
    } while (0)

/*
 * How a length was told: by a field that measures it from somewhere, outboard or up, or the other way where inboard; or
 * where chosen, by a choice and no number.
 */
typedef struct tside_i_told {
    const char *field;
    double from; /* m */
    int chosen, inboard;
} tside_i_told;

/* The length itself, of what its field says. */
static inline double tside_i_of_told(const tside_i_told *told, double says)
{
    return told->inboard ? told->from - says : told->from + says;
}

/* Refuses a length as it was told. value, bound: m, of the length itself. */
tside_status tside_i_refuse_told(tside_fault *fault, tside_status status, const tside_i_told *told, const char *other,
                                 const char *reason, double value, tside_relation relation, double bound, double gap);

/* Refuses a required level place that is missing: from the centreline it lies outboard. says: m, as told. */
tside_status tside_i_told_given(tside_fault *fault, const tside_i_told *told, const char *field, double says);

/* Why a required number that is 0 is refused. */
#define TSIDE_I_MISSING "it is required, and 0 says that it is missing"

/*
 * What a refusal calls that which a function was given beside the structure it refuses: its own arguments, or the
 * fields of a side that they come from.
 */
typedef struct tside_i_names {
    tside_i_told eye_x, eye_y;
    double ground;      /* m, height from which an extender's member and crossing are taped */
    tside_i_told level; /* how the level places of an extender's member are told; it has no field of its own */
    const char *offset, *bow, *travel;
} tside_i_names;

/* No argument in SI units is as large, and products of a few such do not overflow. */
#define TSIDE_MOST 1e15

/* Refuses an argument that is not finite, below low (not above, where open), or above TSIDE_MOST. */
tside_status tside_i_argument(tside_fault *fault, const char *name, const char *unit, double value, double low,
                              int open);

/* Refuses an argument that is a whole number and not from least to most. */
tside_status tside_i_whole(tside_fault *fault, const char *name, int value, int least, int most);

/*
 * Puts a path before the fault's field: "guide.margin" within "drive_end" is "drive_end.guide.margin"; and before the
 * other field, unless that is one of the side's own, such as "stops".
 */
tside_status tside_i_within(tside_fault *fault, const char *group, tside_status status);

/* The same for the i-th element of a list, from 0, which it also notes as the fault's index. */
tside_status tside_i_within_element(tside_fault *fault, int i, tside_status status);

/* Copies as much of a text as fits, with its closing zero; the destination has TSIDE_PATH_SIZE characters. */
void tside_i_path(char *to, const char *text);

/* Adds to a refusal, if there is a fault, the least value of the other field that would do as well. */
void tside_i_remedy(tside_fault *fault, double least);

/* Returns from the calling function unless the status is TSIDE_OK. */
#define TRY(call) \
    do { \
        tside_status try_status = (call); \
        if (try_status != TSIDE_OK) \
            return try_status; \
    } while (0)

#endif
