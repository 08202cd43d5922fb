/* SPDX-License-Identifier: MIT */
/* One end wall of a plan. */
#ifndef TUNNELSIDE_I_END
#define TUNNELSIDE_I_END

#include "side/lines.h"

/*
 * Plans an end. lifting: NULL at the free end. stall: N m, of the drive at that end. wind: the wind asked, 0 where none
 * is.
 */
tside_status tside_i_plan_end(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting,
                              const tside_i_hung *hung, double stall, const tside_pressure *wind, tside_end_plan *plan,
                              tside_i_end_loads *loads, tside_fault *fault);
/* What it would come to if the guide hung on the hip. */
void tside_i_hip_instead(const tside_i_setup *setup, tside_which_end which, tside_end_plan *plan);
/* How far tube and guide clear each of the end's keep-outs, once its ground and layout are planned. */
void tside_i_clear_keep_outs(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung,
                             tside_end_plan *plan);

#endif
