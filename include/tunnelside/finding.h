/* SPDX-License-Identifier: MIT */
/* Findings: what is legal in a side but unwise. */
#ifndef TUNNELSIDE_FINDING_H
#define TUNNELSIDE_FINDING_H

#include <tunnelside/strength.h>

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Every finding, one a line: its code, its name in files and columns, the unit of its value and
 * bound, whether it stops the work or is to be known, what of the side's fields would mend it, with
 * {end} for drive_end or free_end, and its sentence, in which {value} and {bound} stand for these
 * with their unit.
 */
/* clang-format off */
#define TSIDE_FINDING_LIST(FINDING) \
    FINDING(DRIVE_WEAK, drive_weak, "N m", STOPS, "a greater drive.rated_torque, or a lighter bar.tube", "the drive is too weak: with its safety factor the worst torque asks {value}, and it is rated for {bound}") \
    FINDING(STRENGTH, strength, "1", STOPS, "", "a part is overstressed: its demand is {value} times its limit") \
    FINDING(LIMIT_TURNS, limit_turns, "turn", STOPS, "a greater drive.limit_turns, or a thicker bar.tube", "the drive's limit stops it short: the travel takes {value}, and its limit allows {bound}") \
    FINDING(KEEP_OUT_TUBE, keep_out_tube, "m", STOPS, "another {end}.rise, {end}.extender.member_height or {end}.extender.slant", "the extender's centreline comes within {value} of a keep-out, and needs {bound}") \
    FINDING(KEEP_OUT_GUIDE, keep_out_guide, "m", STOPS, "another {end}.rise or {end}.eye_outboard, or {end}.guide.foot fixed", "the guide's centreline, swinging, comes within {value} of a keep-out, and needs {bound}") \
    FINDING(KICK, kick, "m", STOPS, "a greater {end}.rise on an extender, or {end}.guide.foot fixed", "the guide's foot kicks out {value} with its eye misplaced, and the limit is {bound}") \
    FINDING(SIDE_FORCE, side_force, "N", STOPS, "a greater {end}.rise, or {end}.guide.foot fixed", "the running side force on the eye is {value}, and the limit is {bound}") \
    FINDING(TWIST, twist, "rad", STOPS, "a thicker bar.tube", "the bar twists by {value} from end to end, and the limit is {bound}") \
    FINDING(LAG, lag, "m", STOPS, "a thicker bar.tube", "the far end lags by {value} from the bar's twist, and the limit is {bound}") \
    FINDING(SEAL, seal, "m", KNOWN, "a greater stops.seal, or a lesser stops.shut_height", "the seal is short: shut, the roll overlaps the sill by {value}, and should by {bound}") \
    FINDING(WRAPS, wraps, "turn", KNOWN, "a greater stops.wraps_shut", "few wraps hold the curtain: shut, the bar carries {value}, and should carry {bound}; run past shut it winds on backwards") \
    FINDING(STAYS_UP, stays_up, "N m", KNOWN, "a heavier bar.tube, or less friction", "the bar does not come down by itself: only {value} brings it down where friction holds it most") \
    FINDING(CHAIN_SWING, chain_swing, "m", KNOWN, "a shorter {end}.guide.chain, or {end}.guide.foot fixed", "open, the running drive may swing the guide's foot inboard about its chain by some {value}") \
    FINDING(THROWN, thrown, "N", STOPS, "a higher eye ({end}.hung extender, {end}.rise), a heavier {end}.guide.tube, or {end}.guide.foot fixed", "the guide may be thrown over its eye: open, the running drive lifts it with {value}, and it weighs {bound}") \
    FINDING(UPLIFT, uplift, "N", KNOWN, "a higher eye ({end}.hung extender, {end}.rise), a heavier {end}.guide.tube, or {end}.guide.foot fixed", "the eye is lifted: beyond the guide's weight by {value}") \
    FINDING(TIPS, tips, "m", STOPS, "a lesser frame.board_stand, or a greater curtain.standoff", "the roll tips over the baseboard's edge and falls slack until it hangs free: the edge stands {value} outboard of the fixing, and must stand less than {bound}") \
    FINDING(STALL_GUESSED, stall_guessed, "N m", KNOWN, "of a motor its maker's drive.stall_torque", "no stall torque is known: strength is checked at {value}, a multiple that rests on no published source") \
    FINDING(UNUSUAL, unusual, "1", KNOWN, "", "outside their usual range: {value} of the inputs") \
    FINDING(STALLS, stalls, "N m", STOPS, "a greater drive.stall_torque, or a thicker cable", "the motor stalls before open: the worst torque is {value}, and on its supply and cable it gives {bound}") \
    FINDING(LONG_RUN, long_run, "s", STOPS, "a greater drive.rated_run or drive.no_load_speed", "the run is too long for the drive: up takes {value}, and it may run for {bound} at a time") \
    FINDING(OVERLOAD, overload, "N m", STOPS, "a greater drive.rated_torque", "the drive is overloaded over the run: its torque's root mean square is {value}, and it is rated for {bound}") \
    FINDING(DROP, drop, "V", KNOWN, "a thicker cable, or a shorter cable.length", "running, the cable loses {value}, and its limit is {bound}") \
    FINDING(DROP_START, drop_start, "V", KNOWN, "a thicker cable, or a shorter cable.length", "starting, the cable loses {value}, and its limit is {bound}") \
    FINDING(AMPACITY, ampacity, "A", STOPS, "a cable of greater cable.ampacity", "the running current is {value}, and the cable may carry {bound}") \
    FINDING(FUSE, fuse, "A", STOPS, "a greater cable.fuse, within cable.ampacity", "the fuse blows: the running current is {value}, and it is rated {bound}") \
    FINDING(FUSE_START, fuse_start, "A", KNOWN, "a slow cable.fuse, or a greater one within cable.ampacity", "the fuse may blow at the start: the current is {value} for a moment, and it is rated {bound}; a slow fuse may bear it") \
    FINDING(FUSE_LARGE, fuse_large, "A", STOPS, "a lesser cable.fuse, or a cable of greater cable.ampacity", "the fuse does not protect the cable: it is rated {value}, and the cable may carry {bound}") \
    FINDING(TURNS_BACK, turns_back, "N m", STOPS, "a drive that holds the bar by itself (drive.holds)", "the drive does not hold: where it lifts most, the bar turns it back with up to {value}, less friction; it needs a self-locking gear or a brake") \
    FINDING(EFFORT, effort, "N", KNOWN, "a greater crank.ratio or crank.arm", "the crank is heavy: its handle asks {value}, and the limit is {bound}") \
    FINDING(LEAN_ALONG, lean_along, "rad", KNOWN, "{end}.alignment in_line", "the guide leans along the house by {value}, more than the {bound} that a bar that walks makes") \
    FINDING(BINDS, binds, "rad", STOPS, "{end}.alignment in_line", "the sleeve binds: the guide leans along the house by {value}, and above {bound} it does not slide") \
    FINDING(UNCOVERED, uncovered, "m", KNOWN, "a greater curtain.past", "the end bow is not covered: the curtain passes its centreline by {value}, and half the bow is {bound}") \
    FINDING(BOW_HOLE, bow_hole, "m", KNOWN, "another {end}.rise, {end}.extender.member_height or {end}.extender.slant", "the hole in the bow is {value} from a kink or a bend's end, and should keep off by {bound}") \
    FINDING(MISFIT, misfit, "m", STOPS, "a greater {end}.footing.misfit_limit, or {end}.footing.fixed_by best", "the guide fixed at its foot misses the bar by {value} either way, and the collar's arm may give {bound}") \
    FINDING(LONG_STICK, long_stick, "m", KNOWN, "more bar.splices, or bar.joints stock with the bar.stock that is sold", "the bar's sticks are {value} long on average, and tube is seldom sold above {bound}") \
    FINDING(FEW_CHANGES, few_changes, "/s", KNOWN, "a higher curtain.hip, a lower curtain.sill, or air.roof_vent vent", "too few changes of air: {value} with the side open, and {bound} are asked") \
    FINDING(HOT, hot, "K", KNOWN, "a higher curtain.hip, a lower curtain.sill, or air.roof_vent vent", "it gets too hot: with the side open it is {value} warmer within than without, and {bound} are asked") \
    FINDING(SMALL_OPENING, small_opening, "1", KNOWN, "a higher curtain.hip, a lower curtain.sill, or air.sides alike", "the sides' openings are small: {value} of the floor, where a rule of the trade has at least {bound}") \
    FINDING(FLIES, flies, "Pa", STOPS, "ropes straight or zigzag, or a heavier bar.tube", "the curtain flies: the wind asked presses it outward with {value}, and without ropes it flies at {bound}") \
    FINDING(UNSEALS, unseals, "Pa", KNOWN, "ropes straight or zigzag, a heavier bar.tube, or a greater stops.seal", "the wind opens the side: it presses the curtain outward with {value}, and without ropes the roll rises above the sill at {bound}") \
    FINDING(ROPE_SHORT, rope_short, "m", STOPS, "rope.slack enough, or a greater rope.line.slack or rope.line.sag", "the ropes stop the roll: from hook to hook they are {value} long, and over the roll it is {bound}") \
    FINDING(ROPE_WEAK, rope_weak, "N", STOPS, "a greater rope.rope_limit, or a lesser rope.pitch", "the wind asked pulls on the rope with {value}, and it may be pulled with {bound}") \
    FINDING(HOOK_WEAK, hook_weak, "N", STOPS, "a greater rope.hook_limit, or a lesser rope.pitch", "the wind asked pulls on each upper hook with {value}, and it may be pulled with {bound}") \
    FINDING(ANCHOR_WEAK, anchor_weak, "N", STOPS, "a greater rope.anchor_limit, or a lesser rope.pitch", "the wind asked pulls on each anchor with {value}, and it may be pulled with {bound}") \
    FINDING(FILM_WEAK, film_weak, "N/m", STOPS, "a greater rope.film_limit, or a lesser rope.pitch or rope.bow_spacing", "the wind asked pulls on the film with {value}, and it may be pulled with {bound}") \
    FINDING(ROPE_EDGE, rope_edge, "m", KNOWN, "a lesser curtain.past", "the film's edge is free: at mid height it stands {value} beyond the last rope, and should stand no more than half the ropes' pitch, {bound}")
/* clang-format on */

#define TSIDE_FINDING_CODE(code, name, unit, stops, mends, sentence) TSIDE_FINDING_##code,

/* What was found. */
typedef enum tside_finding_code {
    TSIDE_FINDING_LIST(TSIDE_FINDING_CODE) TSIDE_FINDING_CODES
} tside_finding_code;

typedef struct tside_finding {
    tside_finding_code code;
    tside_which_end end;
    int index;    /* which keep-out or strength line, else -1 */
    double value; /* in the unit of its code, what was found */
    double bound; /* in that unit, what it should have kept to */
} tside_finding;

/*
 * The sentence of a finding, in SI units.
 * finding: any.
 * buffer: receives the sentence, as much of it as fits.
 * size: from 0, how much fits with the closing zero; 0 writes nothing.
 * Returns the length of the whole sentence without its closing zero, as snprintf does.
 * Source: this library's choice of words.
 */
TSIDE_API size_t tside_finding_text(const tside_finding *finding, char *buffer, size_t size);

/*
 * The same sentence with its places open, for a caller who writes value and bound in units of his
 * own.
 * code: any, a tside_finding_code.
 * Returns a constant string with "{value}" and, in most, "{bound}" in it; "" for a code that does
 * not exist.
 * Source: this library's choice of words.
 */
TSIDE_API const char *tside_finding_sentence(int code);

/*
 * What would mend a finding, in terms of the side's fields, such as "a greater {end}.rise".
 * code: any, a tside_finding_code.
 * Returns a constant string, in which "{end}" stands for the finding's end; "" where a strength
 * line or a list of fields says it, and for a code that does not exist.
 * Source: this library's choice of words.
 */
TSIDE_API const char *tside_finding_mends(int code);

/*
 * Whether a finding must be mended before the work goes on.
 * code: any, a tside_finding_code.
 * Returns 1 if it must be, 0 if it is to be known.
 * Source: this library's choice.
 */
TSIDE_API int tside_finding_stops(int code);

/*
 * The unit of a finding's value and bound.
 * code: any, a tside_finding_code.
 * Returns an SI unit as in the field tables, "1" for a plain number or no such code.
 * Source: derivation, as the finding's value.
 */
TSIDE_API const char *tside_finding_unit(int code);

#ifdef __cplusplus
}
#endif
#endif
