/* SPDX-License-Identifier: MIT */
#include "drawn.h"
#include "table.h"
#include "units.h"

/* mm: of a row, of a block of rows, and to the right ends of its two columns. */
#define ROW 6.5
#define BLOCK 60.0
#define TURN_END 16.0
#define OPENING_END 54.0
#define ROUND_GRAPH 4.0

/* Its next row: below the last, then in the next block, then on the next sheet. */
typedef struct filling {
    sheets *made;
    sheet *on;
    box room; /* of all its blocks */
    int row, block;
} filling;

static void put_cells(filling *f, const char *turn, const char *opening, int bold)
{
    void (*const put)(text *, point, double, words_from, const char *) = bold ? svg_bold : svg_words;
    const double x = f->room.x + f->block * BLOCK, foot = f->room.y + (f->row + 1) * ROW - 1.5;
    put(&f->on->body, (point){x + TURN_END, foot}, LETTERS, FROM_RIGHT, turn);
    put(&f->on->body, (point){x + OPENING_END, foot}, LETTERS, FROM_RIGHT, opening);
    f->row++;
}

static int is_full(const filling *f)
{
    return (f->row + 1) * ROW > f->room.height;
}

static void begin_block(filling *f)
{
    f->row = 0;
    put_cells(f, "turns", "opening", 1);
}

static void next_block(filling *f, paper_size paper, const heading *told)
{
    f->block++;
    if ((f->block + 1) * BLOCK > f->room.width) {
        f->on = sheets_add(f->made, paper, 0, told);
        f->room = f->on->room;
        f->block = 0;
    }
    begin_block(f);
}

/* At the room's foot, which then ends above it. */
static void put_graph(filling *f, const tside_drawing *graph, const planned *side)
{
    const double high = drawn_height(graph);
    const point at = {f->room.x + (f->room.width - drawn_width(graph)) / 2,
                      f->room.y + f->room.height - high - ROUND_GRAPH};
    sheet_drawing(&f->on->body, at, graph, side_name(side));
    f->room.height -= high + 2 * ROUND_GRAPH;
}

void add_turn_table(sheets *made, paper_size paper, const heading *told, const planned *side, int us,
                    const tside_drawing *graph)
{
    pen p = {.us = us};
    filling f = {.made = made, .on = made->all + made->count - 1};
    text words = {NULL, 0, 0};
    text_add(&words, "Shut to open: %s turns of the drive. Clear opening at the drive's end:",
             plain(&p, side->plan.drive_turns, 2));
    sheet_words(&f.on->body, &f.on->room, LETTERS, text_of(&words));
    text_free(&words);
    f.room = f.on->room;
    put_graph(&f, graph, side);
    f.row = (int)(f.room.height / ROW); /* a block of fewer rows than these is none */
    f.block = f.row < 4 ? (int)(f.room.width / BLOCK) - 1 : -1;
    for (int i = 0; i < side->turn_count; i++) {
        if (!i || is_full(&f))
            next_block(&f, paper, told);
        put_cells(&f, plain(&p, side->turns[i].turn, 2), tape(&p, side->turns[i].opening), 0);
    }
}
