/* SPDX-License-Identifier: MIT */
/* The tables of fields against themselves and against the headers, and the checker against the tables. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

#ifndef TSIDE_RECORDS
#define TSIDE_RECORDS "include/interface.tsv"
#endif

/* Each kind's structure. */
static const struct {
    const char *name;
    size_t size;
} structures[] = {
#define STRUCTURE(kind, name) [TSIDE_KIND_##kind] = {"tside_" #name, sizeof(tside_##name)},
    TSIDE_ASKED_LIST(STRUCTURE) TSIDE_ANSWERED_LIST(STRUCTURE)
#undef STRUCTURE
};
enum { STRUCTURES = sizeof structures / sizeof *structures };

static int is_asked(tside_kind kind)
{
    return kind <= TSIDE_KIND_SIDE;
}

static int is_whole(const tside_field *row)
{
    return row->type == TSIDE_COUNT || row->type == TSIDE_CHOICE;
}

static double *number_in(void *structure, size_t offset)
{
    return (double *)(void *)((char *)structure + offset);
}

static int *whole_in(void *structure, size_t offset)
{
    return (int *)(void *)((char *)structure + offset);
}

/* --- each row by itself --- */

static size_t size_of(const tside_field *row)
{
    switch (row->type) {
    case TSIDE_NUMBER: return sizeof(double);
    case TSIDE_COUNT:
    case TSIDE_CHOICE: return sizeof(int);
    case TSIDE_GROUP: return structures[row->kind].size;
    case TSIDE_LIST: return (size_t)row->capacity * row->stride;
    }
    return 0;
}

static void bounds_are_sound(const tside_field *row)
{
    ck_assert_msg(row->low < row->high, "%s: bounds", row->name);
    if (row->required)
        ck_assert_msg(!row->optional && (row->low > 0 || (row->low == 0 && row->low_open)), "%s: 0 is in bounds", row->name);
    else if (!row->optional) {
        ck_assert_msg(row->low_open ? row->usual > row->low : row->usual >= row->low, "%s: usual value too low", row->name);
        ck_assert_msg(row->high_open ? row->usual < row->high : row->usual <= row->high, "%s: usual value too high", row->name);
        ck_assert_msg(row->basis && *row->basis, "%s: a usual value without a basis", row->name);
        if (row->usual_low < row->usual_high)
            ck_assert_msg(row->usual >= row->usual_low && row->usual <= row->usual_high, "%s: its usual value is unusual", row->name);
    }
    ck_assert_msg(row->usual_low <= row->usual_high && row->tolerance >= 0, "%s: usual range or tolerance", row->name);
    if (row->usual_low < row->usual_high)
        ck_assert_msg(row->usual_low >= row->low && row->usual_high <= row->high, "%s: the usual range leaves the bounds", row->name);
}

static void row_is_sound(tside_kind kind, const tside_field *rows, int count, const tside_field *row)
{
    const size_t size = structures[kind].size;
    ck_assert_msg(row->name && *row->name && row->meaning && *row->meaning && row->unit, "kind %d: a text is missing", (int)kind);
    ck_assert_msg(size_of(row) > 0 && row->offset + size_of(row) <= size, "%s.%s lies outside its structure", structures[kind].name, row->name);
    if (row->optional)
        ck_assert_msg(row->type == TSIDE_NUMBER && row->given_offset + sizeof(int) <= size && row->given_offset != row->offset, "%s: given", row->name);
    if (row->type == TSIDE_NUMBER || row->type == TSIDE_COUNT) {
        ck_assert_msg(row->low <= row->high, "%s: bounds", row->name);
        if (is_asked(kind))
            bounds_are_sound(row);
    }
    if (row->type == TSIDE_CHOICE) {
        ck_assert_msg(row->choice_count > 1 && row->usual >= 0 && row->usual < row->choice_count, "%s: choices", row->name);
        for (int a = 0; a < row->choice_count; a++) {
            ck_assert_msg(row->choices[a] && *row->choices[a], "%s: a choice without a name", row->name);
            for (int b = 0; b < a; b++)
                ck_assert_str_ne(row->choices[a], row->choices[b]);
        }
    }
    if (row->applies_to) {
        int found = 0;
        for (int k = 0; rows + k < row; k++)
            found |= !strcmp(rows[k].name, row->applies_to) && rows[k].offset == row->applies_offset && is_whole(rows + k) &&
                     (rows[k].type == TSIDE_COUNT || row->applies_mask >> rows[k].choice_count == 0);
        ck_assert_msg(found && row->applies_mask, "%s applies to no choice above it", row->name);
    }
    if (row->type == TSIDE_LIST)
        ck_assert_msg(row->capacity > 1 && row->capacity < 100 && row->stride == structures[row->kind].size && row->count_offset + sizeof(int) <= size, "%s: its list",
                      row->name);
}

/* Two rows share a member only if they have its name, and never apply together; else they do not overlap. */
static void rows_are_apart(const tside_field *a, const tside_field *b)
{
    if (!strcmp(a->name, b->name))
        ck_assert_msg(a->offset == b->offset && a->type == b->type && a->applies_to && b->applies_to && a->applies_offset == b->applies_offset &&
                          !(a->applies_mask & b->applies_mask),
                      "two rows are called %s", a->name);
    else
        ck_assert_msg(a->offset + size_of(a) <= b->offset || b->offset + size_of(b) <= a->offset, "%s and %s overlap", a->name, b->name);
}

START_TEST(every_kind_has_a_sound_table)
{
    int count;
    ck_assert_int_eq(STRUCTURES, TSIDE_KIND_COUNT);
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        tside_kind kind = (tside_kind)k;
        const tside_field *rows = tside_fields(kind, &count);
        ck_assert_msg(rows && count > 0, "%s has no table", structures[k].name);
        for (int i = 0; i < count; i++) {
            if (rows[i].type == TSIDE_GROUP || rows[i].type == TSIDE_LIST)
                ck_assert_msg((int)rows[i].kind >= 0 && rows[i].kind < TSIDE_KIND_COUNT && rows[i].kind != kind && is_asked(rows[i].kind) >= is_asked(kind),
                              "%s.%s: nested", structures[k].name, rows[i].name);
            row_is_sound(kind, rows, count, rows + i);
            for (int j = 0; j < i; j++)
                rows_are_apart(rows + j, rows + i);
        }
    }
    ck_assert(!tside_fields(TSIDE_KIND_COUNT, &count) && count == 0);
    ck_assert(!tside_fields((tside_kind)-1, &count) && count == 0);
}
END_TEST

/* --- choices: each name stands for the enumerator that says the same --- */

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
    {TSIDE_KIND_EXTENDER, "slant", TSIDE_SLANT_BEST, "best"},
    {TSIDE_KIND_EXTENDER, "slant", TSIDE_SLANT_ANGLE, "angle"},
    {TSIDE_KIND_EXTENDER, "slant", TSIDE_SLANT_CROSSING, "crossing"},
    {TSIDE_KIND_END, "hung", TSIDE_ON_EXTENDER, "extender"},
    {TSIDE_KIND_END, "hung", TSIDE_ON_HIP, "hip"},
    {TSIDE_KIND_END, "placed", TSIDE_EYE_BEST, "best"},
    {TSIDE_KIND_END, "placed", TSIDE_EYE_GIVEN, "given"},
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
    {TSIDE_KIND_CRANK, "fitted", TSIDE_NO_CRANK, "none"},
    {TSIDE_KIND_CRANK, "fitted", TSIDE_CRANK, "crank"},
    {TSIDE_KIND_CRANK, "rule", TSIDE_MIL_STD_1472, "MIL_STD_1472"},
    {TSIDE_KIND_CRANK, "rule", TSIDE_EN_13561, "EN_13561"},
    {TSIDE_KIND_CRANK, "rule", TSIDE_EFFORT_GIVEN, "given"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_STALLS, "stalls"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_LONG_RUN, "long_run"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_OVERLOAD, "overload"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_DROP, "drop"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_DROP_START, "drop_start"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_AMPACITY, "ampacity"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_FUSE, "fuse"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_FUSE_START, "fuse_start"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_FUSE_LARGE, "fuse_large"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_TURNS_BACK, "turns_back"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_EFFORT, "effort"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_CHOSEN, "chosen"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_LARGER, "larger"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_FAILS, "fails"},
    {TSIDE_KIND_DRIVE_CHOICE, "fit", TSIDE_DRIVE_REFUSED, "refused"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_DRIVE_WEAK, "drive_weak"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_STRENGTH, "strength"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_LIMIT_TURNS, "limit_turns"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_KEEP_OUT_TUBE, "keep_out_tube"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_KEEP_OUT_GUIDE, "keep_out_guide"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_KICK, "kick"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_SIDE_FORCE, "side_force"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_TWIST, "twist"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_LAG, "lag"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_SEAL, "seal"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_WRAPS, "wraps"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_STAYS_UP, "stays_up"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_CHAIN_SWING, "chain_swing"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_THROWN, "thrown"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_UPLIFT, "uplift"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_TIPS, "tips"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_STALL_GUESSED, "stall_guessed"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_UNUSUAL, "unusual"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_STALLS, "stalls"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_LONG_RUN, "long_run"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_OVERLOAD, "overload"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_DROP, "drop"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_DROP_START, "drop_start"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_AMPACITY, "ampacity"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_FUSE, "fuse"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_FUSE_START, "fuse_start"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_FUSE_LARGE, "fuse_large"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_TURNS_BACK, "turns_back"},
    {TSIDE_KIND_DRIVE_CHOICE, "finding", TSIDE_FINDING_EFFORT, "effort"},
    {TSIDE_KIND_SIDE, "hand", TSIDE_RIGHT, "right"},
    {TSIDE_KIND_SIDE, "hand", TSIDE_LEFT, "left"},
    {TSIDE_KIND_SIDE, "ropes", TSIDE_NO_ROPES, "none"},
    {TSIDE_KIND_SIDE, "ropes", TSIDE_ROPES, "pressing"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_NOTHING, "nothing"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_BOW, "bow"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_MEMBER, "member"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_SPACING, "spacing"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_STOCK, "stock"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_ENDS, "ends"},
    {TSIDE_KIND_LAYOUT, "binding", TSIDE_BINDS_ANGLE, "angle"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_SHEAR, "bar_shear"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_SHEAR_STALL, "bar_shear_stall"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BAR_BENDING, "bar_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_COUPLING_SCREW, "coupling_screw"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_SPLICE_SCREW, "splice_screw"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_SPLICE_SCREW_STALL, "splice_screw_stall"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_GUIDE_BENDING, "guide_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_EYE_BOLT_BENDING, "eye_bolt_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_EXTENDER_BENDING, "extender_bending"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_EXTENDER_TIP, "extender_tip"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BOW_BOLT, "bow_bolt"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_MEMBER_BOLT, "member_bolt"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_BOW_NET_SECTION, "bow_net_section"},
    {TSIDE_KIND_STRENGTH_LINE, "code", TSIDE_RAIL_PULL, "rail_pull"},
    {TSIDE_KIND_STRENGTH_LINE, "end", TSIDE_DRIVE_END, "drive_end"},
    {TSIDE_KIND_STRENGTH_LINE, "end", TSIDE_FREE_END, "free_end"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_STRESS, "stress"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_FORCE, "force"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_DEFLECTION, "deflection"},
    {TSIDE_KIND_STRENGTH_LINE, "measure", TSIDE_SHARE, "share"},
    {TSIDE_KIND_STRENGTH_LINE, "verdict", TSIDE_VERDICT_OK, "ok"},
    {TSIDE_KIND_STRENGTH_LINE, "verdict", TSIDE_VERDICT_LOOK, "look"},
    {TSIDE_KIND_STRENGTH_LINE, "verdict", TSIDE_VERDICT_NO, "no"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_DRIVE_WEAK, "drive_weak"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_STRENGTH, "strength"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_LIMIT_TURNS, "limit_turns"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_KEEP_OUT_TUBE, "keep_out_tube"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_KEEP_OUT_GUIDE, "keep_out_guide"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_KICK, "kick"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_SIDE_FORCE, "side_force"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_TWIST, "twist"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_LAG, "lag"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_SEAL, "seal"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_WRAPS, "wraps"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_STAYS_UP, "stays_up"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_CHAIN_SWING, "chain_swing"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_THROWN, "thrown"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_UPLIFT, "uplift"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_TIPS, "tips"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_STALL_GUESSED, "stall_guessed"},
    {TSIDE_KIND_FINDING, "code", TSIDE_FINDING_UNUSUAL, "unusual"},
    {TSIDE_KIND_FINDING, "end", TSIDE_DRIVE_END, "drive_end"},
    {TSIDE_KIND_FINDING, "end", TSIDE_FREE_END, "free_end"},
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
            all += row[i].type == TSIDE_CHOICE ? row[i].choice_count : 0;
    }
    ck_assert_int_eq(all, CHOICES);
}
END_TEST

/* --- usual values --- */

static void is_usual(tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        if (row[i].optional)
            ck_assert_msg(!*whole_in(structure, row[i].given_offset), "%s begins as given", row[i].name);
        else if (row[i].type == TSIDE_NUMBER && tside_field_applies(row + i, structure))
            ck_assert_msg(*number_in(structure, row[i].offset) == (row[i].required ? 0 : row[i].usual), "%s begins otherwise", row[i].name);
        else if (is_whole(row + i))
            ck_assert_msg(*whole_in(structure, row[i].offset) == (int)row[i].usual, "%s begins otherwise", row[i].name);
        else if (row[i].type == TSIDE_GROUP)
            is_usual(row[i].kind, structure + row[i].offset);
        else if (row[i].type == TSIDE_LIST) {
            ck_assert_int_eq(*whole_in(structure, row[i].count_offset), 0);
            for (int k = 0; k < row[i].capacity; k++)
                is_usual(row[i].kind, structure + row[i].offset + (size_t)k * row[i].stride);
        }
    }
}

START_TEST(usual_values_fill_every_structure)
{
    static union {
        double aligned;
        char bytes[sizeof(tside_side)];
    } structure;
    for (int k = 0; k <= TSIDE_KIND_SIDE; k++) {
        ck_assert(structures[k].size <= sizeof structure);
        memset(&structure, 0xa5, sizeof structure);
        tside_usual((tside_kind)k, &structure);
        is_usual((tside_kind)k, structure.bytes);
        for (size_t i = structures[k].size; i < sizeof structure; i++)
            ck_assert((unsigned char)structure.bytes[i] == 0xa5);
    }
    memset(&structure, 0xa5, sizeof structure);
    tside_usual(TSIDE_KIND_COUNT, &structure);
    tside_usual_by_choice((tside_kind)-1, &structure);
    for (size_t i = 0; i < sizeof structure; i++)
        ck_assert((unsigned char)structure.bytes[i] == 0xa5);
}
END_TEST

START_TEST(usual_values_follow_choices)
{
    tside_side side;
    tside_usual(TSIDE_KIND_SIDE, &side);
    NEAR(side.drive.mass, 8, 0, "motor, kg", 0);             /* common practice, no published source */
    NEAR(side.drive.safety_factor, 1.5, 0, "motor", 0);      /* the same */
    NEAR(side.friction, 0.15, 0, "film alone", 0);           /* the same */
    NEAR(side.drive_end.rise, 12 * 0.0254, 0, "rise", 0);    /* the same */
    side.drive.kind = TSIDE_HAND;
    side.ropes = TSIDE_ROPES;
    side.length = 12;
    tside_usual_by_choice(TSIDE_KIND_SIDE, &side);
    NEAR(side.drive.mass, 3, 0, "hand, kg", 0);
    NEAR(side.drive.safety_factor, 1.25, 0, "hand", 0);
    NEAR(side.drive.collar_offset, 3 * 0.0254, 0, "hand, m", 0);
    NEAR(side.friction, 0.25, 0, "with ropes", 0);
    NEAR(side.length, 12, 0, "kept", 0);
}
END_TEST

/* --- the headers: their members beside the rows, by the records that their one reader makes --- */

typedef struct reader {
    tside_kind kind;
    const tside_field *rows;
    int count, met; /* distinct names met */
} reader;

static const tside_field *row_named(const reader *r, const char *name, size_t length)
{
    for (int i = 0; i < r->count; i++)
        if (strlen(r->rows[i].name) == length && !memcmp(r->rows[i].name, name, length))
            return r->rows + i;
    return NULL;
}

static int ends_in(const char *name, const char *end)
{
    return strlen(name) > strlen(end) && !strcmp(name + strlen(name) - strlen(end), end);
}

/* An int that only says of another member whether, or how many of it, there are. */
static int tells_of_another(const reader *r, const char *name)
{
    const tside_field *of = NULL;
    char plural[80];
    if (ends_in(name, "_given"))
        return (of = row_named(r, name, strlen(name) - strlen("_given"))) && of->optional;
    if (ends_in(name, "_count")) {
        snprintf(plural, sizeof plural, "%.*ss", (int)(strlen(name) - strlen("_count")), name);
        return (of = row_named(r, plural, strlen(plural))) && of->type == TSIDE_LIST;
    }
    return 0;
}

/* What a record of a member holds. */
enum { KIND, STRUCT, NAME, TYPE, DIMENSION, UNIT, GIVEN, TEXT, COLUMNS };

/* Parts a record where its tabs are; returns how many parts it has. */
static int part(char *line, char **column)
{
    int count = 0;
    while (line && count < COLUMNS) {
        column[count++] = line;
        line = strchr(line, '\t');
        if (line)
            *line++ = '\0';
    }
    return count;
}

static void member_has_row(reader *r, char *const *column)
{
    const char *structure = structures[r->kind].name, *name = column[NAME], *type = column[TYPE];
    const tside_field *row = row_named(r, name, strlen(name));
    if (!row) {
        ck_assert_msg(!strcmp(type, "int") && tells_of_another(r, name), "%s.%s has no row in the table", structure, name);
        return;
    }
    r->met++;
    if (!strcmp(type, "double")) {
        ck_assert_msg(row->type == TSIDE_NUMBER, "%s.%s is a double and its row is not", structure, name);
        ck_assert_msg(!strcmp(row->unit, column[UNIT]), "%s.%s: its comment says \"%s\", and its row has the unit %s", structure, name, column[TEXT], row->unit);
        ck_assert_msg(!row->optional == !*column[GIVEN], "%s.%s: its row and its comment disagree on whether it may be absent", structure, name);
    } else if (!strcmp(type, "int"))
        ck_assert_msg(row->type == TSIDE_COUNT, "%s.%s is an int and its row is not", structure, name);
    else if (*column[DIMENSION])
        ck_assert_msg(row->type == TSIDE_LIST && !strcmp(structures[row->kind].name, type), "%s.%s is an array of %s and its row is not", structure, name, type);
    else if (row->type == TSIDE_GROUP)
        ck_assert_msg(!strcmp(structures[row->kind].name, type), "%s.%s is a %s and its row is not", structure, name, type);
    else
        ck_assert_msg(row->type == TSIDE_CHOICE, "%s.%s is a %s and its row is no choice", structure, name, type);
}

static int distinct_names(const reader *r)
{
    int distinct = 0;
    for (int i = 0; i < r->count; i++)
        distinct += row_named(r, r->rows[i].name, strlen(r->rows[i].name)) == r->rows + i;
    return distinct;
}

START_TEST(headers_say_what_the_tables_say)
{
    FILE *records = fopen(TSIDE_RECORDS, "r");
    ck_assert_msg(records != NULL, TSIDE_RECORDS " cannot be read: make makes it");
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        char line[2048], *column[COLUMNS];
        reader r = {.kind = (tside_kind)k};
        r.rows = tside_fields(r.kind, &r.count);
        rewind(records);
        while (fgets(line, sizeof line, records)) {
            line[strcspn(line, "\n")] = '\0';
            if (part(line, column) == COLUMNS && !strcmp(column[KIND], "member") && !strcmp(column[STRUCT], structures[k].name))
                member_has_row(&r, column);
        }
        ck_assert_msg(r.met == distinct_names(&r), "%s: %d members have a row, and %d rows have names of their own", structures[k].name, r.met, distinct_names(&r));
    }
    fclose(records);
}
END_TEST

/* --- paths --- */

typedef struct pathfinder {
    tside_kind kind; /* where paths start */
    char path[4 * TSIDE_PATH_SIZE];
    int found;
} pathfinder;

static void is_found(pathfinder *p, const tside_field *row, size_t offset)
{
    tside_place place;
    tside_fault fault;
    ck_assert_msg(strlen(p->path) < TSIDE_PATH_SIZE, "%s is too long for a fault", p->path);
    ANSWERS(tside_field_find(p->kind, p->path, &place, &fault));
    ck_assert_msg(place.offset == offset && !strcmp(place.field->name, row->name), "%s is found elsewhere", p->path);
    p->found++;
}

static void follow(pathfinder *p, tside_kind kind, size_t base)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const size_t mark = strlen(p->path);
    for (int i = 0; i < count; i++) {
        const size_t offset = base + row[i].offset;
        snprintf(p->path + mark, sizeof p->path - mark, "%s%s", mark ? "." : "", row[i].name);
        is_found(p, row + i, offset);
        if (row[i].type == TSIDE_GROUP)
            follow(p, row[i].kind, offset);
        for (int k = 0; row[i].type == TSIDE_LIST && k < row[i].capacity; k++) {
            const size_t at = strlen(p->path);
            snprintf(p->path + at, sizeof p->path - at, "[%d]", k);
            is_found(p, row + i, offset + (size_t)k * row[i].stride);
            follow(p, row[i].kind, offset + (size_t)k * row[i].stride);
            p->path[at] = '\0';
        }
        p->path[mark] = '\0';
    }
}

START_TEST(every_path_is_found)
{
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        pathfinder p = {.kind = (tside_kind)k};
        int count;
        tside_fields(p.kind, &count);
        follow(&p, p.kind, 0);
        ck_assert_int_ge(p.found, count);
    }
}
END_TEST

START_TEST(paths_that_lead_nowhere_are_refused)
{
    static const char *const bad[] = {"", ".", "lenght", "length.", "length.x", "length.metal", "hand.yield", "frame..tube", "frame.tube.",
                                      "bars[16]", "bars[-1]", "bars[]", "bars[1", "bars[1]x", "bars[1][1]", "drive_end.keep_outs[8].left", "[0]", "frame[0]",
                                      "bars[99999].play", "bars[99999999999999999999].play", " length", "LENGTH"};
    char endless[3 * TSIDE_PATH_SIZE];
    tside_place place;
    tside_fault fault;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        memset(&place, 0xa5, sizeof place);
        ck_assert_msg(tside_field_find(TSIDE_KIND_SIDE, bad[i], &place, &fault) == TSIDE_NOT_FOUND, "\"%s\"", bad[i]);
        ck_assert_str_eq(fault.field, bad[i]);
        for (size_t k = 0; k < sizeof place; k++)
            ck_assert(((unsigned char *)&place)[k] == 0xa5);
    }
    memset(endless, 'x', sizeof endless);
    endless[sizeof endless - 1] = '\0';
    ck_assert(tside_field_find(TSIDE_KIND_SIDE, endless, &place, &fault) == TSIDE_NOT_FOUND);
    ck_assert(strlen(fault.field) < TSIDE_PATH_SIZE);
    ck_assert(tside_field_find(TSIDE_KIND_COUNT, "length", &place, NULL) == TSIDE_NOT_FOUND);
}
END_TEST

/* --- the checker, by walking a whole side --- */

/* A side in which everything required is given and every list is full, so that each row can be tried. */
static void give_required(tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        if (row[i].type == TSIDE_NUMBER && row[i].required)
            *number_in(structure, row[i].offset) = fmin(fmax(1, row[i].low), row[i].high) * (row[i].high <= 1 ? 0.5 : 1);
        if (row[i].type == TSIDE_GROUP)
            give_required(row[i].kind, structure + row[i].offset);
        if (row[i].type == TSIDE_LIST) {
            *whole_in(structure, row[i].count_offset) = row[i].capacity;
            for (int k = 0; k < row[i].capacity; k++)
                give_required(row[i].kind, structure + row[i].offset + (size_t)k * row[i].stride);
        }
    }
}

typedef struct walker {
    tside_side side;
    char path[TSIDE_PATH_SIZE];
    const tside_field *row;
    int numbers; /* tried at every bound */
} walker;

static void refused_at(walker *w, double value, tside_relation relation, double bound, const char *what)
{
    tside_fault fault;
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, &fault) == TSIDE_OUT_OF_BOUNDS, "%s: %s is not refused", w->path, what);
    ck_assert_int_eq((int)fault.status, TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, w->path);
    ck_assert_str_eq(fault.unit, w->row->unit);
    ck_assert_msg(fault.relation == relation, "%s, %s: relation %d, not %d", w->path, what, (int)fault.relation, (int)relation);
    ck_assert_msg(fault.value == value && fault.bound == bound, "%s, %s: %.17g against %.17g, not %.17g against %.17g", w->path, what, fault.value, fault.bound, value, bound);
}

static void accepted(const walker *w, const char *what)
{
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, NULL) == TSIDE_OK, "%s: %s", w->path, what);
}

static void try_number(walker *w, const tside_field *row, char *structure)
{
    double *number = number_in(structure, row->offset), kept = *number;
    int *given = row->optional ? whole_in(structure, row->given_offset) : NULL;
    if (given) {
        *number = NAN;
        accepted(w, "is looked at though not given");
        *given = 1;
    }
    *number = NAN;
    refused_at(w, 0, TSIDE_NOT_FINITE, 0, "NaN");
    *number = HUGE_VAL;
    refused_at(w, 0, TSIDE_NOT_FINITE, 0, "infinity");
    *number = -HUGE_VAL;
    refused_at(w, 0, TSIDE_NOT_FINITE, 0, "minus infinity");
    *number = row->low_open ? row->low : nextafter(row->low, -HUGE_VAL);
    refused_at(w, *number, row->low_open ? TSIDE_NOT_ABOVE : TSIDE_BELOW, row->low, "below");
    *number = row->high_open ? row->high : nextafter(row->high, HUGE_VAL);
    refused_at(w, *number, row->high_open ? TSIDE_NOT_BELOW : TSIDE_ABOVE, row->high, "above");
    *number = row->low_open ? nextafter(row->low, HUGE_VAL) : row->low;
    accepted(w, "the least that its bounds allow is refused");
    *number = row->high_open ? nextafter(row->high, -HUGE_VAL) : row->high;
    accepted(w, "the greatest that its bounds allow is refused");
    *number = kept;
    if (given)
        *given = 0;
    w->numbers++;
}

static void try_whole(walker *w, const tside_field *row, char *structure)
{
    int *number = whole_in(structure, row->offset), kept = *number, choice = row->type == TSIDE_CHOICE, least = choice ? 0 : (int)row->low,
        most = choice ? row->choice_count - 1 : (int)row->high;
    *number = least - 1;
    refused_at(w, *number, choice ? TSIDE_NOT_ONE_OF : TSIDE_BELOW, choice ? most : least, "below");
    *number = most + 1;
    refused_at(w, *number, choice ? TSIDE_NOT_ONE_OF : TSIDE_ABOVE, most, "above");
    for (*number = least; *number <= most; ++*number)
        accepted(w, "a whole number within its bounds is refused");
    *number = kept;
}

static void walk(walker *w, tside_kind kind, char *structure);

static void try_list(walker *w, const tside_field *row, char *structure)
{
    int *number = whole_in(structure, row->count_offset);
    *number = row->capacity + 1;
    refused_at(w, *number, TSIDE_ABOVE, row->capacity, "too many");
    *number = -1;
    refused_at(w, *number, TSIDE_BELOW, 0, "a negative count");
    *number = row->capacity;
    for (int k = 0; k < row->capacity; k += row->capacity - 1) { /* the first and the last */
        size_t at = strlen(w->path);
        snprintf(w->path + at, sizeof w->path - at, "[%d]", k);
        walk(w, row->kind, structure + row->offset + (size_t)k * row->stride);
        w->path[at] = '\0';
    }
}

/* Changes choices until a row applies, that on which its own choice hangs first. */
static void let_apply(const tside_field *row, char *structure)
{
    const tside_field *choice = row;
    if (!row->applies_to)
        return;
    while (choice->offset != row->applies_offset)
        choice--;
    let_apply(choice, structure);
    for (int value = 0; !tside_field_applies(row, structure); value++)
        *whole_in(structure, row->applies_offset) = value;
}

/* Tries every row; where choices leave one unused, they are changed meanwhile. */
static void walk(walker *w, tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const size_t mark = strlen(w->path);
    for (int i = 0; i < count; i++) {
        char kept[sizeof(tside_side)];
        memcpy(kept, structure, structures[kind].size);
        let_apply(row + i, structure);
        snprintf(w->path + mark, sizeof w->path - mark, "%s%s", mark ? "." : "", row[i].name);
        w->row = row + i;
        if (row[i].type == TSIDE_NUMBER)
            try_number(w, row + i, structure);
        else if (row[i].type == TSIDE_GROUP)
            walk(w, row[i].kind, structure + row[i].offset);
        else if (row[i].type == TSIDE_LIST)
            try_list(w, row + i, structure);
        else
            try_whole(w, row + i, structure);
        w->path[mark] = '\0';
        memcpy(structure, kept, structures[kind].size);
    }
}

/* How many rows of numbers there are, with the first and the last element of each list. */
static int numbers_in(tside_kind kind)
{
    int count, numbers = 0;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++)
        numbers += row[i].type == TSIDE_NUMBER ? 1 : row[i].type == TSIDE_GROUP ? numbers_in(row[i].kind) : row[i].type == TSIDE_LIST ? 2 * numbers_in(row[i].kind) : 0;
    return numbers;
}

START_TEST(every_bound_is_kept_and_named)
{
    static walker w;
    tside_fault fault;
    memset(&w, 0, sizeof w);
    tside_usual(TSIDE_KIND_SIDE, &w.side);
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS); /* what is required is missing */
    ck_assert_str_eq(fault.field, "length");
    give_required(TSIDE_KIND_SIDE, (char *)&w.side);
    ANSWERS(tside_check(TSIDE_KIND_SIDE, &w.side, &fault));
    walk(&w, TSIDE_KIND_SIDE, (char *)&w.side);
    ck_assert_int_eq(w.numbers, numbers_in(TSIDE_KIND_SIDE));
    ck_assert_int_gt(w.numbers, 150);
    ANSWERS(tside_check(TSIDE_KIND_SIDE, &w.side, &fault));
    ck_assert(tside_check(TSIDE_KIND_COUNT, &w.side, &fault) == TSIDE_NOT_FOUND);
}
END_TEST

START_TEST(the_first_fault_in_field_order_is_named)
{
    static walker w;
    tside_fault fault;
    tside_usual(TSIDE_KIND_SIDE, &w.side);
    give_required(TSIDE_KIND_SIDE, (char *)&w.side);
    w.side.bars[3].play = -1;
    w.side.free_end.guide.margin = NAN;
    w.side.drive_end.keep_outs[5].top = 100;
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "drive_end.keep_outs[5].top");
    ck_assert_int_eq(fault.index, 5);
    w.side.drive_end.keep_out_count = 5; /* beyond the count nothing is looked at */
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "free_end.guide.margin");
    w.side.free_end.guide.margin = 0;
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "bars[3].play");
    ck_assert_int_eq(fault.index, 3);
}
END_TEST

START_TEST(rows_that_do_not_apply_are_not_looked_at)
{
    tside_drive drive;
    tside_fault fault;
    tside_place place;
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    drive.rated_torque = 10;
    drive.stall_torque_given = 1;
    drive.stall_torque = -1;
    ck_assert(tside_check(TSIDE_KIND_DRIVE, &drive, &fault) == TSIDE_OUT_OF_BOUNDS);
    drive.kind = TSIDE_HAND;
    ANSWERS(tside_check(TSIDE_KIND_DRIVE, &drive, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_DRIVE, "stall_torque", &place, &fault));
    ck_assert(!tside_field_applies(place.field, &drive));
    drive.kind = TSIDE_MOTOR;
    ck_assert(tside_field_applies(place.field, &drive));
    for (int kind = -40; kind <= 70; kind++) { /* no choice at all: nothing that depends on it applies */
        drive.kind = (tside_drive_kind)kind;
        ck_assert_int_eq(tside_field_applies(place.field, &drive), kind == TSIDE_MOTOR);
    }
}
END_TEST

/* What hangs on a choice that does not apply does not apply either, whatever that choice is. */
START_TEST(an_unused_choice_leaves_its_fields_unused)
{
    static tside_side side;
    tside_fault fault;
    tside_usual(TSIDE_KIND_SIDE, &side);
    give_required(TSIDE_KIND_SIDE, (char *)&side);
    side.crank.fitted = TSIDE_NO_CRANK;
    side.drive_end.hung = TSIDE_ON_HIP;
    for (int choice = -2; choice <= 4; choice++) {
        side.crank.rule = (tside_effort_rule)choice;
        side.drive_end.placed = (tside_eye_placed)choice;
        side.drive_end.extender.slant = (tside_slant)choice;
        side.crank.effort_limit = side.drive_end.eye_outboard = side.drive_end.extender.angle = 0;
        ANSWERS(tside_check(TSIDE_KIND_SIDE, &side, &fault));
    }
    side.crank.rule = TSIDE_EFFORT_GIVEN;
    side.crank.fitted = TSIDE_CRANK;
    side.crank.ratio = 1;
    ck_assert_int_eq(tside_check(TSIDE_KIND_SIDE, &side, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "crank.effort_limit");
    side.crank.fitted = TSIDE_NO_CRANK;
    side.drive_end.placed = TSIDE_EYE_GIVEN;
    side.drive_end.hung = TSIDE_ON_EXTENDER;
    ck_assert_int_eq(tside_check(TSIDE_KIND_SIDE, &side, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "drive_end.eye_outboard");
}
END_TEST

Suite *fields_suite(void);

Suite *fields_suite(void)
{
    Suite *suite = suite_create("fields");
    TCase *tcase = tcase_create("fields");
    tcase_add_test(tcase, every_kind_has_a_sound_table);
    tcase_add_test(tcase, choices_are_the_enumerators);
    tcase_add_test(tcase, usual_values_fill_every_structure);
    tcase_add_test(tcase, usual_values_follow_choices);
    tcase_add_test(tcase, headers_say_what_the_tables_say);
    tcase_add_test(tcase, every_path_is_found);
    tcase_add_test(tcase, paths_that_lead_nowhere_are_refused);
    tcase_add_test(tcase, every_bound_is_kept_and_named);
    tcase_add_test(tcase, the_first_fault_in_field_order_is_named);
    tcase_add_test(tcase, rows_that_do_not_apply_are_not_looked_at);
    tcase_add_test(tcase, an_unused_choice_leaves_its_fields_unused);
    suite_add_tcase(suite, tcase);
    return suite;
}
