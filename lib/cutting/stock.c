/* SPDX-License-Identifier: MIT */
/* Cut plans: what is asked for is checked and searched for, and the sticks found become the answer. */
#include <math.h>
#include <string.h>

#include "base/field.h"
#include "cutting/search.h"
#include "cutting/stock.h"

/* clang-format off */
static const tside_field stock_length_rows[] = {
    {REQUIRED_FROM(tside_stock_length, length, "m", 0.01, 300, "length of a stick as sold")},
};
/* clang-format on */
TABLE(tside_i_stock_length_table, stock_length_rows);

/* clang-format off */
static const tside_field stock_rows[] = {
    {NUMBER(tside_stock, kerf, "m", FROM(0), TO(0.1), 0.003, PRACTICE, "lost in one cut between two pieces")},
    {NUMBER(tside_stock, trim, "m", FROM(0), TO(10), 0, OURS, "lost from each stick before its first piece")},
    {LIST(tside_stock, lengths, length_count, stock_length, tside_stock_length, TSIDE_STOCK_LENGTHS, "lengths that sticks are sold in")},
};
/* clang-format on */
TABLE(tside_i_stock_table, stock_rows);

/* clang-format off */
static const tside_field cut_rows[] = {
    {REQUIRED_FROM(tside_cut, length, "m", 0.01, 300, "length of a piece")},
    {COUNT(tside_cut, count, 0, TSIDE_STOCK_PIECES, 1, OURS, "how many pieces")},
};
/* clang-format on */
TABLE(tside_i_cut_table, cut_rows);

/* clang-format off */
static const tside_field stick_rows[] = {
    {RESULT_COUNT(tside_stick, stock, "which of the stock's lengths, from 0")},
    {RESULT_COUNT(tside_stick, count, "sticks cut so")},
    {RESULT_COUNT(tside_stick, pieces, "pieces in one stick")},
    {RESULT(tside_stick, used, "m", "of one stick: pieces, and the kerfs between them")},
    {RESULT(tside_stick, offcut, "m", "of one stick: left once trim and the last piece are cut off")},
};
/* clang-format on */
TABLE(tside_i_stick_table, stick_rows);

/* clang-format off */
static const tside_field cut_plan_rows[] = {
    {RESULT_COUNT(tside_cut_plan, proven, "1: no plan takes less stock")},
    {RESULT_COUNT(tside_cut_plan, fewest, "1: proven, and no plan that takes as much stock has fewer sticks")},
    {RESULT_COUNT(tside_cut_plan, sticks, "sticks to buy")},
    {RESULT_COUNT(tside_cut_plan, pieces, "pieces to cut")},
    {RESULT_COUNT(tside_cut_plan, nodes, "nodes of the search")},
    {RESULT(tside_cut_plan, stock, "m", "stock bought")},
    {RESULT(tside_cut_plan, lower_bound, "m", "no plan takes less stock than this")},
    {RESULT(tside_cut_plan, cut, "m", "all pieces")},
    {RESULT(tside_cut_plan, offcut, "m", "all offcuts")},
    {RESULT(tside_cut_plan, lost, "m", "lost to kerf and trim")},
};
/* clang-format on */
TABLE(tside_i_cut_plan_table, cut_plan_rows);

/* --- buffers --- */

/* What is made of the caller's work buffer. */
typedef struct workshop {
    tside_i_search search;
    int *left, *rest, *order, *pattern; /* for the writer */
} workshop;

static size_t lay_out(char *base, int cut_count, workshop *shop)
{
    const int m = cut_count ? cut_count : 1;
    tside_i_arena from = {base, 0};
    tside_i_search_parts(&from, &shop->search, m);
    PART(&from, m, &shop->left);
    PART(&from, m, &shop->rest);
    PART(&from, m, &shop->pattern);
    PART(&from, shop->search.fill.most_rows, &shop->order);
    return from.used;
}

size_t tside_stock_work(int cut_count)
{
    workshop shop;
    return cut_count < 0 || cut_count > TSIDE_STOCK_CUTS ? 0 : lay_out(NULL, cut_count, &shop);
}

/* --- checks --- */

/* Puts the fault into an element of a list; other: what it contradicts. */
static tside_status of_element(tside_fault *fault, const char *list, int i, const char *other, tside_status status)
{
    if (status == TSIDE_OK)
        return TSIDE_OK;
    tside_i_within(fault, list, tside_i_within_element(fault, i, status));
    if (fault && status == TSIDE_CONTRADICTS)
        tside_i_path(fault->other, other);
    return status;
}

static tside_status check_lengths(const tside_stock *stock, tside_fault *fault)
{
    if (!stock->length_count)
        return tside_i_bound(fault, "stock.lengths", "1", 0, TSIDE_BELOW, 1);
    for (int k = 0; k < stock->length_count; k++) {
        const double length = stock->lengths[k].length;
        if (length <= stock->trim)
            return of_element(fault, "stock.lengths", k, "stock.trim",
                              tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "length", "", "nothing is left of a stick",
                                                   "m", length, TSIDE_NOT_ABOVE, stock->trim, 0));
    }
    return TSIDE_OK;
}

static tside_status check_cuts(const tside_stock *stock, const tside_cut *cuts, int cut_count, tside_fault *fault)
{
    double stick = 0;
    int pieces = 0;
    for (int k = 0; k < stock->length_count; k++)
        stick = fmax(stick, stock->lengths[k].length);
    for (int i = 0; i < cut_count; i++) {
        tside_status status = tside_i_check_table(&tside_i_cut_table, cuts + i, fault);
        if (status == TSIDE_OK && cuts[i].count > TSIDE_STOCK_PIECES - pieces)
            status = tside_i_refuse_value(fault, TSIDE_OUT_OF_BOUNDS, "count", "",
                                          "more pieces in all than are planned at once", "1", cuts[i].count,
                                          TSIDE_ABOVE, TSIDE_STOCK_PIECES - pieces, 0);
        else if (status == TSIDE_OK && cuts[i].count && !tside_i_problem_fits(stock, stick, cuts[i].length))
            status = tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "length", "", "longer than any stick less its trim",
                                          "m", cuts[i].length, TSIDE_ABOVE, stick - stock->trim,
                                          stick - stock->trim - cuts[i].length);
        TRY(of_element(fault, "cuts", i, "stock", status));
        pieces += cuts[i].count;
    }
    return TSIDE_OK;
}

/* --- the answer --- */

/* What the answer is written from, and to. */
typedef struct writer {
    const tside_stock *stock;
    const tside_cut *cuts;
    int cut_count;
    const tside_i_problem *problem;
    const tside_i_sticks *plan;
    int *left, *rest;    /* pieces of each cut not given out yet; of each type in a stick */
    int *pattern;        /* of the stick */
    int *order;          /* of the plan's rows */
    tside_stick *sticks; /* NULL: they are only counted */
    int *taken;
} writer;

/* How many pieces of a cut the stick takes next, of those that its pattern still has. */
static int take_next(writer *w, int cut)
{
    const int type = w->problem->type[cut];
    int take;
    if (type < 0)
        return 0;
    take = w->left[cut] < w->rest[type] ? w->left[cut] : w->rest[type];
    w->rest[type] -= take;
    return take;
}

/* Writes sticks of one pattern that give the same pieces of the same cuts, at most `most`. Returns how many. */
static int write_stick(writer *w, int row, int entry, int most)
{
    const size_t types = (size_t)w->problem->types;
    const int which = w->problem->which[w->plan->stock[row]];
    tside_stick stick = {.stock = which, .count = most};
    tside_i_sticks_pattern(w->plan, row, w->problem->types, w->pattern);
    memcpy(w->rest, w->pattern, types * sizeof *w->rest);
    for (int j = 0; j < w->cut_count; j++) {
        const int take = take_next(w, j);
        if (take) {
            const int alike = take < w->pattern[w->problem->type[j]] ? 1 : w->left[j] / take;
            stick.count = alike < stick.count ? alike : stick.count;
            stick.pieces += take;
            stick.used += take * w->cuts[j].length;
        }
        if (w->sticks)
            w->taken[(size_t)entry * (size_t)w->cut_count + (size_t)j] = take;
    }
    memcpy(w->rest, w->pattern, types * sizeof *w->rest); /* once more, now that it is known how many are alike */
    for (int j = 0; j < w->cut_count; j++)
        w->left[j] -= take_next(w, j) * stick.count;
    stick.used += w->stock->kerf * (stick.pieces - 1);
    stick.offcut = w->stock->lengths[which].length - w->stock->trim - stick.used - w->stock->kerf;
    if (stick.offcut < FITS)
        stick.offcut = 0;
    if (w->sticks)
        tside_i_hand_over(&tside_i_stick_table, &stick, w->sticks + entry, sizeof stick);
    return stick.count;
}

/* Whether row a comes before row b: the one with more of the longest piece that they differ in; none if they do not. */
static int precedes(const tside_i_sticks *plan, int a, int b)
{
    const tside_i_entry *p = plan->entry + plan->start[a], *p_end = plan->entry + plan->start[a + 1];
    const tside_i_entry *q = plan->entry + plan->start[b], *q_end = plan->entry + plan->start[b + 1];
    for (; p < p_end && q < q_end; p++, q++) {
        if (p->type != q->type)
            return p->type < q->type;
        if (p->count != q->count)
            return p->count > q->count;
    }
    return p < p_end;
}

static void order_rows(writer *w)
{
    for (int i = 0; i < w->plan->rows; i++) {
        int at = i;
        for (; at > 0 && precedes(w->plan, i, w->order[at - 1]); at--)
            w->order[at] = w->order[at - 1];
        w->order[at] = i;
    }
}

/* Goes through the plan's rows in order; returns the entries that they make. */
static int write_sticks(writer *w)
{
    int entries = 0;
    for (int j = 0; j < w->cut_count; j++)
        w->left[j] = w->cuts[j].count;
    for (int i = 0; i < w->plan->rows; i++)
        for (int times = w->plan->times[w->order[i]]; times > 0;)
            times -= write_stick(w, w->order[i], entries++, times);
    return entries;
}

/* Lengths by how many there are of each: over many entries roundings would add up. */
static tside_cut_plan sum_up(const writer *w, int entries)
{
    tside_cut_plan plan = {.sticks = 0};
    int bought[TSIDE_STOCK_LENGTHS] = {0};
    for (int i = 0; i < entries; i++) {
        const tside_stick *stick = w->sticks + i;
        plan.sticks += stick->count;
        plan.pieces += stick->count * stick->pieces;
        plan.offcut += stick->count * stick->offcut;
        bought[stick->stock] += stick->count;
    }
    for (int i = 0; i < w->stock->length_count; i++)
        plan.stock += bought[i] * w->stock->lengths[i].length;
    for (int j = 0; j < w->cut_count; j++)
        plan.cut += w->cuts[j].count * w->cuts[j].length;
    plan.lost = plan.stock - plan.cut - plan.offcut;
    return plan;
}

/* What has been proven of the plan. */
static void judge(const tside_i_search *search, tside_cut_plan *plan)
{
    const tside_i_problem *problem = &search->problem;
    const int64_t cost = search->fill.best.cost, bound = search->bound, level = problem->level;
    plan->proven = bound / level >= cost / level;
    plan->fewest = bound >= cost && (level > 1 || problem->stocks <= 1);
    plan->lower_bound = plan->proven
                            ? plan->stock
                            : fmax(0, (double)(bound / level) * problem->measure - plan->sticks * problem->slack);
}

tside_status tside_i_stock_plan(const tside_stock *stock, const tside_cut *cuts, int cut_count, int node_limit,
                                int (*go_on)(void *context), void *context, void *work, size_t work_size,
                                tside_stick *sticks, int *taken, int capacity, int *count, tside_cut_plan *plan,
                                tside_fault *fault)
{
    workshop shop;
    tside_i_search *search = &shop.search;
    tside_cut_plan made;
    writer w;
    int entries;
    TRY(tside_i_check(&tside_i_stock_table, "stock", stock, fault));
    TRY(check_lengths(stock, fault));
    TRY(tside_i_whole(fault, "cut_count", cut_count, 0, TSIDE_STOCK_CUTS));
    TRY(check_cuts(stock, cuts, cut_count, fault));
    TRY(tside_i_argument(fault, "node_limit", "1", node_limit, 0, 0));
    TRY(tside_i_argument(fault, "capacity", "1", capacity, 0, 0));
    if (work_size < tside_stock_work(cut_count))
        REFUSE(fault, TSIDE_TOO_SMALL, "work_size", "", "the work buffer has too few bytes", "1", (double)work_size,
               TSIDE_BELOW, (double)tside_stock_work(cut_count), 0);
    lay_out(work, cut_count, &shop);
    tside_i_problem_make(&search->problem, stock, cuts, cut_count);
    tside_i_search_run(search, node_limit, go_on, context);
    w = (writer){.stock = stock,
                 .cuts = cuts,
                 .cut_count = cut_count,
                 .problem = &search->problem,
                 .plan = &search->fill.best,
                 .left = shop.left,
                 .rest = shop.rest,
                 .pattern = shop.pattern,
                 .order = shop.order,
                 .taken = taken};
    order_rows(&w);
    entries = write_sticks(&w);
    if (entries > capacity) {
        *count = entries;
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "there are more sticks unlike each other", "1", capacity,
               TSIDE_BELOW, entries, 0);
    }
    w.sticks = sticks;
    write_sticks(&w);
    made = sum_up(&w, entries);
    made.nodes = search->nodes < node_limit ? search->nodes : node_limit; /* the last step may have been a long one */
    judge(search, &made);
    TRY(ANSWER(&tside_i_cut_plan_table, made, plan, fault));
    *count = entries;
    return TSIDE_OK;
}

tside_status tside_stock_plan(const tside_stock *stock, const tside_cut *cuts, int cut_count, int node_limit,
                              void *work, size_t work_size, tside_stick *sticks, int *taken, int capacity, int *count,
                              tside_cut_plan *plan, tside_fault *fault)
{
    return tside_i_stock_plan(stock, cuts, cut_count, node_limit, NULL, NULL, work, work_size, sticks, taken, capacity,
                              count, plan, fault);
}
