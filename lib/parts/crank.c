/* SPDX-License-Identifier: MIT */
/*
 * What a hand at the crank has to give, and how long it turns. Source: derivation, a lever's and a gear's; whose limits
 * on the force stand beside them.
 */
#include "parts/crank.h"

#include "base/field.h"

static const char *const fitted[] = {"none", "crank"};
static const char *const rules[] = {"MIL_STD_1472", "EN_13561", "given"};
static const double limits[] = {[TSIDE_MIL_STD_1472] = 22, [TSIDE_EN_13561] = 30}; /* N, both from memory */

#define FITTED ONLY(TSIDE_CRANK)

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_crank, fitted, fitted, TSIDE_NO_CRANK, "whether the drive is turned by hand, with a crank told of here")},
    {REQUIRED_FROM(tside_crank, ratio, "1", 0.01, 1000, "turns of the crank for one of the bar"), APPLIES(tside_crank, fitted, FITTED)},
    {NUMBER(tside_crank, efficiency, "1", FROM(0.01), TO(1), 0.5, OURS, "efficiency of its gears"), APPLIES(tside_crank, fitted, FITTED)},
    {NUMBER(tside_crank, arm, "m", FROM(0.01), TO(2), 7 * IN, PRACTICE, "from the crank's axis to its handle"), MEASURED(0.125 * IN), APPLIES(tside_crank, fitted, FITTED), UNUSUAL_OUTSIDE(6 * IN, 9 * IN)},
    {NUMBER(tside_crank, rate, "rad/s", FROM(0.1), TO(100), TSIDE_PI, OURS, "at which it is turned"), APPLIES(tside_crank, fitted, FITTED)},
    {CHOICE(tside_crank, rule, rules, TSIDE_MIL_STD_1472, "whose limit on the force at the handle"), APPLIES(tside_crank, fitted, FITTED)},
    {REQUIRED_FROM(tside_crank, effort_limit, "N", 1, 1000, "the most that the handle may ask"), APPLIES(tside_crank, rule, ONLY(TSIDE_EFFORT_GIVEN))},
};
/* clang-format on */
TABLE_ASKED(tside_i_crank_table, rows);

/* clang-format off */
static const tside_field cranking_rows[] = {
    {RESULT(tside_cranking, effort, "N", "force at the handle, at the worst torque")},
    {RESULT(tside_cranking, limit, "N", "what it may be")},
    {RESULT(tside_cranking, utilisation, "1", "force over what it may be")},
    {RESULT(tside_cranking, turns, "turn", "turns of the crank from shut to open")},
    {RESULT(tside_cranking, time, "s", "from shut to open, at the crank's rate")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_cranking_table, cranking_rows, tside_cranking);

tside_cranking tside_i_crank_effort(const tside_crank *crank, double torque, double drive_turns)
{
    double effort = torque / (crank->ratio * crank->efficiency * crank->arm), turns = drive_turns * crank->ratio;
    double limit = crank->rule == TSIDE_EFFORT_GIVEN ? crank->effort_limit : limits[crank->rule];
    return (tside_cranking){effort, limit, effort / limit, turns, 2 * TSIDE_PI * turns / crank->rate};
}

tside_status tside_crank_effort(const tside_crank *crank, double torque, double drive_turns, tside_cranking *cranking,
                                tside_fault *fault)
{
    tside_cranking made;
    TRY(tside_i_check(&tside_i_crank_table, "crank", crank, fault));
    if (crank->fitted != TSIDE_CRANK)
        return tside_i_bound(fault, "crank.fitted", "1", crank->fitted, TSIDE_NOT_ONE_OF, TSIDE_CRANK);
    TRY(tside_i_argument(fault, "torque", "N m", torque, 0, 0));
    TRY(tside_i_argument(fault, "drive_turns", "turn", drive_turns, 0, 0));
    made = tside_i_crank_effort(crank, torque, drive_turns);
    return ANSWER(&tside_i_cranking_table, made, cranking, fault);
}
