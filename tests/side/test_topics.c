/* SPDX-License-Identifier: MIT */
/* What the topics' functions refuse is of use: random arguments, changed until they are refused. */
#include <check.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "refused.h"
#include "sides.h"

Suite *topics_suite(void);

/* What the functions of the topics take, of one side, and what they made of it so far. */
typedef struct parts {
    tside_side side;
    tside_roll roll;
    tside_collar collar;
    tside_load load;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_hang hang;
    double eye_x, eye_y;
} parts;

/* Returns 0 where there is no travel. */
static int try_shape(parts *p, int number, int *refused)
{
    tside_side *s = &p->side;
    const argument frame[] = {{"frame", TSIDE_KIND_FRAME, &s->frame}};
    const argument line[] = {{"bow", NO_KIND, NULL}, {"curtain", TSIDE_KIND_CURTAIN, &s->curtain}};
    const argument travel[] = {{"line", NO_KIND, NULL},
                               {"curtain", TSIDE_KIND_CURTAIN, &s->curtain},
                               {"roll", TSIDE_KIND_ROLL, &p->roll},
                               {"stops", TSIDE_KIND_STOPS, &s->stops}};
    TRIES(tside_bow_make(&s->frame, &p->bow, &fault), frame, number, *refused);
    if (!p->bow.centre.count)
        return 0;
    TRIES(tside_line_make(&p->bow, &s->curtain, &p->line, &fault), line, number, *refused);
    if (!p->line.count)
        return 0;
    TRIES(tside_travel_make(&p->line, &s->curtain, &p->roll, &s->stops, &p->travel, &fault), travel, number, *refused);
    return p->travel.stretches;
}

static void try_hanging(parts *p, int number, dice *d, int *refused)
{
    tside_side *s = &p->side;
    double hip = s->curtain.hip, available = dice_between(d, 0, 100), ignored, offset = p->collar.offset;
    tside_sweep sweep;
    tside_layout layout;
    tside_torque torque;
    tside_run ran;
    const argument eye[] = {
        {"travel", NO_KIND, NULL}, {"eye_y", NO_KIND, &p->eye_y}, {"collar_offset", NO_KIND, &offset}};
    const argument hang[] = {{"travel", NO_KIND, NULL},
                             {"guide", TSIDE_KIND_GUIDE, &s->drive_end.guide},
                             {"collar", TSIDE_KIND_COLLAR, &p->collar},
                             {"eye_x", NO_KIND, &p->eye_x},
                             {"eye_y", NO_KIND, &p->eye_y}};
    const argument extender[] = {{"extender", TSIDE_KIND_EXTENDER, &s->drive_end.extender},
                                 {"bow", NO_KIND, NULL},
                                 {"hip", NO_KIND, &hip},
                                 {"eye_x", NO_KIND, &p->eye_x},
                                 {"eye_y", NO_KIND, &p->eye_y},
                                 {"travel", NO_KIND, NULL}};
    const argument lift[] = {{"travel", NO_KIND, NULL},
                             {"load", TSIDE_KIND_LOAD, &p->load},
                             {"hang", NO_KIND, NULL},
                             {"available", NO_KIND, &available}};
    const argument run[] = {{"travel", NO_KIND, NULL},
                            {"load", TSIDE_KIND_LOAD, &p->load},
                            {"hang", NO_KIND, NULL},
                            {"drive", TSIDE_KIND_DRIVE, &s->drive},
                            {"cable", TSIDE_KIND_CABLE, &s->cable}};
    TRIES(tside_eye_best(&p->travel, p->eye_y, offset, &p->eye_x, &fault), eye, number, *refused);
    TRIES(tside_extender_layout(&s->drive_end.extender, &p->bow, hip, p->eye_x, p->eye_y, &p->travel, &layout, &fault),
          extender, number, *refused);
    TRIES(tside_hang_make(&p->travel, &s->drive_end.guide, &p->collar, p->eye_x, p->eye_y, 0, &p->hang, &sweep, &fault),
          hang, number, *refused);
    if (tside_hang_make(&p->travel, &s->drive_end.guide, &p->collar, p->eye_x, p->eye_y, 0, &p->hang, NULL, NULL) !=
        TSIDE_OK)
        return;
    TRIES(tside_lift_worst(&p->travel, &p->load, &p->hang, &torque, NULL, &fault), lift, number, *refused);
    TRIES(tside_lift_longest(&p->travel, &p->load, &p->hang, available, &ignored, &fault), lift, number, *refused);
    TRIES(tside_drive_run(&p->travel, &p->load, &p->hang, &s->drive, &s->cable, &ran, &fault), run, number, *refused);
}

FOR_SIDES(a_topic_is_refused_by_its_arguments, TOPICS)
{
    dice d;
    parts p;
    int refused = 0;
    memset(&p, 0, sizeof p);
    p.side = random_side(number, &d);
    change_some(TSIDE_KIND_DRIVE, &p.side.drive, &d);
    change_some(TSIDE_KIND_CABLE, &p.side.cable, &d);
    tside_usual(TSIDE_KIND_ROLL, &p.roll);
    tside_usual(TSIDE_KIND_COLLAR, &p.collar);
    tside_usual(TSIDE_KIND_LOAD, &p.load);
    p.roll.core = 0.035;
    p.load.length = 30;
    if (dice_below(&d, 2))
        change(TSIDE_KIND_ROLL, &p.roll, &d);
    if (dice_below(&d, 2))
        change(TSIDE_KIND_LOAD, &p.load, &d);
    p.eye_y = p.side.curtain.hip + dice_between(&d, 0, 0.6);
    if (try_shape(&p, number, &refused))
        try_hanging(&p, number, &d, &refused);
}

FOR_SIDES(a_part_is_refused_by_its_members, TOPICS)
{
    dice d = {(uint64_t)number * UINT64_C(0x9e6c63d0876a9a47)};
    tside_round round = {0.06, 0.003};
    tside_square square;
    tside_material material;
    tside_bolt bolt;
    tside_bolt_part part;
    tside_cable cable, smallest;
    tside_bar bar;
    tside_section section;
    tside_metal_values values;
    tside_bolt_plan plan;
    tside_bearing bearing;
    tside_bar_stick sticks[1];
    double density = 7850, curtain = dice_between(&d, 0, 60), voltage = dice_between(&d, 0.1, 200),
           current = dice_between(&d, 0, 40), drop = dice_between(&d, 0.01, 10);
    double core = dice_between(&d, 0.01, 1), wound = dice_between(&d, 0, 5), turns = dice_between(&d, 0, 20),
           taken_up = dice_between(&d, 0, 5), thickness;
    int count, refused = 0;
    const argument of_round[] = {{"tube", TSIDE_KIND_ROUND, &round}, {"density", NO_KIND, &density}};
    const argument of_square[] = {{"tube", TSIDE_KIND_SQUARE, &square}, {"density", NO_KIND, &density}};
    const argument of_material[] = {{"material", TSIDE_KIND_MATERIAL, &material}};
    const argument of_bolt[] = {{"bolt", TSIDE_KIND_BOLT, &bolt}, {"part", TSIDE_KIND_BOLT_PART, &part}};
    const argument of_cable[] = {{"cable", TSIDE_KIND_CABLE, &cable},
                                 {"voltage", NO_KIND, &voltage},
                                 {"current", NO_KIND, &current},
                                 {"loading", NO_KIND, NULL},
                                 {"drop", NO_KIND, &drop}};
    const argument of_bar[] = {
        {"bar", TSIDE_KIND_BAR, &bar}, {"curtain", NO_KIND, &curtain}, {"capacity", NO_KIND, NULL}};
    const argument of_roll[] = {{"core", NO_KIND, &core},
                                {"wraps_before", NO_KIND, &wound},
                                {"turns", NO_KIND, &turns},
                                {"taken_up", NO_KIND, &taken_up}};
    tside_usual(TSIDE_KIND_SQUARE, &square);
    tside_usual(TSIDE_KIND_MATERIAL, &material);
    tside_usual(TSIDE_KIND_BOLT, &bolt);
    tside_usual(TSIDE_KIND_BOLT_PART, &part);
    tside_usual(TSIDE_KIND_CABLE, &cable);
    tside_usual(TSIDE_KIND_BAR, &bar);
    square.side = 0.05, square.wall = 0.003;
    bolt.grip = 0.06, part.wall = 0.003;
    cable.wire = TSIDE_AWG, cable.length = 30;
    bar.tube = round, bar.stock = 6;
    change_some(TSIDE_KIND_ROUND, &round, &d);
    change_some(TSIDE_KIND_SQUARE, &square, &d);
    change_some(TSIDE_KIND_MATERIAL, &material, &d);
    change_some(TSIDE_KIND_BOLT, &bolt, &d);
    change_some(TSIDE_KIND_BOLT_PART, &part, &d);
    change_some(TSIDE_KIND_CABLE, &cable, &d);
    change_some(TSIDE_KIND_BAR, &bar, &d);
    TRIES(tside_round_section(&round, density, &section, &fault), of_round, number, refused);
    TRIES(tside_square_section(&square, density, &section, &fault), of_square, number, refused);
    TRIES(tside_material_values(&material, &values, &fault), of_material, number, refused);
    TRIES(tside_bolt_choose(&bolt, &plan, &fault), of_bolt, number, refused);
    TRIES(tside_bolt_bearing(&bolt, &part, &bearing, &fault), of_bolt, number, refused);
    TRIES(tside_cable_smallest(&cable, voltage, current, TSIDE_RUNNING, drop, &smallest, &fault), of_cable, number,
          refused);
    TRIES(tside_bar_sticks(&bar, curtain, bar.past_drive, bar.past_free, sticks, 1, &count, &fault), of_bar, number,
          refused);
    TRIES(tside_roll_thickness(core, wound, turns, taken_up, &thickness, &fault), of_roll, number, refused);
}

Suite *topics_suite(void)
{
    Suite *suite = suite_create("topics");
    TCase *tcase = tcase_create("topics");
    tcase_add_test(tcase, a_topic_is_refused_by_its_arguments);
    tcase_add_test(tcase, a_part_is_refused_by_its_members);
    suite_add_tcase(suite, tcase);
    return suite;
}
