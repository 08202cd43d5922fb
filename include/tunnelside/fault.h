/* SPDX-License-Identifier: MIT */
/* Statuses and faults: the one way every function of the library says no. */
#ifndef TUNNELSIDE_FAULT_H
#define TUNNELSIDE_FAULT_H

#include <stddef.h>

#if defined(__GNUC__)
#define TSIDE_API __attribute__((visibility("default")))
#define TSIDE_NODISCARD \
    __attribute__(( \
        warn_unused_result)) /* of what returns a status: after a refusal there is no answer */
#else
#define TSIDE_API
#define TSIDE_NODISCARD
#endif

#ifdef __cplusplus
extern "C" {
#endif

/*
 * What a function returns: what to do, not what happened inside. A number given beside structures
 * is out of bounds too where it is not finite, or above 1e15: no quantity in SI units is as large
 * here.
 */
typedef enum tside_status {
    TSIDE_OK = 0,
    TSIDE_OUT_OF_BOUNDS, /* one value lies outside its bounds: mend that value */
    TSIDE_CONTRADICTS,   /* two values, each in bounds, contradict: mend either */
    TSIDE_OUT_OF_REACH,  /* no geometry satisfies what is asked: ask for less */
    TSIDE_NOT_MODELLED,  /* a real arrangement that the library does not compute; of any
                          * function, that its answer would be no finite number: the fault names
                          * which */
    TSIDE_UNREADABLE,    /* text that cannot be read: index tells where */
    TSIDE_TOO_SMALL,     /* the caller's buffer is too small: the needed size is written */
    TSIDE_NOT_FOUND      /* no such name, size, series or field */
} tside_status;

/* How a value stands to the bound it broke. */
typedef enum tside_relation {
    TSIDE_NO_RELATION = 0,
    TSIDE_BELOW,      /* value < bound, and the bound itself is allowed */
    TSIDE_NOT_ABOVE,  /* value <= bound, and must be above it */
    TSIDE_ABOVE,      /* value > bound, and the bound itself is allowed */
    TSIDE_NOT_BELOW,  /* value >= bound, and must be below it */
    TSIDE_NOT_ONE_OF, /* not one of the choices, which are 0 to bound */
    TSIDE_NOT_FINITE, /* not a number, or infinite */
    TSIDE_NONE_FITS   /* no value within the field's own bounds would do: mend the other field;
                       * bound is 0 */
} tside_relation;

enum { TSIDE_PATH_SIZE = 96 };

/* A refusal, as plain data. Written on failure only; outputs are then untouched. */
typedef struct tside_fault {
    tside_status status;
    tside_relation relation;
    char field[TSIDE_PATH_SIZE]; /* path of the field, such as "roll.core", from the side or from
                                  * the argument that holds it; "" if none */
    char other[TSIDE_PATH_SIZE]; /* the field it contradicts, or the names that would do; "" if
                                  * none */
    const char *unit;            /* unit of value, bound and gap; "1" for a plain number */
    const char *reason;          /* a clause that says why, or "" */
    int index;                   /* which element, point, row or character; else -1 */
    double value;                /* in the unit above, the value refused; 0 if not finite */
    double bound;                /* in that unit, the bound it broke, or the greatest or least
                                  * value that fits, which is within the field's own bounds */
    double gap;                  /* in that unit, how much is left (negative: missing) where the
                                  * reason speaks of a gap; else 0 */
    int remedy_given;            /* 1 where the other field would do as well, with the remedy as
                                  * its least value */
    double remedy;               /* in that unit, the other field's least value that would do as
                                  * well; given with remedy */
} tside_fault;

/*
 * The name of a status, such as "out of bounds".
 * status: any; one that is no status gives "unknown status".
 * Returns a constant string, never NULL.
 * Source: this library's choice of words.
 */
TSIDE_API const char *tside_status_text(int status);

/*
 * The sentence for a fault, such as "roll.core: -0.02 m is not above 0 m". Numbers are written with
 * up to six significant digits, always with a point.
 * fault: optional, any, as a failed call left it; NULL gives an empty sentence.
 * buffer: receives the sentence, as much of it as fits.
 * size: from 0, how much fits with the closing zero; 0 writes nothing.
 * Returns the length of the whole sentence without its closing zero, as snprintf does, so a result
 * not below size means it was cut short.
 * Source: this library's choice of words.
 */
TSIDE_API size_t tside_fault_text(const tside_fault *fault, char *buffer, size_t size);

#ifdef __cplusplus
}
#endif
#endif
