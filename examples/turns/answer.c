/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "turns.h"

enum { LONGEST = 40 };   /* characters of one number */
#define LONGEST_DROP 1000.0 /* m */
#define MOST_WRAPS 1000.0   /* as tside_roll_taken_up */

/* --- writing --- */

static const char *tape(const question *q, double metres, char text[LONGEST])
{
    if (tside_length_write(metres, q->us ? TSIDE_INCHES : TSIDE_MILLIMETRES, q->us ? 16 : 0, text, LONGEST, NULL, NULL) != TSIDE_OK)
        snprintf(text, LONGEST, "%.6g m", metres);
    return text;
}

static const char *fine(const question *q, double metres, char text[LONGEST])
{
    snprintf(text, LONGEST, q->us ? "%.4g in" : "%.4g mm", q->us ? metres / 0.0254 : metres * 1000);
    return text;
}

/* The shortest number that reads back as the same double. */
static const char *shortest(double value, char text[LONGEST])
{
    for (int digits = 15; digits <= 17; digits++) {
        snprintf(text, LONGEST, "%.*g", digits, value);
        if (strtod(text, NULL) == value)
            break;
    }
    return text;
}

/* The library names its arguments; whoever reads the message knows the options. */
static void name_option(char *field)
{
    static const char *const options[][2] = {{"roll.core", "--core"},       {"core", "--core"},         {"roll.thickness", "--thickness"}, {"roll.packing", "--packing"},
                                             {"wraps_before", "--wraps"},   {"wraps", "--wraps"},       {"turns", "--counted"},            {"taken_up", "--over"}};
    for (size_t i = 0; i < sizeof options / sizeof *options; i++)
        if (!strcmp(field, options[i][0])) {
            strcpy(field, options[i][1]); /* a path has room for any option */
            return;
        }
}

static int refuse(tside_fault *fault)
{
    char sentence[512];
    name_option(fault->field);
    name_option(fault->other);
    tside_fault_text(fault, sentence, sizeof sentence);
    fprintf(stderr, "tunnelside-turns: %s\n", sentence);
    return 0;
}

static void list_assumed(const question *q)
{
    const char *title = "\nAssumed, not measured (common practice, no published source):\n";
    char text[LONGEST];
    if ((q->given & (THICKNESS | PACKING | WRAPS)) == (THICKNESS | PACKING | WRAPS))
        return;
    if (q->given & COUNTED && q->given & WRAPS)
        return;
    fputs(title, stdout);
    if (!(q->given & (THICKNESS | COUNTED)))
        printf("  thickness of the bare curtain %s\n", fine(q, q->roll.thickness, text));
    if (!(q->given & (PACKING | COUNTED)))
        printf("  packing factor %g\n", q->roll.packing);
    if (!(q->given & WRAPS))
        printf("  wraps on the bar when shut %g\n", q->wraps);
}

/* --- the table --- */

typedef struct row {
    double turns, taken_up, total, diameter, on_bar;
} row;

static void print_row(const question *q, const row *r, int first)
{
    char a[LONGEST], b[LONGEST], c[LONGEST], d[LONGEST], e[LONGEST];
    switch (q->format) {
    case 'c':
        printf("%s,%s,%s,%s,%s\n", shortest(r->turns, a), shortest(r->taken_up, b), shortest(r->total, c), shortest(r->diameter, d), shortest(r->on_bar, e));
        break;
    case 'j':
        printf("%s\n    {\"turns\": %s, \"taken_up_m\": %s, \"total_m\": %s, \"diameter_m\": %s, \"on_bar_m\": %s}", first ? "" : ",", shortest(r->turns, a),
               shortest(r->taken_up, b), shortest(r->total, c), shortest(r->diameter, d), shortest(r->on_bar, e));
        break;
    default:
        printf("  %6.2f  %14s  %14s  %12s  %14s\n", r->turns, tape(q, r->taken_up, a), tape(q, r->total, b), fine(q, r->diameter, c), tape(q, r->on_bar, d));
    }
}

static void print_head(const question *q)
{
    char a[LONGEST], b[LONGEST], c[LONGEST];
    switch (q->format) {
    case 'c': printf("turns,taken_up_m,total_m,diameter_m,on_bar_m\n"); break;
    case 'j':
        printf("{\n  \"core_m\": %s,\n  \"thickness_m\": %s,\n", shortest(q->roll.core, a), shortest(q->roll.thickness, b));
        printf("  \"packing\": %s,\n  \"wraps_when_shut\": %s,\n  \"turns\": [", shortest(q->roll.packing, a), shortest(q->wraps, b));
        break;
    default:
        printf("Take-up of a curtain %s thick, packed by %g, on a core of %s,\n", fine(q, q->roll.thickness, a), q->roll.packing, fine(q, q->roll.core, b));
        printf("with %g wraps on it when shut, over a drop of %s.\n\n", q->wraps, tape(q, q->drop, c));
        printf("  %6s  %14s  %14s  %12s  %14s\n", "turns", "taken up", "in all", "roll", "on the bar");
    }
}

int answer_turns(const question *q)
{
    tside_fault fault;
    double shut, most, total, before = 0;
    int count;
    if (tside_roll_taken_up(&q->roll, q->wraps, &shut, &fault) != TSIDE_OK)
        return refuse(&fault);
    if (!(q->drop >= 0 && q->drop <= LONGEST_DROP)) {
        fprintf(stderr, "tunnelside-turns: --drop: %g m is not from 0 m to %g m\n", q->drop, LONGEST_DROP);
        return 0;
    }
    if (tside_roll_wraps(&q->roll, shut + q->drop, &most, &fault) != TSIDE_OK)
        return refuse(&fault);
    total = most - q->wraps;
    if (most > MOST_WRAPS) {
        fprintf(stderr, "tunnelside-turns: --drop: %g m ends with %g wraps on the bar, and %g are the most\n", q->drop, most, MOST_WRAPS);
        return 0;
    }
    count = total > 1e-9 ? (int)ceil(total - 1e-9) + 1 : 1;
    print_head(q);
    for (int i = 0; i < count; i++) {
        row r = {i == count - 1 ? fmax(total, 0) : i, 0, 0, 0, 0};
        if (tside_roll_taken_up(&q->roll, q->wraps + r.turns, &r.on_bar, &fault) != TSIDE_OK ||
            tside_roll_diameter(&q->roll, q->wraps + r.turns, &r.diameter, &fault) != TSIDE_OK)
            return refuse(&fault);
        r.total = r.on_bar - shut;
        r.taken_up = r.total - before;
        before = r.total;
        print_row(q, &r, i == 0);
    }
    if (q->format == 'j')
        printf("\n  ]\n}\n");
    else if (q->format != 'c') {
        printf("\nShut to open: %.2f turns.\n", fmax(total, 0));
        list_assumed(q);
    }
    return 1;
}

/* --- the thickness --- */

/* How far off counting and measuring may be: this program's choice, no published source. */
#define QUARTER_TURN 0.25
#define QUARTER_INCH (0.25 * 0.0254)

/* At the edge of the readings less may be taken up than the bare core takes: then no thickness at all fits, and it is 0. */
static double thickness_at(const question *q, double turns, double over)
{
    double te;
    tside_fault fault;
    return turns > 0 && over > 0 && tside_roll_thickness(q->roll.core, q->wraps, turns, over, &te, &fault) == TSIDE_OK ? te : 0;
}

int answer_thickness(const question *q)
{
    tside_fault fault;
    double te, least, most;
    char a[LONGEST], b[LONGEST], c[LONGEST];
    if (tside_roll_thickness(q->roll.core, q->wraps, q->counted, q->over, &te, &fault) != TSIDE_OK)
        return refuse(&fault);
    least = thickness_at(q, q->counted + QUARTER_TURN, q->over - QUARTER_INCH);
    most = thickness_at(q, q->counted - QUARTER_TURN, q->over + QUARTER_INCH);
    if (q->format == 'c') {
        printf("effective_thickness_m,least_m,most_m%s\n", q->given & THICKNESS ? ",packing" : "");
        printf("%s,%s,%s", shortest(te, a), shortest(least, b), shortest(most, c));
        printf(q->given & THICKNESS ? ",%s\n" : "%s\n", q->given & THICKNESS ? shortest(te / q->roll.thickness, a) : "");
    } else if (q->format == 'j') {
        printf("{\n  \"effective_thickness_m\": %s,\n  \"least_m\": %s,\n  \"most_m\": %s", shortest(te, a), shortest(least, b), shortest(most, c));
        printf(q->given & THICKNESS ? ",\n  \"packing\": %s\n}\n" : "%s\n}\n", q->given & THICKNESS ? shortest(te / q->roll.thickness, a) : "");
    } else {
        printf("%g turns took up %s on a core of %s:\n", q->counted, tape(q, q->over, a), fine(q, q->roll.core, b));
        printf("  effective thickness, packing included  %s\n", fine(q, te, a));
        printf("  with a quarter turn and 1/4 in misread  %s to %s\n", fine(q, least, a), fine(q, most, b));
        if (q->given & THICKNESS)
            printf("  packing factor of a curtain %s thick  %.3g\n", fine(q, q->roll.thickness, a), te / q->roll.thickness);
        list_assumed(q);
    }
    return 1;
}
