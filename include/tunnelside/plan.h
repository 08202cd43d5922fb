/* SPDX-License-Identifier: MIT */
/* The plan: one side in, everything out. */
#ifndef TUNNELSIDE_PLAN_H
#define TUNNELSIDE_PLAN_H

#include <tunnelside/air.h>
#include <tunnelside/along.h>
#include <tunnelside/fixed.h>
#include <tunnelside/crank.h>
#include <tunnelside/loose.h>
#include <tunnelside/pitch.h>
#include <tunnelside/pressure.h>
#include <tunnelside/finding.h>
#include <tunnelside/run.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_hand {
    TSIDE_RIGHT, /* seen from outside the drive's end wall, looking in: the bar turns
                  * anticlockwise to open */
    TSIDE_LEFT   /* and clockwise */
} tside_hand;

/* Where a bar's joints are. */
typedef enum tside_joints {
    TSIDE_JOINTS_GIVEN,     /* so many, and the nearest to the drive where it is said to be */
    TSIDE_JOINTS_FROM_STOCK /* where whole lengths of stock put them */
} tside_joints;

/* The roll bar. */
typedef struct tside_bar {
    tside_round tube;
    tside_material material;
    double core_over;   /* m, core diameter over the bare tube, clips averaged */
    double clip_mass;   /* kg/m */
    double past_drive;  /* m, from the curtain's edge to the drive's centre, where it is given */
    double past_free;   /* m, from the curtain's edge to the collar's line at the free end, where
                         * it is given */
    double splice_near; /* m, from the curtain's edge at the drive to the nearest joint; from
                         * stock: no joint nearer than this */
    double stock;       /* m, one length of tube */
    double swage;       /* m, of tube lost in each joint */
    double play;        /* rad, of one splice */
    double screw_limit; /* N, allowable shear on one screw */
    tside_joints joints;
    int splices; /* joints along the bar, as given */
    int screws;  /* on each side of a joint, and at the drive's coupling */
    int screw_limit_given;
} tside_bar;

typedef enum tside_eye_placed { TSIDE_EYE_BEST, TSIDE_EYE_GIVEN } tside_eye_placed;

/*
 * What the level places of an end's member and keep-outs are measured from: outboard from the
 * tunnel's centreline; or inboard from the outer face of that end's bow at hip height, as a tape
 * does there, and then what lies outboard of the face is negative.
 */
typedef enum tside_level_from { TSIDE_FROM_CENTRELINE, TSIDE_FROM_BOW_FACE } tside_level_from;

/*
 * A rectangle in the end wall's plane that tube and guide must miss. From the centreline inner <
 * outer, and outer above 0; from the bow's face inner > outer.
 */
typedef struct tside_keep_out {
    double inner, outer; /* m, its inboard and its outboard edge, from where its end measures */
    double bottom, top;  /* m, above the ground at its end */
} tside_keep_out;

enum { TSIDE_KEEP_OUTS = 8 };

/* One end wall: what the guide hangs on. */
typedef struct tside_end {
    tside_hung hung;
    double rise; /* m, eye above the curtain's fixing */
    tside_eye_placed placed;
    double eye_outboard; /* m, level, from the bow's outer face at hip height */
    int eye_past_given;
    double eye_past; /* m, on the hip: the eye past the plane of the end bow's centreline */
    tside_alignment alignment;
    int hip_height_given;
    double hip_height; /* m, the hip above the ground at this end, as taped; without it the
                        * ground is where heights begin */
    tside_level_from level_from;
    tside_guide guide;
    tside_footing footing;   /* of a guide fixed at its foot */
    tside_extender extender; /* its member's ends are from where level_from says */
    int keep_out_count;
    tside_keep_out keep_outs[TSIDE_KEEP_OUTS];
} tside_end;

/* What must not be exceeded. */
typedef struct tside_limits {
    int twist_given, lag_given, kick_out_given, side_force_given;
    double twist;      /* rad, end to end */
    double lag;        /* m, elastic, of the far end */
    double kick_out;   /* m, of the guide's foot, under the eye's placing error */
    double side_force; /* N, on the eye, running */
} tside_limits;

/* Ropes over the curtain, and what is known of them. */
typedef enum tside_ropes {
    TSIDE_NO_ROPES,
    TSIDE_ROPES,          /* that they press on the roll, and no more */
    TSIDE_STRAIGHT_ROPES, /* from each upper hook to the anchor below it */
    TSIDE_ZIGZAG_ROPE     /* one, to and fro between hooks and anchors half a pitch apart */
} tside_ropes;

/* How long ropes are from hook to hook. */
typedef enum tside_rope_slack {
    TSIDE_SLACK_ENOUGH, /* as long as their way over the roll asks, and longer by 1/150, which sags
                         * by 1/20 of their span, where it asks less */
    TSIDE_SLACK_GIVEN   /* as the line gives */
} tside_rope_slack;

/*
 * Ropes as they are hung on a side. Hooks are taped from the curtain's fixing, anchors from grade
 * and from a plumb line dropped from the fixing.
 */
typedef struct tside_roping {
    double hook_out;   /* m, upper hooks outboard of the curtain's fixing, level */
    double hook_above; /* m, upper hooks above it */
    int anchor_height_given;
    double anchor_height; /* m, anchors above grade; else 50 mm below the shut roll's underside */
    int anchor_out_given;
    double anchor_out; /* m, anchors outboard of plumb below the fixing; else below where the
                        * curtain touches the shut roll */
    double pitch;      /* m, from hook to hook of a row, at most */
    tside_rope_slack slack;
    int bow_spacing_given;
    double bow_spacing; /* m, between bows */
    tside_give line;    /* the rope, with TSIDE_SLACK_GIVEN */
    tside_give film;    /* the film from rope to rope, and from bow to bow */
    double ends;        /* m, of rope for tying, at each of its ends */
    int rope_limit_given, hook_limit_given, anchor_limit_given, film_limit_given, screw_limit_given;
    double rope_limit;   /* N, allowable tension, with its knots and its age */
    double hook_limit;   /* N, allowable pull on an upper hook */
    double anchor_limit; /* N, allowable pull on an anchor */
    double film_limit;   /* N/m, allowable tension of the film */
    double screw_limit;  /* N, allowable pull on a screw of the rail */
} tside_roping;

enum { TSIDE_BARS = 16, TSIDE_FINDINGS = 32, TSIDE_STRENGTH_LINES = 31 };

/* One side, as measured. */
typedef struct tside_side {
    tside_hand hand;
    double length;              /* m, along the side, from end bow to end bow */
    double out_of_level;        /* m, hip less sill, drive's end less far end */
    double diameter_difference; /* 1, relative, of the roll from end to end */
    tside_frame frame;
    tside_curtain curtain;
    tside_bar bar;
    tside_stops stops;
    tside_drive drive;
    tside_cable cable;
    tside_crank crank;
    tside_end drive_end;
    tside_end free_end;
    tside_collar collar; /* at the free end */
    tside_ropes ropes;
    double friction;      /* 1, fraction of the lift */
    double rope_pressure; /* N/m, ropes on the roll, per metre of bar, beside what their stretch
                           * makes */
    double rope_friction; /* 1 */
    tside_roping rope;    /* with TSIDE_STRAIGHT_ROPES and TSIDE_ZIGZAG_ROPE */
    tside_limits limits;
    tside_air air;
    tside_wind wind; /* its height is usually the house's top */
    int bar_count;
    tside_bar bars[TSIDE_BARS]; /* bars to choose the smallest of */
} tside_side;

/* How far an end's guide and tube keep off one of its keep-outs; what is negative is found too. */
typedef struct tside_keep_off {
    double guide;   /* m, from the guide's pipe, wherever it swings and its eye is misplaced */
    int tube_given; /* 1 on an extender */
    double tube;    /* m, from the extender's tube */
} tside_keep_off;

/* One end of the side, planned. */
typedef struct tside_end_plan {
    double eye_x, eye_y; /* m, eye, or top of a fixed guide */
    double ground;       /* m, height of the ground there */
    tside_stand stand;
    tside_sweep sweep; /* of a fixed guide all leans are one, and nothing kicks */
    int skew_given;    /* 1 where the guide hangs */
    tside_skew skew;
    int fixed_given; /* 1 where it is fixed at its foot */
    tside_fixed fixed;
    tside_fixed_load fixed_running, fixed_stalled;
    int hung_force_given;    /* 1 where the same guide, fixed at its foot, could hang from
                              * there */
    double hung_force;       /* N, greatest running side force if it did */
    double hung_force_stall; /* N, at stall; given with hung_force */
    int layout_given;        /* 1 on an extender */
    tside_layout layout;
    double side_force;        /* N, greatest, running */
    double side_force_turns;  /* turn, of the bar, where */
    double side_force_stall;  /* N, greatest, stalled going up, outboard (free end: the same as
                               * running) */
    double side_force_jam;    /* N, greatest inboard, jammed coming down */
    int stand_off_most_given; /* 1 on an extender whose eye bolt's yield is known */
    double stand_off_most;    /* m, greatest stand-off that the eye bolt bears */
    double past_bolt_most;    /* m, greatest curtain past the end bow that this allows in line;
                               * given with stand_off_most */
    double wind_eye; /* N, of wind along the house on guide and drive, at the eye; 0 without wind */
    double wind_tube;         /* N/m, of it along the extender's tube; 0 without wind or extender */
    double uplift;            /* N, greatest, running */
    double chain_swing;       /* m, foot inboard at open, for a running drive */
    int hip_kick_out_given;   /* 1 where a guide hung on the hip would clear what rides on it */
    double hip_kick_out;      /* m, kick out with the guide hung on the hip instead */
    double hip_lean_greatest; /* rad, greatest lean either way, hung on the hip instead; given
                               * with hip_kick_out */
    int hip_torque_given;     /* 1 at the drive's end, where a drive can turn it so */
    double hip_torque;        /* N m, worst torque at the drive, hung on the hip instead */
    int keep_off_count;
    tside_keep_off keep_offs[TSIDE_KEEP_OUTS]; /* of the end's keep-outs, in their order */
} tside_end_plan;

/* Wind on the side shut, while no rope holds it. */
typedef struct tside_blowing {
    tside_pressure pressure; /* of the wind asked */
    double height;           /* m, above grade, that counts by a code */
    double hanging;          /* m, curtain from its fixing to the roll */
    double weight;           /* N/m, of bar, clips and wraps, and half the hanging film's */
    double lean;             /* rad, of the straight line from fixing to roll */
    tside_loosening gives_way;
    int leaves_speed_given; /* 1 where the wind's rule has a speed */
    double leaves_speed;    /* m/s, at which the bar leaves the wall */
    double unseals_speed; /* m/s, at which the roll rises above the sill; given with leaves_speed */
    double flies_speed;   /* m/s, at which the curtain flies; given with leaves_speed */
    int needs_ropes;      /* 1 where the wind asked opens it */
    int stands_given;     /* 1 where it does not fly in the wind asked */
    tside_blown stands;   /* in that wind */
} tside_blowing;

/* Ropes over a side: where they are, what they bear in the wind asked, and how the roll passes. */
typedef struct tside_rope_plan {
    double hook_x, hook_y, anchor_x, anchor_y; /* m, from the tunnel's centreline, above grade */
    tside_roped bears;       /* its forces, sags and utilisations are 0 without wind */
    tside_rope_over longest; /* where the rope needs most slack */
    tside_rope_over hardest; /* where the ropes press hardest on the roll */
    double edge;             /* m, along the house, from the film's edge to the last rope, at mid
                               * height */
    int bay_given;           /* 1 where wind is asked */
    tside_bay_load bay;      /* bar, rail and screws between two ropes */
    int pitch_keeps;         /* 1 where there is a pitch at which all keep to their limits */
    double pitch_most;       /* m, the greatest one, up to 6 */
    tside_pitch_rule rule;   /* what keeps it from being greater */
    int film_inward_given;   /* 1 where wind is asked, and the bows' spacing given */
    double film_inward;      /* N/m, film from bow to bow, if the wind asked pressed inward */
    int stays_put_given;     /* 1 where the drive's rated torque is, and ropes have friction */
    double stays_put;        /* Pa, net and outward, above which the drive may not move the bar */
    int stays_put_speed_given;
    double stays_put_speed; /* m/s, that makes it, by the rule of the wind asked */
} tside_rope_plan;

/* Everything about one side. */
typedef struct tside_plan {
    double curtain_length; /* m, on the bar */
    double bar_length;     /* m */
    double fixing_x;       /* m, of the curtain's fixing */
    tside_position shut, open;
    double bar_turns;                           /* turn */
    double drive_turns;                         /* turn, against the drive's own housing */
    double drive_turns_least, drive_turns_most; /* turn, over the spread of core, packing and
                                                 * thickness */
    double highest;                             /* m, highest possible underside */
    double opening;                             /* m, at the drive */
    double opening_far;                         /* m, at the far end, less the lags at open */
    double seal;                                /* m, sill less underside when shut */
    tside_torque worst;                         /* where the drive must give most */
    double worst_underside;                     /* m, roll's underside there, above grade */
    double design_torque;                       /* N m, worst times safety factor: what the drive
                                                 * must be rated for */
    int drive_utilisation_given;                /* 1 where the drive's rated torque is */
    double drive_utilisation;                   /* 1, design torque over rated torque */
    tside_torque least_down;
    double work;         /* J, gain in potential energy from shut to open */
    double longest_side; /* m, that the drive lifts with its safety factor, from end bow to
                          * end bow; given with drive_utilisation */
    double twist;        /* rad, end to end, where the drive must give most */
    double lag_elastic, lag_play, lag_unequal, lag_level; /* m, of the far end */
    double stall_torque;                                  /* N m */
    double splice_near; /* m, from the curtain's edge at the drive to where the nearest
                                               * joint begins; 0 without joints */
    double bar_beyond_drive, bar_beyond_free; /* m, of the bar: from the curtain's edge to the
                                               * drive's centre, and to its other end */
    tside_end_plan drive_end, free_end;
    int run_given;
    tside_run run; /* of a motor with stall torque and no-load speed */
    int cranking_given;
    tside_cranking cranking;                           /* where a crank is fitted */
    int splices;                                       /* joints along the bar */
    int air_given;                                     /* 1 where air is asked */
    tside_airing airing;                               /* with the side open */
    int turns_for_changes_given, turns_for_rise_given; /* 1 where so much can be had */
    double turns_for_changes; /* turn, of the drive from shut, for the changes asked */
    double turns_for_rise;    /* turn, of the drive from shut, for the rise asked */
    double bar_growth;        /* m, of the bar by its warming, at the free end; given with air */
    int wind_given;           /* 1 where wind is asked */
    tside_blowing blowing;
    int rope_given; /* 1 where it is known how the ropes run */
    tside_rope_plan rope;
    int line_count;
    tside_strength_line lines[TSIDE_STRENGTH_LINES];
    int finding_count;
    tside_finding findings[TSIDE_FINDINGS];
} tside_plan;

/* One row of the turn table. */
typedef struct tside_turn {
    double turn;      /* turn, of the drive since shut; the last row is open, seldom a whole turn */
    double taken_up;  /* m, in this turn */
    double total;     /* m, since shut */
    double diameter;  /* m */
    double x, y;      /* m, axis */
    double underside; /* m */
    double opening;   /* m */
    double torque;    /* N m, at the drive, going up */
    double lean;      /* rad, of the drive's guide */
} tside_turn;

/*
 * Plans one side.
 * side: every field checked.
 * plan: receives everything, findings included.
 * TSIDE_OUT_OF_BOUNDS, TSIDE_CONTRADICTS, TSIDE_OUT_OF_REACH, TSIDE_NOT_MODELLED: as the functions
 * that it is made of; the fault's paths start at the side.
 * Accuracy: what the functions that it is made of give is theirs to the last bit, and as accurate;
 * what it makes of that, sums, shares and lags, takes some roundings more, to 1e-14 of its terms.
 * Source: as the functions that it is made of.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_plan_side(const tside_side *side, tside_plan *plan,
                                                       tside_fault *fault);

/*
 * The turn table of a side: a row for each whole turn of the drive from 0, and one for open.
 * side: every field checked.
 * rows: receives the rows.
 * capacity: any, how many there is room for.
 * count: receives the rows written, or needed.
 * TSIDE_OUT_OF_BOUNDS, TSIDE_CONTRADICTS, TSIDE_OUT_OF_REACH, TSIDE_NOT_MODELLED: as
 * tside_plan_side, but for what concerns the extenders' layout and strength and the free end's
 * guide, which the table does not ask.
 * TSIDE_TOO_SMALL: more rows than capacity: only count is written.
 * Accuracy: a row's place is where the drive has turned so far to 1e-13 of all its turns; the rest
 * to 1e-13 as those functions have it there, torque relative.
 * Source: as tside_travel_at, tside_guide_lean and tside_lift_at.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_plan_turns(const tside_side *side, tside_turn *rows,
                                                        int capacity, int *count,
                                                        tside_fault *fault);

/*
 * The least rise of an end's eye above the fixing that clears what rides on the guide, keeps the
 * guide's foot clear of the ground as asked, and kick out under the eye's placing error, and the
 * running side force, within the side's limits where given.
 *
 * The eye is placed best at every height tried, also where the side's own is not.
 * side: every field checked.
 * end: one of tside_which_end.
 * rise: receives m, up to 5.
 * TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_MODELLED: as tside_plan_side, or no such end.
 * TSIDE_CONTRADICTS: at 5 m the foot is still too near the ground, or the collar rides on the
 * chain; or as tside_plan_side.
 * TSIDE_OUT_OF_REACH: not even 5 m is enough (the fault has them); or as tside_plan_side.
 * Accuracy: to 1e-7 m.
 * Source: derivation, halving as tside_hang_make and tside_side_force say; the 5 m are this
 * library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_eye_least(const tside_side *side, tside_which_end end,
                                                       double *rise, tside_fault *fault);

/*
 * The lightest, per metre, of the side's list of bars that keeps twist and elastic lag within the
 * side's limits where given, and its shear within the limit where its yield is known.
 * side: every field checked, with at least one in its list of bars.
 * index: receives its place in the list.
 * TSIDE_OUT_OF_BOUNDS: a field, or an empty list.
 * TSIDE_CONTRADICTS, TSIDE_NOT_MODELLED: as tside_plan_side.
 * TSIDE_OUT_OF_REACH: none does; fault.index is the one that comes nearest, and fault.value by what
 * factor it exceeds them; or as tside_plan_side.
 * Source: as tside_plan_side, bar by bar.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bar_smallest(const tside_side *side, int *index,
                                                          tside_fault *fault);

/* What became of a drive of a list. */
typedef enum tside_drive_fit {
    TSIDE_DRIVE_CHOSEN,
    TSIDE_DRIVE_LARGER, /* it would serve, and a smaller one does */
    TSIDE_DRIVE_FAILS,  /* by the finding */
    TSIDE_DRIVE_REFUSED /* no plan can be made with it: the status says why */
} tside_drive_fit;

typedef struct tside_drive_choice {
    tside_drive_fit fit;
    tside_finding_code finding; /* drive_weak, stalls, limit_turns, long_run, overload or
                                 * turns_back, the first of these; of a failing drive only */
    double value, bound;        /* the finding's, in the unit of its sentence; of a larger drive
                                 * its rated torque and the chosen one's, N m */
    int status;                 /* a tside_status, of a refused drive */
} tside_drive_choice;

/*
 * From a list of drives, the smallest that runs a side: of those that lift it with their safety
 * factor, within their limit turns, do not stall on the side's supply cable, keep their short-time
 * rating and do not turn back, the one with the least rated torque, and of equals the lightest.
 *
 * Each is tried in the place of the side's own, with its own mass and collar. One that does not state
 * its rated torque is refused, and on a side with a cable one that states its speed and not its
 * currents; what else a drive does not state cannot make it fail.
 * side: every field checked but its own drive's, which is not used.
 * drives: any; one with a field out of bounds is refused.
 * count: from 1 to 1000, how many drives.
 * index: receives the chosen one's place.
 * choices: receives one for each of drives, also with TSIDE_OUT_OF_REACH: what became of it, and
 * why; left as they were on any other failure.
 * TSIDE_OUT_OF_BOUNDS: count, or a field of the side.
 * TSIDE_OUT_OF_REACH: none serves; the choices are written all the same.
 * Accuracy: values and bounds are those of tside_plan_side's findings, or given, to the last bit.
 * Source: as tside_plan_side, drive by drive; the order is this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_drive_smallest(const tside_side *side,
                                                            const tside_drive *drives, int count,
                                                            int *index, tside_drive_choice *choices,
                                                            tside_fault *fault);

/* One length of tube in the bar. Each but the first begins inside the one before it. */
typedef struct tside_bar_stick {
    double length;   /* m, as cut */
    double from, to; /* m, its ends, from the drive's centre along the bar */
} tside_bar_stick;

/*
 * The sticks of a bar made from stock, from the drive on: whole lengths from the drive's end, the
 * last cut to what is left, and where that would put its joint beyond the curtain's edge at the
 * free end, the last but one cut too, so that it ends there, or so that the last is 10 mm long,
 * what a cut plan takes.
 *
 * No fewer sticks would do. A joint is where two sticks overlap, from the farther one's from to the
 * nearer one's to. A bar whose joints are given is one stick, where it has none.
 * bar: every field checked.
 * curtain: m, from 0 to 1000, length of the curtain on the bar.
 * beyond_drive: m, from 0, from the curtain's edge to the drive's centre.
 * beyond_free: m, from 0, bar beyond the curtain's other edge.
 * sticks: receives the sticks.
 * capacity: any, how many there is room for.
 * count: receives the sticks written, or needed.
 * TSIDE_OUT_OF_BOUNDS: a field, or a length.
 * TSIDE_CONTRADICTS: stock too short to keep every joint from the drive by splice_near and within
 * the curtain at the free end, with room for its swage (the fault's bound is the shortest that
 * does); joints as given, of which only the nearest is known.
 * TSIDE_TOO_SMALL: more sticks than capacity: only count is written.
 * Accuracy: to 5e-16 of the whole bar's length.
 * Source: derivation; the rules are common practice, no published source.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bar_sticks(const tside_bar *bar, double curtain,
                                                        double beyond_drive, double beyond_free,
                                                        tside_bar_stick *sticks, int capacity,
                                                        int *count, tside_fault *fault);

/* A column of values over one field of a side, or of a plan. */
typedef struct tside_input {
    tside_place place; /* from tside_field_find(TSIDE_KIND_SIDE, ...): a number, count or choice */
    const double *data;
    ptrdiff_t stride; /* bytes from row to row; 0 repeats one value */
} tside_input;

typedef struct tside_output {
    tside_place place; /* from tside_field_find(TSIDE_KIND_PLAN, ...) */
    double *data;
    ptrdiff_t stride;
} tside_output;

/*
 * Plans many sides: the base side with the input columns laid over it, row by row.
 *
 * A bad row leaves its outputs untouched and does not stop the others; an output that a row does
 * not have is left untouched too. Of a plan only the parts are made that the outputs need, and a
 * row's status comes from these: the travel with its turns and joints always; the torque, with what
 * follows from it to the stall torque; the run and the crank; the ropes; both ends, with guides,
 * extenders and forces; the lines of strength. Run, ends and lines need the torque, ropes and ends
 * need the wind, and the lines need ropes and ends. Findings, or no outputs at all, need
 * everything.
 * base: not checked by itself, every field checked with each row's values.
 * rows: from 0, how many.
 * inputs: any, columns laid over the base; a place is a number, count or choice of a side.
 * input_count: from 0, how many.
 * outputs: any, columns to be filled; a place is a number, count or choice of a plan.
 * output_count: from 0, how many.
 * statuses: receives a tside_status per row.
 * findings: optional, receives a word per row, bit k set where finding code k was found; may be
 * NULL.
 * TSIDE_OUT_OF_BOUNDS: rows negative, or a column's place is no number, count or choice (index:
 * which column); nothing is then written. Or the first bad row's, with fault.index its number.
 * TSIDE_CONTRADICTS, TSIDE_OUT_OF_REACH, TSIDE_NOT_MODELLED: the first bad row's, with fault.index
 * its number.
 * Source: as tside_plan_side.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_plan_sides(const tside_side *base, int rows,
                                                        const tside_input *inputs, int input_count,
                                                        const tside_output *outputs,
                                                        int output_count, int *statuses,
                                                        unsigned long long *findings,
                                                        tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
