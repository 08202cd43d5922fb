/* SPDX-License-Identifier: MIT */
/*
 * Lines of strength: demand beside limit, and the verdict; what the extender has to bear. Source: derivation, standard beam tables; AISC 360, chapter F.
 */
#include "statics/strength.h"

#include "parts/material.h"
#include "parts/tube.h"
#include "statics/eye.h"

static const char *const codes[] = {
    "bar_shear", "bar_shear_stall", "bar_bending", "coupling_screw", "splice_screw", "splice_screw_stall", "guide_bending",
    "eye_bolt_bending", "extender_bending", "extender_tip", "bow_bolt", "member_bolt", "bow_net_section", "rail_pull",
};
static const char *const ends[] = {"drive_end", "free_end"};
static const char *const measures[] = {"stress", "force", "deflection", "share"};
static const char *const verdicts[] = {"ok", "look", "no"};

static const tside_field rows[] = {
    {CHOICE(tside_strength_line, code, codes, 0, "what is checked")},
    {CHOICE(tside_strength_line, end, ends, 0, "at which end of the side")},
    {CHOICE(tside_strength_line, measure, measures, 0, "what demand and limit are: Pa, N, m or a share")},
    {RESULT(tside_strength_line, demand, "", "demand, in Pa, N, m or 1 by the measure")},
    {RESULT_OPTIONAL(tside_strength_line, limit, "", "limit, in the same unit")},
    {RESULT_OPTIONAL(tside_strength_line, utilisation, "1", "demand over limit")},
    {RESULT_OPTIONAL(tside_strength_line, yield_needed, "Pa", "yield that is needed at least, where none is known")},
    {CHOICE(tside_strength_line, verdict, verdicts, 0, "ok, look, or no")},
};
TABLE(tside_i_strength_line_table, rows);

const char *tside_strength_text(int code)
{
    switch (code) {
    case TSIDE_BAR_SHEAR: return "bar shear next to the drive, running";
    case TSIDE_BAR_SHEAR_STALL: return "bar shear next to the drive, stalled";
    case TSIDE_BAR_BENDING: return "bar bending under the drive's weight, reversed each turn";
    case TSIDE_COUPLING_SCREW: return "shear on each screw of the drive's coupling, stalled";
    case TSIDE_SPLICE_SCREW: return "shear on each screw of the nearest splice, running";
    case TSIDE_SPLICE_SCREW_STALL: return "shear on each screw of the nearest splice, stalled";
    case TSIDE_GUIDE_BENDING: return "guide pipe bending at the collar";
    case TSIDE_EYE_BOLT_BENDING: return "eye bolt bending at its root";
    case TSIDE_EXTENDER_BENDING: return "extender bending at the bow bolt, net section";
    case TSIDE_EXTENDER_TIP: return "extender's eye moves by";
    case TSIDE_BOW_BOLT: return "shear on the bow bolt";
    case TSIDE_MEMBER_BOLT: return "shear on the member bolt";
    case TSIDE_BOW_NET_SECTION: return "bow's section modulus left by its hole";
    case TSIDE_RAIL_PULL: return "pull on the hip rail";
    default: return "";
    }
}

static tside_verdict judge(double utilisation)
{
    return utilisation <= 0.8 ? TSIDE_VERDICT_OK : utilisation <= 1 ? TSIDE_VERDICT_LOOK : TSIDE_VERDICT_NO; /* so that NaN is never ok */
}

tside_strength_line tside_i_stress_line(tside_strength_code code, tside_which_end end, double stress, const tside_metal_values *metal, double share_of_yield)
{
    tside_strength_line line = {.code = code, .end = end, .measure = TSIDE_STRESS, .demand = stress};
    if (metal->yield_known) {
        line.limit_given = line.utilisation_given = 1;
        line.limit = share_of_yield * metal->yield / metal->safety;
        line.utilisation = stress / line.limit;
        line.verdict = judge(line.utilisation);
    } else {
        line.yield_needed_given = 1;
        line.yield_needed = stress * metal->safety / share_of_yield;
        line.verdict = TSIDE_VERDICT_LOOK;
    }
    return line;
}

tside_strength_line tside_i_force_line(tside_strength_code code, tside_which_end end, double force, int limit_given, double limit)
{
    tside_strength_line line = {.code = code, .end = end, .measure = TSIDE_FORCE, .demand = force, .verdict = TSIDE_VERDICT_LOOK};
    if (limit_given) {
        line.limit_given = line.utilisation_given = 1;
        line.limit = limit;
        line.utilisation = force / limit;
        line.verdict = judge(line.utilisation);
    }
    return line;
}

tside_strength_line tside_i_plain_line(tside_strength_code code, tside_which_end end, tside_measure measure, double demand)
{
    return (tside_strength_line){.code = code, .end = end, .measure = measure, .demand = demand, .verdict = TSIDE_VERDICT_LOOK};
}

tside_status tside_i_extender_strength(const tside_extender *extender, const tside_layout *layout, double force, double weight, tside_which_end end,
                                       tside_strength_line *lines, tside_fault *fault)
{
    tside_metal_values metal, eye_metal;
    tside_section section;
    double a = layout->angle, sB = layout->bow_distance, sG = layout->member_distance, F = force, W = weight, T, dh, P, X, net, half;
    TRY(tside_i_within(fault, "extender", tside_i_material_values(&extender->material, &metal, fault)));
    TRY(tside_i_within(fault, "extender", tside_i_square_section(&extender->tube, metal.density, &section, fault)));
    TRY(tside_i_eye_metal(extender, &eye_metal, fault));
    T = extender->tube.wall;
    dh = extender->bolt_hole;
    half = extender->tube.side / 2;
    P = F * cos(a) + W * sin(a);
    X = fabs(F * sin(a) - W * cos(a));
    net = section.inertia - 2 * T * dh * dh * dh / 12;
    lines[0] = tside_i_stress_line(TSIDE_EXTENDER_BENDING, end, P * sB * half / net, &metal, 1);
    lines[1] = tside_i_plain_line(TSIDE_EXTENDER_TIP, end, TSIDE_DEFLECTION, P * sB * sB * sG / (3 * metal.modulus * section.inertia));
    lines[2] = tside_i_force_line(TSIDE_BOW_BOLT, end, hypot(P * sG / (sG - sB), X), extender->bolt_limit_given, extender->bolt_limit);
    lines[3] = tside_i_force_line(TSIDE_MEMBER_BOLT, end, hypot(P * sB / (sG - sB), X), extender->bolt_limit_given, extender->bolt_limit);
    lines[4] = tside_i_stress_line(TSIDE_EYE_BOLT_BENDING, end, F * extender->eye_stand_off / (TSIDE_PI * pow(extender->eye_root, 3) / 32), &eye_metal, 1);
    return TSIDE_OK;
}

tside_status tside_extender_strength(const tside_extender *extender, const tside_layout *layout, double force, double weight, tside_which_end end,
                                     tside_strength_line *lines, tside_fault *fault)
{
    tside_strength_line made[TSIDE_EXTENDER_LINES];
    TRY(tside_i_check(&tside_i_extender_table, "extender", extender, fault));
    TRY(tside_i_check_arms(layout, fault));
    TRY(tside_i_argument(fault, "force", "N", force, 0, 0));
    TRY(tside_i_argument(fault, "weight", "N", weight, 0, 0));
    TRY(tside_i_extender_strength(extender, layout, force, weight, end, made, fault));
    return ANSWER_LIST(&tside_i_strength_line_table, made, lines, TSIDE_EXTENDER_LINES, fault);
}
