/* SPDX-License-Identifier: MIT */
/*
 * Calls of what stands on things made before: bow, line, travel, guide. A row gives what they are made of, and they are
 * made within the call. What each refuses is provoked by the suites.
 */
#include "calls.h"

#include <tunnelside/lift.h>

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
static double turns, underside, work, eye_x, eye_y, misfit, lean, drive_turns;
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

static tside_status lift_at(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_lift_at(&travel, &load, NULL, turns, &torque, fault) : status;
}

static tside_status lift_work(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_lift_work(&travel, &load, NULL, turns, &work, fault) : status;
}

static tside_status hang_make(tside_fault *fault)
{
    const tside_status status = travel_make(fault);
    return status == TSIDE_OK ? tside_hang_make(&travel, &guide, &collar, eye_x, eye_y, misfit, &hang, NULL, fault)
                              : status;
}

static tside_status guide_lean(tside_fault *fault)
{
    const tside_status status = hang_make(fault);
    return status == TSIDE_OK ? tside_guide_lean(&travel, &hang, turns, &lean, &drive_turns, fault) : status;
}

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
     {TRAVEL, STRUCTURE("load", TSIDE_KIND_LOAD, load), NUMBER("turns", "turn", turns)},
     {STRUCTURE("torque", TSIDE_KIND_TORQUE, torque)},
     0},
    {"tside_lift_work",
     lift_work,
     {TRAVEL, STRUCTURE("load", TSIDE_KIND_LOAD, load), NUMBER("turns", "turn", turns)},
     {NUMBER("work", "J", work)},
     0},
    {"tside_guide_lean",
     guide_lean,
     {TRAVEL, STRUCTURE("guide", TSIDE_KIND_GUIDE, guide), STRUCTURE("collar", TSIDE_KIND_COLLAR, collar),
      NUMBER("eye_x", "m", eye_x), NUMBER("eye_y", "m", eye_y), NUMBER("misfit", "m", misfit),
      NUMBER("turns", "turn", turns)},
     {NUMBER("lean", "rad", lean), NUMBER("drive_turns", "turn", drive_turns)},
     0},
};
const int side_function_count = sizeof side_functions / sizeof *side_functions;
