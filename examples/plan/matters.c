/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "matters.h"
#include "memory.h"
#include "sentence.h"
#include "tolerances.h"
#include "walk.h"

const answer answers[ANSWERS] = {
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

/* --- the inputs that are measured --- */

typedef struct gathering {
    matters *m;
    const planned *side;
} gathering;

/* What lists hold moves none of the answers: keep-outs, and bars to choose of. */
static int is_measured(const char *path, const tside_field *row, const void *member, double tolerance)
{
    return row->type == TSIDE_NUMBER && tolerance > 0 && !strchr(path, '[') && strlen(path) < TSIDE_PATH_SIZE &&
           !(row->optional && !*CONST_MEMBER((const char *)member - row->offset, row->given_offset, int));
}

static measured *add_input(matters *m)
{
    m->inputs = grown(m->inputs, m->count, &m->room, sizeof *m->inputs);
    memset(m->inputs + m->count, 0, sizeof *m->inputs);
    return m->inputs + m->count++;
}

static void gather(void *context, const char *path, const tside_field *row, const void *member)
{
    const gathering *g = context;
    const request *wanted = &g->side->wanted;
    const double tolerance = row->type == TSIDE_NUMBER ? tolerance_of(wanted, row, member) : 0;
    measured *one;
    if (!is_measured(path, row, member, tolerance))
        return;
    one = add_input(g->m);
    strcpy(one->path, path);
    one->row = row;
    one->value = *(const double *)member;
    one->tolerance = tolerance;
    one->offset = (size_t)((const char *)member - (const char *)&wanted->side);
    one->assumed = !file_gives(wanted, member);
}

/* --- how far they move the answers --- */

static tside_output output(int which, double *data)
{
    tside_output out = {{NULL, 0}, data, sizeof *data};
    tside_fault fault;
    must(tside_field_find(TSIDE_KIND_PLAN, answers[which].path, &out.place, &fault), &fault);
    return out;
}

static int has_answer(const planned *side, int which)
{
    const int end = strncmp(answers[which].path, "free", 4) ? TSIDE_DRIVE_END : TSIDE_FREE_END;
    return !strstr(answers[which].path, ".layout.") || end_asked(side, end)->hung == TSIDE_ON_EXTENDER;
}

/* A side that differs in this input alone. It is planned by itself, so that why it is refused is not lost. */
static void move(matters *m, measured *one, int way, const tside_side *base)
{
    const double off = one->value + (way == MORE ? one->tolerance : -one->tolerance);
    double moved[ANSWERS];
    tside_input in = {{NULL, 0}, &off, 0};
    tside_output out[ANSWERS];
    tside_fault fault;
    int status;
    memcpy(moved, m->values, sizeof moved);
    for (int k = 0; k < ANSWERS; k++)
        out[k] = output(k, moved + k);
    must(tside_field_find(TSIDE_KIND_SIDE, one->path, &in.place, &fault), &fault);
    if (tside_plan_sides(base, 1, &in, 1, out, ANSWERS, &status, NULL, &fault) != TSIDE_OK) {
        fault.index = -1; /* the row: there is only one */
        one->refused[way] = fault;
    }
    for (int k = 0; k < ANSWERS; k++)
        if (m->asked[k])
            one->moves[k] = fmax(one->moves[k], fabs(moved[k] - m->values[k]));
}

void matters_find(matters *m, const planned *side)
{
    gathering g = {m, side};
    *m = (matters){.inputs = NULL};
    for (int k = 0; k < ANSWERS; k++) {
        m->asked[k] = has_answer(side, k);
        m->values[k] = *CONST_MEMBER(&side->plan, output(k, NULL).place.offset, double);
    }
    walk(TSIDE_KIND_SIDE, &side->wanted.side, gather, &g);
    for (size_t i = 0; i < m->count; i++)
        for (int way = 0; way < WAYS; way++)
            move(m, m->inputs + i, way, &side->wanted.side);
}

void matters_free(matters *m)
{
    free(m->inputs);
}

/* Rounding moves an answer too: by far less than a billionth. */
static int moves(const matters *m, size_t i, int which)
{
    return m->inputs[i].moves[which] > 1e-9 * (1 + fabs(m->values[which]));
}

/* Those that move it alike, but for rounding, stand as they do in the side. */
static int comes_before(const measured *one, const measured *other, int which)
{
    const double x = one->moves[which], y = other->moves[which];
    return fabs(x - y) > 1e-9 * fmax(x, y) ? x > y : one->offset < other->offset;
}

/* By insertion: they are few. */
size_t matters_order(matters *m, int which)
{
    size_t count = 0;
    for (size_t i = 1; i < m->count; i++) {
        const measured one = m->inputs[i];
        size_t k = i;
        for (; k > 0 && comes_before(&one, m->inputs + k - 1, which); k--)
            m->inputs[k] = m->inputs[k - 1];
        m->inputs[k] = one;
    }
    while (count < m->count && moves(m, count, which))
        count++;
    return count;
}

double matters_together(const matters *m, int which)
{
    double sum = 0;
    for (size_t i = 0; i < m->count; i++)
        sum += m->inputs[i].moves[which] * m->inputs[i].moves[which];
    return sqrt(sum);
}

/* --- on paper --- */

typedef struct listing {
    text *out;
    pen pen;
} listing;

enum { MOVE_WIDTH = 14 };

/* How far an answer moves: a length as finely as the sheet shows any, others to three decimals. */
static const char *moved(pen *p, double value, const char *unit)
{
    return strcmp(unit, "m") ? quantity(p, value, unit) : closely(p, value);
}

/* A tolerance as it was meant: 1/4 in in a fraction, 0.02 mm and 6.35 mm in decimals. */
static const char *off_by(pen *p, double value, const char *unit)
{
    const double part = p->us ? 0.0254 / 32 : 0.0001, parts = value / part;
    if (strcmp(unit, "m"))
        return quantity(p, value, unit);
    return parts > 0.5 && fabs(parts - round(parts)) < 1e-6 * parts ? closely(p, value) : fine(p, value);
}

static int shows(pen *p, double value, const char *unit)
{
    return strcmp(moved(p, value, unit), moved(p, 0, unit)) != 0;
}

static void print_answer(listing *s, matters *m, int k)
{
    const char *unit = answers[k].unit;
    const size_t count = matters_order(m, k);
    const int in_turns = !strcmp(unit, "turn");
    size_t shown = 0;
    text_add(s->out, "\n%s: %s%s\n", answers[k].title,
             in_turns ? plain(&s->pen, m->values[k], 2) : quantity(&s->pen, m->values[k], unit),
             in_turns ? " turns" : "");
    for (; shown < count && m->inputs[shown].moves[k] >= 0.01 * m->inputs[0].moves[k] &&
           shows(&s->pen, m->inputs[shown].moves[k], unit);
         shown++) {
        const measured *one = m->inputs + shown;
        text_add(s->out, "%*s  by +-%s on %s%s\n", MOVE_WIDTH, moved(&s->pen, one->moves[k], unit),
                 off_by(&s->pen, one->tolerance, one->row->unit), one->path, one->assumed ? " (assumed)" : "");
    }
    if (shown)
        text_add(s->out, "%*s  all together, if independent\n", MOVE_WIDTH,
                 moved(&s->pen, matters_together(m, k), unit));
    else
        text_add(s->out, "%*s  nothing measured moves it by enough to show\n", MOVE_WIDTH, "-");
}

static void print_refused_when_off(listing *s, const measured *one, int way)
{
    text why = {NULL, 0, 0};
    add_refusal(&why, &s->pen, &one->refused[way]);
    text_say(s->out, "  ", "at %s%s on %s refused: %s", way == MORE ? "+" : "-",
             off_by(&s->pen, one->tolerance, one->row->unit), one->path, text_of(&why));
    text_free(&why);
}

static void print_refused(listing *s, const matters *m)
{
    int any = 0;
    for (size_t i = 0; i < m->count; i++)
        for (int way = 0; way < WAYS; way++)
            if (m->inputs[i].refused[way].status != TSIDE_OK) {
                text_add(s->out, "%s",
                         any++ ? ""
                               : "\nRefused when off; only the other way, if it is not refused too, counts below:\n");
                print_refused_when_off(s, m->inputs + i, way);
            }
}

void print_matters(text *out, const planned *side, int us)
{
    listing s = {.out = out, .pen = {.us = us}};
    matters m;
    matters_find(&m, side);
    if (side->wanted.of)
        text_say(out, "JOB    ", "%s, side %d of %d", *side->wanted.job ? side->wanted.job : "without a name",
                 side->wanted.number, side->wanted.of);
    text_wrap(out, "SIDE   ", *side->wanted.name ? side->wanted.name : "without a name");
    text_add(out, "\nWHAT MATTERS\n");
    text_wrap(out, "  ",
              "Each answer, and how far it moves when one measured input is off by its tolerance, either way; the most "
              "first. The tolerances are the file's, "
              "else usual ones (tunnelside-plan --fields). What moves an answer by less than a hundredth of the first, "
              "or by less than can be shown, is left "
              "out. \"All together, if independent\" is the root of the sum of all squares.");
    print_refused(&s, &m);
    for (int k = 0; k < ANSWERS; k++)
        if (m.asked[k])
            print_answer(&s, &m, k);
    matters_free(&m);
}
