/* SPDX-License-Identifier: MIT */
/* Plain roots. */
#ifndef TUNNELSIDE_I_ROOT
#define TUNNELSIDE_I_ROOT

/* The root in [low, high] of a rising function; the end nearer to it where there is none. */
typedef double tside_i_function(double x, const void *context);
double tside_i_rising_root(tside_i_function *function, const void *context, double low, double high);

/*
 * The same for whoever asks the function himself, which spares a function that searches in its turn: while the bracket
 * is open, it is narrowed by the function's value at the place that it asks for; then the place is the root.
 */
typedef struct tside_i_bracket {
    int open;
    double place;
    double x1, f1, x2, f2; /* two places between which the root is, and the values there */
    int asked;
} tside_i_bracket;

tside_i_bracket tside_i_bracket_of(double low, double at_low, double high, double at_high);
void tside_i_bracket_narrow(tside_i_bracket *bracket, double value);

#endif
