/* SPDX-License-Identifier: MIT */
/* Orders of cuts: kerf, trim, stock, then a length and a count each, in millimetres, sixteenths or anything. */
#include <math.h>
#include <string.h>

#include "../cuts.h"
#include "../threads.h"
#include "fuzz.h"

static double some_length(feed *f, unsigned how)
{
    double whole = feed_byte(f) * 256.0;
    whole += feed_byte(f);
    switch (how % 4) {
    case 0: return whole / 4000;
    case 1: return whole * 0.0254 / 16;
    case 2: return whole / 1e5;
    default: return feed_number(f);
    }
}

/* A piece that is over by just what counts as none, give or take some last digits; stick and trim have some too. */
static void just_over(feed *f, cut_order *order)
{
    double longest = 0;
    order->stock.trim += feed_byte(f) * 1e-13;
    for (int i = 0; i < order->stock.length_count && i < TSIDE_STOCK_LENGTHS; i++)
        longest = fmax(longest, order->stock.lengths[i].length += feed_byte(f) * 1e-13);
    order->cuts[0].length = longest - order->stock.trim + 1e-9 + (feed_byte(f) - 128) * 1e-15;
}

static void make_order(feed *f, cut_order *order)
{
    enum { CUTS = 60 };
    unsigned how = feed_byte(f);
    tside_usual(TSIDE_KIND_STOCK, &order->stock);
    order->stock.kerf = feed_byte(f) / 1e4;
    order->stock.trim = feed_byte(f) / 1e3;
    order->stock.length_count = (int)(feed_byte(f) % (TSIDE_STOCK_LENGTHS + 2));
    for (int i = 0; i < order->stock.length_count && i < TSIDE_STOCK_LENGTHS; i++)
        order->stock.lengths[i].length = some_length(f, how >> 2);
    for (order->cut_count = 0; f->at < f->end && order->cut_count < CUTS; order->cut_count++) {
        order->cuts[order->cut_count].length = some_length(f, how);
        order->cuts[order->cut_count].count = (int)feed_byte(f) - 1;
        if (how & 16 && !order->cut_count)
            just_over(f, order);
    }
}

static void refused(const cut_answer *answer)
{
    fuzz_fault(&answer->fault, answer->status);
    HOLDS(*answer->fault.field, "a fault without a field");
    HOLDS(answer->plan.sticks == 0 && answer->plan.stock == 0, "refused, and written");
    HOLDS(answer->status == TSIDE_OUT_OF_BOUNDS || answer->status == TSIDE_CONTRADICTS ||
              answer->status == TSIDE_TOO_SMALL,
          "status %d", (int)answer->status);
}

/* The longest stick, filled with what it takes. */
static void fill(const cut_order *order)
{
    OWN tside_cut given[TSIDE_STOCK_CUTS];
    tside_stick stick;
    tside_fault fault;
    double length = order->stock.length_count ? order->stock.lengths[0].length : 6;
    tside_status status = tside_stock_fill(&order->stock, length, order->cuts, order->cut_count, given, &stick, &fault);
    int pieces = 0;
    double used = 0;
    if (status != TSIDE_OK) {
        fuzz_fault(&fault, status);
        return;
    }
    for (int j = 0; j < order->cut_count; j++) {
        HOLDS(given[j].count >= 0 && given[j].count <= order->cuts[j].count, "cut %d", j);
        pieces += given[j].count;
        used += given[j].count * order->cuts[j].length;
    }
    HOLDS(pieces == stick.pieces, "%d pieces, and %d told", pieces, stick.pieces);
    used += pieces ? (pieces - 1) * order->stock.kerf : 0;
    HOLDS(!pieces || used <= length - order->stock.trim + 1.1e-9, "too full");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    OWN cut_order order;
    feed f = {data, data + size};
    int limit = (int)(feed_byte(&f) % 64);
    cut_answer answer;
    tside_cut_plan first;
    const char *wrong;
    make_order(&f, &order);
    fill(&order);
    answer = cut_order_plan(&order, limit);
    if (answer.status != TSIDE_OK) {
        refused(&answer);
        return 0;
    }
    wrong = cut_answer_wrong(&order, &answer);
    HOLDS(!wrong, "%s", wrong);
    HOLDS(answer.plan.nodes <= limit, "%d nodes of %d", answer.plan.nodes, limit);
    first = answer.plan;
    answer = cut_order_plan(&order, limit);
    HOLDS(!memcmp(&first, &answer.plan, sizeof first), "planned twice, and otherwise");
    return 0;
}
