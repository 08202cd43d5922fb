/* SPDX-License-Identifier: MIT */
/* Many sides: columns laid over a base side, row by row. */
#include "side/plan.h"

#include "base/field.h"

static int is_value(const tside_place *place)
{
    return place->field && (place->field->type == TSIDE_NUMBER || place->field->type == TSIDE_COUNT || place->field->type == TSIDE_CHOICE);
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

/* Counts and choices come as numbers: 0 where they are no whole number that fits an int. */
static int put(const tside_input *input, int row, char *side)
{
    double value = *(const double *)(const void *)((const char *)input->data + input->stride * row);
    char *member = side + input->place.offset;
    if (input->place.field->type == TSIDE_NUMBER) {
        *(double *)(void *)member = value;
        if (input->place.field->optional)
            *(int *)(void *)(side + given_offset(&input->place)) = 1;
        return 1;
    }
    if (!(value >= -1e9 && value <= 1e9) || value != floor(value))
        return 0;
    *(int *)(void *)member = (int)value;
    return 1;
}

static void take(const tside_output *output, int row, const char *plan)
{
    const char *member = plan + output->place.offset;
    if (output->place.field->optional && !*(const int *)(const void *)(plan + given_offset(&output->place)))
        return;
    *row_of(output->data, output->stride, row) = output->place.field->type == TSIDE_NUMBER ? *(const double *)(const void *)member : *(const int *)(const void *)member;
}

/* Each row lays its values over those of the row before: they are the same fields. */
static tside_status plan_row(int row, const tside_input *inputs, int count, tside_side *side, tside_plan *plan, tside_fault *fault)
{
    for (int i = 0; i < count; i++)
        if (!put(inputs + i, row, (char *)side))
            return tside_i_refuse(fault, TSIDE_OUT_OF_BOUNDS, inputs[i].place.field->name, "", "a count or a choice must be a whole number");
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    return tside_i_plan(side, &side->bar, plan, fault);
}

static unsigned long long finding_bits(const tside_plan *plan)
{
    unsigned long long bits = 0;
    for (int i = 0; i < plan->finding_count; i++)
        bits |= 1ull << plan->findings[i].code;
    return bits;
}

static tside_status check_columns(const tside_input *inputs, int input_count, const tside_output *outputs, int output_count, tside_fault *fault)
{
    for (int i = 0; i < input_count + output_count; i++) {
        const tside_place *place = i < input_count ? &inputs[i].place : &outputs[i - input_count].place;
        if (!is_value(place)) {
            tside_i_refuse(fault, TSIDE_OUT_OF_BOUNDS, i < input_count ? "inputs" : "outputs", "", "a column must be a number, a count or a choice");
            if (fault)
                fault->index = i < input_count ? i : i - input_count;
            return TSIDE_OUT_OF_BOUNDS;
        }
    }
    return TSIDE_OK;
}

tside_status tside_plan_sides(const tside_side *base, int rows, const tside_input *inputs, int input_count, const tside_output *outputs, int output_count,
                              int *statuses, unsigned long long *findings, tside_fault *fault)
{
    tside_side side = *base;
    tside_plan plan;
    tside_status first = TSIDE_OK;
    if (rows < 0)
        return tside_i_bound(fault, "rows", "1", rows, TSIDE_BELOW, 0);
    TRY(check_columns(inputs, input_count, outputs, output_count, fault));
    for (int row = 0; row < rows; row++) {
        tside_status status = plan_row(row, inputs, input_count, &side, &plan, first == TSIDE_OK ? fault : NULL);
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
