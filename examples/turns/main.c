/* SPDX-License-Identifier: MIT */
/* tunnelside-turns: the take-up of a roll, turn by turn, and the thickness that counted turns imply. */
#include <errno.h>
#include <getopt.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "turns.h"

enum { DONE, AT_FAULT, MISUSED }; /* exit statuses */

static const char help[] =
    "Usage: tunnelside-turns --core=D --drop=L [OPTION]...\n"
    "       tunnelside-turns --core=D --counted=N --over=L [OPTION]...\n"
    "Take-up of curtain on a roll bar, turn by turn; or the curtain's effective\n"
    "thickness, from turns counted over a measured length taken up.\n"
    "\n"
    "  -c, --core=D         diameter of the bar as the curtain meets it, clips included\n"
    "  -d, --drop=L         curtain to take up from shut to open\n"
    "  -t, --thickness=T    thickness of the bare curtain\n"
    "  -p, --packing=K      trapped air above 1, squeezed quilts below\n"
    "  -w, --wraps=N        wraps on the bar when shut, or when counting begins\n"
    "  -n, --counted=N      turns counted\n"
    "  -l, --over=L         curtain taken up meanwhile\n"
    "  -u, --units=us|si    units of the table (usually those of the core)\n"
    "  -f, --format=text|csv|json\n"
    "  -h, --help           print this and exit\n"
    "  -V, --version        print the version and exit\n"
    "\n"
    "Lengths are texts with units: 1.4in, \"4 ft 6 in\", 0.15mm.\n"
    "Exit status: 0 done, 1 values at fault or output not written, 2 misuse.\n";

static int misuse(const char *what, const char *which)
{
    fprintf(stderr, "tunnelside-turns: %s%s\nTry 'tunnelside-turns --help'.\n", what, which);
    return MISUSED;
}

/* Reads an option's quantity; says what is wrong with it. */
static int read_option(const char *option, const char *words, const char *unit, double *value)
{
    tside_fault fault;
    char sentence[512];
    if (tside_quantity_read(words, unit, value, &fault) == TSIDE_OK)
        return 1;
    tside_fault_text(&fault, sentence, sizeof sentence);
    fprintf(stderr, "tunnelside-turns: --%s: \"%s\": %s\n", option, words, sentence);
    return 0;
}

static int in_feet(const char *words)
{
    return strpbrk(words, "'\"fi") != NULL;
}

static int put_out(int status)
{
    if (fflush(stdout) == 0 && !ferror(stdout) && fclose(stdout) == 0)
        return status;
    fprintf(stderr, "tunnelside-turns: standard output: not written: %s\n", strerror(errno));
    return AT_FAULT;
}

/* The options of the two questions do not mix. */
static int check_question(const question *q)
{
    if (!(q->given & CORE))
        return misuse("--core is needed", "");
    if (q->given & (COUNTED | OVER)) {
        if ((q->given & (COUNTED | OVER)) != (COUNTED | OVER))
            return misuse("--counted and --over go together", "");
        return q->given & DROP ? misuse("--drop does not go with --counted", "") : DONE;
    }
    return q->given & DROP ? DONE : misuse("--drop is needed, or --counted and --over", "");
}

int main(int argc, char **argv)
{
    static const struct option longs[] = {
        {"core", required_argument, NULL, 'c'},    {"drop", required_argument, NULL, 'd'}, {"thickness", required_argument, NULL, 't'}, {"packing", required_argument, NULL, 'p'},
        {"wraps", required_argument, NULL, 'w'},   {"counted", required_argument, NULL, 'n'}, {"over", required_argument, NULL, 'l'},   {"units", required_argument, NULL, 'u'},
        {"format", required_argument, NULL, 'f'},  {"help", no_argument, NULL, 'h'},       {"version", no_argument, NULL, 'V'},         {NULL, 0, NULL, 0},
    };
    question q = {.wraps = 1}; /* common practice, no published source */
    int letter, units_given = 0, status;
    tside_usual(TSIDE_KIND_ROLL, &q.roll);
    while ((letter = getopt_long(argc, argv, "c:d:t:p:w:n:l:u:f:hV", longs, NULL)) != -1) {
        int good = 1;
        switch (letter) {
        case 'c':
            good = read_option("core", optarg, "m", &q.roll.core);
            q.given |= CORE;
            q.us = units_given ? q.us : in_feet(optarg);
            break;
        case 'd': good = read_option("drop", optarg, "m", &q.drop), q.given |= DROP; break;
        case 't': good = read_option("thickness", optarg, "m", &q.roll.thickness), q.given |= THICKNESS; break;
        case 'p': good = read_option("packing", optarg, "1", &q.roll.packing), q.given |= PACKING; break;
        case 'w': good = read_option("wraps", optarg, "turn", &q.wraps), q.given |= WRAPS; break;
        case 'n': good = read_option("counted", optarg, "turn", &q.counted), q.given |= COUNTED; break;
        case 'l': good = read_option("over", optarg, "m", &q.over), q.given |= OVER; break;
        case 'u':
            if (strcmp(optarg, "us") && strcmp(optarg, "si"))
                return misuse("--units takes us or si, not ", optarg);
            q.us = !strcmp(optarg, "us");
            units_given = 1;
            break;
        case 'f':
            if (strcmp(optarg, "text") && strcmp(optarg, "csv") && strcmp(optarg, "json"))
                return misuse("--format takes text, csv or json, not ", optarg);
            q.format = optarg[0];
            break;
        case 'h': fputs(help, stdout); return put_out(DONE);
        case 'V': printf("tunnelside-turns (libtunnelside) %s\n", tside_version()); return put_out(DONE);
        default: return misuse("see above", "");
        }
        if (!good)
            return AT_FAULT;
    }
    if (optind < argc)
        return misuse("no such argument: ", argv[optind]);
    if ((status = check_question(&q)) != DONE)
        return status;
    if (!(q.given & COUNTED ? answer_thickness(&q) : answer_turns(&q)))
        return AT_FAULT;
    return put_out(DONE);
}
