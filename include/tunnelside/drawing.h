/* SPDX-License-Identifier: MIT */
/*
 * Drawings of a planned side: strokes, dimensions and notes in metres of the thing drawn, and their
 * SVG. Line types and dimensions as ISO 128 and ISO 129-1 have them, black on white.
 */
#ifndef TUNNELSIDE_DRAWING_H
#define TUNNELSIDE_DRAWING_H

#include <tunnelside/plan.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Whence a side is seen. No view projects another. */
typedef enum tside_view {
    TSIDE_VIEW_END_WALL,   /* an end wall from outside itself, cropped to what is set out */
    TSIDE_VIEW_WHOLE_WALL, /* the same, the whole bow, small, without dimensions */
    TSIDE_VIEW_CORNER,     /* an end's corner from above, that wall's outside at the foot */
    TSIDE_VIEW_EXTENDER, /* an end's extender as a piece: its face away from the wall, top end left */
    TSIDE_VIEW_ALONG,    /* the side along the house, from outside, shut */
    TSIDE_VIEW_ROLL_SHUT, /* the roll, shut, against board, sill and rail, as at the drive's end */
    TSIDE_VIEW_ROLL_OPEN, /* the same, open */
    TSIDE_VIEW_TURNS,     /* opening, torque and lean over the drive's turns, as figures */
    TSIDE_VIEW_OPENING    /* of these the opening alone */
} tside_view;

/* How lengths are written: 5 ft 0 7/16 in, or 1535 mm. */
typedef enum tside_tape { TSIDE_TAPE_INCH, TSIDE_TAPE_METRIC } tside_tape;

/* What is to be drawn. */
typedef struct tside_picture {
    tside_view view;
    tside_which_end end; /* of the views of one end */
    tside_tape tape;
    double scale; /* 1, how many times smaller on paper: 10 is 1:10 */
    int turns_given;
    double turns; /* turn, of the drive since shut: a place between shut and open, drawn too */
} tside_picture;

/*
 * Every part that a stroke or note can show, one a line: its code, its name, and its words on a
 * drawing. The reach is the farthest that the guide's foot comes, the axis is of a view of figures,
 * and a right-hand extender's top end is that of one which rises to the right, seen from outside its
 * wall.
 */
/* clang-format off */
#define TSIDE_PARTS_LIST(PART) \
    PART(BOW, bow, "bow") \
    PART(MEMBER, member, "member") \
    PART(BOARD, board, "baseboard") \
    PART(RAIL, rail, "rail") \
    PART(SILL, sill, "sill") \
    PART(GROUND, ground, "ground") \
    PART(CURTAIN, curtain, "curtain") \
    PART(BAR, bar, "bar") \
    PART(ROLL, roll, "roll") \
    PART(DRIVE, drive, "drive") \
    PART(COLLAR, collar, "collar") \
    PART(GUIDE, guide, "guide") \
    PART(REACH, reach, "foot's reach") \
    PART(EYE, eye, "eye") \
    PART(EYE_BOLT, eye_bolt, "eye bolt") \
    PART(EXTENDER, extender, "extender") \
    PART(HOLE, hole, "hole") \
    PART(SPACER, spacer, "spacer") \
    PART(KEEP_OUT, keep_out, "keep-out") \
    PART(JOINT, joint, "joint") \
    PART(ROPE, rope, "rope") \
    PART(AXIS, axis, "turns of the drive") \
    PART(OPENING, opening, "opening") \
    PART(TORQUE, torque, "torque") \
    PART(LEAN, lean, "lean") \
    PART(CURTAIN_EDGE, curtain_edge, "curtain's edge") \
    PART(HIP, hip, "hip") \
    PART(FACE, face, "mark, on this face") \
    PART(TOP_RIGHT, top_right, "top end, right-hand") \
    PART(TOP_LEFT, top_left, "top end, left-hand")
/* clang-format on */

#define TSIDE_PARTS_CODE(code, name, words) TSIDE_PART_##code,

/* What a stroke or note shows. */
typedef enum tside_part { TSIDE_PARTS_LIST(TSIDE_PARTS_CODE) TSIDE_PART_CODES } tside_part;

/* In which state a part is shown. */
typedef enum tside_shown {
    TSIDE_SHOWN_ALWAYS,
    TSIDE_SHOWN_SHUT,
    TSIDE_SHOWN_OPEN,
    TSIDE_SHOWN_SHUT_AND_OPEN, /* so near each other on paper that they are one line */
    TSIDE_SHOWN_AT_TURNS       /* at the turns asked */
} tside_shown;

/* Line types of ISO 128-2, by its numbers: 01 wide and narrow, 02, 04. */
typedef enum tside_line_type {
    TSIDE_LINE_WIDE,   /* visible outline */
    TSIDE_LINE_NARROW, /* narrow: a state that is not the first, a rope, the ground's hatching */
    TSIDE_LINE_DASHED, /* hidden */
    TSIDE_LINE_CHAIN   /* centre line */
} tside_line_type;

/*
 * A straight stroke from its beginning to its end, or an arc. Places are to the right and up as
 * seen, from where the view has its origin.
 */
typedef struct tside_stroke {
    tside_part part;
    tside_shown shown;
    tside_line_type line;
    int arc;             /* 1: an arc */
    int index;           /* which keep-out or joint, from 0; else 0 */
    double x, y;         /* m, its beginning; of an arc its centre */
    double x_end, y_end; /* m, its end; unused of an arc */
    double radius;       /* m, of an arc */
    double from, sweep;  /* rad, of an arc, counter-clockwise from level */
} tside_stroke;

/*
 * Every measure that a dimension can tell, one a line: its code, its name, and what it is: a field
 * of the plan or the side, with {end} for drive_end or free_end; and
 * where it is a difference the field that is taken from it, "face" being the bow's outer face at hip
 * height, and a hip_height that is not given curtain.hip.
 */
/* clang-format off */
#define TSIDE_TELLS_LIST(TELLS) \
    TELLS(HIP_ABOVE_GROUND, hip_above_ground, "{end}.hip_height", "") \
    TELLS(BOW_HOLE_HEIGHT, bow_hole_height, "{end}.layout.bow_height", "curtain.hip") \
    TELLS(MEMBER_HOLE_HEIGHT, member_hole_height, "{end}.extender.member_height", "{end}.hip_height") \
    TELLS(MEMBER_HOLE_LEVEL, member_hole_level, "{end}.layout.member_from_outer", "") \
    TELLS(EYE_HEIGHT, eye_height, "{end}.layout.eye_above_hip", "") \
    TELLS(EYE_LEVEL, eye_level, "{end}.layout.eye_outboard", "") \
    TELLS(EYE_TO_MEMBER, eye_to_member, "{end}.layout.member_distance", "") \
    TELLS(HOLE_TO_HOLE, hole_to_hole, "{end}.layout.member_distance", "{end}.layout.bow_distance") \
    TELLS(BOW_HOLE_ALONG, bow_hole_along, "{end}.layout.bow_along", "") \
    TELLS(RUN, run, "{end}.layout.run", "") \
    TELLS(REACH, reach, "{end}.sweep.walkway_error", "face") \
    TELLS(TOP_HEIGHT, top_height, "{end}.fixed.top_y", "curtain.hip") \
    TELLS(TOP_LEVEL, top_level, "{end}.fixed.top_x", "face") \
    TELLS(FOOT_LEVEL, foot_level, "{end}.fixed.foot_x", "face") \
    TELLS(FOOT_DEPTH, foot_depth, "{end}.footing.depth", "") \
    TELLS(CURTAIN_PAST, curtain_past, "curtain.past", "") \
    TELLS(EYE_OFF_BOW, eye_off_bow, "{end}.stand.eye", "") \
    TELLS(EYE_OFF_TUBE, eye_off_tube, "{end}.extender.eye_stand_off", "") \
    TELLS(RUN_ON, run_on, "{end}.stand.run_on", "") \
    TELLS(CUT_LENGTH, cut_length, "{end}.layout.cut_length", "") \
    TELLS(EYE_FROM_TOP, eye_from_top, "{end}.layout.eye_from_top", "") \
    TELLS(BOW_FROM_TOP, bow_from_top, "{end}.layout.bow_from_top", "") \
    TELLS(MEMBER_FROM_TOP, member_from_top, "{end}.layout.member_from_top", "") \
    TELLS(EYE_HOLE, eye_hole, "{end}.extender.eye_hole", "") \
    TELLS(BOW_HOLE, bow_hole, "{end}.extender.bolt_hole", "") \
    TELLS(MEMBER_HOLE, member_hole, "{end}.extender.bolt_hole", "") \
    TELLS(SIDE_LENGTH, side_length, "length", "") \
    TELLS(CURTAIN_LENGTH, curtain_length, "curtain_length", "") \
    TELLS(BAR_LENGTH, bar_length, "bar_length", "") \
    TELLS(JOINT_PLACE, joint_place, "splice_near", "") \
    TELLS(BEYOND_DRIVE, beyond_drive, "bar_beyond_drive", "") \
    TELLS(BEYOND_FREE, beyond_free, "bar_beyond_free", "") \
    TELLS(ROPE_PITCH, rope_pitch, "rope.bears.pitch", "") \
    TELLS(HOOK_HEIGHT, hook_height, "rope.hook_y", "curtain.hip") \
    TELLS(ANCHOR_HEIGHT, anchor_height, "rope.anchor_y", "drive_end.ground") \
    TELLS(SHUT_BELOW_HIP, shut_below_hip, "curtain.hip", "shut.underside") \
    TELLS(SHUT_ABOVE_GROUND, shut_above_ground, "shut.underside", "drive_end.ground") \
    TELLS(SEAL, seal, "seal", "") \
    TELLS(SHUT_DIAMETER, shut_diameter, "shut.diameter", "") \
    TELLS(OPEN_BELOW_HIP, open_below_hip, "curtain.hip", "open.underside") \
    TELLS(OPEN_ABOVE_GROUND, open_above_ground, "open.underside", "drive_end.ground") \
    TELLS(OPENING, opening, "opening", "") \
    TELLS(OPEN_DIAMETER, open_diameter, "open.diameter", "")
/* clang-format on */

#define TSIDE_TELLS_CODE(code, name, of, from) TSIDE_TELLS_##code,

/* What a dimension tells. */
typedef enum tside_tells { TSIDE_TELLS_LIST(TSIDE_TELLS_CODE) TSIDE_TELLS_COUNT } tside_tells;

typedef enum tside_dimension_kind {
    TSIDE_DIMENSION_LEVEL,   /* across the page */
    TSIDE_DIMENSION_PLUMB,   /* up the page: from above, along the house */
    TSIDE_DIMENSION_ALONG,   /* along the line between its two points */
    TSIDE_DIMENSION_ARC,     /* along a curve between them */
    TSIDE_DIMENSION_RUNNING, /* one of several from one end */
    TSIDE_DIMENSION_RADIUS,
    TSIDE_DIMENSION_DIAMETER, /* told at its first point, on the circle */
    TSIDE_DIMENSION_PLACE, /* told at its first point, the second being too far away to be shown */
    TSIDE_DIMENSION_ANGLE  /* from plumb, at its first point */
} tside_dimension_kind;

/* A dimension: what it tells between which points, and where line and text stand. */
typedef struct tside_dimension {
    tside_tells tells;
    tside_dimension_kind kind;
    int index;           /* which joint, from 0; else 0 */
    int times;           /* how often it is there, one beside the other; 0 where it is no pitch */
    double value;        /* in the unit of what it tells, m or 1: the plan's own number */
    double x, y;         /* m, its first point */
    double x_end, y_end; /* m, its second point */
    double from_x, from_y, to_x, to_y; /* m, ends of the dimension line; one point where there is
                                        * none */
    int arrows_outside;                /* 1 where they do not fit between the points */
    int leader;                /* 1 where a line leads from the middle of that to the text */
    double leader_x, leader_y; /* m, its end at the text */
    double text_x, text_y;     /* m, middle of the text's foot */
    double text_angle;         /* rad, counter-clockwise from level */
    double text_width;         /* m, of the text as it is written */
} tside_dimension;

/* In what a view of figures counts. */
typedef enum tside_figure_unit {
    TSIDE_FIGURE_NONE, /* a part's name, as of all other views */
    TSIDE_FIGURE_TURN,
    TSIDE_FIGURE_INCH,
    TSIDE_FIGURE_MILLIMETRE,
    TSIDE_FIGURE_POUND_FOOT, /* lbf ft */
    TSIDE_FIGURE_NEWTON_METRE,
    TSIDE_FIGURE_DEGREE
} tside_figure_unit;

/* A word beside a part; or of a view of figures an axis's name with its unit, or a number on it. */
typedef struct tside_note {
    tside_part part;
    tside_figure_unit unit;
    int numbered; /* 1: a number on an axis, which has no leader */
    double value; /* 1, that number, in its unit */
    tside_shown shown;
    int index;             /* which keep-out or joint, from 0; else 0 */
    double x, y;           /* m, what is named: where its leader begins */
    double to_x, to_y;     /* m, and ends, at the text */
    double text_x, text_y; /* m, middle of the text's foot */
    double text_width;     /* m */
} tside_note;

/*
 * Letters on paper: the height of capitals (ISO 3098-1 has 3,5 mm among its sizes), and the width
 * that each takes up, to which the SVG fixes them.
 */
#define TSIDE_LETTER_HEIGHT 3.5e-3  /* m */
#define TSIDE_LETTER_ADVANCE 3.0e-3 /* m */

enum { TSIDE_STROKES = 512, TSIDE_DIMENSIONS = 48, TSIDE_NOTES = 32, TSIDE_JOINTS_DRAWN = 200 };

/* A drawing. */
typedef struct tside_drawing {
    tside_picture picture;           /* what was asked */
    int outboard;                    /* 1 where outboard is to the right, -1 to the left, 0 where
                                      * it is neither */
    double left, bottom, right, top; /* m, what all of it lies within, texts and all */
    int stroke_count;
    tside_stroke strokes[TSIDE_STROKES];
    int dimension_count;
    tside_dimension dimensions[TSIDE_DIMENSIONS];
    int note_count;
    tside_note notes[TSIDE_NOTES];
} tside_drawing;

/*
 * Draws a planned side.
 *
 * Every text keeps off every other text and every outline by boxes of the stated letters, at the
 * scale asked; dimensions stand in ranks outside what they measure. A dimension is always told; a
 * note for which there is no room is left out. The origin of an end wall and of
 * the roll is the tunnel's centreline where the side's heights begin; the free end's is mirrored, as seen from
 * outside it. A corner's is where the end bow's plane meets the tunnel's centreline. An extender's is its top end, on its axis; along
 * the house it is the drive's end bow. Of ropes that would stand too close there, or are more than a drawing holds lines for,
 * those nearest to both ends are drawn. Figures stand on paper, and their scale is 1 whatever is asked.
 * side: every field checked.
 * plan: made by tside_plan_side, of this side.
 * picture: every field checked.
 * drawing: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field, or turns beyond the travel; the bound is its end.
 * TSIDE_CONTRADICTS, TSIDE_OUT_OF_REACH: as tside_plan_side.
 * TSIDE_NOT_MODELLED: an extender's view where there is none; along the house a bar of more than
 * TSIDE_JOINTS_DRAWN joints; more strokes, dimensions or notes than a drawing holds; or as
 * tside_plan_side.
 * Accuracy: a dimension tells the plan's own number, or one less another, to the last bit; strokes and
 * places are within 1e-9 m of where side and plan say.
 * Source: ISO 128 and ISO 129-1 for line types and dimensions; derivation, plane geometry.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_draw(const tside_side *side, const tside_plan *plan,
                                                  const tside_picture *picture,
                                                  tside_drawing *drawing, tside_fault *fault);

/*
 * What stands beside a dimension's line: a length as the picture's tape shows it, such as
 * "1 ft 0 in" or "305 mm", with a word before it where the line alone does not tell.
 * dimension: not checked, one of a drawing.
 * tape: one of tside_tape.
 * buffer: receives the text.
 * size: from 0, how much fits with the closing zero.
 * needed: optional, receives the length of the text without its closing zero, also when it does not
 * fit; may be NULL.
 * TSIDE_OUT_OF_BOUNDS: no such tape, or a value beyond tside_length_write's.
 * TSIDE_TOO_SMALL: size not above needed; nothing is written.
 * Accuracy: as tside_length_write.
 * Source: as tside_length_write.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_dimension_text(const tside_dimension *dimension,
                                                            tside_tape tape, char *buffer,
                                                            size_t size, size_t *needed,
                                                            tside_fault *fault);

/*
 * A note's words, such as "rail", "guide, open" or "keep-out 2".
 * note: not checked, one of a drawing.
 * buffer: receives the text.
 * size: from 0, how much fits with the closing zero.
 * needed: optional, receives the length of the text without its closing zero, also when it does not
 * fit; may be NULL.
 * TSIDE_OUT_OF_BOUNDS: no such part or state.
 * TSIDE_TOO_SMALL: size not above needed; nothing is written.
 * Source: this library's choice of words.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_note_text(const tside_note *note, char *buffer,
                                                       size_t size, size_t *needed,
                                                       tside_fault *fault);

/*
 * A drawing as SVG 1.1: one svg element, of the drawing's size on paper in millimetres, which
 * stands by itself or within another; text is text. It has a title and a desc, the drawing's
 * alternative text.
 * drawing: made by tside_draw.
 * title: any text, UTF-8, such as whose side it is: what SVG would take for markup is escaped, control
 * characters are blanks, and what is no character becomes U+FFFD.
 * buffer: receives the SVG, UTF-8.
 * size: from 0, how much fits with the closing zero.
 * needed: optional, receives the length of the text without its closing zero, also when it does not
 * fit; may be NULL.
 * TSIDE_OUT_OF_BOUNDS: a count beyond its list, or a place that is not finite or beyond 1e5 m.
 * TSIDE_TOO_SMALL: size not above needed; nothing is written.
 * Accuracy: places on paper to 1e-3 mm.
 * Source: Scalable Vector Graphics (SVG) 1.1 (Second Edition), W3C; ISO 128-2 for lines.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_drawing_svg(const tside_drawing *drawing,
                                                         const char *title, char *buffer,
                                                         size_t size, size_t *needed,
                                                         tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
