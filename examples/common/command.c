/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include "command.h"
#include "text.h"

int misuse(const char *what, const char *which)
{
    fprintf(stderr, "%s: %s%s; see %s --help\n", program_name, what, which, program_name);
    return EXIT_USAGE;
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
