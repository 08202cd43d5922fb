/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "message.h"

/* Reads one character of UTF-8 (RFC 3629); returns its bytes, or 0 where it is none. */
static size_t read_character(const char *words, unsigned long *code)
{
    static const unsigned long least[] = {0, 0, 0x80, 0x800, 0x10000};
    const unsigned char first = (unsigned char)*words;
    const size_t bytes = first < 0x80                    ? 1
                         : first >= 0xc0 && first < 0xe0 ? 2
                         : first >= 0xe0 && first < 0xf0 ? 3
                         : first >= 0xf0 && first < 0xf8 ? 4
                                                         : 0;
    if (!bytes)
        return 0;
    *code = bytes == 1 ? first : first & (0xffu >> (bytes + 1));
    for (size_t i = 1; i < bytes; i++) {
        if (((unsigned char)words[i] & 0xc0) != 0x80)
            return 0;
        *code = *code << 6 | ((unsigned char)words[i] & 0x3f);
    }
    return *code < least[bytes] || *code > 0x10ffff || (*code >= 0xd800 && *code < 0xe000) ? 0 : bytes;
}

/*
 * Control characters; line and paragraph separators; all marks, embeddings, overrides and isolates of Unicode's annex
 * 9 (from memory); and the two that XML 1.0 has no room for.
 */
static int is_unseen(unsigned long code)
{
    return code < 0x20 || (code >= 0x7f && code < 0xa0) || code == 0x61c || code == 0x200e || code == 0x200f ||
           (code >= 0x2028 && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069) || code == 0xfffe || code == 0xffff;
}

char *printable(const char *words)
{
    text shown = {NULL, 0, 0};
    text_add_bytes(&shown, "", 0);
    while (*words) {
        unsigned long code = 0;
        const size_t bytes = read_character(words, &code);
        if (!bytes)
            text_add(&shown, "<0x%02X>", (unsigned char)*words);
        else if (strchr("\t\n\v\f\r", *words))
            text_add_bytes(&shown, " ", 1);
        else if (is_unseen(code))
            text_add(&shown, "<U+%04lX>", code);
        else
            text_add_bytes(&shown, words, bytes);
        words += bytes ? bytes : 1;
    }
    return shown.data;
}
