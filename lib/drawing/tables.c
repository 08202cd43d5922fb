/* SPDX-License-Identifier: MIT */
/* The tables of what a drawing is made of. */
#include "drawing/tables.h"

#include "base/field.h"

static const char *const views[] = {"end_wall",  "whole_wall", "corner", "extender", "along",
                                    "roll_shut", "roll_open",  "turns",  "opening"};
static const char *const ends[] = {"drive_end", "free_end"};
static const char *const tapes[] = {"inch", "metric"};
#define PART(code, name, words) #name,
static const char *const parts[] = {TSIDE_PARTS_LIST(PART)};
#undef PART
static const char *const shown[] = {"always", "shut", "open", "shut_and_open", "at_turns"};
static const char *const line_types[] = {"wide", "narrow", "dashed", "chain"};
static const char *const dimension_kinds[] = {"level",  "plumb",    "along", "arc",  "running",
                                              "radius", "diameter", "place", "angle"};
static const char *const figure_units[] = {"none", "turn", "in", "mm", "lbf_ft", "N_m", "degree"};
#define TELLS(code, name, of, from) #name,
const char *const tside_i_tells[] = {TSIDE_TELLS_LIST(TELLS)};
#undef TELLS

/* As far as any side's parts go, whose curtain is no longer than 10 km, and farther: on paper it is a number still. */
#define PLACE(S, member, text) ROW(S, member, TSIDE_NUMBER, "m", text), FROM(-1e5), TO(1e5), .basis = ""

/* clang-format off */
static const tside_field picture_rows[] = {
    {CHOICE(tside_picture, view, views, TSIDE_VIEW_END_WALL, "whence it is seen")},
    {CHOICE(tside_picture, end, ends, TSIDE_DRIVE_END, "which end, of the views of one")},
    {CHOICE(tside_picture, tape, tapes, TSIDE_TAPE_INCH, "how lengths are written")},
    {NUMBER(tside_picture, scale, "1", FROM(0.1), TO(1000), 20, OURS, "how many times smaller on paper")},
    {OPTIONAL(tside_picture, turns, "turn", FROM(0), TO(1e9), "turns of the drive since shut at which roll and guide are drawn too")},
};
TABLE(tside_i_picture_table, picture_rows);

static const tside_field stroke_rows[] = {
    {CHOICE(tside_stroke, part, parts, 0, "what it shows")},
    {CHOICE(tside_stroke, shown, shown, 0, "in which state")},
    {CHOICE(tside_stroke, line, line_types, 0, "type of line")},
    {RESULT_COUNT(tside_stroke, arc, "1 for an arc, 0 for a straight stroke")},
    {RESULT_COUNT(tside_stroke, index, "which keep-out or joint, from 0")},
    {PLACE(tside_stroke, x, "its beginning, or an arc's centre, to the right as seen")},
    {PLACE(tside_stroke, y, "the same, up")},
    {PLACE(tside_stroke, x_end, "end of a straight stroke, to the right as seen")},
    {PLACE(tside_stroke, y_end, "the same, up")},
    {PLACE(tside_stroke, radius, "of an arc")},
    {RESULT(tside_stroke, from, "rad", "where an arc begins, counter-clockwise from level")},
    {RESULT(tside_stroke, sweep, "rad", "how far it goes on, counter-clockwise")},
};
TABLE(tside_i_stroke_table, stroke_rows);

static const tside_field dimension_rows[] = {
    {CHOICE(tside_dimension, tells, tside_i_tells, 0, "what it tells")},
    {CHOICE(tside_dimension, kind, dimension_kinds, 0, "which way it is measured")},
    {RESULT_COUNT(tside_dimension, index, "which joint, from 0")},
    {RESULT_COUNT(tside_dimension, times, "how often it is there, one beside the other; 0 where it is no pitch")},
    {RESULT(tside_dimension, value, "", "the measure, in m; of a run 1")},
    {PLACE(tside_dimension, x, "its first point, to the right as seen")},
    {PLACE(tside_dimension, y, "the same, up")},
    {PLACE(tside_dimension, x_end, "its second point, to the right as seen")},
    {PLACE(tside_dimension, y_end, "the same, up")},
    {PLACE(tside_dimension, from_x, "beginning of the dimension line, to the right as seen")},
    {PLACE(tside_dimension, from_y, "the same, up")},
    {PLACE(tside_dimension, to_x, "end of that line, to the right as seen")},
    {PLACE(tside_dimension, to_y, "the same, up")},
    {RESULT_COUNT(tside_dimension, arrows_outside, "1 where arrows do not fit between the points")},
    {RESULT_COUNT(tside_dimension, leader, "1 where a line leads from the middle of that line to the text")},
    {PLACE(tside_dimension, leader_x, "end of that line at the text, to the right as seen")},
    {PLACE(tside_dimension, leader_y, "the same, up")},
    {PLACE(tside_dimension, text_x, "middle of the text's foot, to the right as seen")},
    {PLACE(tside_dimension, text_y, "the same, up")},
    {RESULT(tside_dimension, text_angle, "rad", "which way the text runs, counter-clockwise from level")},
    {PLACE(tside_dimension, text_width, "of the text")},
};
TABLE_WHOLE(tside_i_dimension_table, dimension_rows, tside_dimension);

static const tside_field note_rows[] = {
    {CHOICE(tside_note, part, parts, 0, "what it names")},
    {CHOICE(tside_note, unit, figure_units, 0, "of figures, in what they count")},
    {RESULT_COUNT(tside_note, numbered, "1 for a number on an axis")},
    {RESULT(tside_note, value, "1", "that number, in its unit")},
    {CHOICE(tside_note, shown, shown, 0, "in which state")},
    {RESULT_COUNT(tside_note, index, "which keep-out or joint, from 0")},
    {PLACE(tside_note, x, "what is named, to the right as seen")},
    {PLACE(tside_note, y, "the same, up")},
    {PLACE(tside_note, to_x, "end of the line that leads from there to the text, to the right as seen")},
    {PLACE(tside_note, to_y, "the same, up")},
    {PLACE(tside_note, text_x, "middle of the text's foot, to the right as seen")},
    {PLACE(tside_note, text_y, "the same, up")},
    {PLACE(tside_note, text_width, "of the text")},
};
TABLE(tside_i_note_table, note_rows);

static const tside_field drawing_rows[] = {
    {GROUP(tside_drawing, picture, picture, "what was asked")},
    {RESULT_COUNT(tside_drawing, outboard, "1 where outboard is to the right as seen, -1 to the left, 0 neither")},
    {PLACE(tside_drawing, left, "left edge of all that is drawn, texts too")},
    {PLACE(tside_drawing, bottom, "lower edge of it")},
    {PLACE(tside_drawing, right, "right edge of it")},
    {PLACE(tside_drawing, top, "upper edge of it")},
    {LIST(tside_drawing, strokes, stroke_count, stroke, tside_stroke, TSIDE_STROKES, "lines and arcs of what is shown")},
    {LIST(tside_drawing, dimensions, dimension_count, dimension, tside_dimension, TSIDE_DIMENSIONS, "measures")},
    {LIST(tside_drawing, notes, note_count, note, tside_note, TSIDE_NOTES, "names of parts")},
};
/* clang-format on */
TABLE(tside_i_drawing_table, drawing_rows);
