/* SPDX-License-Identifier: MIT */
/* Plans: of patterns given, and of sticks filled greedily. */
#include <string.h>

#include "cutting/cutting.h"

enum { FILL_STEPS = 3000 };

/* Takes so many sticks of a pattern into the plan, without what is over, from the shortest stock that holds the rest. 0 if the plan is full. */
int tside_i_plan_append(tside_i_search *s, const int *pattern, int times)
{
    const int m = tside_i_types(s);
    tside_i_sticks *plan = &s->trial;
    while (times > 0) {
        int alike = times, stock = 0;
        int64_t size = 0;
        short *row = plan->pattern + (size_t)plan->rows * (size_t)m;
        if (plan->rows == ROWS * m + ROWS_MORE)
            return 0;
        for (int i = 0; i < m; i++) {
            row[i] = (short)(pattern[i] < s->rest[i] ? pattern[i] : s->rest[i]);
            size += row[i] * s->cutting.size[i];
            if (row[i] && s->rest[i] / row[i] < alike)
                alike = s->rest[i] / row[i];
        }
        if (!size)
            return 1;
        while (s->cutting.room[stock] < size)
            stock++;
        for (int i = 0; i < m; i++)
            s->rest[i] -= alike * row[i];
        plan->stock[plan->rows] = stock;
        plan->times[plan->rows++] = alike;
        plan->cost += alike * s->cutting.cost[stock];
        times -= alike;
    }
    return 1;
}

void tside_i_plan_begin(tside_i_search *s)
{
    s->trial.rows = 0;
    s->trial.cost = 0;
    memcpy(s->rest, s->cutting.demand, (size_t)tside_i_types(s) * sizeof *s->rest);
}

/* The fullest pattern with the largest piece of the rest, of the stock that costs least for what it holds; found receives it. */
static void fill_stick(tside_i_search *s, int first)
{
    const int m = tside_i_types(s);
    int64_t best_size = 0, best_cost = 1;
    for (int k = 0; k < s->cutting.stocks; k++) {
        const int64_t room = s->cutting.room[k] - s->cutting.size[first];
        tside_i_walk walk;
        int64_t size;
        if (room < 0)
            continue;
        memcpy(s->most, s->rest, (size_t)m * sizeof *s->most);
        s->most[first]--;
        walk = tside_i_walk_of(s, s->cutting.size, s->most, room, -1, FILL_STEPS);
        while (walk.floor < room && tside_i_walk_next(&walk)) {
            walk.floor = walk.sum;
            size = walk.sum + s->cutting.size[first];
            if ((double)size * (double)best_cost > (double)best_size * (double)s->cutting.cost[k]) {
                best_size = size;
                best_cost = s->cutting.cost[k];
                memcpy(s->found, s->count, (size_t)m * sizeof *s->found);
                s->found[first]++;
            }
        }
    }
}

/* Makes a plan of what has been taken so far and of greedily filled sticks for the rest; keeps it if it is good enough. */
void tside_i_plan_finish(tside_i_search *s)
{
    tside_i_sticks kept = s->best;
    for (int i = 0; i < tside_i_types(s);) {
        int times = s->rest[i];
        if (!times) {
            i++;
            continue;
        }
        if (s->trial.cost > s->cut)
            return;
        fill_stick(s, i);
        for (int k = i; k < tside_i_types(s); k++)
            if (s->found[k] && s->rest[k] / s->found[k] < times)
                times = s->rest[k] / s->found[k];
        if (!tside_i_plan_append(s, s->found, times))
            return;
    }
    if (s->trial.cost > s->cut)
        return;
    s->best = s->trial;
    s->trial = kept;
    s->cut = s->best.cost - 1;
}
