/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "html.h"
#include "style.h"

/* --- words --- */

/* As text of HTML, or of an attribute in double quotes; a quantity is not broken. */
static void add_words(text *out, const char *words)
{
    for (words += strspn(words, " "); *words; words += strspn(words, " ")) {
        for (const char *end = words + whole_words(words); words < end; words++)
            if (*words == ' ')
                text_add(out, "&nbsp;");
            else
                text_add_markup(out, words, 1);
        text_add(out, "%s", words[strspn(words, " ")] ? " " : "");
    }
}

/* As a string of CSS in double quotes, inside of HTML's element of style. */
static void add_css_string(text *out, const char *words)
{
    text_add(out, "\"");
    for (; *words; words++)
        if (strchr("\"\\<", *words))
            text_add(out, "\\%x ", (unsigned)*words);
        else
            text_add_bytes(out, words, 1);
    text_add(out, "\"");
}

/* An element without attributes, on a line of its own. */
static void add_element(text *out, const char *name, const char *words)
{
    text_add(out, "<%s>", name);
    add_words(out, words);
    text_add(out, "</%s>\n", name);
}

/* --- blocks: each begins at a line of the paper, and returns the first line after it --- */

static int is(const paper *p, size_t i, line_kind kind)
{
    return i < p->count && p->lines[i].kind == kind;
}

static int is_row_of(const paper *p, size_t i, int count, int names)
{
    return is(p, i, LINE_ROW) && p->lines[i].count == count && p->lines[i].names == names;
}

/* Several facts may be to one word. */
static size_t add_facts(text *out, const paper *p, size_t i)
{
    text_add(out, "<dl class=\"facts\">\n");
    for (; is(p, i, LINE_FACT); i++) {
        if (*p->lines[i].cells[0])
            add_element(out, "dt", p->lines[i].cells[0]);
        add_element(out, "dd", p->lines[i].cells[1]);
    }
    text_add(out, "</dl>\n");
    return i;
}

static size_t add_caution(text *out, const paper *p, size_t i)
{
    text_add(out, "<p class=\"caution\"><strong>Caution:</strong> ");
    add_words(out, p->lines[i].cells[0]);
    text_add(out, "</p>\n");
    return i + 1;
}

static size_t add_remark(text *out, const paper *p, size_t i)
{
    text_add(out, "<p class=\"remark\">");
    add_words(out, p->lines[i].cells[0]);
    text_add(out, "</p>\n");
    return i + 1;
}

/* Rows without titles: labels, each with its value. */
static size_t add_pairs(text *out, const paper *p, size_t i)
{
    const int count = p->lines[i].count;
    text_add(out, "<dl class=\"pairs\">\n");
    for (; is_row_of(p, i, count, 0); i++) {
        const paper_line *row = p->lines + i;
        for (int k = 0; k + 1 < row->count && *row->cells[k]; k += 2) {
            text_add(out, k ? "<dt class=\"beside\">" : "<dt>");
            add_words(out, row->cells[k]);
            text_add(out, "</dt>\n");
            add_element(out, "dd", row->cells[k + 1]);
        }
    }
    text_add(out, "</dl>\n");
    return i;
}

/* The SVG is markup already, with a title and a description for who does not see it. */
static size_t add_drawing(text *out, const paper *p, size_t i)
{
    text_add(out, "<figure%s>\n%s", p->lines[i].lies ? " class=\"lies\"" : "", p->lines[i].cells[1]);
    add_element(out, "figcaption", p->lines[i].cells[0]);
    text_add(out, "</figure>\n");
    return i + 1;
}

/* --- tables --- */

static void add_cell(text *out, const paper_line *row, int k, const char *scope)
{
    const char *name = scope && *row->cells[k] ? "th" : "td";
    text_add(out, "<%s", name);
    if (*name == 't' && name[1] == 'h')
        text_add(out, " scope=\"%s\"", scope);
    if (row->figures >> k & 1u)
        text_add(out, " class=\"figures\"");
    else if (*row->cells[k] == ' ')
        text_add(out, " class=\"under\""); /* more of the row above */
    text_add(out, ">");
    add_words(out, row->cells[k]);
    text_add(out, "</%s>\n", name);
}

static size_t add_titles(text *out, const paper *p, size_t i)
{
    text_add(out, "<thead>\n");
    for (; is(p, i, LINE_COLUMNS) || is(p, i, LINE_UNITS); i++) {
        text_add(out, "<tr>\n");
        for (int k = 0; k < p->lines[i].count; k++)
            add_cell(out, p->lines + i, k, "col");
        text_add(out, "</tr>\n");
    }
    text_add(out, "</thead>\n");
    return i;
}

static void add_row(text *out, const paper_line *row)
{
    text_add(out, "<tr>\n");
    for (int k = 0; k < row->count; k++)
        add_cell(out, row, k, k == row->names ? "row" : NULL);
    text_add(out, "</tr>\n");
}

static void add_row_remark(text *out, const paper_line *remark, int count)
{
    text_add(out, "<tr class=\"remark\">\n<td colspan=\"%d\">", count);
    add_words(out, remark->cells[0]);
    text_add(out, "</td>\n</tr>\n");
}

/* For who does not see what heading a table stands under. */
static void add_caption(text *out, const paper *p, size_t i)
{
    const char *of = p->lines[i].of;
    while (i > 0 && p->lines[i].kind != LINE_PART && p->lines[i].kind != LINE_PAGE)
        i--;
    text_add(out, "<caption>");
    add_words(out, p->lines[i].cells[0]);
    if (of)
        text_add(out, ", ");
    add_words(out, of ? of : "");
    text_add(out, "</caption>\n");
}

static size_t add_table(text *out, const paper *p, size_t i)
{
    const int count = p->lines[i].count, names = p->lines[i].names;
    text_add(out, "<div class=\"table\">\n<table>\n");
    add_caption(out, p, i);
    if (is(p, i, LINE_COLUMNS))
        i = add_titles(out, p, i);
    text_add(out, "<tbody>\n");
    for (; is(p, i, LINE_REMARK) || is_row_of(p, i, count, names); i++)
        if (is(p, i, LINE_ROW))
            add_row(out, p->lines + i);
        else
            add_row_remark(out, p->lines + i, count);
    text_add(out, "</tbody>\n</table>\n</div>\n");
    return i;
}

/* --- lists --- */

static size_t add_points(text *out, const paper *p, size_t i)
{
    text_add(out, "<ul>\n");
    while (is(p, i, LINE_POINT)) {
        text_add(out, "<li>");
        add_words(out, p->lines[i++].cells[0]);
        while (is(p, i, LINE_REMARK))
            i = add_remark(out, p, i);
        text_add(out, "</li>\n");
    }
    text_add(out, "</ul>\n");
    return i;
}

static size_t add_block(text *out, const paper *p, size_t i);

static size_t add_steps(text *out, const paper *p, size_t i)
{
    text_add(out, "<ol>\n");
    while (is(p, i, LINE_STEP)) {
        text_add(out, "<li value=\"%d\">", p->lines[i].number);
        add_words(out, p->lines[i++].cells[0]);
        text_add(out, "\n");
        while (is(p, i, LINE_ROW) || is(p, i, LINE_CAUTION) || is(p, i, LINE_REMARK))
            i = add_block(out, p, i);
        text_add(out, "</li>\n");
    }
    text_add(out, "</ol>\n");
    return i;
}

/* --- pages --- */

static size_t add_block(text *out, const paper *p, size_t i)
{
    switch (p->lines[i].kind) {
    case LINE_PART: add_element(out, "h3", p->lines[i].cells[0]); return i + 1;
    case LINE_FACT: return add_facts(out, p, i);
    case LINE_POINT: return add_points(out, p, i);
    case LINE_STEP: return add_steps(out, p, i);
    case LINE_CAUTION: return add_caution(out, p, i);
    case LINE_REMARK: return add_remark(out, p, i);
    case LINE_DRAWING: return add_drawing(out, p, i);
    case LINE_COLUMNS: return add_table(out, p, i);
    case LINE_ROW: return p->lines[i].names ? add_table(out, p, i) : add_pairs(out, p, i);
    default: add_element(out, "p", p->lines[i].cells[0]); return i + 1;
    }
}

/* From its head to the next one's. */
static size_t add_page(text *out, const paper *p, size_t i, int number)
{
    text_add(out, "<section id=\"page-%d\" aria-labelledby=\"head-%d\">\n<h2 id=\"head-%d\">", number, number, number);
    add_words(out, p->lines[i].cells[0]);
    text_add(out, " <span>");
    add_words(out, p->lines[i].cells[1]);
    text_add(out, "</span></h2>\n");
    for (i++; i < p->count && !is(p, i, LINE_PAGE);)
        i = add_block(out, p, i);
    text_add(out, "</section>\n");
    return i;
}

static void add_pages(text *out, const papers *sheets)
{
    int number = 0;
    for (size_t k = 0; k < sheets->count; k++)
        for (size_t i = 0; i < sheets->list[k].count;)
            i = add_page(out, sheets->list + k, i, ++number);
}

/* --- what stands before them --- */

enum { FOOT_WIDTH = 64 };

/* At a printed page's foot stands of what, and whose, it is: it may be one of several of its section. */
static void add_foot(text *out, const char *words, const char *kind, int number, const char *size)
{
    text_add(out, "@page %s-%d { %s@bottom-left { content: ", kind, number, size);
    add_css_string(out, words);
    text_add(out, " } }\n");
}

/* Where a drawing lies, its page is turned. */
static void add_feet_of(text *out, const paper_line *head, int number)
{
    text words = {NULL, 0, 0};
    text_add(&words, "%s: ", head->cells[0]);
    text_add_within(&words, head->cells[1], FOOT_WIDTH - columns(head->cells[0]));
    text_add(out, "#page-%d { page: page-%d }\n#page-%d .lies { page: lies-%d }\n", number, number, number, number);
    add_foot(out, text_of(&words), "page", number, "");
    add_foot(out, text_of(&words), "lies", number, "size: landscape; ");
    text_free(&words);
}

static void add_feet(text *out, const papers *sheets)
{
    int number = 0;
    for (size_t k = 0; k < sheets->count; k++)
        for (size_t i = 0; i < sheets->list[k].count; i++)
            if (is(sheets->list + k, i, LINE_PAGE))
                add_feet_of(out, sheets->list[k].lines + i, ++number);
}

/* What the sheets are called, and whose they are. */
static void add_title(text *out, const char *called, const papers *sheets)
{
    text_add(out, "%s%s: ", called, sheets->count > 1 ? "s" : "");
    for (size_t k = 0; k < sheets->count; k++) {
        text_add(out, "%s", k ? "; " : "");
        add_words(out, sheets->list[k].lines[0].cells[1]);
    }
}

static void add_head(text *out, const char *called, const papers *sheets)
{
    text_add(out, "<!DOCTYPE html>\n"
                  "<html lang=\"en\">\n"
                  "<head>\n"
                  "<meta charset=\"utf-8\">\n"
                  "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                  "'unsafe-inline'; base-uri 'none'; form-action 'none'\">\n"
                  "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                  "<title>");
    add_title(out, called, sheets);
    text_add(out, "</title>\n<style>\n%s", sheet_style);
    add_feet(out, sheets);
    text_add(out, "</style>\n</head>\n");
}

/* For a screen: where each page of each sheet is. */
static void add_contents(text *out, const papers *sheets)
{
    int number = 0;
    text_add(out, "<nav aria-label=\"Pages\">\n");
    for (size_t k = 0; k < sheets->count; k++) {
        const paper *p = sheets->list + k;
        add_element(out, "p", p->lines[0].cells[1]);
        text_add(out, "<ul>\n");
        for (size_t i = 0; i < p->count; i++)
            if (p->lines[i].kind == LINE_PAGE) {
                text_add(out, "<li><a href=\"#page-%d\">", ++number);
                add_words(out, p->lines[i].cells[0]);
                text_add(out, "</a></li>\n");
            }
        text_add(out, "</ul>\n");
    }
    text_add(out, "</nav>\n");
}

void print_html(text *out, const char *called, const papers *sheets)
{
    text heading = {NULL, 0, 0};
    if (!sheets->count)
        return;
    add_head(out, called, sheets);
    text_add(out, "<body>\n<header>\n");
    text_add(&heading, "%s%s", called, sheets->count > 1 ? "s" : "");
    add_element(out, "h1", text_of(&heading));
    text_free(&heading);
    add_contents(out, sheets);
    text_add(out, "</header>\n<main>\n");
    add_pages(out, sheets);
    text_add(out, "</main>\n</body>\n</html>\n");
}
