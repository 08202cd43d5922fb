/* SPDX-License-Identifier: MIT */
#include <tunnelside/stock.h>

#include "internal.h"

static const tside_field stock_length_rows[] = {
    {REQUIRED_FROM(tside_stock_length, length, "m", 1e-3, 1000, "length of a stick as sold")},
};
TABLE(tside_i_stock_length_table, stock_length_rows);

static const tside_field stock_rows[] = {
    {NUMBER(tside_stock, kerf, "m", FROM(0), TO(0.1), 0.003, PRACTICE, "lost in one cut between two pieces")},
    {NUMBER(tside_stock, trim, "m", FROM(0), TO(10), 0, OURS, "lost from each stick before its first piece")},
    {LIST(tside_stock, lengths, length_count, TSIDE_KIND_STOCK_LENGTH, tside_stock_length, TSIDE_STOCK_LENGTHS, "lengths that sticks are sold in")},
};
TABLE(tside_i_stock_table, stock_rows);

static const tside_field cut_rows[] = {
    {REQUIRED_FROM(tside_cut, length, "m", 1e-3, 1000, "length of a piece")},
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
