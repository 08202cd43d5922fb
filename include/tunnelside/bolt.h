/* SPDX-License-Identifier: MIT */
/*
 * Carriage bolts (round head, square neck): which length to buy for a grip, which holes to drill,
 * which wrench, how near to a tube's end, and how much of bolt and tube a force uses. For choosing
 * parts, not a certificate. The tube, not the bolt, limits tightening: hollow walls crush first.
 * Tighten until the parts are snug, and stop before a wall dents; a sleeve inside the tube, or a
 * wide washer, takes more.
 */
#ifndef TUNNELSIDE_BOLT_H
#define TUNNELSIDE_BOLT_H

#include <tunnelside/material.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Inch bolts with coarse thread (UNC), metric ones with coarse pitch. */
typedef enum tside_bolt_size {
    TSIDE_BOLT_1_4,
    TSIDE_BOLT_5_16,
    TSIDE_BOLT_3_8,
    TSIDE_BOLT_7_16,
    TSIDE_BOLT_1_2,
    TSIDE_BOLT_M6,
    TSIDE_BOLT_M8,
    TSIDE_BOLT_M10,
    TSIDE_BOLT_M12
} tside_bolt_size;

/*
 * How much wider than the bolt its round hole is: ASME B18.2.8 (close, normal, loose), ISO 273
 * (fine, medium, coarse).
 */
typedef enum tside_clearance { TSIDE_CLOSE, TSIDE_NORMAL, TSIDE_LOOSE } tside_clearance;

typedef enum tside_washer {
    TSIDE_WASHER_NARROW, /* ASME B18.21.1 type A narrow (SAE); ISO 7089 */
    TSIDE_WASHER_WIDE    /* ASME B18.21.1 type A wide (USS); ISO 7093-1 */
} tside_washer;

/* Minimum tensile strength by the named standard's grade. */
typedef enum tside_bolt_grade {
    TSIDE_BOLT_GRADE_UNKNOWN, /* no strength known: a utilisation becomes "needs a tensile
                               * strength of at least" */
    TSIDE_BOLT_GRADE_GIVEN,   /* the caller's own allowable shear */
    TSIDE_A307_A,             /* ASTM A307 grade A, inch */
    TSIDE_J429_2,             /* SAE J429 grade 2, inch; longer than 6 in only as strong as its
                               * grade 1 */
    TSIDE_J429_5,
    TSIDE_J429_8,
    TSIDE_CLASS_4_8, /* ISO 898-1, metric */
    TSIDE_CLASS_8_8,
    TSIDE_CLASS_10_9
} tside_bolt_grade;

/* A bolted point: what is asked of its bolt. */
typedef struct tside_bolt {
    tside_bolt_size size;
    double grip; /* m, between head and nut, without washers: of a square tube on a round
                          * bow, its side + the bow's diameter */
    tside_washer washer;
    int washers; /* flat washers under the nut */
    tside_clearance clearance;
    tside_bolt_grade grade;
    double shear_limit; /* N, allowable shear in one plane, with TSIDE_BOLT_GRADE_GIVEN */
    int planes;         /* planes in which it is sheared: 1 where two parts lie on each other */
    int force_given;
    double force; /* N, across the bolt */
} tside_bolt;

/* The bolt to buy, and what to drill and turn it with. */
typedef struct tside_bolt_plan {
    double diameter;     /* m */
    double pitch;        /* m */
    double length;       /* m, to buy: from under the head */
    double thread;       /* m, least length of the thread */
    double unthreaded;   /* m, from under the head, at most: less than the grip with its washers */
    double beyond;       /* m, what stands out of the nut, at least */
    double hole;         /* m, diameter of the round hole */
    double square_hole;  /* m, side of the square hole for the neck, where the head bears on a
                          * tube's wall: the round hole, filed square */
    double neck;         /* m, side of the square neck, at most */
    double neck_depth;   /* m, at most, from under the head */
    double nut_height;   /* m, at most */
    double wrench;       /* m, across the nut's flats */
    double washer_hole;  /* m, diameter */
    double washer_outer; /* m, diameter */
    double edge;         /* m, hole's centre to any edge or end, at least */
    double stress_area;  /* m2, of the thread */
    int shear_limit_given;
    double shear_limit; /* N, allowable on the bolt in all its planes */
    int utilisation_given;
    double utilisation; /* 1, force over that */
    int strength_needed_given;
    double strength_needed; /* Pa, tensile strength, where there is a force and no grade is known */
} tside_bolt_plan;

/*
 * Chooses the bolt for a bolted point: the next stock length that takes grip, washers, nut and two
 * threads beyond it, and whose thread begins within grip and washers, so that the nut tightens.
 *
 * Washers and nut count at the limit of their tolerances that is the worse; a bolt shorter than its
 * usual thread is threaded to within three pitches of its neck.
 * bolt: every field checked, what is asked; its grip from 1 mm to 0.4 m.
 * plan: receives the answer.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: a grade of the other series of sizes; or the nut would meet the unthreaded
 * shank before it is tight: the fault's field is then bolt.washers and its bound how many of the
 * washers asked mend it (with that many, call again).
 * TSIDE_OUT_OF_REACH: no stock bolt is long enough, the bound then being the greatest grip; or,
 * near it, washers do not mend the thread.
 * Accuracy: the length is one of the list; lengths to 5e-16, relative, of what is printed, thread
 * and beyond to 1e-16 m; area and strength to 2e-15, relative.
 * Sources: stock lengths 3/4 to 3 in by 1/4, to 6 in by 1/2, to 12 in by 1 in: common practice, no
 * published source; 20 to 70 mm by 5, to 160 by 10, to 200 by 20: ISO 888, from memory. Thread 2d +
 * 1/4 in to a length of 6 in, 2d + 1/2 in above: ASME B18.5, from memory; 2d + 6 mm to 125 mm, 2d +
 * 12 mm above: ISO 8677, from memory. Least edge distance 1.5 d, all from memory: AISC 360-16,
 * Table J3.4, for the 1/2 in bolt; AISI S100 for bolts in cold-formed steel, and the Aluminum
 * Design Manual. Shear 0.563 Fu (AISC 360-16, Table J3.2, from memory) / 2.00 on the thread's
 * stress area, which for bolts this small is on the safe side of that table's 0.8 of the shank.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bolt_choose(const tside_bolt *bolt,
                                                         tside_bolt_plan *plan, tside_fault *fault);

/* A part that bears on the bolt. */
typedef struct tside_bolt_part {
    double wall; /* m */
    int walls;   /* that share the force: 1 where the other part lies against one of them,
                    * which then takes it whole; 2 where it is held on both sides */
    tside_material material;
    int edge_given;
    double edge; /* m, hole's centre to the part's end, where the force acts towards it */
} tside_bolt_part;

typedef struct tside_bearing {
    int limit_given;
    double limit; /* N, allowable */
    int utilisation_given;
    double utilisation; /* 1, the bolt's force over that */
    int yield_needed_given;
    double yield_needed; /* Pa, where there is a force and no yield is known */
} tside_bearing;

/*
 * What a tube or plate bears of a bolt's force: of each wall, of steel the lesser of 1.2 lc t Fy
 * and 1.8 d t Fy, / 2.00, lc from the hole's edge (the square one's where it is wider) to the
 * part's end; of aluminium the lesser of e t Fty and 2 d t Fty, / 1.95, e from the hole's centre to
 * the end.
 * bolt: every field checked, as chosen, with its force.
 * part: every field checked; wall from 0.01 mm to 0.1 m, in one or two walls, the bolt not sheared
 * between them.
 * bearing: receives the answer.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: a grade of the other series of sizes, or of another metal; an edge distance
 * below the least, which is the bound.
 * Accuracy: to 2e-15, relative.
 * Sources: steel: AISC 360-16, J3.10 (there with Fu, here with the yield, which is less) and J7,
 * for bolts through hollow sections, both from memory; aluminium: Aluminum Design Manual, J.3, from
 * memory (there with Ftu).
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bolt_bearing(const tside_bolt *bolt,
                                                          const tside_bolt_part *part,
                                                          tside_bearing *bearing,
                                                          tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
