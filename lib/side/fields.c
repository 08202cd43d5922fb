/* SPDX-License-Identifier: MIT */
/* The directory of field tables: each table is written in its topic's file, and found here. */
#include "base/internal.h"

static const tside_table *const directory[TSIDE_KIND_COUNT] = {
    [TSIDE_KIND_MATERIAL] = &tside_i_material_table,
    [TSIDE_KIND_ROUND] = &tside_i_round_table,
    [TSIDE_KIND_SQUARE] = &tside_i_square_table,
    [TSIDE_KIND_FRAME] = &tside_i_frame_table,
    [TSIDE_KIND_CURTAIN] = &tside_i_curtain_table,
    [TSIDE_KIND_ROLL] = &tside_i_roll_table,
    [TSIDE_KIND_STOPS] = &tside_i_stops_table,
    [TSIDE_KIND_DRIVE] = &tside_i_drive_table,
    [TSIDE_KIND_GUIDE] = &tside_i_guide_table,
    [TSIDE_KIND_EXTENDER] = &tside_i_extender_table,
    [TSIDE_KIND_LOAD] = &tside_i_load_table,
    [TSIDE_KIND_BAR] = &tside_i_bar_table,
    [TSIDE_KIND_END] = &tside_i_end_table,
    [TSIDE_KIND_COLLAR] = &tside_i_collar_table,
    [TSIDE_KIND_LIMITS] = &tside_i_limits_table,
    [TSIDE_KIND_KEEP_OUT] = &tside_i_keep_out_table,
    [TSIDE_KIND_STOCK_LENGTH] = &tside_i_stock_length_table,
    [TSIDE_KIND_STOCK] = &tside_i_stock_table,
    [TSIDE_KIND_CUT] = &tside_i_cut_table,
    [TSIDE_KIND_SIDE] = &tside_i_side_table,
    [TSIDE_KIND_BOLT] = &tside_i_bolt_table,
    [TSIDE_KIND_BOLT_PART] = &tside_i_bolt_part_table,
    [TSIDE_KIND_CABLE] = &tside_i_cable_table,
    [TSIDE_KIND_CRANK] = &tside_i_crank_table,
    [TSIDE_KIND_RUN] = &tside_i_run_table,
    [TSIDE_KIND_DRIVE_CHOICE] = &tside_i_drive_choice_table,
    [TSIDE_KIND_CRANKING] = &tside_i_cranking_table,
    [TSIDE_KIND_SECTION] = &tside_i_section_table,
    [TSIDE_KIND_POSITION] = &tside_i_position_table,
    [TSIDE_KIND_SWEEP] = &tside_i_sweep_table,
    [TSIDE_KIND_LAYOUT] = &tside_i_layout_table,
    [TSIDE_KIND_TORQUE] = &tside_i_torque_table,
    [TSIDE_KIND_STRENGTH_LINE] = &tside_i_strength_line_table,
    [TSIDE_KIND_FINDING] = &tside_i_finding_table,
    [TSIDE_KIND_TURN] = &tside_i_turn_table,
    [TSIDE_KIND_BAR_STICK] = &tside_i_bar_stick_table,
    [TSIDE_KIND_FITTINGS] = &tside_i_fittings_table,
    [TSIDE_KIND_ITEM] = &tside_i_item_table,
    [TSIDE_KIND_END_PLAN] = &tside_i_end_plan_table,
    [TSIDE_KIND_PLAN] = &tside_i_plan_table,
    [TSIDE_KIND_BOLT_PLAN] = &tside_i_bolt_plan_table,
    [TSIDE_KIND_BEARING] = &tside_i_bearing_table,
    [TSIDE_KIND_STICK] = &tside_i_stick_table,
    [TSIDE_KIND_CUT_PLAN] = &tside_i_cut_plan_table,
};

const tside_field *tside_fields(tside_kind kind, int *count)
{
    const tside_table *table = (int)kind >= 0 && kind < TSIDE_KIND_COUNT ? directory[kind] : NULL;
    *count = table ? table->count : 0;
    return table ? table->rows : NULL;
}
