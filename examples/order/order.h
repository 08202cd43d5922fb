/* SPDX-License-Identifier: MIT */
/* One order for all sides together: what to buy, and how to cut it. */
#ifndef ORDER_ORDER_H
#define ORDER_ORDER_H

#include "command.h"
#include "job.h"

enum { MEASURES = 3 };

/* In a price list, a measure that an article must not have. */
#define NO_MEASURE "-"

/* What a thing's measures are, in the order in which its name is followed by them. */
typedef struct thing {
    const char *name;
    const char *measures[MEASURES]; /* such as "size", "wall", "length"; NULL where it has fewer */
    const char *units[MEASURES];    /* of each, in SI */
} thing;

/* Everything that may be bought. */
extern const thing things[];
extern const int thing_count;

int is_tube(const thing *what);

/* Of what is cut, channel or tube: where a stick's length stands among its measures. */
int stick_place(const thing *what);

/* A line of what to buy. */
typedef struct article {
    const thing *what;
    double measures[MEASURES]; /* in SI; 0 where it has none */
    int has_material;
    tside_material material;
    int count;      /* pieces, sheets or sticks; 0 where it is bought by length */
    double metres;  /* in all; 0 where it has no length */
    int pieces;     /* of what is bought by length */
    double longest; /* m, of these */
    double square_metres;
    double mass;  /* kg, of all; 0 where it is not known */
    int is_stock; /* 1: a stick, cut as a cutting says */
} article;

/* A piece to be cut, by its mark; "" where it has none. */
typedef struct piece {
    int cut;
    char mark[TSIDE_MARK_SIZE];
} piece;

/* How the sticks of one material are cut. */
typedef struct cutting {
    article material; /* its first measures, without the sticks' length */
    double per_metre; /* kg/m; 0 where it is not known */
    int in_feet;      /* 1 where the side that asked for it last speaks feet, as refusals then do */
    tside_stock stock;
    tside_cut cuts[TSIDE_STOCK_CUTS];
    int codes[TSIDE_STOCK_CUTS]; /* what each cut is: a tside_item_code */
    int cut_count;
    piece *pieces; /* of all cuts, those of one together */
    int piece_count;
    size_t pieces_size;
    tside_stick *sticks;      /* those in hand first: their stock is -1 less the row of the list, from 0 */
    int *taken;               /* taken[i * cut_count + j]: of each cut from each such stick */
    int *begun;               /* the same: which of the pieces is the first of these */
    int stick_count, in_hand; /* in all, and of these in hand */
    double *hand_lengths;     /* m, of those in hand */
    tside_cut_plan plan;      /* of what is bought */
} cutting;

struct hand;

typedef struct order {
    const work *all;
    int sides, refused; /* planned, and not */
    double side_length; /* m, of all sides planned */
    cutting *cuttings;
    int cutting_count;
    size_t cuttings_size;
    article *articles;
    int article_count;
    size_t articles_size;
} order;

/*
 * Orders what all planned sides need; asked: kerf, trim, and lengths that every tube is sold in beside its own; stock
 * in hand is used first, as far as anything can be cut from it, and its rows are told how much. Returns 0 having said
 * why it cannot.
 */
int order_make(order *made, const work *all, const tside_stock *asked, struct hand *in_hand);
void order_free(order *made);

/* Whether a side is in it: planned, and taken off. */
int is_ordered(const planned *side);

/* Whether it is told in feet, inches and pounds: as asked, or as the first side in it. */
int order_in_us(units wanted, const work *all);

/*
 * The sentences of the side's findings that must be mended before the work goes on; returns how many. Each of size
 * STOP_SIZE.
 */
enum { STOP_SIZE = 256 };
int stops_of(const planned *side, char sentences[TSIDE_FINDINGS][STOP_SIZE]);

/*
 * Adds the marks of what is cut from one of the sticks that are cut alike, the nth from 0, with this between them;
 * returns how many there are.
 */
int add_stick_marks(text *t, const cutting *c, int stick, int nth, const char *between);

/* m, of a stick in hand or bought; what is left of all sticks, and lost to kerf and trim. */
double stick_length(const cutting *c, int stick);
double offcuts_of(const cutting *c);
double lost_of(const cutting *c);

/* Saw cuts: none where a stick or its rest is a piece as it is. */
int order_cuts(const order *made);

/*
 * "1.315 in x 0.083 in x 24 ft 0 in", and "A500_B_shaped" or "steel 50 ksi": as cells of a price list name an article.
 */
void add_sizes(text *t, const article *bought, int us);
/*
 * With NO_MEASURE after them where it has no more, as of tube bought by length alone: no other article of its name has
 * the same.
 */
void add_whole_size(text *t, const article *bought, int us);
const char *grade_text(const article *bought, int us, text *words);

#endif
