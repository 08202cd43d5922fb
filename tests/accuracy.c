/* SPDX-License-Identifier: MIT */
/* How near rows of numbers come to what they want: of each function and result the greatest error, over a folder. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "calls.h"

enum { RESULTS = 1024 };

/* One result of one function: its row that comes nearest to what it may be off, or farthest beyond. */
typedef struct seen {
    const char *function, *result;
    const row *worst;
    double share, off, value;
    int count, failed;
} seen;

static seen *find_seen(seen *all, int *count, const row *r)
{
    for (int i = 0; i < *count; i++)
        if (!strcmp(all[i].function, r->function) && !strcmp(all[i].result, r->result))
            return all + i;
    if (*count == RESULTS) {
        fputs("accuracy: too many results\n", stderr);
        exit(EXIT_FAILURE);
    }
    all[*count] = (seen){.function = r->function, .result = r->result};
    return all + (*count)++;
}

static void look_at(seen *one, const row *r, int verbose)
{
    tside_status status;
    why w = {"", 0, 0};
    const int holds = run_row(r, &status, &w);
    const double share = w.allowed > 0 ? w.off / w.allowed : !holds;
    one->count++;
    one->failed += !holds;
    if (!one->worst || share > one->share) {
        one->worst = r;
        one->share = share;
        one->off = w.off;
        one->value = strtod(r->value, NULL);
    }
    if (!holds && verbose)
        printf("%s: %s\n    %s\n", r->function, w.text, r->arguments);
}

int main(int count, char **arguments)
{
    static seen all[RESULTS];
    int results = 0, failed = 0;
    const rows read = rows_read(count > 1 ? arguments[1] : ".");
    if (*read.wrong) {
        fprintf(stderr, "%s\n", read.wrong);
        return EXIT_FAILURE;
    }
    for (int i = 0; i < read.count; i++)
        look_at(find_seen(all, &results, read.row + i), read.row + i, count > 2);
    printf("%-26s %-28s %7s %7s %10s %10s %8s  %s\n", "function", "result", "points", "beyond", "error", "relative",
           "allowed", "as stated");
    for (int i = 0; i < results; i++) {
        const seen *s = all + i;
        printf("%-26s %-28s %7d %7d %10.2g %10.2g %7.0f%%  %s\n", s->function, s->result, s->count, s->failed, s->off,
               s->value != 0 ? s->off / (s->value < 0 ? -s->value : s->value) : 0, 100 * s->share, s->worst->tolerance);
        failed += s->failed;
    }
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
