/* SPDX-License-Identifier: MIT */
/*
 * Questions about one part by itself, with no side around it: what is sold, what a tube weighs and how stiff it is,
 * what its wall bears of a bolt, and what a cable loses. Invented parts; SI units. For choosing parts, not a
 * certificate: local codes and makers' ratings come first.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tunnelside.h>

static tside_fault fault;

static void need(tside_status status)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(&fault, sentence, sizeof sentence);
    fprintf(stderr, "parts: %s: %s\n", tside_status_text((int)status), sentence);
    exit(1);
}

/* Which sizes of a family are sold from one diameter to another? */
static void sold(const char *family, double from, double to)
{
    int count;
    const tside_trade *trade = tside_trades(0, &count);
    for (int i = 0; i < count; i++)
        if (!strcmp(trade[i].family, family) && trade[i].value >= from && trade[i].value <= to)
            printf("sold  %s %s is %.1f mm\n", family, trade[i].name, 1000 * trade[i].value);
}

/* What does a square tube weigh, and how stiff is it? */
static void tube(const tside_square *square, const tside_material *material)
{
    tside_metal_values metal;
    tside_section section;
    need(tside_material_values(material, &metal, &fault));
    need(tside_square_section(square, metal.density, &section, &fault));
    printf("tube  %.0f x %.0f mm weighs %.2f kg/m and has a moment of inertia of %.2f cm4\n", 1000 * square->side,
           1000 * square->wall, section.mass, 1e8 * section.inertia);
}

/* How much of what its wall bears does a bolt ask of it? */
static void bolted(const tside_square *square, const tside_material *material, double force)
{
    tside_bolt bolt;
    tside_bolt_part part;
    tside_bearing bearing;
    tside_usual(TSIDE_KIND_BOLT, &bolt);
    tside_usual(TSIDE_KIND_BOLT_PART, &part);
    bolt.size = TSIDE_BOLT_M10;
    bolt.grip = square->side;
    bolt.force_given = 1;
    bolt.force = force;
    part.wall = square->wall;
    part.material = *material;
    need(tside_bolt_bearing(&bolt, &part, &bearing, &fault));
    printf("bolt  an M10 may press one wall by %.0f N; %.0f N are %.2f of that\n", bearing.limit, force,
           bearing.utilisation);
}

/* What does a cable lose on the way to a motor? */
static void cable(double area, double length, double temperature, double volts, double amperes)
{
    tside_cable cord;
    double resistance;
    tside_usual(TSIDE_KIND_CABLE, &cord);
    cord.wire = TSIDE_AREA;
    cord.strands = TSIDE_FLEXIBLE;
    cord.area = area;
    cord.length = length;
    cord.temperature = temperature;
    need(tside_cable_resistance(&cord, &resistance, &fault));
    printf("cable %.1f mm2, %.0f m at %.0f degC: %.3f ohm there and back; %.0f A lose %.2f V of %.0f V\n", 1e6 * area,
           length, temperature, resistance, amperes, amperes * resistance, volts);
}

int main(void)
{
    const tside_square square = {.side = 0.05, .wall = 0.003};
    tside_material steel;
    tside_usual(TSIDE_KIND_MATERIAL, &steel);
    steel.grade = TSIDE_GRADE_GIVEN;
    steel.yield = 235e6;
    sold("nps", 0.03, 0.05);
    tube(&square, &steel);
    bolted(&square, &steel, 2000);
    cable(1.5e-6, 20, 50, 24, 4);
    return EXIT_SUCCESS;
}
