/* SPDX-License-Identifier: MIT */
/*
 * What a wind asks of a curtain, from speed to pressure and back, how film bellies between two holds, when a loose
 * curtain leaves the wall and flies, and what bar and rail bear between two ropes. An invented side; SI units. For
 * choosing parts, not a design: the code's own procedure, local codes, makers' ratings and licensed practice come
 * first, and a curtain that flaps pulls more than any of this.
 */
#include <stdio.h>
#include <stdlib.h>
#include <tunnelside.h>

static tside_fault fault;

static void need(tside_status status)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(&fault, sentence, sizeof sentence);
    fprintf(stderr, "wind: %s: %s\n", tside_status_text((int)status), sentence);
    exit(1);
}

/* What does a wind press with, and at which speed would it press half as much? */
static double pressed(const tside_wind *wind, const char *rule)
{
    tside_pressure pressure;
    double speed;
    need(tside_wind_pressure(wind, &pressure, &fault));
    need(tside_wind_speed(wind, pressure.net / 2, &speed, &fault));
    printf("wind  by %s %.1f m/s make %.1f Pa, %.1f Pa on the curtain; half of that at %.2f m/s\n", rule, wind->speed,
           pressure.velocity, pressure.net, speed);
    return pressure.net;
}

/* How far does film belly between two bows, and what does it pull with? */
static void bellies(double modulus, double thickness, double apart, double net)
{
    tside_span film;
    tside_belly belly;
    tside_usual(TSIDE_KIND_SPAN, &film);
    film.chord = apart;
    film.load = net; /* by the metre of its width */
    film.stiffness_given = 1;
    film.stiffness = modulus * thickness;
    need(tside_span_belly(&film, &belly, &fault));
    printf("film  of %.3f mm, held %.1f m apart, bellies by %.1f mm under %.1f Pa and pulls %.1f N/m: %.2f MPa in it\n",
           1000 * thickness, apart, 1000 * belly.sag, net, belly.tension, belly.tension / thickness / 1e6);
}

/* At which gusts does a loose curtain leave the wall, lose its seal, and fly, and how does it stand in between? */
static void loose(const tside_wind *wind)
{
    const tside_loose curtain = {.hanging = 1.5, .roll = 0.05, .weight = 20, .lean = 0.1, .seal = 0.1};
    tside_loosening at;
    tside_blown blown;
    double leaves, unseals, flies;
    need(tside_loose_limits(&curtain, &at, &fault));
    need(tside_wind_speed(wind, at.leaves, &leaves, &fault));
    need(tside_wind_speed(wind, at.unseals, &unseals, &fault));
    need(tside_wind_speed(wind, at.flies, &flies, &fault));
    need(tside_loose_blown(&curtain, at.unseals, &blown, &fault));
    printf(
        "loose it leaves the wall at %.2f m/s, loses its seal at %.2f and flies at %.2f; its seal lost, it stands out "
        "%.3f m and is raised %.3f m\n",
        leaves, unseals, flies, blown.stand_out, blown.raise);
}

/* What do bar and rail bear between two ropes? */
static void roped(double net, double pitch)
{
    const tside_bay bay = {.pressure = net,
                           .pitch = pitch,
                           .hanging = 1.5,
                           .roll = 0.05,
                           .tube = {.diameter = 0.0422, .wall = 0.0026},
                           .material = {.metal = TSIDE_STEEL, .grade = TSIDE_S235},
                           .weight = 25,
                           .screw_spacing = 0.3};
    tside_bay_load load;
    need(tside_bay_bears(&bay, &load, &fault));
    printf("roped each %.1f m the bar bears %.1f N/m and %.1f N m, %.2f of its limit, and gives %.1f mm; each screw of "
           "the rail holds %.1f N\n",
           pitch, load.bar, load.moment, load.utilisation, 1000 * load.deflection, load.screw);
}

int main(void)
{
    tside_wind wind;
    double gust;
    tside_usual(TSIDE_KIND_WIND, &wind);
    wind.coefficient = 0.18 + 1.1; /* inside less outside: ASCE 7-22, a closed house, small parts of a wall */
    wind.height_given = 1;
    wind.height = 4;
    wind.rule = TSIDE_PLAIN;
    wind.speed = 20;
    gust = pressed(&wind, "gust");
    loose(&wind);
    wind.rule = TSIDE_ASCE_7_22;
    wind.speed = 50;
    wind.load_factor = 0.6; /* against allowables: ASCE 7-22, 2.4.1 */
    pressed(&wind, "ASCE");
    bellies(200e6, 0.15e-3, 1.2, gust);
    roped(gust, 1.2);
    return EXIT_SUCCESS;
}
