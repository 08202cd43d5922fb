/* SPDX-License-Identifier: MIT */
/* The hung guide as the library's own files see it. */
#ifndef TUNNELSIDE_I_GUIDE
#define TUNNELSIDE_I_GUIDE

#include <tunnelside/guide.h>

#include "base/fault.h"
#include "shape/peak.h"
#include "shape/travel.h"

/* How the guide stands with the bar at a spot. */
typedef struct tside_i_lean {
    double reach;        /* d, eye to collar along the guide */
    double sine, cosine; /* of the lean phi */
    double rate;         /* phi', per radian of bar angle */
} tside_i_lean;

/* From p = B - E: the guide's direction g has p = d g - o Jg, with J a quarter turn, hence g = (d p + o Jp)/R^2. */
static inline tside_i_lean tside_i_lean_at(double eye_x, double eye_y, double offset, const tside_i_spot *spot)
{
    double px = spot->x - eye_x, py = spot->y - eye_y, square = px * px + py * py,
           reach = sqrt(square - offset * offset);
    tside_i_lean lean;
    lean.reach = reach;
    lean.sine = (reach * px - offset * py) / square;
    lean.cosine = -(reach * py + offset * px) / square;
    lean.rate = (spot->vx * lean.cosine + spot->vy * lean.sine) / reach;
    return lean;
}

/* Of a guide that hangs. */
static inline tside_i_lean tside_i_hang_lean(const tside_hang *hang, const tside_i_spot *spot)
{
    return tside_i_lean_at(hang->eye_x, hang->eye_y, hang->offset, spot);
}

static inline double tside_i_lean_angle(const tside_i_lean *lean)
{
    return atan2(lean->sine, lean->cosine);
}

/*
 * What the drive has turned against its housing, which turns with the guide, but for a constant; in radians. hang may
 * be NULL: a housing that stands.
 */
static inline double tside_i_drive_angle(const tside_travel *travel, const tside_hang *hang, const tside_i_spot *spot)
{
    tside_i_lean lean;
    if (!hang)
        return tside_i_travel_angle(travel, spot);
    lean = tside_i_hang_lean(hang, spot);
    return tside_i_travel_angle(travel, spot) - tside_i_lean_angle(&lean);
}

/* D, eye to collar along a guide that leans along the house too; d, to the last bit, in line. */
static inline double tside_i_reach(const tside_hang *hang, const tside_i_lean *lean)
{
    return hang->misfit != 0 ? hypot(lean->reach, hang->misfit) : lean->reach;
}

/* What of a guide's length the cross-section shows, d/D; 1, to the last bit, in line. */
static inline double tside_i_shown(double reach, double misfit)
{
    return misfit != 0 ? reach / hypot(reach, misfit) : 1;
}

/*
 * Wg x_cg + Wd e: what guide and drive weigh about the eye, against the drive's torque. Of a guide leaning along the
 * house the cross-section shows d/D.
 */
static inline double tside_i_hang_moment(const tside_hang *hang, const tside_i_lean *lean)
{
    return hang->weight * (hang->chain + hang->length) / 2 * tside_i_shown(lean->reach, hang->misfit) * lean->sine +
           hang->carried * hang->carried_offset;
}

/*
 * Refuses an eye, or a fixed guide's top, that does not clear what rides on the guide; spare: receives how much it
 * clears it by.
 */
tside_status tside_i_eye_clears(const tside_i_track *track, const tside_guide *guide, const tside_collar *collar,
                                double eye_y, const tside_i_names *names, double *spare, tside_fault *fault);
/* Where a guide hangs. */
typedef struct tside_i_hanging {
    double eye_x, eye_y; /* m */
    double error;        /* m, by which the eye may be misplaced either way; 0: not asked */
    double misfit;       /* m, how much farther out along the house the collar rides than the eye stands */
    double ground;       /* m, its height there */
} tside_i_hanging;

/*
 * Hangs a guide, also one that its side fixes at its foot, and sweeps it; it passed its check as its collar did. What
 * it gives is touched on failure too.
 */
tside_status tside_i_hang_and_sweep(const tside_i_track *track, const tside_guide *guide, const tside_collar *collar,
                                    const tside_i_hanging *at, const tside_i_names *names, tside_hang *hang,
                                    tside_sweep *sweep, tside_fault *fault);
/* tside_eye_best of numbers within their bounds. */
tside_status tside_i_eye_best(const tside_i_track *track, double eye_y, double collar_offset, double *eye_x,
                              tside_fault *fault);
/* Least and greatest lean over the travel. */
void tside_i_lean_range(const tside_i_track *track, double eye_x, double eye_y, double offset, double *least,
                        double *greatest);

#endif
