/* SPDX-License-Identifier: MIT */
#include <getopt.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "message.h"

void begin_program(void)
{
#ifdef SIGPIPE
    signal(SIGPIPE, SIG_IGN);
#endif
#ifdef SIGXFSZ
    signal(SIGXFSZ, SIG_IGN);
#endif
    opterr = 0;
}

int misuse(const char *what, const char *which)
{
    say("%s%s; see %s --help", what, which, program_name);
    return EXIT_USAGE;
}

int misused_option(char **words)
{
    const char letter[] = {'-', (char)optopt, '\0'};
    return misuse("an option is unknown, or has or lacks a value: ", optopt ? letter : words[optind - 1]);
}

int set_units(units *chosen, const char *value)
{
    if (strcmp(value, "us") && strcmp(value, "si"))
        return misuse("--units: us or si, not ", value);
    *chosen = strcmp(value, "us") ? SI : US;
    return EXIT_DONE;
}

int set_format(format *chosen, const char *value)
{
    if (strcmp(value, "text") && strcmp(value, "json") && strcmp(value, "csv"))
        return misuse("--format: text, json or csv, not ", value);
    *chosen = *value == 'j' ? JSON : *value == 'c' ? CSV : TEXT;
    return EXIT_DONE;
}

void must(tside_status status, const tside_fault *fault)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(fault, sentence, sizeof sentence);
    say("%s", sentence);
    exit(EXIT_REFUSED);
}
