/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "hand.h"
#include "mark.h"
#include "memory.h"
#include "message.h"
#include "names.h"
#include "order.h"
#include "sentence.h"

/* Lengths that differ by less are one, no saw knows better; the longer counts. */
#define SAME 1e-4
/* A thread of 5/16 in is 0.06 mm thinner than M8, and takes none of its nuts. */
#define SAME_THREAD 1e-5

#define TUBE \
    {"size", "wall", "length"}, \
    { \
        "m", "m", "m" \
    }
#define FILM \
    {"areal mass", "width", "length"}, \
    { \
        "kg/m2", "m", "m" \
    }
#define BOLT_NAME "carriage bolt"
#define BOLT \
    {"size", "length", NULL}, \
    { \
        "m", "m", NULL \
    }
#define SIZED \
    {"size", NULL, NULL}, \
    { \
        "m", NULL, NULL \
    }
#define PLAIN \
    {NULL, NULL, NULL}, \
    { \
        NULL, NULL, NULL \
    }

/* The codes' own things stand in their order; then what several of them are. */
enum { ROUND_TUBE = TSIDE_ITEM_CODES, SQUARE_TUBE, CARRIAGE_BOLT, HAND_DRIVE, UNRATED_MOTOR, UNRATED_HAND };

const thing things[] = {
    [TSIDE_ITEM_CURTAIN] = {"curtain film", FILM},
    [TSIDE_ITEM_FLAP] = {"end flap film", FILM},
    [TSIDE_ITEM_BAR] = {"", PLAIN},
    [TSIDE_ITEM_SPLICE_SCREW] = {"splice screw", PLAIN},
    [TSIDE_ITEM_COUPLING_SCREW] = {"coupling screw", PLAIN},
    [TSIDE_ITEM_CLIP] = {"clip", PLAIN},
    [TSIDE_ITEM_DRIVE] = {"motor drive", {"rated torque", "rated voltage", NULL}, {"N m", "V", NULL}},
    [TSIDE_ITEM_COLLAR] = {"collar", PLAIN},
    [TSIDE_ITEM_GUIDE] = {"", PLAIN},
    [TSIDE_ITEM_CHAIN] = {"chain", PLAIN},
    [TSIDE_ITEM_CHAIN_LINK] = {"chain link", PLAIN},
    [TSIDE_ITEM_EYE] = {"eye bolt", {"size", "grip", NULL}, {"m", "m", NULL}},
    [TSIDE_ITEM_EYE_NUT] = {"eye nut", SIZED},
    [TSIDE_ITEM_EYE_WASHER] = {"eye washer", SIZED},
    [TSIDE_ITEM_EXTENDER] = {"", PLAIN},
    [TSIDE_ITEM_BOW_BOLT] = {"", PLAIN},
    [TSIDE_ITEM_MEMBER_BOLT] = {"", PLAIN},
    [TSIDE_ITEM_BOLT_NUT] = {"bolt nut", SIZED},
    [TSIDE_ITEM_BOLT_WASHER] = {"bolt washer", SIZED},
    [TSIDE_ITEM_PATCH] = {"tape patch", PLAIN},
    [TSIDE_ITEM_CHANNEL] = {"channel", {"length", NULL, NULL}, {"m", NULL, NULL}},
    [TSIDE_ITEM_WIRE] = {"locking wire", PLAIN},
    [TSIDE_ITEM_CHANNEL_SCREW] = {"channel screw", PLAIN},
    [TSIDE_ITEM_ROPE] = {"rope", PLAIN},
    [TSIDE_ITEM_HOOK] = {"hook", PLAIN},
    [TSIDE_ITEM_ANCHOR] = {"anchor", PLAIN},
    [TSIDE_ITEM_CORD] = {"flexible cord", PLAIN},
    [ROUND_TUBE] = {"round tube", TUBE},
    [SQUARE_TUBE] = {"square tube", TUBE},
    [CARRIAGE_BOLT] = {BOLT_NAME, BOLT},
    [HAND_DRIVE] = {"hand drive", {"rated torque", NULL, NULL}, {"N m", NULL, NULL}},
    /* not chosen yet: what it must be rated for */
    [UNRATED_MOTOR] = {"motor drive of at least", {"rated torque", "rated voltage", NULL}, {"N m", "V", NULL}},
    [UNRATED_HAND] = {"hand drive of at least", {"rated torque", NULL, NULL}, {"N m", NULL, NULL}},
};
const int thing_count = sizeof things / sizeof *things;

int is_tube(const thing *what)
{
    return what == things + ROUND_TUBE || what == things + SQUARE_TUBE;
}

int stick_place(const thing *what)
{
    return is_tube(what) ? 2 : 0;
}

static const thing *thing_of(const tside_item *item, const tside_side *side)
{
    if (item->shape != TSIDE_NO_TUBE)
        return things + (item->shape == TSIDE_SQUARE_TUBE ? SQUARE_TUBE : ROUND_TUBE);
    if (item->code == TSIDE_ITEM_BOW_BOLT || item->code == TSIDE_ITEM_MEMBER_BOLT)
        return things + CARRIAGE_BOLT;
    if (item->code == TSIDE_ITEM_DRIVE && side->drive.kind == TSIDE_HAND)
        return things + (side->drive.rated_torque_given ? HAND_DRIVE : UNRATED_HAND);
    if (item->code == TSIDE_ITEM_DRIVE && !side->drive.rated_torque_given)
        return things + UNRATED_MOTOR;
    return things + item->code;
}

/* What the item is made of, or is itself, without counts; of what is cut, without a length. */
static article article_of(const tside_item *item, const planned *asked)
{
    const tside_side *side = &asked->wanted.side;
    article a = {.what = thing_of(item, side)};
    double *m = a.measures;
    if (item->shape != TSIDE_NO_TUBE) {
        m[0] = item->size;
        m[1] = item->wall;
        a.has_material = 1;
        a.material = item->material;
    } else if (item->by == TSIDE_BY_SHEET) {
        m[0] = side->curtain.areal_mass;
        m[1] = item->width;
        m[2] = item->length;
    } else if (item->code == TSIDE_ITEM_DRIVE) {
        m[0] = side->drive.rated_torque_given ? side->drive.rated_torque : asked->plan.design_torque;
        m[1] = side->drive.kind == TSIDE_MOTOR && side->drive.rated_voltage_given ? side->drive.rated_voltage : 0;
    } else if (item->by == TSIDE_BY_COUNT) {
        m[0] = item->size;
        m[1] = item->length;
    }
    return a;
}

static int same_measures(const article *one, const article *other)
{
    for (int i = 0; i < MEASURES; i++) {
        const char *name = one->what->measures[i];
        const int thread = name && !strcmp(name, "size") && !one->has_material;
        if (fabs(one->measures[i] - other->measures[i]) > (thread ? SAME_THREAD : SAME))
            return 0;
    }
    return 1;
}

static int alike(const article *one, const article *other)
{
    return one->what == other->what && same_measures(one, other) && one->is_stock == other->is_stock &&
           !one->count == !other->count && one->has_material == other->has_material &&
           one->material.metal == other->material.metal && one->material.grade == other->material.grade &&
           (one->material.grade != TSIDE_GRADE_GIVEN ||
            fabs(one->material.yield - other->material.yield) <= 1e-6 * one->material.yield);
}

/* Adds to the line that is alike, or after the last of its name. */
static void buy(order *o, const article *more)
{
    int place = o->article_count;
    for (int i = 0; i < o->article_count; i++) {
        article *line = o->articles + i;
        if (alike(line, more)) {
            line->count += more->count;
            line->metres += more->metres;
            line->pieces += more->pieces;
            line->longest = fmax(line->longest, more->longest);
            line->square_metres += more->square_metres;
            line->mass += more->mass;
            return;
        }
        if (line->what == more->what)
            place = i + 1;
    }
    o->articles = grown(o->articles, (size_t)o->article_count, &o->articles_size, sizeof *o->articles);
    memmove(o->articles + place + 1, o->articles + place, (size_t)(o->article_count - place) * sizeof *o->articles);
    o->articles[place] = *more;
    o->article_count++;
}

static cutting *cutting_for(order *o, const article *material, const tside_stock *asked)
{
    for (int i = 0; i < o->cutting_count; i++)
        if (alike(&o->cuttings[i].material, material))
            return o->cuttings + i;
    o->cuttings = grown(o->cuttings, (size_t)o->cutting_count, &o->cuttings_size, sizeof *o->cuttings);
    o->cuttings[o->cutting_count] = (cutting){.material = *material, .stock = *asked};
    if (!material->has_material) { /* lengths and trim are asked of tubes */
        o->cuttings[o->cutting_count].stock.length_count = 0;
        o->cuttings[o->cutting_count].stock.trim = 0;
    }
    return o->cuttings + o->cutting_count++;
}

static int complain_of(const cutting *c, const char *why)
{
    text words = {NULL, 0, 0};
    text_add(&words, "%s ", c->material.what->name);
    add_sizes(&words, &c->material, c->in_feet);
    say("%s: %s", text_of(&words), why);
    text_free(&words);
    return 0;
}

static int offer_length(cutting *c, double length)
{
    tside_stock *stock = &c->stock;
    for (int i = 0; i < stock->length_count; i++)
        if (fabs(stock->lengths[i].length - length) <= SAME)
            return 1;
    if (stock->length_count == TSIDE_STOCK_LENGTHS)
        return complain_of(c, "more than 8 lengths of stock");
    stock->lengths[stock->length_count++].length = length;
    return 1;
}

/* Which cut makes the pieces of a line, a new one where none does yet; -1 where there are too many. */
static int cut_for(cutting *c, const tside_item *item)
{
    for (int i = 0; i < c->cut_count; i++)
        if (c->codes[i] == (int)item->code && fabs(c->cuts[i].length - item->length) <= SAME)
            return i;
    if (c->cut_count == TSIDE_STOCK_CUTS)
        return -1;
    c->codes[c->cut_count] = (int)item->code;
    return c->cut_count++;
}

static int add_cut(cutting *c, const planned *side, const tside_item *item)
{
    const int cut = cut_for(c, item);
    if (cut < 0)
        return complain_of(c, "more different pieces than one cut plan takes, 5000: order fewer sides at once");
    c->cuts[cut].count += item->count;
    c->cuts[cut].length = fmax(c->cuts[cut].length, item->length);
    for (int i = 0; i < item->count; i++) {
        char mark[TSIDE_MARK_SIZE];
        c->pieces = grown(c->pieces, (size_t)c->piece_count, &c->pieces_size, sizeof *c->pieces);
        c->pieces[c->piece_count].cut = cut;
        strcpy(c->pieces[c->piece_count++].mark, item_mark(side, item, i, mark));
    }
    return 1;
}

static int add_item(order *o, const planned *side, const tside_item *item, const tside_stock *asked)
{
    article a = article_of(item, side);
    if (item->by == TSIDE_BY_CUT && item->stock_given) {
        cutting *c = cutting_for(o, &a, asked);
        c->per_metre = item->mass / item->length;
        c->in_feet = side->wanted.in_feet;
        return offer_length(c, item->stock) && add_cut(c, side, item);
    }
    if (item->by == TSIDE_BY_COUNT || item->by == TSIDE_BY_SHEET)
        a.count = item->count;
    if (item->by != TSIDE_BY_COUNT)
        a.metres = item->count * item->length;
    a.pieces = item->count;
    a.longest = item->length;
    a.square_metres = a.metres * item->width;
    a.mass = (item->by == TSIDE_BY_LENGTH ? 1 : item->count) * item->mass;
    buy(o, &a);
    return 1;
}

/* --- cutting --- */

static int refuse_cutting(const cutting *c, const tside_fault *fault)
{
    pen p = {.us = c->in_feet};
    text why = {NULL, 0, 0};
    add_refusal(&why, &p, fault);
    complain_of(c, text_of(&why));
    text_free(&why);
    return 0;
}

double stick_length(const cutting *c, int stick)
{
    return stick < c->in_hand ? c->hand_lengths[stick] : c->stock.lengths[c->sticks[stick].stock].length;
}

double offcuts_of(const cutting *c)
{
    double sum = c->plan.offcut;
    for (int i = 0; i < c->in_hand; i++)
        sum += c->sticks[i].offcut;
    return sum;
}

double lost_of(const cutting *c)
{
    double sum = c->plan.lost;
    for (int i = 0; i < c->in_hand; i++)
        sum += c->hand_lengths[i] - c->sticks[i].used + c->stock.kerf * (c->sticks[i].pieces - 1) - c->sticks[i].offcut;
    return sum;
}

/* One stick in hand, as full as it gets; left: what is still to be cut. Returns 0 where the library refuses. */
static int use_stick(cutting *c, double length, int row, tside_cut *left, tside_cut *given, int *used)
{
    int *taken = c->taken + c->in_hand * c->cut_count;
    tside_stick *stick = c->sticks + c->in_hand;
    tside_fault fault;
    if (tside_stock_fill(&c->stock, length, left, c->cut_count, given, stick, &fault) != TSIDE_OK)
        return refuse_cutting(c, &fault);
    if (!stick->pieces)
        return 1;
    stick->stock = -1 - row;
    for (int j = 0; j < c->cut_count; j++) {
        taken[j] = given[j].count;
        left[j].count -= taken[j];
    }
    c->hand_lengths[c->in_hand++] = length;
    ++*used;
    return 1;
}

/* Stick after stick in hand, the shortest first, while anything can be cut from them. */
static int use_hand(cutting *c, hand *in_hand, tside_cut *left, tside_cut *given)
{
    for (int i = 0; i < in_hand->count; i++) {
        hand_row *row = in_hand->rows + i;
        int used = -1;
        while (hand_fits(row, &c->material) && row->used < row->count && used != row->used) {
            used = row->used;
            if (!use_stick(c, row->length, i, left, given, &row->used))
                return 0;
        }
    }
    return 1;
}

/* Buys sticks for what the stock in hand has left to cut. */
static int plan_bought(cutting *c, const tside_cut *left, int capacity)
{
    const size_t work_size = tside_stock_work(c->cut_count);
    void *scratch = take_memory(work_size);
    tside_fault fault;
    int bought = 0;
    const tside_status status = tside_stock_plan(&c->stock, left, c->cut_count, TSIDE_STOCK_NODES, scratch, work_size,
                                                 c->sticks + c->in_hand, c->taken + c->in_hand * c->cut_count,
                                                 capacity - c->in_hand, &bought, &c->plan, &fault);
    free(scratch);
    c->stick_count = c->in_hand + bought;
    return status == TSIDE_OK || refuse_cutting(c, &fault);
}

static int plan_cutting(cutting *c, hand *in_hand)
{
    /* each stick gives a piece at least; one more is tried in vain */
    const size_t capacity = (size_t)c->piece_count + 1;
    tside_cut *left = take_memory((size_t)c->cut_count * sizeof *left),
              *given = take_memory((size_t)c->cut_count * sizeof *given);
    int good;
    memcpy(left, c->cuts, (size_t)c->cut_count * sizeof *left);
    c->sticks = take_memory(capacity * sizeof *c->sticks);
    c->taken = take_memory(capacity * (size_t)c->cut_count * sizeof *c->taken);
    c->hand_lengths = take_memory(capacity * sizeof *c->hand_lengths);
    good = use_hand(c, in_hand, left, given) && plan_bought(c, left, (int)capacity);
    free(left);
    free(given);
    return good;
}

/* Where each cut's pieces begin when those of one stand together. */
static int *beginnings(const cutting *c)
{
    int *next = take_memory((size_t)c->cut_count * sizeof *next), at = 0;
    for (int j = 0; j < c->cut_count; j++) {
        next[j] = at;
        at += c->cuts[j].count;
    }
    return next;
}

/* Pieces of one cut together, as they were asked for. */
static void sort_pieces(cutting *c)
{
    piece *sorted = take_memory((size_t)c->piece_count * sizeof *sorted);
    int *next = beginnings(c);
    for (int k = 0; k < c->piece_count; k++)
        sorted[next[c->pieces[k].cut]++] = c->pieces[k];
    free(next);
    free(c->pieces);
    c->pieces = sorted;
}

/* Stick after stick takes the next pieces of each of its cuts. */
static void give_out_pieces(cutting *c)
{
    int *next = beginnings(c);
    sort_pieces(c);
    c->begun = take_memory((size_t)c->stick_count * (size_t)c->cut_count * sizeof *c->begun);
    for (int i = 0; i < c->stick_count; i++)
        for (int j = 0; j < c->cut_count; j++) {
            c->begun[i * c->cut_count + j] = next[j];
            next[j] += c->sticks[i].count * c->taken[i * c->cut_count + j];
        }
    free(next);
}

int add_stick_marks(text *t, const cutting *c, int stick, int nth, const char *between)
{
    int count = 0;
    for (int j = 0; j < c->cut_count; j++) {
        const int taken = c->taken[stick * c->cut_count + j];
        const piece *first = c->pieces + c->begun[stick * c->cut_count + j] + nth * taken;
        for (const piece *one = first; one < first + taken; one++)
            if (*one->mark)
                text_add(t, "%s%s", count++ ? between : "", one->mark);
    }
    return count;
}

static void buy_sticks(order *o, const cutting *c)
{
    for (int i = c->in_hand; i < c->stick_count; i++) {
        article stick = c->material;
        const double length = stick_length(c, i);
        stick.measures[stick_place(stick.what)] = length;
        stick.count = c->sticks[i].count;
        stick.metres = stick.count * length;
        stick.mass = stick.metres * c->per_metre;
        stick.is_stock = 1;
        buy(o, &stick);
    }
}

int is_ordered(const planned *side)
{
    return is_planned(side) && side->item_count > 0;
}

int order_in_us(units wanted, const work *all)
{
    if (wanted != AS_THE_FILE)
        return wanted == US;
    for (size_t i = 0; i < all->count; i++)
        if (is_ordered(all->sides[i]))
            return all->sides[i]->wanted.in_feet;
    return 0;
}

int order_make(order *made, const work *all, const tside_stock *asked, hand *in_hand)
{
    *made = (order){.all = all};
    for (size_t i = 0; i < all->count; i++) {
        const planned *side = all->sides[i];
        if (!is_ordered(side)) {
            made->refused++;
            continue;
        }
        made->sides++;
        made->side_length += side->wanted.side.length;
        for (int k = 0; k < side->item_count; k++)
            if (!add_item(made, side, side->items + k, asked))
                return 0;
    }
    for (int i = 0; i < made->cutting_count; i++) {
        if (!plan_cutting(made->cuttings + i, in_hand))
            return 0;
        give_out_pieces(made->cuttings + i);
        buy_sticks(made, made->cuttings + i);
    }
    return 1;
}

void order_free(order *made)
{
    for (int i = 0; i < made->cutting_count; i++) {
        free(made->cuttings[i].sticks);
        free(made->cuttings[i].taken);
        free(made->cuttings[i].hand_lengths);
        free(made->cuttings[i].begun);
        free(made->cuttings[i].pieces);
    }
    free(made->cuttings);
    free(made->articles);
}

int stops_of(const planned *side, char sentences[TSIDE_FINDINGS][STOP_SIZE])
{
    int count = 0;
    for (int i = 0; i < side->plan.finding_count; i++)
        if (tside_finding_stops((int)side->plan.findings[i].code))
            tside_finding_text(side->plan.findings + i, sentences[count++], STOP_SIZE);
    return count;
}

int order_cuts(const order *made)
{
    int cuts = 0;
    for (int i = 0; i < made->cutting_count; i++) {
        const cutting *c = made->cuttings + i;
        for (int k = 0; k < c->stick_count; k++) {
            const tside_stick *stick = c->sticks + k;
            const double rest = stick_length(c, k) - c->stock.trim - stick->used;
            cuts += stick->count * (stick->pieces - (rest <= SAME) + (c->stock.trim > 0));
        }
    }
    return cuts;
}

/* --- names --- */

/* A tube's section is told to 0.001 in or 0.01 mm; a bolt's size and length by their trade names. */
static const char *measure_text(pen *p, const article *bought, int i)
{
    const char *name = bought->what->measures[i];
    const double value = bought->measures[i];
    if (!strcmp(name, "wall") || (!strcmp(name, "size") && bought->has_material))
        return fine(p, value);
    if (!strcmp(name, "size"))
        return bolt_name(p, value, "", 0);
    if (!strcmp(bought->what->name, BOLT_NAME) && !strcmp(name, "length"))
        return bolt_length(p, bought->measures[0], value);
    return quantity(p, value, bought->what->units[i]);
}

/* A drive's torque to five digits: catalogues have 30 N m beside 22 lbf ft, which is 29.83. */
static void add_torque(text *t, double torque, int us)
{
    text_add(t, "%.5g %s", us ? torque / (0.45359237 * 9.80665 * 0.3048) : torque, us ? "lbf ft" : "N m");
}

static int has_measure(const article *bought, int i)
{
    return i < MEASURES && bought->what->measures[i] && bought->measures[i] > 0;
}

void add_sizes(text *t, const article *bought, int us)
{
    pen p = {.us = us};
    for (int i = 0; has_measure(bought, i); i++) {
        text_add(t, "%s", i ? " x " : "");
        if (!strcmp(bought->what->measures[i], "rated torque"))
            add_torque(t, bought->measures[i], us);
        else
            text_add(t, "%s", measure_text(&p, bought, i));
    }
}

void add_whole_size(text *t, const article *bought, int us)
{
    int i = 0;
    add_sizes(t, bought, us);
    while (has_measure(bought, i))
        i++;
    if (i && i < MEASURES && bought->what->measures[i])
        text_add(t, " x " NO_MEASURE);
}

const char *grade_text(const article *bought, int us, text *words)
{
    pen p = {.us = us};
    const tside_field *metal = row_named(TSIDE_KIND_MATERIAL, "metal", NULL),
                      *grade = row_named(TSIDE_KIND_MATERIAL, "grade", NULL);
    text_cut(words, 0);
    if (!bought->has_material)
        return "";
    if (bought->material.grade == TSIDE_GRADE_GIVEN)
        text_add(words, "%s %s", choice_text(metal, (int)bought->material.metal),
                 quantity(&p, bought->material.yield, "Pa"));
    else if (bought->material.grade == TSIDE_GRADE_UNKNOWN)
        text_add(words, "%s", choice_text(metal, (int)bought->material.metal));
    else
        text_add(words, "%s", choice_text(grade, (int)bought->material.grade));
    return text_of(words);
}
