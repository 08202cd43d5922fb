/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "members.h"
#include "turns.h"

#define INCH 0.0254 /* m, exact: international yard and pound agreement of 1959 */
#define COUNT_OF(array) (int)(sizeof(array) / sizeof *(array))

enum { SIZE = 48 }; /* of a quantity as text */

static tside_roll roll_of(const question *asked)
{
    const tside_roll roll = {
        .core = asked->value[CORE], .thickness = asked->value[THICKNESS], .packing = asked->value[PACKING]};
    return roll;
}

/* --- refusing --- */

/* The option that a field or an argument of the library stands for; QUANTITIES where none does. */
static option_of option_named(const char *field)
{
    static const struct {
        const char *field;
        option_of which;
    } known[] = {
        {"core", CORE},          {"thickness", THICKNESS}, {"packing", PACKING}, {"wraps", WRAPS},
        {"wraps_before", WRAPS}, {"turns", COUNTED},       {"taken_up", OVER},
    };
    if (!strncmp(field, "roll.", 5))
        field += 5;
    for (size_t i = 0; i < sizeof known / sizeof *known; i++)
        if (!strcmp(field, known[i].field))
            return known[i].which;
    return QUANTITIES;
}

/* The complaint begins with the option, which so need not stand in the sentence. */
static int refuse(const question *asked, tside_fault *fault)
{
    const option_of which = option_named(fault->field);
    if (which < QUANTITIES)
        *fault->field = '\0';
    if (option_named(fault->other) == CORE)
        strcpy(fault->other, "--core");
    complain(asked, which, fault, asked->us);
    return 0;
}

/* The program's own bounds, narrower than the library's: above low, up to high. */
static int is_within(const question *asked, option_of which, const char *unit, double low, double high,
                     const char *reason)
{
    const double value = asked->value[which];
    const int is_high = value > low;
    const tside_fault fault = {
        .status = TSIDE_OUT_OF_BOUNDS,
        .relation = is_high ? TSIDE_ABOVE : TSIDE_NOT_ABOVE,
        .unit = unit,
        .reason = reason,
        .index = -1,
        .value = value,
        .bound = is_high ? high : low,
    };
    if (is_high && value <= high)
        return 1;
    complain(asked, which, &fault, asked->us);
    return 0;
}

/* --- what was assumed --- */

static const option_of may_be_usual[] = {THICKNESS, PACKING, WRAPS};

/* A usual value in use: counted turns tell thickness and packing. */
static int is_assumed(const question *asked, option_of which)
{
    return !asked->words[which] && (which == WRAPS || !asked->words[COUNTED]);
}

/*
 * --- writing for programs: figures by name, in SI; those that are found come first, then what they are found from ---
 */

typedef struct figure {
    const char *name, *unit; /* in CSV a name in metres ends in _m */
    double value;            /* NaN where there is none: empty in CSV, left out of JSON */
    option_of from;          /* of what is asked, else QUANTITIES */
} figure;

static void put_csv_names(const figure *figures, int count)
{
    for (int i = 0; i < count; i++)
        printf("%s%s,", figures[i].name, strcmp(figures[i].unit, "m") ? "" : "_m");
    printf("assumed\n");
}

static void put_csv_values(const question *asked, const figure *figures, int count)
{
    text row = {NULL, 0, 0};
    const char *before = "";
    for (int i = 0; i < count; i++) {
        if (!isnan(figures[i].value))
            add_json_number(&row, figures[i].value);
        text_add(&row, ",");
    }
    for (int i = 0; i < COUNT_OF(may_be_usual); i++)
        if (is_assumed(asked, may_be_usual[i])) {
            text_add(&row, "%s%s", before, name_of(may_be_usual[i]));
            before = " ";
        }
    puts(text_of(&row));
    text_free(&row);
}

static void put_figures(writer *w, const figure *figures, int count)
{
    for (int i = 0; i < count; i++)
        if (!isnan(figures[i].value))
            put_number(w, figures[i].name, figures[i].value, figures[i].unit);
}

/* What a document begins with, up to what is found. */
static void put_asked(writer *w, const question *asked, const figure *from, int count)
{
    open_bracket(w, "asked", '{');
    put_figures(w, from, count);
    shut_bracket(w, '}');
    open_bracket(w, "assumed", '[');
    for (int i = 0; i < count; i++)
        for (int k = 0; k < COUNT_OF(may_be_usual); k++)
            if (from[i].from == may_be_usual[k] && is_assumed(asked, may_be_usual[k]))
                put_string(w, NULL, from[i].name);
    shut_bracket(w, ']');
}

static void print_document(writer *w)
{
    shut_document(w);
    fputs(text_of(w->out), stdout);
    text_free(w->out);
}

/* --- writing for people --- */

/* In up to so many decimals, without the zeros that end a fraction. */
static const char *shortened(char number[SIZE], double value, int decimals)
{
    const int length = snprintf(number, SIZE, "%.*f", decimals, value);
    char *end = number + length;
    if (length >= SIZE) {
        snprintf(number, SIZE, "%g", value);
        return number;
    }
    while (end[-1] == '0')
        *--end = '\0';
    if (end[-1] == '.')
        end[-1] = '\0';
    return number;
}

/* For a tape measure: to 1/16 in or 1 mm. */
static const char *tape(char number[SIZE], const question *asked, double metres)
{
    const tside_style style = asked->us ? TSIDE_FEET_AND_INCHES : TSIDE_MILLIMETRES;
    if (tside_length_write(metres, style, asked->us ? 16 : 0, number, SIZE, NULL, NULL) != TSIDE_OK)
        snprintf(number, SIZE, "%g m", metres);
    return number;
}

/* For a caliper, without its unit: to 0.0001 in or 0.001 mm. */
static const char *fine(char number[SIZE], const question *asked, double metres)
{
    return shortened(number, metres / (asked->us ? INCH : 0.001), asked->us ? 4 : 3);
}

static void put_line(const char *label, const char *value, const char *unit)
{
    printf("  %-42s  %s%s%s\n", label, value, *unit ? " " : "", unit);
}

static void put_size(const question *asked, const char *label, double metres)
{
    char number[SIZE];
    put_line(label, fine(number, asked, metres), asked->us ? "in" : "mm");
}

static void put_turns(const char *label, double turns)
{
    char number[SIZE];
    shortened(number, turns, 4);
    put_line(label, number, strcmp(number, "1") ? "turns" : "turn");
}

static void put_notes(const question *asked)
{
    const char *basis = NULL;
    char number[SIZE];
    for (int i = 0; i < COUNT_OF(may_be_usual); i++) {
        const tside_field *row = field_of(may_be_usual[i]);
        const int is_size = !strcmp(row->unit, "m");
        if (!is_assumed(asked, may_be_usual[i]))
            continue;
        if (!basis)
            printf("\nASSUMED, NOT MEASURED\n  Usual values, not yours: measure what you can, and give it.\n");
        if (!basis || strcmp(basis, row->basis))
            printf("  Basis: %s.\n", row->basis);
        basis = row->basis;
        is_size ? fine(number, asked, row->usual) : shortened(number, row->usual, 4);
        strcat(number, !is_size ? "" : asked->us ? " in" : " mm");
        printf("  %-11s%s\n  %-11s(--%s)\n", number, row->meaning, "", name_of(may_be_usual[i]));
    }
    printf("\nCAUTIONS\n"
           "  ! Keep hands, hair and sleeves clear of roll and rail while the bar turns:\n"
           "    they draw in.\n"
           "  ! A wound bar turns back and drops when its drive is taken off: lower it to\n"
           "    shut first, or prop and tie it.\n"
           "  ! Local codes, makers' ratings and instructions, and licensed practice come\n"
           "    first.\n");
}

/* --- what each turn takes up --- */

enum { MOST_WRAPS = 1000 }; /* as the library takes */
#define LONGEST 1000.0      /* m, of a drop and of what counted turns take up: this program's choice */
#define HARDLY_A_TURN 1e-6  /* less of a turn than this is rounding: no row of its own */

typedef struct row {
    double turn, taken_up, total, diameter, on_bar;
} row;

typedef struct table {
    row rows[MOST_WRAPS + 2];
    int count;
} table;

static int make_row(table *t, const tside_roll *roll, double wraps, double turn, double total, tside_fault *fault)
{
    row *r = t->rows + t->count;
    r->turn = turn;
    r->total = total;
    r->taken_up = total - (t->count ? r[-1].total : 0);
    t->count++;
    return tside_roll_taken_up(roll, wraps, &r->on_bar, fault) == TSIDE_OK &&
           tside_roll_diameter(roll, wraps, &r->diameter, fault) == TSIDE_OK;
}

/* Whole turns from shut, then what is left of the drop. */
static int make_table(const question *asked, table *t)
{
    const tside_roll roll = roll_of(asked);
    const double shut = asked->value[WRAPS], drop = asked->value[DROP];
    double on_shut, on_most, on_bar, open;
    tside_fault fault;
    if (tside_roll_taken_up(&roll, shut, &on_shut, &fault) != TSIDE_OK ||
        tside_roll_taken_up(&roll, MOST_WRAPS, &on_most, &fault) != TSIDE_OK)
        return refuse(asked, &fault);
    if (!is_within(asked, DROP, "m", 0, LONGEST, "") ||
        !is_within(asked, DROP, "m", 0, on_most - on_shut, "more than 1000 wraps would be on the bar"))
        return 0;
    if (tside_roll_wraps(&roll, on_shut + drop, &open, &fault) != TSIDE_OK)
        return refuse(asked, &fault);
    open = fmin(open, MOST_WRAPS);
    t->count = 0;
    for (int i = 0; i == 0 || i < open - shut - HARDLY_A_TURN; i++)
        if (tside_roll_taken_up(&roll, shut + i, &on_bar, &fault) != TSIDE_OK ||
            !make_row(t, &roll, shut + i, i, on_bar - on_shut, &fault))
            return refuse(asked, &fault);
    return make_row(t, &roll, open, open - shut, drop, &fault) ? 1 : refuse(asked, &fault);
}

static void print_table(const question *asked, const table *t)
{
    const double unit = asked->us ? INCH : 0.001;
    const int decimals = asked->us ? 2 : 1;
    const char *name = asked->us ? "in" : "mm";
    char number[SIZE];
    printf("TAKE-UP, TURN BY TURN\n");
    put_size(asked, "Core, as the curtain meets it", asked->value[CORE]);
    put_size(asked, "Thickness of the bare curtain", asked->value[THICKNESS]);
    put_line("Packing factor", shortened(number, asked->value[PACKING], 4), "");
    put_turns("On the bar when shut", asked->value[WRAPS]);
    put_line("Drop, from shut to open", tape(number, asked, asked->value[DROP]), "");
    snprintf(number, sizeof number, "%.2f", t->rows[t->count - 1].turn);
    put_line("SHUT TO OPEN", number, "turns of the bar");
    printf("\n  %8s%12s%12s%12s%12s\n  %8s%12s%12s%12s%12s\n", "turns", "taken up", "in all", "roll", "on the bar", "",
           name, name, name, name);
    for (int i = 0; i < t->count; i++) {
        const row *r = t->rows + i;
        printf("  %8.2f%12.*f%12.*f%12.*f%12.*f\n", r->turn, decimals, r->taken_up / unit, decimals, r->total / unit,
               decimals + 1, r->diameter / unit, decimals, r->on_bar / unit);
    }
    put_notes(asked);
}

static void write_table(const question *asked, const table *t)
{
    enum { FOUND = 5, ALL = 10 };
    text out = {NULL, 0, 0};
    writer w;
    if (asked->format == JSON)
        w = open_document(&out, 1);
    for (int i = 0; i < t->count; i++) {
        const row *r = t->rows + i;
        const figure figures[ALL] = {
            {"turn", "turn", r->turn, QUANTITIES},
            {"taken_up", "m", r->taken_up, QUANTITIES},
            {"total", "m", r->total, QUANTITIES},
            {"diameter", "m", r->diameter, QUANTITIES},
            {"on_bar", "m", r->on_bar, QUANTITIES},
            {"core", "m", asked->value[CORE], CORE},
            {"thickness", "m", asked->value[THICKNESS], THICKNESS},
            {"packing", "1", asked->value[PACKING], PACKING},
            {"wraps_shut", "turn", asked->value[WRAPS], WRAPS},
            {"drop", "m", asked->value[DROP], DROP},
        };
        if (asked->format == CSV) {
            if (i == 0)
                put_csv_names(figures, ALL);
            put_csv_values(asked, figures, ALL);
            continue;
        }
        if (i == 0) {
            put_asked(&w, asked, figures + FOUND, ALL - FOUND);
            open_bracket(&w, "turns", '[');
        }
        open_bracket(&w, NULL, '{');
        put_figures(&w, figures, FOUND);
        shut_bracket(&w, '}');
    }
    if (asked->format == JSON) {
        shut_bracket(&w, ']');
        print_document(&w);
    }
}

int answer_turns(const question *asked)
{
    table t;
    if (!make_table(asked, &t))
        return 0;
    if (asked->format == TEXT)
        print_table(asked, &t);
    else
        write_table(asked, &t);
    return 1;
}

/* --- what thickness counted turns imply --- */

/* How far off a count and a tape may be, either way: this program's choice, no published source. */
#define MISCOUNTED 0.25 /* turn */
#define MISMEASURED (0.25 * INCH)
#define MOST_COUNTED 999.0 /* turn: with what is miscounted no more than the library takes */
#define THINNEST 1e-6      /* m, of a curtain to divide by */

typedef struct thickness {
    double likely, least, most; /* m, packing included */
} thickness;

/*
 * Both readings off the same way: 1 makes the curtain thickest, -1 thinnest; 0 where even a bare core would take up
 * more.
 */
static double misread(const question *asked, int way)
{
    const double turns = asked->value[COUNTED] - way * MISCOUNTED, over = asked->value[OVER] + way * MISMEASURED;
    double found;
    return tside_roll_thickness(asked->value[CORE], asked->value[WRAPS], turns, over, &found, NULL) == TSIDE_OK ? found
                                                                                                                : 0;
}

static int find_thickness(const question *asked, thickness *found)
{
    tside_fault fault;
    if (!is_within(asked, COUNTED, "turn", MISCOUNTED, MOST_COUNTED, "a count may be a quarter turn off") ||
        !is_within(asked, OVER, "m", MISMEASURED, LONGEST, "a measurement may be 1/4 in off") ||
        (asked->words[THICKNESS] && !is_within(asked, THICKNESS, "m", THINNEST, field_of(THICKNESS)->high, "")))
        return 0;
    if (tside_roll_thickness(asked->value[CORE], asked->value[WRAPS], asked->value[COUNTED], asked->value[OVER],
                             &found->likely, &fault) != TSIDE_OK)
        return refuse(asked, &fault);
    found->least = misread(asked, -1);
    found->most = misread(asked, 1);
    return 1;
}

static void print_thickness(const question *asked, const thickness *found)
{
    const tside_field *packing = field_of(PACKING);
    const double bare = asked->value[THICKNESS];
    const char *name = asked->us ? "in" : "mm";
    char least[SIZE], most[SIZE], range[2 * SIZE + 8];
    printf("THICKNESS FROM COUNTED TURNS\n");
    put_size(asked, "Core, as the curtain meets it", asked->value[CORE]);
    put_turns("On the bar when counting began", asked->value[WRAPS]);
    put_turns("Turns counted", asked->value[COUNTED]);
    put_line("Taken up meanwhile", tape(least, asked, asked->value[OVER]), "");
    put_size(asked, "EFFECTIVE THICKNESS, packing x thickness", found->likely);
    snprintf(range, sizeof range, "%s to %s", fine(least, asked, found->least), fine(most, asked, found->most));
    put_line("  off by 1/4 turn and 1/4 in, either way", range, name);
    if (asked->words[THICKNESS]) {
        put_size(asked, "Thickness of the bare curtain", bare);
        put_line("PACKING FACTOR", shortened(least, found->likely / bare, 2), "");
        snprintf(range, sizeof range, "%s to %s", shortened(least, found->least / bare, 2),
                 shortened(most, found->most / bare, 2));
        put_line("  off by as much", range, "");
        if (found->likely / bare > packing->high || found->likely <= 0)
            printf("  No curtain packs like that (above 0, up to %g): count and measure again.\n", packing->high);
    }
    put_notes(asked);
}

static void write_thickness(const question *asked, const thickness *found)
{
    enum { FOUND = 6, ALL = 11 };
    const double bare = asked->words[THICKNESS] ? asked->value[THICKNESS] : NAN; /* and so what is divided by it */
    const figure figures[ALL] = {
        {"effective_thickness", "m", found->likely, QUANTITIES},
        {"effective_thickness_least", "m", found->least, QUANTITIES},
        {"effective_thickness_most", "m", found->most, QUANTITIES},
        {"packing", "1", found->likely / bare, QUANTITIES},
        {"packing_least", "1", found->least / bare, QUANTITIES},
        {"packing_most", "1", found->most / bare, QUANTITIES},
        {"core", "m", asked->value[CORE], CORE},
        {"wraps_before", "turn", asked->value[WRAPS], WRAPS},
        {"turns", "turn", asked->value[COUNTED], COUNTED},
        {"taken_up", "m", asked->value[OVER], OVER},
        {"thickness", "m", bare, THICKNESS},
    };
    text out = {NULL, 0, 0};
    writer w;
    if (asked->format == CSV) {
        put_csv_names(figures, ALL);
        put_csv_values(asked, figures, ALL);
        return;
    }
    w = open_document(&out, 1);
    put_asked(&w, asked, figures + FOUND, ALL - FOUND);
    open_bracket(&w, "found", '{');
    put_figures(&w, figures, FOUND);
    shut_bracket(&w, '}');
    print_document(&w);
}

int answer_thickness(const question *asked)
{
    thickness found;
    if (!find_thickness(asked, &found))
        return 0;
    if (asked->format == TEXT)
        print_thickness(asked, &found);
    else
        write_thickness(asked, &found);
    return 1;
}
