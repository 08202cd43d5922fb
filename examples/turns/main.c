/* SPDX-License-Identifier: MIT */
/* tunnelside-turns: what a roll takes up, turn by turn, and the thickness that counted turns imply. */
#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <string.h>

#include "feet.h"
#include "message.h"
#include "sentence.h"
#include "turns.h"

const char program_name[] = "tunnelside-turns";

static const char help[] = "Usage: tunnelside-turns --core=LENGTH --drop=LENGTH [OPTION]...\n"
                           "       tunnelside-turns --core=LENGTH --counted=TURNS --over=LENGTH [OPTION]...\n"
                           "What each turn of a roll bar takes up, from shut to open; or the effective\n"
                           "thickness of a curtain, from turns counted while a measured length was taken up.\n"
                           "\n"
                           "  -c, --core=LENGTH        diameter as the curtain meets it, clips included\n"
                           "  -d, --drop=LENGTH        curtain taken up from shut to open\n"
                           "  -t, --thickness=LENGTH   of the bare curtain; of film also in mil: 6mil\n"
                           "  -p, --packing=NUMBER     trapped air above 1, squeezed quilts below\n"
                           "  -w, --wraps=TURNS        on the bar when shut, or when counting began\n"
                           "  -n, --counted=TURNS      turns counted\n"
                           "  -l, --over=LENGTH        curtain taken up meanwhile\n"
                           "  -u, --units=us|si        of the text; without it, as the core is given\n"
                           "  -f, --format=FORMAT      text, for people; or for programs, in SI, csv or json\n"
                           "  -h, --help               print this\n"
                           "  -V, --version            print the version\n"
                           "\n"
                           "A length has its unit: 1.4in, \"4 ft 6 in\", 0.15mm. Exit status: 1 where a value\n"
                           "is at fault or output cannot be written, 2 where the command line is wrong.\n"
                           "Hands and sleeves clear of roll and rail while the bar turns: they draw in.\n";

/* --- the options that bring a quantity, in the order of option_of --- */

static const char letters[] = "cdtpwnl";

static const struct {
    const char *name, *unit;
    tside_kind kind;
    const char *field; /* NULL: no row of the kind's table */
} options[QUANTITIES] = {
    {"core", "m", TSIDE_KIND_ROLL, "core"},
    {"drop", "m", TSIDE_KIND_ROLL, NULL},
    {"thickness", "m", TSIDE_KIND_ROLL, "thickness"},
    {"packing", "1", TSIDE_KIND_ROLL, "packing"},
    {"wraps", "turn", TSIDE_KIND_STOPS, "wraps_shut"},
    {"counted", "turn", TSIDE_KIND_ROLL, NULL},
    {"over", "m", TSIDE_KIND_ROLL, NULL},
};

const char *name_of(option_of which)
{
    return options[which].name;
}

const tside_field *field_of(option_of which)
{
    tside_place place;
    if (!options[which].field || tside_field_find(options[which].kind, options[which].field, &place, NULL) != TSIDE_OK)
        return NULL;
    return place.field;
}

void complain(const question *asked, option_of which, const tside_fault *fault, int us)
{
    pen p = {.us = us};
    text why = {NULL, 0, 0};
    add_refusal(&why, &p, fault);
    if (which < QUANTITIES && asked->words[which])
        say("--%s: \"%s\": %s", options[which].name, asked->words[which], text_of(&why));
    else
        say("%s", text_of(&why));
    text_free(&why);
}

static int read_quantity(question *asked, option_of which, const char *words)
{
    tside_fault fault;
    const tside_field *row = field_of(which);
    asked->words[which] = words;
    if ((row ? tside_field_read(row, words, &asked->value[which], &fault)
             : tside_quantity_read(words, options[which].unit, &asked->value[which], &fault)) == TSIDE_OK)
        return EXIT_DONE;
    fault.field[0] = '\0'; /* it is the option that is named */
    complain(asked, which, &fault, is_in_feet(words));
    return EXIT_REFUSED;
}

/* --- the command line --- */

typedef enum task { ANSWER, SHOW_HELP, SHOW_VERSION } task;

typedef struct command {
    question asked;
    units units;
    task task;
} command;

/* Sets what an option asks for; returns an exit status, having said why where it is not EXIT_DONE. */
static int set_option(command *line, int letter, const char *value)
{
    const char *quantity = strchr(letters, letter);
    if (quantity)
        return read_quantity(&line->asked, (option_of)(quantity - letters), value);
    switch (letter) {
    case 'u': return set_units(&line->units, value);
    case 'f': return set_format(&line->asked.format, CSV, value);
    case 'h': line->task = SHOW_HELP; return EXIT_DONE;
    case 'V': line->task = SHOW_VERSION; return EXIT_DONE;
    default: return EXIT_USAGE;
    }
}

static int read_options(command *line, int count, char **words)
{
    static const struct option known[] = {
        {"core", required_argument, NULL, 'c'},      {"drop", required_argument, NULL, 'd'},
        {"thickness", required_argument, NULL, 't'}, {"packing", required_argument, NULL, 'p'},
        {"wraps", required_argument, NULL, 'w'},     {"counted", required_argument, NULL, 'n'},
        {"over", required_argument, NULL, 'l'},      {"units", required_argument, NULL, 'u'},
        {"format", required_argument, NULL, 'f'},    {"help", no_argument, NULL, 'h'},
        {"version", no_argument, NULL, 'V'},         {NULL, 0, NULL, 0},
    };
    int letter, status = EXIT_DONE;
    while (!status && (letter = getopt_long(count, words, "c:d:t:p:w:n:l:u:f:hV", known, NULL)) != -1)
        status = letter == '?' ? misused_option(words) : set_option(line, letter, optarg);
    if (!status && line->task == ANSWER && optind < count)
        return misuse("not an option: ", words[optind]);
    return status;
}

/* Each question has its own options: one that would change nothing is refused, not passed over. */
static int check_question(const question *asked)
{
    const char *const *given = asked->words;
    const int counting = given[COUNTED] || given[OVER];
    if (!given[CORE])
        return misuse("--core is needed", "");
    if (!given[DROP] && !counting)
        return misuse("--drop is needed, or --counted and --over", "");
    if (given[DROP] && counting)
        return misuse("--drop does not go with --counted and --over", "");
    if (counting && !(given[COUNTED] && given[OVER]))
        return misuse("--counted and --over go together", "");
    if (counting && given[PACKING])
        return misuse("--packing does not go with --counted: it is what --thickness then gives", "");
    return EXIT_DONE;
}

static void fill_usual(question *asked)
{
    for (int i = 0; i < QUANTITIES; i++)
        if (field_of((option_of)i))
            asked->value[i] = field_of((option_of)i)->usual;
}

/* What was printed is worth nothing unless all of it arrived. */
static int finish(int status)
{
    int why = ferror(stdout) ? (errno ? errno : EIO) : 0;
    errno = 0;
    if (fclose(stdout) && !why)
        why = errno ? errno : EIO;
    if (!why)
        return status;
    say("standard output: cannot be written: %s", strerror(why));
    return EXIT_REFUSED;
}

static int answer(command *line)
{
    question *asked = &line->asked;
    int status = check_question(asked);
    if (status)
        return status;
    asked->us = line->units == AS_THE_FILE ? is_in_feet(asked->words[CORE]) : line->units == US;
    return (asked->words[COUNTED] ? answer_thickness(asked) : answer_turns(asked)) ? EXIT_DONE : EXIT_REFUSED;
}

int main(int count, char **words)
{
    command line = {.task = ANSWER};
    int status;
    begin_program();
    fill_usual(&line.asked);
    status = read_options(&line, count, words);
    if (status)
        return status;
    errno = 0;
    switch (line.task) {
    case SHOW_HELP: fputs(help, stdout); break;
    case SHOW_VERSION: printf("tunnelside-turns %s\n", tside_version()); break;
    default: status = answer(&line); break;
    }
    return status ? status : finish(EXIT_DONE);
}
