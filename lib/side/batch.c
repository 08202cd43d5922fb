/* SPDX-License-Identifier: MIT */
/* Many sides: columns laid over a base side, row by row. */
#include <limits.h>

#include "side/plan.h"

#include "base/field.h"

static int is_value(const tside_place *place)
{
    return place->field && (place->field->type == TSIDE_NUMBER || place->field->type == TSIDE_COUNT ||
                            place->field->type == TSIDE_CHOICE);
}

static double *row_of(double *data, ptrdiff_t stride, int row)
{
    return (double *)(void *)((char *)data + stride * row);
}

/* Where the int that says "given" lies, for the member that the place found. */
static size_t given_offset(const tside_place *place)
{
    return place->offset - place->field->offset + place->field->given_offset;
}

static double value_of(const tside_input *input, int row)
{
    return *(const double *)(const void *)((const char *)input->data + input->stride * row);
}

static int is_whole(double value)
{
    return isfinite(value) && value == floor(value);
}

/* Counts and choices come as numbers; what is no int is put out of the bounds of every one: refused if its row applies.
 */
static int int_of(double value)
{
    if (!is_whole(value) || value < -1e9)
        return INT_MIN;
    return value > 1e9 ? INT_MAX : (int)value;
}

static void put(const tside_input *input, int row, char *side)
{
    double value = value_of(input, row);
    char *member = side + input->place.offset;
    if (input->place.field->type == TSIDE_NUMBER) {
        *(double *)(void *)member = value;
        if (input->place.field->optional)
            *(int *)(void *)(side + given_offset(&input->place)) = 1;
        return;
    }
    *(int *)(void *)member = int_of(value);
}

static void take(const tside_output *output, int row, const char *plan)
{
    const char *member = plan + output->place.offset;
    if (output->place.field->optional && !*(const int *)(const void *)(plan + given_offset(&output->place)))
        return;
    *row_of(output->data, output->stride, row) = output->place.field->type == TSIDE_NUMBER
                                                     ? *(const double *)(const void *)member
                                                     : *(const int *)(const void *)member;
}

/* The column that said what the refused field is, the last of those over it; NULL where it is the base's own. */
static const tside_input *column_refused(const tside_input *inputs, int count, const tside_fault *fault)
{
    tside_place place;
    const int is_a_field = tside_i_find_field(&tside_i_side_table, fault->field, &place, NULL) == TSIDE_OK;
    for (int i = count - 1; i >= 0 && is_a_field; i--)
        if (inputs[i].place.offset == place.offset)
            return inputs + i;
    return NULL;
}

/* A count or a choice is refused by what its column says, which may be no int. */
static void say_what_it_was(const tside_input *inputs, int count, int row, tside_fault *fault)
{
    const tside_input *input = column_refused(inputs, count, fault);
    double value;
    if (!input || input->place.field->type == TSIDE_NUMBER)
        return;
    value = value_of(input, row);
    if (is_whole(value)) {
        if (int_of(value) != value)
            fault->value = value;
        return;
    }
    fault->relation = isfinite(value) ? TSIDE_NO_RELATION : TSIDE_NOT_FINITE;
    fault->reason = isfinite(value) ? "a count or a choice must be a whole number" : "";
    fault->value = fault->bound = 0;
}

/* The part of a plan that makes a member, by where in the plan it begins. */
static unsigned part_of(const tside_place *place)
{
    static const struct {
        size_t from;
        tside_i_part part;
    } parts[] = {
        {offsetof(tside_plan, finding_count), TSIDE_I_FINDINGS},
        {offsetof(tside_plan, line_count), TSIDE_I_LINES},
        {offsetof(tside_plan, rope_given), TSIDE_I_ROPES},
        {offsetof(tside_plan, wind_given), TSIDE_I_WIND},
        {offsetof(tside_plan, air_given), TSIDE_I_AIR},
        {offsetof(tside_plan, splices), TSIDE_I_TRAVEL},
        {offsetof(tside_plan, run_given), TSIDE_I_RUN},
        {offsetof(tside_plan, free_end.keep_off_count), TSIDE_I_KEEP_OFFS},
        {offsetof(tside_plan, free_end), TSIDE_I_ENDS},
        {offsetof(tside_plan, drive_end.keep_off_count), TSIDE_I_KEEP_OFFS},
        {offsetof(tside_plan, drive_end), TSIDE_I_ENDS},
        {offsetof(tside_plan, splice_near), TSIDE_I_TRAVEL},
        {offsetof(tside_plan, worst), TSIDE_I_TORQUE},
        {offsetof(tside_plan, seal), TSIDE_I_TRAVEL},
        {offsetof(tside_plan, opening_far), TSIDE_I_TORQUE},
        {offsetof(tside_plan, curtain_length), TSIDE_I_TRAVEL},
    };
    int i = 0;
    while (place->offset < parts[i].from)
        i++;
    return parts[i].part;
}

/* Where no answer is asked for, it is asked whether there is a plan. */
static unsigned parts_needed(const tside_output *outputs, int count, int findings)
{
    unsigned parts = findings || count == 0 ? TSIDE_I_FINDINGS : TSIDE_I_TRAVEL;
    for (int i = 0; i < count; i++)
        parts |= part_of(&outputs[i].place);
    return parts;
}

/* Each row lays its values over those of the row before: they are the same fields. */
static tside_status plan_row(int row, const tside_input *inputs, int count, unsigned parts, tside_side *side,
                             tside_plan *plan, tside_fault *fault)
{
    tside_status status;
    for (int i = 0; i < count; i++)
        put(inputs + i, row, (char *)side);
    status = tside_i_check_table(&tside_i_side_table, side, fault);
    if (status != TSIDE_OK && fault)
        say_what_it_was(inputs, count, row, fault);
    TRY(status);
    return tside_i_plan(side, &side->bar, &side->drive, parts, plan, fault);
}

static unsigned long long finding_bits(const tside_plan *plan)
{
    unsigned long long bits = 0;
    for (int i = 0; i < plan->finding_count; i++)
        bits |= 1ull << plan->findings[i].code;
    return bits;
}

static tside_status check_columns(const tside_input *inputs, int input_count, const tside_output *outputs,
                                  int output_count, tside_fault *fault)
{
    for (int i = 0; i < input_count + output_count; i++) {
        const tside_place *place = i < input_count ? &inputs[i].place : &outputs[i - input_count].place;
        if (!is_value(place)) {
            tside_i_refuse(fault, TSIDE_OUT_OF_BOUNDS, i < input_count ? "inputs" : "outputs", "",
                           "a column must be a number, a count or a choice");
            if (fault)
                fault->index = i < input_count ? i : i - input_count;
            return TSIDE_OUT_OF_BOUNDS;
        }
    }
    return TSIDE_OK;
}

tside_status tside_plan_sides(const tside_side *base, int rows, const tside_input *inputs, int input_count,
                              const tside_output *outputs, int output_count, int *statuses,
                              unsigned long long *findings, tside_fault *fault)
{
    tside_side side = *base;
    tside_plan plan;
    tside_status first = TSIDE_OK;
    unsigned parts;
    if (rows < 0)
        return tside_i_bound(fault, "rows", "1", rows, TSIDE_BELOW, 0);
    TRY(check_columns(inputs, input_count, outputs, output_count, fault));
    parts = parts_needed(outputs, output_count, findings != NULL);
    for (int row = 0; row < rows; row++) {
        tside_status status = plan_row(row, inputs, input_count, parts, &side, &plan, first == TSIDE_OK ? fault : NULL);
        statuses[row] = (int)status;
        if (findings)
            findings[row] = status == TSIDE_OK ? finding_bits(&plan) : 0;
        if (status != TSIDE_OK && first == TSIDE_OK) {
            first = status;
            if (fault)
                fault->index = row;
        }
        for (int i = 0; status == TSIDE_OK && i < output_count; i++)
            take(outputs + i, row, (const char *)&plan);
    }
    return first;
}
