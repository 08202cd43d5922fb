/* SPDX-License-Identifier: MIT */
/*
 * What the library needs of the compiler's arithmetic, asked by configure and again by whoever compiles the library
 * without it: a double has 53 bits and is reckoned as a double, and a NaN is told from a number. In wider registers a
 * wall of 6 mm lies above the literal 6e-3, and a piece that just fits a stick does not; without NaN no check of an
 * input holds.
 */
#ifndef TUNNELSIDE_DOUBLES_H
#define TUNNELSIDE_DOUBLES_H

#include <float.h>

#if FLT_RADIX != 2 || DBL_MANT_DIG != 53
#error "doubles of 53 bits are needed"
#endif
#if defined(FLT_EVAL_METHOD) && (FLT_EVAL_METHOD == 2 || FLT_EVAL_METHOD < 0)
#error "doubles are reckoned in wider numbers here: compile with -msse2 -mfpmath=sse, or for another processor"
#endif
#if defined(__FAST_MATH__) || (defined(__FINITE_MATH_ONLY__) && __FINITE_MATH_ONLY__)
#error "a NaN is not told from a number here: compile without -ffast-math, -ffinite-math-only or -Ofast"
#endif

#endif
