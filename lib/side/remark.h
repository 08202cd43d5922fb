/* SPDX-License-Identifier: MIT */
/* Putting findings on a plan's list. */
#ifndef TUNNELSIDE_I_REMARK
#define TUNNELSIDE_I_REMARK

#include <tunnelside/plan.h>

void tside_i_remark(tside_plan *plan, tside_finding_code code, tside_which_end end, int index, double value,
                    double bound);
/* What is found of the whole side, and told at its drive's end. */
void tside_i_remark_whole(tside_plan *plan, tside_finding_code code, double value, double bound);
/* The same where a value passes its bound, if there is one. */
void tside_i_hold(tside_plan *plan, tside_finding_code code, double value, int bound_given, double bound);

#endif
