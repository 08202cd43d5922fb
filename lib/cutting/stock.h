/* SPDX-License-Identifier: MIT */
/* The cut plan as a caller inside the library's process may break it off. */
#ifndef TUNNELSIDE_STOCK_INTERNAL_H
#define TUNNELSIDE_STOCK_INTERNAL_H

#include <tunnelside/stock.h>

/*
 * As tside_stock_plan, and every millisecond or so asks go_on, if it is not NULL, whether to go on. Once that returns 0
 * the search ends, and the answer is the plan and the bound found so far, complete and true.
 */
tside_status tside_i_stock_plan(const tside_stock *stock, const tside_cut *cuts, int cut_count, int node_limit,
                                int (*go_on)(void *context), void *context, void *work, size_t work_size,
                                tside_stick *sticks, int *taken, int capacity, int *count, tside_cut_plan *plan,
                                tside_fault *fault);

#endif
