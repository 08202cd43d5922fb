/* SPDX-License-Identifier: MIT */
/*
 * The guide fixed at its foot: which line follows the bar best, how far it misses it, and what the drive's couple does
 * to it. Source: derivation; plane geometry and statics.
 */
#include "statics/fixed.h"

#include "base/field.h"
#include "base/root.h"
#include "shape/peak.h"
#include "statics/guide.h"
#include "statics/lift.h"

static const char *const fixed_by[] = {"best", "top", "both"};

/* clang-format off */
static const tside_field footing_rows[] = {
    {CHOICE(tside_footing, fixed_by, fixed_by, TSIDE_FIXED_BEST, "what of the guide is given: nothing, its top, or top and foot")},
    {REQUIRED(tside_footing, foot_x, "m", TO(30), "foot at the ground, outboard of the tunnel's centreline"), MEASURED(0.25 * IN), APPLIES(tside_footing, fixed_by, ONLY(TSIDE_FIXED_BOTH))},
    {NUMBER(tside_footing, depth, "m", FROM(0), TO(5), 24 * IN, OURS, "pipe in the ground")},
    {NUMBER(tside_footing, misfit_limit, "m", FROM(0), TO(1), 0.5 * IN, OURS, "how far the collar's arm may give, either way")},
};
/* clang-format on */
TABLE(tside_i_footing_table, footing_rows);

/* clang-format off */
static const tside_field fixed_rows[] = {
    {RESULT(tside_fixed, lean, "rad", "lean of the guide from plumb, foot outboard positive")},
    {RESULT(tside_fixed, top_x, "m", "its top, outboard of the tunnel's centreline")},
    {RESULT(tside_fixed, top_y, "m", "its top, above grade")},
    {RESULT(tside_fixed, foot_x, "m", "foot at the ground, outboard of the tunnel's centreline")},
    {RESULT(tside_fixed, ground, "m", "height of the ground there")},
    {RESULT(tside_fixed, length, "m", "guide from top to ground")},
    {RESULT(tside_fixed, cut_length, "m", "guide pipe as cut")},
    {RESULT(tside_fixed, misfit_least, "m", "least misfit over the travel; below 0 the guide stands too far inboard")},
    {RESULT(tside_fixed, misfit_greatest, "m", "greatest misfit over the travel")},
    {RESULT(tside_fixed, misfit, "m", "greatest misfit either way, what the collar's arm must give")},
    {RESULT(tside_fixed, misfit_error, "m", "the same at the worse placing error of the foot")},
    {RESULT(tside_fixed, clear, "m", "top above what rides on the guide, beyond the clearance asked")},
    {RESULT(tside_fixed, offset, "m", "guide's line outboard of the bar's axis")},
    {RESULT(tside_fixed, carried, "N", "weight of what rides on the guide")},
    {RESULT(tside_fixed, carried_offset, "m", "its centre of mass outboard of the bar's axis")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_fixed_table, fixed_rows, tside_fixed);

/* clang-format off */
static const tside_field load_rows[] = {
    {RESULT(tside_fixed_load, couple, "N m", "greatest couple that the drive hands the guide")},
    {RESULT(tside_fixed_load, reaction, "N", "reaction to it at top and foot")},
    {RESULT(tside_fixed_load, moment, "N m", "greatest bending of the pipe")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_fixed_load_table, load_rows, tside_fixed_load);

#define STEEPEST_BEST \
    (45 * \
     DEG) /* from plumb; as long as no part of the path lies flatter, the strip has but one narrowest place between */
#define STEEPEST_LEAN (75 * DEG)

/* --- the axis's path, as a line of some lean meets it --- */

typedef struct direction {
    double cosine, sine; /* of the lean: the guide's normal */
} direction;

typedef struct strip {
    double least, greatest; /* m, of the axis along the normal */
    double widening;        /* m/rad, how fast their distance grows with the lean */
} strip;

/* And its slope. */
static void along_normal(const tside_i_spot *spot, const void *context, double *value)
{
    const direction *normal = context;
    value[0] = spot->x * normal->cosine + spot->y * normal->sine;
    value[1] = spot->vx * normal->cosine + spot->vy * normal->sine;
}

static double along_guide(const tside_i_spot *spot, const direction *normal)
{
    return spot->y * normal->cosine - spot->x * normal->sine;
}

static direction normal_of(double lean)
{
    return (direction){cos(lean), sin(lean)};
}

/* As the lean grows, what lies out along the normal moves by its place along the guide. */
static strip strip_at(const tside_i_track *track, double lean)
{
    direction normal = normal_of(lean);
    tside_i_sought sought = {.sloped = 1, .least_too = 1};
    tside_i_spot room;
    double in, out;
    tside_i_track_seek(track, along_normal, &normal, &sought, 1);
    in = along_guide(tside_i_peak_spot(track, &sought.least, &room), &normal);
    out = along_guide(tside_i_peak_spot(track, &sought.greatest, &room), &normal);
    return (strip){-sought.least.value, sought.greatest.value, out - in};
}

static double widening(const tside_i_track *track, double lean)
{
    return strip_at(track, lean).widening;
}

/* --- which line --- */

typedef struct top {
    const tside_i_track *track;
    double x, y, offset;
} top;

/*
 * Twice the middle of the misfits of a guide from this top, which rises with its lean wherever the top is above the
 * bar.
 */
static double middle_misfit(const top *t, double lean)
{
    direction normal = normal_of(lean);
    strip path = strip_at(t->track, lean);
    return 2 * (t->x * normal.cosine + t->y * normal.sine - t->offset) - (path.least + path.greatest);
}

/* The lean whose strip is narrowest. */
static double narrowest(const tside_i_track *track)
{
    tside_i_bracket lean = tside_i_bracket_of(-STEEPEST_BEST, widening(track, -STEEPEST_BEST), STEEPEST_BEST,
                                              widening(track, STEEPEST_BEST));
    while (lean.open)
        tside_i_bracket_narrow(&lean, widening(track, lean.place));
    return lean.place;
}

static void best_line(const top *t, tside_fixed *fixed)
{
    const tside_travel *travel = t->track->travel;
    int nowhere = travel->end == travel->wraps_shut; /* every strip is as narrow: plumb */
    direction normal;
    strip path;
    fixed->lean = nowhere ? 0 : narrowest(t->track);
    normal = normal_of(fixed->lean);
    path = strip_at(t->track, fixed->lean);
    fixed->top_x = ((path.least + path.greatest) / 2 + t->offset - t->y * normal.sine) / normal.cosine;
}

static tside_status line_from_top(const top *t, const tside_i_names *names, tside_fixed *fixed, tside_fault *fault)
{
    double inboard = middle_misfit(t, -STEEPEST_LEAN), outboard = middle_misfit(t, STEEPEST_LEAN);
    tside_i_bracket lean = tside_i_bracket_of(-STEEPEST_LEAN, inboard, STEEPEST_LEAN, outboard);
    if (!(inboard <= 0 && outboard >= 0))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names->eye_x.field, names->travel,
                              "from that top no guide within 75 degrees of plumb follows the bar");
    while (lean.open)
        tside_i_bracket_narrow(&lean, middle_misfit(t, lean.place));
    fixed->lean = lean.place;
    return TSIDE_OK;
}

static tside_status choose_line(const tside_footing *footing, top *t, double ground, const tside_i_names *names,
                                tside_fixed *fixed, tside_fault *fault)
{
    fixed->top_x = t->x;
    switch (footing->fixed_by) {
    case TSIDE_FIXED_BEST:
        best_line(t, fixed);
        t->x = fixed->top_x;
        break;
    case TSIDE_FIXED_TOP: TRY(line_from_top(t, names, fixed, fault)); break;
    case TSIDE_FIXED_BOTH: fixed->lean = atan2(footing->foot_x - t->x, t->y - ground); break;
    }
    return TSIDE_OK;
}

static void misfits(const top *t, double lean, double *least, double *greatest)
{
    direction normal = normal_of(lean);
    strip path = strip_at(t->track, lean);
    double line = t->x * normal.cosine + t->y * normal.sine - t->offset;
    *least = line - path.greatest;
    *greatest = line - path.least;
}

/* The greatest misfit either way with the foot moved outboard. */
static double misfit_moved(const top *t, const tside_fixed *fixed, double moved)
{
    double least, greatest;
    misfits(t, atan2(fixed->foot_x + moved - t->x, t->y - fixed->ground), &least, &greatest);
    return fmax(-least, greatest);
}

tside_status tside_i_fixed_make(const tside_i_track *track, const tside_guide *guide, const tside_footing *footing,
                                const tside_collar *collar, double top_x, double top_y, double ground,
                                const tside_i_names *names, tside_fixed *fixed, tside_fault *fault)
{
    top t = {track, top_x, top_y, collar->offset};
    tside_fixed made = {.top_y = top_y,
                        .ground = ground,
                        .offset = collar->offset,
                        .carried = collar->mass * TSIDE_GRAVITY,
                        .carried_offset = collar->mass_offset};
    TRY(tside_i_eye_clears(track, guide, collar, top_y, names, &made.clear, fault));
    TRY(choose_line(footing, &t, ground, names, &made, fault));
    made.length = (top_y - ground) / cos(made.lean);
    made.cut_length = made.length + footing->depth;
    made.foot_x = footing->fixed_by == TSIDE_FIXED_BOTH ? footing->foot_x : t.x + made.length * sin(made.lean);
    misfits(&t, made.lean, &made.misfit_least, &made.misfit_greatest);
    made.misfit = fmax(-made.misfit_least, made.misfit_greatest);
    made.misfit_error = fmax(misfit_moved(&t, &made, -guide->placing_error),
                             misfit_moved(&t, &made, guide->placing_error));
    *fixed = made;
    return TSIDE_OK;
}

tside_status tside_fixed_make(const tside_travel *travel, const tside_guide *guide, const tside_footing *footing,
                              const tside_collar *collar, double eye_x, double eye_y, double ground, tside_fixed *fixed,
                              tside_fault *fault)
{
    static const tside_i_names names = {
        .eye_x = {.field = "eye_x"}, .eye_y = {.field = "eye_y"}, .offset = "collar.offset", .travel = "stops"};
    tside_i_track track;
    tside_fixed made;
    TRY(tside_i_check(&tside_i_guide_table, "guide", guide, fault));
    TRY(tside_i_check(&tside_i_footing_table, "footing", footing, fault));
    TRY(tside_i_check(&tside_i_collar_table, "collar", collar, fault));
    if (footing->fixed_by != TSIDE_FIXED_BEST)
        TRY(tside_i_argument(fault, "eye_x", "m", eye_x, 0, 0));
    TRY(tside_i_argument(fault, "eye_y", "m", eye_y, 0, 0));
    TRY(tside_i_argument(fault, "ground", "m", ground, -TSIDE_MOST, 0));
    tside_i_track_make(travel, &track);
    if (!(ground < track.shut.y)) /* the bar's lowest place is when shut */
        REFUSE(fault, TSIDE_CONTRADICTS, "ground", "stops", "the collar would come to the ground", "m", ground,
               TSIDE_NOT_BELOW, track.shut.y, 0);
    TRY(tside_i_fixed_make(&track, guide, footing, collar, eye_x, eye_y, ground, &names, &made, fault));
    return ANSWER(&tside_i_fixed_table, made, fixed, fault);
}

/* --- what it carries --- */

typedef struct carrying {
    const tside_i_lifting *lifting; /* NULL: the torque is constant */
    const tside_fixed *fixed;
    double torque;
} carrying;

/* T + Wd e, its size; and the bending that it makes. */
enum { COUPLE, MOMENT, CARRIED };
static void carried_at(const tside_i_spot *spot, const void *context, double *value)
{
    const carrying *c = context;
    const tside_fixed *f = c->fixed;
    double from_top = (spot->x - f->top_x) * sin(f->lean) - (spot->y - f->top_y) * cos(f->lean);
    value[COUPLE] = fabs((c->lifting ? tside_i_torque(c->lifting, spot).up : c->torque) +
                         f->carried * f->carried_offset);
    value[MOMENT] = value[COUPLE] * fmax(from_top, f->length - from_top) / f->length;
}

tside_fixed_load tside_i_fixed_force(const tside_i_track *track, const tside_i_lifting *lifting,
                                     const tside_fixed *fixed, double torque)
{
    carrying carried = {lifting, fixed, torque};
    tside_i_sought sought[CARRIED] = {{0}};
    tside_i_track_seek(track, carried_at, &carried, sought, CARRIED);
    return (tside_fixed_load){sought[COUPLE].greatest.value, sought[COUPLE].greatest.value / fixed->length,
                              sought[MOMENT].greatest.value};
}

tside_status tside_fixed_force(const tside_travel *travel, const tside_load *load, const tside_fixed *fixed,
                               double torque, tside_fixed_load *forces, tside_fault *fault)
{
    tside_i_track track;
    const tside_i_lifting lifting = {&track, load, NULL, NULL, 0};
    tside_fixed_load made;
    if (load)
        TRY(tside_i_check(&tside_i_load_table, "load", load, fault));
    else
        TRY(tside_i_argument(fault, "torque", "N m", torque, 0, 0));
    tside_i_track_make(travel, &track);
    made = tside_i_fixed_force(&track, load ? &lifting : NULL, fixed, torque);
    return ANSWER(&tside_i_fixed_load_table, made, forces, fault);
}
