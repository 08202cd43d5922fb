/* SPDX-License-Identifier: MIT */
/* Cutting stock: how many sticks to buy, of which lengths, and how to cut each. */
#ifndef TUNNELSIDE_STOCK_H
#define TUNNELSIDE_STOCK_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

enum {
    TSIDE_STOCK_LENGTHS = 8,     /* that sticks are sold in */
    TSIDE_STOCK_CUTS = 5000,     /* entries in a list of cuts */
    TSIDE_STOCK_PIECES = 100000, /* pieces, all counts together */
    TSIDE_STOCK_NODES =
        50000 /* a node limit that suits a program that someone waits for: a second or so, seldom needed */
};

/* A length that sticks are sold in. */
typedef struct tside_stock_length {
    double length; /* m */
} tside_stock_length;

/*
 * What sticks there are, and what is lost in cutting them: k pieces fit a stick when their lengths
 * + (k - 1) kerf <= its length - trim.
 */
typedef struct tside_stock {
    double kerf; /* m, lost in one cut between two pieces */
    double trim; /* m, lost from each stick before its first piece */
    int length_count;
    tside_stock_length lengths[TSIDE_STOCK_LENGTHS];
} tside_stock;

/* Pieces asked for. */
typedef struct tside_cut {
    double length; /* m */
    int count;
} tside_cut;

/* Sticks that are cut alike. */
typedef struct tside_stick {
    int stock;     /* which of the stock's lengths */
    int count;     /* sticks cut so */
    int pieces;    /* in one stick */
    double used;   /* m, of one stick: pieces, and the kerfs between them */
    double offcut; /* m, of one stick: what is left once trim and the last piece are cut off,
                    * that cut's own kerf gone too; 0 if nothing is */
} tside_stick;

/* A cut plan in short. */
typedef struct tside_cut_plan {
    int proven;         /* 1: no plan takes less stock */
    int fewest;         /* 1: proven, and no plan that takes as much stock has fewer sticks */
    int sticks;         /* to buy */
    int pieces;         /* to cut */
    int nodes;          /* of the search, at most the limit */
    double stock;       /* m, bought */
    double lower_bound; /* m, no plan takes less stock than this */
    double cut;         /* m, of all pieces */
    double offcut;      /* m, of all offcuts */
    double lost;        /* m, to kerf and trim: stock less cut less offcut */
} tside_cut_plan;

/*
 * How large a work buffer tside_stock_plan needs.
 * cut_count: from 0 to TSIDE_STOCK_CUTS, entries in the list of cuts.
 * Returns bytes: below 1 MiB for 10 entries, below 16 MiB for the most; 0 if cut_count is out of
 * range.
 * Source: derivation, the sizes of what tside_stock_plan keeps.
 */
TSIDE_API size_t tside_stock_work(int cut_count);

/*
 * Plans how to cut pieces from sticks: the least total length of stock, and of plans that take as
 * much the one with the fewest sticks.
 *
 * A sum over by no more than 1e-9 m still fits. It always answers with a plan and a bound that is
 * proven; the plan is proven the best where the search, within its limit, could prove it; the bound
 * is never less than all pieces, kerfs between them counted, need of the best stock. The same call
 * gives the same plan on every machine. Of more than 250 different lengths the plan is the first
 * good one; neighbouring lengths are then taken together for the bound, each for the shortest of
 * them.
 * stock: every field checked, at least one length.
 * cuts: every field checked, in any order, equal lengths allowed.
 * cut_count: from 0 to TSIDE_STOCK_CUTS, entries in the list of cuts.
 * node_limit: from 0, how long the search may go on: 0 takes the first good plan and what is soon
 * proven of it, TSIDE_STOCK_NODES is usual. A node is an amount of work, some tens of microseconds,
 * whatever the order; beside the nodes no more work is done than takes a fraction of a second.
 * work: a buffer, aligned as malloc aligns; what it holds afterwards means nothing.
 * work_size: from tside_stock_work(cut_count), bytes.
 * sticks: receives the sticks, alike ones together, longest pieces first.
 * taken: receives how many pieces of each cut one stick of each of these entries gives: taken[i *
 * cut_count + j]; capacity * cut_count ints.
 * capacity: any, how many sticks there is room for; the number of pieces is always enough.
 * count: receives the entries of sticks written, or needed.
 * plan: receives the sums.
 * TSIDE_OUT_OF_BOUNDS: a field (index: which cut), no stock length, cut_count, node_limit, or more
 * than TSIDE_STOCK_PIECES pieces in all.
 * TSIDE_CONTRADICTS: a stock length not above the trim; a cut longer than the longest stock less
 * trim (index: which cut; value: its length; bound: what fits; gap: what is missing).
 * TSIDE_TOO_SMALL: work_size (bound: bytes needed), or more sticks than capacity: only count is
 * written.
 * Limits: lengths count to the nanometre, or to a thousandth of it if they are no whole ones; then
 * totals of stock that differ by less than a nanometre a stick count as equal, and a sum of pieces may
 * be over by half such a thousandth more for each.
 * Accuracy: of a stick what is used and left to 1e-15 of its length; all stock to 1e-15 of itself, the
 * other sums to 1e-14 of it; lower_bound is one of the lengths as they count.
 * Source: linear relaxation over cutting patterns, Gilmore and Gomory (1961), Operations Research
 * 9, 849-859; its bound is taken from whole-numbered dual prices that an exact knapsack search has
 * checked, so that rounding cannot falsify it; raised by what it takes at least to make a basis
 * whole, the group relaxation of Gomory (1969), Linear Algebra and its Applications 2, 451-558
 * (citation from memory).
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_stock_plan(const tside_stock *stock,
                                                        const tside_cut *cuts, int cut_count,
                                                        int node_limit, void *work,
                                                        size_t work_size, tside_stick *sticks,
                                                        int *taken, int capacity, int *count,
                                                        tside_cut_plan *plan, tside_fault *fault);

/*
 * Cuts one stick, such as one left from an earlier job, so that the least is left of it: the fullest
 * way, and of those that leave as much the one with most of the longest pieces.
 *
 * Stick after stick in hand, each with what is still to be cut, uses them up first;
 * tside_stock_plan then buys for the rest.
 * stock: every field checked; its kerf and trim count, not its lengths.
 * length: m, from 0.01 to 300, of the stick; where it is not above the trim nothing is cut.
 * cuts: every field checked, in any order, equal lengths allowed; what is longer than the stick
 * stays.
 * cut_count: from 0 to TSIDE_STOCK_CUTS, entries in the list of cuts.
 * given: receives one for each of cuts: of that length, how many pieces the stick gives.
 * stick: receives what is used of it and left; stock is 0 and count 1; where it gives nothing,
 * pieces is 0 and all of it is left.
 * TSIDE_OUT_OF_BOUNDS: a field (index: which cut), length or cut_count.
 * Limits: at most 64 different pieces; beyond some millions of looks at a cut the fullest way found
 * so far.
 * Accuracy: what is used and left to 1e-15 of the stick's length.
 * Source: derivation, all ways are tried.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_stock_fill(const tside_stock *stock, double length,
                                                        const tside_cut *cuts, int cut_count,
                                                        tside_cut *given, tside_stick *stick,
                                                        tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
