/* SPDX-License-Identifier: MIT */
/*
 * Where a text with a leader stands: round its point in so many headings, in each at the first place that has room,
 * at last where the leader is short and the drawing grows little. No leader crosses a text, and none another where that
 * can be. Source: derivation, plane geometry; the costs are this library's choice.
 */
#include "drawing/leader.h"

#include <limits.h>

/* m on paper */
#define NEAREST 7e-3 /* the shortest leader */
#define FARTHER 5e-3 /* from one that is tried to the next */

#define STEEP 0.3  /* cosine of a heading, below which a text is above or below its leader's end and not beside it */
#define GROWTH 2.5 /* by how much a leader may be longer for a drawing smaller by as much */

/* --- headings --- */

enum { HEADINGS = 64 }; /* in a whole turn */

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

/* Which heading is the next, by turns on either side of the one that is tried first: where there is but air. */
static int heading_of(const tside_i_room *room, int number, int each)
{
    const int outward = room->sketch->outboard > 0 ? HEADINGS / 16 : HEADINGS * 7 / 16;
    return (outward + (number % 2 ? (number + 1) / 2 : HEADINGS - number / 2) * each) % HEADINGS;
}

/* No leader runs level, as outlines do. */
static int is_level(int heading)
{
    return (heading + 1) % (HEADINGS / 2) < 3;
}

/* --- a search --- */

/* In each so many-th heading, and how often farther. */
typedef struct reach {
    int each, distances;
} reach;

typedef struct search {
    tside_i_room *room;
    double x, y;     /* the point */
    tside_i_box box; /* of the text, wherever it is */
    double step;
    tside_i_mover text; /* with its lower left corner on the point, and by the longest steps there can be */
    double least[2];    /* the least cost, where no leader is crossed, and where one is */
    tside_i_led best[2];
} search;

static int is_beside(double cosine)
{
    return fabs(cosine) > STEEP;
}

static tside_i_line move_to(search *s, int heading, int far)
{
    const double cosine = cosine_of(heading), sine = sine_of(heading), away = NEAREST * s->room->scale + far * s->step;
    const tside_i_line leader = {s->x, s->y, s->x + away * cosine, s->y + away * sine};
    const int beside = is_beside(cosine);
    s->box.x = leader.x_end + (beside ? copysign(s->box.wide, cosine) : 0);
    s->box.y = leader.y_end + (beside ? 0 : copysign(s->box.high, sine));
    return leader;
}

/* The text on its way in a heading, at the nearest place. */
static tside_i_mover mover_of(const search *s, int heading)
{
    const double cosine = cosine_of(heading), sine = sine_of(heading);
    const int beside = is_beside(cosine), step_x = (int)(s->text.step_x * cosine),
              step_y = (int)(s->text.step_y * sine);
    tside_i_mover m = s->text;
    m.left += (int)(step_x * (NEAREST / FARTHER)) - (!beside ? m.wide / 2 : cosine < 0 ? m.wide : 0);
    m.bottom += (int)(step_y * (NEAREST / FARTHER)) - (beside ? m.high / 2 : sine < 0 ? m.high : 0);
    m.step_x = step_x;
    m.step_y = step_y;
    return m;
}

/* How much larger, across and up, a text would make the drawing. */
static double growth(const search *s)
{
    const tside_drawing *d = s->room->drawing;
    const tside_i_box *b = &s->box;
    return fmax(d->left - (b->x - b->wide), 0) + fmax(b->x + b->wide - d->right, 0) +
           fmax(d->bottom - (b->y - b->high), 0) + fmax(b->y + b->high - d->top, 0);
}

/* A place that has room. Where its leader meets a text, or another, one that goes on farther meets it too. */
static void consider(search *s, int heading, int far)
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

/* A cost is never less than the distance, so that none is tried at which that is too much. */
static void look_round(search *s, const reach *how)
{
    int distances = how->distances;
    for (int i = 0; i < HEADINGS / how->each && distances > 0; i++) {
        const int heading = heading_of(s->room, i, how->each);
        const tside_i_mover m = mover_of(s, heading);
        const int far = is_level(heading) ? distances : tside_i_paper_next_room(&s->room->paper, &m, distances);
        if (far < distances) {
            consider(s, heading, far);
            distances = (int)ceil(fmin(s->least[0] / s->step, distances));
        }
    }
}

static void keep(search *s, const tside_i_led *made)
{
    s->box.x = made->text_x;
    s->box.y = made->text_y + (TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2 * s->room->scale;
    tside_i_room_keep_text(s->room, &s->box);
    tside_i_room_keep_line(s->room, &made->leader);
}

static search search_of(tside_i_room *room, double x, double y, double width)
{
    const tside_i_paper *paper = &room->paper;
    search s = {.room = room,
                .x = x,
                .y = y,
                .box = tside_i_text_box(room, x, y, 1, 0, width),
                .step = FARTHER * room->scale,
                .text = {.left = tside_i_paper_across(paper, x), .bottom = tside_i_paper_up(paper, y)},
                .least = {HUGE_VAL, HUGE_VAL}};
    s.text.wide = tside_i_paper_across(paper, x + 2 * s.box.wide) - s.text.left;
    s.text.high = tside_i_paper_up(paper, y + 2 * s.box.high) - s.text.bottom;
    s.text.step_x = tside_i_paper_across(paper, x + s.step) - s.text.left;
    s.text.step_y = tside_i_paper_up(paper, y + s.step) - s.text.bottom;
    return s;
}

/* Texts stand close where much is drawn small: there is often but a narrow way out, and seldom a short one. */
int tside_i_lead(tside_i_room *room, double x, double y, double width, tside_i_led *made)
{
    static const reach reaches[] = {{4, 20}, {1, 40}};
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
