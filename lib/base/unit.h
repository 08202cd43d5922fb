/* SPDX-License-Identifier: MIT */
/* Units by name: which there are, and which stands at the start of a text. */
#ifndef TUNNELSIDE_UNIT_H
#define TUNNELSIDE_UNIT_H

#include <stdint.h>

#define E4 UINT64_C(10000)
#define INCH UINT64_C(254) /* E-4 m */

/* feet may be followed by inches; TSIDE_I_OF_FILM is read of film's thickness alone */
enum { TSIDE_I_ALONE, TSIDE_I_FEET, TSIDE_I_INCHES, TSIDE_I_OF_FILM };

/* 1 name = over/under si, exactly. */
typedef struct tside_i_measure {
    const char *name; /* its words have other spellings; a blank in it stands for one or more, or a hyphen; "" for a
                         bare number */
    const char *si;
    uint64_t over, under;
    int joins;
} tside_i_measure;

/* The unit of the longest name that stands here of those for what is wanted, or NULL; *end: where its name ends. */
const tside_i_measure *tside_i_unit_wanted(const char *at, const char *si, int film, const char **end);

/* The unit of any quantity whose name is the rest of the text, or NULL. */
const tside_i_measure *tside_i_unit_any(const char *at);

/* The table's own copy of the name of an SI unit, or NULL. */
const char *tside_i_unit_si(const char *si);

/* Writes the names that would do, "mm, cm, m", into TSIDE_PATH_SIZE bytes. */
void tside_i_unit_list(const char *si, int film, char *names);

/* --- characters --- */

static inline int tside_i_is_blank(char c)
{
    return c == ' ' || c == '\t';
}

static inline const char *tside_i_skip_blanks(const char *at)
{
    while (tside_i_is_blank(*at))
        at++;
    return at;
}

static inline int tside_i_is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

#endif
