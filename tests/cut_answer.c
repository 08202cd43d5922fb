/* SPDX-License-Identifier: MIT */
/* Cut plans asked for, and checked by sums alone. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cuts.h"
#include "threads.h"

cut_answer cut_order_plan(const cut_order *order, int node_limit)
{
    enum { CAPACITY = 4000 };
    OWN void *work;
    OWN tside_stick *sticks;
    OWN int *taken;
    cut_answer answer;
    if (!work) {
        work = malloc(tside_stock_work(TSIDE_STOCK_CUTS));
        sticks = malloc(CAPACITY * sizeof *sticks);
        taken = malloc(CAPACITY * TSIDE_STOCK_CUTS * sizeof *taken);
    }
    memset(&answer, 0, sizeof answer);
    answer.status = tside_stock_plan(&order->stock, order->cuts, order->cut_count, node_limit, work,
                                     tside_stock_work(order->cut_count), sticks, taken, CAPACITY, &answer.count,
                                     &answer.plan, &answer.fault);
    answer.sticks = sticks;
    answer.taken = taken;
    return answer;
}

static const char *stick_wrong(const cut_order *order, const tside_stick *stick, const int *taken)
{
    double sum = 0, length;
    int pieces = 0;
    if (stick->stock < 0 || stick->stock >= order->stock.length_count || stick->count < 1)
        return "a stick of no stock";
    length = order->stock.lengths[stick->stock].length;
    for (int j = 0; j < order->cut_count; j++) {
        if (taken[j] < 0)
            return "fewer than no pieces";
        pieces += taken[j];
        sum += taken[j] * order->cuts[j].length;
    }
    if (!pieces || pieces != stick->pieces)
        return "pieces of a stick";
    sum += (pieces - 1) * order->stock.kerf;
    if (!(sum <= length - order->stock.trim + 1e-9 + 1e-12)) /* 1e-12: rounding of this sum */
        return "a stick is too full";
    if (!(fabs(sum - stick->used) < 1e-11) ||
        !(fabs(fmax(0, length - order->stock.trim - sum - order->stock.kerf) - stick->offcut) < 2e-9))
        return "what a stick uses and leaves";
    return NULL;
}

/* Whether a stick comes before another as it should: of the longest piece that they differ in it has more. */
static int comes_first(const cut_order *order, const int *taken, const int *next)
{
    double longest = 0;
    int more = 0;
    for (int j = 0; j < order->cut_count; j++) {
        const double length = order->cuts[j].length;
        int differ = 0;
        if (taken[j] == next[j] || length <= longest)
            continue;
        for (int k = 0; k < order->cut_count; k++) /* of one length there may be several cuts */
            if (fabs(order->cuts[k].length - length) < 1e-12)
                differ += taken[k] - next[k];
        if (differ) {
            longest = length;
            more = differ > 0;
        }
    }
    return longest == 0 || more;
}

const char *cut_answer_wrong(const cut_order *order, const cut_answer *answer)
{
    const tside_cut_plan *plan = &answer->plan;
    double stock = 0, cut = 0, offcut = 0;
    int sticks = 0, pieces = 0;
    if (answer->status != TSIDE_OK)
        return "refused";
    for (int i = 0; i < answer->count; i++) {
        const tside_stick *stick = answer->sticks + i;
        const char *wrong = stick_wrong(order, stick, answer->taken + (size_t)i * (size_t)order->cut_count);
        if (wrong)
            return wrong;
        if (i + 1 < answer->count && !comes_first(order, answer->taken + (size_t)i * (size_t)order->cut_count,
                                                  answer->taken + (size_t)(i + 1) * (size_t)order->cut_count))
            return "longer pieces do not come first";
        stock += stick->count * order->stock.lengths[stick->stock].length;
        offcut += stick->count * stick->offcut;
        sticks += stick->count;
        pieces += stick->count * stick->pieces;
    }
    for (int j = 0; j < order->cut_count; j++) {
        int given = 0;
        for (int i = 0; i < answer->count; i++)
            given += answer->sticks[i].count * answer->taken[(size_t)i * (size_t)order->cut_count + (size_t)j];
        if (given != order->cuts[j].count)
            return "a cut has too many pieces, or too few";
        cut += given * order->cuts[j].length;
    }
    if (!(fabs(plan->stock - stock) < 1e-9 * (1 + stock)) || !(fabs(plan->cut - cut) < 1e-9 * (1 + cut)) ||
        !(fabs(plan->offcut - offcut) < 1e-9 * (1 + stock)) || plan->sticks != sticks || plan->pieces != pieces ||
        !(fabs(plan->stock - plan->cut - plan->offcut - plan->lost) < 1e-9 * (1 + stock)))
        return "the sums";
    if (!(plan->lower_bound <= plan->stock) || !(plan->lower_bound >= 0) ||
        (plan->proven ? plan->lower_bound < plan->stock : plan->lower_bound >= plan->stock) ||
        (plan->fewest && !plan->proven))
        return "the bound";
    return NULL;
}
