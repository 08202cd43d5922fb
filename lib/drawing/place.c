/* SPDX-License-Identifier: MIT */
/*
 * Where dimension lines and texts stand: each in turn at the first place, from its own side outward, at which its text
 * meets no stroke, no other text and no line of another dimension. Sizes on paper by ISO 129-1: lines in ranks, text
 * above its line, arrows outside or a leader where the line is short. Source: derivation, plane geometry.
 */
#include "drawing/place.h"

#include "drawing/paper.h"
#include "drawing/words.h"

/* m on paper */
#define ABOVE_LINE 1.8e-3 /* text's foot over its line: letters that go below it clear the arrowheads */
#define DESCENT 1.2e-3    /* of letters and slashes, below the foot */
#define ASCENT 4.2e-3     /* above it */
#define ROOM 0.8e-3       /* beside a text */
#define ARROW 3e-3
#define SHORT 8e-3    /* a line that has no room for arrows within */
#define RANK 8e-3     /* from rank to rank */
#define STEP 3e-3     /* the same where a dimension is beside what it measures, not outside all */
#define NEAR 3.2e-3   /* nearer than so, arrows and texts of parallel lines touch */
#define FIRST 8e-3    /* the first rank, from what is measured */
#define GAP 1e-3      /* between a point and the line that leads from it */
#define PAST 1.5e-3   /* how far that goes on past the dimension line */
#define LEADER 7e-3   /* the shortest */
#define FARTHER 5e-3  /* from one leader that is tried to the next */
#define GROWTH 2      /* by how much a leader may be longer for a drawing smaller by as much */
#define FIGURE 2.5e-3 /* from a place on an axis to its text */
#define AROUND 60e-3  /* about all strokes, where texts may stand */
#define PLUMB 1e-4    /* within which a text reads from the right, whatever rounding makes of it */

typedef struct placing {
    tside_i_sketch *sketch;
    tside_drawing *drawing;
    double scale;
    int notes;                     /* that have their places */
    int pending[TSIDE_DIMENSIONS]; /* 1: outside all, and still without its line */
    int text_count;
    tside_i_box texts[TSIDE_DIMENSIONS + TSIDE_NOTES];
    tside_i_paper paper;
} placing;

/* --- keeping what has its place --- */

static void spread(tside_drawing *drawing, double x, double y)
{
    drawing->left = fmin(drawing->left, x);
    drawing->right = fmax(drawing->right, x);
    drawing->bottom = fmin(drawing->bottom, y);
    drawing->top = fmax(drawing->top, y);
}

static void keep_text(placing *p, const tside_i_box *b)
{
    p->texts[p->text_count++] = *b;
    tside_i_paper_take_box(&p->paper, b);
    spread(p->drawing, b->x - b->wide, b->y - b->high);
    spread(p->drawing, b->x + b->wide, b->y + b->high);
}

static void keep_line(placing *p, const tside_i_line *l)
{
    tside_i_paper_take_line(&p->paper, l);
    spread(p->drawing, l->x, l->y);
    spread(p->drawing, l->x_end, l->y_end);
}

static int has_room(const placing *p, const tside_i_box *text)
{
    return tside_i_paper_has_room(&p->paper, text);
}

/* Narrows what of a line, from 0 to 1, is within half a width of nought; from, to: where it begins and ends. */
static int is_cut(double from, double to, double half, double *first, double *last)
{
    const double step = to - from;
    if (fabs(step) < 1e-300)
        return fabs(from) < half;
    *first = fmax(*first, ((step > 0 ? -half : half) - from) / step);
    *last = fmin(*last, ((step > 0 ? half : -half) - from) / step);
    return *first < *last;
}

static int crosses(const tside_i_line *l, const tside_i_box *b)
{
    const double dx = l->x - b->x, dy = l->y - b->y, ex = l->x_end - b->x, ey = l->y_end - b->y;
    double first = 0, last = 1;
    if ((dx > b->wide && ex > b->wide) || (dx < -b->wide && ex < -b->wide) || (dy > b->high && ey > b->high) ||
        (dy < -b->high && ey < -b->high))
        return 0;
    return is_cut(dx * b->cosine + dy * b->sine, ex * b->cosine + ey * b->sine, b->half_width, &first, &last) &&
           is_cut(dy * b->cosine - dx * b->sine, ey * b->cosine - ex * b->sine, b->half_height, &first, &last);
}

static int crosses_text(const placing *p, const tside_i_line *l)
{
    for (int i = 0; i < p->text_count; i++)
        if (crosses(l, p->texts + i))
            return 1;
    return 0;
}

/* The box of a text by the middle of its foot. */
static tside_i_box box_of(const placing *p, double x, double y, double cosine, double sine, double width)
{
    const double s = p->scale, up = (ASCENT - DESCENT) / 2 * s;
    return tside_i_box_of(x - up * sine, y + up * cosine, cosine, sine, width / 2 + ROOM * s,
                          (ASCENT + DESCENT) / 2 * s);
}

/* --- a text with a leader --- */

/* Which side of a line a point is on. */
static double side_of(const tside_i_line *l, double x, double y)
{
    return (l->x_end - l->x) * (y - l->y) - (l->y_end - l->y) * (x - l->x);
}

static int cross(const tside_i_line *a, const tside_i_line *b)
{
    return side_of(a, b->x, b->y) * side_of(a, b->x_end, b->y_end) < 0 &&
           side_of(b, a->x, a->y) * side_of(b, a->x_end, a->y_end) < 0;
}

static int crosses_leader(const placing *p, const tside_i_line *l)
{
    for (int i = 0; i < p->drawing->dimension_count; i++) {
        const tside_dimension *d = p->drawing->dimensions + i;
        const tside_i_line leader = {(d->from_x + d->to_x) / 2, (d->from_y + d->to_y) / 2, d->leader_x, d->leader_y};
        if (d->leader && cross(&leader, l))
            return 1;
    }
    for (int i = 0; i < p->notes; i++) {
        const tside_note *note = p->drawing->notes + i;
        const tside_i_line leader = {note->x, note->y, note->to_x, note->to_y};
        if (cross(&leader, l))
            return 1;
    }
    return 0;
}

/* A text with the line that leads to it. */
typedef struct led {
    tside_i_line leader;
    double text_x, text_y;
} led;

enum { HEADINGS = 64, ALL = 1, SOME = 4 }; /* in a whole turn; each of them, or each fourth */

static double cosine_of(int heading)
{
    static const double cosines[HEADINGS / 4 + 1] = {
        1,
        0.99518472667219688624,
        0.98078528040323044913,
        0.95694033573220886494,
        0.92387953251128675613,
        0.88192126434835502971,
        0.83146961230254523708,
        0.77301045336273696081,
        0.70710678118654752440,
        0.63439328416364549822,
        0.55557023301960222474,
        0.47139673682599764856,
        0.38268343236508977173,
        0.29028467725446236764,
        0.19509032201612826785,
        0.09801714032956060199,
        0,
    };
    const int from_level = heading > HEADINGS / 2 ? HEADINGS - heading : heading;
    return from_level <= HEADINGS / 4 ? cosines[from_level] : -cosines[HEADINGS / 2 - from_level];
}

static double sine_of(int heading)
{
    return cosine_of((heading + HEADINGS * 3 / 4) % HEADINGS);
}

/* Which heading is the next, by turns on either side of the one that is tried first. */
static int heading_of(const placing *p, int number, int each)
{
    const int outward = p->sketch->outboard > 0 ? HEADINGS / 16 : HEADINGS * 7 / 16;
    return (outward + (number % 2 ? (number + 1) / 2 : HEADINGS - number / 2) * each) % HEADINGS;
}

/* No leader runs level, as outlines do. */
static int is_level(int heading)
{
    return (heading + 1) % (HEADINGS / 2) < 3;
}

/* A leader of some length, and its text beside its end, above or below. */
static led led_at(const placing *p, double x, double y, double width, int heading, double away)
{
    const double s = p->scale, cosine = cosine_of(heading), sine = sine_of(heading), x_end = x + away * cosine,
                 y_end = y + away * sine;
    const int beside = fabs(cosine) > 0.3;
    return (led){.leader = {x, y, x_end, y_end},
                 .text_x = x_end + (beside ? copysign(width / 2 + ROOM * s, cosine) : 0),
                 .text_y = y_end - (beside     ? (ASCENT - DESCENT) / 2 * s
                                    : sine > 0 ? -DESCENT * s
                                               : ASCENT * s)};
}

static void keep_led(placing *p, const led *made, double width)
{
    const tside_i_box b = box_of(p, made->text_x, made->text_y, 1, 0, width);
    keep_text(p, &b);
    keep_line(p, &made->leader);
}

/* How places round a point are tried: in each so many-th heading, how often farther, and whether leaders may cross. */
typedef struct search {
    int each, distances, crossing;
} search;

/*
 * The first of some distances in a heading at which text and leader have room, or how many there are. Where a leader
 * meets a text, or another leader, one that goes on farther meets it too.
 */
static int lead_by(const placing *p, double x, double y, double width, int heading, int distances, int crossing)
{
    const double step = FARTHER * p->scale;
    const led nearest = led_at(p, x, y, width, heading, LEADER * p->scale);
    const tside_i_box b = box_of(p, nearest.text_x, nearest.text_y, 1, 0, width);
    const int far = tside_i_paper_next_room(&p->paper, &b, step * cosine_of(heading), step * sine_of(heading),
                                            distances);
    if (far < distances) {
        const led found = led_at(p, x, y, width, heading, LEADER * p->scale + far * step);
        if (crosses_text(p, &found.leader) || (!crossing && crosses_leader(p, &found.leader)))
            return distances;
    }
    return far;
}

/* How much larger, across and up, a text would make the drawing. */
static double growth(const placing *p, const led *l, double width)
{
    const tside_drawing *d = p->drawing;
    const tside_i_box b = box_of(p, l->text_x, l->text_y, 1, 0, width);
    return fmax(d->left - (b.x - b.wide), 0) + fmax(b.x + b.wide - d->right, 0) + fmax(d->bottom - (b.y - b.high), 0) +
           fmax(b.y + b.high - d->top, 0);
}

/*
 * The best place round a point, first on the side where there is nothing but air: where the leader is short and the
 * drawing grows little.
 */
static int lead_round(placing *p, double x, double y, double width, const search *how, led *made)
{
    const double step = FARTHER * p->scale;
    double least = HUGE_VAL;
    for (int i = 0; i < HEADINGS / how->each; i++) {
        const int heading = heading_of(p, i, how->each), distances = (int)ceil(fmin(least / step, how->distances)),
                  far = is_level(heading) ? distances : lead_by(p, x, y, width, heading, distances, how->crossing);
        const led one = led_at(p, x, y, width, heading, LEADER * p->scale + far * step);
        const double cost = far < distances ? far * step + GROWTH * growth(p, &one, width) : HUGE_VAL;
        if (cost < least) {
            least = cost;
            *made = one;
        }
    }
    if (least >= HUGE_VAL)
        return 0;
    keep_led(p, made, width);
    return 1;
}

/* Texts stand close where much is drawn small: there is often but a narrow way out, and seldom a short one. */
static int place_by_leader(placing *p, double x, double y, double width, led *made)
{
    static const search searches[] = {{SOME, 20, 0}, {SOME, 20, 1}, {ALL, 40, 1}};
    for (int i = 0; i < 3; i++)
        if (lead_round(p, x, y, width, searches + i, made))
            return 1;
    return 0;
}

/*
 * What must be told, and finds no other place: below or above all, as near as its leader then crosses no text.
 */
static void place_outside_all(placing *p, double x, double y, double width, led *made)
{
    enum { ASIDE = 60 };
    const double s = p->scale, below = p->drawing->bottom - (ROOM + ASCENT) * s,
                 above = p->drawing->top + (ROOM + DESCENT) * s;
    for (int i = 0; i <= 4 * ASIDE; i++) {
        const double at = x + (i / 2 % 2 ? -1 : 1) * (i / 2 + 1) / 2 * FARTHER * s;
        *made = i % 2 ? (led){{x, y, at, above - DESCENT * s}, at, above}
                      : (led){{x, y, at, below + ASCENT * s}, at, below};
        if (!crosses_text(p, &made->leader))
            break;
    }
    keep_led(p, made, width);
}

/* --- a dimension on a line --- */

static int has_leader(const tside_dimension *d)
{
    return d->kind == TSIDE_DIMENSION_ANGLE || d->kind == TSIDE_DIMENSION_RADIUS ||
           d->kind == TSIDE_DIMENSION_DIAMETER || d->kind == TSIDE_DIMENSION_PLACE;
}

static int is_outside_all(const tside_dimension *d)
{
    return d->kind == TSIDE_DIMENSION_PLUMB || d->kind == TSIDE_DIMENSION_LEVEL || d->kind == TSIDE_DIMENSION_RUNNING;
}

/* A dimension's line: its direction, the way out from what it measures, and its points along and across. */
typedef struct measured {
    double ux, uy;    /* along */
    double nx, ny;    /* out */
    double from, to;  /* m along, from < to */
    double across[2]; /* m out, of the two points in the order of from and to */
} measured;

static measured measured_of(const placing *p, const tside_dimension *d, tside_i_beside beside)
{
    const double out = (beside == TSIDE_I_INBOARD ? -1 : 1) * p->sketch->outboard;
    measured m = {.ux = 1, .ny = beside == TSIDE_I_BELOW ? -1 : 1};
    double from, to;
    if (d->kind == TSIDE_DIMENSION_PLUMB) {
        m = (measured){.uy = 1, .nx = out};
    } else if (!is_outside_all(d)) {
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
static tside_i_line leading(const placing *p, const measured *m, int which, double across)
{
    const double at = which ? m->to : m->from, from = m->across[which], way = across < from ? -1 : 1,
                 gap = fmin(GAP * p->scale, fabs(across - from));
    return line_of(m, at, from + way * gap, at, across + way * PAST * p->scale);
}

/* Whether a parallel dimension line stands so near that arrows and texts would touch. */
static int is_crowded(const placing *p, const measured *m, double across, double from, double to)
{
    const double s = p->scale;
    for (int i = 0; i < p->drawing->dimension_count; i++) {
        const tside_dimension *d = p->drawing->dimensions + i;
        const double dx = d->to_x - d->from_x, dy = d->to_y - d->from_y, a = d->from_x * m->ux + d->from_y * m->uy,
                     b = d->to_x * m->ux + d->to_y * m->uy;
        if ((dx != 0 || dy != 0) && fabs(dx * m->uy - dy * m->ux) < 1e-9 * s &&
            fabs(d->from_x * m->nx + d->from_y * m->ny - across) < NEAR * s && fmin(a, b) < to + ROOM * s &&
            fmax(a, b) > from - ROOM * s)
            return 1;
    }
    return 0;
}

/* How far a line goes on for arrows that are outside. */
static double tails(const placing *p, const measured *m)
{
    return m->to - m->from < SHORT * p->scale ? 2 * ARROW * p->scale : 0;
}

/* The first rank of what stands outside all. */
static double first_rank(const placing *p, const measured *m)
{
    const tside_i_sketch *sketch = p->sketch;
    return (m->nx > 0   ? sketch->right
            : m->nx < 0 ? -sketch->left
            : m->ny > 0 ? sketch->top
                        : -sketch->bottom) +
           FIRST * p->scale;
}

/* Whether a text would stand in the way of lines that are still to lead to dimensions outside all. */
static int is_in_the_way(const placing *p, const tside_i_box *b)
{
    for (int i = 0; i < p->drawing->dimension_count; i++)
        if (p->pending[i]) {
            const measured m = measured_of(p, p->drawing->dimensions + i, p->sketch->beside[i]);
            const double at = b->x * m.ux + b->y * m.uy, half = fabs(m.ux) * b->wide + fabs(m.uy) * b->high,
                         out = b->x * m.nx + b->y * m.ny + fabs(m.nx) * b->wide + fabs(m.ny) * b->high;
            if ((fabs(at - m.from) < half && out > m.across[0]) || (fabs(at - m.to) < half && out > m.across[1]))
                return 1;
        }
    return 0;
}

static void keep_dimension(placing *p, tside_dimension *d, const measured *m, double across, const tside_i_line *own)
{
    for (int i = 0; i < 2; i++) {
        const tside_i_line lead = leading(p, m, i, across);
        keep_line(p, &lead);
    }
    keep_line(p, own);
    d->from_x = own->x;
    d->from_y = own->y;
    d->to_x = own->x_end;
    d->to_y = own->y_end;
    d->arrows_outside = tails(p, m) > 0;
}

/* Leads to a dimension's text from the middle of its line, or from the point where it has none. */
static void lead(placing *p, tside_dimension *d)
{
    const double x = (d->from_x + d->to_x) / 2, y = (d->from_y + d->to_y) / 2;
    led made;
    if (!place_by_leader(p, x, y, d->text_width, &made))
        place_outside_all(p, x, y, d->text_width, &made);
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
    return m->ux > PLUMB || (m->ux >= -PLUMB && m->uy > 0) ? 1 : -1;
}

/* Tries the text on a line so far out: in its middle (0), beyond its end (1) or its beginning (-1). */
static int try_text(placing *p, tside_dimension *d, const measured *m, double across, int place, manner how)
{
    const double s = p->scale, width = d->text_width, tail = tails(p, m),
                 beyond = (ARROW + ROOM) * s + width + tail / 2, from = m->from - (place < 0 ? beyond : tail),
                 to = m->to + (place > 0 ? beyond : tail), cosine = reading(m) * m->ux, sine = reading(m) * m->uy,
                 at = place > 0   ? to - width / 2
                      : place < 0 ? from + width / 2
                                  : (from + to) / 2,
                 x = at * m->ux + across * m->nx - ABOVE_LINE * s * sine,
                 y = at * m->uy + across * m->ny + ABOVE_LINE * s * cosine;
    const tside_i_line own = line_of(m, from, across, to, across);
    const tside_i_box b = box_of(p, x, y, cosine, sine, width);
    if (is_crowded(p, m, across, from, to) || !has_room(p, &b) || (how == KINDLY && is_in_the_way(p, &b)) ||
        crosses_text(p, &own))
        return 0;
    keep_text(p, &b);
    keep_dimension(p, d, m, across, &own);
    d->text_x = x;
    d->text_y = y;
    d->text_angle = atan2(sine, cosine);
    return 1;
}

/* Tries a line so far out. A level text beside its line is towards the middle, so that the drawing is not wider for it.
 */
static int try_line(placing *p, tside_dimension *d, const measured *m, double across, manner how)
{
    const double tail = tails(p, m), from = m->from - tail, to = m->to + tail;
    const tside_i_line own = line_of(m, from, across, to, across);
    const int fits = d->text_width + 2 * ROOM * p->scale < m->to - m->from,
              towards = m->ux == 1 && m->from + m->to > p->drawing->left + p->drawing->right ? -1 : 1;
    if (how != LED)
        return (fits && try_text(p, d, m, across, 0, how)) ||
               ((!fits || is_outside_all(d)) &&
                (try_text(p, d, m, across, towards, how) || try_text(p, d, m, across, -towards, how)));
    if (is_crowded(p, m, across, from, to) || crosses_text(p, &own))
        return 0;
    keep_dimension(p, d, m, across, &own);
    lead(p, d);
    return 1;
}

enum { RANKS_OUTSIDE = 12, RANKS_BESIDE = 6 };

/* A dimension's ranks on one side of it: the first, and from one to the next, m across; and how far they are tried. */
typedef struct ranks {
    double first, step;
    int count, tried, closed;
} ranks;

/* Tries the next rank; where the lines that lead to it meet a text, those that go on farther meet it too. */
static int try_rank(placing *p, tside_dimension *d, const measured *m, ranks *r, manner how)
{
    const double across = r->first + r->tried * r->step;
    for (int i = 0; i < 2 && !r->closed; i++) {
        const tside_i_line whole = leading(p, m, i, across), before = leading(p, m, i, across - r->step);
        const tside_i_line more = {r->tried ? before.x_end : whole.x, r->tried ? before.y_end : whole.y, whole.x_end,
                                   whole.y_end};
        r->closed = crosses_text(p, &more);
    }
    r->tried++;
    return !r->closed && try_line(p, d, m, across, how);
}

/* Beside what is measured there are ranks on both sides of it. */
static int try_ranks(placing *p, tside_dimension *d, tside_i_beside beside, manner how)
{
    const double s = p->scale;
    const measured m = measured_of(p, d, beside);
    const int outside = is_outside_all(d);
    ranks near = {.first = fmax(m.across[0], m.across[1]) + FIRST * s, .step = STEP * s, .count = RANKS_BESIDE},
          far = {.first = fmin(m.across[0], m.across[1]) - FIRST * s, .step = -STEP * s, .closed = outside};
    if (outside)
        near = (ranks){.first = first_rank(p, &m), .step = RANK * s, .count = RANKS_OUTSIDE};
    while (near.tried < near.count && !(near.closed && far.closed))
        if (try_rank(p, d, &m, &near, how) || try_rank(p, d, &m, &far, how))
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
static void tell_at_point(placing *p, tside_dimension *d)
{
    d->from_x = d->to_x = d->x;
    d->from_y = d->to_y = d->y;
    lead(p, d);
}

/* On its own side if there is any room; what is beside what it measures tries both sides at once. */
static void place_on_line(placing *p, tside_dimension *d, tside_i_beside beside)
{
    const int outside = is_outside_all(d);
    if ((outside && (try_ranks(p, d, beside, KINDLY) || try_ranks(p, d, opposite(beside), KINDLY))) ||
        try_ranks(p, d, beside, ANYHOW) || try_ranks(p, d, beside, LED) ||
        (outside && try_ranks(p, d, opposite(beside), LED)))
        return;
    tell_at_point(p, d);
}

static double width_of(const placing *p, const tside_i_text *text)
{
    return (double)text->length * TSIDE_LETTER_ADVANCE * p->scale;
}

static void place_dimension(placing *p, int i)
{
    tside_dimension *d = p->drawing->dimensions + i;
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    if (tside_i_dimension_words(d, p->drawing->picture.tape, &text, NULL) != TSIDE_OK)
        return;
    d->text_width = width_of(p, &text);
    p->pending[i] = 0;
    if (has_leader(d))
        tell_at_point(p, d);
    else
        place_on_line(p, d, p->sketch->beside[i]);
}

/* Hard by its place: left of it, or right, by its middle, or above or below it; among texts alone. */
static int place_figure(placing *p, tside_note *note, tside_i_beside beside)
{
    const double s = p->scale, away = note->text_width / 2 + FIGURE * s;
    tside_i_box b;
    note->to_x = note->x;
    note->to_y = note->y;
    note->text_x = note->x + (beside == TSIDE_I_OUTBOARD ? away : beside == TSIDE_I_INBOARD ? -away : 0);
    note->text_y = note->y + (beside == TSIDE_I_ABOVE   ? FIGURE + DESCENT
                              : beside == TSIDE_I_BELOW ? -FIGURE - ASCENT
                                                        : -(ASCENT - DESCENT) / 2) *
                                 s;
    b = box_of(p, note->text_x, note->text_y, 1, 0, note->text_width);
    for (int i = 0; i < p->text_count; i++)
        if (fabs(b.x - p->texts[i].x) < b.wide + p->texts[i].wide &&
            fabs(b.y - p->texts[i].y) < b.high + p->texts[i].high)
            return 0;
    keep_text(p, &b);
    return 1;
}

/* Whether a note found its place. */
static int place_note(placing *p, tside_note *note, tside_i_beside beside)
{
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    led made;
    tside_i_note_words(note, &text);
    note->text_width = width_of(p, &text);
    if (note->unit != TSIDE_FIGURE_NONE)
        return place_figure(p, note, beside);
    if (!place_by_leader(p, note->x, note->y, note->text_width, &made))
        return 0;
    note->to_x = made.leader.x_end;
    note->to_y = made.leader.y_end;
    note->text_x = made.text_x;
    note->text_y = made.text_y;
    return 1;
}

/* What finds no place where too much is drawn too small is left out: a name through which lines go names nothing. */
static void place_notes(placing *p)
{
    tside_drawing *drawing = p->drawing;
    for (int i = 0; i < drawing->note_count; i++) {
        tside_note note = drawing->notes[i];
        if (place_note(p, &note, p->sketch->figure_beside[i]))
            drawing->notes[p->notes++] = note;
    }
    drawing->note_count = p->notes;
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
    if (is_outside_all(a) != is_outside_all(b))
        return is_outside_all(a);
    if (is_outside_all(a))
        return size_on_line(a) < size_on_line(b);
    return has_leader(b) && !has_leader(a);
}

static void in_order(const placing *p, int order[TSIDE_DIMENSIONS])
{
    const tside_dimension *d = p->drawing->dimensions;
    for (int i = 0; i < p->drawing->dimension_count; i++) {
        int at;
        for (at = i; at > 0 && comes_first(d + i, d + order[at - 1]); at--)
            order[at] = order[at - 1];
        order[at] = i;
    }
}

static void take_place(placing *p, double x, double y)
{
    const tside_i_line point = {x, y, x, y};
    tside_i_paper_take_line(&p->paper, &point);
}

/* Strokes, and the places from which leaders are still to begin. */
static void take_drawn(placing *p)
{
    const tside_drawing *drawing = p->drawing;
    tside_i_paper_begin(&p->paper, p->sketch, AROUND * p->scale);
    for (int i = 0; i < drawing->stroke_count && drawing->picture.view != TSIDE_VIEW_TURNS; i++)
        tside_i_paper_take_stroke(&p->paper, drawing->strokes + i);
    for (int i = 0; i < drawing->note_count; i++)
        take_place(p, drawing->notes[i].x, drawing->notes[i].y);
    for (int i = 0; i < drawing->dimension_count; i++)
        if (has_leader(drawing->dimensions + i))
            take_place(p, drawing->dimensions[i].x, drawing->dimensions[i].y);
}

void tside_i_place_texts(tside_i_sketch *sketch)
{
    tside_drawing *drawing = sketch->drawing;
    placing p;
    int order[TSIDE_DIMENSIONS];
    p.sketch = sketch;
    p.drawing = drawing;
    p.scale = drawing->picture.scale;
    p.notes = 0;
    p.text_count = 0;
    drawing->left = sketch->left;
    drawing->bottom = sketch->bottom;
    drawing->right = sketch->right;
    drawing->top = sketch->top;
    if (drawing->dimension_count + drawing->note_count == 0)
        return;
    take_drawn(&p);
    in_order(&p, order);
    for (int i = 0; i < drawing->dimension_count; i++)
        p.pending[i] = is_outside_all(drawing->dimensions + i);
    for (int i = 0; i < drawing->dimension_count; i++)
        place_dimension(&p, order[i]);
    place_notes(&p);
}
