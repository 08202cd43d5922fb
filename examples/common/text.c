/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "text.h"

static void make_room(text *t, size_t more)
{
    size_t size = t->size ? t->size : 256;
    while (size - t->length <= more)
        size *= 2;
    if (size != t->size) {
        t->data = resize_memory(t->data, size);
        t->size = size;
    }
}

void text_add_bytes(text *t, const char *bytes, size_t count)
{
    make_room(t, count);
    memcpy(t->data + t->length, bytes, count);
    t->length += count;
    t->data[t->length] = '\0';
}

void text_add_list(text *t, const char *format, va_list arguments)
{
    va_list again;
    int count;
    va_copy(again, arguments);
    count = vsnprintf(NULL, 0, format, again);
    va_end(again);
    if (count < 0)
        end_without_memory(); /* no format here is at fault */
    make_room(t, (size_t)count);
    vsnprintf(t->data + t->length, (size_t)count + 1, format, arguments);
    t->length += (size_t)count;
}

void text_add(text *t, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    text_add_list(t, format, arguments);
    va_end(arguments);
}

void text_cut(text *t, size_t length)
{
    t->length = length;
    if (t->data)
        t->data[length] = '\0';
}

void text_free(text *t)
{
    free(t->data);
    *t = (text){NULL, 0, 0};
}

const char *text_of(const text *t)
{
    return t->data ? t->data : "";
}

enum { LONGEST_UNBROKEN = 24 };

static int is_number(const char *word)
{
    word += strspn(word, "([+-");
    return *word >= '0' && *word <= '9';
}

static int is_word(const char *word, size_t size, const char *wanted)
{
    return size == strlen(wanted) && !strncmp(word, wanted, size);
}

/*
 * A quantity such as "5 ft 3 1/2 in" or "30 lbf ft" is not broken: a number keeps the short word or the fraction that
 * follows, and so does a unit of two words.
 */
static int keeps_next(const char *word, size_t size, const char *next)
{
    const int short_next = strcspn(next, " ") <= 4;
    if (!*next)
        return 0;
    if (is_number(word) || is_word(word, size, "lbf") || is_word(word, size, "N"))
        return short_next || is_number(next);
    return is_word(word, size, "ft") && is_number(next);
}

static size_t width_of(const char *words, size_t bytes)
{
    size_t width = 0;
    for (size_t i = 0; i < bytes; i++)
        width += ((unsigned char)words[i] & 0xc0) != 0x80;
    return width;
}

size_t columns(const char *words)
{
    return width_of(words, strlen(words));
}

void text_add_markup(text *t, const char *bytes, size_t count)
{
    for (const char *end = bytes + count; bytes < end; bytes++)
        switch (*bytes) {
        case '&': text_add(t, "&amp;"); break;
        case '<': text_add(t, "&lt;"); break;
        case '>': text_add(t, "&gt;"); break;
        case '"': text_add(t, "&quot;"); break;
        default: text_add_bytes(t, bytes, 1);
        }
}

void text_add_within(text *t, const char *words, size_t room)
{
    size_t bytes = 0, width = 0;
    if (columns(words) <= room) {
        text_add(t, "%s", words);
        return;
    }
    while (words[bytes] && (width < room - 3 || ((unsigned char)words[bytes] & 0xc0) == 0x80))
        width += ((unsigned char)words[bytes++] & 0xc0) != 0x80;
    text_add_bytes(t, words, bytes);
    text_add(t, "...");
}

size_t whole_words(const char *words)
{
    size_t start = 0, end = strcspn(words, " ");
    while (words[end] && keeps_next(words + start, end - start, words + end + 1)) {
        const size_t next = end + 1 + strcspn(words + end + 1, " ");
        if (next > LONGEST_UNBROKEN)
            break;
        start = end + 1;
        end = next;
    }
    return end;
}

void text_wrap_at(text *t, size_t page_width, const char *label, const char *words)
{
    const size_t indent = columns(label);
    size_t at = indent;
    int first = 1;
    text_add(t, "%s", label);
    for (words += strspn(words, " "); *words; words += strspn(words, " ")) {
        const size_t bytes = whole_words(words), width = width_of(words, bytes);
        if (!first && at + 1 + width > page_width) {
            text_add(t, "\n%*s", (int)indent, "");
            at = indent;
            first = 1;
        }
        if (!first)
            text_add_bytes(t, " ", 1);
        text_add_bytes(t, words, bytes);
        at += width + !first;
        first = 0;
        words += bytes;
    }
    text_add_bytes(t, "\n", 1);
}

void text_wrap(text *t, const char *label, const char *words)
{
    text_wrap_at(t, PAGE_WIDTH, label, words);
}

void text_say(text *t, const char *label, const char *format, ...)
{
    text words = {NULL, 0, 0};
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    text_wrap(t, label, text_of(&words));
    text_free(&words);
}
