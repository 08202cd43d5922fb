/* SPDX-License-Identifier: MIT */
/*
 * Where curtain, drive and guide stand along the house, outward from the plane of the end bow's centreline; and how a
 * guide whose collar rides off its eye's plane leans and sweeps that way. Source: derivation, geometry in space.
 */
#include "statics/along.h"

#include "base/field.h"
#include "shape/peak.h"
#include "statics/guide.h"

static const char *const hung[] = {"extender", "hip"};
static const char *const alignments[] = {"in_line", "given"};

#define ON_EXTENDER APPLIES(tside_along, hung, ONLY(TSIDE_ON_EXTENDER))

/* clang-format off */
static const tside_field along_rows[] = {
    {CHOICE(tside_along, hung, hung, TSIDE_ON_EXTENDER, "what carries the guide's eye")},
    {REQUIRED(tside_along, bow, "m", TO(1), "the end bow's diameter")},
    {NUMBER(tside_along, spacer, "m", FROM(0), TO(1), 0, OURS, "solid spacer between bow and extender"), ON_EXTENDER},
    {REQUIRED(tside_along, tube, "m", TO(1), "side of the extender's square tube"), ON_EXTENDER},
    {NUMBER(tside_along, stand_off, "m", FROM(0), TO(1), 4 * IN, OURS, "from the tube's outer face to the guide's line"), MEASURED(0.25 * IN), ON_EXTENDER},
    {NUMBER(tside_along, bar_clearance, "m", FROM(0), TO(1), 1 * IN, OURS, "least distance between tube and what passes it"), ON_EXTENDER},
    {OPTIONAL(tside_along, eye_past, "m", FROM(0), TO(3), "the eye on the hip rail, past the plane of the end bow's centreline"), MEASURED(0.25 * IN),
     APPLIES(tside_along, hung, ONLY(TSIDE_ON_HIP))},
    {NUMBER(tside_along, past, "m", FROM(0), TO(3), 2 * IN, OURS, "curtain past the plane of the end bow's centreline"), MEASURED(0.5 * IN)},
    {CHOICE(tside_along, alignment, alignments, TSIDE_IN_LINE, "how far the bar runs on: so that the drive is in line with the eye, or as given")},
    {NUMBER(tside_along, run_on, "m", FROM(0), TO(3), 9 * IN, PRACTICE, "bar from the curtain's edge to the drive's centre, or to the collar's line"), MEASURED(0.5 * IN),
     APPLIES(tside_along, alignment, ONLY(TSIDE_RUN_ON_GIVEN))},
    {NUMBER(tside_along, along, "m", FROM(-1), TO(1), 0, OURS, "the guide's line beyond the drive's centre")},
    {NUMBER(tside_along, half_length, "m", FROM(0), TO(1), 3 * IN, OURS, "half the length of drive or collar along the bar")},
    {NUMBER(tside_along, clearance, "m", FROM(0), TO(1), 0.5 * IN, OURS, "least distance between drive or collar and the curtain's edge")},
};
/* clang-format on */
TABLE(tside_i_along_table, along_rows);

/* clang-format off */
static const tside_field stand_rows[] = {
    {RESULT(tside_stand, eye, "m", "the guide's line at its eye, past the plane of the end bow's centreline")},
    {RESULT(tside_stand, line, "m", "the guide's line at drive or collar")},
    {RESULT(tside_stand, misfit, "m", "how much farther out the drive stands than the eye")},
    {RESULT(tside_stand, run_on, "m", "bar from the curtain's edge to the drive's centre, or to the collar's line")},
    {RESULT(tside_stand, clear, "m", "between the curtain's edge and drive or collar, beyond the clearance asked")},
    {RESULT_OPTIONAL(tside_stand, past_most, "m", "greatest curtain past the end bow with which the drive stands in line")},
    {RESULT_COUNT(tside_stand, covers, "1 where the curtain covers the end bow")},
    {RESULT_COUNT(tside_stand, beside, "1 where drive or collar passes beside the extender's tube")},
};
/* clang-format on */
TABLE(tside_i_stand_table, stand_rows);

/* clang-format off */
static const tside_field skew_rows[] = {
    {RESULT(tside_skew, reach_shut, "m", "eye to collar along the guide when shut")},
    {RESULT(tside_skew, reach_open, "m", "eye to collar along the guide when open")},
    {RESULT(tside_skew, lean_shut, "rad", "lean along the house when shut, foot outward positive")},
    {RESULT(tside_skew, lean_open, "rad", "lean along the house when open")},
    {RESULT(tside_skew, lean_greatest, "rad", "greatest lean along the house, either way")},
    {RESULT(tside_skew, length, "m", "guide from eye to foot")},
    {RESULT(tside_skew, foot_shut, "m", "foot beyond the eye along the house when shut")},
    {RESULT(tside_skew, sweep, "m", "how far the foot sweeps along the house")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_skew_table, skew_rows, tside_skew);

/* --- places --- */

/* What the drive takes of the bar next to the curtain's edge. */
static double half_and_clearance(const tside_along *a)
{
    return a->half_length + a->clearance;
}

/* The extender's outer face. */
static double outer_face(const tside_along *a)
{
    return a->bow / 2 + a->spacer + a->tube;
}

static double eye_place(const tside_along *a)
{
    if (a->hung == TSIDE_ON_EXTENDER)
        return outer_face(a) + a->stand_off;
    return a->eye_past_given ? a->eye_past : a->past + half_and_clearance(a) + a->along;
}

/* A drive just at its clearance, as with usual values, passes outside; 1e-9 m either way decides for it. */
static int passes_beside(const tside_along *a, double drive)
{
    return a->hung == TSIDE_ON_EXTENDER && drive - a->half_length - outer_face(a) < a->bar_clearance - SLACK;
}

void tside_i_along_stand(const tside_along *a, tside_stand *stand)
{
    int in_line = a->alignment == TSIDE_IN_LINE;
    stand->eye = eye_place(a);
    stand->run_on = in_line ? stand->eye - a->past - a->along : a->run_on;
    stand->line = in_line ? stand->eye : a->past + a->run_on + a->along;
    stand->misfit = stand->line - stand->eye;
    stand->clear = stand->run_on - half_and_clearance(a);
    stand->past_most_given = a->hung == TSIDE_ON_EXTENDER || a->eye_past_given;
    stand->past_most = stand->past_most_given ? stand->eye - a->along - half_and_clearance(a) : 0;
    stand->covers = a->past >= a->bow / 2 - SLACK;
    stand->beside = passes_beside(a, a->past + stand->run_on);
}

tside_status tside_i_along_refuse(const tside_along *a, const tside_stand *stand, const tside_i_along_names *names,
                                  tside_fault *fault)
{
    const char *reason = "the drive or collar would stand over the curtain's edge";
    int on_extender = a->hung == TSIDE_ON_EXTENDER;
    if (stand->clear >= -SLACK)
        return TSIDE_OK;
    if (a->alignment == TSIDE_RUN_ON_GIVEN)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, names->run_on, names->past, reason, "m", a->run_on,
                                    TSIDE_BELOW, half_and_clearance(a), stand->clear);
    tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, names->past, on_extender ? names->stand_off : names->eye_past,
                         reason, "m", a->past, TSIDE_ABOVE, stand->past_most, stand->clear);
    tside_i_remedy(fault, (on_extender ? a->stand_off : a->eye_past) - stand->clear);
    return TSIDE_OUT_OF_REACH;
}

tside_status tside_along_stand(const tside_along *along, tside_stand *stand, tside_fault *fault)
{
    static const tside_i_along_names names = {
        .past = "along.past", .stand_off = "along.stand_off", .eye_past = "along.eye_past", .run_on = "along.run_on"};
    tside_stand made = {0};
    TRY(tside_i_check(&tside_i_along_table, "along", along, fault));
    tside_i_along_stand(along, &made);
    TRY(tside_i_along_refuse(along, &made, &names, fault));
    return ANSWER(&tside_i_stand_table, made, stand, fault);
}

/* --- the guide --- */

static void reach_at(const tside_i_spot *spot, const void *context, double *value)
{
    value[0] = tside_i_hang_lean(context, spot).reach;
}

tside_skew tside_i_skew(const tside_i_track *track, const tside_hang *hang)
{
    tside_i_sought reach = {.least_too = 1};
    double d_shut = tside_i_hang_lean(hang, &track->shut).reach, d_open = tside_i_hang_lean(hang, &track->open).reach,
           m = hang->misfit, G = hang->length, nearest, farthest;
    if (m == 0) /* in line: nothing leans that way */
        return (tside_skew){.reach_shut = d_shut, .reach_open = d_open, .length = G};
    tside_i_track_seek(track, reach_at, hang, &reach, 1);
    nearest = hypot(-reach.least.value, m);
    farthest = hypot(reach.greatest.value, m);
    return (tside_skew){
        .reach_shut = hypot(d_shut, m),
        .reach_open = hypot(d_open, m),
        .lean_shut = atan2(m, d_shut),
        .lean_open = atan2(m, d_open),
        .lean_greatest = atan2(fabs(m), -reach.least.value),
        .length = G,
        .foot_shut = m * G / hypot(d_shut, m),
        .sweep = fabs(m) * G / nearest - fabs(m) * G / farthest,
    };
}

tside_status tside_guide_skew(const tside_travel *travel, const tside_hang *hang, tside_skew *skew, tside_fault *fault)
{
    tside_i_track track;
    tside_skew made;
    tside_i_track_make(travel, &track);
    made = tside_i_skew(&track, hang);
    return ANSWER(&tside_i_skew_table, made, skew, fault);
}
