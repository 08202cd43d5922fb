/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "svg.h"

void svg_open(text *svg, const char *shows)
{
    text_add(svg, "<g class=\"%s\" fill=\"none\" stroke=\"#000\">\n", shows);
}

void svg_shut(text *svg)
{
    text_add(svg, "</g>\n");
}

void svg_line(text *svg, point from, point to, double wide, line_dashes dashes)
{
    text_add(svg, "<line x1=\"%.3f\" y1=\"%.3f\" x2=\"%.3f\" y2=\"%.3f\" stroke-width=\"%.2f\"%s/>\n", from.x, from.y,
             to.x, to.y, wide, dashes == DASHES_CHAIN ? " stroke-dasharray=\"6 0.75 0.125 0.75\"" : "");
}

void svg_box(text *svg, const box *at, double wide)
{
    text_add(svg, "<rect x=\"%.3f\" y=\"%.3f\" width=\"%.3f\" height=\"%.3f\" stroke-width=\"%.2f\"/>\n", at->x, at->y,
             at->width, at->height, wide);
}

static void add_circle(text *svg, point centre, double radius, double wide, const char *more)
{
    text_add(svg, "<circle cx=\"%.3f\" cy=\"%.3f\" r=\"%.3f\" stroke-width=\"%.2f\"%s/>\n", centre.x, centre.y, radius,
             wide, more);
}

void svg_circle(text *svg, point centre, double radius, double wide)
{
    add_circle(svg, centre, radius, wide, "");
}

void svg_disc(text *svg, point centre, double radius, double wide)
{
    add_circle(svg, centre, radius, wide, " fill=\"#fff\"");
}

/* As attributes: a page that allows no style but its own shows them too. */
static void add_style(text *svg, double size, const char *anchor, const char *weight)
{
    text_add(svg,
             " font-family=\"sans-serif\" font-size=\"%.2f\" font-weight=\"%s\" text-anchor=\"%s\" fill=\"#000\" "
             "stroke=\"none\">",
             size, weight, anchor);
}

static void add_words(text *svg, point foot, double size, words_from from, const char *weight, const char *words)
{
    static const char *const anchors[] = {[FROM_LEFT] = "start", [FROM_MIDDLE] = "middle", [FROM_RIGHT] = "end"};
    text_add(svg, "<text x=\"%.3f\" y=\"%.3f\"", foot.x, foot.y);
    add_style(svg, size, anchors[from], weight);
    text_add_markup(svg, words, strlen(words));
    text_add(svg, "</text>\n");
}

void svg_words(text *svg, point foot, double size, words_from from, const char *words)
{
    add_words(svg, foot, size, from, "normal", words);
}

void svg_bold(text *svg, point foot, double size, words_from from, const char *words)
{
    add_words(svg, foot, size, from, "bold", words);
}

void svg_large(text *svg, point foot, double size, const char *large, const char *small)
{
    text_add(svg, "<text x=\"%.3f\" y=\"%.3f\"", foot.x, foot.y);
    add_style(svg, size, "start", "bold");
    text_add_markup(svg, large, strlen(large));
    text_add(svg, " <tspan dx=\"1\" font-weight=\"normal\" font-size=\"%.2f\">", PRINT);
    text_add_markup(svg, small, strlen(small));
    text_add(svg, "</tspan></text>\n");
}

/* Of the size; from the widest of the usual typefaces, bold, and rounded up. */
static double letter_width(unsigned char c)
{
    if (strchr(" .,:;'|!/()[]-fijlrt", c) && c)
        return 0.46;
    if (strchr("mwMW%@&+=<>~", c) && c)
        return 1.06;
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
        return 0.70;
    return c < 0xe0 ? 0.80 : 1.06; /* from there on it may be a letter of any script */
}

double svg_width(const char *words, double size)
{
    double width = 0;
    for (; *words; words++)
        if (((unsigned char)*words & 0xc0) != 0x80)
            width += letter_width((unsigned char)*words);
    return width * size;
}

size_t svg_columns(const char *words, double width, double size)
{
    const size_t count = columns(words);
    return count ? (size_t)(width / svg_width(words, size) * (double)count) : 0;
}
