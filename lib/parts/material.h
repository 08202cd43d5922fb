/* SPDX-License-Identifier: MIT */
/* Metals as the library's own files see them. */
#ifndef TUNNELSIDE_I_MATERIAL
#define TUNNELSIDE_I_MATERIAL

#include <tunnelside/material.h>

/* tside_material_values of one that passed its table's check: only a grade of another metal is refused. */
tside_status tside_i_material_values(const tside_material *material, tside_metal_values *values, tside_fault *fault);

#endif
