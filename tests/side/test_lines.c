/* SPDX-License-Identifier: MIT */
/* The strength lines of a plan, against the functions they are made of. */
#include <check.h>
#include <float.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "winds.h"

Suite *lines_suite(void);

/* --- strength, line by line --- */

static void same_line(const tside_strength_line *got, const tside_strength_line *want)
{
    ck_assert(got->measure == want->measure && got->verdict == want->verdict && got->limit_given == want->limit_given &&
              got->utilisation_given == want->utilisation_given && got->yield_needed_given == want->yield_needed_given);
    NEAR(got->demand, want->demand, 1e-9 * want->demand, "demand", (int)want->code);
    NEAR(got->limit, want->limit, 0, "limit", (int)want->code);
    NEAR(got->yield_needed, want->yield_needed, 1e-9 * want->yield_needed, "yield needed", (int)want->code);
}

/* A stress against a share of yield over its safety factor. */
static void stress_is(const tside_plan *plan, tside_strength_code code, double stress, const tside_metal_values *metal,
                      double share)
{
    const tside_strength_line *line = strength_of(plan, code, TSIDE_DRIVE_END);
    ck_assert(line->measure == TSIDE_STRESS && line->limit_given);
    NEAR(line->demand, stress, 1e-7 * stress, "stress", (int)code);
    NEAR(line->limit, share * metal->yield / metal->safety, 1e-6, "limit", (int)code);
}

static void force_is(const tside_plan *plan, tside_strength_code code, double torque, const tside_bar *bar)
{
    const tside_strength_line *line = strength_of(plan, code, TSIDE_DRIVE_END);
    double force = torque / (bar->screws * bar->tube.diameter /
                             2); /* statics: n screws at a radius D/2, each with F, hold n F D/2 */
    ck_assert(line->measure == TSIDE_FORCE && line->limit_given == bar->screw_limit_given);
    NEAR(line->demand, force, 1e-9 * force, "force", (int)code);
    if (line->limit_given)
        ck_assert(line->limit == bar->screw_limit && line->utilisation == line->demand / line->limit);
}

/*
 * A bar cut at the curtain's edge: what is beyond it weighs W at the drive, and the guide's eye pushes with F square to
 * the guide, so far out along the house. At many places, of which the greatest counts. running: by what lifts, else a
 * constant torque.
 */
static double bar_end_bending(const tside_side *side, const tside_plan *plan, int running, double torque)
{
    enum { LOOKS = 4000 };
    const tside_collar collar = tside_drive_collar(&side->drive);
    const double eye = run_on(side, &side->drive_end, 0), weight = GRAVITY * collar.mass;
    double greatest = 0;
    tside_travel travel;
    tside_hang hang;
    tside_load load;
    tside_fault fault;
    load = load_of(side);
    travel = travel_of(side);
    ANSWERS(tside_hang_make(&travel, &side->drive_end.guide, &collar, plan->drive_end.eye_x, plan->drive_end.eye_y, 0,
                            &hang, NULL, &fault));
    for (int i = 0; i <= LOOKS; i++) {
        const double turns = plan->bar_turns * i / LOOKS;
        double force, uplift, lean, ignored, across, up;
        tside_position at;
        ANSWERS(tside_travel_at(&travel, turns, &at, &fault));
        ANSWERS(tside_side_force(&travel, running ? &load : NULL, &hang, turns, &force, &uplift, &fault));
        ANSWERS(tside_guide_lean(&travel, &hang, turns, &lean, &ignored, &fault));
        force += torque / sqrt(pow(at.x - hang.eye_x, 2) + pow(at.y - hang.eye_y, 2) - collar.offset * collar.offset);
        across = force * cos(lean) * eye;
        up = weight * eye + force * sin(lean) * eye; /* the drive is in line: as far out as the eye */
        greatest = fmax(greatest, hypot(across, up));
    }
    return greatest;
}

START_TEST(bar_lines_are_their_parts)
{
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    tside_metal_values metal;
    tside_section section;
    side.bar.splice_near = 7;
    side.bar.screw_limit_given = 1;
    side.bar.screw_limit = 2500;
    plan = planned(&side);
    ANSWERS(tside_material_values(&side.bar.material, &metal, &fault));
    ANSWERS(tside_round_section(&side.bar.tube, metal.density, &section, &fault));
    stress_is(&plan, TSIDE_BAR_SHEAR, plan.worst.drive / section.torsion_modulus, &metal, 0.6);
    stress_is(&plan, TSIDE_BAR_SHEAR_STALL, plan.stall_torque / section.torsion_modulus, &metal, 0.6);
    stress_is(&plan, TSIDE_BAR_BENDING, bar_end_bending(&side, &plan, 1, 0) / section.section_modulus, &metal, 1);
    stress_is(&plan, TSIDE_BAR_BENDING_STALL,
              fmax(bar_end_bending(&side, &plan, 0, plan.stall_torque),
                   bar_end_bending(&side, &plan, 0, -plan.stall_torque)) /
                  section.section_modulus,
              &metal, 1);
    force_is(&plan, TSIDE_COUPLING_SCREW, plan.stall_torque, &side.bar);
    force_is(&plan, TSIDE_SPLICE_SCREW, plan.worst.per_metre * (plan.curtain_length - 7), &side.bar);
    force_is(&plan, TSIDE_SPLICE_SCREW_STALL, plan.stall_torque, &side.bar);
    side.bar.splices = 0;
    plan = planned(&side);
    for (int i = 0; i < plan.line_count; i++)
        ck_assert(plan.lines[i].code != TSIDE_SPLICE_SCREW && plan.lines[i].code != TSIDE_SPLICE_SCREW_STALL);
}
END_TEST

START_TEST(end_lines_are_their_parts)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_fault fault;
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        const tside_end *end = which == TSIDE_DRIVE_END ? &side.drive_end : &side.free_end;
        const tside_end_plan *made = which == TSIDE_DRIVE_END ? &plan.drive_end : &plan.free_end;
        const tside_collar collar = which == TSIDE_DRIVE_END ? tside_drive_collar(&side.drive) : side.collar;
        const tside_strength_line *line;
        tside_strength_line lines[TSIDE_EXTENDER_LINES];
        tside_metal_values metal;
        tside_section pipe, bow;
        double weight, moment, hole = end->extender.bolt_hole;
        int count;
        ANSWERS(tside_material_values(&end->guide.material, &metal, &fault));
        ANSWERS(tside_round_section(&end->guide.tube, metal.density, &pipe, &fault));
        weight = GRAVITY * pipe.mass * made->sweep.cut_length;
        ANSWERS(tside_extender_strength(&end->extender, &made->layout, fmax(made->side_force_stall, 0),
                                        made->side_force_jam, weight, 0, 0, (tside_which_end)which, lines,
                                        TSIDE_EXTENDER_LINES, &count, &fault));
        for (int i = 0; i < count; i++)
            same_line(strength_of(&plan, lines[i].code, (tside_which_end)which), lines + i);
        /* F d = T + Wg x_cg + Wd e at the collar, where the guide leans most */
        moment = weight * (end->guide.chain + made->sweep.length) / 2 * sin(made->sweep.lean_greatest) +
                 GRAVITY * collar.mass * collar.mass_offset;
        line = strength_of(&plan, TSIDE_GUIDE_BENDING, (tside_which_end)which);
        moment += which == TSIDE_DRIVE_END ? plan.stall_torque : 0;
        NEAR(line->demand, moment / pipe.section_modulus, 1e-9 * line->demand, "guide", which);
        NEAR(line->limit, metal.yield / 1.67, 1e-6, "AISC 360 chapter F", which);
        ANSWERS(tside_round_section(&side.frame.tube, 1, &bow, &fault));
        line = strength_of(&plan, TSIDE_BOW_NET_SECTION, (tside_which_end)which);
        NEAR(line->demand, 1 - side.frame.tube.wall * pow(hole, 3) / 6 / bow.inertia, 1e-12, "bow", which);
        ck_assert(line->measure == TSIDE_SHARE && line->verdict == TSIDE_VERDICT_LOOK && !line->limit_given);
    }
    on_hip(&side);
    plan = planned(&side);
    NEAR(strength_of(&plan, TSIDE_RAIL_PULL, TSIDE_DRIVE_END)->demand, plan.drive_end.side_force_stall, 0, "pull", 0);
    NEAR(strength_of(&plan, TSIDE_RAIL_PULL, TSIDE_FREE_END)->demand, plan.free_end.side_force_stall, 0, "pull", 1);
}
END_TEST

/*
 * Of a guide that leans inboard throughout: at stall it is bent one way, and by its own weight at rest the other, and
 * neither is below 0.
 */
START_TEST(guide_bending_is_the_greatest_of_both_leans)
{
    tside_side side = plain();
    tside_metal_values metal;
    tside_section pipe;
    tside_fault fault;
    ANSWERS(tside_material_values(&side.drive_end.guide.material, &metal, &fault));
    ANSWERS(tside_round_section(&side.drive_end.guide.tube, metal.density, &pipe, &fault));
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        tside_end *end = which == TSIDE_DRIVE_END ? &side.drive_end : &side.free_end;
        const tside_collar collar = which == TSIDE_DRIVE_END ? tside_drive_collar(&side.drive) : side.collar;
        end->hung = TSIDE_ON_EXTENDER;
        end->placed = TSIDE_EYE_GIVEN;
        end->extender.slant = TSIDE_SLANT_BEST;
        end->extender.bar_clearance = 0;
        for (int i = 0; i <= 10; i++) {
            const tside_strength_line *line;
            const tside_sweep *sweep;
            tside_plan plan;
            double weight, arm, carried = GRAVITY * collar.mass * collar.mass_offset, torque[2] = {0, 0}, greatest = 0;
            end->eye_outboard = 0.1 + 0.04 * i;
            plan = planned(&side);
            sweep = which == TSIDE_DRIVE_END ? &plan.drive_end.sweep : &plan.free_end.sweep;
            torque[1] = which == TSIDE_DRIVE_END ? plan.stall_torque : 0; /* going up and coming down */
            torque[0] = -torque[1];
            weight = GRAVITY * pipe.mass * sweep->cut_length;
            arm = (end->guide.chain + sweep->length) / 2;
            for (int k = 0; k < 2; k++) {
                greatest = fmax(greatest, fabs(torque[k] + weight * arm * sin(sweep->lean_least) + carried));
                greatest = fmax(greatest, fabs(torque[k] + weight * arm * sin(sweep->lean_greatest) + carried));
            }
            line = strength_of(&plan, TSIDE_GUIDE_BENDING, (tside_which_end)which);
            NEAR(line->demand, greatest / pipe.section_modulus, 1e-9 * line->demand, "guide", i);
        }
        end->placed = TSIDE_EYE_BEST;
    }
}
END_TEST

/* --- keep-outs, against distances found apart --- */

/* Just at the limit holds, and just at four fifths of it needs no look; the least above does not. */
START_TEST(a_line_at_its_limit_holds)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    const tside_strength_line *line;
    double demand, fifths;
    int screws = 0;
    while (screws < plan.line_count && plan.lines[screws].measure != TSIDE_FORCE)
        screws++;
    ck_assert(screws < plan.line_count && plan.lines[screws].demand > 0);
    line = plan.lines + screws;
    demand = line->demand;
    for (fifths = demand / 0.8; demand / fifths > 0.8;)
        fifths = nextafter(fifths, HUGE_VAL);
    const struct {
        double limit;
        tside_verdict verdict;
    } at[] = {{demand, TSIDE_VERDICT_LOOK},
              {demand * (1 - 4 * DBL_EPSILON), TSIDE_VERDICT_NO},
              {fifths, TSIDE_VERDICT_OK},
              {fifths * (1 - 4 * DBL_EPSILON), TSIDE_VERDICT_LOOK}};
    for (int i = 0; i < 4; i++) {
        side.bar.screw_limit_given = 1;
        side.bar.screw_limit = at[i].limit;
        plan = planned(&side);
        ck_assert_msg(line->demand == demand && line->verdict == at[i].verdict, "case %d: verdict %d at %.17g", i,
                      (int)line->verdict, line->utilisation);
    }
}
END_TEST

START_TEST(every_strength_line_appears)
{
    tside_side side = plain();
    tside_plan extender, hip;
    side.drive_end.extender.bolt_limit_given = side.drive_end.extender.pull_limit_given = 1;
    side.drive_end.extender.bolt_limit = side.drive_end.extender.pull_limit = 9000;
    side.free_end.extender = side.drive_end.extender;
    string_ropes(&side, TSIDE_STRAIGHT_ROPES);
    blow(&side, 10);
    extender = planned(&side);
    ck_assert_int_eq(extender.line_count, TSIDE_STRENGTH_LINES); /* no side has more, and a plan has room for them */
    on_hip(&side);
    hip = planned(&side);
    for (int code = 0; code < TSIDE_STRENGTH_CODES; code++) {
        int seen = 0;
        for (int i = 0; i < extender.line_count; i++)
            seen |= (int)extender.lines[i].code == code;
        for (int i = 0; i < hip.line_count; i++)
            seen |= (int)hip.lines[i].code == code;
        ck_assert_msg(seen, "no line for %s", tside_strength_text(code));
    }
    for (int i = 0; i < extender.line_count; i++) {
        const tside_strength_line *line = extender.lines + i;
        if (line->utilisation_given)
            NEAR(line->utilisation, line->demand / line->limit, 1e-15, "utilisation", i);
        if (line->yield_needed_given)
            ck_assert(!line->limit_given && line->verdict == TSIDE_VERDICT_LOOK);
    }
}
END_TEST

Suite *lines_suite(void)
{
    Suite *suite = suite_create("lines");
    TCase *tcase = tcase_create("lines");
    tcase_add_test(tcase, bar_lines_are_their_parts);
    tcase_add_test(tcase, end_lines_are_their_parts);
    tcase_add_test(tcase, guide_bending_is_the_greatest_of_both_leans);
    tcase_add_test(tcase, a_line_at_its_limit_holds);
    tcase_add_test(tcase, every_strength_line_appears);
    suite_add_tcase(suite, tcase);
    return suite;
}
