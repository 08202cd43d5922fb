/* SPDX-License-Identifier: MIT */
/* How a sheet looks in HTML, on paper and on a screen of any width. */
#ifndef COMMON_STYLE_H
#define COMMON_STYLE_H

extern const char sheet_style[]; /* CSS, with nothing in it that would end its element */

#endif
