/* SPDX-License-Identifier: MIT */
/* A text that grows. Everything the program prints is gathered in one first, so that output is complete or absent. */
#ifndef COMMON_TEXT_H
#define COMMON_TEXT_H

#include <stdarg.h>
#include <stddef.h>

#if defined(__GNUC__)
#define LIKE_PRINTF(words, first) __attribute__((format(printf, words, first)))
#else
#define LIKE_PRINTF(words, first)
#endif

enum { PAGE_WIDTH = 80 };

typedef struct text {
    char *data; /* always with a closing zero once something was added; NULL before */
    size_t length, size;
} text;

void text_add_bytes(text *t, const char *bytes, size_t count);
void text_add(text *t, const char *format, ...) LIKE_PRINTF(2, 3);
void text_add_list(text *t, const char *format, va_list arguments);
void text_cut(text *t, size_t length); /* back to a length it had */
void text_free(text *t);
const char *text_of(const text *t); /* never NULL */

/*
 * Words after a label, broken between blanks at PAGE_WIDTH columns; lines after the first stand under the first word.
 */
void text_wrap(text *t, const char *label, const char *words);
/* The same, at another width. */
void text_wrap_at(text *t, size_t page_width, const char *label, const char *words);

/*
 * Bytes of the first word, with those that are not parted from it: a quantity such as "5 ft 3 1/2 in" stays whole.
 */
size_t whole_words(const char *words);

/* As printf, into the words of text_wrap. */
void text_say(text *t, const char *label, const char *format, ...) LIKE_PRINTF(3, 4);

/* Bytes of words as text of XML or HTML, or of an attribute in double quotes. */
void text_add_markup(text *t, const char *bytes, size_t count);

/* As much of words as so many columns have room for, cut between characters; where something is cut, it says so. */
void text_add_within(text *t, const char *words, size_t room);

/* Columns that a text takes: one for each character of UTF-8, control characters not foreseen. */
size_t columns(const char *words);

#endif
