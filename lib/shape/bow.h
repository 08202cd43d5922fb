/* SPDX-License-Identifier: MIT */
/* The bow as the library's own files see it: unchecked, fast. */
#ifndef TUNNELSIDE_I_BOW
#define TUNNELSIDE_I_BOW

#include <tunnelside/bow.h>

/* tside_bow_make without checking the frame against its table; the bow is touched on failure too. */
tside_status tside_i_bow_make(const tside_frame *frame, tside_bow *bow, tside_fault *fault);

/* The point at an arc length of one piece, u from its lower end; the first piece goes on straight below 0. */
tside_bow_point tside_i_piece_at(const tside_piece *piece, double u);
tside_bow_point tside_i_path_at(const tside_path *path, double arc);
/* First arc length at a height; 0 if the path never reaches it, with its top in *top. */
int tside_i_path_at_height(const tside_path *path, double height, double *arc, double *top);
/* First crossing of the half line from (x, y) in direction (cosine, sine); 0 if there is none. */
int tside_i_path_crossing(const tside_path *path, double x, double y, double cosine, double sine, double *distance,
                          double *arc);
/*
 * Where a centreline bends otherwise from there on, for the i-th time from 1 up to the count of its pieces: at a kink,
 * at a bend's end, and at last at its top if that is pointed; else beyond all of it.
 */
double tside_i_path_bend(const tside_path *centre, int i);
/* How far from a place on the centreline the nearest of them is, m. */
double tside_i_path_from_bend(const tside_path *centre, double arc);
/* How far a hole should keep off each of them, m. */
double tside_i_bow_keep_off(const tside_bow *bow);

#endif
