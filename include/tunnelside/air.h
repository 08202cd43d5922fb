/* SPDX-License-Identifier: MIT */
/* Air: what an opened side lets through, how warm the house gets, and how far to open it. */
#ifndef TUNNELSIDE_AIR_H
#define TUNNELSIDE_AIR_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

/* By which sides air comes and goes. */
typedef enum tside_air_sides {
    TSIDE_AIR_UNASKED,
    TSIDE_AIR_ONE,   /* this side alone: the other is shut */
    TSIDE_AIR_ALIKE, /* the other opens as far as this one */
    TSIDE_AIR_OTHER  /* the other's opening is given, and stays */
} tside_air_sides;

/* What warms the air within. */
typedef enum tside_air_warmth {
    TSIDE_AIR_WARMER,    /* it is so much warmer as given */
    TSIDE_AIR_IN_THE_SUN /* as much warmer as sun, losses and flow make it */
} tside_air_warmth;

typedef enum tside_roof_vent { TSIDE_NO_ROOF_VENT, TSIDE_ROOF_VENT } tside_roof_vent;

/* The house and the weather, as far as air asks. */
typedef struct tside_air {
    tside_air_sides sides;
    double other_opening; /* m, with TSIDE_AIR_OTHER */
    double other_length;  /* m, with TSIDE_AIR_OTHER */
    double blocked;       /* 1, of the openings, by what stands in them */
    double wind;          /* m/s, mean and no gust: at the openings, or 10 m up where one side is
                           * open */
    double effectiveness; /* 1, of two openings across the wind */
    tside_air_warmth warmth;
    double warmer;       /* K, within over without, with TSIDE_AIR_WARMER */
    double outside;      /* degC */
    double sun;          /* W/m2, on level ground */
    double transmission; /* 1, of it that comes through the film */
    double evaporation;  /* 1, of that which evaporates water */
    double cover_area;   /* m2, film of roof, ends and sides */
    double cover_loss;   /* W/(m2 K), through the film */
    double floor_area;   /* m2 */
    double volume;       /* m3 */
    double density;      /* kg/m3, of air */
    double heat;         /* J/(kg K), of air, at one pressure */
    tside_roof_vent roof_vent;
    double vent_area; /* m2 */
    double vent_rise; /* m, middle of the roof vent over the middle of the sides' openings */
    int changes_asked_given, rise_asked_given;
    double changes_asked; /* /s, of the whole air */
    double rise_asked;    /* K, within over without, in the sun */
    double bar_warming;   /* K, of the bar, from the day it was hung to the hottest */
} tside_air;

/* What drives the flow that counts. */
typedef enum tside_air_driven {
    TSIDE_BY_WIND,  /* in at one opening, out at the other; or in and out of one */
    TSIDE_BY_WARMTH /* in below, out above: of one opening, or from the sides to a roof vent */
} tside_air_driven;

/* What an opening does for the air. */
typedef struct tside_airing {
    double area;         /* m2, of this side's opening */
    double other_area;   /* m2, of the other's */
    double floor_share;  /* 1, both over the floor */
    double vent_share;   /* 1, roof vent over the floor; 0 without one */
    double flow_wind;    /* m3/s, by wind alone */
    double flow_warmth;  /* m3/s, by warmth alone, through the sides */
    double flow_vent;    /* m3/s, by warmth alone, from the sides to the roof vent */
    double flow;         /* m3/s, the greatest of them */
    tside_air_driven by; /* what drives it */
    double changes;      /* /s, of the whole air */
    double rise;         /* K, within over without */
    int for_changes_given, for_rise_given; /* 1 where asked, and this opening is enough */
    double for_changes;                    /* m, the least opening that gives the changes asked */
    double for_rise; /* m, the least opening that keeps the rise to that asked */
} tside_airing;

/*
 * The air that goes through a side opened so far, and how warm it gets within; and how much of that
 * opening would do for the changes or the rise that are asked. Of wind and warmth the greater
 * counts alone: they do not add up. A crop, screens, neighbouring houses and a wind along the house
 * let less through: this is for comparing openings, and no promise of a temperature.
 * air: every field checked, with its sides asked.
 * length: m, from 0, of the opening, along the house.
 * opening: m, from 0, its height.
 * airing: receives the answer.
 * TSIDE_OUT_OF_BOUNDS: a field or argument, or air that is not asked.
 * Limits: a shut side lets nothing through; without wind and warmth nothing flows; a roof vent
 * alone, above shut sides, counts for nothing.
 * Accuracy: of the formulas to 4e-15, relative, the least openings to where the flow is off by
 * 4e-15 of itself; within 8 % of a network of strips with the same coefficients where both sides
 * are alike; up to a third below it, on the safe side, where they are not; the coefficients
 * themselves are known to some 20 %.
 * Source: across the wind, two openings in series, and their effectiveness: ASHRAE Handbook of
 * Fundamentals, natural ventilation; one side, by wind and by warmth: Warren and Parkins 1984;
 * roof vent: orifices in series, derivation; that the greatest counts is this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_air_through(const tside_air *air, double length,
                                                         double opening, tside_airing *airing,
                                                         tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
