/* SPDX-License-Identifier: MIT */
/*
 * Whole sides: a byte for one of three houses, then fields, each by a path of bytes down its tables, and what it
 * becomes. Planned, turned, taken off, and planned again as a row.
 */
#include <math.h>
#include <string.h>

#include "bench_side.h"
#include "finite.h"
#include "fuzz.h"
#include "threads.h"

/* --- a side from bytes --- */

static double some_number(feed *f, const tside_field *row, double now)
{
    switch (feed_byte(f) % 8) {
    case 0: return row->low;
    case 1: return row->high;
    case 2: return nextafter(row->low, HUGE_VAL);
    case 3: return nextafter(row->high, -HUGE_VAL);
    case 4: return row->low + (row->high - row->low) * feed_share(f);
    case 5: return feed_number(f);
    default: return now * exp(4 * feed_share(f) - 2);
    }
}

static void set_field(feed *f, tside_kind kind, char *structure)
{
    int count;
    const tside_field *rows = tside_fields(kind, &count), *row = rows + feed_byte(f) % (unsigned)count;
    char *member = structure + row->offset;
    switch (row->type) {
    case TSIDE_NUMBER:
        *(double *)(void *)member = some_number(f, row, *(double *)(void *)member);
        if (row->optional)
            *(int *)(void *)(structure + row->given_offset) = feed_byte(f) % 4 > 0;
        break;
    case TSIDE_COUNT: *(int *)(void *)member = (int)feed_byte(f) - 2; break;
    case TSIDE_CHOICE: *(int *)(void *)member = (int)(feed_byte(f) % (unsigned)(row->choice_count + 1)); break;
    case TSIDE_GROUP: set_field(f, row->kind, member); break;
    case TSIDE_LIST: {
        unsigned used = feed_byte(f) % (unsigned)(row->capacity + 2);
        *(int *)(void *)(structure + row->count_offset) = (int)used;
        if (used)
            set_field(f, row->kind, member + (feed_byte(f) % used % (unsigned)row->capacity) * row->stride);
        break;
    }
    }
}

static void make_side(feed *f, tside_side *side)
{
    bench_any_side(side, (int)feed_byte(f));
    for (int i = 0; i < TSIDE_BARS; i++)
        side->bars[i] = side->bar;
    while (f->at < f->end)
        set_field(f, TSIDE_KIND_SIDE, (char *)side);
}

/* --- what must hold --- */

/*
 * A field of the side, and a bound that it may have; or of the plan, where a number of it would be infinite, as of a
 * side of 1e-320 m.
 */
static void fault_of_side(const tside_fault *fault, tside_status status)
{
    static const char answer[] = "plan.";
    tside_place place, other;
    fuzz_fault(fault, status);
    if (fault->relation == TSIDE_NOT_FINITE && !strncmp(fault->field, answer, strlen(answer))) {
        HOLDS(status == TSIDE_NOT_MODELLED, "%s is not finite: %d", fault->field, (int)status);
        HOLDS(tside_field_find(TSIDE_KIND_PLAN, fault->field + strlen(answer), &place, NULL) == TSIDE_OK, "no field %s",
              fault->field);
        return;
    }
    HOLDS(*fault->field, "a fault without a field");
    HOLDS(tside_field_find(TSIDE_KIND_SIDE, fault->field, &place, NULL) == TSIDE_OK, "no field %s", fault->field);
    if (*fault->other)
        HOLDS(tside_field_find(TSIDE_KIND_SIDE, fault->other, &other, NULL) == TSIDE_OK, "no field %s", fault->other);
    if (place.field->type == TSIDE_NUMBER && fault->relation != TSIDE_NO_RELATION &&
        fault->relation != TSIDE_NOT_FINITE && fault->relation != TSIDE_NOT_ONE_OF)
        HOLDS(fault->bound >= place.field->low && fault->bound <= place.field->high, "%s: bound %.17g out of its own",
              fault->field, fault->bound);
}

static void as_a_row(const tside_side *side, const tside_plan *plan, tside_status status)
{
    static const char *const paths[] = {"design_torque", "opening", "drive_end.sweep.kick_out", "drive_turns"};
    enum { PATHS = sizeof paths / sizeof *paths };
    tside_output outputs[PATHS];
    double values[PATHS];
    tside_fault fault;
    int got = -1;
    unsigned long long found = 0;
    memset(values, 0xa5, sizeof values);
    for (int i = 0; i < PATHS; i++) {
        HOLDS(tside_field_find(TSIDE_KIND_PLAN, paths[i], &outputs[i].place, NULL) == TSIDE_OK, "no %s", paths[i]);
        outputs[i].data = values + i;
        outputs[i].stride = sizeof *values;
    }
    HOLDS(tside_plan_sides(side, 1, NULL, 0, outputs, PATHS, &got, &found, &fault) == status && got == (int)status,
          "as a row: %d, alone %d", got, (int)status);
    for (int i = 0; i < PATHS && status == TSIDE_OK; i++)
        HOLDS(!memcmp(values + i, (const char *)plan + outputs[i].place.offset, sizeof *values), "as a row: %s",
              paths[i]);
    for (int i = 0; i < plan->finding_count && status == TSIDE_OK; i++)
        HOLDS(found >> plan->findings[i].code & 1, "as a row: finding %d", (int)plan->findings[i].code);
}

static void turn(const tside_side *side, int planned)
{
    enum { TURNS = 64 };
    tside_turn rows[TURNS];
    tside_fault fault;
    int count = -1;
    tside_status status = tside_plan_turns(side, rows, TURNS, &count, &fault);
    if (status == TSIDE_TOO_SMALL)
        HOLDS(count > TURNS, "too small for %d", count);
    else if (status != TSIDE_OK) {
        HOLDS(!planned, "a plan, and no turns: %s", fault.field);
        fault_of_side(&fault, status);
    }
    for (int i = 0; status == TSIDE_OK && i < count; i++) {
        HOLDS(!not_finite(TSIDE_KIND_TURN, (const char *)(rows + i)), "turn %d is no number", i);
        HOLDS(!i || rows[i].turn >= rows[i - 1].turn, "turn %d comes before", i);
    }
}

static void take_off(const tside_side *side, const tside_plan *plan)
{
    OWN tside_item items[TSIDE_ITEMS];
    tside_fittings fittings;
    tside_fault fault;
    int count = -1;
    tside_status status;
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    status = tside_takeoff(side, plan, &fittings, items, TSIDE_ITEMS, &count, &fault);
    if (status != TSIDE_OK) {
        fuzz_fault(&fault, status);
        return;
    }
    for (int i = 0; i < count; i++)
        HOLDS(!not_finite(TSIDE_KIND_ITEM, (const char *)(items + i)) && items[i].count >= 0, "piece %d", i);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    feed f = {data, data + (size < 400 ? size : 400)};
    tside_side side;
    tside_plan plan, again;
    tside_fault fault;
    tside_status status;
    make_side(&f, &side);
    memset(&plan, 0xa5, sizeof plan);
    again = plan;
    status = tside_plan_side(&side, &plan, &fault);
    if (status != TSIDE_OK) {
        HOLDS(!memcmp(&plan, &again, sizeof plan), "%s: refused, and written", fault.field);
        fault_of_side(&fault, status);
    } else {
        const char *name = not_finite(TSIDE_KIND_PLAN, (const char *)&plan);
        HOLDS(!name, "%s is no number", name);
        memset(&again, 0x5a, sizeof again);
        HOLDS(tside_plan_side(&side, &again, &fault) == TSIDE_OK && !memcmp(&plan, &again, sizeof plan),
              "planned twice, and otherwise");
        for (int i = 0; i < plan.finding_count; i++) {
            char words[512];
            HOLDS(tside_finding_text(plan.findings + i, words, sizeof words) < sizeof words, "a finding without end");
            fuzz_printable(words, "a finding");
        }
        take_off(&side, &plan);
    }
    as_a_row(&side, &plan, status);
    turn(&side, status == TSIDE_OK);
    return 0;
}
