/* SPDX-License-Identifier: MIT */
/*
 * Strips of the full-size template: what is cut out of paper and laid on a tube to find the middle of a hole. All in
 * metres, of the paper as of the tube: from the strip's left end to the right, and from its upper edge down.
 */
#ifndef DRAW_STRIP_H
#define DRAW_STRIP_H

/* Its length, and how much of that lies behind the hole, where the tube has as much. */
#define STRIP_LENGTH 0.150
#define STRIP_BEHIND 0.110

typedef enum strip_face { FACE_OUTER, FACE_WALL } strip_face;

/* A hole's middle: where two lines cross. */
typedef struct cross {
    double x, y;
} cross;

/* Of one face of a square tube: its two long edges are the face's own, and it is never bent round them. */
typedef struct face_strip {
    double length, width; /* along the tube, and across it: the face's */
    cross hole;
    double diameter;  /* of the hole */
    double ahead;     /* from the hole to the strip's end towards the tube's top end */
    int at_top;       /* 1: its end there is the tube's own */
    int top_at_right; /* 1: the face towards the wall is looked at from its other side, so all is mirrored */
} face_strip;

/* side: of the tube; from_top: from its top end to the hole; beyond: from there to its other end. */
face_strip strip_of_face(double side, double from_top, double beyond, double diameter, strip_face face);

enum { BOW_CROSSES = 2 };

/* Once round a round tube: where the drill goes in, and half of it on, where it comes out. */
typedef struct bow_strip {
    double length; /* pi d: its ends meet on the tube */
    cross holes[BOW_CROSSES];
    double diameter; /* of the hole */
} bow_strip;

/* tube: its diameter; width: of the strip, any. */
bow_strip strip_of_bow(double tube, double width, double diameter);

#endif
