/* SPDX-License-Identifier: MIT */
/* Choices: each name stands for the enumerator that says the same. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"

Suite *choices_suite(void);

/* A finding's names in files, spelt once more: no file may lose what it says by another spelling in the header. */
#define FINDINGS(NAMED) \
    NAMED(DRIVE_WEAK, "drive_weak") \
    NAMED(STRENGTH, "strength") \
    NAMED(LIMIT_TURNS, "limit_turns") \
    NAMED(KEEP_OUT_TUBE, "keep_out_tube") \
    NAMED(KEEP_OUT_GUIDE, "keep_out_guide") \
    NAMED(KICK, "kick") \
    NAMED(SIDE_FORCE, "side_force") \
    NAMED(TWIST, "twist") \
    NAMED(LAG, "lag") \
    NAMED(SEAL, "seal") \
    NAMED(WRAPS, "wraps") \
    NAMED(STAYS_UP, "stays_up") \
    NAMED(CHAIN_SWING, "chain_swing") \
    NAMED(THROWN, "thrown") \
    NAMED(UPLIFT, "uplift") \
    NAMED(TIPS, "tips") \
    NAMED(STALL_GUESSED, "stall_guessed") \
    NAMED(UNUSUAL, "unusual") \
    NAMED(STALLS, "stalls") \
    NAMED(LONG_RUN, "long_run") \
    NAMED(OVERLOAD, "overload") \
    NAMED(DROP, "drop") \
    NAMED(DROP_START, "drop_start") \
    NAMED(AMPACITY, "ampacity") \
    NAMED(FUSE, "fuse") \
    NAMED(FUSE_START, "fuse_start") \
    NAMED(FUSE_LARGE, "fuse_large") \
    NAMED(TURNS_BACK, "turns_back") \
    NAMED(EFFORT, "effort") \
    NAMED(LEAN_ALONG, "lean_along") \
    NAMED(BINDS, "binds") \
    NAMED(UNCOVERED, "uncovered") \
    NAMED(BOW_HOLE, "bow_hole") \
    NAMED(MISFIT, "misfit") \
    NAMED(LONG_STICK, "long_stick") \
    NAMED(FEW_CHANGES, "few_changes") \
    NAMED(HOT, "hot") \
    NAMED(SMALL_OPENING, "small_opening") \
    NAMED(FLIES, "flies") \
    NAMED(UNSEALS, "unseals") \
    NAMED(ROPE_SHORT, "rope_short") \
    NAMED(ROPE_WEAK, "rope_weak") \
    NAMED(HOOK_WEAK, "hook_weak") \
    NAMED(ANCHOR_WEAK, "anchor_weak") \
    NAMED(FILM_WEAK, "film_weak") \
    NAMED(ROPE_EDGE, "rope_edge")

static const struct {
    tside_kind kind;
    const char *member;
    int value;
    const char *name;
} choices[] = {
    {TSIDE_KIND_MATERIAL, "metal", TSIDE_STEEL, "steel"},
    {TSIDE_KIND_MATERIAL, "metal", TSIDE_ALUMINIUM_6061, "aluminium_6061"},
    {TSIDE_KIND_MATERIAL, "metal", TSIDE_ALUMINIUM_6063, "aluminium_6063"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_GRADE_UNKNOWN, "unknown"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_GRADE_GIVEN, "given"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_A53_B, "A53_B"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_A500_B_ROUND, "A500_B_round"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_A500_B_SHAPED, "A500_B_shaped"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_A500_C_ROUND, "A500_C_round"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_A500_C_SHAPED, "A500_C_shaped"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_S235, "S235"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_S355, "S355"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_6061_T6, "6061_T6"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_6063_T5, "6063_T5"},
    {TSIDE_KIND_MATERIAL, "grade", TSIDE_6063_T6, "6063_T6"},
    {TSIDE_KIND_SQUARE, "corner", TSIDE_CORNER_STANDARD, "standard"},
    {TSIDE_KIND_SQUARE, "corner", TSIDE_CORNER_GIVEN, "given"},
    {TSIDE_KIND_FRAME, "shape", TSIDE_LEG_AND_PEAK, "leg_and_peak"},
    {TSIDE_KIND_FRAME, "shape", TSIDE_THREE_POINTS, "three_points"},
    {TSIDE_KIND_FRAME, "measured", TSIDE_OUTSIDE, "outside"},
    {TSIDE_KIND_FRAME, "measured", TSIDE_CENTRELINE, "centreline"},
    {TSIDE_KIND_FRAME, "board", TSIDE_NO_BOARD, "none"},
    {TSIDE_KIND_FRAME, "board", TSIDE_BOARD_OUTSIDE, "outside"},
    {TSIDE_KIND_CURTAIN, "roll_lies", TSIDE_OUTBOARD, "outboard"},
    {TSIDE_KIND_CURTAIN, "roll_lies", TSIDE_INBOARD, "inboard"},
    {TSIDE_KIND_STOPS, "shut_by", TSIDE_SHUT_SEAL, "seal"},
    {TSIDE_KIND_STOPS, "shut_by", TSIDE_SHUT_HEIGHT, "height"},
    {TSIDE_KIND_STOPS, "open_by", TSIDE_OPEN_GAP, "gap"},
    {TSIDE_KIND_STOPS, "open_by", TSIDE_OPEN_HEIGHT, "height"},
    {TSIDE_KIND_DRIVE, "kind", TSIDE_MOTOR, "motor"},
    {TSIDE_KIND_DRIVE, "kind", TSIDE_HAND, "hand"},
    {TSIDE_KIND_DRIVE, "place", TSIDE_ONE_END, "one_end"},
    {TSIDE_KIND_DRIVE, "place", TSIDE_BOTH_ENDS, "both_ends"},
    {TSIDE_KIND_DRIVE, "place", TSIDE_MID_BAR, "mid_bar"},
    {TSIDE_KIND_GUIDE, "foot", TSIDE_FOOT_HANGS, "hangs"},
    {TSIDE_KIND_GUIDE, "foot", TSIDE_FOOT_FIXED, "fixed"},
    {TSIDE_KIND_EXTENDER, "hardware", TSIDE_HARDWARE_INCH, "inch"},
    {TSIDE_KIND_EXTENDER, "hardware", TSIDE_HARDWARE_METRIC, "metric"},
    {TSIDE_KIND_EXTENDER, "slant", TSIDE_SLANT_BEST, "best"},
    {TSIDE_KIND_EXTENDER, "slant", TSIDE_SLANT_ANGLE, "angle"},
    {TSIDE_KIND_EXTENDER, "slant", TSIDE_SLANT_CROSSING, "crossing"},
    {TSIDE_KIND_END, "hung", TSIDE_ON_EXTENDER, "extender"},
    {TSIDE_KIND_END, "hung", TSIDE_ON_HIP, "hip"},
    {TSIDE_KIND_END, "placed", TSIDE_EYE_BEST, "best"},
    {TSIDE_KIND_END, "placed", TSIDE_EYE_GIVEN, "given"},
    {TSIDE_KIND_END, "level_from", TSIDE_FROM_CENTRELINE, "centreline"},
    {TSIDE_KIND_END, "level_from", TSIDE_FROM_BOW_FACE, "bow_face"},
    {TSIDE_KIND_END, "alignment", TSIDE_IN_LINE, "in_line"},
    {TSIDE_KIND_END, "alignment", TSIDE_RUN_ON_GIVEN, "given"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_1_4, "1/4"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_5_16, "5/16"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_3_8, "3/8"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_7_16, "7/16"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_1_2, "1/2"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_M6, "M6"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_M8, "M8"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_M10, "M10"},
    {TSIDE_KIND_BOLT, "size", TSIDE_BOLT_M12, "M12"},
    {TSIDE_KIND_BOLT, "clearance", TSIDE_CLOSE, "close"},
    {TSIDE_KIND_BOLT, "clearance", TSIDE_NORMAL, "normal"},
    {TSIDE_KIND_BOLT, "clearance", TSIDE_LOOSE, "loose"},
    {TSIDE_KIND_BOLT, "washer", TSIDE_WASHER_NARROW, "narrow"},
    {TSIDE_KIND_BOLT, "washer", TSIDE_WASHER_WIDE, "wide"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_BOLT_GRADE_UNKNOWN, "unknown"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_BOLT_GRADE_GIVEN, "given"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_A307_A, "A307_A"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_J429_2, "J429_2"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_J429_5, "J429_5"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_J429_8, "J429_8"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_CLASS_4_8, "class_4_8"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_CLASS_8_8, "class_8_8"},
    {TSIDE_KIND_BOLT, "grade", TSIDE_CLASS_10_9, "class_10_9"},
    {TSIDE_KIND_BAR, "joints", TSIDE_JOINTS_GIVEN, "given"},
    {TSIDE_KIND_BAR, "joints", TSIDE_JOINTS_FROM_STOCK, "stock"},
    {TSIDE_KIND_DRIVE, "holds", TSIDE_HOLDS_UNKNOWN, "unknown"},
    {TSIDE_KIND_DRIVE, "holds", TSIDE_HOLDS_BY_ITSELF, "by_itself"},
    {TSIDE_KIND_DRIVE, "holds", TSIDE_HOLDS_NOT, "not"},
    {TSIDE_KIND_ALONG, "hung", TSIDE_ON_EXTENDER, "extender"},
    {TSIDE_KIND_ALONG, "hung", TSIDE_ON_HIP, "hip"},
    {TSIDE_KIND_ALONG, "alignment", TSIDE_IN_LINE, "in_line"},
    {TSIDE_KIND_ALONG, "alignment", TSIDE_RUN_ON_GIVEN, "given"},
    {TSIDE_KIND_FOOTING, "fixed_by", TSIDE_FIXED_BEST, "best"},
    {TSIDE_KIND_FOOTING, "fixed_by", TSIDE_FIXED_TOP, "top"},
    {TSIDE_KIND_FOOTING, "fixed_by", TSIDE_FIXED_BOTH, "both"},
    {TSIDE_KIND_CABLE, "wire", TSIDE_NO_CABLE, "none"},
    {TSIDE_KIND_CABLE, "wire", TSIDE_AWG, "awg"},
    {TSIDE_KIND_CABLE, "wire", TSIDE_AREA, "area"},
    {TSIDE_KIND_CABLE, "strands", TSIDE_STRANDED, "stranded"},
    {TSIDE_KIND_CABLE, "strands", TSIDE_SOLID, "solid"},
    {TSIDE_KIND_CABLE, "strands", TSIDE_FLEXIBLE, "flexible"},
    {TSIDE_KIND_AIR, "sides", TSIDE_AIR_UNASKED, "unasked"},
    {TSIDE_KIND_AIR, "sides", TSIDE_AIR_ONE, "one"},
    {TSIDE_KIND_AIR, "sides", TSIDE_AIR_ALIKE, "alike"},
    {TSIDE_KIND_AIR, "sides", TSIDE_AIR_OTHER, "other"},
    {TSIDE_KIND_AIR, "warmth", TSIDE_AIR_WARMER, "given"},
    {TSIDE_KIND_AIR, "warmth", TSIDE_AIR_IN_THE_SUN, "sun"},
    {TSIDE_KIND_AIR, "roof_vent", TSIDE_NO_ROOF_VENT, "none"},
    {TSIDE_KIND_AIR, "roof_vent", TSIDE_ROOF_VENT, "vent"},
    {TSIDE_KIND_GIVE, "by", TSIDE_BY_SAG, "sag"},
    {TSIDE_KIND_GIVE, "by", TSIDE_BY_STRETCH, "stretch"},
    {TSIDE_KIND_ROPE, "run", TSIDE_ROPES_STRAIGHT, "straight"},
    {TSIDE_KIND_ROPE, "run", TSIDE_ROPE_ZIGZAG, "zigzag"},
    {TSIDE_KIND_AIRING, "by", TSIDE_BY_WIND, "wind"},
    {TSIDE_KIND_AIRING, "by", TSIDE_BY_WARMTH, "warmth"},
    {TSIDE_KIND_CRANK, "fitted", TSIDE_NO_CRANK, "none"},
    {TSIDE_KIND_CRANK, "fitted", TSIDE_CRANK, "crank"},
    {TSIDE_KIND_CRANK, "rule", TSIDE_MIL_STD_1472, "MIL_STD_1472"},
    {TSIDE_KIND_CRANK, "rule", TSIDE_EN_13561, "EN_13561"},
    {TSIDE_KIND_CRANK, "rule", TSIDE_EFFORT_GIVEN, "given"},
    {TSIDE_KIND_WIND, "rule", TSIDE_NO_WIND, "none"},
    {TSIDE_KIND_WIND, "rule", TSIDE_PRESSURE_GIVEN, "given"},
    {TSIDE_KIND_WIND, "rule", TSIDE_PLAIN, "plain"},
    {TSIDE_KIND_WIND, "rule", TSIDE_ASCE_7_16, "ASCE_7_16"},
    {TSIDE_KIND_WIND, "rule", TSIDE_ASCE_7_22, "ASCE_7_22"},
    {TSIDE_KIND_WIND, "rule", TSIDE_EN_1991_1_4, "EN_1991_1_4"},
    {TSIDE_KIND_WIND, "exposure", TSIDE_EXPOSURE_B, "B"},
    {TSIDE_KIND_WIND, "exposure", TSIDE_EXPOSURE_C, "C"},
    {TSIDE_KIND_WIND, "exposure", TSIDE_EXPOSURE_D, "D"},
    {TSIDE_KIND_WIND, "category", TSIDE_CATEGORY_0, "0"},
    {TSIDE_KIND_WIND, "category", TSIDE_CATEGORY_I, "I"},
    {TSIDE_KIND_WIND, "category", TSIDE_CATEGORY_II, "II"},
    {TSIDE_KIND_WIND, "category", TSIDE_CATEGORY_III, "III"},
    {TSIDE_KIND_WIND, "category", TSIDE_CATEGORY_IV, "IV"},
    {TSIDE_KIND_WIND, "category", TSIDE_CATEGORY_GIVEN, "given"},
    {TSIDE_KIND_BAY, "foot", TSIDE_BAR_RISES, "rises"},
    {TSIDE_KIND_BAY, "foot", TSIDE_BAR_HELD_DOWN, "held_down"},
    {TSIDE_KIND_SPAN, "by", TSIDE_BY_SAG, "sag"},
    {TSIDE_KIND_SPAN, "by", TSIDE_BY_STRETCH, "stretch"},
#define NAMED(code, name) {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_##code, name},
    FINDINGS(NAMED)
#undef NAMED
        {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_CHOSEN, "chosen"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_LARGER, "larger"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_FAILS, "fails"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_REFUSED, "refused"},
#define NAMED(code, name) {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_##code, name},
    FINDINGS(NAMED)
#undef NAMED
        {TSIDE_KIND_SIDE, "hand", TSIDE_RIGHT, "right"},
    {TSIDE_KIND_SIDE, "hand", TSIDE_LEFT, "left"},
    {TSIDE_KIND_SIDE, "ropes", TSIDE_NO_ROPES, "none"},
    {TSIDE_KIND_SIDE, "ropes", TSIDE_ROPES, "pressing"},
    {TSIDE_KIND_SIDE, "ropes", TSIDE_STRAIGHT_ROPES, "straight"},
    {TSIDE_KIND_SIDE, "ropes", TSIDE_ZIGZAG_ROPE, "zigzag"},
    {TSIDE_KIND_ROPING, "slack", TSIDE_SLACK_ENOUGH, "enough"},
    {TSIDE_KIND_ROPING, "slack", TSIDE_SLACK_GIVEN, "given"},
    {TSIDE_KIND_ROPE_PLAN, "rule", TSIDE_PITCH_BY_ROPE, "rope"},
    {TSIDE_KIND_ROPE_PLAN, "rule", TSIDE_PITCH_BY_HOOK, "hook"},
    {TSIDE_KIND_ROPE_PLAN, "rule", TSIDE_PITCH_BY_ANCHOR, "anchor"},
    {TSIDE_KIND_ROPE_PLAN, "rule", TSIDE_PITCH_BY_FILM, "film"},
    {TSIDE_KIND_ROPE_PLAN, "rule", TSIDE_PITCH_BY_BAR, "bar"},
    {TSIDE_KIND_ROPE_PLAN, "rule", TSIDE_PITCH_BY_NOTHING, "nothing"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_NOTHING, "nothing"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_BOW, "bow"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_MEMBER, "member"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_SPACING, "spacing"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_STOCK, "stock"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_ENDS, "ends"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_ANGLE, "angle"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_KINK, "kink"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_SHEAR, "bar_shear"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_SHEAR_STALL, "bar_shear_stall"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_BENDING, "bar_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_BENDING_STALL, "bar_bending_stall"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_COUPLING_SCREW, "coupling_screw"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_SPLICE_SCREW, "splice_screw"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_SPLICE_SCREW_STALL, "splice_screw_stall"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_GUIDE_BENDING, "guide_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_EYE_BOLT_BENDING, "eye_bolt_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_EXTENDER_BENDING, "extender_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_EXTENDER_TIP, "extender_tip"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BOW_BOLT, "bow_bolt"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_MEMBER_BOLT, "member_bolt"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BOW_BOLT_PULL, "bow_bolt_pull"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_MEMBER_BOLT_PULL, "member_bolt_pull"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BOW_BOLT_BOTH, "bow_bolt_both"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_MEMBER_BOLT_BOTH, "member_bolt_both"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BOW_NET_SECTION, "bow_net_section"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_RAIL_PULL, "rail_pull"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_WIND, "bar_wind"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_RAIL_SCREW, "rail_screw"},
    {TSIDE_KIND_STRENGTH_LINE, "end", TSIDE_DRIVE_END, "drive_end"},
    {TSIDE_KIND_STRENGTH_LINE, "end", TSIDE_FREE_END, "free_end"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_STRESS, "stress"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_FORCE, "force"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_DEFLECTION, "deflection"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_SHARE, "share"},
    {TSIDE_KIND_STRENGTH_LINE, "verdict", TSIDE_VERDICT_OK, "ok"},
    {TSIDE_KIND_STRENGTH_LINE, "verdict", TSIDE_VERDICT_LOOK, "look"},
    {TSIDE_KIND_STRENGTH_LINE, "verdict", TSIDE_VERDICT_NO, "no"},
    {TSIDE_KIND_STRENGTH_LINE, "rules", TSIDE_RULES_NONE, "none"},
    {TSIDE_KIND_STRENGTH_LINE, "rules", TSIDE_RULES_UP, "up"},
    {TSIDE_KIND_STRENGTH_LINE, "rules", TSIDE_RULES_DOWN, "down"},
    {TSIDE_KIND_FINDING, "end", TSIDE_DRIVE_END, "drive_end"},
    {TSIDE_KIND_FINDING, "end", TSIDE_FREE_END, "free_end"},
    {TSIDE_KIND_FITTINGS, "hardware", TSIDE_HARDWARE_INCH, "inch"},
    {TSIDE_KIND_FITTINGS, "hardware", TSIDE_HARDWARE_METRIC, "metric"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_1_4, "1/4"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_5_16, "5/16"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_3_8, "3/8"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_7_16, "7/16"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_1_2, "1/2"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_M6, "M6"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_M8, "M8"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_M10, "M10"},
    {TSIDE_KIND_FITTINGS, "bolt_size", TSIDE_BOLT_M12, "M12"},
    {TSIDE_KIND_FITTINGS, "washer", TSIDE_WASHER_NARROW, "narrow"},
    {TSIDE_KIND_FITTINGS, "washer", TSIDE_WASHER_WIDE, "wide"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CURTAIN, "curtain"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_FLAP, "flap"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_BAR, "bar"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_SPLICE_SCREW, "splice_screw"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_COUPLING_SCREW, "coupling_screw"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CLIP, "clip"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_DRIVE, "drive"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_COLLAR, "collar"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_GUIDE, "guide"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CHAIN, "chain"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CHAIN_LINK, "chain_link"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_EYE, "eye"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_EYE_NUT, "eye_nut"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_EYE_WASHER, "eye_washer"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_EXTENDER, "extender"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_BOW_BOLT, "bow_bolt"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_MEMBER_BOLT, "member_bolt"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_BOLT_NUT, "bolt_nut"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_BOLT_WASHER, "bolt_washer"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_PATCH, "patch"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CHANNEL, "channel"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_WIRE, "wire"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CHANNEL_SCREW, "channel_screw"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_ROPE, "rope"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_HOOK, "hook"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_ANCHOR, "anchor"},
    {TSIDE_KIND_ITEM, "code", TSIDE_ITEM_CORD, "cord"},
    {TSIDE_KIND_ITEM, "at", TSIDE_AT_SIDE, "side"},
    {TSIDE_KIND_ITEM, "at", TSIDE_AT_DRIVE_END, "drive_end"},
    {TSIDE_KIND_ITEM, "at", TSIDE_AT_FREE_END, "free_end"},
    {TSIDE_KIND_ITEM, "hand", TSIDE_UNHANDED, "unhanded"},
    {TSIDE_KIND_ITEM, "hand", TSIDE_RIGHT_HANDED, "right_handed"},
    {TSIDE_KIND_ITEM, "hand", TSIDE_LEFT_HANDED, "left_handed"},
    {TSIDE_KIND_ITEM, "by", TSIDE_BY_COUNT, "count"},
    {TSIDE_KIND_ITEM, "by", TSIDE_BY_CUT, "cut"},
    {TSIDE_KIND_ITEM, "by", TSIDE_BY_LENGTH, "length"},
    {TSIDE_KIND_ITEM, "by", TSIDE_BY_SHEET, "sheet"},
    {TSIDE_KIND_ITEM, "shape", TSIDE_NO_TUBE, "none"},
    {TSIDE_KIND_ITEM, "shape", TSIDE_ROUND_TUBE, "round"},
    {TSIDE_KIND_ITEM, "shape", TSIDE_SQUARE_TUBE, "square"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_END_WALL, "end_wall"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_WHOLE_WALL, "whole_wall"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_CORNER, "corner"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_EXTENDER, "extender"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_ALONG, "along"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_ROLL_SHUT, "roll_shut"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_ROLL_OPEN, "roll_open"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_TURNS, "turns"},
    {TSIDE_KIND_PICTURE, "view", TSIDE_VIEW_OPENING, "opening"},
    {TSIDE_KIND_PICTURE, "end", TSIDE_DRIVE_END, "drive_end"},
    {TSIDE_KIND_PICTURE, "end", TSIDE_FREE_END, "free_end"},
    {TSIDE_KIND_PICTURE, "tape", TSIDE_TAPE_INCH, "inch"},
    {TSIDE_KIND_PICTURE, "tape", TSIDE_TAPE_METRIC, "metric"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_BOW, "bow"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_MEMBER, "member"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_BOARD, "board"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_RAIL, "rail"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_SILL, "sill"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_GROUND, "ground"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_CURTAIN, "curtain"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_BAR, "bar"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_ROLL, "roll"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_DRIVE, "drive"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_COLLAR, "collar"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_GUIDE, "guide"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_REACH, "reach"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_EYE, "eye"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_EYE_BOLT, "eye_bolt"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_EXTENDER, "extender"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_HOLE, "hole"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_SPACER, "spacer"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_KEEP_OUT, "keep_out"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_JOINT, "joint"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_ROPE, "rope"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_AXIS, "axis"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_OPENING, "opening"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_TORQUE, "torque"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_LEAN, "lean"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_CURTAIN_EDGE, "curtain_edge"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_HIP, "hip"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_FACE, "face"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_TOP_RIGHT, "top_right"},
    {TSIDE_KIND_STROKE, "part", TSIDE_PART_TOP_LEFT, "top_left"},
    {TSIDE_KIND_STROKE, "shown", TSIDE_SHOWN_ALWAYS, "always"},
    {TSIDE_KIND_STROKE, "shown", TSIDE_SHOWN_SHUT, "shut"},
    {TSIDE_KIND_STROKE, "shown", TSIDE_SHOWN_OPEN, "open"},
    {TSIDE_KIND_STROKE, "shown", TSIDE_SHOWN_SHUT_AND_OPEN, "shut_and_open"},
    {TSIDE_KIND_STROKE, "shown", TSIDE_SHOWN_AT_TURNS, "at_turns"},
    {TSIDE_KIND_STROKE, "line", TSIDE_LINE_WIDE, "wide"},
    {TSIDE_KIND_STROKE, "line", TSIDE_LINE_NARROW, "narrow"},
    {TSIDE_KIND_STROKE, "line", TSIDE_LINE_DASHED, "dashed"},
    {TSIDE_KIND_STROKE, "line", TSIDE_LINE_CHAIN, "chain"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_HIP_ABOVE_GROUND, "hip_above_ground"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BOW_HOLE_HEIGHT, "bow_hole_height"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_MEMBER_HOLE_HEIGHT, "member_hole_height"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_MEMBER_HOLE_LEVEL, "member_hole_level"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_HEIGHT, "eye_height"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_LEVEL, "eye_level"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_TO_MEMBER, "eye_to_member"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_HOLE_TO_HOLE, "hole_to_hole"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BOW_HOLE_ALONG, "bow_hole_along"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_RUN, "run"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_REACH, "reach"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_TOP_HEIGHT, "top_height"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_TOP_LEVEL, "top_level"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_FOOT_LEVEL, "foot_level"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_FOOT_DEPTH, "foot_depth"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_CURTAIN_PAST, "curtain_past"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_OFF_BOW, "eye_off_bow"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_OFF_TUBE, "eye_off_tube"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_RUN_ON, "run_on"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_CUT_LENGTH, "cut_length"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_FROM_TOP, "eye_from_top"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BOW_FROM_TOP, "bow_from_top"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_MEMBER_FROM_TOP, "member_from_top"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_EYE_HOLE, "eye_hole"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BOW_HOLE, "bow_hole"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_MEMBER_HOLE, "member_hole"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_SIDE_LENGTH, "side_length"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_CURTAIN_LENGTH, "curtain_length"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BAR_LENGTH, "bar_length"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_JOINT_PLACE, "joint_place"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BEYOND_DRIVE, "beyond_drive"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_BEYOND_FREE, "beyond_free"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_ROPE_PITCH, "rope_pitch"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_HOOK_HEIGHT, "hook_height"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_ANCHOR_HEIGHT, "anchor_height"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_SHUT_BELOW_HIP, "shut_below_hip"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_SHUT_ABOVE_GROUND, "shut_above_ground"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_SEAL, "seal"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_SHUT_DIAMETER, "shut_diameter"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_OPEN_BELOW_HIP, "open_below_hip"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_OPEN_ABOVE_GROUND, "open_above_ground"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_OPENING, "opening"},
    {TSIDE_KIND_DIMENSION, "tells", TSIDE_TELLS_OPEN_DIAMETER, "open_diameter"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_LEVEL, "level"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_PLUMB, "plumb"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_ALONG, "along"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_ARC, "arc"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_RUNNING, "running"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_RADIUS, "radius"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_DIAMETER, "diameter"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_PLACE, "place"},
    {TSIDE_KIND_DIMENSION, "kind", TSIDE_DIMENSION_ANGLE, "angle"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_BOW, "bow"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_MEMBER, "member"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_BOARD, "board"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_RAIL, "rail"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_SILL, "sill"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_GROUND, "ground"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_CURTAIN, "curtain"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_BAR, "bar"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_ROLL, "roll"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_DRIVE, "drive"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_COLLAR, "collar"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_GUIDE, "guide"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_REACH, "reach"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_EYE, "eye"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_EYE_BOLT, "eye_bolt"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_EXTENDER, "extender"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_HOLE, "hole"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_SPACER, "spacer"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_KEEP_OUT, "keep_out"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_JOINT, "joint"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_ROPE, "rope"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_AXIS, "axis"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_OPENING, "opening"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_TORQUE, "torque"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_LEAN, "lean"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_CURTAIN_EDGE, "curtain_edge"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_HIP, "hip"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_FACE, "face"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_TOP_RIGHT, "top_right"},
    {TSIDE_KIND_NOTE, "part", TSIDE_PART_TOP_LEFT, "top_left"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_NONE, "none"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_TURN, "turn"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_INCH, "in"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_MILLIMETRE, "mm"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_POUND_FOOT, "lbf_ft"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_NEWTON_METRE, "N_m"},
    {TSIDE_KIND_NOTE, "unit", TSIDE_FIGURE_DEGREE, "degree"},
    {TSIDE_KIND_NOTE, "shown", TSIDE_SHOWN_ALWAYS, "always"},
    {TSIDE_KIND_NOTE, "shown", TSIDE_SHOWN_SHUT, "shut"},
    {TSIDE_KIND_NOTE, "shown", TSIDE_SHOWN_OPEN, "open"},
    {TSIDE_KIND_NOTE, "shown", TSIDE_SHOWN_SHUT_AND_OPEN, "shut_and_open"},
    {TSIDE_KIND_NOTE, "shown", TSIDE_SHOWN_AT_TURNS, "at_turns"},
};
enum { CHOICES = sizeof choices / sizeof *choices };

START_TEST(choices_are_the_enumerators)
{
    int all = 0;
    for (int i = 0; i < CHOICES; i++) {
        tside_place place;
        tside_fault fault;
        ANSWERS(tside_field_find(choices[i].kind, choices[i].member, &place, &fault));
        ck_assert(place.field->type == TSIDE_CHOICE && choices[i].value < place.field->choice_count);
        ck_assert_str_eq(place.field->choices[choices[i].value], choices[i].name);
    }
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        int count;
        const tside_field *row = tside_fields((tside_kind)k, &count);
        for (int i = 0; i < count; i++)
            if (row[i].type == TSIDE_CHOICE &&
                (i == 0 || row[i].offset != row[i - 1].offset)) /* rows that share a member are one choice */
                all += row[i].choice_count;
    }
    ck_assert_int_eq(all, CHOICES);
}
END_TEST

Suite *choices_suite(void)
{
    Suite *suite = suite_create("choices");
    TCase *tcase = tcase_create("choices");
    tcase_add_test(tcase, choices_are_the_enumerators);
    suite_add_tcase(suite, tcase);
    return suite;
}
