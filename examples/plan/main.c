/* SPDX-License-Identifier: MIT */
/* tunnelside-plan: from a side's measurements to a job sheet. */
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "fields.h"
#include "html.h"
#include "job.h"
#include "json.h"
#include "matters.h"
#include "memory.h"
#include "message.h"
#include "output.h"
#include "print.h"
#include "sheet.h"
#include "table.h"

const char program_name[] = "tunnelside-plan";

typedef enum task { PLAN_FILES, SHOW_HELP, SHOW_VERSION, SHOW_FIELDS, SHOW_BLANK, SHOW_WHOLE_BLANK } task;

typedef struct options {
    task task;
    units units;
    format format;
    const char *drives; /* file of a list of them */
    int matters;        /* what matters: instead of the sheet, or added to the JSON */
    const char *output;
} options;

static const char help[] = "Usage: tunnelside-plan [OPTION]... FILE...\n"
                           "\n"
                           "Plans roll-up sides of high tunnels: reads the measurements of a side, of a list\n"
                           "of sides, or of a job of two sides from JSON, and prints a job sheet for each:\n"
                           "what to cut and drill, where it sits, how many turns, what torque, what holds.\n"
                           "FILE \"-\" is standard input.\n"
                           "\n"
                           "  -u, --units=us|si        units of the sheet: feet, inches and pounds, or SI;\n"
                           "                           without it, as the file gives the hip\n"
                           "  -f, --format=FORMAT      text or html, sheets for people; or for programs,\n"
                           "                           always in SI, json, or csv with one row a side\n"
                           "      --what-matters       instead of the sheet, how far each mismeasured\n"
                           "                           input moves cuts, kick, turns and torque\n"
                           "      --drives=FILE        the smallest drive of a list in FILE, for each side\n"
                           "  -o, --output=FILE        write to FILE: whole, or not at all\n"
                           "      --fields             explain every field a file may have, in --units\n"
                           "      --blank[=all]        print a file to fill in, short or with every field\n"
                           "  -h, --help               print this\n"
                           "  -V, --version            print the version\n"
                           "\n"
                           "Several sides are planned in order. One that is refused does not stop others;\n"
                           "the exit status is then 1. It is 2 where the command line is wrong.\n"
                           "For choosing parts and setting out, not a certificate: local codes, makers'\n"
                           "ratings and licensed practice come first.\n";

static int set_blank(options *chosen, const char *value)
{
    if (value && strcmp(value, "all"))
        return misuse("--blank: all, or nothing: ", value);
    chosen->task = value ? SHOW_WHOLE_BLANK : SHOW_BLANK;
    return 0;
}

/* Sets what an option asks for; returns 0, or EXIT_USAGE having said why. */
static int set_option(options *chosen, int letter, const char *value)
{
    switch (letter) {
    case 'u': return set_units(&chosen->units, value);
    case 'f': return set_format(&chosen->format, HTML, value);
    case 'D': chosen->drives = value; return 0;
    case 'M': chosen->matters = 1; return 0;
    case 'o': chosen->output = value; return 0;
    case 'h': chosen->task = SHOW_HELP; return 0;
    case 'V': chosen->task = SHOW_VERSION; return 0;
    case 'F': chosen->task = SHOW_FIELDS; return 0;
    case 'B': return set_blank(chosen, value);
    default: return EXIT_USAGE;
    }
}

static int read_options(options *chosen, int count, char **words)
{
    static const struct option known[] = {
        {"units", required_argument, NULL, 'u'},  {"format", required_argument, NULL, 'f'},
        {"output", required_argument, NULL, 'o'}, {"drives", required_argument, NULL, 'D'},
        {"what-matters", no_argument, NULL, 'M'}, {"fields", no_argument, NULL, 'F'},
        {"blank", optional_argument, NULL, 'B'},  {"help", no_argument, NULL, 'h'},
        {"version", no_argument, NULL, 'V'},      {NULL, 0, NULL, 0},
    };
    int letter, status = 0;
    while (!status && (letter = getopt_long(count, words, "u:f:o:hV", known, NULL)) != -1)
        status = letter == '?' ? misused_option(words) : set_option(chosen, letter, optarg);
    if (!status && chosen->matters && chosen->format != TEXT && chosen->format != JSON)
        return misuse("--what-matters goes with --format=text or json, not ", chosen->format == CSV ? "csv" : "html");
    return status;
}

static void print_matters_of_all(text *out, const work *all, units wanted)
{
    for (size_t i = 0; i < all->count; i++)
        if (is_planned(all->sides[i])) {
            text_add(out, "%s", out->length ? "\f" : "");
            print_matters(out, all->sides[i], in_us(wanted, all->sides[i]));
        }
}

static void print_sheets(text *out, const work *all, const options *chosen)
{
    papers sheets = sheets_of_all(all, chosen->units, chosen->format == HTML);
    if (chosen->format == HTML)
        print_html(out, SHEET_CALLED, &sheets);
    else
        print_papers(out, &sheets);
    papers_free(&sheets);
}

static void print_work(text *out, const work *all, const options *chosen)
{
    if (chosen->format == JSON)
        print_json(out, all, chosen->matters);
    else if (chosen->format == CSV)
        print_table(out, all);
    else if (chosen->matters)
        print_matters_of_all(out, all, chosen->units);
    else
        print_sheets(out, all, chosen);
}

static int plan_files(const options *chosen, int count, char **names)
{
    drive_list drives = {NULL, NULL, 0};
    work all = {.take_off = 1, .drives = chosen->drives ? &drives : NULL};
    text out = {NULL, 0, 0};
    int status = EXIT_DONE;
    if (chosen->drives && !drives_read(&drives, chosen->drives)) {
        drives_free(&drives);
        return EXIT_REFUSED;
    }
    work_add_files(&all, count, names);
    print_work(&out, &all, chosen);
    if (all.bad)
        status = EXIT_REFUSED;
    if (out.length && !write_output(&out, chosen->output))
        status = EXIT_REFUSED;
    text_free(&out);
    work_free(&all);
    drives_free(&drives);
    return status;
}

static int show(const options *chosen)
{
    text out = {NULL, 0, 0};
    int status;
    switch (chosen->task) {
    case SHOW_HELP: text_add(&out, "%s", help); break;
    case SHOW_VERSION: text_add(&out, "tunnelside-plan %s\n", tside_version()); break;
    case SHOW_FIELDS: print_fields(&out, chosen->units == US); break;
    case SHOW_WHOLE_BLANK: print_whole_blank(&out); break;
    default: print_blank(&out); break;
    }
    status = write_output(&out, chosen->output) ? EXIT_DONE : EXIT_REFUSED;
    text_free(&out);
    return status;
}

int main(int count, char **words)
{
    options chosen = {PLAN_FILES, AS_THE_FILE, TEXT, NULL, 0, NULL};
    int status;
    begin_program();
    json_set_alloc_funcs(take_memory, free); /* what the parser did not get would be missing in silence */
    status = read_options(&chosen, count, words);
    if (status)
        return status;
    if (chosen.task != PLAN_FILES)
        return show(&chosen);
    if (optind == count)
        return misuse("no file", "");
    for (int i = optind; chosen.output && i < count; i++)
        if (is_same_file(chosen.output, words[i]))
            return misuse("--output: it is an input: ", chosen.output);
    if (chosen.output && chosen.drives && is_same_file(chosen.output, chosen.drives))
        return misuse("--output: it is an input: ", chosen.output);
    return plan_files(&chosen, count - optind, words + optind);
}
