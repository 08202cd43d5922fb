/* SPDX-License-Identifier: MIT */
/* The hung guide: how it leans, where its foot comes, and where its eye leans it least. Source: derivation. */
#include "statics/guide.h"

#include "base/field.h"
#include "parts/material.h"
#include "parts/tube.h"

static const char *const feet[] = {"hangs", "fixed"};

#define HANGING APPLIES(tside_guide, foot, ONLY(TSIDE_FOOT_HANGS))

/* clang-format off */
static const tside_field guide_rows[] = {
    {CHOICE(tside_guide, foot, feet, TSIDE_FOOT_HANGS, "how the guide's foot is held")},
    {GROUP(tside_guide, tube, round, "the guide pipe")},
    {GROUP(tside_guide, material, material, "the guide pipe's metal")},
    {NUMBER(tside_guide, chain, "m", FROM(0), TO(2), 2.5 * IN, PRACTICE, "links between eye and pipe"), MEASURED(0.25 * IN), HANGING, UNUSUAL_OUTSIDE(2 * IN, 3 * IN)},
    {NUMBER(tside_guide, margin, "m", FROM(0), TO(5), 3 * IN, PRACTICE, "guide below the collar when shut"), MEASURED(0.25 * IN), HANGING, UNUSUAL_OUTSIDE(2 * IN, 6 * IN)},
    {NUMBER(tside_guide, ground_clearance, "m", FROM(0), TO(5), 2 * IN, PRACTICE, "least height of the guide's foot above grade"), HANGING},
    {NUMBER(tside_guide, eye_clearance, "m", FROM(0), TO(2), 1 * IN, OURS, "least height of the eye, or of a fixed guide's top, above what rides on the guide")},
    {NUMBER(tside_guide, placing_error, "m", FROM(0), TO(0.5), 0.75 * IN, PRACTICE, "placing error of the eye, or of a fixed guide's foot, level, either way"), UNUSUAL_OUTSIDE(0.5 * IN, 1.5 * IN)},
};
/* clang-format on */
TABLE(tside_i_guide_table, guide_rows);

/* clang-format off */
static const tside_field sweep_rows[] = {
    {RESULT(tside_sweep, lean_shut, "rad", "lean of the guide when shut, foot outboard positive")},
    {RESULT(tside_sweep, lean_open, "rad", "lean when open")},
    {RESULT(tside_sweep, lean_least, "rad", "least lean over the travel")},
    {RESULT(tside_sweep, lean_greatest, "rad", "greatest lean over the travel")},
    {RESULT(tside_sweep, length, "m", "guide from eye to foot")},
    {RESULT(tside_sweep, cut_length, "m", "guide pipe as cut")},
    {RESULT(tside_sweep, foot_x, "m", "foot when shut, outboard of the tunnel's centreline")},
    {RESULT(tside_sweep, foot_lowest, "m", "lowest height of the foot")},
    {RESULT(tside_sweep, kick_out, "m", "foot outboard of where it hangs when shut, at most")},
    {RESULT(tside_sweep, kick_in, "m", "foot inboard of where it hangs when shut, at most")},
    {RESULT(tside_sweep, walkway, "m", "farthest outboard that the foot comes")},
    {RESULT(tside_sweep, kick_out_error, "m", "kick out at the worse placing of the eye")},
    {RESULT(tside_sweep, kick_in_error, "m", "kick in at the worse placing of the eye")},
    {RESULT(tside_sweep, walkway_error, "m", "walkway line at the worse placing of the eye")},
    {RESULT(tside_sweep, clear, "m", "eye above what rides on the guide, beyond the clearance asked")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_sweep_table, sweep_rows, tside_sweep);

typedef struct eye_point {
    double x, y, offset, misfit;
} eye_point;

static tside_i_lean eye_lean(const eye_point *eye, const tside_i_spot *spot)
{
    return tside_i_lean_at(eye->x, eye->y, eye->offset, spot);
}

/* The lean's sine stands for the lean: it rises and falls with it, and costs no arc tangent. */
static double lean_sine(const tside_i_spot *spot, const eye_point *eye)
{
    return eye_lean(eye, spot).sine;
}

/* And its slope. */
static void lean_and_slope(const tside_i_spot *spot, const void *context, double *value)
{
    tside_i_lean lean = eye_lean(context, spot);
    value[0] = lean.sine;
    value[1] = lean.rate;
}

/* How far outboard of its eye, and how far below, a guide's foot is, by its length. */
static double foot_out(const tside_i_spot *spot, const eye_point *eye)
{
    tside_i_lean lean = eye_lean(eye, spot);
    return lean.sine * tside_i_shown(lean.reach, eye->misfit);
}

static double foot_down(const tside_i_spot *spot, const eye_point *eye)
{
    tside_i_lean lean = eye_lean(eye, spot);
    return lean.cosine * tside_i_shown(lean.reach, eye->misfit);
}

enum { FOOT_OUT, FOOT_DOWN, FOOT };
static void foot_at(const tside_i_spot *spot, const void *context, double *value)
{
    value[FOOT_OUT] = foot_out(spot, context);
    value[FOOT_DOWN] = foot_down(spot, context);
}

/* Least and greatest lean, of where they were found. */
static void leans_at_peaks(const tside_i_track *track, const eye_point *eye, const tside_i_sought *lean, double *least,
                           double *greatest)
{
    tside_i_spot room;
    tside_i_lean there = eye_lean(eye, tside_i_peak_spot(track, &lean->least, &room));
    *least = tside_i_lean_angle(&there);
    there = eye_lean(eye, tside_i_peak_spot(track, &lean->greatest, &room));
    *greatest = tside_i_lean_angle(&there);
}

/* Where the guide on an eye leans least and most. */
static void extreme_leans(const tside_i_track *track, const eye_point *eye, tside_i_sought *lean)
{
    lean->sloped = lean->least_too = 1;
    lean->over_nought = 0;
    tside_i_track_seek(track, lean_and_slope, eye, lean, 1);
}

void tside_i_lean_range(const tside_i_track *track, double eye_x, double eye_y, double offset, double *least,
                        double *greatest)
{
    eye_point eye = {eye_x, eye_y, offset, 0};
    tside_i_sought lean;
    extreme_leans(track, &eye, &lean);
    leans_at_peaks(track, &eye, &lean, least, greatest);
}

/* The cosine of the lean at which the foot is lowest: the range's nearest to plumb. */
static double lowest_cosine(double least, double greatest)
{
    return least > 0 ? cos(least) : greatest < 0 ? cos(greatest) : 1;
}

static const tside_i_names arguments = {
    .eye_x = {.field = "eye_x"}, .eye_y = {.field = "eye_y"}, .offset = "collar.offset", .travel = "travel"};

tside_status tside_i_eye_clears(const tside_i_track *track, const tside_guide *guide, const tside_collar *collar,
                                double eye_y, const tside_i_names *names, double *spare, tside_fault *fault)
{
    double needed = collar->height + guide->eye_clearance, above = eye_y - track->open.y;
    *spare = above - needed;
    if (*spare < -SLACK)
        return tside_i_refuse_told(fault, TSIDE_OUT_OF_REACH, &names->eye_y, "guide.eye_clearance",
                                   "the eye does not clear what rides on the guide", eye_y, TSIDE_BELOW, eye_y - *spare,
                                   *spare);
    if (!(above > collar->offset))
        return tside_i_refuse_told(fault, TSIDE_OUT_OF_REACH, &names->eye_y, names->offset,
                                   "the eye must stand higher above the bar than the collar's offset", eye_y,
                                   TSIDE_NOT_ABOVE, eye_y - above + collar->offset, above - collar->offset);
    return TSIDE_OK;
}

/* Where a guide's foot is farthest in and out; in line that is where it leans so. */
static void extreme_feet(const tside_i_track *track, const eye_point *eye, tside_i_sought *foot)
{
    if (eye->misfit == 0) {
        extreme_leans(track, eye, foot);
        return;
    }
    *foot = (tside_i_sought){.least_too = 1};
    tside_i_track_seek(track, foot_at, eye, foot, FOOT_OUT + 1);
}

/* What a guide of this length does with its eye moved outboard; each of the three kept at its own worst. */
static void worsen(const tside_i_track *track, const eye_point *placed, double moved, tside_sweep *sweep)
{
    const eye_point eye = {placed->x + moved, placed->y, placed->offset, placed->misfit};
    tside_i_sought foot;
    double at_shut = foot_out(&track->shut, &eye), least, greatest;
    extreme_feet(track, &eye, &foot);
    least = -foot.least.value, greatest = foot.greatest.value;
    sweep->kick_out_error = fmax(sweep->kick_out_error, sweep->length * (greatest - at_shut));
    sweep->kick_in_error = fmax(sweep->kick_in_error, sweep->length * (at_shut - least));
    sweep->walkway_error = fmax(sweep->walkway_error, eye.x + sweep->length * greatest);
}

/* The leans of a guide that leans along the house too; returns the greatest of foot_down. */
static double skewed_leans(const tside_i_track *track, const eye_point *eye, tside_sweep *sweep)
{
    tside_i_sought sought[FOOT] = {{0}};
    tside_i_lean_range(track, eye->x, eye->y, eye->offset, &sweep->lean_least, &sweep->lean_greatest);
    tside_i_track_seek(track, foot_at, eye, sought, FOOT);
    return sought[FOOT_DOWN].greatest.value;
}

/* What the guide does with its eye where it should be. */
static void sweep_placed(double eye_x, double least, double greatest, tside_sweep *sweep)
{
    sweep->walkway = eye_x + sweep->length * greatest;
    sweep->kick_out = sweep->walkway - sweep->foot_x;
    sweep->kick_in = sweep->foot_x - (eye_x + sweep->length * least);
    sweep->kick_out_error = sweep->kick_out;
    sweep->kick_in_error = sweep->kick_in;
    sweep->walkway_error = sweep->walkway;
}

/* What the pipe weighs per metre. */
static tside_status weigh(const tside_guide *guide, double *weight, tside_fault *fault)
{
    tside_metal_values metal;
    tside_section section;
    TRY(tside_i_material_values(&guide->material, &metal, fault));
    TRY(tside_i_round_section(&guide->tube, metal.density, &section, fault));
    *weight = section.mass * TSIDE_GRAVITY;
    return TSIDE_OK;
}

/* The foot at its lowest, less the ground; the margin that is too long by what is missing. */
static tside_status check_foot(const tside_guide *guide, const tside_i_hanging *at, double lowest, tside_sweep *sweep,
                               tside_fault *fault)
{
    sweep->foot_lowest = at->eye_y - sweep->length * lowest;
    if (sweep->foot_lowest - at->ground < guide->ground_clearance - SLACK)
        REFUSE(fault, TSIDE_CONTRADICTS, "guide.margin", "guide.ground_clearance",
               "the guide's foot would come too near the ground", "m", guide->margin, TSIDE_ABOVE,
               (at->eye_y - at->ground - guide->ground_clearance) / lowest - (sweep->length - guide->margin),
               sweep->foot_lowest - at->ground);
    return TSIDE_OK;
}

/*
 * The eye where it should be, and misplaced either way. In line the foot is farthest out and lowest where the lean says
 * so.
 */
static tside_status sweep_guide(const tside_i_track *track, const tside_guide *guide, const tside_i_hanging *at,
                                const eye_point *placed, tside_sweep *sweep, tside_fault *fault)
{
    tside_i_sought foot;
    double lowest;
    extreme_feet(track, placed, &foot);
    if (at->misfit == 0) {
        leans_at_peaks(track, placed, &foot, &sweep->lean_least, &sweep->lean_greatest);
        lowest = lowest_cosine(sweep->lean_least, sweep->lean_greatest);
    } else
        lowest = skewed_leans(track, placed, sweep);
    TRY(check_foot(guide, at, lowest, sweep, fault));
    sweep_placed(placed->x, -foot.least.value, foot.greatest.value, sweep);
    if (at->error > 0) {
        worsen(track, placed, -at->error, sweep);
        worsen(track, placed, at->error, sweep);
    }
    return TSIDE_OK;
}

tside_status tside_i_hang_and_sweep(const tside_i_track *track, const tside_guide *guide, const tside_collar *collar,
                                    const tside_i_hanging *at, const tside_i_names *names, tside_hang *hang,
                                    tside_sweep *sweep, tside_fault *fault)
{
    eye_point eye = {at->eye_x, at->eye_y, collar->offset, at->misfit};
    tside_i_lean at_shut, at_open;
    double weight = 0, nearest;
    TRY(tside_i_eye_clears(track, guide, collar, at->eye_y, names, &sweep->clear, fault));
    TRY(tside_i_within(fault, "guide", weigh(guide, &weight, fault)));
    at_shut = eye_lean(&eye, &track->shut);
    at_open = eye_lean(&eye, &track->open);
    nearest = hypot(fmin(at_open.reach, at_shut.reach), at->misfit);
    if (!(guide->chain < nearest))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "guide.chain", names->travel,
                                    "the collar would ride on the chain", "m", guide->chain, TSIDE_NOT_BELOW, nearest,
                                    0);
    sweep->lean_shut = tside_i_lean_angle(&at_shut);
    sweep->lean_open = tside_i_lean_angle(&at_open);
    sweep->length = hypot(at_shut.reach, at->misfit) + guide->margin;
    sweep->cut_length = sweep->length - guide->chain;
    sweep->foot_x = at->eye_x + sweep->length * at_shut.sine * tside_i_shown(at_shut.reach, at->misfit);
    TRY(sweep_guide(track, guide, at, &eye, sweep, fault));
    *hang = (tside_hang){at->eye_x,
                         at->eye_y,
                         collar->offset,
                         sweep->length,
                         guide->chain,
                         weight * sweep->cut_length,
                         collar->mass * TSIDE_GRAVITY,
                         collar->mass_offset,
                         at->misfit};
    return TSIDE_OK;
}

static tside_status check_hanging(const tside_guide *guide, const tside_collar *collar, double eye_x, double eye_y,
                                  double misfit, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_guide_table, "guide", guide, fault));
    TRY(tside_i_check(&tside_i_collar_table, "collar", collar, fault));
    TRY(tside_i_argument(fault, "eye_x", "m", eye_x, 0, 0));
    TRY(tside_i_argument(fault, "eye_y", "m", eye_y, 0, 0));
    TRY(tside_i_argument(fault, "misfit", "m", misfit, -TSIDE_MOST, 0));
    if (guide->foot == TSIDE_FOOT_FIXED)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "guide.foot", "", "a guide fixed at its foot does not hang");
    return TSIDE_OK;
}

tside_status tside_hang_make(const tside_travel *travel, const tside_guide *guide, const tside_collar *collar,
                             double eye_x, double eye_y, double misfit, tside_hang *hang, tside_sweep *sweep,
                             tside_fault *fault)
{
    const tside_i_hanging at = {
        .eye_x = eye_x, .eye_y = eye_y, .error = sweep ? guide->placing_error : 0, .misfit = misfit};
    tside_i_track track;
    tside_sweep swept;
    tside_hang made;
    TRY(check_hanging(guide, collar, eye_x, eye_y, misfit, fault));
    tside_i_track_make(travel, &track);
    TRY(tside_i_settle(&tside_i_guide_table, "guide",
                       tside_i_hang_and_sweep(&track, guide, collar, &at, &arguments, &made, &swept, fault), fault));
    TRY(tside_i_within(fault, "sweep",
                       tside_i_finite(&tside_i_sweep_table, &swept,
                                      fault))); /* the guide's numbers are finite if those of what it does are */
    *hang = made;
    if (sweep)
        *sweep = swept;
    return TSIDE_OK;
}

tside_status tside_guide_lean(const tside_travel *travel, const tside_hang *hang, double turns, double *lean,
                              double *drive_turns, tside_fault *fault)
{
    tside_position position;
    eye_point eye = {hang->eye_x, hang->eye_y, hang->offset, hang->misfit};
    tside_i_spot spot, shut;
    tside_i_lean now, then;
    double leans;
    TRY(tside_travel_at(travel, turns, &position, fault));
    tside_i_travel_at(travel, tside_i_travel_progress(travel, turns), &spot);
    now = tside_i_hang_lean(hang, &spot);
    tside_i_travel_spot(travel, 0, travel->wraps_shut, &shut);
    then = eye_lean(&eye, &shut);
    leans = tside_i_lean_angle(&now);
    TRY(ANSWER_NUMBER((tside_i_travel_angle(travel, &spot) - (leans - tside_i_lean_angle(&then))) / (2 * TSIDE_PI),
                      drive_turns, fault));
    *lean = leans; /* finite, as the turns are */
    return TSIDE_OK;
}

/* Where the bar is, and how a guide leans there. */
typedef struct leaning {
    double x, y, sine;
} leaning;

static leaning leaning_at(const tside_i_spot *spot, const eye_point *eye)
{
    return (leaning){spot->x, spot->y, lean_sine(spot, eye)};
}

/* Where the guide leans least and most among the beginnings of the stretches, and open. To guess by. */
static void extreme_beginnings(const tside_i_track *track, const eye_point *eye, leaning *least, leaning *greatest)
{
    const leaning open = leaning_at(&track->open, eye);
    *least = *greatest = leaning_at(&track->shut, eye);
    *(open.sine < least->sine ? least : greatest) = open;
    for (int i = 1; i < track->travel->stretches; i++) {
        tside_i_spot spot;
        leaning at;
        tside_i_travel_spot(track->travel, i, track->travel->stretch[i].from, &spot);
        at = leaning_at(&spot, eye);
        if (at.sine < least->sine)
            *least = at;
        else if (at.sine > greatest->sine)
            *greatest = at;
    }
}

/*
 * Where the eye stands if the leans at two spots, inboard and outboard, are equal and opposite: both guides are then at
 * the offset from their axes, (x - xe) cos(phi) +- (y - ye) sin(phi) = -o, and half the difference gives phi, the sum
 * xe.
 */
static double balanced(const eye_point *eye, const leaning *a, const leaning *b)
{
    double tangent = (b->x - a->x) / (2 * eye->y - a->y - b->y);
    return (a->x + b->x + tangent * (b->y - a->y)) / 2 + eye->offset * sqrt(1 + tangent * tangent);
}

/*
 * The eye is balanced between the places where its guide leans most either way, which are sought anew where it then
 * stands: steps as good as Newton's where those places move smoothly; where they change over they are not: then, once
 * the root is bracketed, the Illinois form of the false position, to its last digits; a hundred steps end what goes
 * round among these.
 */
tside_status tside_i_eye_best(const tside_i_track *track, double eye_y, double collar_offset, double *eye_x,
                              tside_fault *fault)
{
    eye_point eye = {0, eye_y, collar_offset, 0};
    leaning in, out;
    const double nearly =
        1e-7; /* of the height above the bar: a step from there leaves its square, less than a double
                 holds; without it a plan takes more instructions than bench_instructions.sh lets it */
    double x, low = -HUGE_VAL, high = HUGE_VAL, below = 0, above = 0;
    if (!(eye_y - track->open.y > collar_offset))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "eye_y", "collar_offset",
               "the eye must stand higher above the bar than the collar's offset", "m", eye_y, TSIDE_NOT_ABOVE,
               track->open.y + collar_offset, 0);
    in = leaning_at(&track->shut, &eye), out = leaning_at(&track->open, &eye);
    eye.x = balanced(&eye, &in, &out);
    extreme_beginnings(track, &eye, &in, &out);
    x = balanced(&eye, &in, &out);
    for (int i = 0; i < 100; i++) {
        tside_i_sought lean;
        tside_i_spot room;
        double step;
        eye.x = x;
        extreme_leans(track, &eye, &lean);
        in = leaning_at(tside_i_peak_spot(track, &lean.least, &room), &eye);
        out = leaning_at(tside_i_peak_spot(track, &lean.greatest, &room), &eye);
        step = balanced(&eye, &in, &out) - x;
        if (fabs(step) <= nearly * (eye_y - track->open.y) && i < 4) {
            x += step; /* what is left then is as its square */
            break;
        }
        if (step > 0) {
            above *= low == -HUGE_VAL ? 1 : 0.5;
            low = x, below = -step;
        } else {
            below *= high == HUGE_VAL ? 1 : 0.5;
            high = x, above = -step;
        }
        if (i < 4)
            x += step;
        else if (!isfinite(high - low))
            x += 2 * step; /* overshooting, to bracket it */
        else {
            double next = (low * above - high * below) / (above - below);
            if (next == x || step == 0)
                break;
            x = next > low && next < high ? next : (low + high) / 2;
        }
    }
    return ANSWER_NUMBER(x, eye_x, fault);
}

tside_status tside_eye_best(const tside_travel *travel, double eye_y, double collar_offset, double *eye_x,
                            tside_fault *fault)
{
    tside_i_track track;
    TRY(tside_i_argument(fault, "eye_y", "m", eye_y, 0, 0));
    TRY(tside_i_argument(fault, "collar_offset", "m", collar_offset, 0, 0));
    tside_i_track_make(travel, &track);
    return tside_i_eye_best(&track, eye_y, collar_offset, eye_x, fault);
}
