/* SPDX-License-Identifier: MIT */
/* The version: of the headers at compile time, of the library at run time. */
#ifndef TUNNELSIDE_VERSION_H
#define TUNNELSIDE_VERSION_H

#include <tunnelside/fault.h>

#ifdef __cplusplus
extern "C" {
#endif

#define TSIDE_VERSION_MAJOR 0
#define TSIDE_VERSION_MINOR 1
#define TSIDE_VERSION_PATCH 0
#define TSIDE_VERSION "0.1.0"

/*
 * The version of the library in use, such as "1.2.3", to compare with TSIDE_VERSION of the headers compiled against.
 * Returns a constant string, never NULL.
 */
TSIDE_API const char *tside_version(void);

#ifdef __cplusplus
}
#endif
#endif
