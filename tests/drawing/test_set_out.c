/* SPDX-License-Identifier: MIT */
/* Dimensions of an end wall: the plan's own numbers, as far apart as they tell, and all of the set-out and no more. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "scenes.h"

Suite *set_out_suite(void);

/* A path with the end's name in it. */
static void fill_in(const scene *s, const char *path, char *filled, size_t size)
{
    const char *mark = strstr(path, "{end}");
    if (mark)
        snprintf(filled, size, "%.*s%s%s", (int)(mark - path), path,
                 s->which == TSIDE_DRIVE_END ? "drive_end" : "free_end", mark + strlen("{end}"));
    else
        snprintf(filled, size, "%s", path);
}

/* The number of the plan, or else of the side, to which a path of the list leads. */
static double number_at(const scene *s, const char *path)
{
    char filled[TSIDE_PATH_SIZE];
    tside_place place;
    const void *from = &s->plan;
    if (!strcmp(path, "face"))
        return s->face;
    if (!strcmp(path, "{end}.hip_height") && !s->end->hip_height_given)
        return number_at(s, "curtain.hip");
    fill_in(s, path, filled, sizeof filled);
    if (tside_field_find(TSIDE_KIND_PLAN, filled, &place, NULL) != TSIDE_OK) {
        ck_assert_msg(tside_field_find(TSIDE_KIND_SIDE, filled, &place, NULL) == TSIDE_OK, "no field %s", filled);
        from = &s->side;
    }
    return *(const double *)(const void *)((const char *)from + place.offset);
}

static const struct {
    const char *name, *of, *from;
} told[] = {
#define TOLD(code, name, of, from) {#name, of, from},
    TSIDE_TELLS_LIST(TOLD)
#undef TOLD
};

FOR_WALLS(a_dimension_tells_the_plans_own_number)
{
    for (int i = 0; i < s->drawing.dimension_count; i++) {
        const tside_dimension *d = s->drawing.dimensions + i;
        double want = number_at(s, told[d->tells].of);
        if (*told[d->tells].from)
            want -= number_at(s, told[d->tells].from);
        ck_assert_msg(d->value == want, "%s of wall %d: %.17g, not %.17g", told[d->tells].name, number, d->value, want);
    }
}

/* Along the bow's centreline from hip height, to 1e-9 of where it says. */
static void check_along_bow(const scene *s, const tside_dimension *d, int number)
{
    tside_bow_point from, to;
    tside_fault fault;
    double hip;
    ANSWERS(tside_bow_at_height(&s->bow, s->side.curtain.hip, &hip, &fault));
    ANSWERS(tside_bow_at(&s->bow, hip, &from, &fault));
    ANSWERS(tside_bow_at(&s->bow, hip + d->value, &to, &fault));
    NEAR(hypot(d->x - s->outboard * from.x, d->y - from.y), 0, 1e-9, "hip on the bow", number);
    NEAR(hypot(d->x_end - s->outboard * to.x, d->y_end - to.y), 0, 1e-9, "hole on the bow", number);
}

FOR_WALLS(a_dimension_is_as_far_from_point_to_point_as_it_tells)
{
    for (int i = 0; i < s->drawing.dimension_count; i++) {
        const tside_dimension *d = s->drawing.dimensions + i;
        const double level = fabs(d->x_end - d->x), plumb = fabs(d->y_end - d->y);
        switch (d->kind) {
        case TSIDE_DIMENSION_LEVEL: NEAR(level, fabs(d->value), 1e-9, told[d->tells].name, number); break;
        case TSIDE_DIMENSION_PLUMB: NEAR(plumb, fabs(d->value), 1e-9, told[d->tells].name, number); break;
        case TSIDE_DIMENSION_ALONG: NEAR(hypot(level, plumb), fabs(d->value), 1e-9, told[d->tells].name, number); break;
        case TSIDE_DIMENSION_ARC: check_along_bow(s, d, number); break;
        case TSIDE_DIMENSION_ANGLE: NEAR(level / plumb, d->value, 1e-9, told[d->tells].name, number); break;
        default: ck_abort_msg("%s is of no kind that a wall has", told[d->tells].name);
        }
    }
}

/* Those of the set-out of such an end, each once. */
static int is_set_out(const scene *s, tside_tells tells)
{
    const int extender = s->end->hung == TSIDE_ON_EXTENDER, stands = s->end->guide.foot == TSIDE_FOOT_FIXED;
    switch (tells) {
    case TSIDE_TELLS_HIP_ABOVE_GROUND: return 1;
    case TSIDE_TELLS_BOW_HOLE_HEIGHT:
    case TSIDE_TELLS_MEMBER_HOLE_HEIGHT:
    case TSIDE_TELLS_MEMBER_HOLE_LEVEL:
    case TSIDE_TELLS_EYE_HEIGHT:
    case TSIDE_TELLS_EYE_LEVEL:
    case TSIDE_TELLS_EYE_TO_MEMBER:
    case TSIDE_TELLS_HOLE_TO_HOLE:
    case TSIDE_TELLS_BOW_HOLE_ALONG:
    case TSIDE_TELLS_RUN: return extender;
    case TSIDE_TELLS_REACH: return !stands;
    case TSIDE_TELLS_TOP_HEIGHT:
    case TSIDE_TELLS_TOP_LEVEL: return stands && !extender;
    case TSIDE_TELLS_FOOT_LEVEL:
    case TSIDE_TELLS_FOOT_DEPTH: return stands;
    default: return 0;
    }
}

FOR_WALLS(what_is_set_out_is_told_and_no_more)
{
    for (int tells = 0; tells < TSIDE_TELLS_COUNT; tells++) {
        int count = 0;
        for (int i = 0; i < s->drawing.dimension_count; i++)
            count += (int)s->drawing.dimensions[i].tells == tells;
        ck_assert_msg(count == is_set_out(s, (tside_tells)tells), "wall %d tells %s %d times", number, told[tells].name,
                      count);
    }
}

Suite *set_out_suite(void)
{
    Suite *suite = suite_create("set_out");
    TCase *tests = tcase_create("set_out");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, a_dimension_tells_the_plans_own_number);
    tcase_add_test(tests, a_dimension_is_as_far_from_point_to_point_as_it_tells);
    tcase_add_test(tests, what_is_set_out_is_told_and_no_more);
    suite_add_tcase(suite, tests);
    return suite;
}
