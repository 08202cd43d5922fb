/* SPDX-License-Identifier: MIT */
/*
 * Calls of what stands on things made before, bow, line, travel, guide, and of what answers a list. A row gives what
 * they are made of, and they are made within the call. What each refuses is provoked by the suites.
 */
#include "calls.h"

#include <tunnelside/fixed.h>
#include <tunnelside/lift.h>
#include <tunnelside/plan.h>
#include <tunnelside/rope.h>
#include <tunnelside/run.h>
#include <tunnelside/strength.h>

static tside_frame frame;
static tside_bow bow;
static tside_bow_point point;
static tside_curtain curtain;
static tside_line line;
static tside_roll roll;
static tside_stops stops;
static tside_travel travel;
static tside_position position;
static tside_load load;
static tside_torque torque;
static tside_guide guide;
static tside_collar collar;
static tside_hang hang;
static tside_sweep sweep;
static tside_skew skew;
static tside_torque worst, least_down;
static double longest, turns, underside, work, eye_x, eye_y, misfit, collar_offset, available, lean, drive_turns;
static tside_side side;
static double rise;
static tside_drive drive;
static tside_cable cable;
static tside_run run;
static tside_footing footing;
static tside_fixed fixed;
static tside_fixed_load forces;
static double ground, constant;
static tside_rope rope;
static tside_rope_over over, longest_over, hardest_over;
static double length, hip, flexibility;
static tside_extender extender;
static tside_layout layout;
static tside_extender_load extender_load;
static tside_strength_line lines[TSIDE_EXTENDER_LINES];
static double force, uplift, weight, outboard, inboard, wind_eye, wind_tube;
enum { STICKS = 1024 };
static tside_bar bar;
static tside_bar_stick sticks[STICKS], last;
static double curtain_length, beyond_drive, beyond_free;
static int end, count;
static double arc, height, x, y, angle, distance, normal;

static tside_status bow_make(tside_fault *fault)
{
    return tside_bow_make(&frame, &bow, fault);
}

static tside_status bow_at(tside_fault *fault)
{
    const tside_status status = bow_make(fault);
    return status == TSIDE_OK ? tside_bow_at(&bow, arc, &point, fault) : status;
}

static tside_status bow_at_height(tside_fault *fault)
{
    const tside_status status = bow_make(fault);
    return status == TSIDE_OK ? tside_bow_at_height(&bow, height, &arc, fault) : status;
}

static tside_status bow_face(tside_fault *fault)
{
    const tside_status status = bow_make(fault);
    return status == TSIDE_OK ? tside_bow_face(&bow, height, &x, fault) : status;
}

static tside_status bow_crossing(tside_fault *fault)
{
    const tside_status status = bow_make(fault);
    return status == TSIDE_OK ? tside_bow_crossing(&bow, x, y, angle, &distance, &arc, fault) : status;
}

static tside_status line_make(tside_fault *fault)
{
    const tside_status status = bow_make(fault);
    return status == TSIDE_OK ? tside_line_make(&bow, &curtain, &line, fault) : status;
}

static tside_status line_at(tside_fault *fault)
{
    const tside_status status = line_make(fault);
    return status == TSIDE_OK ? tside_line_at(&line, distance, &x, &y, &normal, fault) : status;
}

static tside_status travel_make(tside_fault *fault)
{
    const tside_status status = line_make(fault);
    return status == TSIDE_OK ? tside_travel_make(&line, &curtain, &roll, &stops, &travel, fault) : status;
}

static tside_status travel_at(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_travel_at(&travel, turns, &position, fault) : status;
}

static tside_status travel_to_height(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_travel_to_height(&travel, underside, &position, fault) : status;
}

static tside_status hang_make(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_hang_make(&travel, &guide, &collar, eye_x, eye_y, misfit, &hang, &sweep, fault)
                              : status;
}

/* A travel with a guide, or without one where the row's eye is no higher than grade. */
static tside_status guided(tside_fault *fault)
{
    return eye_y > 0 ? hang_make(fault) : travel_make(fault);
}

static const tside_hang *guide_of_row(void)
{
    return eye_y > 0 ? &hang : NULL;
}

static tside_status lift_at(tside_fault *fault)
{
    const tside_status status = guided(fault);
    return status == TSIDE_OK ? tside_lift_at(&travel, &load, guide_of_row(), turns, &torque, fault) : status;
}

static tside_status lift_work(tside_fault *fault)
{
    const tside_status status = guided(fault);
    return status == TSIDE_OK ? tside_lift_work(&travel, &load, guide_of_row(), turns, &work, fault) : status;
}

static tside_status side_force(tside_fault *fault)
{
    const tside_status status = guided(fault);
    return status == TSIDE_OK ? tside_side_force(&travel, &load, guide_of_row(), turns, &force, &uplift, fault)
                              : status;
}

static tside_status guide_lean(tside_fault *fault)
{
    const tside_status status = hang_make(fault);
    return status == TSIDE_OK ? tside_guide_lean(&travel, &hang, turns, &lean, &drive_turns, fault) : status;
}

static tside_status guide_skew(tside_fault *fault)
{
    const tside_status status = hang_make(fault);
    return status == TSIDE_OK ? tside_guide_skew(&travel, &hang, &skew, fault) : status;
}

static tside_status eye_best(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_eye_best(&travel, eye_y, collar_offset, &eye_x, fault) : status;
}

static tside_status eye_least(tside_fault *fault)
{
    return tside_eye_least(&side, (tside_which_end)end, &rise, fault);
}

static tside_status lift_worst(tside_fault *fault)
{
    const tside_status status = guided(fault);
    return status == TSIDE_OK ? tside_lift_worst(&travel, &load, guide_of_row(), &worst, &least_down, fault) : status;
}

static tside_status lift_longest(tside_fault *fault)
{
    const tside_status status = guided(fault);
    return status == TSIDE_OK ? tside_lift_longest(&travel, &load, guide_of_row(), available, &longest, fault) : status;
}

static tside_status drive_run(tside_fault *fault)
{
    const tside_status status = guided(fault);
    return status == TSIDE_OK ? tside_drive_run(&travel, &load, guide_of_row(), &drive, &cable, &run, fault) : status;
}

static tside_status fixed_make(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK
               ? tside_fixed_make(&travel, &guide, &footing, &collar, eye_x, eye_y, ground, &fixed, fault)
               : status;
}

/* By the torque that lifts, where the row gives no constant one. */
static tside_status fixed_force(tside_fault *fault)
{
    const tside_status status = fixed_make(fault);
    return status == TSIDE_OK
               ? tside_fixed_force(&travel, constant > 0 ? NULL : &load, &fixed, constant, &forces, fault)
               : status;
}

static tside_status rope_over_at(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_rope_over_at(&rope, length, &travel, turns, &over, fault) : status;
}

static tside_status rope_over_worst(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_rope_over_worst(&rope, length, &travel, &longest_over, &hardest_over, fault)
                              : status;
}

/* What the tip's deflection is as, too, which the best angle makes least. */
static tside_status extender_layout(tside_fault *fault)
{
    tside_status status = travel_make(fault);
    if (status == TSIDE_OK)
        status = tside_extender_layout(&extender, &bow, hip, eye_x, eye_y, &travel, &layout, fault);
    if (status == TSIDE_OK)
        flexibility = layout.bow_distance * layout.bow_distance * layout.member_distance;
    return status;
}

static tside_status extender_bears(tside_fault *fault)
{
    return tside_extender_bears(&extender, &layout, force, weight, wind_eye, wind_tube, &extender_load, fault);
}

static tside_status extender_strength(tside_fault *fault)
{
    return tside_extender_strength(&extender, &layout, outboard, inboard, weight, wind_eye, wind_tube,
                                   (tside_which_end)end, lines, TSIDE_EXTENDER_LINES, &count, fault);
}

static tside_status bar_sticks(tside_fault *fault)
{
    const tside_status status = tside_bar_sticks(&bar, curtain_length, beyond_drive, beyond_free, sticks, STICKS,
                                                 &count, fault);
    if (status == TSIDE_OK)
        last = sticks[count - 1];
    return status;
}

#define LOAD STRUCTURE("load", TSIDE_KIND_LOAD, load)
#define ROPES STRUCTURE("rope", TSIDE_KIND_ROPE, rope), NUMBER("length", "m", length)
#define STANDS \
    STRUCTURE("guide", TSIDE_KIND_GUIDE, guide), STRUCTURE("footing", TSIDE_KIND_FOOTING, footing), \
        STRUCTURE("collar", TSIDE_KIND_COLLAR, collar), NUMBER("eye_x", "m", eye_x), NUMBER("eye_y", "m", eye_y), \
        NUMBER("ground", "m", ground)
#define GUIDE \
    STRUCTURE("guide", TSIDE_KIND_GUIDE, guide), STRUCTURE("collar", TSIDE_KIND_COLLAR, collar), \
        NUMBER("eye_x", "m", eye_x), NUMBER("eye_y", "m", eye_y), NUMBER("misfit", "m", misfit)
#define EXTENDER STRUCTURE("extender", TSIDE_KIND_EXTENDER, extender), STRUCTURE("layout", TSIDE_KIND_LAYOUT, layout)
#define AT_EYE NUMBER("weight", "N", weight), NUMBER("wind_eye", "N", wind_eye), NUMBER("wind_tube", "N/m", wind_tube)
#define LINE(i) STRUCTURE("lines[" #i "]", TSIDE_KIND_STRENGTH_LINE, lines[i])
#define STICK(i) STRUCTURE("sticks[" #i "]", TSIDE_KIND_BAR_STICK, sticks[i])
#define FRAME STRUCTURE("frame", TSIDE_KIND_FRAME, frame)
#define CURTAIN STRUCTURE("curtain", TSIDE_KIND_CURTAIN, curtain)
#define TRAVEL FRAME, CURTAIN, STRUCTURE("roll", TSIDE_KIND_ROLL, roll), STRUCTURE("stops", TSIDE_KIND_STOPS, stops)

const function side_functions[] = {
    {"tside_bow_make",
     bow_make,
     {FRAME},
     {NUMBER("length", "m", bow.centre.length), NUMBER("face_length", "m", bow.face.length)},
     0},
    {"tside_bow_at",
     bow_at,
     {FRAME, NUMBER("arc", "m", arc)},
     {NUMBER("point.x", "m", point.x), NUMBER("point.y", "m", point.y), NUMBER("point.heading", "rad", point.heading),
      NUMBER("point.curvature", "1/m", point.curvature)},
     0},
    {"tside_bow_at_height", bow_at_height, {FRAME, NUMBER("height", "m", height)}, {NUMBER("arc", "m", arc)}, 0},
    {"tside_bow_face", bow_face, {FRAME, NUMBER("height", "m", height)}, {NUMBER("x", "m", x)}, 0},
    {"tside_bow_crossing",
     bow_crossing,
     {FRAME, NUMBER("x", "m", x), NUMBER("y", "m", y), NUMBER("angle", "rad", angle)},
     {NUMBER("distance", "m", distance), NUMBER("arc", "m", arc)},
     0},
    {"tside_line_at",
     line_at,
     {FRAME, CURTAIN, NUMBER("distance", "m", distance)},
     {NUMBER("x", "m", x), NUMBER("y", "m", y), NUMBER("normal", "rad", normal)},
     0},
    {"tside_travel_at",
     travel_at,
     {TRAVEL, NUMBER("turns", "turn", turns)},
     {STRUCTURE("position", TSIDE_KIND_POSITION, position)},
     0},
    {"tside_travel_to_height",
     travel_to_height,
     {TRAVEL, NUMBER("underside", "m", underside)},
     {STRUCTURE("position", TSIDE_KIND_POSITION, position)},
     0},
    {"tside_lift_at",
     lift_at,
     {TRAVEL, GUIDE, LOAD, NUMBER("turns", "turn", turns)},
     {STRUCTURE("torque", TSIDE_KIND_TORQUE, torque)},
     0},
    {"tside_lift_work",
     lift_work,
     {TRAVEL, GUIDE, LOAD, NUMBER("turns", "turn", turns)},
     {NUMBER("work", "J", work)},
     0},
    {"tside_lift_worst",
     lift_worst,
     {TRAVEL, GUIDE, LOAD},
     {STRUCTURE("worst", TSIDE_KIND_TORQUE, worst), STRUCTURE("least_down", TSIDE_KIND_TORQUE, least_down)},
     0},
    {"tside_lift_longest",
     lift_longest,
     {TRAVEL, GUIDE, LOAD, NUMBER("available", "N m", available)},
     {NUMBER("length", "m", longest)},
     0},
    {"tside_drive_run",
     drive_run,
     {TRAVEL, GUIDE, LOAD, STRUCTURE("drive", TSIDE_KIND_DRIVE, drive), STRUCTURE("cable", TSIDE_KIND_CABLE, cable)},
     {STRUCTURE("run", TSIDE_KIND_RUN, run)},
     0},
    {"tside_hang_make",
     hang_make,
     {TRAVEL, GUIDE},
     {STRUCTURE("sweep", TSIDE_KIND_SWEEP, sweep), NUMBER("hang.length", "m", hang.length),
      NUMBER("hang.weight", "N", hang.weight)},
     0},
    {"tside_guide_skew", guide_skew, {TRAVEL, GUIDE}, {STRUCTURE("skew", TSIDE_KIND_SKEW, skew)}, 0},
    {"tside_eye_best",
     eye_best,
     {TRAVEL, NUMBER("eye_y", "m", eye_y), NUMBER("collar_offset", "m", collar_offset)},
     {NUMBER("eye_x", "m", eye_x)},
     0},
    {"tside_eye_least",
     eye_least,
     {STRUCTURE("side", TSIDE_KIND_SIDE, side), WHOLE("end", end)},
     {NUMBER("rise", "m", rise)},
     0},
    {"tside_guide_lean",
     guide_lean,
     {TRAVEL, GUIDE, NUMBER("turns", "turn", turns)},
     {NUMBER("lean", "rad", lean), NUMBER("drive_turns", "turn", drive_turns)},
     0},
    {"tside_side_force",
     side_force,
     {TRAVEL, GUIDE, LOAD, NUMBER("turns", "turn", turns)},
     {NUMBER("force", "N", force), NUMBER("uplift", "N", uplift)},
     0},
    {"tside_fixed_make", fixed_make, {TRAVEL, STANDS}, {STRUCTURE("fixed", TSIDE_KIND_FIXED, fixed)}, 0},
    {"tside_fixed_force",
     fixed_force,
     {TRAVEL, STANDS, LOAD, NUMBER("torque", "N m", constant)},
     {STRUCTURE("forces", TSIDE_KIND_FIXED_LOAD, forces)},
     0},
    {"tside_rope_over_at",
     rope_over_at,
     {TRAVEL, ROPES, NUMBER("turns", "turn", turns)},
     {STRUCTURE("over", TSIDE_KIND_ROPE_OVER, over)},
     0},
    {"tside_rope_over_worst",
     rope_over_worst,
     {TRAVEL, ROPES},
     {STRUCTURE("longest", TSIDE_KIND_ROPE_OVER, longest_over),
      STRUCTURE("hardest", TSIDE_KIND_ROPE_OVER, hardest_over)},
     0},
    {"tside_extender_layout",
     extender_layout,
     {TRAVEL, STRUCTURE("extender", TSIDE_KIND_EXTENDER, extender), NUMBER("hip", "m", hip),
      NUMBER("eye_x", "m", eye_x), NUMBER("eye_y", "m", eye_y)},
     {STRUCTURE("layout", TSIDE_KIND_LAYOUT, layout), NUMBER("flexibility", "m3", flexibility)},
     0},
    {"tside_extender_bears",
     extender_bears,
     {EXTENDER, AT_EYE, NUMBER("force", "N", force)},
     {STRUCTURE("load", TSIDE_KIND_EXTENDER_LOAD, extender_load)},
     0},
    {"tside_extender_strength",
     extender_strength,
     {EXTENDER, AT_EYE, NUMBER("outboard", "N", outboard), NUMBER("inboard", "N", inboard), WHOLE("end", end)},
     {LINE(0), LINE(1), LINE(2), LINE(3), LINE(4), LINE(5), LINE(6), LINE(7), LINE(8), WHOLE("count", count)},
     0},
    {"tside_bar_sticks",
     bar_sticks,
     {STRUCTURE("bar", TSIDE_KIND_BAR, bar), NUMBER("curtain", "m", curtain_length),
      NUMBER("beyond_drive", "m", beyond_drive), NUMBER("beyond_free", "m", beyond_free)},
     {STICK(0), STICK(1), STICK(2), STICK(3), STICK(4), STRUCTURE("last", TSIDE_KIND_BAR_STICK, last),
      WHOLE("count", count)},
     0},
};
const int side_function_count = sizeof side_functions / sizeof *side_functions;
