/* SPDX-License-Identifier: MIT */
#include <stdlib.h>

#include "hand.h"
#include "memory.h"

enum { WHAT, SIZE, GRADE, COUNT };
enum { MOST_IN_HAND = 1000 }; /* sticks of a row */

/* Channel and tubes are cut from sticks. */
static int is_cut(const thing *what)
{
    return what == things + TSIDE_ITEM_CHANNEL || is_tube(what);
}

static int read_length(hand_row *h, text *why)
{
    const int place = stick_place(h->what.what);
    if (!is_cut(h->what.what))
        text_add(why, "a %s is not cut from sticks", h->what.what->name);
    else if (h->what.measure_count <= place || !(h->what.measures[place] > 0))
        text_add(why, "wanted the size with the stick's length as its last measure");
    else
        h->length = h->what.measures[place];
    return !why->length;
}

/* Keeps the rows in order: a short rest is used before a long one is cut into. */
static void keep(hand *made, const hand_row *h)
{
    int at = made->count;
    made->rows = grown(made->rows, (size_t)made->count, &made->room, sizeof *made->rows);
    for (; at > 0 && made->rows[at - 1].length > h->length; at--)
        made->rows[at] = made->rows[at - 1];
    made->rows[at] = *h;
    made->count++;
}

static void add_stick(void *context, const cell_row *r)
{
    hand *made = context;
    hand_row h = {.count = 0};
    text why = {NULL, 0, 0};
    if (description_read(&h.what, r->cells[WHAT], r->cells[SIZE], r->cells[GRADE], &why) && read_length(&h, &why) &&
        read_whole_number("count", r->cells[COUNT], MOST_IN_HAND, &h.count, &why)) {
        keep(made, &h);
    } else {
        cells_complain(&made->list, r->line, "%s", text_of(&why));
        description_free(&h.what);
    }
    text_free(&why);
}

int hand_read(hand *made, const char *file)
{
    static const cell_form form = {"list of stock in hand", "what,size,grade,count", COUNT + 1, add_stick};
    *made = (hand){.count = 0};
    return cells_read(&made->list, file, &form, made);
}

void hand_free(hand *made)
{
    for (int i = 0; i < made->count; i++)
        description_free(&made->rows[i].what);
    free(made->rows);
}

int hand_fits(const hand_row *row, const article *material)
{
    article stick = *material;
    if (row->what.what != material->what)
        return 0;
    stick.measures[stick_place(material->what)] = row->length;
    return description_fits(&row->what, &stick);
}
