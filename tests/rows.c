/* SPDX-License-Identifier: MIT */
#include "rows.h"

#include <dirent.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/length.h>

/* --- files --- */

/*
 * Ends the column at *at, takes its quotes off, and moves *at to the next, or to NULL after the last. Returns NULL if
 * the quotes are wrong.
 */
static char *next_column(char **at)
{
    char *column = *at, *from = column, *to = column;
    int quoted = *from == '"';
    if (quoted)
        for (from++; *from && (*from != '"' || from[1] == '"'); *to++ = *from++)
            from += *from == '"';
    else
        for (; *from && *from != ',' && *from != '"';)
            *to++ = *from++;
    if (quoted && *from++ != '"')
        return NULL;
    if (*from && *from != ',')
        return NULL;
    *at = *from ? from + 1 : NULL;
    *to = '\0';
    return column;
}

int row_split(char *line, row *one, char *why, size_t size)
{
    const char **const column[] = {&one->function, &one->arguments, &one->result, &one->value,
                                   &one->unit,     &one->tolerance, &one->source};
    const int columns = sizeof column / sizeof *column;
    for (int i = 0; i < columns; i++) {
        if (!line) {
            snprintf(why, size, "%d columns, not %d", i, columns);
            return 0;
        }
        *column[i] = next_column(&line);
        if (!*column[i]) {
            snprintf(why, size, "column %d: quotes", i + 1);
            return 0;
        }
    }
    if (line) {
        snprintf(why, size, "more than %d columns", columns);
        return 0;
    }
    if (!one->source[strspn(one->source, " ")]) {
        snprintf(why, size, "no source");
        return 0;
    }
    return 1;
}

static void *must(void *memory)
{
    if (!memory) {
        fputs("test rows: out of memory\n", stderr);
        exit(EXIT_FAILURE);
    }
    return memory;
}

/* The next line without its end; NULL at the end of the file. */
static char *read_line(FILE *file)
{
    size_t length = 0, room = 256;
    char *line = must(malloc(room));
    int c;
    while ((c = getc(file)) != EOF && c != '\n') {
        if (length + 1 == room)
            line = must(realloc(line, room *= 2));
        line[length++] = (char)c;
    }
    line[length] = '\0';
    if (c == EOF && !length) {
        free(line);
        return NULL;
    }
    return line;
}

static void read_file(const char *folder, const char *name, rows *all)
{
    const char *header = "function,arguments,result,value,unit,tolerance,source";
    char path[1024], why[128];
    FILE *file;
    char *line;
    int number = 1, good;
    snprintf(path, sizeof path, "%s/%s", folder, name);
    file = fopen(path, "rb");
    line = file ? read_line(file) : NULL;
    good = line && !strcmp(line, header);
    free(line);
    if (!good && !*all->wrong)
        snprintf(all->wrong, sizeof all->wrong, "%.60s: %s", name,
                 file ? "its first line does not name the columns" : "cannot be read");
    while (good && (line = read_line(file))) {
        row one = {0};
        snprintf(one.place, sizeof one.place, "%.50s:%d", name, ++number);
        one.line = line;
        if (row_split(line, &one, why, sizeof why)) {
            all->row = must(realloc(all->row, (size_t)(all->count + 1) * sizeof *all->row));
            all->row[all->count++] = one;
        } else {
            if (!*all->wrong)
                snprintf(all->wrong, sizeof all->wrong, "%s: %s", one.place, why);
            free(line);
        }
    }
    if (file)
        fclose(file);
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

rows rows_read(const char *folder)
{
    rows all = {NULL, 0, ""};
    DIR *directory = opendir(folder);
    struct dirent *entry;
    char **names = NULL;
    size_t count = 0;
    while (directory && (entry = readdir(directory))) {
        size_t length = strlen(entry->d_name);
        if (length < 5 || entry->d_name[0] == '.' || strcmp(entry->d_name + length - 4, ".csv"))
            continue;
        names = must(realloc(names, (count + 1) * sizeof *names));
        names[count] = must(malloc(length + 1));
        strcpy(names[count++], entry->d_name);
    }
    if (directory)
        closedir(directory);
    if (!count)
        snprintf(all.wrong, sizeof all.wrong, "no .csv files in the folder %.180s", folder);
    else
        qsort(names, count, sizeof *names, by_name);
    for (size_t i = 0; i < count; i++) {
        read_file(folder, names[i], &all);
        free(names[i]);
    }
    free(names);
    return all;
}

/* --- columns --- */

int next_argument(const char **arguments, char name[NAME_SIZE], char value[VALUE_SIZE])
{
    const char *at = *arguments;
    size_t named = strcspn(at, "=;"), valued;
    if (!*at)
        return 0;
    if (!named || at[named] != '=' || named >= NAME_SIZE)
        return -1;
    memcpy(name, at, named);
    name[named] = '\0';
    at += named + 1;
    valued = strcspn(at, ";");
    if (valued >= VALUE_SIZE || (at[valued] && !at[valued + 1]))
        return -1;
    memcpy(value, at, valued);
    value[valued] = '\0';
    *arguments = at + valued + (at[valued] == ';');
    return 1;
}

/* A number without a unit, as every language reads it. */
static int plain_number(const char *text, double *number)
{
    char *end;
    if (!strcmp(text, "nan") || !strcmp(text, "inf") || !strcmp(text, "-inf")) {
        *number = !strcmp(text, "nan") ? NAN : *text == '-' ? -HUGE_VAL : HUGE_VAL;
        return 1;
    }
    if (!*text || text[strspn(text, "0123456789+-.e")])
        return 0;
    *number = strtod(text, &end);
    return !*end;
}

int argument_number(const char *text, const char *si, double *number)
{
    return plain_number(text, number) || tside_quantity_read(text, si, number, NULL) == TSIDE_OK;
}

int row_number(const char *text, const char *unit, const char *si, double *number)
{
    char quantity[VALUE_SIZE + 32];
    if (!*unit || !strcmp(unit, si))
        return plain_number(text, number);
    snprintf(quantity, sizeof quantity, "%.*s %.20s", VALUE_SIZE, text, unit);
    return tside_quantity_read(quantity, si, number, NULL) == TSIDE_OK;
}

int row_tolerance(const char *text, const char *unit, const char *si, double value, double *tolerance)
{
    double one;
    if (!strncmp(text, "rel ", 4)) {
        if (!plain_number(text + 4, tolerance))
            return 0;
        *tolerance *= fabs(value);
    } else {
        if (!plain_number(text, tolerance) || !row_number("1", unit, si, &one))
            return 0;
        *tolerance *= one;
    }
    return *tolerance >= 0 && isfinite(*tolerance);
}

int differs(double got, double want, double tolerance)
{
    return !(fabs(got - want) <= tolerance);
}
