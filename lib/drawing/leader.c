/* SPDX-License-Identifier: MIT */
/*
 * Where a text with a leader stands: round its point in so many headings, in each at the first place that has room,
 * at last where the leader is short and the drawing grows little. No leader crosses a text, and none another where that
 * can be. Source: derivation, plane geometry; the costs are this library's choice.
 */
#include "drawing/leader.h"

/* m on paper */
#define NEAREST 7e-3 /* the shortest leader */
#define FARTHER 5e-3 /* from one that is tried to the next */

#define GROWTH 2.5 /* by how much a leader may be longer for a drawing smaller by as much */

/* --- headings --- */

/* up to how many headings from level a text is beside its leader's end, and not above or below it */
enum { HEADINGS = TSIDE_I_HEADINGS, QUARTER = HEADINGS / 4, BESIDE = 12 };

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

static double cosine_of(unsigned heading)
{
    const unsigned from_level = heading > HEADINGS / 2 ? HEADINGS - heading : heading;
    return from_level <= QUARTER ? cosines[from_level] : -cosines[HEADINGS / 2 - from_level];
}

static double sine_of(unsigned heading)
{
    return cosine_of((heading + 3 * QUARTER) % HEADINGS);
}

void tside_i_leaders_begin(tside_i_room *room)
{
    const double step = FARTHER * room->scale;
    const int across = tside_i_paper_parts(step * room->paper.across), up = tside_i_paper_parts(step * room->paper.up);
    for (unsigned i = 0; i <= QUARTER; i++) {
        const int x = (int)(across * cosines[i]), y = (int)(up * cosines[QUARTER - i]);
        room->steps[i] = (tside_i_step){x, y};
        room->steps[HEADINGS / 2 - i] = (tside_i_step){-x, y};
        room->steps[HEADINGS / 2 + i] = (tside_i_step){-x, -y};
        room->steps[(HEADINGS - i) % HEADINGS] = (tside_i_step){x, -y};
    }
}

/* Which heading is the next, by turns on either side of the one that is tried first: where there is but air. */
static unsigned heading_of(const tside_i_room *room, unsigned number, unsigned each)
{
    const unsigned outward = room->sketch->outboard > 0 ? HEADINGS / 16 : HEADINGS * 7 / 16;
    return (outward + (number % 2 ? (number + 1) / 2 : HEADINGS - number / 2) * each) % HEADINGS;
}

/* No leader runs level, as outlines do. */
static int is_level(unsigned heading)
{
    return (heading + 1) % (HEADINGS / 2) < 3;
}

/* Whether its text is beside a leader's end, and not above or below it. */
static int is_beside(unsigned heading)
{
    return (heading + BESIDE) % (HEADINGS / 2) <= 2 * BESIDE;
}

/* --- a search --- */

enum { FARTHEST = 40 }; /* steps */

/* In each so many-th heading, and how often farther. */
typedef struct reach {
    unsigned each;
    int distances;
} reach;

typedef struct search {
    tside_i_room *room;
    double x, y;     /* the point */
    tside_i_box box; /* of the text, wherever it is */
    double step;
    tside_i_mover text; /* with its lower left corner on the point */
    double least[2];    /* the least cost, where no leader is crossed, and where one is */
    tside_i_led best[2];
} search;

static tside_i_line move_to(search *s, unsigned heading, int far)
{
    const double cosine = cosine_of(heading), sine = sine_of(heading), away = NEAREST * s->room->scale + far * s->step;
    const tside_i_line leader = {s->x, s->y, s->x + away * cosine, s->y + away * sine};
    const int beside = is_beside(heading);
    s->box.x = leader.x_end + (beside ? copysign(s->box.wide, cosine) : 0);
    s->box.y = leader.y_end + (beside ? 0 : copysign(s->box.high, sine));
    return leader;
}

/* The text on its way in a heading: how many steps it is from the nearest place. */
typedef struct way {
    unsigned heading;
    int far;
    tside_i_mover text;
} way;

static way way_of(const search *s, unsigned heading)
{
    const tside_i_step *step = s->room->steps + heading;
    const int beside = is_beside(heading);
    way w = {heading, 0, s->text};
    w.text.step_x = step->x;
    w.text.step_y = step->y;
    w.text.left += (int)(step->x * (NEAREST / FARTHER)) - (!beside ? w.text.wide / 2 : step->x < 0 ? w.text.wide : 0);
    w.text.bottom += (int)(step->y * (NEAREST / FARTHER)) - (beside ? w.text.high / 2 : step->y < 0 ? w.text.high : 0);
    return w;
}

static double over_nought(double value)
{
    return value > 0 ? value : 0;
}

/* How much larger, across and up, a text would make the drawing. */
static double growth(const search *s)
{
    const tside_drawing *d = s->room->drawing;
    const tside_i_box *b = &s->box;
    return over_nought(d->left - (b->x - b->wide)) + over_nought(b->x + b->wide - d->right) +
           over_nought(d->bottom - (b->y - b->high)) + over_nought(b->y + b->high - d->top);
}

/* A place that has room. Where its leader meets a text, or another, one that goes on farther meets it too. */
static void consider(search *s, unsigned heading, int far)
{
    const tside_i_line leader = move_to(s, heading, far);
    const double cost = far * s->step + GROWTH * growth(s);
    int crossing;
    if (cost >= s->least[0] || tside_i_crosses_text(s->room, &leader))
        return;
    crossing = tside_i_crosses_leader(s->room, &leader);
    if (cost >= s->least[crossing])
        return;
    s->least[crossing] = cost;
    s->best[crossing] = (tside_i_led){leader, s->box.x,
                                      s->box.y - (TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2 * s->room->scale};
}

/* On to where it may have room, or, where it has it or leaves the paper, out of the search. */
static void go_on(search *s, way *w)
{
    const int steps = tside_i_paper_steps_to_room(&s->room->paper, &w->text);
    if (steps == 0)
        consider(s, w->heading, w->far);
    if (steps == 0 || steps > FARTHEST) {
        w->far = FARTHEST;
        return;
    }
    w->text.left += steps * w->text.step_x;
    w->text.bottom += steps * w->text.step_y;
    w->far += steps;
}

/* All headings at once, farther and farther: a cost is never less than the distance. */
static void look_round(search *s, const reach *how)
{
    way ways[HEADINGS];
    int count = 0;
    for (unsigned i = 0; i < HEADINGS / how->each; i++) {
        const unsigned heading = heading_of(s->room, i, how->each);
        if (!is_level(heading))
            ways[count++] = way_of(s, heading);
    }
    for (int far = 0; far < how->distances && far * s->step < s->least[0]; far++)
        for (int i = 0; i < count; i++)
            if (ways[i].far == far)
                go_on(s, ways + i);
}

static void keep(search *s, const tside_i_led *made)
{
    s->box.x = made->text_x;
    s->box.y = made->text_y + (TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2 * s->room->scale;
    tside_i_room_keep_text(s->room, &s->box);
    tside_i_room_keep_leader(s->room, &made->leader);
}

static search search_of(tside_i_room *room, double x, double y, double width)
{
    const tside_i_paper *paper = &room->paper;
    search s = {.room = room,
                .x = x,
                .y = y,
                .box = tside_i_text_box(room, x, y, 1, 0, width),
                .step = FARTHER * room->scale,
                .text = {.left = tside_i_paper_parts((x - paper->left) * paper->across),
                         .bottom = tside_i_paper_parts((y - paper->bottom) * paper->up)},
                .least = {HUGE_VAL, HUGE_VAL}};
    s.text.wide = tside_i_paper_parts(2 * s.box.wide * paper->across);
    s.text.high = tside_i_paper_parts(2 * s.box.high * paper->up);
    return s;
}

/* Texts stand close where much is drawn small: there is often but a narrow way out, and seldom a short one. */
int tside_i_lead(tside_i_room *room, double x, double y, double width, tside_i_led *made)
{
    static const reach reaches[] = {{4, 20}, {1, FARTHEST}};
    search s = search_of(room, x, y, width);
    for (int i = 0; i < 2; i++) {
        look_round(&s, reaches + i);
        for (int crossing = 0; crossing < 2; crossing++)
            if (s.least[crossing] < HUGE_VAL) {
                *made = s.best[crossing];
                keep(&s, made);
                return 1;
            }
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
