/* SPDX-License-Identifier: MIT */
/*
 * The chain of questions behind a plan, each asked by itself, from the bow to the bolts: what tside_plan_side does in
 * one call, taken apart, for a program that needs one link of it. An invented house; SI units.
 * For choosing parts, not a certificate: local codes and makers' ratings come first.
 */
#include <stdio.h>
#include <stdlib.h>
#include <tunnelside.h>

#define TURN (2 * 3.14159265358979323846)

static tside_fault fault;

static void need(tside_status status)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(&fault, sentence, sizeof sentence);
    fprintf(stderr, "chain: %s: %s\n", tside_status_text((int)status), sentence);
    exit(1);
}

/* The bow, and the line that the curtain hangs along. */
static void shape(const tside_frame *frame, const tside_curtain *curtain, tside_bow *bow, tside_line *line)
{
    double arc, face, x, y, normal, brace;
    tside_bow_point hip;
    need(tside_bow_make(frame, bow, &fault));
    need(tside_bow_at_height(bow, curtain->hip, &arc, &fault));
    need(tside_bow_at(bow, arc, &hip, &fault));
    need(tside_bow_face(bow, curtain->hip, &face, &fault));
    printf("bow   its centreline passes the hip at x %.3f m, its face at %.3f m\n", hip.x, face);
    need(tside_bow_crossing(bow, 0, 2.4, 0, &brace, &arc, &fault));
    printf("bow   a level brace 2.4 m up is %.3f m long from the middle to its centreline\n", brace);
    need(tside_line_make(bow, curtain, line, &fault));
    need(tside_line_at(line, 1, &x, &y, &normal, &fault));
    printf("line  a metre down from the fixing it is at (%.3f, %.3f) m\n", x, y);
}

/* Where the bar is, from shut to open. */
static void travel(const tside_travel *travel)
{
    tside_position position;
    for (int turns = 0; turns <= 8; turns += 4) {
        need(tside_travel_at(travel, turns, &position, &fault));
        printf("bar   after %d turns: roll %.1f mm, underside at %.3f m\n", turns, 1000 * position.diameter,
               position.underside);
    }
    need(tside_travel_to_height(travel, 1, &position, &fault));
    printf("bar   its underside is 1 m up after %.2f turns\n", position.turns);
}

/* What the same turning would ask of a person at a crank. */
static void crank(double torque, double drive_turns)
{
    tside_crank crank;
    tside_cranking cranking;
    tside_usual(TSIDE_KIND_CRANK, &crank);
    crank.fitted = TSIDE_CRANK;
    crank.ratio = 10;
    need(tside_crank_effort(&crank, torque, drive_turns, &cranking, &fault));
    printf("crank by hand, 10 : 1, it asks %.1f N at the handle, where %.0f N are the limit, and %.0f turns\n",
           cranking.effort, cranking.limit, cranking.turns);
}

/* What the drive must give, and what the guide does to the bar's end; force: receives N, how it pulls its eye then. */
static tside_torque lift(const tside_travel *travel, const tside_load *load, const tside_hang *hang, double *force)
{
    tside_torque shut, worst, down;
    double work, longest, uplift, lean, drive_turns;
    need(tside_lift_at(travel, load, hang, 0, &shut, &fault));
    need(tside_lift_worst(travel, load, hang, &worst, &down, &fault));
    need(tside_lift_work(travel, load, hang, worst.turns, &work, &fault));
    need(tside_lift_longest(travel, load, hang, 40, &longest, &fault));
    need(tside_guide_lean(travel, hang, worst.turns, &lean, &drive_turns, &fault));
    need(tside_side_force(travel, load, hang, worst.turns, force, &uplift, &fault));
    printf("lift  %.1f N m when shut, at most %.1f N m after %.2f turns; %.0f J up to there\n", shut.drive, worst.drive,
           worst.turns, work);
    printf("lift  at least %.1f N m brings it down by itself; 40 N m lift %.1f m of curtain\n", down.down, longest);
    printf("guide it leans %.1f degrees then, pulls its eye by %.0f N, and lifts it by %.0f N beyond its weight\n",
           lean / TURN * 360, *force, uplift);
    crank(worst.drive, drive_turns);
    return worst;
}

/* How much of its limit an extender is put to by what pulls at its eye. */
static void strength(const tside_extender *extender, const tside_layout *layout, double force, double weight)
{
    static const char *const units[] = {
        [TSIDE_STRESS] = "Pa", [TSIDE_FORCE] = "N", [TSIDE_DEFLECTION] = "m", [TSIDE_SHARE] = ""};
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    tside_extender_load load;
    int count;
    need(tside_extender_bears(extender, layout, force, weight, 0, 0, &load, &fault));
    printf("stand under %.0f N level and %.0f N of weight: bending %.2f MPa, twist %.2f MPa, both and shear as one "
           "%.2f MPa\n",
           force, weight, load.bending_in / 1e6, load.twist / 1e6, load.combined / 1e6);
    need(tside_extender_strength(extender, layout, force, 0, weight, 0, 0, TSIDE_DRIVE_END, lines, TSIDE_EXTENDER_LINES,
                                 &count, &fault));
    for (int i = 0; i < count; i++) {
        printf("stand %s: %.3g %s", tside_strength_text((int)lines[i].code), lines[i].demand, units[lines[i].measure]);
        if (lines[i].utilisation_given)
            printf(", %.2f of its limit\n", lines[i].utilisation);
        else
            printf(", no limit given\n");
    }
}

/* What air the side lets through, opened so far, with the other side shut and on a hot day without wind. */
static void air_through(double length, double opening)
{
    tside_air air;
    tside_airing airing;
    tside_usual(TSIDE_KIND_AIR, &air);
    air.sides = TSIDE_AIR_ONE;
    air.warmth = TSIDE_AIR_IN_THE_SUN;
    air.sun = 900;
    air.transmission = 0.8;
    air.evaporation = 0.5;
    air.floor_area = 240;
    air.cover_area = 500;
    air.cover_loss = 6;
    air.volume = 700;
    need(tside_air_through(&air, length, opening, &airing, &fault));
    printf("air   %.1f m2 open, %.0f changes an hour, %.1f K warmer within than without\n", airing.area,
           3600 * airing.changes, airing.rise);
}

/* How far apart ropes may stand, of this pull, for the bar that they hold. */
static void bay_held(const tside_side *side, const tside_rope *rope)
{
    tside_rope strong = *rope;
    tside_bay bay;
    tside_pitch_rule rule;
    double pitch;
    tside_usual(TSIDE_KIND_BAY, &bay);
    bay.pressure = 200;
    bay.hanging = side->curtain.hip - side->curtain.sill;
    bay.roll = 0.04;
    bay.weight = 30;
    bay.screw_spacing = 0.3;
    bay.tube = side->bar.tube;
    bay.material.grade = TSIDE_S235;
    strong.rope_limit_given = 1;
    strong.rope_limit = 700;
    need(tside_pitch_most(&strong, &bay, &pitch, &rule, &fault));
    printf("bay   ropes that bear 700 N may stand %.2f m apart, where the %s rules\n", pitch,
           rule == TSIDE_PITCH_BY_ROPE ? "rope" : "bar");
}

/* Ropes in front of the roll, from above the rail to the ground: what they bear in a wind, and how the roll passes. */
static void rope_down(const tside_side *side, const tside_travel *way, double fixing)
{
    tside_rope rope;
    tside_roped roped;
    tside_rope_over longest, hardest, open;
    tside_usual(TSIDE_KIND_ROPE, &rope);
    rope.upper_x = rope.lower_x = fixing + 0.01;
    rope.upper_y = side->curtain.hip + 0.1;
    rope.pitch = 2;
    rope.line.by = TSIDE_BY_STRETCH;
    rope.line.stiffness_given = 1;
    rope.line.stiffness = 2e4;
    need(tside_rope_bears(&rope, side->length, 200, &roped, &fault));
    printf("rope  %d ropes bear 200 Pa with %.0f N each, and billow %.0f mm; an anchor is pulled up by %.0f N\n",
           roped.ropes, roped.tension, 1000 * roped.billow, roped.anchor_up);
    bay_held(side, &rope);
    need(tside_rope_over_worst(&rope, side->length, way, &longest, &hardest, &fault));
    need(tside_rope_over_at(&rope, side->length, way, longest.turns, &open, &fault));
    printf("rope  over the roll a rope is %.3f m long, and stretches to %.0f N: %.1f N on each metre of bar\n",
           open.path, open.tension, hardest.pressure);
}

/* A side holds all that the links ask; only its geometry, tubes, grades and drive have no usual values. */
static void invent(tside_side *side)
{
    tside_extender *extender = &side->drive_end.extender;
    tside_usual(TSIDE_KIND_SIDE, side);
    side->length = 30;
    side->frame.tube = (tside_round){.diameter = 0.0603, .wall = 0.0029};
    side->frame.width = 8;
    side->frame.leg_height = 1.8;
    side->frame.peak_height = 3.8;
    side->curtain.hip = 1.7;
    side->curtain.sill = 0.4;
    side->bar.tube = side->drive_end.guide.tube = (tside_round){.diameter = 0.0337, .wall = 0.0026};
    extender->tube = (tside_square){.side = 0.05, .wall = 0.003};
    extender->material.grade = TSIDE_GRADE_GIVEN;
    extender->material.yield = 235e6;
    extender->member_height = 1.1;
    extender->member_outer = 3.9;
    extender->stock_given = 1;
    extender->stock = 3;
    side->drive_end.alignment = TSIDE_RUN_ON_GIVEN;
    side->bar.past_drive = 0.15; /* somewhat more than would stand the drive in line with its eye */
    side->drive.rated_torque_given = 1;
    side->drive.rated_torque = 60;
    side->drive.stall_torque_given = side->drive.no_load_speed_given = 1;
    side->drive.stall_torque = 140;
    side->drive.no_load_speed = 0.4;
}

/* Where eye and drive stand along the house; returns how much farther out the drive does. */
static double stand_along(const tside_side *side)
{
    const tside_end *end = &side->drive_end;
    const tside_collar collar = tside_drive_collar(&side->drive);
    tside_along along;
    tside_stand stand;
    tside_usual(TSIDE_KIND_ALONG, &along);
    along.bow = side->frame.tube.diameter;
    along.tube = end->extender.tube.side;
    along.stand_off = end->extender.eye_stand_off;
    along.past = side->curtain.past;
    along.alignment = end->alignment;
    along.run_on = side->bar.past_drive;
    along.along = collar.along;
    along.half_length = collar.half_length;
    along.clearance = collar.clearance;
    need(tside_along_stand(&along, &stand, &fault));
    printf("house past its end bow the eye stands at %.1f mm, the guide at the drive at %.1f mm: %.1f mm farther out\n",
           1000 * stand.eye, 1000 * stand.line, 1000 * stand.misfit);
    return stand.misfit;
}

/* The drive's guide on its eye, as high above the hip as its rise says; and the extender that holds the eye. */
static void hang_guide(const tside_side *side, const tside_bow *bow, const tside_travel *travel, tside_hang *hang,
                       tside_layout *layout)
{
    const double eye_y = side->curtain.hip + side->drive_end.rise;
    const tside_collar collar = tside_drive_collar(&side->drive);
    const double misfit = stand_along(side);
    tside_sweep sweep;
    tside_skew skew;
    double eye_x;
    need(tside_eye_best(travel, eye_y, collar.offset, &eye_x, &fault));
    need(tside_hang_make(travel, &side->drive_end.guide, &collar, eye_x, eye_y, misfit, hang, &sweep, &fault));
    need(tside_guide_skew(travel, hang, &skew, &fault));
    need(
        tside_extender_layout(&side->drive_end.extender, bow, side->curtain.hip, eye_x, eye_y, travel, layout, &fault));
    printf("guide its foot kicks out %.0f mm, and %.0f mm with its eye misplaced\n", 1000 * sweep.kick_out,
           1000 * sweep.kick_out_error);
    printf("guide along the house it leans %.1f degrees at most, and its foot sweeps %.0f mm\n",
           skew.lean_greatest / TURN * 360, 1000 * skew.sweep);
    printf("tube  cut to %.3f m, holes %.3f and %.3f m from its top end\n", layout->cut_length, layout->bow_from_top,
           layout->member_from_top);
}

/* Were there no eye: the same guide on its own foot, along its best line, and what it carries while the drive stalls.
 */
static void stand_guide(const tside_side *side, const tside_travel *travel, double stall)
{
    const tside_collar collar = tside_drive_collar(&side->drive);
    tside_footing footing;
    tside_fixed fixed;
    tside_fixed_load load;
    tside_usual(TSIDE_KIND_FOOTING, &footing);
    need(tside_fixed_make(travel, &side->drive_end.guide, &footing, &collar, 0,
                          side->curtain.hip + side->drive_end.rise, 0, &fixed, &fault));
    need(tside_fixed_force(travel, NULL, &fixed, stall, &load, &fault));
    printf("foot  on a foot of its own the guide leans %.1f degrees and its collar's arm gives %.1f mm\n",
           fixed.lean / TURN * 360, 1000 * fixed.misfit);
    printf("foot  at stall it holds %.0f N m, by %.0f N at top and foot, %.2f m apart\n", load.couple, load.reaction,
           fixed.length);
}

/* What hangs on the bar, but for its clips, its ends and water, which have usual values. */
static tside_load weigh(const tside_side *side, double bar_mass)
{
    tside_load load;
    tside_usual(TSIDE_KIND_LOAD, &load);
    load.length = side->length;
    load.bar_mass = bar_mass;
    load.end_mass = side->drive.mass;
    return load;
}

int main(void)
{
    tside_side side;
    tside_bow bow;
    tside_line line;
    tside_travel way;
    tside_roll roll;
    tside_hang hang;
    tside_layout layout;
    tside_metal_values steel;
    tside_section section;
    tside_torque worst;
    tside_load load;
    tside_run run;
    double twist, stall, force;

    invent(&side);
    shape(&side.frame, &side.curtain, &bow, &line);
    roll = (tside_roll){side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
    need(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &way, &fault));
    travel(&way);
    hang_guide(&side, &bow, &way, &hang, &layout);

    need(tside_material_values(&side.bar.material, &steel, &fault));
    need(tside_round_section(&side.bar.tube, steel.density, &section, &fault));
    load = weigh(&side, section.mass);
    worst = lift(&way, &load, &hang, &force);
    need(tside_bar_twist(worst.per_metre, load.length, steel.shear_modulus, section.torsion, &twist, &fault));
    need(tside_drive_stall(&side.drive, worst.drive, &stall, &fault));
    need(tside_drive_run(&way, &load, &hang, &side.drive, &side.cable, &run, &fault));
    printf("drive twists the bar by %.3f of a turn, stalls at %.0f N m, opens in %.0f s\n", twist / TURN, stall,
           run.time_up);
    stand_guide(&side, &way, stall);
    strength(&side.drive_end.extender, &layout, force, hang.weight);
    rope_down(&side, &way, line.x);
    air_through(side.length, side.curtain.hip - side.curtain.sill);
    return EXIT_SUCCESS;
}
