/* SPDX-License-Identifier: MIT */
/*
 * Where a text with a leader stands: round its point in so many headings, in each at the first place that has room,
 * at last where the leader is short and the drawing grows little. No leader crosses a text, and none another where that
 * can be. Source: derivation, plane geometry; the costs are this library's choice.
 */
#include "drawing/leader.h"

/* m on paper */
#define NEAREST 7e-3 /* the shortest leader */
#define FARTHER 6e-3 /* from one that is tried to the next */

#define GROWTH 4 /* by how much a leader may be longer for a drawing smaller by as much on its longer side */
#define DEAR 25  /* steps that the best of few ways may cost before more are tried */

/* --- ways --- */

/*
 * A whole turn has so many headings. All but those within one of level, as outlines run, are ways of leaders; every
 * fourth is tried first. Up to how many from level a text is beside its leader's end, and not above or below it.
 */
enum { HEADINGS = 64, QUARTER = HEADINGS / 4, WAYS = TSIDE_I_WAYS, COARSE = 4, WAYS_COARSE = 14, BESIDE = 12 };

static const double cosines[QUARTER + 1] = {
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

static double cosine_of(int heading)
{
    const int from_level = heading > HEADINGS / 2 ? HEADINGS - heading : heading;
    return from_level <= QUARTER ? cosines[from_level] : -cosines[HEADINGS / 2 - from_level];
}

static int is_level(int heading)
{
    return (heading + 1) % (HEADINGS / 2) < 3;
}

/* So many cells, or at least as many: where one is large, a text in the middle of its own must still be beyond its
 * point. */
static double parts_of(double cells, double least)
{
    return TSIDE_I_PAPER_PARTS * (cells > least ? cells : least);
}

static tside_i_way way_of(const tside_i_room *room, int heading)
{
    const double cosine = cosine_of(heading), sine = cosine_of((heading + 3 * QUARTER) % HEADINGS),
                 across = room->scale * room->paper.across, up = room->scale * room->paper.up;
    const int beside = (heading + BESIDE) % (HEADINGS / 2) <= 2 * BESIDE;
    return (tside_i_way){.near_x = (short)(parts_of(NEAREST * across, 3) * cosine),
                         .near_y = (short)(parts_of(NEAREST * up, 3) * sine),
                         .step_x = (short)(parts_of(FARTHER * across, 2) * cosine),
                         .step_y = (short)(parts_of(FARTHER * up, 2) * sine),
                         .halves_left = !beside      ? 1
                                        : cosine < 0 ? 2
                                                     : 0,
                         .halves_below = beside     ? 1
                                         : sine < 0 ? 2
                                                    : 0};
}

/* By turns on either side of the first, where there is but air; each so many-th, or all that are not such. */
static void put_ways(const tside_i_room *room, int each, int but, tside_i_way *to)
{
    const int first = room->sketch->outboard > 0 ? HEADINGS / 16 : HEADINGS * 7 / 16;
    for (int i = 0; i < HEADINGS / each; i++) {
        const int heading = (first + (i % 2 ? (i + 1) / 2 : HEADINGS - i / 2) * each) % HEADINGS;
        if (!is_level(heading) && (!but || heading % but))
            *to++ = way_of(room, heading);
    }
}

/* Those of a reach, if they are not there yet: few leaders need more than the first. */
static void make_ways(tside_i_room *room, int wanted)
{
    if (room->way_count < WAYS_COARSE)
        put_ways(room, COARSE, 0, room->ways);
    if (wanted > WAYS_COARSE && room->way_count < WAYS)
        put_ways(room, 1, COARSE, room->ways + WAYS_COARSE);
    if (room->way_count < wanted)
        room->way_count = wanted;
}

/* --- a search --- */

/* Of all ways from one to before another, and how often farther. */
typedef struct reach {
    int from, to, distances;
} reach;

typedef struct search {
    tside_i_room *room;
    double x, y;        /* the point */
    tside_i_box box;    /* of the text, wherever it is */
    tside_i_mover text; /* with its lower left corner on the point */
    double step;
    double dear_across, dear_up; /* what it costs that the drawing grows */
    int most;                    /* steps that may still be worth while */
    double least[2];             /* the least cost, where no leader is crossed, and where one is */
    tside_i_led best[2];
} search;

static double over_nought(double value)
{
    return value > 0 ? value : 0;
}

/* What it costs that a text makes the drawing larger. */
static double growth(const search *s)
{
    const tside_drawing *d = s->room->drawing;
    const tside_i_box *b = &s->box;
    return s->dear_across * (over_nought(d->left - (b->x - b->wide)) + over_nought(b->x + b->wide - d->right)) +
           s->dear_up * (over_nought(d->bottom - (b->y - b->high)) + over_nought(b->y + b->high - d->top));
}

/* Of two that are as good the first is best, whatever their last digits. */
static int is_less(const search *s, double cost, int crossing)
{
    return cost < s->least[crossing] - 1e-6 * s->step;
}

/* A place that has room. Where its leader meets a text, or another, one that goes on farther meets it too. */
static void consider(search *s, const tside_i_way *way, const tside_i_mover *text, int far)
{
    tside_i_box *b = &s->box;
    tside_i_line leader;
    double cost;
    int crossing;
    tside_i_paper_middle(&s->room->paper, text, &b->x, &b->y);
    cost = far * s->step + growth(s);
    if (!is_less(s, cost, 0))
        return;
    leader = (tside_i_line){s->x, s->y, b->x + (way->halves_left - 1) * b->wide,
                            b->y + (way->halves_below - 1) * b->high};
    if (tside_i_crosses_text(s->room, &leader))
        return;
    crossing = tside_i_crosses_leader(s->room, &leader);
    if (!is_less(s, cost, crossing))
        return;
    s->least[crossing] = cost;
    s->best[crossing] = (tside_i_led){leader, b->x, b->y - (TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2 * s->room->scale};
    if (!crossing && cost < s->most * s->step)
        s->most = (int)ceil(cost / s->step);
}

/*
 * On each way to the first place that has room, if that is no farther than the best is dear: none costs less than its
 * distance.
 */
static void look_round(search *s, const reach *how)
{
    const tside_i_way *end = s->room->ways + how->to;
    make_ways(s->room, how->to);
    s->most = s->least[0] < how->distances * s->step ? (int)ceil(s->least[0] / s->step) : how->distances;
    for (const tside_i_way *way = s->room->ways + how->from; way < end && s->most > 0; way++) {
        tside_i_mover text = s->text;
        int far;
        text.left += way->near_x - way->halves_left * text.wide * (TSIDE_I_PAPER_PARTS / 2);
        text.bottom += way->near_y - way->halves_below * text.high * (TSIDE_I_PAPER_PARTS / 2);
        text.step_x = way->step_x;
        text.step_y = way->step_y;
        far = tside_i_paper_steps_to_room(&s->room->paper, &text, s->most);
        if (far < s->most)
            consider(s, way, &text, far);
    }
}

static void keep(search *s, const tside_i_led *made)
{
    s->box.x = made->text_x;
    s->box.y = made->text_y + (TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2 * s->room->scale;
    tside_i_room_keep_text(s->room, &s->box);
    tside_i_room_keep_leader(s->room, &made->leader);
}

/* It is a drawing's longer side that settles at which scale it fits on a sheet: the other grows at less cost. */
static search search_of(tside_i_room *room, double x, double y, double width)
{
    const tside_i_paper *paper = &room->paper;
    const double wide = room->drawing->right - room->drawing->left, high = room->drawing->top - room->drawing->bottom;
    search s = {.room = room,
                .x = x,
                .y = y,
                .box = tside_i_text_box(room, x, y, 1, 0, width),
                .text = {.left = tside_i_paper_parts((x - paper->left) * paper->across),
                         .bottom = tside_i_paper_parts((y - paper->bottom) * paper->up)},
                .step = FARTHER * room->scale,
                .dear_across = GROWTH * (wide < high ? wide / high : 1),
                .dear_up = GROWTH * (high < wide ? high / wide : 1),
                .least = {HUGE_VAL, HUGE_VAL}};
    s.text.wide = tside_i_paper_cells(2 * s.box.wide * paper->across);
    s.text.high = tside_i_paper_cells(2 * s.box.high * paper->up);
    return s;
}

/*
 * Texts stand close where much is drawn small: there is often but a narrow way out, and seldom a short one. Where the
 * drawing would grow much for the best of few ways, more of them are tried.
 */
int tside_i_lead(tside_i_room *room, double x, double y, double width, tside_i_led *made)
{
    static const reach first = {0, WAYS_COARSE, 20}, finer = {WAYS_COARSE, WAYS, 20}, farther = {0, WAYS, 40};
    search s = search_of(room, x, y, width);
    double found;
    look_round(&s, &first);
    found = fmin(s.least[0], s.least[1]);
    if (found > DEAR * s.step)
        look_round(&s, found < HUGE_VAL ? &finer : &farther);
    for (int crossing = 0; crossing < 2; crossing++)
        if (s.least[crossing] < HUGE_VAL) {
            *made = s.best[crossing];
            keep(&s, made);
            return 1;
        }
    return 0;
}

/* As near as its leader then crosses no text. */
static void lead_outside_all(tside_i_room *room, double x, double y, double width, tside_i_led *made)
{
    enum { ASIDE = 60 };
    search s = search_of(room, x, y, width);
    const double scale = room->scale, below = room->drawing->bottom - (TSIDE_I_BESIDE + TSIDE_I_ASCENT) * scale,
                 above = room->drawing->top + (TSIDE_I_BESIDE + TSIDE_I_DESCENT) * scale;
    for (int i = 0; i <= 4 * ASIDE; i++) {
        const double at = x + (i / 2 % 2 ? -1 : 1) * (i / 2 + 1) / 2 * s.step;
        *made = i % 2 ? (tside_i_led){{x, y, at, above - TSIDE_I_DESCENT * scale}, at, above}
                      : (tside_i_led){{x, y, at, below + TSIDE_I_ASCENT * scale}, at, below};
        if (!tside_i_crosses_text(room, &made->leader))
            break;
    }
    keep(&s, made);
}

void tside_i_lead_anyhow(tside_i_room *room, double x, double y, double width, tside_i_led *made)
{
    if (!tside_i_lead(room, x, y, width, made))
        lead_outside_all(room, x, y, width, made);
}
