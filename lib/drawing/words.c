/* SPDX-License-Identifier: MIT */
/* What is written on a drawing: a dimension's length, with a word where its line alone does not tell, and a part's
 * name. */
#include "drawing/words.h"

#include <math.h>

#include <tunnelside/length.h>

#include "base/field.h"

#define PART(code, name, words) words,
static const char *const part_names[] = {TSIDE_PARTS_LIST(PART)};
#undef PART

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
    return dimension->kind == TSIDE_DIMENSION_RUNNING || dimension->kind == TSIDE_DIMENSION_DIAMETER
               ? TSIDE_INCHES
               : TSIDE_FEET_AND_INCHES;
}

static int is_hole(const tside_dimension *dimension)
{
    return dimension->tells == TSIDE_TELLS_EYE_HOLE || dimension->tells == TSIDE_TELLS_BOW_HOLE ||
           dimension->tells == TSIDE_TELLS_MEMBER_HOLE;
}

/* How finely: a hole as drills come, by 1/64 in or 0.1 mm where it needs that, all else by 1/16 in or 1 mm. */
static int part_of(const tside_dimension *dimension, tside_tape tape)
{
    const double millimetres = dimension->value * 1000, tenths = 10 * (millimetres - floor(millimetres));
    if (tape == TSIDE_TAPE_INCH)
        return is_hole(dimension) ? 64 : 16;
    return is_hole(dimension) && tenths > 0.5 && tenths < 9.5;
}

/* What a value is in metres, by a factor; which way it goes is seen: only its size is written. */
static tside_status put_length(const tside_dimension *dimension, double factor, tside_tape tape, tside_i_text *text,
                               tside_fault *fault)
{
    const double value = dimension->value;
    char length[32];
    tside_fault refused;
    if (tside_length_write(fabs(value) * factor, style_of(dimension, tape), part_of(dimension, tape), length,
                           sizeof length, NULL, &refused) != TSIDE_OK)
        return tside_i_bound(fault, "value", dimension->tells == TSIDE_TELLS_RUN ? "1" : "m", value,
                             value < 0 ? TSIDE_BELOW : TSIDE_ABOVE, copysign(refused.bound / factor, value));
    tside_i_put(text, length);
    return TSIDE_OK;
}

/* A height; where no line shows from where it is taken, that in words, by which side of it is meant. */
static tside_status put_height(const tside_dimension *dimension, tside_tape tape, const char *ahead, const char *behind,
                               tside_i_text *text, tside_fault *fault)
{
    TRY(put_length(dimension, 1, tape, text, fault));
    if (dimension->kind == TSIDE_DIMENSION_PLACE)
        tside_i_put(text, dimension->value < 0 ? behind : ahead);
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
    case TSIDE_TELLS_SIDE_LENGTH: tside_i_put(text, "side "); break;
    case TSIDE_TELLS_CURTAIN_LENGTH: tside_i_put(text, "curtain "); break;
    case TSIDE_TELLS_BAR_LENGTH: tside_i_put(text, "bar "); break;
    case TSIDE_TELLS_BEYOND_DRIVE:
    case TSIDE_TELLS_BEYOND_FREE: tside_i_put(text, "bar beyond "); break;
    case TSIDE_TELLS_JOINT_PLACE: tside_i_put(text, "joint "); break;
    case TSIDE_TELLS_ROPE_PITCH:
        tside_i_put(text, "rope bays ");
        tside_i_put_whole(text, (uint64_t)dimension->times);
        tside_i_put(text, " x ");
        break;
    case TSIDE_TELLS_HOOK_HEIGHT:
        tside_i_put(text, "hook ");
        if (dimension->value == 0) {
            tside_i_put(text, "at the hip");
            return TSIDE_OK;
        }
        return put_height(dimension, tape, " above the hip", " below the hip", text, fault);
    case TSIDE_TELLS_ANCHOR_HEIGHT:
        tside_i_put(text, "anchor ");
        return put_height(dimension, tape, " above the ground", " below the ground", text, fault);
    case TSIDE_TELLS_SEAL: tside_i_put(text, "seal "); break;
    case TSIDE_TELLS_OPENING: tside_i_put(text, "opening "); break;
    case TSIDE_TELLS_SHUT_DIAMETER:
    case TSIDE_TELLS_OPEN_DIAMETER: tside_i_put(text, "diameter "); break;
    case TSIDE_TELLS_SHUT_BELOW_HIP:
    case TSIDE_TELLS_OPEN_BELOW_HIP:
        return put_height(dimension, tape, " below the hip", " above the hip", text, fault);
    case TSIDE_TELLS_SHUT_ABOVE_GROUND:
    case TSIDE_TELLS_OPEN_ABOVE_GROUND:
        return put_height(dimension, tape, " above the ground", " below the ground", text, fault);
    case TSIDE_TELLS_EYE_HOLE: tside_i_put(text, "eye bolt, hole "); break;
    case TSIDE_TELLS_BOW_HOLE: tside_i_put(text, "bow, hole "); break;
    case TSIDE_TELLS_MEMBER_HOLE: tside_i_put(text, "member, hole "); break;
    default: break;
    }
    return put_length(dimension, 1, tape, text, fault);
}

static const char *const unit_names[] = {
    [TSIDE_FIGURE_NONE] = "",
    [TSIDE_FIGURE_TURN] = "",
    [TSIDE_FIGURE_INCH] = ", in",
    [TSIDE_FIGURE_MILLIMETRE] = ", mm",
    [TSIDE_FIGURE_POUND_FOOT] = ", lbf ft",
    [TSIDE_FIGURE_NEWTON_METRE] = ", N m",
    [TSIDE_FIGURE_DEGREE] = ", degrees",
};

void tside_i_note_words(const tside_note *note, tside_i_text *text)
{
    if (note->numbered) {
        tside_i_put_number(text, note->value);
        return;
    }
    tside_i_put(text, part_names[note->part]);
    if (note->part == TSIDE_PART_KEEP_OUT || note->part == TSIDE_PART_JOINT) {
        tside_i_put(text, " ");
        tside_i_put_whole(text, (uint64_t)note->index + 1);
    }
    tside_i_put(text, unit_names[note->unit]);
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
