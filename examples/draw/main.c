/* SPDX-License-Identifier: MIT */
/* tunnelside-draw: from a side's measurements to drawings on sheets of paper. */
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "form.h"
#include "ink.h"
#include "job.h"
#include "memory.h"
#include "message.h"
#include "names.h"
#include "output.h"
#include "template.h"
#include "views.h"

const char program_name[] = "tunnelside-draw";

typedef enum task { DRAW_VIEWS, DRAW_TEMPLATE, DRAW_FORM, SHOW_HELP, SHOW_VERSION } task;

typedef struct options {
    task task;
    units units;
    paper_size paper;
    ink format; /* INKS: by the output's name */
    wanted views;
    settled known; /* of the form */
    int page;      /* from 1; 0: not asked */
    double dpi;
    const char *output;
    const char *of_views, *of_form; /* an option that is for these alone, if one was given */
} options;

static const char help[] = "Usage: tunnelside-draw [OPTION]... FILE...\n"
                           "       tunnelside-draw --form [OPTION]...\n"
                           "Draws sides of high tunnels on sheets to print: what is set out, each end from\n"
                           "outside its wall. FILE \"-\" is standard input.\n"
                           "  -u, --units=us|si        without it, as the file gives the hip\n"
                           "  -f, --format=FORMAT      pdf, all sheets; svg or png, one; or by OUTPUT's name\n"
                           "  -o, --output=OUTPUT      write to OUTPUT: whole, or not at all\n"
                           "      --paper=a4|letter    without it, as the units are\n"
                           "      --view=VIEW          end_wall, whole_wall, corner, extender, along,\n"
                           "                           roll_shut, roll_open, turns or drive_card;\n"
                           "                           without it, all\n"
                           "      --end=drive|free     of one end; without it, of both\n"
                           "      --scale=1:N          of that view; without it, the largest that fits\n"
                           "      --turns=NUMBER       roll and guide at these turns of the drive too\n"
                           "      --page=NUMBER        which sheet of SVG or PNG; --dpi=NUMBER of PNG, 150\n"
                           "      --template           strips, full size, to find the holes' middles by\n"
                           "      --form               questions to carry to the site; --bow=, --drive=\n"
                           "                           and --hung= settle choices beforehand\n"
                           "  -h, --help               print this\n"
                           "  -V, --version            print the version\n"
                           "Exit status: 1 where a side is refused, 2 where the command line is wrong. For\n"
                           "setting out, not a certificate: local codes, makers' ratings come first.\n";

/* --- options --- */

static int set_ink(ink *chosen, const char *value)
{
    *chosen = ink_named(value);
    return *chosen == INKS ? misuse("--format: pdf, svg or png, not ", value) : EXIT_DONE;
}

static int set_paper(paper_size *chosen, const char *value)
{
    if (strcmp(value, "a4") && strcmp(value, "letter"))
        return misuse("--paper: a4 or letter, not ", value);
    *chosen = *value == 'a' ? PAPER_A4 : PAPER_LETTER;
    return EXIT_DONE;
}

static int set_end(wanted *views, const char *value)
{
    if (strcmp(value, "drive") && strcmp(value, "free"))
        return misuse("--end: drive or free, not ", value);
    views->end_first = views->end_last = *value == 'd' ? TSIDE_DRIVE_END : TSIDE_FREE_END;
    return EXIT_DONE;
}

/* Says that an option's value is none of those there are. */
static int misuse_choice(const char *option, const text *choices, const char *value)
{
    text what = {NULL, 0, 0};
    int status;
    text_add(&what, "--%s: %s, not ", option, text_of(choices));
    status = misuse(text_of(&what), value);
    text_free(&what);
    return status;
}

static int set_view(wanted *views, const char *value)
{
    text why = {NULL, 0, 0};
    int status = EXIT_DONE;
    views->view = view_named(value, &why);
    if (views->view < 0)
        status = misuse_choice("view", &why, value);
    text_free(&why);
    return status;
}

static int set_scale(wanted *views, const char *value)
{
    text why = {NULL, 0, 0};
    int status = EXIT_DONE;
    views->scale = scale_named(value, &why);
    if (!(views->scale > 0))
        status = misuse_choice("scale", &why, value);
    text_free(&why);
    return status;
}

static int set_settled(settled *known, int settle(settled *, const char *, text *), const char *option,
                       const char *value)
{
    text why = {NULL, 0, 0};
    const int status = settle(known, value, &why) ? EXIT_DONE : misuse_choice(option, &why, value);
    text_free(&why);
    return status;
}

/* A number from low to high, or misuse. */
static int set_number(double *chosen, const char *option, const char *value, double low, double high)
{
    char *end;
    const double number = strtod(value, &end);
    text bounds = {NULL, 0, 0};
    int status = EXIT_DONE;
    if (end == value || *end || !(number >= low && number <= high)) {
        text_add(&bounds, "a number from %g to %g", low, high);
        status = misuse_choice(option, &bounds, value);
        text_free(&bounds);
    }
    *chosen = number;
    return status;
}

static int set_page(int *chosen, const char *value)
{
    double page = 0;
    const int status = set_number(&page, "page", value, 1, 1e6);
    if (status == EXIT_DONE && page != (int)page)
        return misuse("--page: a whole number, not ", value);
    *chosen = (int)page;
    return status;
}

/* Sets what an option asks for; returns 0, or EXIT_USAGE having said why. */
static int set_option(options *chosen, int letter, const char *value)
{
    switch (letter) {
    case 'u': return set_units(&chosen->units, value);
    case 'f': return set_ink(&chosen->format, value);
    case 'o': chosen->output = value; return 0;
    case 'P': return set_paper(&chosen->paper, value);
    case 'v': chosen->of_views = "view"; return set_view(&chosen->views, value);
    case 'e': return set_end(&chosen->views, value);
    case 's': chosen->of_views = "scale"; return set_scale(&chosen->views, value);
    case 'n':
        chosen->of_views = "turns";
        chosen->views.turns_given = 1;
        return set_number(&chosen->views.turns, "turns", value, 0, 1e9);
    case 'p': return set_page(&chosen->page, value);
    case 'd': return set_number(&chosen->dpi, "dpi", value, 50, 600);
    case 'T': chosen->task = DRAW_TEMPLATE; return 0;
    case 'F': chosen->task = DRAW_FORM; return 0;
    case 'B': chosen->of_form = "bow"; return set_settled(&chosen->known, settle_bow, "bow", value);
    case 'D': chosen->of_form = "drive"; return set_settled(&chosen->known, settle_drive, "drive", value);
    case 'H': chosen->of_form = "hung"; return set_settled(&chosen->known, settle_hung, "hung", value);
    case 'h': chosen->task = SHOW_HELP; return 0;
    case 'V': chosen->task = SHOW_VERSION; return 0;
    default: return EXIT_USAGE;
    }
}

static int read_options(options *chosen, int count, char **words)
{
    static const struct option known[] = {
        {"units", required_argument, NULL, 'u'},  {"format", required_argument, NULL, 'f'},
        {"output", required_argument, NULL, 'o'}, {"paper", required_argument, NULL, 'P'},
        {"view", required_argument, NULL, 'v'},   {"end", required_argument, NULL, 'e'},
        {"scale", required_argument, NULL, 's'},  {"turns", required_argument, NULL, 'n'},
        {"page", required_argument, NULL, 'p'},   {"dpi", required_argument, NULL, 'd'},
        {"template", no_argument, NULL, 'T'},     {"form", no_argument, NULL, 'F'},
        {"bow", required_argument, NULL, 'B'},    {"drive", required_argument, NULL, 'D'},
        {"hung", required_argument, NULL, 'H'},   {"help", no_argument, NULL, 'h'},
        {"version", no_argument, NULL, 'V'},      {NULL, 0, NULL, 0},
    };
    int letter, status = 0;
    while (!status && (letter = getopt_long(count, words, "u:f:o:hV", known, NULL)) != -1)
        status = letter == '?' ? misused_option(words) : set_option(chosen, letter, optarg);
    return status;
}

/* By its ending, where no format is asked for; else PDF. */
static ink format_of(const options *chosen)
{
    const char *ending = chosen->output ? strrchr(chosen->output, '.') : NULL;
    ink named = INKS;
    if (chosen->format != INKS)
        return chosen->format;
    if (ending)
        named = ink_named(ending + 1);
    return named == INKS ? INK_PDF : named;
}

/* Each option has what it is for: one that would change nothing is refused, not passed over. */
static int check_options(options *chosen)
{
    chosen->format = format_of(chosen);
    if (chosen->task != DRAW_VIEWS && chosen->of_views)
        return misuse("--template and --form have no --", chosen->of_views);
    if (chosen->task != DRAW_FORM && chosen->of_form)
        return misuse("without --form there is no --", chosen->of_form);
    if (chosen->views.scale > 0 && chosen->views.view < 0)
        return misuse("--scale goes with --view", "");
    if (chosen->page && ink_holds_all(chosen->format))
        return misuse("--page goes with --format=svg or png", "");
    if (!ink_is_there(chosen->format))
        return misuse("this program was built without librsvg and cairo, and writes --format=svg alone, not ",
                      ink_name(chosen->format));
    return EXIT_DONE;
}

/* --- sheets --- */

static paper_size paper_for(const options *chosen, int us)
{
    return chosen->paper != PAPER_BY_UNITS ? chosen->paper : us ? PAPER_LETTER : PAPER_A4;
}

static int draw_side(const options *chosen, sheets *made, const planned *side)
{
    const int us = chosen->units == AS_THE_FILE ? side->wanted.in_feet : chosen->units == US;
    wanted views = chosen->views;
    views.us = us;
    views.paper = paper_for(chosen, us);
    if (chosen->task == DRAW_TEMPLATE)
        return add_template(made, side, views.end_first, views.end_last, views.paper, us);
    return add_views(made, side, &views);
}

static int write_sheets(const options *chosen, const sheets *made)
{
    text out = {NULL, 0, 0};
    int good;
    if (!ink_holds_all(chosen->format) && !chosen->page && made->count > 1) {
        say("there are %zu sheets, and %s holds one: --page chooses it", made->count, ink_name(chosen->format));
        return 0;
    }
    if (chosen->page && (size_t)chosen->page > made->count) {
        say("--page: %d: there are %zu sheets", chosen->page, made->count);
        return 0;
    }
    good = ink_sheets(&out, chosen->format, made, chosen->page ? (size_t)chosen->page - 1 : 0, chosen->dpi) &&
           write_output(&out, chosen->output);
    text_free(&out);
    return good;
}

static int draw_files(const options *chosen, int count, char **names)
{
    work all = {.take_off = 0};
    sheets made = {NULL, 0, 0};
    int good;
    work_add_files(&all, count, names);
    good = !all.bad;
    for (size_t i = 0; i < all.count; i++)
        if (is_planned(all.sides[i]))
            good &= draw_side(chosen, &made, all.sides[i]);
    if (made.count)
        good &= write_sheets(chosen, &made);
    sheets_free(&made);
    work_free(&all);
    return good ? EXIT_DONE : EXIT_REFUSED;
}

static int draw_form(const options *chosen)
{
    sheets made = {NULL, 0, 0};
    int good;
    add_form(&made, &chosen->known, paper_for(chosen, chosen->units == US), chosen->units == US);
    good = write_sheets(chosen, &made);
    sheets_free(&made);
    return good ? EXIT_DONE : EXIT_REFUSED;
}

static int show(const options *chosen)
{
    text out = {NULL, 0, 0};
    int status;
    if (chosen->task == SHOW_HELP)
        text_add(&out, "%s", help);
    else
        text_add(&out, "%s %s\n", program_name, tside_version());
    status = write_output(&out, chosen->output) ? EXIT_DONE : EXIT_REFUSED;
    text_free(&out);
    return status;
}

int main(int count, char **words)
{
    options chosen = {.paper = PAPER_BY_UNITS,
                      .format = INKS,
                      .views = {.view = -1, .end_first = TSIDE_DRIVE_END, .end_last = TSIDE_FREE_END},
                      .dpi = 150};
    int status;
    begin_program();
    json_set_alloc_funcs(take_memory, free); /* what the parser did not get would be missing in silence */
    tside_usual(TSIDE_KIND_SIDE, &chosen.known.side);
    status = read_options(&chosen, count, words);
    if (!status && chosen.task != SHOW_HELP && chosen.task != SHOW_VERSION)
        status = check_options(&chosen);
    if (status)
        return status;
    if (chosen.task == SHOW_HELP || chosen.task == SHOW_VERSION)
        return show(&chosen);
    if (chosen.task == DRAW_FORM)
        return optind < count ? misuse("--form needs no file: ", words[optind]) : draw_form(&chosen);
    if (optind == count)
        return misuse("no file", "");
    for (int i = optind; chosen.output && i < count; i++)
        if (is_same_file(chosen.output, words[i]))
            return misuse("--output: it is an input: ", chosen.output);
    return draw_files(&chosen, count - optind, words + optind);
}
