/* SPDX-License-Identifier: MIT */
/* How one stick, such as one in hand, is cut with the least left over. */
#include <math.h>

#include <tunnelside/stock.h>

#include "base/field.h"

/* No stick is cut into more different pieces; and so many looks at a cut take a fraction of a second. */
enum { DEEPEST = 64, MOST_LOOKS = 4000000 };

/* So many pieces of a cut. */
typedef struct choice {
    int cut, count;
} choice;

/* A way to cut the stick: longest pieces first. */
typedef struct pattern {
    choice chosen[DEEPEST];
    int depth;
    double room; /* m, not yet taken; a piece takes a kerf too, and so there is one kerf more of it */
} pattern;

typedef struct filling {
    const tside_cut *cuts;
    int cut_count, looks;
    double kerf;
} filling;

static double size_of(const filling *f, int cut)
{
    return f->cuts[cut].length + f->kerf;
}

/* Whether a cut comes after another, the longer ones first; none comes after -1 that is not the first. */
static int is_after(const filling *f, int cut, int other)
{
    return other < 0 || f->cuts[cut].length < f->cuts[other].length ||
           (f->cuts[cut].length == f->cuts[other].length && cut > other);
}

/* The longest after another that is asked for and fits; -1 where there is none. */
static int next_cut(filling *f, int after, double room)
{
    int next = -1;
    for (int i = 0; i < f->cut_count; i++)
        if (f->cuts[i].count && size_of(f, i) <= room + FITS && is_after(f, i, after) &&
            (next < 0 || is_after(f, next, i)))
            next = i;
    f->looks += f->cut_count;
    return next;
}

static void choose(const filling *f, pattern *p, int cut)
{
    const double fit = floor((p->room + FITS) / size_of(f, cut));
    const int count = fit < f->cuts[cut].count ? (int)fit : f->cuts[cut].count;
    p->chosen[p->depth++] = (choice){cut, count};
    p->room -= count * size_of(f, cut);
}

/* One piece fewer of the last cut, which is returned. */
static int give_back(const filling *f, pattern *p)
{
    choice *last = p->chosen + p->depth - 1;
    const int cut = last->cut;
    p->room += size_of(f, cut);
    p->depth -= !--last->count;
    return cut;
}

/*
 * All ways, those with most of the longest pieces first, until one leaves nothing; of ways that leave as much the first
 * counts.
 */
static pattern fullest(filling *f, double room)
{
    pattern now = {.room = room}, best = now;
    int after = -1;
    for (;;) {
        const int next = now.depth < DEEPEST ? next_cut(f, after, now.room) : -1;
        if (next >= 0) {
            choose(f, &now, next);
            after = next;
            continue;
        }
        if (now.room < best.room - FITS)
            best = now;
        if (!now.depth || best.room <= FITS || f->looks > MOST_LOOKS)
            return best;
        after = give_back(f, &now);
    }
}

static tside_status check(const tside_stock *stock, double length, const tside_cut *cuts, int cut_count,
                          tside_fault *fault)
{
    const tside_stock_length stick = {length};
    TRY(tside_i_check(&tside_i_stock_table, "stock", stock, fault));
    TRY(tside_i_check_table(&tside_i_stock_length_table, &stick, fault));
    TRY(tside_i_whole(fault, "cut_count", cut_count, 0, TSIDE_STOCK_CUTS));
    for (int i = 0; i < cut_count; i++)
        TRY(tside_i_within(fault, "cuts",
                           tside_i_within_element(fault, i, tside_i_check_table(&tside_i_cut_table, cuts + i, fault))));
    return TSIDE_OK;
}

tside_status tside_stock_fill(const tside_stock *stock, double length, const tside_cut *cuts, int cut_count,
                              tside_cut *given, tside_stick *stick, tside_fault *fault)
{
    filling f = {cuts, cut_count, 0, 0};
    tside_stick made = {.count = 1, .offcut = length};
    pattern best;
    TRY(check(stock, length, cuts, cut_count, fault));
    f.kerf = stock->kerf;
    best = fullest(&f, length - stock->trim + stock->kerf);
    for (int i = 0; i < best.depth; i++) {
        made.pieces += best.chosen[i].count;
        made.used += best.chosen[i].count * size_of(&f, best.chosen[i].cut);
    }
    if (made.pieces) {
        made.used -= stock->kerf;
        made.offcut = length - stock->trim - made.used - stock->kerf;
        if (made.offcut < FITS)
            made.offcut = 0;
    }
    TRY(ANSWER(&tside_i_stick_table, made, stick, fault));
    for (int i = 0; i < cut_count; i++)
        given[i] = (tside_cut){cuts[i].length, 0};
    for (int i = 0; i < best.depth; i++)
        given[best.chosen[i].cut].count = best.chosen[i].count;
    return TSIDE_OK;
}
