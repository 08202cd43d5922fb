/* SPDX-License-Identifier: MIT */
/* Each kind's structure, and what is in one. */
#ifndef TUNNELSIDE_FIELDS_H
#define TUNNELSIDE_FIELDS_H

#include <check.h>

#include <tunnelside.h>

/* Each kind's structure. */
static const struct {
    const char *name;
    size_t size;
} structures[] = {
#define STRUCTURE(kind, name) [TSIDE_KIND_##kind] = {#name, sizeof(name)}
    STRUCTURE(MATERIAL, tside_material),
    STRUCTURE(ROUND, tside_round),
    STRUCTURE(SQUARE, tside_square),
    STRUCTURE(FRAME, tside_frame),
    STRUCTURE(CURTAIN, tside_curtain),
    STRUCTURE(ROLL, tside_roll),
    STRUCTURE(STOPS, tside_stops),
    STRUCTURE(DRIVE, tside_drive),
    STRUCTURE(GUIDE, tside_guide),
    STRUCTURE(EXTENDER, tside_extender),
    STRUCTURE(LOAD, tside_load),
    STRUCTURE(BAR, tside_bar),
    STRUCTURE(END, tside_end),
    STRUCTURE(COLLAR, tside_collar),
    STRUCTURE(LIMITS, tside_limits),
    STRUCTURE(KEEP_OUT, tside_keep_out),
    STRUCTURE(STOCK_LENGTH, tside_stock_length),
    STRUCTURE(STOCK, tside_stock),
    STRUCTURE(CUT, tside_cut),
    STRUCTURE(SIDE, tside_side),
    STRUCTURE(SECTION, tside_section),
    STRUCTURE(POSITION, tside_position),
    STRUCTURE(ALONG, tside_along),
    STRUCTURE(STAND, tside_stand),
    STRUCTURE(SKEW, tside_skew),
    STRUCTURE(FOOTING, tside_footing),
    STRUCTURE(FIXED, tside_fixed),
    STRUCTURE(FIXED_LOAD, tside_fixed_load),
    STRUCTURE(SWEEP, tside_sweep),
    STRUCTURE(LAYOUT, tside_layout),
    STRUCTURE(TORQUE, tside_torque),
    STRUCTURE(EXTENDER_LOAD, tside_extender_load),
    STRUCTURE(STRENGTH_LINE, tside_strength_line),
    STRUCTURE(FINDING, tside_finding),
    STRUCTURE(TURN, tside_turn),
    STRUCTURE(BAR_STICK, tside_bar_stick),
    STRUCTURE(FITTINGS, tside_fittings),
    STRUCTURE(ITEM, tside_item),
    STRUCTURE(CABLE, tside_cable),
    STRUCTURE(CRANK, tside_crank),
    STRUCTURE(RUN, tside_run),
    STRUCTURE(CRANKING, tside_cranking),
    STRUCTURE(DRIVE_CHOICE, tside_drive_choice),
    STRUCTURE(END_PLAN, tside_end_plan),
    STRUCTURE(PLAN, tside_plan),
    STRUCTURE(BOLT, tside_bolt),
    STRUCTURE(BOLT_PART, tside_bolt_part),
    STRUCTURE(BOLT_PLAN, tside_bolt_plan),
    STRUCTURE(BEARING, tside_bearing),
    STRUCTURE(STICK, tside_stick),
    STRUCTURE(CUT_PLAN, tside_cut_plan),
#undef STRUCTURE
};
enum { STRUCTURES = sizeof structures / sizeof *structures };

static inline double *number_in(void *structure, size_t offset)
{
    return (double *)(void *)((char *)structure + offset);
}

static inline int *whole_in(void *structure, size_t offset)
{
    return (int *)(void *)((char *)structure + offset);
}

#endif
