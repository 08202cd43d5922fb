/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tunnelside.h>

#include "members.h"
#include "message.h"

void add_json_number(text *out, double value)
{
    char digits[40];
    for (int precision = 15; precision <= 17; precision++) {
        snprintf(digits, sizeof digits, "%.*g", precision, value);
        if (strtod(digits, NULL) == value)
            break;
    }
    text_add(out, "%s", digits);
}

/* How many bytes of UTF-8 a character takes; 0 where there is none: overlong, a surrogate, or above U+10FFFF. */
static int length_of(const unsigned char *c)
{
    const int length = c[0] < 0x80                   ? 1
                       : c[0] >= 0xC2 && c[0] < 0xE0 ? 2
                       : c[0] >= 0xE0 && c[0] < 0xF0 ? 3
                       : c[0] >= 0xF0 && c[0] < 0xF5 ? 4
                                                     : 0;
    for (int i = 1; i < length; i++)
        if (c[i] < 0x80 || c[i] >= 0xC0)
            return 0;
    if ((c[0] == 0xE0 && c[1] < 0xA0) || (c[0] == 0xED && c[1] >= 0xA0) || (c[0] == 0xF0 && c[1] < 0x90) ||
        (c[0] == 0xF4 && c[1] >= 0x90))
        return 0;
    return length;
}

void add_json_string(text *out, const char *words)
{
    text_add(out, "\"");
    for (const unsigned char *c = (const unsigned char *)words; *c;) {
        const int length = length_of(c);
        if (*c == '"' || *c == '\\')
            text_add(out, "\\%c", *c);
        else if (*c < 0x20)
            text_add(out, "\\u%04X", *c);
        else if (length)
            text_add_bytes(out, (const char *)c, (size_t)length);
        else
            text_add(out, "?");
        c += length ? length : 1;
    }
    text_add(out, "\"");
}

/* --- a writer: members of objects and lists, one a line --- */

void begin_member(writer *w, const char *key)
{
    text_add(w->out, "%s\n%*s", w->empty ? "" : ",", 2 * w->depth, "");
    if (key)
        text_add(w->out, "\"%s\": ", key);
    w->empty = 0;
}

void open_bracket(writer *w, const char *key, char bracket)
{
    begin_member(w, key);
    text_add(w->out, "%c", bracket);
    w->depth++;
    w->empty = 1;
}

void shut_bracket(writer *w, char bracket)
{
    w->depth--;
    if (!w->empty)
        text_add(w->out, "\n%*s", 2 * w->depth, "");
    text_add(w->out, "%c", bracket);
    w->empty = 0;
}

void put_string(writer *w, const char *key, const char *words)
{
    begin_member(w, key);
    add_json_string(w->out, words ? words : "");
}

void put_number(writer *w, const char *key, double value, const char *unit)
{
    begin_member(w, key);
    text_add(w->out, "{\"value\": ");
    add_json_number(w->out, value);
    text_add(w->out, ", \"unit\": \"%s\"}", unit);
}

void put_flag(writer *w, const char *key, int flag)
{
    begin_member(w, key);
    text_add(w->out, "%s", flag ? "true" : "false");
}

void put_whole(writer *w, const char *key, int value)
{
    begin_member(w, key);
    text_add(w->out, "%d", value);
}

/* --- what every program's document has --- */

writer open_document(text *out, int complete)
{
    writer w = {out, 1, 1};
    text_add(out, "{");
    put_string(&w, "program", program_name);
    put_string(&w, "version", tside_version());
    put_flag(&w, "complete", complete);
    return w;
}

void shut_document(writer *w)
{
    text_add(w->out, "\n}\n");
}
