/* SPDX-License-Identifier: MIT */
/*
 * Lengths as text for a tape measure, each time the nearest. Source: the yard and pound agreement of 1959; derivation.
 */
#include <string.h>
#include <tunnelside/length.h>

#include "base/field.h"
#include "base/number.h"
#include "base/unit.h"

enum { LENGTH_SIZE = 48, DECIMALS = 6, FINEST = 64 };
#define FARTHEST 1e6 /* m */

/*
 * "0", "11", "11 15/16" or "15/16": so many parts, of which part make an inch. After feet the whole inches stand too
 * where there is none: "0 15/16", so that a fraction is not read as one of a foot.
 */
static void put_inches(tside_i_text *text, uint64_t parts, unsigned part, int after_feet)
{
    uint64_t over = parts % part, under = part;
    const int whole = parts >= part || !over || after_feet;
    if (whole)
        tside_i_put_whole(text, parts / part);
    if (!over)
        return;
    if (whole)
        tside_i_put_character(text, ' ');
    for (; over % 2 == 0; over /= 2)
        under /= 2;
    tside_i_put_whole(text, over);
    tside_i_put_character(text, '/');
    tside_i_put_whole(text, under);
}

static void put_length(tside_i_text *text, double metres, tside_style style, int part)
{
    const int inches = style == TSIDE_INCHES || style == TSIDE_FEET_AND_INCHES;
    const unsigned fineness = inches ? (unsigned)part : 1;
    tside_i_exact size;
    uint64_t parts; /* of the finest part, in the end */
    int feet;
    tside_i_exact_from(&size, fabs(metres));
    if (inches)
        tside_i_exact_scale(&size, E4 * fineness, INCH);
    else
        tside_i_exact_power(&size, style == TSIDE_MILLIMETRES ? part + 3 : part);
    parts = tside_i_exact_nearest(&size);
    if (parts && metres < 0)
        tside_i_put_character(text, '-');
    if (!inches) {
        tside_i_put_decimal(text, parts, part);
        tside_i_put(text, style == TSIDE_MILLIMETRES ? " mm" : " m");
        return;
    }
    feet = style == TSIDE_FEET_AND_INCHES && parts >= 12 * fineness;
    if (feet) {
        tside_i_put_whole(text, parts / (12 * fineness));
        tside_i_put(text, " ft ");
        parts %= 12 * fineness;
    }
    put_inches(text, parts, fineness, feet);
    tside_i_put(text, " in");
}

static tside_status check_part(tside_style style, int part, tside_fault *fault)
{
    if (style == TSIDE_INCHES || style == TSIDE_FEET_AND_INCHES) {
        if (part < 1 || part > FINEST || FINEST % part)
            REFUSE(fault, TSIDE_OUT_OF_BOUNDS, "part", "1, 2, 4, 8, 16, 32, 64", "no such fraction of an inch", "1",
                   part, TSIDE_NO_RELATION, 0, 0);
        return TSIDE_OK;
    }
    return tside_i_whole(fault, "part", part, 0, DECIMALS);
}

tside_status tside_length_write(double metres, tside_style style, int part, char *buffer, size_t size, size_t *needed,
                                tside_fault *fault)
{
    char whole[LENGTH_SIZE];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    if (!isfinite(metres))
        return tside_i_bound(fault, "metres", "m", 0, TSIDE_NOT_FINITE, 0);
    if (metres > FARTHEST)
        return tside_i_bound(fault, "metres", "m", metres, TSIDE_ABOVE, FARTHEST);
    if (metres < -FARTHEST)
        return tside_i_bound(fault, "metres", "m", metres, TSIDE_BELOW, -FARTHEST);
    if ((int)style < TSIDE_FEET_AND_INCHES || (int)style > TSIDE_METRES)
        return tside_i_bound(fault, "style", "1", (int)style, TSIDE_NOT_ONE_OF, TSIDE_METRES);
    TRY(check_part(style, part, fault));
    put_length(&text, metres, style, part);
    return tside_i_answer_text(whole, buffer, size, needed, fault);
}
