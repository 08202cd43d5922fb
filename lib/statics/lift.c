/* SPDX-License-Identifier: MIT */
/* Torque: what lifting a roll, its curtain, bar and drive asks, with drag and the guide's push. Source: derivation. */
#include "statics/lift.h"

#include "base/field.h"

/* clang-format off */
static const tside_field load_rows[] = {
    {REQUIRED(tside_load, length, "m", TO(1000), "length of the curtain on the bar")},
    {NUMBER(tside_load, bar_mass, "kg/m", FROM(0), TO(1000), 0, OURS, "mass of the bar per metre")},
    {NUMBER(tside_load, clip_mass, "kg/m", FROM(0), TO(100), 0.1, PRACTICE, "mass of the clips per metre of bar")},
    {NUMBER(tside_load, areal_mass, "kg/m2", FROM(0), TO(20), 0.14, PRACTICE, "mass of the curtain per area")},
    {NUMBER(tside_load, wet, "kg/m2", FROM(0), TO(5), 0.035, PRACTICE, "water on the wet curtain per area")},
    {NUMBER(tside_load, end_mass, "kg", FROM(0), TO(1000), 0, OURS, "drive, free end's collar, and bar beyond the curtain's edges")},
    {NUMBER(tside_load, friction, "1", FROM(0), TO(5), 0.15, PRACTICE, "friction as a fraction of the lift")},
    {NUMBER(tside_load, rope_pressure, "N/m", FROM(0), TO(1e4), 0, OURS, "ropes pressing on the roll, per metre of bar")},
    {NUMBER(tside_load, rope_friction, "1", FROM(0), TO(2), 0, OURS, "coefficient of friction of the ropes")},
};
/* clang-format on */
TABLE(tside_i_load_table, load_rows);

/* clang-format off */
static const tside_field torque_rows[] = {
    {RESULT(tside_torque, turns, "turn", "turns of the bar since shut")},
    {RESULT(tside_torque, lift, "N m", "torque that lifts, without drag")},
    {RESULT(tside_torque, drag, "N m", "torque of friction")},
    {RESULT(tside_torque, up, "N m", "torque at the bar going up, lift and drag")},
    {RESULT(tside_torque, drive, "N m", "torque that the drive must give, with the guide's push")},
    {RESULT(tside_torque, down, "N m", "torque that brings the bar down by itself, lift less drag")},
    {RESULT(tside_torque, per_metre, "N", "lift and drag per metre of bar and curtain")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_torque_table, torque_rows, tside_torque);

/* w: what hangs on each metre of bar. */
static double line_weight(const tside_load *load, double length)
{
    return TSIDE_GRAVITY * (load->bar_mass + load->clip_mass + (load->areal_mass + load->wet) * length);
}

/* The lift of each metre of bar with its curtain: w vy, and the hanging curtain that swings with its chord. */
static inline double metre_lift(const tside_load *load, const tside_i_spot *spot)
{
    double sheet = TSIDE_GRAVITY * (load->areal_mass + load->wet);
    if (spot->slack)
        return 0;
    return line_weight(load, spot->length) * spot->vy +
           sheet * spot->ny * (spot->share * spot->r * spot->r + spot->swing * spot->s / 2);
}

static inline double end_lift(const tside_load *load, const tside_i_spot *spot)
{
    return spot->slack ? 0 : TSIDE_GRAVITY * load->end_mass * spot->vy;
}

/* By the metre of bar, where ropes press with so much on it. */
static double rope_drag(const tside_load *load, double pressure, const tside_i_spot *spot)
{
    return 2 * load->rope_friction * pressure * spot->r;
}

/* Without what the guide does. */
static inline tside_torque bar_torque(const tside_i_lifting *lifting, const tside_i_spot *spot)
{
    const tside_load *load = lifting->load;
    double pressure = load->rope_pressure + (lifting->ropes ? tside_i_rope_presses(lifting->ropes, spot) : 0);
    double metre = metre_lift(load, spot), ropes = rope_drag(load, pressure, spot);
    tside_torque t = {0, 0, 0, 0, 0, 0, 0};
    t.lift = metre * load->length + end_lift(load, spot);
    t.drag = load->friction * fabs(t.lift) + ropes * load->length;
    t.up = t.lift + t.drag;
    t.down = t.lift - t.drag;
    t.drive = t.up;
    t.per_metre = metre + load->friction * fabs(metre) + ropes;
    return t;
}

/* What the drive must give with a guide that turns with the bar, and its moment about the eye. */
static inline double at_drive(const tside_torque *t, const tside_i_lean *lean, double moment)
{
    return (t->up + moment * lean->rate) / (1 - lean->rate);
}

tside_torque tside_i_torque_leaning(const tside_i_lifting *lifting, const tside_i_spot *spot, const tside_i_lean *lean)
{
    tside_torque t = bar_torque(lifting, spot);
    t.drive = at_drive(&t, lean, tside_i_hang_moment(lifting->hang, lean));
    return t;
}

tside_torque tside_i_torque(const tside_i_lifting *lifting, const tside_i_spot *spot)
{
    tside_i_lean lean;
    if (!lifting->hang)
        return bar_torque(lifting, spot);
    lean = tside_i_hang_lean(lifting->hang, spot);
    return tside_i_torque_leaning(lifting, spot, &lean);
}

/* --- quantities along the travel --- */

static void guide_rate(const tside_i_spot *spot, const void *context, double *value)
{
    value[0] = tside_i_hang_lean(context, spot).rate;
}

/*
 * The guide's rate; the torque at the drive; what holds the bar on its way down; and minus the length that the
 * available torque lifts. Without a guide nothing turns.
 */
enum { RATE, DRIVE, HOLD, SHORTNESS, EXTREMES };
static void extremes_at(const tside_i_spot *spot, const void *context, double *value)
{
    const tside_i_lifting *lifting = context;
    const tside_i_lean lean = lifting->hang ? tside_i_hang_lean(lifting->hang, spot) : (tside_i_lean){0};
    const double moment = lifting->hang ? tside_i_hang_moment(lifting->hang, &lean) : 0,
                 own = end_lift(lifting->load, spot);
    tside_torque t = bar_torque(lifting, spot);
    value[RATE] = lean.rate;
    value[DRIVE] = at_drive(&t, &lean, moment);
    value[HOLD] = -t.down;
    value[SHORTNESS] = -(lifting->available * (1 - lean.rate) - moment * lean.rate - own -
                         lifting->load->friction * fabs(own)) /
                       t.per_metre;
}

static tside_status check_rate(double rate, tside_fault *fault)
{
    if (!(rate < 1))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "hang", "",
               "the guide would turn as fast as the bar, so that no torque drives it", "1", rate, TSIDE_NOT_BELOW, 1,
               0);
    return TSIDE_OK;
}

tside_status tside_i_lift_check(const tside_i_track *track, const tside_load *load, const tside_hang *hang,
                                tside_fault *fault)
{
    tside_i_spot where;
    TRY(tside_i_check(&tside_i_load_table, "load", load, fault));
    return hang ? check_rate(tside_i_track_greatest(track, guide_rate, hang, &where), fault) : TSIDE_OK;
}

static void answer(const tside_i_lifting *lifting, const tside_i_spot *spot, tside_torque *torque)
{
    *torque = tside_i_torque(lifting, spot);
    torque->turns = tside_i_travel_angle(lifting->track->travel, spot) / (2 * TSIDE_PI);
}

tside_status tside_lift_at(const tside_travel *travel, const tside_load *load, const tside_hang *hang, double turns,
                           tside_torque *torque, tside_fault *fault)
{
    tside_i_track track;
    tside_i_lifting lifting = {&track, load, NULL, hang, 0};
    tside_i_spot spot;
    tside_torque made;
    tside_i_track_make(travel, &track);
    TRY(tside_i_lift_check(&track, load, hang, fault));
    TRY(tside_i_travel_find(travel, turns, &spot, fault));
    answer(&lifting, &spot, &made);
    return ANSWER(&tside_i_torque_table, made, torque, fault);
}

static void answer_at(const tside_i_lifting *lifting, const tside_i_peak *peak, tside_torque *torque)
{
    tside_i_spot room;
    answer(lifting, tside_i_peak_spot(lifting->track, peak, &room), torque);
}

double tside_i_lift_extremes(const tside_i_lifting *lifting, tside_torque *worst, tside_torque *least_down,
                             double *longest)
{
    tside_i_lifting bar = {lifting->track, lifting->load, lifting->ropes, NULL, 0};
    tside_i_sought sought[EXTREMES] = {{0}};
    tside_i_track_seek(lifting->track, extremes_at, lifting, sought,
                       longest      ? EXTREMES
                       : least_down ? HOLD + 1
                                    : DRIVE + 1);
    answer_at(lifting, &sought[DRIVE].greatest, worst);
    if (least_down)
        answer_at(&bar, &sought[HOLD].greatest, least_down);
    if (longest)
        *longest = -sought[SHORTNESS].greatest.value;
    return sought[RATE].greatest.value;
}

/* A torque, and what it moves. */
typedef struct moving {
    const tside_i_lifting *lifting;
    double torque;
} moving;

/*
 * Minus the pressure in which the torque just moves the bar: ropes then press on it with p (s/2 + D), what the curtain
 * hands to its lower edge and what the roll takes itself.
 */
static void least_wind(const tside_i_spot *spot, const void *context, double *value)
{
    const moving *m = context;
    const tside_i_lifting *lifting = m->lifting;
    const tside_i_lean lean = lifting->hang ? tside_i_hang_lean(lifting->hang, spot) : (tside_i_lean){0};
    const double moment = lifting->hang ? tside_i_hang_moment(lifting->hang, &lean) : 0;
    const double spare = m->torque * (1 - lean.rate) - moment * lean.rate - bar_torque(lifting, spot).up;
    value[0] = -spare / (rope_drag(lifting->load, spot->s / 2 + 2 * spot->r, spot) * lifting->load->length);
}

double tside_i_lift_through_wind(const tside_i_lifting *lifting, double torque)
{
    const moving m = {lifting, torque};
    tside_i_spot where;
    return -tside_i_track_greatest(lifting->track, least_wind, &m, &where);
}

tside_status tside_lift_worst(const tside_travel *travel, const tside_load *load, const tside_hang *hang,
                              tside_torque *worst, tside_torque *least_down, tside_fault *fault)
{
    tside_i_track track;
    tside_i_lifting lifting = {&track, load, NULL, hang, 0};
    tside_torque most, least;
    TRY(tside_i_check(&tside_i_load_table, "load", load, fault));
    tside_i_track_make(travel, &track);
    TRY(check_rate(tside_i_lift_extremes(&lifting, &most, least_down ? &least : NULL, NULL), fault));
    if (least_down)
        TRY(tside_i_within(fault, "least_down", tside_i_finite(&tside_i_torque_table, &least, fault)));
    TRY(ANSWER(&tside_i_torque_table, most, worst, fault));
    if (least_down)
        *least_down = least;
    return TSIDE_OK;
}

/* Heights from the fixing down, so that the curtain's share does not drown in the height of the hip. */
double tside_i_energy(const tside_travel *travel, const tside_load *load, const tside_hang *hang,
                      const tside_i_spot *spot)
{
    double y = spot->y - travel->line.y, sheet = TSIDE_GRAVITY * (load->areal_mass + load->wet);
    double depth = spot->on_line ? tside_i_line_moment(&travel->line, spot->s) : spot->s * spot->s / 2 * spot->nx;
    double e = (line_weight(load, spot->length) * load->length + TSIDE_GRAVITY * load->end_mass) * y -
               sheet * load->length * depth;
    if (hang) {
        tside_i_lean lean = tside_i_hang_lean(hang, spot);
        e += -hang->weight * (hang->chain + hang->length) / 2 * tside_i_shown(lean.reach, hang->misfit) * lean.cosine +
             hang->carried * hang->carried_offset * tside_i_lean_angle(&lean);
    }
    return e;
}

tside_status tside_lift_work(const tside_travel *travel, const tside_load *load, const tside_hang *hang, double turns,
                             double *work, tside_fault *fault)
{
    tside_i_track track;
    tside_i_spot spot;
    tside_i_track_make(travel, &track);
    TRY(tside_i_lift_check(&track, load, hang, fault));
    TRY(tside_i_travel_find(travel, turns, &spot, fault));
    return ANSWER_NUMBER(tside_i_energy(travel, load, hang, &spot) - tside_i_energy(travel, load, hang, &track.shut),
                         work, fault);
}

tside_status tside_lift_longest(const tside_travel *travel, const tside_load *load, const tside_hang *hang,
                                double available, double *length, tside_fault *fault)
{
    tside_i_track track;
    tside_i_lifting lifting = {&track, load, NULL, hang, available};
    tside_torque worst, least_down;
    double longest;
    tside_i_track_make(travel, &track);
    TRY(tside_i_lift_check(&track, load, hang, fault));
    TRY(tside_i_argument(fault, "available", "N m", available, 0, 1));
    if (load->bar_mass + load->clip_mass + load->areal_mass + load->wet + load->rope_pressure * load->rope_friction <=
        0)
        return tside_i_bound(fault, "load.bar_mass", "kg/m", load->bar_mass, TSIDE_NOT_ABOVE, 0);
    tside_i_lift_extremes(&lifting, &worst, &least_down, &longest);
    if (!(longest > 0)) {
        tside_load bare = *load;
        tside_i_lifting own = {&track, &bare, NULL, hang, 0};
        bare.length = 0;
        tside_i_lift_extremes(&own, &worst, NULL, NULL);
        REFUSE(fault, TSIDE_OUT_OF_REACH, "available", "load.end_mass", "the torque does not lift even the drive",
               "N m", available, TSIDE_NOT_ABOVE, worst.drive, 0);
    }
    return ANSWER_NUMBER(longest, length, fault);
}

tside_status tside_bar_twist(double per_metre, double length, double shear_modulus, double torsion, double *twist,
                             tside_fault *fault)
{
    TRY(tside_i_argument(fault, "per_metre", "N", per_metre, 0, 0));
    TRY(tside_i_argument(fault, "length", "m", length, 0, 0));
    TRY(tside_i_argument(fault, "shear_modulus", "Pa", shear_modulus, 0, 1));
    TRY(tside_i_argument(fault, "torsion", "m4", torsion, 0, 1));
    return ANSWER_NUMBER(per_metre * length * length / (2 * shear_modulus * torsion), twist, fault);
}
