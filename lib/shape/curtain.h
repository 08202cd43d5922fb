/* SPDX-License-Identifier: MIT */
/* The curtain's line as the library's own files see it: unchecked, fast. */
#ifndef TUNNELSIDE_I_CURTAIN
#define TUNNELSIDE_I_CURTAIN

#include <tunnelside/curtain.h>

typedef struct tside_i_line_point {
    double x, y, nx, ny; /* place and outboard normal */
} tside_i_line_point;

/* tside_line_make without checking the curtain against its table; the line is touched on failure too. */
tside_status tside_i_line_make(const tside_bow *bow, const tside_curtain *curtain, const char *top, const char *board,
                               tside_line *line, tside_fault *fault);
/* The piece that holds a distance down the line; at a corner the piece below it. */
int tside_i_line_piece(const tside_line *line, double distance);
tside_i_line_point tside_i_line_at(const tside_line_piece *piece, double distance);
double tside_i_line_moment(const tside_line *line, double distance);

#endif
