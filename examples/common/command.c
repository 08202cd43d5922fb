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

/* Says which formats there are: "--format: text, json or csv, not verse". */
static int misused_format(const char *const *names, int last, const char *value)
{
    text words = {NULL, 0, 0};
    int status;
    for (int i = 0; i <= last; i++)
        text_add(&words, "%s%s", i == 0 ? "--format: " : i < last ? ", " : " or ", names[i]);
    text_add(&words, ", not ");
    status = misuse(text_of(&words), value);
    text_free(&words);
    return status;
}

int set_format(format *chosen, format last, const char *value)
{
    static const char *const names[] = {[TEXT] = "text", [JSON] = "json", [CSV] = "csv", [HTML] = "html"};
    for (int i = 0; i <= (int)last; i++)
        if (!strcmp(value, names[i])) {
            *chosen = (format)i;
            return EXIT_DONE;
        }
    return misused_format(names, (int)last, value);
}
