/* SPDX-License-Identifier: MIT */
/* Cut plans: what is asked for in metres becomes a search in whole numbers, and its sticks become the answer. */
#include <string.h>

#include "cutting/cutting.h"

static const tside_field stock_length_rows[] = {
    {REQUIRED_FROM(tside_stock_length, length, "m", 0.01, 300, "length of a stick as sold")},
};
TABLE(tside_i_stock_length_table, stock_length_rows);

static const tside_field stock_rows[] = {
    {NUMBER(tside_stock, kerf, "m", FROM(0), TO(0.1), 0.003, PRACTICE, "lost in one cut between two pieces")},
    {NUMBER(tside_stock, trim, "m", FROM(0), TO(10), 0, OURS, "lost from each stick before its first piece")},
    {LIST(tside_stock, lengths, length_count, stock_length, tside_stock_length, TSIDE_STOCK_LENGTHS, "lengths that sticks are sold in")},
};
TABLE(tside_i_stock_table, stock_rows);

static const tside_field cut_rows[] = {
    {REQUIRED_FROM(tside_cut, length, "m", 0.01, 300, "length of a piece")},
    {COUNT(tside_cut, count, 0, TSIDE_STOCK_PIECES, 1, OURS, "how many pieces")},
};
TABLE(tside_i_cut_table, cut_rows);

static const tside_field stick_rows[] = {
    {RESULT_COUNT(tside_stick, stock, "which of the stock's lengths, from 0")},
    {RESULT_COUNT(tside_stick, count, "sticks cut so")},
    {RESULT_COUNT(tside_stick, pieces, "pieces in one stick")},
    {RESULT(tside_stick, used, "m", "of one stick: pieces, and the kerfs between them")},
    {RESULT(tside_stick, offcut, "m", "of one stick: left once trim and the last piece are cut off")},
};
TABLE(tside_i_stick_table, stick_rows);

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
TABLE(tside_i_cut_plan_table, cut_plan_rows);

/* --- whole numbers --- */

static const double nanometre = 1e-9;

static int64_t whole(double metres, double unit)
{
    return (int64_t)floor(metres / unit + 0.5);
}

static int is_whole(double metres)
{
    const double value = metres / nanometre;
    return fabs(value - floor(value + 0.5)) < 1e-3;
}

/* A nanometre, where every length is a whole number of them, as inches in 64ths and millimetres are; else a thousandth of it. */
static double unit_of(const tside_stock *stock, const tside_cut *cuts, int cut_count)
{
    int all = is_whole(stock->kerf) && is_whole(stock->trim);
    for (int k = 0; k < stock->length_count; k++)
        all = all && is_whole(stock->lengths[k].length);
    for (int i = 0; i < cut_count; i++)
        all = all && is_whole(cuts[i].length);
    return all ? nanometre : nanometre / 1024;
}

/* Types of pieces, the longest first, equal lengths together; type: receives each cut's, or -1 where none is asked for. */
static void make_types(tside_i_cutting *cutting, const tside_stock *stock, const tside_cut *cuts, int cut_count, double unit, int *type)
{
    cutting->types = 0;
    for (int i = 0; i < cut_count; i++) {
        const int64_t size = whole(cuts[i].length, unit) + whole(stock->kerf, unit);
        int at = 0;
        type[i] = -1;
        if (!cuts[i].count)
            continue;
        while (at < cutting->types && cutting->size[at] > size)
            at++;
        if (at == cutting->types || cutting->size[at] != size) {
            for (int k = cutting->types++; k > at; k--) {
                cutting->size[k] = cutting->size[k - 1];
                cutting->demand[k] = cutting->demand[k - 1];
            }
            for (int k = 0; k < i; k++)
                type[k] += type[k] >= at;
            cutting->size[at] = size;
            cutting->demand[at] = 0;
        }
        cutting->demand[at] += cuts[i].count;
        type[i] = at;
    }
}

/* Stocks, the shortest first; of those that hold the same only the shortest, and none that holds no piece. which: receives the caller's number of each. */
static void make_stocks(tside_i_cutting *cutting, const tside_stock *stock, double unit, int *which)
{
    int order[TSIDE_STOCK_LENGTHS];
    int64_t part = 0;
    for (int k = 0; k < stock->length_count; k++) {
        int at = k;
        for (; at > 0 && stock->lengths[order[at - 1]].length > stock->lengths[k].length; at--)
            order[at] = order[at - 1];
        order[at] = k;
    }
    for (int j = 0; j < cutting->types; j++)
        part = tside_i_common(part, cutting->size[j]);
    cutting->stocks = 0;
    for (int k = 0; k < stock->length_count; k++) {
        const double length = stock->lengths[order[k]].length;
        const int64_t room = (whole(length, unit) - whole(stock->trim, unit) + whole(stock->kerf, unit) + whole(nanometre, unit)) / part;
        if (room < cutting->size[cutting->types - 1] / part || (cutting->stocks && room == cutting->room[cutting->stocks - 1]))
            continue;
        which[cutting->stocks] = order[k];
        cutting->room[cutting->stocks] = room;
        cutting->cost[cutting->stocks++] = whole(length, nanometre);
    }
    for (int j = 0; j < cutting->types; j++)
        cutting->size[j] /= part;
}

/* Costs become lengths over their common measure, which is returned, in nanometres. */
static int64_t share_costs(tside_i_cutting *cutting)
{
    int64_t measure = 0;
    for (int k = 0; k < cutting->stocks; k++)
        measure = tside_i_common(cutting->cost[k], measure);
    for (int k = 0; k < cutting->stocks; k++)
        cutting->cost[k] /= measure;
    return measure;
}

/* --- buffers --- */

/* Gives out parts of the caller's buffer; without one it counts only. */
typedef struct arena {
    char *base;
    size_t used;
} arena;

static void *part_of(arena *from, size_t count, size_t size)
{
    void *part = from->base ? from->base + from->used : NULL;
    from->used += (count * size + 15) / 16 * 16;
    return part;
}

#define PART(from, count, pointer) (*(pointer) = part_of(from, (size_t)(count), sizeof **(pointer)))

static void plan_buffers(arena *from, tside_i_sticks *plan, size_t types)
{
    const size_t rows = ROWS * types + ROWS_MORE;
    PART(from, rows, &plan->stock);
    PART(from, rows, &plan->times);
    PART(from, rows * types, &plan->pattern);
}

static size_t buffers(char *base, int cut_count, tside_i_search *s, int **type, int **left)
{
    const size_t m = cut_count ? (size_t)cut_count : 1, levels = LEVELS * m + LEVELS_MORE, rows = m + TSIDE_STOCK_LENGTHS;
    tside_i_relaxation *r = &s->relaxation;
    arena from = {base, 0};
    PART(&from, m, type);
    PART(&from, m, left);
    PART(&from, m, &s->cutting.size);
    PART(&from, m, &s->cutting.demand);
    PART(&from, COLUMNS + 1, &r->pool.start);
    PART(&from, COLUMNS * ENTRIES, &r->pool.entry);
    PART(&from, COLUMNS, &r->pool.stock);
    PART(&from, COLUMNS, &r->pool.banned);
    PART(&from, 2 * rows, &r->basis);
    PART(&from, rows * rows, &r->inverse);
    PART(&from, rows, &r->x);
    PART(&from, rows, &r->price);
    PART(&from, rows, &r->alpha);
    PART(&from, rows, &r->demand);
    PART(&from, (m + 1) * (GRID + 1), &s->table);
    PART(&from, m, &s->price);
    PART(&from, rows, &s->node_price);
    PART(&from, rows, &s->x);
    plan_buffers(&from, &s->best, m);
    plan_buffers(&from, &s->trial, m);
    PART(&from, m, &s->rest);
    PART(&from, m, &s->most);
    PART(&from, m, &s->count);
    PART(&from, m, &s->found);
    PART(&from, levels * rows, &s->bases);
    PART(&from, levels, &s->column);
    PART(&from, levels, &s->value);
    PART(&from, levels, &s->whole);
    PART(&from, levels, &s->low);
    PART(&from, levels, &s->high);
    return from.used;
}

size_t tside_stock_work(int cut_count)
{
    tside_i_search search;
    int *type, *left;
    return cut_count < 0 || cut_count > TSIDE_STOCK_CUTS ? 0 : buffers(NULL, cut_count, &search, &type, &left);
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
        return tside_i_bound(fault, "stock.length_count", "1", 0, TSIDE_BELOW, 1);
    for (int k = 0; k < stock->length_count; k++) {
        const double length = stock->lengths[k].length;
        if (length <= stock->trim)
            return of_element(fault, "stock.lengths", k, "stock.trim",
                              tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "length", "", "nothing is left of a stick", "m", length, TSIDE_NOT_ABOVE, stock->trim, 0));
    }
    return TSIDE_OK;
}

static tside_status check_cuts(const tside_stock *stock, const tside_cut *cuts, int cut_count, tside_fault *fault)
{
    double longest = 0;
    int pieces = 0;
    for (int k = 0; k < stock->length_count; k++)
        if (stock->lengths[k].length - stock->trim > longest)
            longest = stock->lengths[k].length - stock->trim;
    for (int i = 0; i < cut_count; i++) {
        tside_status status = tside_i_check_table(&tside_i_cut_table, cuts + i, fault);
        if (status == TSIDE_OK && cuts[i].count > TSIDE_STOCK_PIECES - pieces)
            status = tside_i_refuse_value(fault, TSIDE_OUT_OF_BOUNDS, "count", "", "more pieces in all than are planned at once", "1", cuts[i].count, TSIDE_ABOVE,
                                          TSIDE_STOCK_PIECES - pieces, 0);
        else if (status == TSIDE_OK && cuts[i].count && cuts[i].length > longest + nanometre)
            status = tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "length", "", "longer than any stick less its trim", "m", cuts[i].length, TSIDE_ABOVE, longest,
                                          longest - cuts[i].length);
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
    const int *type, *which; /* of each cut; the caller's number of each stock */
    int *left, *rest;        /* pieces of each cut not given out yet; of each type in a stick */
    const tside_i_cutting *cutting;
    const tside_i_sticks *plan;
    tside_stick *sticks; /* NULL: they are only counted */
    int *taken;
} writer;

/* Writes sticks of one pattern that give the same pieces of the same cuts, at most `most`. Returns how many. */
static int write_stick(writer *w, int row, int entry, int most)
{
    const int types = w->cutting->types;
    const short *pattern = w->plan->pattern + (size_t)row * (size_t)types;
    const double length = w->stock->lengths[w->which[w->plan->stock[row]]].length;
    tside_stick stick = {w->which[w->plan->stock[row]], most, 0, 0, 0};
    for (int t = 0; t < types; t++)
        w->rest[t] = pattern[t];
    for (int j = 0; j < w->cut_count; j++) {
        const int t = w->type[j], take = t < 0 ? 0 : w->left[j] < w->rest[t] ? w->left[j] : w->rest[t];
        if (take) {
            const int alike = take < pattern[t] ? 1 : w->left[j] / take;
            stick.count = alike < stick.count ? alike : stick.count;
            stick.pieces += take;
            stick.used += take * w->cuts[j].length;
            w->rest[t] -= take;
        }
        if (w->sticks)
            w->taken[(size_t)entry * (size_t)w->cut_count + (size_t)j] = take;
    }
    /* once more, now that it is known how many are alike */
    for (int t = 0; t < types; t++)
        w->rest[t] = pattern[t];
    for (int j = 0; j < w->cut_count; j++) {
        const int t = w->type[j], take = t < 0 ? 0 : w->left[j] < w->rest[t] ? w->left[j] : w->rest[t];
        if (take) {
            w->rest[t] -= take;
            w->left[j] -= take * stick.count;
        }
    }
    stick.used += w->stock->kerf * (stick.pieces - 1);
    stick.offcut = length - w->stock->trim - stick.used - w->stock->kerf;
    if (stick.offcut < nanometre)
        stick.offcut = 0;
    if (w->sticks)
        w->sticks[entry] = stick;
    return stick.count;
}

/* Whether row a comes before row b: the one with more of the longest piece that they differ in. */
static int precedes(const tside_i_sticks *plan, int types, int a, int b)
{
    const short *p = plan->pattern + (size_t)a * (size_t)types, *q = plan->pattern + (size_t)b * (size_t)types;
    for (int t = 0; t < types; t++)
        if (p[t] != q[t])
            return p[t] > q[t];
    return a < b;
}

/* Goes through the plan's rows in order; returns the entries that they make. order: for as many numbers as there are rows. */
static int write_sticks(writer *w, int *order)
{
    const tside_i_sticks *plan = w->plan;
    int entries = 0;
    for (int i = 0; i < plan->rows; i++) {
        int at = i;
        for (; at > 0 && precedes(plan, w->cutting->types, i, order[at - 1]); at--)
            order[at] = order[at - 1];
        order[at] = i;
    }
    for (int j = 0; j < w->cut_count; j++)
        w->left[j] = w->cuts[j].count;
    for (int i = 0; i < plan->rows; i++)
        for (int times = plan->times[order[i]]; times > 0;)
            times -= write_stick(w, order[i], entries++, times);
    return entries;
}

static tside_cut_plan sum_up(const writer *w, int entries)
{
    tside_cut_plan plan = {0, 0, 0, 0, 0, 0, 0, 0, 0, 0};
    for (int i = 0; i < entries; i++) {
        const tside_stick *stick = w->sticks + i;
        plan.sticks += stick->count;
        plan.pieces += stick->count * stick->pieces;
        plan.stock += stick->count * w->stock->lengths[stick->stock].length;
        plan.cut += stick->count * (stick->used - w->stock->kerf * (stick->pieces - 1));
        plan.offcut += stick->count * stick->offcut;
    }
    plan.lost = plan.stock - plan.cut - plan.offcut;
    return plan;
}

tside_status tside_stock_plan(const tside_stock *stock, const tside_cut *cuts, int cut_count, int node_limit, void *work, size_t work_size,
                              tside_stick *sticks, int *taken, int capacity, int *count, tside_cut_plan *plan, tside_fault *fault)
{
    tside_i_search search;
    int which[TSIDE_STOCK_LENGTHS], entries;
    int *type, *left;
    double unit;
    int64_t measure;
    writer w;
    tside_cut_plan made;
    TRY(tside_i_check(&tside_i_stock_table, "stock", stock, fault));
    TRY(check_lengths(stock, fault));
    if (cut_count < 0 || cut_count > TSIDE_STOCK_CUTS)
        return tside_i_bound(fault, "cut_count", "1", cut_count, cut_count < 0 ? TSIDE_BELOW : TSIDE_ABOVE, cut_count < 0 ? 0 : TSIDE_STOCK_CUTS);
    TRY(check_cuts(stock, cuts, cut_count, fault));
    TRY(tside_i_argument(fault, "node_limit", "1", node_limit, 0, 0));
    TRY(tside_i_argument(fault, "capacity", "1", capacity, 0, 0));
    if (work_size < tside_stock_work(cut_count))
        REFUSE(fault, TSIDE_TOO_SMALL, "work_size", "", "the work buffer has too few bytes", "1", (double)work_size, TSIDE_BELOW, (double)tside_stock_work(cut_count), 0);
    buffers(work, cut_count, &search, &type, &left);
    unit = unit_of(stock, cuts, cut_count);
    make_types(&search.cutting, stock, cuts, cut_count, unit, type);
    search.best.rows = 0;
    search.nodes = 0;
    search.limit = node_limit;
    measure = 1;
    search.level = 1;
    search.best.cost = search.bound = 0;
    if (search.cutting.types) {
        make_stocks(&search.cutting, stock, unit, which);
        measure = share_costs(&search.cutting);
        tside_i_search_run(&search);
    }
    w = (writer){stock, cuts, cut_count, type, which, left, search.rest, &search.cutting, &search.best, NULL, taken};
    entries = write_sticks(&w, search.trial.stock);
    if (entries > capacity) {
        *count = entries;
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "there are more sticks unlike each other", "1", capacity, TSIDE_BELOW, entries, 0);
    }
    w.sticks = sticks;
    write_sticks(&w, search.trial.stock);
    made = sum_up(&w, entries);
    made.nodes = search.nodes < node_limit ? search.nodes : node_limit; /* the last may have counted for several */
    made.proven = search.bound / search.level >= search.best.cost / search.level;
    made.fewest = search.bound >= search.best.cost && (search.level > 1 || !search.best.rows || search.cutting.stocks == 1);
    /* where stock lengths are no whole nanometres, costs are rounded ones */
    made.lower_bound = made.proven ? made.stock : fmax(0, (double)(search.bound / search.level) * (double)measure * nanometre - (unit < nanometre ? made.sticks * nanometre : 0));
    *count = entries;
    *plan = made;
    return TSIDE_OK;
}
