/* SPDX-License-Identifier: MIT */
/*
 * Where dimension lines and texts stand: each in turn at the first place, from its own side outward, at which its text
 * meets no stroke, no other text and no line of another dimension. Sizes on paper by ISO 129-1: lines in ranks, text
 * above its line, arrows outside or a leader where the line is short. Source: derivation, plane geometry.
 */
#include "drawing/place.h"

#include "drawing/words.h"

/* m on paper */
#define ABOVE_LINE 1.8e-3 /* text's foot over its line: letters that go below it clear the arrowheads */
#define DESCENT 1.2e-3    /* of letters and slashes, below the foot */
#define ASCENT 4.2e-3     /* above it */
#define ROOM 0.8e-3       /* beside a text */
#define ARROW 3e-3
#define ARROW_HALF 0.5e-3
#define SHORT 8e-3    /* a line that has no room for arrows within */
#define RANK 8e-3     /* from rank to rank */
#define STEP 3e-3     /* the same where a dimension is beside what it measures, not outside all */
#define FIRST 9e-3    /* the first rank, from what is measured */
#define GAP 1e-3      /* between a point and the line that leads from it */
#define FIGURE 2.5e-3 /* from a place on an axis to its text */
#define PAST 1.5e-3   /* how far that goes on past the dimension line */
#define PLUMB 1e-4    /* rad, within which a text reads from the right, whatever rounding makes of it */

/* A rectangle at an angle: where a text is, with its room. */
typedef struct box {
    double x, y, cosine, sine, half_width, half_height;
} box;

typedef struct line {
    double x, y, x_end, y_end;
} line;

typedef struct placing {
    tside_i_sketch *sketch;
    tside_drawing *drawing;
    double scale;
    int box_count, line_count, leader_count;
    box boxes[TSIDE_DIMENSIONS + TSIDE_NOTES];
    line lines[3 * TSIDE_DIMENSIONS]; /* of dimensions */
    line leaders[TSIDE_DIMENSIONS + TSIDE_NOTES];
    int pending[TSIDE_DIMENSIONS]; /* 1: outside all, and still without its line */
} placing;

/* --- what meets what --- */

static int is_cut(double from, double to, double half, double *first, double *last)
{
    const double step = to - from;
    if (fabs(step) < 1e-300)
        return fabs(from) < half;
    *first = fmax(*first, ((step > 0 ? -half : half) - from) / step);
    *last = fmin(*last, ((step > 0 ? half : -half) - from) / step);
    return *first < *last;
}

static int line_meets(const box *b, double x, double y, double x_end, double y_end)
{
    const double reach = b->half_width + b->half_height, dx = x - b->x, dy = y - b->y, ex = x_end - b->x,
                 ey = y_end - b->y;
    double first = 0, last = 1;
    if (fmin(dx, ex) > reach || fmax(dx, ex) < -reach || fmin(dy, ey) > reach || fmax(dy, ey) < -reach)
        return 0;
    return is_cut(dx * b->cosine + dy * b->sine, ex * b->cosine + ey * b->sine, b->half_width, &first, &last) &&
           is_cut(dy * b->cosine - dx * b->sine, ey * b->cosine - ex * b->sine, b->half_height, &first, &last);
}

/* By chords that stray from the arc by so much, and a box that is larger by as much. */
static int arc_meets(const box *text, const tside_stroke *arc, double stray)
{
    box larger = *text;
    const box *b = &larger;
    double away, reach;
    int chords;
    larger.half_width += stray;
    larger.half_height += stray;
    away = hypot(b->x - arc->x, b->y - arc->y);
    reach = hypot(b->half_width, b->half_height);
    if (fabs(away - arc->radius) > reach)
        return 0;
    chords = (int)ceil(fmin(arc->sweep / sqrt(fmin(8 * stray / arc->radius, 1)), 1000));
    for (int i = 0; i < chords; i++) {
        const double from = arc->from + arc->sweep * i / chords, to = arc->from + arc->sweep * (i + 1) / chords;
        if (line_meets(b, arc->x + arc->radius * cos(from), arc->y + arc->radius * sin(from),
                       arc->x + arc->radius * cos(to), arc->y + arc->radius * sin(to)))
            return 1;
    }
    return 0;
}

static int meets_strokes(const placing *p, const box *b)
{
    const tside_drawing *drawing = p->drawing;
    const double reach = b->half_width + b->half_height;
    const tside_i_sketch *s = p->sketch;
    if (b->x - reach > s->right || b->x + reach < s->left || b->y - reach > s->top || b->y + reach < s->bottom)
        return 0;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->arc ? arc_meets(b, stroke, ROOM / 2 * p->scale)
                        : line_meets(b, stroke->x, stroke->y, stroke->x_end, stroke->y_end))
            return 1;
    }
    return 0;
}

/* Along which of one's two directions another does not reach it. */
static int is_apart(const box *a, const box *b)
{
    const double dx = b->x - a->x, dy = b->y - a->y, cosine = fabs(a->cosine * b->cosine + a->sine * b->sine),
                 sine = fabs(a->sine * b->cosine - a->cosine * b->sine);
    return fabs(dx * a->cosine + dy * a->sine) > a->half_width + b->half_width * cosine + b->half_height * sine ||
           fabs(dy * a->cosine - dx * a->sine) > a->half_height + b->half_width * sine + b->half_height * cosine;
}

static int meets_texts(const placing *p, const box *b)
{
    for (int i = 0; i < p->box_count; i++)
        if (!is_apart(p->boxes + i, b) && !is_apart(b, p->boxes + i))
            return 1;
    return 0;
}

/* A text's box with so much more room about it. */
static box grown(const box *b, double by)
{
    box more = *b;
    more.half_width += by;
    more.half_height += by;
    return more;
}

static int meets_lines(const box *b, const line *lines, int count)
{
    for (int i = 0; i < count; i++)
        if (line_meets(b, lines[i].x, lines[i].y, lines[i].x_end, lines[i].y_end))
            return 1;
    return 0;
}

static int has_leader(const tside_dimension *d)
{
    return d->kind == TSIDE_DIMENSION_ANGLE || d->kind == TSIDE_DIMENSION_RADIUS ||
           d->kind == TSIDE_DIMENSION_DIAMETER || d->kind == TSIDE_DIMENSION_PLACE;
}

/* Whether a text would cover a place from which a leader is still to begin. */
static int covers_anchor(const placing *p, const box *b)
{
    const tside_drawing *drawing = p->drawing;
    for (int i = 0; i < drawing->note_count; i++)
        if (line_meets(b, drawing->notes[i].x, drawing->notes[i].y, drawing->notes[i].x, drawing->notes[i].y))
            return 1;
    for (int i = 0; i < drawing->dimension_count; i++) {
        const tside_dimension *d = drawing->dimensions + i;
        if (has_leader(d) && line_meets(b, d->x, d->y, d->x, d->y))
            return 1;
    }
    return 0;
}

static int is_free(const placing *p, const box *b)
{
    const box with_arrows = grown(b, ARROW_HALF * p->scale);
    return !meets_texts(p, b) && !meets_lines(&with_arrows, p->lines, p->line_count) &&
           !meets_lines(b, p->leaders, p->leader_count) && !covers_anchor(p, &with_arrows) && !meets_strokes(p, b);
}

/* half: m, of the line's own width, or that of its arrowheads. */
static int crosses_text(const placing *p, const line *l, double half)
{
    for (int i = 0; i < p->box_count; i++) {
        const box b = grown(p->boxes + i, half);
        if (line_meets(&b, l->x, l->y, l->x_end, l->y_end))
            return 1;
    }
    return 0;
}

/* Which side of a line a point is on. */
static double side_of(const line *l, double x, double y)
{
    return (l->x_end - l->x) * (y - l->y) - (l->y_end - l->y) * (x - l->x);
}

static int cross(const line *a, const line *b)
{
    return side_of(a, b->x, b->y) * side_of(a, b->x_end, b->y_end) < 0 &&
           side_of(b, a->x, a->y) * side_of(b, a->x_end, a->y_end) < 0;
}

/* --- keeping what has its place --- */

static void spread(tside_drawing *drawing, double x, double y)
{
    drawing->left = fmin(drawing->left, x);
    drawing->right = fmax(drawing->right, x);
    drawing->bottom = fmin(drawing->bottom, y);
    drawing->top = fmax(drawing->top, y);
}

static void keep_box(placing *p, const box *b)
{
    const double wide = fabs(b->half_width * b->cosine) + fabs(b->half_height * b->sine),
                 high = fabs(b->half_width * b->sine) + fabs(b->half_height * b->cosine);
    p->boxes[p->box_count++] = *b;
    spread(p->drawing, b->x - wide, b->y - high);
    spread(p->drawing, b->x + wide, b->y + high);
}

static void keep_line(placing *p, line *place, const line *l)
{
    *place = *l;
    spread(p->drawing, l->x, l->y);
    spread(p->drawing, l->x_end, l->y_end);
}

/* The box of a text by the middle of its foot. */
static box box_of(const placing *p, double x, double y, double angle, double width)
{
    const double s = p->scale, cosine = cos(angle), sine = sin(angle), up = (ASCENT - DESCENT) / 2 * s;
    return (box){.x = x - up * sine,
                 .y = y + up * cosine,
                 .cosine = cosine,
                 .sine = sine,
                 .half_width = width / 2 + ROOM * s,
                 .half_height = (ASCENT + DESCENT) / 2 * s};
}

static int is_outside_all(const tside_dimension *d)
{
    return d->kind == TSIDE_DIMENSION_PLUMB || d->kind == TSIDE_DIMENSION_LEVEL || d->kind == TSIDE_DIMENSION_RUNNING;
}

/* --- a dimension on a line --- */

/* A dimension's line: its direction, the way out from what it measures, and its points along and across. */
typedef struct measured {
    double ux, uy;     /* along */
    double nx, ny;     /* out */
    double from, to;   /* m along, from < to */
    double across[2];  /* m out, of the two points in the order of from and to */
    double text_angle; /* rad */
} measured;

static measured measured_of(const placing *p, const tside_dimension *d, tside_i_beside beside)
{
    const double out = (beside == TSIDE_I_INBOARD ? -1 : 1) * p->sketch->outboard;
    measured m = {.ux = 1, .ny = beside == TSIDE_I_BELOW ? -1 : 1};
    double from, to, length = hypot(d->x_end - d->x, d->y_end - d->y);
    if (d->kind == TSIDE_DIMENSION_PLUMB) {
        m = (measured){.uy = 1, .nx = out};
    } else if ((d->kind == TSIDE_DIMENSION_ALONG || d->kind == TSIDE_DIMENSION_ARC) && length > 0) {
        m.ux = (d->x_end - d->x) / length;
        m.uy = (d->y_end - d->y) / length;
        m.nx = -m.uy;
        m.ny = m.ux;
        if (beside == TSIDE_I_ABOVE || beside == TSIDE_I_BELOW ? m.ny * (beside == TSIDE_I_ABOVE ? 1 : -1) < 0
                                                               : m.nx * out < 0) {
            m.nx = -m.nx;
            m.ny = -m.ny;
        }
    }
    from = d->x * m.ux + d->y * m.uy;
    to = d->x_end * m.ux + d->y_end * m.uy;
    m.from = fmin(from, to);
    m.to = fmax(from, to);
    m.across[from > to] = d->x * m.nx + d->y * m.ny;
    m.across[from <= to] = d->x_end * m.nx + d->y_end * m.ny;
    /* read from below or from the right */
    m.text_angle = atan2(m.uy, m.ux);
    if (m.text_angle > TSIDE_PI / 2 + PLUMB)
        m.text_angle -= TSIDE_PI;
    if (m.text_angle <= -TSIDE_PI / 2 + PLUMB)
        m.text_angle += TSIDE_PI;
    return m;
}

static line line_of(const measured *m, double from, double across, double to, double across_to)
{
    return (line){from * m->ux + across * m->nx, from * m->uy + across * m->ny, to * m->ux + across_to * m->nx,
                  to * m->uy + across_to * m->ny};
}

/* The lines that lead from the points to the dimension line; of no length where they are on it. */
static line leading(const placing *p, const measured *m, int which, double across)
{
    const double at = which ? m->to : m->from, from = m->across[which], way = across < from ? -1 : 1,
                 gap = fmin(GAP * p->scale, fabs(across - from));
    return line_of(m, at, from + way * gap, at, across + way * PAST * p->scale);
}

/* Whether a parallel dimension line stands so near that arrows and texts would touch. */
static int is_crowded(const placing *p, const line *l)
{
    const double length = hypot(l->x_end - l->x, l->y_end - l->y), s = p->scale;
    box b = {.x = (l->x + l->x_end) / 2,
             .y = (l->y + l->y_end) / 2,
             .cosine = 1,
             .half_width = length / 2 + ROOM * s,
             .half_height = 0.4 * RANK * s};
    if (length > 0) {
        b.cosine = (l->x_end - l->x) / length;
        b.sine = (l->y_end - l->y) / length;
    }
    for (int i = 0; i < p->drawing->dimension_count; i++) {
        const tside_dimension *d = p->drawing->dimensions + i;
        const double turned = (d->to_x - d->from_x) * b.sine - (d->to_y - d->from_y) * b.cosine;
        const int has_line = d->from_x != d->to_x || d->from_y != d->to_y;
        if (has_line && fabs(turned) < 1e-9 * s && line_meets(&b, d->from_x, d->from_y, d->to_x, d->to_y))
            return 1;
    }
    return 0;
}

/* --- a text with a leader --- */

static int crosses_leader(const placing *p, const line *l)
{
    for (int i = 0; i < p->leader_count; i++)
        if (cross(p->leaders + i, l))
            return 1;
    return 0;
}

/* A text with the line that leads to it. */
typedef struct led {
    line leader;
    double text_x, text_y;
} led;

/* Tries a text so far from a point; crossing: its leader may cross others. */
static int try_leader(placing *p, double x, double y, double away, double heading, double width, int crossing,
                      led *made)
{
    const double s = p->scale, cosine = cos(heading), sine = sin(heading);
    const int beside = fabs(cosine) > 0.3;
    box b;
    made->leader = (line){x, y, x + away * cosine, y + away * sine};
    made->text_x = made->leader.x_end + (beside ? copysign(width / 2 + ROOM * s, cosine) : 0);
    made->text_y = made->leader.y_end - (beside ? (ASCENT - DESCENT) / 2 * s : sine > 0 ? -DESCENT * s : ASCENT * s);
    b = box_of(p, made->text_x, made->text_y, 0, width);
    if (!is_free(p, &b) || crosses_text(p, &made->leader, 0) || (!crossing && crosses_leader(p, &made->leader)))
        return 0;
    keep_box(p, &b);
    keep_line(p, p->leaders + p->leader_count++, &made->leader);
    return 1;
}

/* How places round a point are tried: in how many headings, how far from each other, and how often farther. */
typedef struct search {
    int headings, distances;
    double step; /* m on paper */
    int crossing;
} search;

/*
 * The nearest place round a point, first on the side where there is nothing but air; no leader runs level, as outlines
 * do.
 */
static int try_round(placing *p, double x, double y, double width, const search *how, led *made)
{
    const double s = p->scale, outward = p->sketch->outboard > 0 ? TSIDE_PI / 8 : TSIDE_PI * 7 / 8;
    for (int far = 0; far < how->distances; far++)
        for (int i = 0; i < how->headings; i++) {
            const int turn = i % 2 ? (i + 1) / 2 : -(i / 2);
            const double heading = outward + turn * 2 * TSIDE_PI / how->headings;
            if (fabs(sin(heading)) > 0.1 &&
                try_leader(p, x, y, (7e-3 + far * how->step) * s, heading, width, how->crossing, made))
                return 1;
        }
    return 0;
}

/* Texts stand close where much is drawn small: there is often but a narrow way out, and seldom a short one. */
static int place_by_leader(placing *p, double x, double y, double width, led *made)
{
    static const search searches[] = {{16, 24, 4e-3, 0}, {16, 24, 4e-3, 1}, {64, 48, 4e-3, 1}};
    for (int i = 0; i < 3; i++)
        if (try_round(p, x, y, width, searches + i, made))
            return 1;
    return 0;
}

/* --- the text of a dimension on its line --- */

/* A dimension line so far out, with the lines that lead to it. */
typedef struct drawn {
    line own, leads[2];
} drawn;

/* more, less: how far it goes on beyond its end and its beginning. */
static drawn drawn_at(const placing *p, const measured *m, double across, double less, double more)
{
    drawn l = {.own = line_of(m, m->from - less, across, m->to + more, across)};
    for (int i = 0; i < 2; i++)
        l.leads[i] = leading(p, m, i, across);
    return l;
}

static int is_clear(const placing *p, const drawn *l)
{
    return !crosses_text(p, &l->own, ARROW_HALF * p->scale) && !crosses_text(p, l->leads, 0) &&
           !crosses_text(p, l->leads + 1, 0) && !is_crowded(p, &l->own);
}

static void keep_drawn(placing *p, tside_dimension *d, const drawn *l)
{
    keep_line(p, p->lines + p->line_count++, &l->own);
    keep_line(p, p->lines + p->line_count++, l->leads);
    keep_line(p, p->lines + p->line_count++, l->leads + 1);
    d->from_x = l->own.x;
    d->from_y = l->own.y;
    d->to_x = l->own.x_end;
    d->to_y = l->own.y_end;
}

static int meets_leads(const box *b, const drawn *l)
{
    return line_meets(b, l->leads[0].x, l->leads[0].y, l->leads[0].x_end, l->leads[0].y_end) ||
           line_meets(b, l->leads[1].x, l->leads[1].y, l->leads[1].x_end, l->leads[1].y_end);
}

/* How far a line goes on for arrows that are outside. */
static double tails(const placing *p, const measured *m)
{
    return m->to - m->from < SHORT * p->scale ? 2 * ARROW * p->scale : 0;
}

enum { RANKS = 12 };

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
static int is_in_the_way(const placing *p, const box *b)
{
    for (int i = 0; i < p->drawing->dimension_count; i++)
        if (p->pending[i]) {
            const measured m = measured_of(p, p->drawing->dimensions + i, p->sketch->beside[i]);
            const double across = first_rank(p, &m) + RANKS * RANK * p->scale;
            const line leads[] = {leading(p, &m, 0, across), leading(p, &m, 1, across)};
            if (meets_lines(b, leads, 2))
                return 1;
        }
    return 0;
}

/*
 * Tries one place of the text on a line so far out: in its middle (0), beyond its end (1) or its beginning (-1).
 * strictly: where it is not in the way of others either.
 */
static int try_text(placing *p, tside_dimension *d, const measured *m, double across, int place, int strictly)
{
    const double s = p->scale, width = d->text_width, tail = tails(p, m),
                 beyond = (ARROW + ROOM) * s + width + tail / 2;
    const drawn l = drawn_at(p, m, across, place < 0 ? beyond : tail, place > 0 ? beyond : tail);
    const double at = place > 0   ? m->to + beyond - width / 2
                      : place < 0 ? m->from - beyond + width / 2
                                  : (m->from + m->to) / 2,
                 x = at * m->ux + across * m->nx - ABOVE_LINE * s * sin(m->text_angle),
                 y = at * m->uy + across * m->ny + ABOVE_LINE * s * cos(m->text_angle);
    const box b = box_of(p, x, y, m->text_angle, width);
    if (!place && width > m->to - m->from)
        return 0;
    if (!is_clear(p, &l) || meets_leads(&b, &l) || (strictly && is_in_the_way(p, &b)) || !is_free(p, &b))
        return 0;
    keep_box(p, &b);
    keep_drawn(p, d, &l);
    d->arrows_outside = tail > 0;
    d->text_x = x;
    d->text_y = y;
    d->text_angle = m->text_angle;
    return 1;
}

/* Leads to a dimension's text from the middle of its line, or from the point where it has none. */
static int lead(placing *p, tside_dimension *d)
{
    led made;
    d->leader = place_by_leader(p, (d->from_x + d->to_x) / 2, (d->from_y + d->to_y) / 2, d->text_width, &made);
    if (!d->leader)
        return 0;
    d->leader_x = made.leader.x_end;
    d->leader_y = made.leader.y_end;
    d->text_x = made.text_x;
    d->text_y = made.text_y;
    return 1;
}

static void take_line_away(tside_dimension *d)
{
    d->from_x = d->to_x = d->x;
    d->from_y = d->to_y = d->y;
}

/* Tries a line so far out with its text anywhere. */
static int try_line(placing *p, tside_dimension *d, const measured *m, double across)
{
    const double tail = tails(p, m);
    const drawn l = drawn_at(p, m, across, tail, tail);
    if (!is_clear(p, &l))
        return 0;
    keep_drawn(p, d, &l);
    d->arrows_outside = tail > 0;
    if (lead(p, d))
        return 1;
    p->line_count -= 3;
    take_line_away(d);
    return 0;
}

/* Without a line: told at its first point. */
static void tell_at_point(placing *p, tside_dimension *d)
{
    take_line_away(d);
    lead(p, d);
}

/* Where a dimension's ranks are: from its own side outward, and of one beside what it measures from the other too. */
typedef struct ranks {
    double near, far, step; /* m across */
    int both;
} ranks;

static ranks ranks_of(const placing *p, const tside_dimension *d, const measured *m)
{
    const double s = p->scale;
    if (is_outside_all(d))
        return (ranks){.near = first_rank(p, m), .step = RANK * s};
    return (ranks){fmax(m->across[0], m->across[1]) + FIRST * s, fmin(m->across[0], m->across[1]) - FIRST * s, STEP * s,
                   1};
}

/* With the text on the line. */
static int place_with_text(placing *p, tside_dimension *d, const measured *m, int strictly)
{
    static const int places[] = {0, 1, -1};
    const ranks r = ranks_of(p, d, m);
    for (int rank = 0; rank < RANKS; rank++)
        for (int i = 0; i < 3; i++)
            if (try_text(p, d, m, r.near + rank * r.step, places[i], strictly) ||
                (r.both && try_text(p, d, m, r.far - rank * r.step, places[i], strictly)))
                return 1;
    return 0;
}

/* With a leader from the line to the text. */
static int place_with_leader(placing *p, tside_dimension *d, const measured *m)
{
    const ranks r = ranks_of(p, d, m);
    for (int rank = 0; rank < RANKS; rank++)
        if (try_line(p, d, m, r.near + rank * r.step) || (r.both && try_line(p, d, m, r.far - rank * r.step)))
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

/* On its own side if there is any room. */
static void place_on_line(placing *p, tside_dimension *d, tside_i_beside beside)
{
    const measured own = measured_of(p, d, beside), other = measured_of(p, d, opposite(beside));
    if (place_with_text(p, d, &own, 1) || place_with_text(p, d, &other, 1) || place_with_text(p, d, &own, 0) ||
        place_with_leader(p, d, &own) || place_with_leader(p, d, &other))
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

/* Hard by its place: left of it, or right, by its middle, or above or below it. */
static int place_figure(placing *p, tside_note *note, tside_i_beside beside)
{
    const double s = p->scale, away = note->text_width / 2 + FIGURE * s;
    box b;
    note->to_x = note->x;
    note->to_y = note->y;
    note->text_x = note->x + (beside == TSIDE_I_OUTBOARD ? away : beside == TSIDE_I_INBOARD ? -away : 0);
    note->text_y = note->y + (beside == TSIDE_I_ABOVE   ? FIGURE + DESCENT
                              : beside == TSIDE_I_BELOW ? -FIGURE - ASCENT
                                                        : -(ASCENT - DESCENT) / 2) *
                                 s;
    b = box_of(p, note->text_x, note->text_y, 0, note->text_width);
    if (meets_texts(p, &b))
        return 0;
    keep_box(p, &b);
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
    int placed = 0;
    for (int i = 0; i < drawing->note_count; i++) {
        tside_note note = drawing->notes[i];
        if (place_note(p, &note, p->sketch->figure_beside[i]))
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

void tside_i_place_texts(tside_i_sketch *sketch)
{
    tside_drawing *drawing = sketch->drawing;
    placing p = {.sketch = sketch, .drawing = drawing, .scale = drawing->picture.scale};
    int order[TSIDE_DIMENSIONS];
    drawing->left = sketch->left;
    drawing->bottom = sketch->bottom;
    drawing->right = sketch->right;
    drawing->top = sketch->top;
    in_order(&p, order);
    for (int i = 0; i < drawing->dimension_count; i++)
        p.pending[i] = is_outside_all(drawing->dimensions + i);
    for (int i = 0; i < drawing->dimension_count; i++)
        place_dimension(&p, order[i]);
    place_notes(&p);
}
