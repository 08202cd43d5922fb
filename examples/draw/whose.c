/* SPDX-License-Identifier: MIT */
#include "whose.h"
#include "mark.h"

void add_whose(text *words, const planned *side)
{
    char mark[TSIDE_MARK_SIZE];
    if (*side_mark(side, mark))
        text_add(words, "Side %s: ", mark);
    text_add(words, "%s", side_name(side));
}

void add_notes(text *words, const planned *side)
{
    enum { MOST = 150 };
    const char *const notes[] = {side->wanted.of ? side->wanted.job_note : "", side->wanted.note};
    text all = {NULL, 0, 0};
    for (int i = 0; i < 2; i++)
        if (*notes[i])
            text_add(&all, "%s%s", all.length ? " " : "", notes[i]);
    text_add_within(words, text_of(&all), MOST);
    text_free(&all);
}
