/* SPDX-License-Identifier: MIT */
/* Level places told inboard from the bow's face at hip height: the same plan, and refusals in the same words. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *level_suite(void);

/* The bow's outer face at hip height, as the set-out tells of it; made apart from how places are told. */
static double face_of(const tside_end_plan *plan)
{
    return plan->layout.eye_x - plan->layout.eye_outboard;
}

static void tell_from_face(tside_end *end, double face)
{
    end->level_from = TSIDE_FROM_BOW_FACE;
    end->extender.member_inner = face - end->extender.member_inner;
    end->extender.member_outer = face - end->extender.member_outer;
    for (int i = 0; i < end->keep_out_count; i++) {
        end->keep_outs[i].inner = face - end->keep_outs[i].inner;
        end->keep_outs[i].outer = face - end->keep_outs[i].outer;
    }
}

/* Every number of two results, by their table; where the travel's worst place stands is found to less. */
static void same(tside_kind kind, const void *a, const void *b)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++, row++) {
        const char *in_a = (const char *)a + row->offset, *in_b = (const char *)b + row->offset;
        if (!tside_field_applies(row, a))
            continue;
        if (row->type == TSIDE_GROUP)
            same(row->kind, in_a, in_b);
        else if (row->type == TSIDE_NUMBER) {
            double x = *(const double *)(const void *)in_a, y = *(const double *)(const void *)in_b;
            ck_assert_msg(fabs(x - y) <= 1e-12 * fmax(1, fabs(x)), "%s: %.17g, not %.17g", row->name, y, x);
        } else if (row->type != TSIDE_LIST)
            ck_assert_msg(*(const int *)(const void *)in_a == *(const int *)(const void *)in_b, "%s", row->name);
    }
}

/* plumb, leaning, a kinked bow */
enum { SHAPES = 3 };

START_TEST(both_data_give_one_plan)
{
    for (int shape = 0; shape < SHAPES; shape++) {
        tside_side side;
        tside_plan a, b;
        bench_any_side(&side, shape);
        a = planned(&side);
        /* one keep-out in the way of tube or guide, and one that is not; the outer end outboard of the face, and
         * inboard */
        side.drive_end.keep_out_count = side.free_end.keep_out_count = 2;
        side.drive_end.keep_outs[0] = (tside_keep_out){a.drive_end.layout.member_x - 0.1, a.drive_end.eye_x, 0.5, 3};
        side.free_end.keep_outs[0] = (tside_keep_out){a.free_end.eye_x - 0.3, a.free_end.eye_x + 0.2, 0.2, 0.7};
        side.drive_end.keep_outs[1] = side.free_end.keep_outs[1] = (tside_keep_out){0.5, 1.5, 0, 2};
        side.drive_end.extender.member_outer = face_of(&a.drive_end) + 0.05;
        side.free_end.extender.member_outer = a.free_end.layout.member_x + 0.05;
        a = planned(&side);
        ck_assert(finds(&a, TSIDE_FINDING_KEEP_OUT_TUBE) && finds(&a, TSIDE_FINDING_KEEP_OUT_GUIDE));
        tell_from_face(&side.drive_end, face_of(&a.drive_end));
        ck_assert(side.drive_end.extender.member_outer < 0 && side.drive_end.extender.member_inner > 0);
        b = planned(&side);
        same(TSIDE_KIND_PLAN, &a, &b); /* one end so, the other so */
        tell_from_face(&side.free_end, face_of(&a.free_end));
        b = planned(&side);
        same(TSIDE_KIND_PLAN, &a, &b);
        ck_assert_int_eq(a.finding_count, b.finding_count);
        for (int i = 0; i < a.finding_count; i++)
            same(TSIDE_KIND_FINDING, a.findings + i, b.findings + i);
    }
}
END_TEST

/* Refused in both, by one field, and by values that mean the same place. */
static void refused_alike(tside_side side, double face, tside_status status, const char *path, tside_relation relation,
                          tside_relation from_face)
{
    tside_plan plan;
    tside_fault from_centre, fault;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, status, path, relation);
    from_centre = fault;
    tell_from_face(&side.drive_end, face);
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, status, path, from_face);
    ck_assert_str_eq(fault.other, from_centre.other);
    ck_assert_str_eq(fault.reason, from_centre.reason);
    NEAR(fault.value, face - from_centre.value, 1e-12, "what was told", 0);
    NEAR(fault.bound, face - from_centre.bound, 1e-12, "its bound", 0);
}

START_TEST(refusals_are_in_the_words_given)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_fault fault;
    const double face = face_of(&plan.drive_end), member = plan.drive_end.layout.member_x;
    side.drive_end.extender.member_outer = member - 0.1;
    refused_alike(side, face, TSIDE_OUT_OF_REACH, "drive_end.extender.member_outer", TSIDE_BELOW, TSIDE_ABOVE);
    side = plain();
    side.drive_end.extender.member_inner = member + 0.1;
    refused_alike(side, face, TSIDE_OUT_OF_REACH, "drive_end.extender.member_inner", TSIDE_ABOVE, TSIDE_BELOW);
    tell_from_face(&side.drive_end, face);
    ck_assert(tside_plan_side(&side, &plan, &fault) == TSIDE_OUT_OF_REACH);
    side.drive_end.extender.member_inner = fault.bound;
    ANSWERS(tside_plan_side(&side, &plan, &fault)); /* a bound handed back */
    side.drive_end.extender.member_inner = side.drive_end.extender.member_outer;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "drive_end.extender.member_inner",
            TSIDE_NOT_ABOVE);
    side = plain();
    side.drive_end.keep_out_count = 1;
    side.drive_end.keep_outs[0] = (tside_keep_out){2, 1, 0, 1};
    refused_alike(side, face, TSIDE_CONTRADICTS, "drive_end.keep_outs[0].inner", TSIDE_NOT_BELOW, TSIDE_NOT_ABOVE);
}
END_TEST

/* From the centreline 0 says that a place is missing; from the face it is the face. */
START_TEST(a_missing_place_is_refused)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_fault fault;
    side.free_end.extender.member_outer = 0;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_BOUNDS, "free_end.extender.member_outer",
            TSIDE_NOT_ABOVE);
    ck_assert(strstr(fault.reason, "required"));
    side.free_end.extender.member_outer = -1;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_BOUNDS, "free_end.extender.member_outer",
            TSIDE_NOT_ABOVE);
    side.free_end.level_from = TSIDE_FROM_BOW_FACE;
    side.free_end.extender.member_inner = 4;
    side.free_end.extender.member_outer = 0;
    ANSWERS(tside_plan_side(&side, &plan, &fault));
    side = plain();
    side.free_end.keep_out_count = 1;
    side.free_end.keep_outs[0] = (tside_keep_out){-1, 0, 0, 1};
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_BOUNDS, "free_end.keep_outs[0].outer",
            TSIDE_NOT_ABOVE);
    side.free_end.level_from = TSIDE_FROM_BOW_FACE;
    side.free_end.extender.member_inner = 4;
    side.free_end.extender.member_outer = 0;
    side.free_end.keep_outs[0].inner = 1;
    ANSWERS(tside_plan_side(&side, &plan, &fault));
}
END_TEST

Suite *level_suite(void)
{
    Suite *suite = suite_create("level");
    TCase *tcase = tcase_create("level");
    tcase_add_test(tcase, both_data_give_one_plan);
    tcase_add_test(tcase, refusals_are_in_the_words_given);
    tcase_add_test(tcase, a_missing_place_is_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
