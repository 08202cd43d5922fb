/* SPDX-License-Identifier: MIT */
/*
 * Calls of what stands on things made before: bow, line, travel, guide. A row gives what they are made of, and they are
 * made within the call. What each refuses is provoked by the suites.
 */
#include "calls.h"

#include <tunnelside/bow.h>

static tside_frame frame;
static tside_bow bow;
static tside_bow_point point;
static double arc, height, x, y, angle, distance;

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

#define FRAME STRUCTURE("frame", TSIDE_KIND_FRAME, frame)

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
};
const int side_function_count = sizeof side_functions / sizeof *side_functions;
