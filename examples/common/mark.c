/* SPDX-License-Identifier: MIT */
#include "mark.h"

const char *side_mark(const planned *side, char mark[TSIDE_MARK_SIZE])
{
    return tside_mark_letters(side->place, mark, TSIDE_MARK_SIZE, NULL, NULL) == TSIDE_OK ? mark : "";
}

const char *piece_mark(const planned *side, tside_item_code code, tside_item_at at, int number,
                       char mark[TSIDE_MARK_SIZE])
{
    return tside_mark_piece(side->place, code, at, number, mark, TSIDE_MARK_SIZE, NULL, NULL) == TSIDE_OK ? mark : "";
}

const char *item_mark(const planned *side, const tside_item *item, int piece, char mark[TSIDE_MARK_SIZE])
{
    return item->first_number ? piece_mark(side, item->code, item->at, item->first_number + piece, mark) : "";
}

void add_marks(text *out, const planned *side, const tside_item *item)
{
    char first[TSIDE_MARK_SIZE], last[TSIDE_MARK_SIZE];
    text_add(out, "%s", item_mark(side, item, 0, first));
    if (item->count > 1 && *item_mark(side, item, item->count - 1, last))
        text_add(out, " to %s", last);
}

void add_what(text *out, pen *p, const tside_item *item)
{
    const int is_bolt = item->code == TSIDE_ITEM_BOW_BOLT || item->code == TSIDE_ITEM_MEMBER_BOLT;
    text_add(out, "%s", tside_item_text((int)item->code));
    if (item->shape != TSIDE_NO_TUBE)
        text_add(out, " %s", cross_section(p, item->size, item->wall));
    else if (item->by == TSIDE_BY_SHEET)
        text_add(out, " %s wide", tape(p, item->width));
    else if (item->size > 0)
        text_add(out, " %s", bolt_name(p, item->size, "", is_bolt ? item->length : 0));
    if (item->length > 0 && !is_bolt)
        text_add(out, ", %s", tape(p, item->length));
}
