/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "matters.h"
#include "sheet.h"
#include "walk.h"

enum { INPUTS = 128, ANSWERS = 9, WAYS = 2 };

/* What may be moved. */
static const struct {
    const char *title, *path, *unit;
} answers[ANSWERS] = {
    {"Roll bar, cut", "bar_length", "m"},
    {"Guide pipe at the drive's end, cut", "drive_end.sweep.cut_length", "m"},
    {"Guide pipe at the free end, cut", "free_end.sweep.cut_length", "m"},
    {"Extender at the drive's end, cut", "drive_end.layout.cut_length", "m"},
    {"Extender at the free end, cut", "free_end.layout.cut_length", "m"},
    {"Kick out at the drive's end", "drive_end.sweep.kick_out", "m"},
    {"Kick out at the free end", "free_end.sweep.kick_out", "m"},
    {"Turns of the drive", "drive_turns", "turn"},
    {"Worst torque at the drive", "worst.drive", "N m"},
};

/* A measured input, and by how much it moves each answer. */
typedef struct input {
    char path[TSIDE_PATH_SIZE];
    const tside_field *row;
    double value;
    double moves[ANSWERS];
    char refused[WAYS][320]; /* why the side is refused with it off by minus, plus its tolerance; "" where it is not */
} input;

typedef struct gathered {
    input *inputs;
    int count;
} gathered;

static void gather(void *context, const char *path, const tside_field *row, const void *member)
{
    gathered *all = context;
    input *one = all->inputs + all->count;
    if (row->type != TSIDE_NUMBER || !(row->tolerance > 0) || strchr(path, '[') || all->count == INPUTS)
        return;
    if (row->optional && !*(const int *)(const void *)((const char *)member - row->offset + row->given_offset))
        return;
    memset(one, 0, sizeof *one);
    strncpy(one->path, path, sizeof one->path - 1);
    one->row = row;
    one->value = *(const double *)member;
    all->count++;
}

/* Both ways at once: two sides that differ in this input alone. */
static void move(input *one, const planned *side)
{
    double values[WAYS] = {one->value - one->row->tolerance, one->value + one->row->tolerance}, results[ANSWERS][WAYS], base;
    tside_input in = {{NULL, 0}, values, sizeof *values};
    tside_output out[ANSWERS];
    int statuses[WAYS], used[ANSWERS];
    tside_fault fault;
    tside_field_find(TSIDE_KIND_SIDE, one->path, &in.place, NULL);
    for (int k = 0; k < ANSWERS; k++) {
        tside_field_find(TSIDE_KIND_PLAN, answers[k].path, &out[k].place, NULL);
        out[k].data = results[k];
        out[k].stride = sizeof *results[k];
        used[k] = strncmp(answers[k].path + strcspn(answers[k].path, "."), ".layout", 7) || on_extender(side, answers[k].path[0] == 'f');
    }
    for (int way = 0; way < WAYS; way++) {
        in.data = values + way;
        if (tside_plan_sides(&side->wanted.side, 1, &in, 1, out, ANSWERS, statuses + way, NULL, &fault) != TSIDE_OK) {
            tside_fault_text(&fault, one->refused[way], sizeof one->refused[way]);
            continue;
        }
        for (int k = 0; k < ANSWERS; k++) {
            base = *CONST_MEMBER(&side->plan, out[k].place.offset, double);
            if (used[k])
                one->moves[k] = fmax(one->moves[k], fabs(results[k][0] - base));
        }
    }
}

static int which; /* the answer that the order is by: qsort passes nothing else */

static int more_first(const void *a, const void *b)
{
    const double x = ((const input *)a)->moves[which], y = ((const input *)b)->moves[which];
    return (x < y) - (x > y);
}

static const char *show(pen *p, double value, const char *unit)
{
    return strcmp(unit, "m") ? quantity(p, value, unit) : fine(p, value);
}

static void print_answer(sheet *s, gathered *all, int k)
{
    tside_place place;
    double sum = 0;
    which = k;
    qsort(all->inputs, (size_t)all->count, sizeof *all->inputs, more_first);
    if (!all->count || !(all->inputs[0].moves[k] > 1e-9))
        return;
    tside_field_find(TSIDE_KIND_PLAN, answers[k].path, &place, NULL);
    text_add(s->out, "\n%s: %s\n", answers[k].title, show(&s->pen, *CONST_MEMBER(&s->side->plan, place.offset, double), answers[k].unit));
    for (int i = 0; i < all->count; i++) {
        const input *one = all->inputs + i;
        sum += one->moves[k] * one->moves[k];
        /* the sum counts what is too small to print */
        if (one->moves[k] >= 0.01 * all->inputs[0].moves[k] && strcmp(show(&s->pen, one->moves[k], answers[k].unit), show(&s->pen, 0, answers[k].unit)))
            text_add(s->out, "  %12s  by %s off in %s\n", show(&s->pen, one->moves[k], answers[k].unit), show(&s->pen, one->row->tolerance, one->row->unit), one->path);
    }
    text_add(s->out, "  %12s  all together, if each is off by itself (root of the sum of squares)\n", show(&s->pen, sqrt(sum), answers[k].unit));
}

static void print_refused(sheet *s, const gathered *all)
{
    int any = 0;
    for (int i = 0; i < all->count; i++)
        for (int way = 0; way < WAYS; way++)
            if (*all->inputs[i].refused[way]) {
                text_add(s->out, "%s", any++ ? "" : "\nRefused when off:\n");
                text_say(s->out, "  ", "%s, %s by %s: %s", all->inputs[i].path, way ? "more" : "less", show(&s->pen, all->inputs[i].row->tolerance, all->inputs[i].row->unit),
                         all->inputs[i].refused[way]);
            }
}

void print_matters(text *out, const planned *side, int us)
{
    sheet s = {.out = out, .side = side, .pen = {.us = us}};
    gathered all = {take_memory(INPUTS * sizeof(input)), 0};
    walk(TSIDE_KIND_SIDE, &side->wanted.side, gather, &all);
    text_wrap(out, "SIDE   ", *side->wanted.name ? side->wanted.name : "without a name");
    text_wrap(out, "", "How far each answer moves when one measured input is off by what a careful measurement may be off (tunnelside-plan --fields), the most first. "
                       "Inputs that move it by less than a hundredth of the most are left out, and count in the sum.");
    for (int i = 0; i < all.count; i++)
        move(all.inputs + i, side);
    for (int k = 0; k < ANSWERS; k++)
        print_answer(&s, &all, k);
    print_refused(&s, &all);
    free(all.inputs);
}
