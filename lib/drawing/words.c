/* SPDX-License-Identifier: MIT */
/* What is written on a drawing: a dimension's length, with a word where its line alone does not tell, and a part's
 * name. */
#include "drawing/words.h"

#include <math.h>

#include <tunnelside/length.h>

#include "base/field.h"

static const char *const part_names[TSIDE_PARTS] = {
    [TSIDE_PART_BOW] = "bow",
    [TSIDE_PART_MEMBER] = "member",
    [TSIDE_PART_BOARD] = "baseboard",
    [TSIDE_PART_RAIL] = "rail",
    [TSIDE_PART_SILL] = "sill",
    [TSIDE_PART_GROUND] = "ground",
    [TSIDE_PART_CURTAIN] = "curtain",
    [TSIDE_PART_BAR] = "bar",
    [TSIDE_PART_ROLL] = "roll",
    [TSIDE_PART_DRIVE] = "drive",
    [TSIDE_PART_COLLAR] = "collar",
    [TSIDE_PART_GUIDE] = "guide",
    [TSIDE_PART_REACH] = "foot's reach",
    [TSIDE_PART_EYE] = "eye",
    [TSIDE_PART_EYE_BOLT] = "eye bolt",
    [TSIDE_PART_EXTENDER] = "extender",
    [TSIDE_PART_HOLE] = "hole",
    [TSIDE_PART_SPACER] = "spacer",
    [TSIDE_PART_KEEP_OUT] = "keep-out",
    [TSIDE_PART_JOINT] = "joint",
    [TSIDE_PART_AXIS] = "turns of the drive",
    [TSIDE_PART_OPENING] = "opening",
    [TSIDE_PART_TORQUE] = "torque",
    [TSIDE_PART_LEAN] = "lean",
    [TSIDE_PART_CURTAIN_EDGE] = "curtain's edge",
    [TSIDE_PART_HIP] = "hip",
};

static const char *const shown_names[] = {
    [TSIDE_SHOWN_ALWAYS] = "",
    [TSIDE_SHOWN_SHUT] = ", shut",
    [TSIDE_SHOWN_OPEN] = ", open",
    [TSIDE_SHOWN_SHUT_AND_OPEN] = ", shut and open",
    [TSIDE_SHOWN_AT_TURNS] = ", at the turns asked",
};

/* Running measures along one piece stand in inches alone. */
static tside_style style_of(const tside_dimension *dimension, tside_tape tape)
{
    if (tape == TSIDE_TAPE_METRIC)
        return TSIDE_MILLIMETRES;
    return dimension->kind == TSIDE_DIMENSION_RUNNING ? TSIDE_INCHES : TSIDE_FEET_AND_INCHES;
}

/* What a value is in metres, by a factor; which way it goes is seen: only its size is written. */
static tside_status put_length(const tside_dimension *dimension, double factor, tside_tape tape, tside_i_text *text,
                               tside_fault *fault)
{
    const double value = dimension->value;
    char length[32];
    tside_fault refused;
    if (tside_length_write(fabs(value) * factor, style_of(dimension, tape), tape == TSIDE_TAPE_METRIC ? 0 : 16, length,
                           sizeof length, NULL, &refused) != TSIDE_OK)
        return tside_i_bound(fault, "value", dimension->tells == TSIDE_TELLS_RUN ? "1" : "m", value,
                             value < 0 ? TSIDE_BELOW : TSIDE_ABOVE, copysign(refused.bound / factor, value));
    tside_i_put(text, length);
    return TSIDE_OK;
}

tside_status tside_i_dimension_words(const tside_dimension *dimension, tside_tape tape, tside_i_text *text,
                                     tside_fault *fault)
{
    switch (dimension->tells) {
    case TSIDE_TELLS_RUN:
        tside_i_put(text, "run ");
        TRY(put_length(dimension, tape == TSIDE_TAPE_METRIC ? 0.3 : 0.3048, tape, text, fault));
        tside_i_put(text, tape == TSIDE_TAPE_METRIC ? " per 300 mm rise" : " per 12 in rise");
        return TSIDE_OK;
    case TSIDE_TELLS_BOW_HOLE_ALONG: tside_i_put(text, "along bow "); break;
    default: break;
    }
    return put_length(dimension, 1, tape, text, fault);
}

void tside_i_note_words(const tside_note *note, tside_i_text *text)
{
    tside_i_put(text, part_names[note->part]);
    if (note->part == TSIDE_PART_KEEP_OUT || note->part == TSIDE_PART_JOINT) {
        tside_i_put(text, " ");
        tside_i_put_whole(text, (uint64_t)note->index + 1);
    }
    tside_i_put(text, shown_names[note->shown]);
}

tside_status tside_dimension_text(const tside_dimension *dimension, tside_tape tape, char *buffer, size_t size,
                                  size_t *needed, tside_fault *fault)
{
    char whole[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    if ((int)tape < TSIDE_TAPE_INCH || (int)tape > TSIDE_TAPE_METRIC)
        return tside_i_bound(fault, "tape", "1", (int)tape, TSIDE_NOT_ONE_OF, TSIDE_TAPE_METRIC);
    TRY(tside_i_check(&tside_i_dimension_table, "dimension", dimension, fault));
    TRY(tside_i_within(fault, "dimension", tside_i_dimension_words(dimension, tape, &text, fault)));
    return tside_i_answer_text(whole, buffer, size, needed, fault);
}

tside_status tside_note_text(const tside_note *note, char *buffer, size_t size, size_t *needed, tside_fault *fault)
{
    char whole[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    TRY(tside_i_check(&tside_i_note_table, "note", note, fault));
    tside_i_note_words(note, &text);
    return tside_i_answer_text(whole, buffer, size, needed, fault);
}
