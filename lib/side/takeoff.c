/* SPDX-License-Identifier: MIT */
/*
 * The take-off: what a planned side is made of, line by line. Counts and lengths are sums; what is usual is common
 * practice, no published source.
 */
#include <tunnelside/takeoff.h>

#include "base/field.h"
#include "parts/bolt.h"
#include "parts/material.h"
#include "parts/tube.h"
#include "side/joints.h"
#include "side/mark.h"
#include "side/plan.h"

/* --- tables --- */

#define INCH WITH_INCH(tside_fittings)
#define METRIC WITH_METRIC(tside_fittings)

/* clang-format off */
static const tside_field fittings_rows[] = {
    {HARDWARE(tside_fittings)},
    {NUMBER(tside_fittings, rail_allowance, "m", FROM(0), TO(2), 4 * IN, OURS, "curtain above its fixing, in the channel")},
    {NUMBER(tside_fittings, hem, "m", FROM(0), TO(2), 4 * IN, OURS, "curtain at the bar, beyond what is on it when shut")},
    {COUNT(tside_fittings, end_flaps, 0, 2, 2, PRACTICE, "end flaps, inside the curtain, against the end walls")},
    {NUMBER(tside_fittings, flap_width, "m", ABOVE(0), TO(10), 20 * IN, PRACTICE, "width of one end flap"), UNUSUAL_OUTSIDE(18 * IN, 24 * IN)},
    {NUMBER(tside_fittings, clip_spacing, "m", FROM(0.05), TO(10), 24 * IN, PRACTICE, "the most between clips on the bar"), UNUSUAL_OUTSIDE(18 * IN, 36 * IN)},
    {NUMBER(tside_fittings, channel_stock, "m", FROM(0.1), TO(100), 2, OURS, "one length of channel")},
    {NUMBER(tside_fittings, bow_spacing, "m", FROM(0.3), TO(10), 4 * FT, PRACTICE, "between bows"), UNUSUAL_OUTSIDE(4 * FT, 6 * FT)},
    {COUNT(tside_fittings, rope_every, 1, 10, 1, PRACTICE, "the rope goes to every bow (1), every second (2), and so on"), UNUSUAL_OUTSIDE(1, 2)},
    {NUMBER(tside_fittings, hook_drop, "m", FROM(-2), TO(2), 0, OURS, "lower hooks below the sill")},
    {NUMBER(tside_fittings, rope_spare, "m", FROM(0), TO(100), 1, OURS, "rope for tying both ends")},
    {NUMBER(tside_fittings, guide_stock, "m", FROM(0.1), TO(100), 21 * FT, PRACTICE, "one length of guide pipe"), INCH},
    {NUMBER(tside_fittings, guide_stock, "m", FROM(0.1), TO(100), 6, PRACTICE, "one length of guide pipe"), METRIC},
    {NUMBER(tside_fittings, member_depth, "m", FROM(1e-3), TO(1), 2 * IN, PRACTICE, "the end wall's member, along its bolt")},
    {CHOICE(tside_fittings, bolt_size, tside_i_bolt_sizes, TSIDE_BOLT_5_16, "nominal diameter of bow and member bolts"), INCH},
    {CHOICE(tside_fittings, bolt_size, tside_i_bolt_sizes, TSIDE_BOLT_M8, "nominal diameter of bow and member bolts"), METRIC},
    {CHOICE(tside_fittings, washer, tside_i_washers, TSIDE_WASHER_NARROW, "kind of washer under their nuts")},
    {COUNT(tside_fittings, washers, 0, 20, 1, PRACTICE, "flat washers under each of their nuts, at least")},
    {NUMBER(tside_fittings, eye_size, "m", FROM(1e-3), TO(0.1), 0.625 * IN, OURS, "nominal diameter of the eye bolt"), INCH},
    {NUMBER(tside_fittings, eye_size, "m", FROM(1e-3), TO(0.1), 16 * MM, OURS, "nominal diameter of the eye bolt"), METRIC},
    {COUNT(tside_fittings, eye_nuts, 1, 20, 2, OURS, "nuts on each eye bolt, each with a washer")},
    {COUNT(tside_fittings, chain_links, 0, 20, 2, OURS, "connecting links on each chain")},
    {COUNT(tside_fittings, patches, 0, 20, 4, PRACTICE, "patches of tape for each extender")},
    {NUMBER(tside_fittings, patch_thickness, "m", FROM(0), TO(0.05), 0.25e-3, OURS, "thickness of a patch")},
    {OPTIONAL(tside_fittings, cord, "m", FROM(0), TO(1000), "flexible cord from the supply to the drive when shut, one way")},
};
/* clang-format on */
TABLE(tside_i_fittings_table, fittings_rows);

static const char *const codes[] = {
    "curtain",     "flap",       "bar",      "splice_screw", "coupling_screw", "clip",
    "drive",       "collar",     "guide",    "chain",        "chain_link",     "eye",
    "eye_nut",     "eye_washer", "extender", "bow_bolt",     "member_bolt",    "bolt_nut",
    "bolt_washer", "patch",      "channel",  "wire",         "channel_screw",  "rope",
    "hook",        "anchor",     "cord",
};
static const char *const places[] = {"side", "drive_end", "free_end"};
static const char *const hands[] = {"unhanded", "right_handed", "left_handed"};
static const char *const ways[] = {"count", "cut", "length", "sheet"};
static const char *const shapes[] = {"none", "round", "square"};
#define OF_TUBE APPLIES(tside_item, shape, ONLY(TSIDE_ROUND_TUBE) | ONLY(TSIDE_SQUARE_TUBE))

/* clang-format off */
static const tside_field item_rows[] = {
    {CHOICE(tside_item, code, codes, 0, "what it is")},
    {CHOICE(tside_item, at, places, 0, "where it belongs")},
    {CHOICE(tside_item, hand, hands, 0, "its hand, seen from outside the wall it is bolted to")},
    {CHOICE(tside_item, by, ways, 0, "how it is counted")},
    {RESULT_COUNT(tside_item, count, "how many")},
    {RESULT_COUNT(tside_item, first_number, "in the mark of the first of its pieces, the others count on; 0 where they carry none")},
    {RESULT(tside_item, length, "m", "length of each; of all where it is counted by length; 0 where it has none")},
    {RESULT(tside_item, width, "m", "width of a sheet"), APPLIES(tside_item, by, ONLY(TSIDE_BY_SHEET))},
    {RESULT(tside_item, size, "m", "outside diameter or side of a tube, nominal diameter of a bolt and what belongs on it; else 0")},
    {CHOICE(tside_item, shape, shapes, 0, "which section of tube it is cut from")},
    {RESULT(tside_item, wall, "m", "wall of the tube"), OF_TUBE},
    {GROUP(tside_item, material, material, "metal of the tube"), OF_TUBE},
    {RESULT_OPTIONAL(tside_item, mass, "kg", "mass of each piece; of all where it is counted by length")},
    {RESULT_OPTIONAL(tside_item, stock, "m", "the length that it is cut from")},
};
/* clang-format on */
TABLE(tside_i_item_table, item_rows);

const char *tside_item_text(int code)
{
    switch (code) {
    case TSIDE_ITEM_CURTAIN: return "curtain";
    case TSIDE_ITEM_FLAP: return "end flap";
    case TSIDE_ITEM_BAR: return "roll bar";
    case TSIDE_ITEM_SPLICE_SCREW: return "screw, splice of the bar";
    case TSIDE_ITEM_COUPLING_SCREW: return "screw, drive's coupling";
    case TSIDE_ITEM_CLIP: return "clip, curtain to bar";
    case TSIDE_ITEM_DRIVE: return "drive";
    case TSIDE_ITEM_COLLAR: return "collar";
    case TSIDE_ITEM_GUIDE: return "guide pipe";
    case TSIDE_ITEM_CHAIN: return "chain";
    case TSIDE_ITEM_CHAIN_LINK: return "connecting link of the chain";
    case TSIDE_ITEM_EYE: return "eye bolt";
    case TSIDE_ITEM_EYE_NUT: return "nut, eye bolt";
    case TSIDE_ITEM_EYE_WASHER: return "washer, eye bolt";
    case TSIDE_ITEM_EXTENDER: return "extender";
    case TSIDE_ITEM_BOW_BOLT: return "bolt, extender to bow";
    case TSIDE_ITEM_MEMBER_BOLT: return "bolt, extender to member";
    case TSIDE_ITEM_BOLT_NUT: return "nut, extender's bolts";
    case TSIDE_ITEM_BOLT_WASHER: return "washer, extender's bolts";
    case TSIDE_ITEM_PATCH: return "patch of tape";
    case TSIDE_ITEM_CHANNEL: return "channel";
    case TSIDE_ITEM_WIRE: return "wire in the channel";
    case TSIDE_ITEM_CHANNEL_SCREW: return "screw, channel";
    case TSIDE_ITEM_ROPE: return "rope";
    case TSIDE_ITEM_HOOK: return "hook for the rope";
    case TSIDE_ITEM_ANCHOR: return "anchor for the rope";
    case TSIDE_ITEM_CORD: return "flexible cord";
    default: return "";
    }
}

/* --- the list --- */

typedef struct list {
    const tside_side *side;
    const tside_plan *plan;
    const tside_fittings *fittings;
    int count;
    tside_item items[TSIDE_ITEMS];
} list;

/*
 * One more line, if there is any of it; what is cut like the line before goes with it. A piece that is over its stock
 * by no more than FITS is as long as that: whoever plans its cuts finds that it fits.
 */
static void add(list *l, const tside_item *item)
{
    tside_item *before = l->items + l->count - 1;
    if (item->count <= 0 || (item->by != TSIDE_BY_COUNT && item->length <= 0))
        return;
    if (l->count > 0 && item->by == TSIDE_BY_CUT && item->code == before->code && item->at == before->at &&
        fabs(item->length - before->length) <= FITS)
        before->count += item->count;
    else {
        l->items[l->count] = *item;
        if (item->stock_given)
            l->items[l->count].length = fmin(item->length, item->stock);
        l->count++;
    }
}

static void add_counted(list *l, tside_item_code code, tside_item_at at, int count, double size)
{
    add(l, &(tside_item){.code = code, .at = at, .count = count, .size = size});
}

static void add_sheet(list *l, tside_item_code code, int count, double width, double length)
{
    add(l, &(tside_item){.code = code, .by = TSIDE_BY_SHEET, .count = count, .width = width, .length = length});
}

static void add_length(list *l, tside_item_code code, tside_item_at at, double length)
{
    add(l, &(tside_item){.code = code, .at = at, .by = TSIDE_BY_LENGTH, .count = 1, .length = length});
}

static tside_item_at at_end(tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? TSIDE_AT_DRIVE_END : TSIDE_AT_FREE_END;
}

static tside_item_hand hand_at(const tside_side *side, tside_which_end which)
{
    return tside_i_outboard_is_right(side, which) ? TSIDE_RIGHT_HANDED : TSIDE_LEFT_HANDED;
}

static const tside_end_plan *end_plan(const list *l, tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? &l->plan->drive_end : &l->plan->free_end;
}

/* How many spaces no longer than this make the length. */
static int spaces(double length, double most)
{
    return (int)fmax(1, ceil((length - FITS) / most));
}

/* --- curtain --- */

static double flap_length(const list *l)
{
    return l->fittings->rail_allowance + l->plan->shut.hanging + l->plan->shut.diameter / 2 + l->fittings->hem;
}

static void take_curtain(list *l)
{
    const tside_curtain *curtain = &l->side->curtain;
    tside_roll roll = {l->side->bar.tube.diameter + l->side->bar.core_over, curtain->thickness, curtain->packing};
    double wound = tside_i_roll_length(&roll, l->side->stops.wraps_shut);
    add_sheet(l, TSIDE_ITEM_CURTAIN, 1, l->fittings->rail_allowance + l->plan->shut.hanging + wound + l->fittings->hem,
              l->plan->curtain_length);
    add_sheet(l, TSIDE_ITEM_FLAP, l->fittings->end_flaps, l->fittings->flap_width, flap_length(l));
}

/* --- the bar and what is on it --- */

static void add_sticks(list *l, int count, double length)
{
    const tside_bar *bar = &l->side->bar;
    int from_stock = bar->joints == TSIDE_JOINTS_FROM_STOCK;
    add(l, &(tside_item){.code = TSIDE_ITEM_BAR,
                         .by = !from_stock && bar->splices ? TSIDE_BY_LENGTH : TSIDE_BY_CUT,
                         .count = count,
                         .length = length,
                         .size = bar->tube.diameter,
                         .shape = TSIDE_ROUND_TUBE,
                         .wall = bar->tube.wall,
                         .material = bar->material,
                         .stock_given = from_stock,
                         .stock = from_stock ? bar->stock : 0});
}

static tside_status take_bar(list *l, tside_fault *fault)
{
    const tside_bar *bar = &l->side->bar;
    const tside_i_bar_lengths lengths = {l->plan->bar_beyond_drive, l->plan->curtain_length, l->plan->bar_beyond_free};
    tside_i_made m;
    if (bar->joints == TSIDE_JOINTS_GIVEN) {
        add_sticks(l, 1, l->plan->bar_length + bar->splices * bar->swage);
        return TSIDE_OK;
    }
    TRY(tside_i_within(fault, "bar", tside_i_bar_make(bar, &lengths, &m, fault)));
    add_sticks(l, m.sticks - 2, bar->stock);
    add_sticks(l, m.sticks > 1, m.before);
    add_sticks(l, 1, m.last);
    return TSIDE_OK;
}

static void take_bar_hardware(list *l)
{
    const tside_bar *bar = &l->side->bar;
    add_counted(l, TSIDE_ITEM_SPLICE_SCREW, TSIDE_AT_SIDE, 2 * bar->screws * l->plan->splices, 0);
    add_counted(l, TSIDE_ITEM_COUPLING_SCREW, TSIDE_AT_DRIVE_END, bar->screws, 0);
    add_counted(l, TSIDE_ITEM_CLIP, TSIDE_AT_SIDE, spaces(l->plan->curtain_length, l->fittings->clip_spacing) + 1, 0);
    add_counted(l, TSIDE_ITEM_DRIVE, TSIDE_AT_DRIVE_END, 1, 0);
    add_counted(l, TSIDE_ITEM_COLLAR, TSIDE_AT_FREE_END, 1, 0);
}

/* --- end walls --- */

/* Puts the end's name before a refused field of it, and names the fitting that it does not suit. */
static tside_status at_odds(tside_which_end which, const char *fitting, tside_status status, tside_fault *fault)
{
    tside_i_within(fault, tside_i_end_name(which), status);
    if (fault)
        tside_i_path(fault->other, fitting);
    return status;
}

/* Refuses a bolt that does not go through its hole. */
static tside_status check_hole(tside_which_end which, const char *hole, double diameter, const char *size, double bolt,
                               tside_fault *fault)
{
    if (bolt <= diameter + FITS)
        return TSIDE_OK;
    return at_odds(which, size,
                   tside_i_refuse_value(fault, TSIDE_CONTRADICTS, hole, "", "too small for its bolt", "m", diameter,
                                        TSIDE_BELOW, bolt, 0),
                   fault);
}

static tside_status take_guide(list *l, tside_which_end which, tside_fault *fault)
{
    const tside_guide *guide = &tside_i_end(l->side, which)->guide;
    tside_item_at at = at_end(which);
    double length = end_plan(l, which)->sweep.cut_length, stock = l->fittings->guide_stock;
    if (length > stock + FITS)
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "fittings.guide_stock",
                                    at == TSIDE_AT_DRIVE_END ? "drive_end.guide" : "free_end.guide",
                                    "shorter than the guide is cut", "m", stock, TSIDE_BELOW, length, 0);
    add(l, &(tside_item){.code = TSIDE_ITEM_GUIDE,
                         .at = at,
                         .by = TSIDE_BY_CUT,
                         .count = 1,
                         .length = length,
                         .size = guide->tube.diameter,
                         .shape = TSIDE_ROUND_TUBE,
                         .wall = guide->tube.wall,
                         .material = guide->material,
                         .stock_given = 1,
                         .stock = stock});
    if (guide->foot == TSIDE_FOOT_FIXED)
        return TSIDE_OK;
    add_length(l, TSIDE_ITEM_CHAIN, at, guide->chain);
    add_counted(l, TSIDE_ITEM_CHAIN_LINK, at, guide->chain > 0 ? l->fittings->chain_links : 0, 0);
    return TSIDE_OK;
}

/* grip: m, 0 where it is not known. A guide fixed at its foot has no eye: what holds its top is its maker's. */
static void add_eye(list *l, tside_which_end which, double grip)
{
    tside_item_at at = at_end(which);
    if (tside_i_end(l->side, which)->guide.foot == TSIDE_FOOT_FIXED)
        return;
    add(l, &(tside_item){.code = TSIDE_ITEM_EYE, .at = at, .count = 1, .length = grip, .size = l->fittings->eye_size});
    add_counted(l, TSIDE_ITEM_EYE_NUT, at, l->fittings->eye_nuts, l->fittings->eye_size);
    add_counted(l, TSIDE_ITEM_EYE_WASHER, at, l->fittings->eye_nuts, l->fittings->eye_size);
}

/* The bolt for a grip, with as many more washers as its thread needs; washers: receives how many. */
static tside_status choose_bolt(const list *l, double grip, tside_bolt_plan *chosen, int *washers)
{
    tside_bolt bolt;
    tside_fault refused;
    tside_status status;
    tside_i_usual(&tside_i_bolt_table, &bolt);
    bolt.size = l->fittings->bolt_size;
    bolt.washer = l->fittings->washer;
    bolt.washers = l->fittings->washers;
    bolt.grip = grip;
    status = tside_bolt_choose(&bolt, chosen, &refused);
    if (status == TSIDE_CONTRADICTS) { /* for want of washers: its bound is how many mend it */
        bolt.washers = (int)refused.bound;
        status = tside_bolt_choose(&bolt, chosen, NULL);
    }
    *washers = bolt.washers;
    return status;
}

/*
 * Refuses what a bolt goes through: at the bow the tube, else the end wall's member. How thick it may be depends on
 * washers too, and is not said.
 */
static tside_status no_bolt(tside_item_code code, tside_which_end which, tside_fault *fault)
{
    if (code == TSIDE_ITEM_BOW_BOLT)
        return at_odds(which, "fittings.bolt_size",
                       tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "extender.tube.side", "",
                                      "no stock bolt goes through tube and bow"),
                       fault);
    return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "fittings.member_depth", "fittings.bolt_size",
                          "no stock bolt goes through tube and member");
}

/* washers, size: m, receive what its nut needs. */
static tside_status add_bolt(list *l, tside_item_code code, tside_which_end which, double grip, int *washers,
                             double *size, tside_fault *fault)
{
    tside_bolt_plan chosen;
    if (choose_bolt(l, grip, &chosen, washers) != TSIDE_OK)
        return no_bolt(code, which, fault);
    *size = chosen.diameter;
    TRY(check_hole(which, "extender.bolt_hole", tside_i_end(l->side, which)->extender.bolt_hole, "fittings.bolt_size",
                   *size, fault));
    add(l, &(tside_item){.code = code, .at = at_end(which), .count = 1, .length = chosen.length, .size = *size});
    return TSIDE_OK;
}

static tside_status take_extender(list *l, tside_which_end which, tside_fault *fault)
{
    const tside_extender *extender = &tside_i_end(l->side, which)->extender;
    const tside_fittings *f = l->fittings;
    tside_item_at at = at_end(which);
    double length = end_plan(l, which)->layout.cut_length, size;
    int at_bow, at_member; /* washers */
    if (tside_i_end(l->side, which)->guide.foot != TSIDE_FOOT_FIXED)
        TRY(check_hole(which, "extender.eye_hole", extender->eye_hole, "fittings.eye_size", f->eye_size, fault));
    add_eye(l, which, extender->eye_stand_off + extender->tube.side);
    add(l, &(tside_item){.code = TSIDE_ITEM_EXTENDER,
                         .at = at,
                         .hand = hand_at(l->side, which),
                         .by = TSIDE_BY_CUT,
                         .count = 1,
                         .length = length,
                         .size = extender->tube.side,
                         .shape = TSIDE_SQUARE_TUBE,
                         .wall = extender->tube.wall,
                         .material = extender->material,
                         .stock_given = extender->stock_given,
                         .stock = extender->stock_given ? extender->stock : 0});
    /* a patch under the tube at each bolt, and one more inside at the member */
    TRY(add_bolt(l, TSIDE_ITEM_BOW_BOLT, which, extender->tube.side + f->patch_thickness + l->side->frame.tube.diameter,
                 &at_bow, &size, fault));
    TRY(add_bolt(l, TSIDE_ITEM_MEMBER_BOLT, which, extender->tube.side + 2 * f->patch_thickness + f->member_depth,
                 &at_member, &size, fault));
    add_counted(l, TSIDE_ITEM_BOLT_NUT, at, 2, size);
    add_counted(l, TSIDE_ITEM_BOLT_WASHER, at, at_bow + at_member, size);
    add_counted(l, TSIDE_ITEM_PATCH, at, f->patches, 0);
    return TSIDE_OK;
}

static tside_status take_end(list *l, tside_which_end which, tside_fault *fault)
{
    TRY(take_guide(l, which, fault));
    if (tside_i_end(l->side, which)->hung == TSIDE_ON_EXTENDER)
        return take_extender(l, which, fault);
    add_eye(l, which, 0);
    return TSIDE_OK;
}

/* --- channel, rope, cord --- */

static void add_channel(list *l, int count, double length)
{
    if (count > 0)
        add(l, &(tside_item){.code = TSIDE_ITEM_CHANNEL,
                             .by = TSIDE_BY_CUT,
                             .count = count,
                             .length = length,
                             .stock_given = 1,
                             .stock = l->fittings->channel_stock});
}

/* How a length is covered by pieces of a stock: whole ones, and what is cut. */
typedef struct covering {
    int whole, cuts;
    double cut;
} covering;

/*
 * Whole lengths, and the rest. A rest too short to cut is no piece: it and the whole length before it become two equal
 * pieces, so that all is covered; what is shorter altogether gets the shortest piece. This library's choice.
 */
static covering cover(double length, double stock)
{
    const int whole = spaces(length, stock) - 1;
    const double rest = length - whole * stock;
    if (rest >= TSIDE_I_SHORTEST_CUT)
        return (covering){whole, 1, rest};
    return whole ? (covering){whole - 1, 2, (stock + rest) / 2} : (covering){0, 1, TSIDE_I_SHORTEST_CUT};
}

/* Along the side and up each flap: whole lengths together, then what is cut. */
static void take_channel(list *l)
{
    double side = l->side->length, flap = flap_length(l), stock = l->fittings->channel_stock;
    const covering of_side = cover(side, stock), of_flap = cover(flap, stock);
    int flaps = l->fittings->end_flaps;
    add_channel(l, of_side.whole + flaps * of_flap.whole, stock);
    add_channel(l, of_side.cuts, of_side.cut);
    add_channel(l, flaps * of_flap.cuts, of_flap.cut);
    add_length(l, TSIDE_ITEM_WIRE, TSIDE_AT_SIDE, side + flaps * flap);
    add_counted(l, TSIDE_ITEM_CHANNEL_SCREW, TSIDE_AT_SIDE,
                spaces(side, l->side->curtain.screw_spacing) + 1 +
                    flaps * (spaces(flap, l->side->curtain.screw_spacing) + 1),
                0);
}

/* The rope zigzags between two rows of hooks staggered half a pitch. */
static double zigzag(int pitches, double pitch, double height)
{
    return 2 * pitches * hypot(pitch / 2, height);
}

/* Of ropes that are known only to press: as many as the bows ask. */
static tside_status guess_rope(list *l, tside_fault *fault)
{
    const tside_fittings *f = l->fittings;
    double height = l->side->curtain.hip - (l->side->curtain.sill - f->hook_drop);
    int pitches = spaces(l->side->length, f->bow_spacing * f->rope_every);
    if (height <= 0)
        REFUSE(fault, TSIDE_CONTRADICTS, "fittings.hook_drop", "curtain.hip", "the lower hooks are not below the hip",
               "m", f->hook_drop, TSIDE_NOT_ABOVE, l->side->curtain.sill - l->side->curtain.hip, 0);
    add_length(l, TSIDE_ITEM_ROPE, TSIDE_AT_SIDE, zigzag(pitches, l->side->length / pitches, height) + f->rope_spare);
    add_counted(l, TSIDE_ITEM_HOOK, TSIDE_AT_SIDE, 2 * pitches + 1,
                0); /* at both ends of the upper row, and between them below */
    return TSIDE_OK;
}

static tside_status take_rope(list *l, tside_fault *fault)
{
    const tside_roped *ropes = &l->plan->rope.bears;
    if (l->side->ropes == TSIDE_NO_ROPES)
        return TSIDE_OK;
    if (!l->plan->rope_given)
        return guess_rope(l, fault);
    add_length(l, TSIDE_ITEM_ROPE, TSIDE_AT_SIDE, ropes->rope_length);
    add_counted(l, TSIDE_ITEM_HOOK, TSIDE_AT_SIDE, ropes->upper_hooks, 0);
    add_counted(l, TSIDE_ITEM_ANCHOR, TSIDE_AT_SIDE, ropes->lower_hooks, 0);
    return TSIDE_OK;
}

static void take_cord(list *l)
{
    if (l->side->drive.kind == TSIDE_MOTOR && l->fittings->cord_given)
        add_length(l, TSIDE_ITEM_CORD, TSIDE_AT_DRIVE_END, l->fittings->cord + 1.5 * l->plan->opening);
}

/* --- numbers in marks --- */

/* A whole length of channel is not cut, and all are alike. */
static int is_numbered(const tside_item *item)
{
    return tside_i_mark_kind(item->code) &&
           !(item->code == TSIDE_ITEM_CHANNEL && fabs(item->length - item->stock) <= FITS);
}

static void number_pieces(list *l)
{
    for (int i = 0; i < l->count; i++) {
        tside_item *item = l->items + i;
        if (!is_numbered(item))
            continue;
        item->first_number = 1;
        for (const tside_item *before = l->items; before < item; before++)
            if (before->first_number && before->code == item->code && before->at == item->at)
                item->first_number = before->first_number + before->count;
    }
}

/* --- masses --- */

/* kg/m, of an item's tube; 0 where that contradicts itself. */
static double tube_mass(const list *l, const tside_item *item)
{
    const tside_round round = {item->size, item->wall};
    const tside_which_end which = item->at == TSIDE_AT_FREE_END ? TSIDE_FREE_END : TSIDE_DRIVE_END;
    tside_metal_values metal;
    tside_section section;
    return tside_i_material_values(&item->material, &metal, NULL) == TSIDE_OK &&
                   (item->shape == TSIDE_ROUND_TUBE
                        ? tside_i_round_section(&round, metal.density, &section, NULL)
                        : tside_i_square_section(&tside_i_end(l->side, which)->extender.tube, metal.density, &section,
                                                 NULL)) == TSIDE_OK
               ? section.mass
               : 0;
}

/* kg, of each piece; 0 where it is not known. */
static double mass_of(const list *l, const tside_item *item)
{
    if (item->shape != TSIDE_NO_TUBE)
        return tube_mass(l, item) * item->length;
    if (item->by == TSIDE_BY_SHEET)
        return l->side->curtain.areal_mass * item->width * item->length;
    switch (item->code) {
    case TSIDE_ITEM_DRIVE: return l->side->drive.mass;
    case TSIDE_ITEM_COLLAR: return l->side->collar.mass;
    case TSIDE_ITEM_CLIP: return l->side->bar.clip_mass * l->plan->curtain_length / item->count;
    default: return 0;
    }
}

static void weigh(list *l)
{
    for (int i = 0; i < l->count; i++) {
        l->items[i].mass = mass_of(l, l->items + i);
        l->items[i].mass_given = l->items[i].mass > 0;
    }
}

static tside_status take_all(list *l, tside_fault *fault)
{
    take_curtain(l);
    TRY(take_bar(l, fault));
    take_bar_hardware(l);
    TRY(take_end(l, TSIDE_DRIVE_END, fault));
    TRY(take_end(l, TSIDE_FREE_END, fault));
    take_channel(l);
    TRY(take_rope(l, fault));
    take_cord(l);
    number_pieces(l);
    weigh(l);
    return TSIDE_OK;
}

tside_status tside_takeoff(const tside_side *side, const tside_plan *plan, const tside_fittings *fittings,
                           tside_item *items, int capacity, int *count, tside_fault *fault)
{
    list l = {.side = side, .plan = plan, .fittings = fittings};
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    TRY(tside_i_check(&tside_i_fittings_table, "fittings", fittings, fault));
    TRY(tside_i_settle(&tside_i_side_table, NULL,
                       tside_i_settle(&tside_i_fittings_table, "fittings", take_all(&l, fault), fault), fault));
    *count = l.count;
    if (l.count > capacity)
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "the take-off has more lines", "1", capacity, TSIDE_BELOW,
               l.count, 0);
    return ANSWER_LIST(&tside_i_item_table, l.items, items, l.count, fault);
}
