/* SPDX-License-Identifier: MIT */
/* An end wall and the roll from outside: all that is drawn but bow and curtain, stroke by stroke. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "portraits.h"
#include "scenes.h"

Suite *strokes_outside_suite(void);

#define ALWAYS TSIDE_SHOWN_ALWAYS
#define WIDE TSIDE_LINE_WIDE
#define NARROW TSIDE_LINE_NARROW
#define CHAIN TSIDE_LINE_CHAIN

static tside_collar collar_of(const scene *s)
{
    return s->which == TSIDE_DRIVE_END ? tside_drive_collar(&s->side.drive) : s->side.collar;
}

static tside_part rider_of(const scene *s)
{
    return s->which == TSIDE_DRIVE_END ? TSIDE_PART_DRIVE : TSIDE_PART_COLLAR;
}

static int stands(const scene *s)
{
    return s->end->guide.foot == TSIDE_FOOT_FIXED;
}

static int has_extender(const scene *s)
{
    return s->end->hung == TSIDE_ON_EXTENDER;
}

/* --- what stands, in both views --- */

static void check_board(const scene *s, portrait *p, double ground)
{
    double face;
    tside_fault fault;
    if (!s->bow.board_given)
        return;
    if (tside_bow_face(&s->bow, s->bow.board_y, &face, &fault) == TSIDE_OK)
        has_line(p, TSIDE_PART_BOARD, ALWAYS, WIDE, face, s->bow.board_y, s->bow.board_x, s->bow.board_y);
    has_line(p, TSIDE_PART_BOARD, ALWAYS, WIDE, s->bow.board_x, s->bow.board_y, s->bow.board_x, ground);
    has_note(p, TSIDE_PART_BOARD, ALWAYS, s->bow.board_x, (s->bow.board_y + fmax(ground, p->bottom)) / 2);
}

static void check_rail(const scene *s, portrait *p)
{
    const double hip = s->side.curtain.hip, x = s->plan.fixing_x;
    has_line(p, TSIDE_PART_RAIL, ALWAYS, WIDE, s->face, hip, x, hip);
    has_line(p, TSIDE_PART_RAIL, ALWAYS, WIDE, x, hip, x, hip - s->side.curtain.rail_depth);
    has_note(p, TSIDE_PART_HIP, ALWAYS, x, hip);
}

/* --- an end wall --- */

typedef struct extent {
    double inner, bottom, outer, top;
} extent;

static void show(extent *e, double x, double y, double about)
{
    e->inner = fmin(e->inner, x - about);
    e->bottom = fmin(e->bottom, y - about);
    e->outer = fmax(e->outer, x + about);
    e->top = fmax(e->top, y + about);
}

static void show_roll(extent *e, const scene *s, const tside_position *at)
{
    show(e, at->x, at->y, fmax(at->diameter / 2, collar_of(s).height));
}

/* 6 mm about the bow's foot and hip, the rail, the bar's travel, the guide's reach, and the extender with a side more.
 */
static extent shown_of(const scene *s, double paper)
{
    const tside_end_plan *plan = s->end_plan;
    const tside_layout *l = &plan->layout;
    const double ground = plan->ground, about = 6e-3 * paper;
    extent e = {s->face - s->bow.diameter, ground, s->face, ground};
    show(&e, plan->sweep.walkway_error, plan->eye_y, 0);
    show(&e, s->plan.fixing_x, s->side.curtain.hip, 0);
    show(&e, plan->eye_x + plan->sweep.length * sin(plan->sweep.lean_least), ground, 0);
    show_roll(&e, s, &s->plan.shut);
    show_roll(&e, s, &s->plan.open);
    if (stands(s))
        show(&e, plan->fixed.foot_x, ground - s->end->footing.depth, s->end->guide.tube.diameter);
    if (has_extender(s)) {
        const double side = s->end->extender.tube.side, top = l->eye_from_top + side,
                     foot = top - l->cut_length - 2 * side;
        show(&e, l->eye_x + top * sin(l->angle), l->eye_y + top * cos(l->angle), 0);
        show(&e, l->eye_x + foot * sin(l->angle), l->eye_y + foot * cos(l->angle), 0);
        show(&e, l->member_x + l->member_from_outer, l->eye_y, 0);
    }
    return (extent){e.inner - about, e.bottom - about, e.outer + about, e.top + about};
}

static void check_keep_outs(const scene *s, portrait *p)
{
    const double ground = s->end_plan->ground;
    for (int i = 0; i < s->end->keep_out_count; i++) {
        const tside_keep_out *out = s->end->keep_outs + i;
        p->index = i;
        has_box(p, TSIDE_PART_KEEP_OUT, ALWAYS, WIDE, out->inner, out->bottom + ground, out->outer, out->top + ground);
        has_note(p, TSIDE_PART_KEEP_OUT, ALWAYS, (out->inner + out->outer) / 2, out->top + ground);
    }
    p->index = 0;
}

static void check_member(const scene *s, portrait *p)
{
    const tside_extender *extender = &s->end->extender;
    const double y = extender->member_height + s->end_plan->ground, outer = extender->member_outer,
                 tick = 1.5e-3 * p->paper, innermost = p->outboard > 0 ? p->left : -p->right;
    has_line(p, TSIDE_PART_MEMBER, ALWAYS, WIDE, extender->member_inner, y, outer, y);
    has_line(p, TSIDE_PART_MEMBER, ALWAYS, WIDE, outer, y - tick, outer, y + tick);
    has_note(p, TSIDE_PART_MEMBER, ALWAYS, fmax(outer - 0.6 * s->end_plan->layout.member_from_outer, innermost), y);
}

static void check_extender(const scene *s, portrait *p)
{
    const tside_extender *extender = &s->end->extender;
    const tside_layout *l = &s->end_plan->layout;
    const double sine = sin(l->angle), cosine = cos(l->angle),
                 named = 0.65 * l->bow_distance + 0.35 * l->member_distance, height = extender->member_height;
    has_tube(p, TSIDE_PART_EXTENDER, ALWAYS, WIDE, l->eye_x + l->eye_from_top * sine,
             l->eye_y + l->eye_from_top * cosine, l->cut_length, -l->angle, extender->tube.side);
    has_whole_circle(p, TSIDE_PART_HOLE, ALWAYS, WIDE, l->bow_x, l->bow_height, extender->bolt_hole / 2);
    has_whole_circle(p, TSIDE_PART_HOLE, ALWAYS, WIDE, l->member_x, height + s->end_plan->ground,
                     extender->bolt_hole / 2);
    has_whole_circle(p, TSIDE_PART_EYE, ALWAYS, WIDE, l->eye_x, l->eye_y, extender->eye_hole / 2);
    has_note(p, TSIDE_PART_EXTENDER, ALWAYS, l->eye_x - named * sine, l->eye_y - named * cosine);
    has_note(p, TSIDE_PART_EYE, ALWAYS, l->eye_x, l->eye_y);
}

static void check_state(const scene *s, portrait *p, const tside_position *at, tside_shown shown, tside_line_type line)
{
    const tside_collar collar = collar_of(s);
    const double r = at->diameter / 2, half = fmax(r, collar.offset);
    has_whole_circle(p, TSIDE_PART_ROLL, shown, line, at->x, at->y, r);
    has_whole_circle(p, TSIDE_PART_BAR, shown, line, at->x, at->y, s->side.bar.tube.diameter / 2);
    has_box(p, rider_of(s), shown, line, at->x - half, at->y - fmin(half, collar.height), at->x + half,
            at->y + collar.height);
    has_note(p, TSIDE_PART_ROLL, shown, at->x + 0.6 * r, at->y - 0.8 * r);
}

/* From its chain, or from its eye into the ground. */
static void check_guide(const scene *s, portrait *p, double lean, tside_shown shown, tside_line_type line)
{
    const tside_guide *guide = &s->end->guide;
    const double x = s->end_plan->eye_x, y = s->end_plan->eye_y, length = s->end_plan->sweep.length,
                 chain = stands(s) ? 0 : guide->chain, named = (stands(s) ? 0.3 : 0.93) * length,
                 buried = stands(s) ? s->end->footing.depth / cos(lean) : 0;
    has_line(p, TSIDE_PART_GUIDE, shown, line, x, y, x + chain * sin(lean), y - chain * cos(lean));
    has_tube(p, TSIDE_PART_GUIDE, shown, line, x + chain * sin(lean), y - chain * cos(lean), length + buried - chain,
             lean, guide->tube.diameter);
    has_note(p, TSIDE_PART_GUIDE, shown, x + named * sin(lean), y - named * cos(lean));
}

static void check_guides(const scene *s, portrait *p)
{
    const tside_sweep *sweep = &s->end_plan->sweep;
    if (stands(s))
        check_guide(s, p, sweep->lean_shut, ALWAYS, WIDE);
    else if (sweep->length * fabs(sweep->lean_open - sweep->lean_shut) < 1e-3 * p->paper)
        check_guide(s, p, sweep->lean_shut, TSIDE_SHOWN_SHUT_AND_OPEN, WIDE);
    else {
        check_guide(s, p, sweep->lean_shut, TSIDE_SHOWN_SHUT, WIDE);
        check_guide(s, p, sweep->lean_open, TSIDE_SHOWN_OPEN, NARROW);
    }
}

static void check_reach(const scene *s, portrait *p)
{
    const double x = s->end_plan->sweep.walkway_error, ground = s->end_plan->ground,
                 foot = fmax(s->end_plan->sweep.foot_lowest, ground), high = s->end_plan->eye_y - ground;
    has_line(p, TSIDE_PART_REACH, ALWAYS, CHAIN, x, ground, x, foot + 0.15 * high);
    has_note(p, TSIDE_PART_REACH, ALWAYS, x, foot + 0.1 * high);
    has_dimension(p, TSIDE_TELLS_REACH, TSIDE_DIMENSION_LEVEL, s->face, s->side.curtain.hip, x, ground);
}

static void check_set_out(const scene *s, portrait *p)
{
    const tside_layout *l = &s->end_plan->layout;
    const double hip = s->side.curtain.hip, member = s->end->extender.member_height + s->end_plan->ground;
    const struct {
        tside_tells tells;
        tside_dimension_kind kind;
        double x, y, x_end, y_end;
    } told[] = {
        {TSIDE_TELLS_BOW_HOLE_HEIGHT, TSIDE_DIMENSION_PLUMB, s->face, hip, l->bow_x, l->bow_height},
        {TSIDE_TELLS_MEMBER_HOLE_HEIGHT, TSIDE_DIMENSION_PLUMB, s->face, hip, l->member_x, member},
        {TSIDE_TELLS_EYE_HEIGHT, TSIDE_DIMENSION_PLUMB, s->face, hip, l->eye_x, l->eye_y},
        {TSIDE_TELLS_EYE_LEVEL, TSIDE_DIMENSION_LEVEL, s->face, hip, l->eye_x, l->eye_y},
        {TSIDE_TELLS_MEMBER_HOLE_LEVEL, TSIDE_DIMENSION_LEVEL, l->member_x, member, s->end->extender.member_outer,
         member},
        {TSIDE_TELLS_HOLE_TO_HOLE, TSIDE_DIMENSION_ALONG, l->bow_x, l->bow_height, l->member_x, member},
        {TSIDE_TELLS_EYE_TO_MEMBER, TSIDE_DIMENSION_ALONG, l->eye_x, l->eye_y, l->member_x, member},
        {TSIDE_TELLS_RUN, TSIDE_DIMENSION_ANGLE, (l->bow_x + l->member_x) / 2, (l->bow_height + member) / 2,
         l->member_x, member},
    };
    tside_bow_point at;
    tside_fault fault;
    double arc;
    for (size_t i = 0; i < sizeof told / sizeof *told; i++)
        has_dimension(p, told[i].tells, told[i].kind, told[i].x, told[i].y, told[i].x_end, told[i].y_end);
    ANSWERS(tside_bow_at_height(&s->bow, hip, &arc, &fault));
    ANSWERS(tside_bow_at(&s->bow, arc, &at, &fault));
    has_dimension(p, TSIDE_TELLS_BOW_HOLE_ALONG, TSIDE_DIMENSION_ARC, at.x, hip, l->bow_x, l->bow_height);
}

static void check_footing(const scene *s, portrait *p)
{
    const tside_fixed *fixed = &s->end_plan->fixed;
    const double hip = s->side.curtain.hip, ground = s->end_plan->ground, depth = s->end->footing.depth;
    if (s->end->hung == TSIDE_ON_HIP) {
        has_dimension(p, TSIDE_TELLS_TOP_HEIGHT, TSIDE_DIMENSION_PLUMB, s->face, hip, fixed->top_x, fixed->top_y);
        has_dimension(p, TSIDE_TELLS_TOP_LEVEL, TSIDE_DIMENSION_LEVEL, s->face, hip, fixed->top_x, fixed->top_y);
    }
    has_dimension(p, TSIDE_TELLS_FOOT_LEVEL, TSIDE_DIMENSION_LEVEL, s->face, hip, fixed->foot_x, ground);
    has_dimension(p, TSIDE_TELLS_FOOT_DEPTH, TSIDE_DIMENSION_PLUMB, fixed->foot_x, ground,
                  fixed->foot_x + depth * tan(fixed->lean), ground - depth);
}

/* may_lack: so many names, where it is small. */
static void check_wall(const scene *s, int may_lack, int number)
{
    static portrait p;
    const double ground = s->end_plan->ground;
    extent e;
    portrait_begin(&p, &s->drawing, "wall", number, s->outboard);
    p.may_lack = may_lack;
    e = shown_of(s, p.paper);
    is_framed(&p, e.inner, e.bottom, e.outer, e.top);
    has_ground(&p, p.left, p.right, ground);
    check_board(s, &p, ground);
    check_rail(s, &p);
    check_keep_outs(s, &p);
    if (has_extender(s)) {
        check_member(s, &p);
        check_extender(s, &p);
        check_set_out(s, &p);
    }
    check_state(s, &p, &s->plan.shut, TSIDE_SHOWN_SHUT, WIDE);
    check_state(s, &p, &s->plan.open, TSIDE_SHOWN_OPEN, NARROW);
    check_guides(s, &p);
    if (stands(s))
        check_footing(s, &p);
    else
        check_reach(s, &p);
    has_dimension(&p, TSIDE_TELLS_HIP_ABOVE_GROUND, TSIDE_DIMENSION_PLUMB, s->face, ground, s->face,
                  s->side.curtain.hip);
    has_no_more(&p, TSIDE_PART_BOW, TSIDE_PART_CURTAIN);
}

FOR_WALLS(an_end_wall_is_seen_from_outside)
{
    static scene again;
    const tside_picture small = picture_of(s, 50);
    again = *s;
    check_wall(s, 1, number);
    draw_as(&again, &small);
    check_wall(&again, 3, number);
}

/* The whole bow has a frame about what the other view shows. */
FOR_WALLS(the_whole_wall_frames_what_is_set_out)
{
    static scene whole;
    static portrait p;
    tside_picture picture = picture_of(s, 100);
    const extent e = shown_of(s, 100);
    whole = *s;
    picture.view = TSIDE_VIEW_WHOLE_WALL;
    draw_as(&whole, &picture);
    portrait_begin(&p, &whole.drawing, "whole wall", number, s->outboard);
    has_box(&p, TSIDE_PART_BOW, ALWAYS, NARROW, e.inner, e.bottom, e.outer, e.top);
    for (int i = 0; i < whole.drawing.stroke_count; i++)
        ck_assert(p.stroke[i] || whole.drawing.strokes[i].line != NARROW);
}

/* --- the roll --- */

/* A height is shown that is no farther than 80 mm on paper from the roll. */
static int is_shown(const portrait *p, const tside_position *at, double height)
{
    return fabs(height - at->y) < at->diameter / 2 + 80e-3 * p->paper;
}

static void frame_roll(const scene *s, portrait *p, const tside_position *at)
{
    const double heights[] = {s->side.curtain.hip, s->travel.sill, s->end_plan->ground}, r = at->diameter / 2,
                 about = 8e-3 * p->paper;
    double bottom = at->y - r, top = at->y + r;
    for (int i = 0; i < 3; i++)
        if (is_shown(p, at, heights[i])) {
            bottom = fmin(bottom, heights[i]);
            top = fmax(top, heights[i]);
        }
    is_framed(p, at->x - 2 * r - s->bow.diameter - s->side.curtain.standoff - about, bottom - about, at->x + r + about,
              top + about);
}

static void has_height(portrait *p, tside_tells tells, const tside_position *at, double height)
{
    has_dimension(p, tells, height >= p->bottom && height <= p->top ? TSIDE_DIMENSION_PLUMB : TSIDE_DIMENSION_PLACE,
                  at->x, at->y - at->diameter / 2, at->x, height);
}

static void check_roll(const scene *s, int open, int number)
{
    static portrait p;
    const tside_position *at = open ? &s->plan.open : &s->plan.shut;
    const tside_shown shown = open ? TSIDE_SHOWN_OPEN : TSIDE_SHOWN_SHUT;
    const double x = at->x, y = at->y, r = at->diameter / 2, sill = s->travel.sill, ground = s->end_plan->ground,
                 slant = r * sin(PI / 4);
    double half;
    portrait_begin(&p, &s->drawing, open ? "open roll" : "shut roll", number, s->outboard);
    p.may_lack = 0;
    frame_roll(s, &p, at);
    half = r + 4e-3 * p.paper;
    check_board(s, &p, ground);
    check_rail(s, &p);
    has_line(&p, TSIDE_PART_SILL, ALWAYS, CHAIN, x - half, sill, x + half, sill);
    has_note(&p, TSIDE_PART_SILL, ALWAYS, x + 0.9 * half, sill);
    if (ground >= p.bottom)
        has_ground(&p, p.left, p.right, ground);
    has_whole_circle(&p, TSIDE_PART_ROLL, shown, WIDE, x, y, r);
    has_whole_circle(&p, TSIDE_PART_BAR, shown, WIDE, x, y, s->side.bar.tube.diameter / 2);
    has_note(&p, TSIDE_PART_ROLL, shown, x - 0.6 * r, y + 0.8 * r);
    has_note(&p, TSIDE_PART_BAR, ALWAYS, x, y);
    has_height(&p, open ? TSIDE_TELLS_OPEN_BELOW_HIP : TSIDE_TELLS_SHUT_BELOW_HIP, at, s->side.curtain.hip);
    has_height(&p, open ? TSIDE_TELLS_OPEN_ABOVE_GROUND : TSIDE_TELLS_SHUT_ABOVE_GROUND, at, ground);
    has_height(&p, open ? TSIDE_TELLS_OPENING : TSIDE_TELLS_SEAL, at, sill);
    has_dimension(&p, open ? TSIDE_TELLS_OPEN_DIAMETER : TSIDE_TELLS_SHUT_DIAMETER, TSIDE_DIMENSION_DIAMETER, x + slant,
                  y + slant, x - slant, y - slant);
    has_no_more(&p, TSIDE_PART_BOW, TSIDE_PART_CURTAIN);
}

START_TEST(a_roll_is_seen_from_outside)
{
    static scene s;
    static const double scales[] = {2, 5, 10, 25};
    for (int each = 0; each < SIDES; each++) {
        const tside_side side = side_of(each);
        make_scene(&s, &side, TSIDE_DRIVE_END);
        for (int i = 0; i < 8; i++) {
            tside_picture picture = picture_of(&s, scales[i / 2]);
            picture.view = i % 2 ? TSIDE_VIEW_ROLL_OPEN : TSIDE_VIEW_ROLL_SHUT;
            draw_as(&s, &picture);
            check_roll(&s, i % 2, 10 * each + i);
        }
    }
}
END_TEST

Suite *strokes_outside_suite(void)
{
    Suite *suite = suite_create("strokes_outside");
    TCase *tests = tcase_create("strokes_outside");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, an_end_wall_is_seen_from_outside);
    tcase_add_test(tests, the_whole_wall_frames_what_is_set_out);
    tcase_add_test(tests, a_roll_is_seen_from_outside);
    suite_add_tcase(suite, tests);
    return suite;
}
