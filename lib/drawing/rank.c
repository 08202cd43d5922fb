/* SPDX-License-Identifier: MIT */
/*
 * Where a dimension's line stands: in ranks, each farther out, on its own side of what it measures or outside all, at
 * the first where its text meets no stroke, no other text and no line of another dimension. Sizes on paper by ISO
 * 129-1: text above its line, arrows outside or a leader where the line is short. Source: derivation, plane geometry.
 */
#include "drawing/rank.h"

#include "drawing/leader.h"

/* m on paper */
#define ABOVE_LINE 1.8e-3 /* text's foot over its line: letters that go below it clear the arrowheads */
#define ARROW 3e-3
#define HALF_ARROW 0.5e-3 /* half as broad */
#define SHORT 8e-3        /* a line that has no room for arrows within */
#define RANK 8e-3         /* from rank to rank */
#define STEP 3e-3         /* the same where a dimension is beside what it measures, not outside all */
#define NEAR 3.2e-3       /* nearer than so, arrows and texts of parallel lines touch */
#define FIRST 8e-3        /* the first rank, from what is measured */
#define GAP 1e-3          /* between a point and the line that leads from it */
#define PAST 1.5e-3       /* how far that goes on past the dimension line */

/* Within which lines are parallel: those along one extender are from different holes, and so not to the bit. */
#define PARALLEL 1e-9

/* A dimension's line: its direction, the way out from what it measures, and its points along and across. */
typedef struct measured {
    double ux, uy;    /* along */
    double nx, ny;    /* out */
    double from, to;  /* m along, from < to */
    double across[2]; /* m out, of the two points in the order of from and to */
} measured;

static measured measured_of(const tside_i_room *room, const tside_dimension *d, tside_i_beside beside)
{
    const double out = (beside == TSIDE_I_INBOARD ? -1 : 1) * room->sketch->outboard;
    measured m = {.ux = 1, .ny = beside == TSIDE_I_BELOW ? -1 : 1};
    double from, to;
    if (d->kind == TSIDE_DIMENSION_PLUMB) {
        m = (measured){.uy = 1, .nx = out};
    } else if (!tside_i_is_outside_all(d)) {
        const double length = hypot(d->x_end - d->x, d->y_end - d->y);
        const int level = beside == TSIDE_I_ABOVE || beside == TSIDE_I_BELOW;
        double turned;
        if (length > 0) {
            m.ux = (d->x_end - d->x) / length;
            m.uy = (d->y_end - d->y) / length;
        }
        turned = (level ? m.ux * (beside == TSIDE_I_ABOVE ? 1 : -1) : -m.uy * out) < 0 ? -1 : 1;
        m.nx = -m.uy * turned;
        m.ny = m.ux * turned;
    }
    from = d->x * m.ux + d->y * m.uy;
    to = d->x_end * m.ux + d->y_end * m.uy;
    m.from = fmin(from, to);
    m.to = fmax(from, to);
    m.across[from > to] = d->x * m.nx + d->y * m.ny;
    m.across[from <= to] = d->x_end * m.nx + d->y_end * m.ny;
    return m;
}

static tside_i_line line_of(const measured *m, double from, double across, double to, double across_to)
{
    return (tside_i_line){from * m->ux + across * m->nx, from * m->uy + across * m->ny, to * m->ux + across_to * m->nx,
                          to * m->uy + across_to * m->ny};
}

/* The lines that lead from the points to the dimension line; of no length where they are on it. */
static tside_i_line leading(const tside_i_room *room, const measured *m, int which, double across)
{
    const double at = which ? m->to : m->from, from = m->across[which], way = across < from ? -1 : 1,
                 gap = fmin(GAP * room->scale, fabs(across - from));
    return line_of(m, at, from + way * gap, at, across + way * PAST * room->scale);
}

/* Whether a parallel dimension line stands so near that arrows and texts would touch. */
static int is_crowded(const tside_i_room *room, const measured *m, double across, double from, double to)
{
    const double s = room->scale, beside = TSIDE_I_BESIDE * s;
    for (int i = 0; i < room->drawing->dimension_count; i++) {
        const tside_dimension *d = room->drawing->dimensions + i;
        const double dx = d->to_x - d->from_x, dy = d->to_y - d->from_y, a = d->from_x * m->ux + d->from_y * m->uy,
                     b = d->to_x * m->ux + d->to_y * m->uy;
        if (fabs(d->from_x * m->nx + d->from_y * m->ny - across) < NEAR * s && (dx != 0 || dy != 0) &&
            fabs(dx * m->uy - dy * m->ux) < PARALLEL * s && fmin(a, b) < to + beside && fmax(a, b) > from - beside)
            return 1;
    }
    return 0;
}

/* How far a line goes on for arrows that are outside. */
static double tails(const tside_i_room *room, const measured *m)
{
    return m->to - m->from < SHORT * room->scale ? 2 * ARROW * room->scale : 0;
}

/* The first rank of what stands outside all. */
static double first_rank(const tside_i_room *room, const measured *m)
{
    const tside_i_sketch *sketch = room->sketch;
    return (m->nx > 0   ? sketch->right
            : m->nx < 0 ? -sketch->left
            : m->ny > 0 ? sketch->top
                        : -sketch->bottom) +
           FIRST * room->scale;
}

/* Whether a text would stand in the way of lines that are still to lead to dimensions outside all. */
static int is_in_the_way(const tside_i_room *room, const tside_i_box *b)
{
    for (int i = 0; i < room->drawing->dimension_count; i++)
        if (room->pending[i]) {
            const measured m = measured_of(room, room->drawing->dimensions + i, room->sketch->beside[i]);
            const double at = b->x * m.ux + b->y * m.uy, half = fabs(m.ux) * b->wide + fabs(m.uy) * b->high,
                         out = b->x * m.nx + b->y * m.ny + fabs(m.nx) * b->wide + fabs(m.ny) * b->high;
            if ((fabs(at - m.from) < half && out > m.across[0]) || (fabs(at - m.to) < half && out > m.across[1]))
                return 1;
        }
    return 0;
}

static void keep_dimension(tside_i_room *room, tside_dimension *d, const measured *m, double across,
                           const tside_i_line *own)
{
    for (int i = 0; i < 2; i++) {
        const tside_i_line lead = leading(room, m, i, across);
        tside_i_room_keep_line(room, &lead);
    }
    for (int side = -1; side <= 1; side += 2) { /* as broad as its arrowheads */
        const double x = side * HALF_ARROW * room->scale * m->nx, y = side * HALF_ARROW * room->scale * m->ny;
        const tside_i_line edge = {own->x + x, own->y + y, own->x_end + x, own->y_end + y};
        tside_i_room_keep_line(room, &edge);
    }
    d->from_x = own->x;
    d->from_y = own->y;
    d->to_x = own->x_end;
    d->to_y = own->y_end;
    d->arrows_outside = tails(room, m) > 0;
}

/* Leads to a dimension's text from the middle of its line, or from the point where it has none. */
static void lead(tside_i_room *room, tside_dimension *d)
{
    tside_i_led made;
    tside_i_lead_anyhow(room, (d->from_x + d->to_x) / 2, (d->from_y + d->to_y) / 2, d->text_width, &made);
    d->leader = 1;
    d->leader_x = made.leader.x_end;
    d->leader_y = made.leader.y_end;
    d->text_x = made.text_x;
    d->text_y = made.text_y;
}

/* How a line gets its text: on it where that is in nobody's way, on it, or by a leader. */
typedef enum manner { KINDLY, ANYHOW, LED } manner;

/* Read from below or from the right: 1 as the line goes, or -1. */
static int reading(const measured *m)
{
    return m->ux > 0 || (m->ux == 0 && m->uy > 0) ? 1 : -1;
}

/* Tries the text on a line so far out: in its middle (0), beyond its end (1) or its beginning (-1). */
static int try_text(tside_i_room *room, tside_dimension *d, const measured *m, double across, int place, manner how)
{
    const double s = room->scale, width = d->text_width, tail = tails(room, m),
                 beyond = (ARROW + TSIDE_I_BESIDE) * s + width + tail / 2, from = m->from - (place < 0 ? beyond : tail),
                 to = m->to + (place > 0 ? beyond : tail), cosine = reading(m) * m->ux, sine = reading(m) * m->uy,
                 at = place > 0   ? to - width / 2
                      : place < 0 ? from + width / 2
                                  : (from + to) / 2,
                 x = at * m->ux + across * m->nx - ABOVE_LINE * s * sine,
                 y = at * m->uy + across * m->ny + ABOVE_LINE * s * cosine;
    const tside_i_line own = line_of(m, from, across, to, across);
    const tside_i_box b = tside_i_text_box(room, x, y, cosine, sine, width);
    if (is_crowded(room, m, across, from, to) || !tside_i_paper_has_room(&room->paper, &b) ||
        (how == KINDLY && is_in_the_way(room, &b)) || tside_i_crosses_text(room, &own))
        return 0;
    tside_i_room_keep_text(room, &b);
    keep_dimension(room, d, m, across, &own);
    d->text_x = x;
    d->text_y = y;
    d->text_angle = atan2(sine, cosine);
    return 1;
}

/* Tries a line so far out. A level text beside its line is towards the middle, so that the drawing is not wider for it.
 */
static int try_line(tside_i_room *room, tside_dimension *d, const measured *m, double across, manner how)
{
    const double tail = tails(room, m), from = m->from - tail, to = m->to + tail;
    const tside_i_line own = line_of(m, from, across, to, across);
    const int fits = d->text_width + 2 * TSIDE_I_BESIDE * room->scale < m->to - m->from,
              towards = m->ux == 1 && m->from + m->to > room->drawing->left + room->drawing->right ? -1 : 1;
    if (how != LED)
        return (fits && try_text(room, d, m, across, 0, how)) ||
               ((!fits || tside_i_is_outside_all(d)) &&
                (try_text(room, d, m, across, towards, how) || try_text(room, d, m, across, -towards, how)));
    if (is_crowded(room, m, across, from, to) || tside_i_crosses_text(room, &own))
        return 0;
    keep_dimension(room, d, m, across, &own);
    lead(room, d);
    return 1;
}

enum { RANKS_OUTSIDE = 12, RANKS_BESIDE = 6 };

/* A dimension's ranks on one side of it: the first, and from one to the next, m across; and how far they are tried. */
typedef struct ranks {
    double first, step;
    int count, tried, closed;
    tside_i_line led[2]; /* the lines that lead to the last */
} ranks;

/* Tries the next rank; where the lines that lead to it meet a text, those that go on farther meet it too. */
static int try_rank(tside_i_room *room, tside_dimension *d, const measured *m, ranks *r, manner how)
{
    const double across = r->first + r->tried * r->step;
    for (int i = 0; i < 2 && !r->closed; i++) {
        const tside_i_line whole = leading(room, m, i, across);
        const tside_i_line more = {r->tried ? r->led[i].x_end : whole.x, r->tried ? r->led[i].y_end : whole.y,
                                   whole.x_end, whole.y_end};
        r->led[i] = whole;
        r->closed = tside_i_crosses_text(room, &more);
    }
    r->tried++;
    return !r->closed && try_line(room, d, m, across, how);
}

/* Beside what is measured there are ranks on both sides of it. */
static int try_ranks(tside_i_room *room, tside_dimension *d, tside_i_beside beside, manner how)
{
    const double s = room->scale;
    const measured m = measured_of(room, d, beside);
    const int outside = tside_i_is_outside_all(d);
    ranks near = {.first = fmax(m.across[0], m.across[1]) + FIRST * s, .step = STEP * s, .count = RANKS_BESIDE},
          far = {.first = fmin(m.across[0], m.across[1]) - FIRST * s, .step = -STEP * s, .closed = outside};
    if (outside)
        near = (ranks){.first = first_rank(room, &m), .step = RANK * s, .count = RANKS_OUTSIDE};
    while (near.tried < near.count && !(near.closed && far.closed))
        if (try_rank(room, d, &m, &near, how) || try_rank(room, d, &m, &far, how))
            return 1;
    return 0;
}

static tside_i_beside opposite(tside_i_beside beside)
{
    static const tside_i_beside other[] = {
        [TSIDE_I_OUTBOARD] = TSIDE_I_INBOARD,
        [TSIDE_I_INBOARD] = TSIDE_I_OUTBOARD,
        [TSIDE_I_ABOVE] = TSIDE_I_BELOW,
        [TSIDE_I_BELOW] = TSIDE_I_ABOVE,
    };
    return other[beside];
}

/* Without a line: told at its first point. */
static void tell_at_point(tside_i_room *room, tside_dimension *d)
{
    d->from_x = d->to_x = d->x;
    d->from_y = d->to_y = d->y;
    lead(room, d);
}

/* On its own side if there is any room; what is beside what it measures tries both sides at once. */
static void place_on_line(tside_i_room *room, tside_dimension *d, tside_i_beside beside)
{
    const int outside = tside_i_is_outside_all(d);
    if ((outside && (try_ranks(room, d, beside, KINDLY) || try_ranks(room, d, opposite(beside), KINDLY))) ||
        try_ranks(room, d, beside, ANYHOW) || try_ranks(room, d, beside, LED) ||
        (outside && try_ranks(room, d, opposite(beside), LED)))
        return;
    tell_at_point(room, d);
}

void tside_i_place_dimension(tside_i_room *room, tside_dimension *d, tside_i_beside beside)
{
    if (tside_i_is_led(d))
        tell_at_point(room, d);
    else
        place_on_line(room, d, beside);
}
