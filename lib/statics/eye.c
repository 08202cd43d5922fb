/* SPDX-License-Identifier: MIT */
/*
 * What a force at the eye puts into extender, bolts and eye bolt, in space: the tube bends in and out of the end wall's
 * plane and twists, for the eye stands off it. Source: derivation, statics; AISC 360-16, H3 and G4.
 */
#include "statics/eye.h"

#include <tunnelside/strength.h>

#include "base/field.h"
#include "parts/material.h"
#include "parts/tube.h"

/* clang-format off */
static const tside_field rows[] = {
    {RESULT(tside_extender_load, across, "N", "force across the tube, outboard and down positive")},
    {RESULT(tside_extender_load, along, "N", "force along the tube, up positive")},
    {RESULT(tside_extender_load, bending_in, "Pa", "bending at the bow bolt, in the end wall's plane")},
    {RESULT(tside_extender_load, bending_out, "Pa", "bending out of it, just below the bow bolt")},
    {RESULT(tside_extender_load, bending_wind, "Pa", "bending out of it by wind along the house, at the bow bolt")},
    {RESULT(tside_extender_load, axial, "Pa", "stress along the tube, net section")},
    {RESULT(tside_extender_load, twist, "Pa", "shear of the torque between eye and bow bolt")},
    {RESULT(tside_extender_load, shear, "Pa", "shear in the two walls")},
    {RESULT(tside_extender_load, combined, "Pa", "all of these as one stress")},
    {RESULT(tside_extender_load, bow_shear, "N", "shear on the bow bolt")},
    {RESULT(tside_extender_load, member_shear, "N", "shear on the member bolt")},
    {RESULT(tside_extender_load, bow_pull, "N", "pull on the bow bolt")},
    {RESULT(tside_extender_load, member_pull, "N", "pull on the member bolt")},
    {RESULT(tside_extender_load, tip, "m", "eye's movement across the tube, in the end wall's plane")},
    {RESULT(tside_extender_load, eye_bolt, "Pa", "bending at the eye bolt's root")},
    {RESULT_OPTIONAL(tside_extender_load, stand_off_most, "m", "greatest stand-off that the eye bolt bears under this force")},
};
/* clang-format on */
TABLE(tside_i_extender_load_table, rows);

/* An extender in the terms of the formulas. */
typedef struct tube {
    tside_metal_values metal, eye;
    tside_section section;
    double B, T, dh; /* side, wall, bolt's hole */
    double h, b;     /* flat inside; half the flat outside */
    double e, ef;    /* guide's line from the tube's axis; from the bow's face */
    double angle, sB, sG;
    double end, length; /* above the eye; of the whole tube */
} tube;

tside_status tside_i_check_end_wind(const tside_i_end_wind *wind, tside_fault *fault)
{
    TRY(tside_i_argument(fault, "wind_eye", "N", wind->eye, 0, 0));
    return tside_i_argument(fault, "wind_tube", "N/m", wind->tube, 0, 0);
}

tside_status tside_i_check_arms(const tside_layout *layout, tside_fault *fault)
{
    TRY(tside_i_argument(fault, "layout.angle", "rad", layout->angle, -TSIDE_PI / 2, 0));
    if (layout->angle > TSIDE_PI / 2)
        return tside_i_bound(fault, "layout.angle", "rad", layout->angle, TSIDE_ABOVE, TSIDE_PI / 2);
    TRY(tside_i_argument(fault, "layout.bow_distance", "m", layout->bow_distance, 0, 1));
    return tside_i_argument(fault, "layout.member_distance", "m", layout->member_distance, layout->bow_distance, 1);
}

/* Half the flat, about whose edge the tube tips on its bolt, must be wider than half the hole. */
static tside_status check_flat(const tube *t, tside_fault *fault)
{
    if (!(t->b > t->dh / 2))
        REFUSE(fault, TSIDE_CONTRADICTS, "extender.bolt_hole", "extender.tube",
               "the hole is as wide as the tube's flat", "m", t->dh, TSIDE_NOT_BELOW, 2 * t->b, 0);
    if (!(t->h > SLACK))
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "extender.tube.inner_radius", "extender.tube.side",
                              "the tube has no flat inside");
    return TSIDE_OK;
}

/* The eye bolt's metal, refused by its own name. */
static tside_status eye_metal(const tside_extender *extender, tside_metal_values *values, tside_fault *fault)
{
    tside_status status = tside_i_material_values(&extender->eye_material, values, fault);
    if (status != TSIDE_OK && fault) {
        tside_i_path(fault->field, "extender.eye_material.grade");
        tside_i_path(fault->other, "extender.eye_material.metal");
    }
    return status;
}

static tside_status make_tube(const tside_extender *extender, const tside_layout *layout, tube *t, tside_fault *fault)
{
    double ro, ri;
    TRY(tside_i_within(fault, "extender", tside_i_material_values(&extender->material, &t->metal, fault)));
    TRY(tside_i_within(fault, "extender",
                       tside_i_square_section(&extender->tube, t->metal.density, &t->section, fault)));
    tside_i_square_radii(&extender->tube, &ro, &ri);
    t->B = extender->tube.side;
    t->T = extender->tube.wall;
    t->dh = extender->bolt_hole;
    t->h = t->B - 2 * t->T - 2 * ri;
    t->b = t->B / 2 - ro;
    t->e = t->B / 2 + extender->eye_stand_off;
    t->ef = extender->eye_stand_off + t->B + extender->spacer;
    t->angle = layout->angle;
    t->sB = layout->bow_distance;
    t->sG = layout->member_distance;
    t->end = extender->end_distance;
    t->length = t->end + t->sG + extender->tail;
    TRY(check_flat(t, fault));
    return eye_metal(extender, &t->eye, fault);
}

/* At the bow bolt, of what stands above it. */
static double wind_moment(const tube *t, const tside_i_end_wind *wind)
{
    double above = t->end + t->sB;
    return wind->eye * t->sB + wind->tube * above * above / 2;
}

/* Of wind on eye and tube about a bolt so far below the eye, which the other bolt has to balance. */
static double wind_about(const tube *t, const tside_i_end_wind *wind, double below)
{
    return fabs(wind->eye * below + wind->tube * t->length * (t->end + below - t->length / 2));
}

/*
 * The bow bolt's two holes lie at the middle of bending in the end wall's plane, and in the farthest walls of bending
 * out of it.
 */
static void stresses(const tube *t, double P, double X, const tside_i_end_wind *wind, tside_extender_load *load)
{
    double B = t->B, T = t->T, dh = t->dh, arm = (B - T) / 2;
    double I_in = t->section.inertia - T * dh * dh * dh / 6,
           I_out = t->section.inertia - 2 * dh * T * (arm * arm + T * T / 12);
    load->bending_in = fabs(P) * t->sB * (B / 2) / I_in;
    load->bending_out = fabs(X) * t->ef * (B / 2) / I_out;
    load->bending_wind = wind_moment(t, wind) * (B / 2) / I_out;
    load->axial = fabs(X) / (t->section.area - 2 * dh * T);
    load->twist = fabs(P) * t->e / t->section.torsion_modulus;
    load->shear = fabs(P) / (2 * t->h * T);
    load->combined = tside_i_one_stress(load->bending_in + load->bending_out + load->bending_wind + load->axial,
                                        load->twist + load->shear);
}

/* What two forces square to each other come to; no force is so great that its square overflows. */
static double together(double a, double b)
{
    return sqrt(a * a + b * b);
}

/* Wind blows from either end of the house, and so pulls at each bolt. */
static void bolts(const tube *t, double P, double X, const tside_i_end_wind *wind, tside_extender_load *load)
{
    double apart = t->sG - t->sB;
    load->bow_shear = together(P * t->sG / apart, X);
    load->member_shear = together(P * t->sB / apart, X);
    load->bow_pull = fabs(P) * t->ef / t->b + fmax(0, -X) * t->ef / apart + wind_about(t, wind, t->sG) / apart;
    load->member_pull = fmax(0, X) * t->ef / apart + wind_about(t, wind, t->sB) / apart;
}

static double root_modulus(double root)
{
    return TSIDE_PI * root * root * root / 32;
}

/* The bolt bends over its stand-off. Without a force it bears any. */
static void eye_bolt(const tside_extender *extender, const tside_metal_values *metal, double force,
                     tside_extender_load *load)
{
    double modulus = root_modulus(extender->eye_root);
    load->eye_bolt = force * extender->eye_stand_off / modulus;
    load->stand_off_most_given = metal->yield_known && force > 0;
    load->stand_off_most = load->stand_off_most_given ? metal->yield / metal->safety * modulus / force : 0;
}

static void bear(const tside_extender *extender, const tube *t, double F, double W, const tside_i_end_wind *wind,
                 tside_extender_load *load)
{
    double cosine = cos(t->angle), sine = sin(t->angle), P = F * cosine + W * sine, X = F * sine - W * cosine;
    load->across = P;
    load->along = X;
    stresses(t, P, X, wind, load);
    bolts(t, P, X, wind, load);
    load->tip = P * t->sB * t->sB * t->sG / (3 * t->metal.modulus * t->section.inertia);
    eye_bolt(extender, &t->eye, together(F, W), load);
}

tside_status tside_i_extender_bears(const tside_extender *extender, const tside_layout *layout, double outboard,
                                    double inboard, double weight, const tside_i_end_wind *wind,
                                    tside_i_extender_loads *loads, tside_fault *fault)
{
    tube t;
    TRY(make_tube(extender, layout, &t, fault));
    loads->tube = t.metal;
    loads->eye = t.eye;
    bear(extender, &t, outboard, weight, wind, &loads->up);
    bear(extender, &t, -inboard, weight, wind, &loads->down);
    return TSIDE_OK;
}

tside_status tside_extender_bears(const tside_extender *extender, const tside_layout *layout, double force,
                                  double weight, double wind_eye, double wind_tube, tside_extender_load *load,
                                  tside_fault *fault)
{
    const tside_i_end_wind wind = {wind_eye, wind_tube};
    tside_extender_load made;
    tube t;
    TRY(tside_i_check(&tside_i_extender_table, "extender", extender, fault));
    TRY(tside_i_check_arms(layout, fault));
    TRY(tside_i_argument(fault, "force", "N", force, -TSIDE_MOST, 0));
    TRY(tside_i_argument(fault, "weight", "N", weight, 0, 0));
    TRY(tside_i_check_end_wind(&wind, fault));
    TRY(make_tube(extender, layout, &t, fault));
    bear(extender, &t, force, weight, &wind, &made);
    return ANSWER(&tside_i_extender_load_table, made, load, fault);
}
