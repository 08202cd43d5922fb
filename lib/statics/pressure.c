/* SPDX-License-Identifier: MIT */
/*
 * What a wind presses with. Sources: ASCE/SEI 7-16 and 7-22, 26.10; EN 1991-1-4:2005, 4.3 to 4.5; all through public
 * copies. The names of factors are theirs.
 */
#include "statics/pressure.h"

#include "base/field.h"

static const char *const rules[] = {"none", "given", "plain", "ASCE_7_16", "ASCE_7_22", "EN_1991_1_4"};
static const char *const exposures[] = {"B", "C", "D"};
static const char *const categories[] = {"0", "I", "II", "III", "IV", "given"};

#define ASCE (ONLY(TSIDE_ASCE_7_16) | ONLY(TSIDE_ASCE_7_22))
#define EN ONLY(TSIDE_EN_1991_1_4)
#define SPEED (ONLY(TSIDE_PLAIN) | ASCE | EN)
#define WIND (ONLY(TSIDE_PRESSURE_GIVEN) | SPEED)

#define RECOMMENDED "EN 1991-1-4:2005, recommended value; national annexes differ"

/* clang-format off */
static const tside_field wind_rows[] = {
    {CHOICE(tside_wind, rule, rules, TSIDE_NO_WIND, "whether wind is asked about, and what turns it into a pressure")},
    {REQUIRED_FROM(tside_wind, coefficient, "1", 0.01, 10, "net coefficient, inside less outside, outward positive, as the code has it"), APPLIES(tside_wind, rule, WIND)},
    {NUMBER(tside_wind, load_factor, "1", FROM(0.1), TO(10), 1, OURS, "on the pressure: 0.6 on ASCE 7's speeds against allowables"), APPLIES(tside_wind, rule, WIND)},
    {NUMBER(tside_wind, round_force, "1", FROM(0.1), TO(10), 1.2, "EN 1991-1-4:2005, figure 7.28, unreduced; from memory", "force coefficient of round pipe, wind square to it"), APPLIES(tside_wind, rule, WIND)},
    {NUMBER(tside_wind, square_force, "1", FROM(0.1), TO(10), 2.1, "EN 1991-1-4:2005, figure 7.23, unreduced; from memory", "force coefficient of square tube and of the drive"), APPLIES(tside_wind, rule, WIND)},
    {NUMBER(tside_wind, drive_face, "m2", FROM(0), TO(1), 0.03, OURS, "the drive's area that wind along the house meets"), APPLIES(tside_wind, rule, WIND)},
    {REQUIRED_FROM(tside_wind, speed, "m/s", 0.01, 150, "speed of the wind, as the rule has it: a gust, by EN 1991-1-4 a mean over 10 min"), APPLIES(tside_wind, rule, SPEED)},
    {REQUIRED_FROM(tside_wind, velocity_pressure, "Pa", 0.001, 1e5, "velocity pressure"), APPLIES(tside_wind, rule, ONLY(TSIDE_PRESSURE_GIVEN))},
    {NUMBER(tside_wind, density, "kg/m3", FROM(0.1), TO(2), 1.25, RECOMMENDED, "density of the air"), APPLIES(tside_wind, rule, ONLY(TSIDE_PLAIN) | EN)},
    {OPTIONAL(tside_wind, height, "m", ABOVE(0), TO(200), "height above ground that counts: the house's top"), APPLIES(tside_wind, rule, ASCE | EN)},
    {CHOICE(tside_wind, exposure, exposures, TSIDE_EXPOSURE_C, "ground around, by ASCE 7"), APPLIES(tside_wind, rule, ASCE)},
    {NUMBER(tside_wind, directionality, "1", FROM(0.1), TO(1), 0.85, "ASCE/SEI 7-22, table 26.6-1, buildings; through a public copy", "Kd, that the worst wind seldom blows from the worst side"), APPLIES(tside_wind, rule, ASCE)},
    {NUMBER(tside_wind, topography, "1", FROM(0.1), TO(10), 1, "ASCE/SEI 7-22, 26.8, level ground; from memory", "Kzt, of hills"), APPLIES(tside_wind, rule, ASCE)},
    {NUMBER(tside_wind, elevation, "1", FROM(0.1), TO(2), 1, "ASCE/SEI 7-22, 26.9: always allowed; from memory", "Ke, of the ground's height above the sea"), APPLIES(tside_wind, rule, ASCE)},
    {OPTIONAL(tside_wind, exposure_least, "1", ABOVE(0), TO(3), "least Kz"), APPLIES(tside_wind, rule, ASCE)},
    {CHOICE(tside_wind, category, categories, TSIDE_CATEGORY_II, "ground around, by EN 1991-1-4"), APPLIES(tside_wind, rule, EN)},
    {REQUIRED_FROM(tside_wind, roughness, "m", 1e-6, 10, "z0, its roughness length"), APPLIES(tside_wind, category, ONLY(TSIDE_CATEGORY_GIVEN))},
    {REQUIRED_FROM(tside_wind, height_least, "m", 0.01, 200, "zmin, the least height that counts"), APPLIES(tside_wind, category, ONLY(TSIDE_CATEGORY_GIVEN))},
    {OPTIONAL(tside_wind, terrain, "1", FROM(0.01), TO(1), "kr, the terrain's factor, where a national annex has its own"), APPLIES(tside_wind, rule, EN)},
    {NUMBER(tside_wind, direction, "1", FROM(0.1), TO(2), 1, RECOMMENDED, "c_dir, of the wind's direction"), APPLIES(tside_wind, rule, EN)},
    {NUMBER(tside_wind, season, "1", FROM(0.1), TO(2), 1, RECOMMENDED, "c_season, of the season"), APPLIES(tside_wind, rule, EN)},
    {NUMBER(tside_wind, orography, "1", FROM(0.1), TO(10), 1, RECOMMENDED, "co, of hills"), APPLIES(tside_wind, rule, EN)},
    {NUMBER(tside_wind, turbulence, "1", FROM(0), TO(10), 1, RECOMMENDED, "kI, of the gusts"), APPLIES(tside_wind, rule, EN)},
};
/* clang-format on */
TABLE_ASKED(tside_i_wind_table, wind_rows);

/* clang-format off */
static const tside_field pressure_rows[] = {
    {RESULT(tside_pressure, velocity, "Pa", "velocity pressure")},
    {RESULT(tside_pressure, counted, "Pa", "velocity pressure with the load factor and, by ASCE 7-22, Kd")},
    {RESULT(tside_pressure, net, "Pa", "net pressure on the curtain, outward")},
    {RESULT_OPTIONAL(tside_pressure, exposure, "1", "Kz, by ASCE 7")},
    {RESULT_OPTIONAL(tside_pressure, mean_speed, "m/s", "mean speed at the height that counts, by EN 1991-1-4")},
    {RESULT_OPTIONAL(tside_pressure, intensity, "1", "intensity of turbulence there, by EN 1991-1-4")},
};
/* clang-format on */
TABLE(tside_i_pressure_table, pressure_rows);

/* --- ASCE 7 --- */

#define ASCE_Q 0.613           /* Pa s2/m2, of standard air: 26.10 */
#define ASCE_LEAST_Z (15 * FT) /* Kz is no less than there */

/* Kz = factor (z/zg)^(2/a). Table 26.11-1 of each edition, and the note under its table 26.10-1. */
typedef struct profile {
    double factor, a[3], zg[3]; /* a and zg: m, of exposures B, C and D */
} profile;

static const profile of_2016 = {2.01, {7.0, 9.5, 11.5}, {1200 * FT, 900 * FT, 700 * FT}};
static const profile of_2022 = {2.41, {7.5, 9.8, 11.5}, {3280 * FT, 2460 * FT, 1935 * FT}};

static double exposure(const tside_wind *w)
{
    const profile *p = w->rule == TSIDE_ASCE_7_16 ? &of_2016 : &of_2022;
    double kz = p->factor * pow(fmax(w->height, ASCE_LEAST_Z) / p->zg[w->exposure], 2 / p->a[w->exposure]);
    return w->exposure_least_given ? fmax(kz, w->exposure_least) : kz;
}

/* --- EN 1991-1-4 --- */

/* Table 4.1. */
static const struct {
    double z0, zmin; /* m */
} terrain[TSIDE_CATEGORY_GIVEN] = {{0.003, 1}, {0.01, 1}, {0.05, 2}, {0.3, 5}, {1.0, 10}};

static double roughness(const tside_wind *w)
{
    return w->category == TSIDE_CATEGORY_GIVEN ? w->roughness : terrain[w->category].z0;
}

/* z', at which the wind counts. */
static double height_counted(const tside_wind *w)
{
    return fmax(w->height, w->category == TSIDE_CATEGORY_GIVEN ? w->height_least : terrain[w->category].zmin);
}

static void en_1991_1_4(const tside_wind *w, tside_pressure *p)
{
    double z0 = roughness(w), logarithm = log(height_counted(w) / z0);
    double kr = w->terrain_given ? w->terrain : 0.19 * pow(z0 / 0.05, 0.07);
    double vb = w->direction * w->season * w->speed;
    p->mean_speed_given = p->intensity_given = 1;
    p->mean_speed = kr * logarithm * w->orography * vb;
    p->intensity = w->turbulence / (w->orography * logarithm);
    p->velocity = (1 + 7 * p->intensity) * w->density * p->mean_speed * p->mean_speed / 2;
}

/* Of the editions of 2016 and 2022, by which Kd is in the velocity pressure or not; returns it where it is not. */
static double asce_7(const tside_wind *w, tside_pressure *p)
{
    p->exposure_given = 1;
    p->exposure = exposure(w);
    p->velocity = ASCE_Q * p->exposure * w->topography * w->elevation * w->speed * w->speed;
    if (w->rule == TSIDE_ASCE_7_22)
        return w->directionality;
    p->velocity *= w->directionality;
    return 1;
}

/* --- any rule --- */

int tside_i_wind_has_speed(tside_wind_rule rule)
{
    return ONLY(rule) & SPEED ? 1 : 0;
}

tside_status tside_i_wind_check(const tside_wind *w, tside_fault *fault)
{
    if (w->rule == TSIDE_NO_WIND)
        return tside_i_bound(fault, "rule", "1", w->rule, TSIDE_NOT_ONE_OF, TSIDE_EN_1991_1_4);
    if (ONLY(w->rule) & (ASCE | EN) && !w->height_given) {
        tside_i_bound(fault, "height", "m", 0, TSIDE_NOT_ABOVE, 0);
        if (fault)
            fault->reason = TSIDE_I_MISSING;
        return TSIDE_OUT_OF_BOUNDS;
    }
    if (w->rule == TSIDE_EN_1991_1_4 && roughness(w) >= height_counted(w))
        REFUSE(fault, TSIDE_CONTRADICTS, "roughness", "height_least",
               "a wind has no speed below the roughness of its ground", "m", roughness(w), TSIDE_NOT_BELOW,
               height_counted(w), 0);
    return TSIDE_OK;
}

tside_pressure tside_i_wind_pressure(const tside_wind *w)
{
    tside_pressure p = {0};
    double kd = 1; /* on the net pressure */
    switch (w->rule) {
    case TSIDE_NO_WIND: /* refused */
    case TSIDE_PRESSURE_GIVEN: p.velocity = w->velocity_pressure; break;
    case TSIDE_PLAIN: p.velocity = w->density * w->speed * w->speed / 2; break;
    case TSIDE_ASCE_7_16:
    case TSIDE_ASCE_7_22: kd = asce_7(w, &p); break;
    case TSIDE_EN_1991_1_4: en_1991_1_4(w, &p); break;
    }
    p.counted = p.velocity * w->load_factor * kd;
    p.net = p.counted * w->coefficient;
    return p;
}

tside_status tside_wind_pressure(const tside_wind *wind, tside_pressure *pressure, tside_fault *fault)
{
    tside_pressure made;
    TRY(tside_i_check(&tside_i_wind_table, "wind", wind, fault));
    TRY(tside_i_within(fault, "wind", tside_i_wind_check(wind, fault)));
    made = tside_i_wind_pressure(wind);
    return ANSWER(&tside_i_pressure_table, made, pressure, fault);
}

tside_status tside_wind_speed(const tside_wind *wind, double net, double *speed, tside_fault *fault)
{
    tside_wind unit = *wind;
    unit.speed = 1; /* m/s */
    TRY(tside_i_check(&tside_i_wind_table, "wind", &unit, fault));
    if (!tside_i_wind_has_speed(unit.rule))
        return tside_i_bound(fault, "wind.rule", "1", unit.rule, TSIDE_NOT_ONE_OF, TSIDE_EN_1991_1_4);
    TRY(tside_i_within(fault, "wind", tside_i_wind_check(&unit, fault)));
    TRY(tside_i_argument(fault, "net", "Pa", net, 0, 0));
    return ANSWER_NUMBER(sqrt(net / tside_i_wind_pressure(&unit).net), speed, fault);
}
