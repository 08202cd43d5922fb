/* SPDX-License-Identifier: MIT */
#include <string.h>
#include <tunnelside.h>

#include "feet.h"

/*
 * Of what reads as a length these stand in such units alone: in, ft, yd, their other words, ', ", and the first byte of
 * the typographic marks in UTF-8.
 */
int is_in_feet(const char *words)
{
    double metres;
    return tside_quantity_read(words, "m", &metres, NULL) == TSIDE_OK && strpbrk(words, "fiy'\"\xe2") != NULL;
}

int is_in_pounds(const char *words)
{
    static const char *const units[] = {"kg", "N", "N m"};
    double ignored;
    for (size_t i = 0; i < sizeof units / sizeof *units; i++)
        if (tside_quantity_read(words, units[i], &ignored, NULL) == TSIDE_OK)
            return strstr(words, "lb") != NULL;
    return 0;
}
