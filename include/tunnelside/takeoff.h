/* SPDX-License-Identifier: MIT */
/*
 * The take-off: every piece of a planned side, how many, how long, of which hand and from which
 * stock.
 */
#ifndef TUNNELSIDE_TAKEOFF_H
#define TUNNELSIDE_TAKEOFF_H

#include <tunnelside/bolt.h>
#include <tunnelside/plan.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What the take-off must know beside the side. */
typedef struct tside_fittings {
    double rail_allowance;     /* m, of curtain above its fixing, in the channel */
    double hem;                /* m, of curtain at the bar, beyond what is on it when shut */
    int end_flaps;             /* inside the curtain, against the end walls */
    double flap_width;         /* m, of one end flap */
    double clip_spacing;       /* m, the most between clips on the bar */
    double channel_stock;      /* m, one length of channel */
    double bow_spacing;        /* m, between bows */
    int rope_every;            /* the rope goes to every bow, or every second ... */
    double hook_drop;          /* m, lower hooks below the sill */
    double rope_spare;         /* m, of rope for tying both ends */
    double guide_stock;        /* m, one length of guide pipe */
    double member_depth;       /* m, the end wall's member, along its bolt */
    tside_hardware hardware;   /* of bolts, eye bolt and guide pipe */
    tside_bolt_size bolt_size; /* of bow and member bolts */
    tside_washer washer;       /* under their nuts */
    int washers;               /* flat washers under each of their nuts, at least */
    double eye_size;           /* m, nominal diameter of the eye bolt */
    int eye_nuts;              /* on each eye bolt, each with a washer */
    int chain_links;           /* connecting links on each chain */
    int patches;               /* of tape, for each extender */
    double patch_thickness;    /* m */
    int cord_given;
    double cord; /* m, flexible cord from the supply to the drive when shut, one way,
                             * without what it needs to follow the drive */
} tside_fittings;

typedef enum tside_item_code {
    TSIDE_ITEM_CURTAIN, /* width from rail to hem, length along the side */
    TSIDE_ITEM_FLAP,    /* end flap */
    TSIDE_ITEM_BAR,     /* a stick of the roll bar; where it has joints as given, the
                                * whole bar with what they lose */
    TSIDE_ITEM_SPLICE_SCREW,
    TSIDE_ITEM_COUPLING_SCREW, /* of the drive on the bar */
    TSIDE_ITEM_CLIP,           /* curtain to bar */
    TSIDE_ITEM_DRIVE,
    TSIDE_ITEM_COLLAR, /* at the free end */
    TSIDE_ITEM_GUIDE,  /* guide pipe */
    TSIDE_ITEM_CHAIN,
    TSIDE_ITEM_CHAIN_LINK,
    TSIDE_ITEM_EYE, /* eye bolt; length: from the guide's line through the tube,
                                * without nuts and washers; 0 in the hip rail */
    TSIDE_ITEM_EYE_NUT,
    TSIDE_ITEM_EYE_WASHER,
    TSIDE_ITEM_EXTENDER,    /* drilled as the plan's layout says */
    TSIDE_ITEM_BOW_BOLT,    /* carriage bolt, extender to bow */
    TSIDE_ITEM_MEMBER_BOLT, /* carriage bolt, extender to the end wall's member */
    TSIDE_ITEM_BOLT_NUT,
    TSIDE_ITEM_BOLT_WASHER,
    TSIDE_ITEM_PATCH,   /* of tape */
    TSIDE_ITEM_CHANNEL, /* that holds curtain and flaps */
    TSIDE_ITEM_WIRE,    /* that locks them in it */
    TSIDE_ITEM_CHANNEL_SCREW,
    TSIDE_ITEM_ROPE,   /* against billowing */
    TSIDE_ITEM_HOOK,   /* for the rope, at bows and below; only above where anchors have a line */
    TSIDE_ITEM_ANCHOR, /* for the rope, below, where it is known how ropes run */
    TSIDE_ITEM_CORD,   /* flexible cord of the motor */
    TSIDE_ITEM_CODES
} tside_item_code;

/* Where a piece belongs. */
typedef enum tside_item_at { TSIDE_AT_SIDE, TSIDE_AT_DRIVE_END, TSIDE_AT_FREE_END } tside_item_at;

/* Seen from outside the wall it is bolted to: a right-hand extender rises to the right. */
typedef enum tside_item_hand {
    TSIDE_UNHANDED,
    TSIDE_RIGHT_HANDED,
    TSIDE_LEFT_HANDED
} tside_item_hand;

/* How a piece is counted. */
typedef enum tside_item_by {
    TSIDE_BY_COUNT,  /* so many of them; length: of a bolt to buy, from under its head */
    TSIDE_BY_CUT,    /* so many, each cut to length */
    TSIDE_BY_LENGTH, /* length: of all of it; count 1 */
    TSIDE_BY_SHEET   /* so many, each of width by length */
} tside_item_by;

typedef enum tside_shape { TSIDE_NO_TUBE, TSIDE_ROUND_TUBE, TSIDE_SQUARE_TUBE } tside_shape;

/*
 * One line of the take-off. Pieces of one tube have equal shape, size, wall and material, on
 * whichever side they stand.
 */
typedef struct tside_item {
    tside_item_code code;
    tside_item_at at;
    tside_item_hand hand;
    tside_item_by by;
    int count;
    double length; /* m */
    double width;  /* m, of a sheet; else 0 */
    double size;   /* m, outside diameter or side of a tube, nominal diameter of a bolt and what
                     * belongs on it; else 0 */
    double wall;   /* m, of a tube; else 0 */
    tside_shape shape;
    tside_material material; /* of a tube */
    int first_number; /* in the mark of the first of its pieces, the others count on from it; 0 where
                       * they carry none */
    int mass_given;
    double mass; /* kg, of each piece; of all where it is counted by length; given with mass */
    int stock_given;
    double stock; /* m, the length that it is cut from, where the side or its fittings say */
} tside_item;

enum { TSIDE_ITEMS = 48 }; /* no side has more lines */

/*
 * Every piece of a side.
 *
 * Lines follow the codes from curtain to collar, then come the drive's end, the free end, and the
 * rest; a piece of which there is none has no line.
 *
 * The curtain: rail allowance + hanging when shut + wound on the bar when shut + hem, by the side
 * + what passes each end bow. The end flaps: as high as the curtain hangs when shut, and half its
 * roll, with both allowances. The bar: as tside_bar_sticks, or, with joints as given, its whole
 * length and a swage for each. The clips: from edge to edge of the curtain, no farther apart than
 * their spacing. The channel: along the side and up each flap, in whole lengths and a rest, wire
 * as long, screws at each end of each run and between; a rest below 10 mm and the whole length
 * before it become two equal pieces, and a run that is shorter altogether gets a piece of 10 mm.
 * Rope, hooks and anchors: as the plan has them where it is known how ropes run; where they only
 * press, rope zigzagging between hooks at the hip and lower hooks staggered half a pitch, 2 N
 * hypot(pitch/2, height), a pitch not above that of the bows taken, and its spare. Cord, only for
 * a motor and where given: one way + 1.5 times the opening. Extenders, bolts and their patches:
 * only at an end on an extender. The bolts: as tside_bolt_choose, for the tube, the bow or the
 * member, and one patch of tape at the bow, two at the member; with more washers where the thread
 * would not reach. What is cut or drilled is numbered, each end's pieces for themselves: sticks of
 * the bar in their order from the drive; of the channel only what is shorter than a whole length,
 * which is not cut. Masses: of tube and sheet, of drive and collar as the side has them, of a clip
 * its share of what the side says of a metre of bar; of other small parts none is known.
 * side: every field checked.
 * plan: made by tside_plan_side of that side.
 * fittings: every field checked.
 * items: receives the lines.
 * capacity: any, how many there is room for; TSIDE_ITEMS always serve.
 * count: receives the lines written, or needed.
 * TSIDE_OUT_OF_BOUNDS: a field of side or fittings.
 * TSIDE_CONTRADICTS: a bolt or eye bolt thicker than its hole; a guide longer than its stock; lower
 * hooks not below the hip; as tside_bar_sticks.
 * TSIDE_OUT_OF_REACH: no stock bolt is long enough; the fault's field is then the
 * extender's tube (at the bow) or fittings.member_depth.
 * TSIDE_TOO_SMALL: more lines than capacity: only count is written.
 * Accuracy: what the plan has, such as guides and extenders, to the last bit, other lengths to 1e-15
 * of the side's; masses to 1e-15, relative, of tube's and sheet's by the metre times that.
 * Sources: common practice, no published source, for what is counted by what; lengths by
 * derivation.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_takeoff(const tside_side *side, const tside_plan *plan,
                                                     const tside_fittings *fittings,
                                                     tside_item *items, int capacity, int *count,
                                                     tside_fault *fault);

/*
 * What a piece is, in words, such as "guide pipe".
 * code: any, a tside_item_code.
 * Returns a constant string; "" for a code that does not exist.
 * Source: this library's choice of words.
 */
TSIDE_API const char *tside_item_text(int code);

#ifdef __cplusplus
}
#endif
#endif
