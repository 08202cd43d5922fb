/* SPDX-License-Identifier: MIT */
/* Refusing, and a fault as text. */
#include "base/fault.h"

#include <string.h>

#include "base/number.h"

const char *tside_status_text(int status)
{
    switch (status) {
    case TSIDE_OK: return "ok";
    case TSIDE_OUT_OF_BOUNDS: return "out of bounds";
    case TSIDE_CONTRADICTS: return "contradicts";
    case TSIDE_OUT_OF_REACH: return "out of reach";
    case TSIDE_NOT_MODELLED: return "not modelled";
    case TSIDE_UNREADABLE: return "unreadable";
    case TSIDE_TOO_SMALL: return "too small";
    case TSIDE_NOT_FOUND: return "not found";
    default: return "unknown status";
    }
}

void tside_i_path(char *to, const char *text)
{
    size_t length = strlen(text);
    if (length >= TSIDE_PATH_SIZE)
        length = TSIDE_PATH_SIZE - 1;
    memcpy(to, text, length);
    to[length] = '\0';
}

tside_status tside_i_refuse_by(tside_fault *fault, const tside_i_refusal *refusal, double value, double bound,
                               double gap)
{
    if (fault) {
        fault->status = refusal->status;
        fault->relation = refusal->relation;
        tside_i_path(fault->field, refusal->field);
        tside_i_path(fault->other, refusal->other);
        fault->unit = refusal->unit;
        fault->reason = refusal->reason;
        fault->index = -1;
        fault->value = value;
        fault->bound = bound;
        fault->gap = gap;
        fault->remedy_given = 0;
        fault->remedy = 0;
    }
    return refusal->status;
}

tside_status tside_i_refuse_value(tside_fault *fault, tside_status status, const char *field, const char *other,
                                  const char *reason, const char *unit, double value, tside_relation relation,
                                  double bound, double gap)
{
    const tside_i_refusal refusal = {status, relation, field, other, reason, unit};
    return tside_i_refuse_by(fault, &refusal, value, bound, gap);
}

tside_status tside_i_refuse(tside_fault *fault, tside_status status, const char *field, const char *other,
                            const char *reason)
{
    return tside_i_refuse_value(fault, status, field, other, reason, "1", 0, TSIDE_NO_RELATION, 0, 0);
}

/* The relation of what is measured the other way. */
static const tside_relation turned[] = {[TSIDE_BELOW] = TSIDE_ABOVE,
                                        [TSIDE_NOT_ABOVE] = TSIDE_NOT_BELOW,
                                        [TSIDE_ABOVE] = TSIDE_BELOW,
                                        [TSIDE_NOT_BELOW] = TSIDE_NOT_ABOVE};

tside_status tside_i_refuse_told(tside_fault *fault, tside_status status, const tside_i_told *told, const char *other,
                                 const char *reason, double value, tside_relation relation, double bound, double gap)
{
    if (told->chosen)
        return tside_i_refuse(fault, status, told->field, other, reason);
    if (told->inboard)
        return tside_i_refuse_value(fault, status, told->field, other, reason, "m", told->from - value,
                                    turned[relation], told->from - bound, gap);
    return tside_i_refuse_value(fault, status, told->field, other, reason, "m", value - told->from, relation,
                                bound - told->from, gap);
}

tside_status tside_i_told_given(tside_fault *fault, const tside_i_told *told, const char *field, double says)
{
    if (told->inboard || says > 0)
        return TSIDE_OK;
    return tside_i_refuse_value(fault, TSIDE_OUT_OF_BOUNDS, field, "", says < 0 ? "" : TSIDE_I_MISSING, "m", says,
                                TSIDE_NOT_ABOVE, 0, 0);
}

void tside_i_remedy(tside_fault *fault, double least)
{
    if (fault) {
        fault->remedy_given = 1;
        fault->remedy = least;
    }
}

tside_status tside_i_bound(tside_fault *fault, const char *field, const char *unit, double value,
                           tside_relation relation, double bound)
{
    return tside_i_refuse_value(fault, TSIDE_OUT_OF_BOUNDS, field, "", "", unit, value, relation, bound, 0);
}

tside_status tside_i_argument(tside_fault *fault, const char *name, const char *unit, double value, double low,
                              int open)
{
    if (!isfinite(value))
        return tside_i_bound(fault, name, unit, 0, TSIDE_NOT_FINITE, 0);
    if (value < low || (open && value == low))
        return tside_i_bound(fault, name, unit, value, open ? TSIDE_NOT_ABOVE : TSIDE_BELOW, low);
    if (value > TSIDE_MOST)
        return tside_i_bound(fault, name, unit, value, TSIDE_ABOVE, TSIDE_MOST);
    return TSIDE_OK;
}

tside_status tside_i_whole(tside_fault *fault, const char *name, int value, int least, int most)
{
    if (value < least)
        return tside_i_bound(fault, name, "1", value, TSIDE_BELOW, least);
    if (value > most)
        return tside_i_bound(fault, name, "1", value, TSIDE_ABOVE, most);
    return TSIDE_OK;
}

/* Returns 1 if the path names an element, as "keep_outs[2].inner" does. A caller's fault may lack the closing zero. */
static int put_path(tside_i_text *text, const char *path)
{
    int i, element = 0;
    for (i = 0; i < TSIDE_PATH_SIZE && path[i]; i++) {
        element |= path[i] == '[';
        tside_i_put_character(text, path[i]);
    }
    return element;
}

static void put_after(tside_i_text *text, const char *separator, const char *more)
{
    if (more && *more) {
        tside_i_put(text, separator);
        tside_i_put(text, more);
    }
}

static void put_quantity(tside_i_text *text, double value, const char *unit)
{
    tside_i_put_number(text, value);
    if (unit && strcmp(unit, "1") != 0)
        put_after(text, " ", unit);
}

static void put_ordinal(tside_i_text *text, const char *what, int index)
{
    tside_i_put(text, what);
    tside_i_put_whole(text, (uint64_t)index + 1);
}

/* "roll.core: ", "x (number 3): ", "at character 5: " */
static void put_place(tside_i_text *text, const tside_fault *fault)
{
    const int unreadable = fault->status == TSIDE_UNREADABLE;
    if (*fault->field) {
        if (!put_path(text, fault->field) && fault->index >= 0 && !unreadable) {
            put_ordinal(text, " (number ", fault->index);
            tside_i_put_character(text, ')');
        }
        tside_i_put(text, ": ");
    }
    if (unreadable && fault->index >= 0) {
        put_ordinal(text, "at character ", fault->index);
        tside_i_put(text, ": ");
    }
}

/* What stands between a value and the bound it broke; NULL where there is no such bound. */
static const char *broken(const tside_fault *fault)
{
    switch (fault->relation) {
    case TSIDE_BELOW: return " is below ";
    case TSIDE_NOT_ABOVE: return " is not above ";
    case TSIDE_ABOVE: return " is above ";
    case TSIDE_NOT_BELOW: return " must be below ";
    default: return NULL;
    }
}

/* "-0.02 m is not above 0 m" */
static void put_bound(tside_i_text *text, const tside_fault *fault)
{
    put_quantity(text, fault->value, fault->unit);
    tside_i_put(text, broken(fault));
    put_quantity(text, fault->bound, fault->unit);
    put_after(text, ": ", fault->reason);
}

/* "; the greatest that fits is 2 m, 1 m is missing; or stand_off of at least 3 m", "; no value of it fits" */
static void put_fit(tside_i_text *text, const tside_fault *fault)
{
    const int greatest = fault->relation == TSIDE_ABOVE || fault->relation == TSIDE_NOT_BELOW;
    if (fault->relation == TSIDE_NONE_FITS) {
        tside_i_put(text, "; no value of it fits");
    } else {
        tside_i_put(text, greatest ? "; the greatest that fits is " : "; the least that fits is ");
        put_quantity(text, fault->bound, fault->unit);
    }
    if (fault->gap < 0 || fault->gap > 0) {
        tside_i_put(text, ", ");
        put_quantity(text, fabs(fault->gap), fault->unit);
        tside_i_put(text, fault->gap < 0 ? " is missing" : " is left");
    }
    if (fault->remedy_given) {
        tside_i_put(text, "; or ");
        put_path(text, fault->other);
        tside_i_put(text, " of at least ");
        put_quantity(text, fault->remedy, fault->unit);
    }
}

/* "3 m contradicts hip: why; the greatest that fits is 2 m", "3 m is out of reach (hip): why; ..." */
static void put_conflict(tside_i_text *text, const tside_fault *fault)
{
    const int contradicts = fault->status == TSIDE_CONTRADICTS,
              of_value = broken(fault) || fault->relation == TSIDE_NONE_FITS;
    if (of_value) {
        put_quantity(text, fault->value, fault->unit);
        tside_i_put(text, contradicts ? " " : " is ");
    }
    tside_i_put(text, tside_status_text((int)fault->status));
    if (*fault->other) {
        tside_i_put(text, contradicts ? " " : " (");
        put_path(text, fault->other);
        tside_i_put(text, contradicts ? "" : ")");
    }
    put_after(text, ": ", fault->reason);
    if (of_value)
        put_fit(text, fault);
}

/* The reason, or the status where there is none, and the names that would do. */
static void put_reason(tside_i_text *text, const tside_fault *fault)
{
    tside_i_put(text, fault->reason && *fault->reason ? fault->reason : tside_status_text((int)fault->status));
    if (*fault->other) {
        tside_i_put(text, " (");
        put_path(text, fault->other);
        tside_i_put_character(text, ')');
    }
}

size_t tside_fault_text(const tside_fault *fault, char *buffer, size_t size)
{
    tside_i_text text = tside_i_empty(buffer, size);
    if (!fault)
        return 0;
    put_place(&text, fault);
    if (fault->status == TSIDE_UNREADABLE) {
        put_reason(&text, fault);
    } else if (fault->relation == TSIDE_NOT_FINITE) {
        tside_i_put(&text, "not a finite number");
    } else if (fault->relation == TSIDE_NOT_ONE_OF) {
        tside_i_put_number(&text, fault->value);
        tside_i_put(&text, " is not one of the choices 0 to ");
        tside_i_put_number(&text, fault->bound);
    } else if (fault->status == TSIDE_CONTRADICTS || fault->relation == TSIDE_NONE_FITS) {
        put_conflict(&text, fault);
    } else if (!broken(fault)) {
        put_reason(&text, fault);
    } else if (fault->status == TSIDE_OUT_OF_REACH || fault->status == TSIDE_NOT_MODELLED) {
        put_conflict(&text, fault);
    } else {
        put_bound(&text, fault);
    }
    return text.length;
}
