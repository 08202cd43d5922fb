/* SPDX-License-Identifier: MIT */
/*
 * Where texts stand, one after the other: first those of dimensions, then names, each at the best place that those
 * before it leave. Source: this library's choice of their order.
 */
#include "drawing/place.h"

#include "drawing/leader.h"
#include "drawing/rank.h"
#include "drawing/words.h"

/* m on paper, from a place on an axis to its text */
#define FIGURE 2.5e-3

static double width_of(const tside_i_room *room, const tside_i_text *text)
{
    return (double)text->length * TSIDE_LETTER_ADVANCE * room->scale;
}

static void place_dimension(tside_i_room *room, int i)
{
    tside_dimension *d = room->drawing->dimensions + i;
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    if (tside_i_dimension_words(d, room->drawing->picture.tape, &text, NULL) != TSIDE_OK)
        return;
    d->text_width = width_of(room, &text);
    room->pending[i] = 0;
    tside_i_place_dimension(room, d, room->sketch->beside[i]);
}

/* Hard by its place: left of it by its middle, or above or below it; among texts alone. */
static int place_figure(tside_i_room *room, tside_note *note, tside_i_beside beside)
{
    const double s = room->scale, away = note->text_width / 2 + FIGURE * s;
    tside_i_box b;
    note->to_x = note->x;
    note->to_y = note->y;
    note->text_x = note->x - (beside == TSIDE_I_INBOARD ? away : 0);
    note->text_y = note->y + (beside == TSIDE_I_ABOVE   ? FIGURE + TSIDE_I_DESCENT
                              : beside == TSIDE_I_BELOW ? -FIGURE - TSIDE_I_ASCENT
                                                        : -(TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2) *
                                 s;
    b = tside_i_text_box(room, note->text_x, note->text_y, 1, 0, note->text_width);
    for (int i = 0; i < room->text_count; i++)
        if (fabs(b.x - room->texts[i].x) < b.wide + room->texts[i].wide &&
            fabs(b.y - room->texts[i].y) < b.high + room->texts[i].high)
            return 0;
    tside_i_room_keep_text(room, &b);
    return 1;
}

/* Whether a note found its place. */
static int place_note(tside_i_room *room, tside_note *note, tside_i_beside beside)
{
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    tside_i_led made;
    tside_i_note_words(note, &text);
    note->text_width = width_of(room, &text);
    if (note->unit != TSIDE_FIGURE_NONE)
        return place_figure(room, note, beside);
    if (!tside_i_lead(room, note->x, note->y, note->text_width, &made))
        return 0;
    note->to_x = made.leader.x_end;
    note->to_y = made.leader.y_end;
    note->text_x = made.text_x;
    note->text_y = made.text_y;
    return 1;
}

/* What finds no place where too much is drawn too small is left out: a name through which lines go names nothing. */
static void place_notes(tside_i_room *room)
{
    tside_drawing *drawing = room->drawing;
    int placed = 0;
    for (int i = 0; i < drawing->note_count; i++) {
        tside_note note = drawing->notes[i];
        if (place_note(room, &note, room->sketch->figure_beside[i]))
            drawing->notes[placed++] = note;
    }
    drawing->note_count = placed;
}

static double size_on_line(const tside_dimension *d)
{
    return fabs(d->kind == TSIDE_DIMENSION_PLUMB ? d->y_end - d->y : d->x_end - d->x);
}

/*
 * First those outside all, whose lines cross the whole drawing, short ones nearer than long ones; then those beside
 * what they measure, and last those that find a place anywhere.
 */
static int comes_first(const tside_dimension *a, const tside_dimension *b)
{
    if (tside_i_is_outside_all(a) != tside_i_is_outside_all(b))
        return tside_i_is_outside_all(a);
    if (tside_i_is_outside_all(a))
        return size_on_line(a) < size_on_line(b);
    return tside_i_is_led(b) && !tside_i_is_led(a);
}

static void in_order(const tside_i_room *room, int order[TSIDE_DIMENSIONS])
{
    const tside_dimension *d = room->drawing->dimensions;
    for (int i = 0; i < room->drawing->dimension_count; i++) {
        int at;
        for (at = i; at > 0 && comes_first(d + i, d + order[at - 1]); at--)
            order[at] = order[at - 1];
        order[at] = i;
    }
}

void tside_i_place_texts(tside_i_sketch *sketch)
{
    tside_drawing *drawing = sketch->drawing;
    tside_i_room room;
    int order[TSIDE_DIMENSIONS];
    drawing->left = sketch->left;
    drawing->bottom = sketch->bottom;
    drawing->right = sketch->right;
    drawing->top = sketch->top;
    if (drawing->dimension_count + drawing->note_count == 0)
        return;
    tside_i_room_begin(&room, sketch);
    in_order(&room, order);
    for (int i = 0; i < drawing->dimension_count; i++)
        place_dimension(&room, order[i]);
    place_notes(&room);
}
