/* SPDX-License-Identifier: MIT */
/* Where a bar's joints are, and the sticks between them. */
#include "side/joints.h"

#include "base/field.h"

tside_status tside_i_bar_make(const tside_bar *bar, const tside_i_bar_lengths *l, tside_i_made *made,
                              tside_fault *fault)
{
    double B = tside_i_bar_length(l), S = bar->stock, w = bar->swage;
    double least_last = fmax(w + l->beyond_free, TSIDE_I_SHORTEST_CUT),
           least = fmax(l->beyond_drive + bar->splice_near, w) + least_last;
    *made = (tside_i_made){1, 0, B};
    if (B <= S + FITS)
        return TSIDE_OK;
    if (S < least - FITS)
        REFUSE(fault, TSIDE_CONTRADICTS, "stock", "splice_near",
               "too short to keep every joint from the drive and within the curtain", "m", S, TSIDE_BELOW, least, 0);
    made->sticks = (int)fmax(ceil((B - w - FITS) / (S - w)), 2); /* one is too short, if only by last digits */
    made->before = S;
    made->last = B - (made->sticks - 1) * (S - w);
    if (made->last < least_last) {
        made->before -= least_last - made->last;
        made->last = least_last;
    }
    return TSIDE_OK;
}

tside_status tside_i_bar_joints(const tside_bar *bar, const tside_i_bar_lengths *l, int *splices, double *near,
                                tside_fault *fault)
{
    tside_i_made m;
    if (bar->joints == TSIDE_JOINTS_GIVEN) {
        *splices = bar->splices;
        *near = bar->splices > 0 ? bar->splice_near : 0;
        return TSIDE_OK;
    }
    TRY(tside_i_bar_make(bar, l, &m, fault));
    *splices = m.sticks - 1;
    *near = m.sticks > 1 ? (m.sticks > 2 ? bar->stock : m.before) - bar->swage - l->beyond_drive : 0;
    return TSIDE_OK;
}

tside_status tside_bar_sticks(const tside_bar *bar, double curtain, double beyond_drive, double beyond_free,
                              tside_bar_stick *sticks, int capacity, int *count, tside_fault *fault)
{
    const tside_i_bar_lengths l = {beyond_drive, curtain, beyond_free};
    const double whole = tside_i_bar_length(&l), step = bar->stock - bar->swage;
    tside_i_made m = {1, 0, whole};
    TRY(tside_i_check(&tside_i_bar_table, "bar", bar, fault));
    TRY(tside_i_argument(fault, "curtain", "m", curtain, 0, 0));
    if (curtain > 1000)
        return tside_i_bound(fault, "curtain", "m", curtain, TSIDE_ABOVE, 1000);
    TRY(tside_i_argument(fault, "beyond_drive", "m", beyond_drive, 0, 0));
    TRY(tside_i_argument(fault, "beyond_free", "m", beyond_free, 0, 0));
    if (bar->joints == TSIDE_JOINTS_FROM_STOCK)
        TRY(tside_i_settle(&tside_i_bar_table, "bar",
                           tside_i_within(fault, "bar", tside_i_bar_make(bar, &l, &m, fault)), fault));
    else if (bar->splices > 0)
        REFUSE(fault, TSIDE_CONTRADICTS, "bar.splices", "bar.joints",
               "where joints are given, only the nearest one's place is known", "1", bar->splices, TSIDE_ABOVE, 0, 0);
    *count = m.sticks;
    if (m.sticks > capacity)
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "the bar has more sticks", "1", capacity, TSIDE_BELOW, m.sticks,
               0);
    for (int i = 0; i < m.sticks - 1; i++) {
        const double length = i == m.sticks - 2 ? m.before : bar->stock;
        sticks[i] = (tside_bar_stick){length, i * step, i * step + length};
    }
    sticks[m.sticks - 1] = (tside_bar_stick){m.last, whole - m.last, whole};
    return TSIDE_OK;
}
