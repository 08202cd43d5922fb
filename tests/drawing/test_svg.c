/* SPDX-License-Identifier: MIT */
/* A drawing's SVG: its text is text, its places are the strokes', and it fits its buffer or says what it needs. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *svg_suite(void);

static tside_drawing drawing;
static char svg[1 << 18];

static void draw_plain(double scale)
{
    const tside_side side = plain();
    const tside_plan plan = planned(&side);
    const tside_picture picture = {.view = TSIDE_VIEW_END_WALL, .tape = TSIDE_TAPE_METRIC, .scale = scale};
    tside_fault fault;
    ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
}

static void write_svg(const char *title)
{
    tside_fault fault;
    ANSWERS(tside_drawing_svg(&drawing, title, svg, sizeof svg, NULL, &fault));
}

/* --- text --- */

#define NONE "\xef\xbf\xbd" /* U+FFFD */

static const struct {
    const char *title, *shown;
} titles[] = {
    {"", ""},
    {"</title><script>alert(1)</script>", "&lt;/title&gt;&lt;script&gt;alert(1)&lt;/script&gt;"},
    {"<![CDATA[&amp;]]>", "&lt;![CDATA[&amp;amp;]]&gt;"},
    {"\"'\"", "&quot;'&quot;"},
    {"a\x01\x1b\n\t\r\x7f.", "a      ."},
    {"H\xc3\xa4user \xe2\x82\xac \xf0\x9f\x8c\xb1", "H\xc3\xa4user \xe2\x82\xac \xf0\x9f\x8c\xb1"},
    {"\xed\x9f\xbf\xee\x80\x80\xef\xbf\xbd\xf4\x8f\xbf\xbf\xc2\x80",
     "\xed\x9f\xbf\xee\x80\x80\xef\xbf\xbd\xf4\x8f\xbf\xbf\xc2\x80"},
    {"\x80", NONE},                            /* follows nothing */
    {"\xc0\xaf", NONE NONE},                   /* longer than needed */
    {"\xe0\x80\xaf", NONE NONE NONE},          /* longer than needed */
    {"\xf0\x80\x80\xaf", NONE NONE NONE NONE}, /* longer than needed */
    {"\xed\xa0\x80", NONE NONE NONE},          /* half a pair of UTF-16 */
    {"\xf4\x90\x80\x80", NONE NONE NONE NONE}, /* beyond U+10FFFF */
    {"\xf5\xff", NONE NONE},
    {"\xef\xbf\xbe\xef\xbf\xbf", NONE NONE NONE NONE NONE NONE}, /* no characters of XML */
    {"\xe2\x82", NONE NONE},                                     /* ends amid a character */
    {"\xf0\x9f\x8c", NONE NONE NONE},
    {"\xe2\x82<", NONE NONE "&lt;"},
    {"\xe2\x82\xc3\xa4", NONE NONE "\xc3\xa4"}, /* a letter amid a character */
    {"\xef\xbe\xbf\xef\xbf\xbd", "\xef\xbe\xbf\xef\xbf\xbd"},
    {"\xc3(", NONE "("},
    {"\xe0\xa4\x85\xf0\x90\x80\x80", "\xe0\xa4\x85\xf0\x90\x80\x80"}, /* the least of three bytes, and of four */
};

START_TEST(a_title_stays_text)
{
    draw_plain(20);
    for (size_t i = 0; i < sizeof titles / sizeof *titles; i++) {
        char want[200];
        snprintf(want, sizeof want, "<title>%s</title>", titles[i].shown);
        write_svg(titles[i].title);
        ck_assert_msg(strstr(svg, want) != NULL, "title %zu", i);
    }
}
END_TEST

/* --- places --- */

/* The number of an attribute of the element at. */
static double number_of(const char *at, const char *name)
{
    char sought[32];
    const char *found;
    snprintf(sought, sizeof sought, " %s=\"", name);
    found = strstr(at, sought);
    ck_assert_msg(found && found < strchr(at, '>'), "%.40s has no %s", at, name);
    return strtod(found + strlen(sought), NULL);
}

/* mm on paper, across from the left edge and down from the upper one. */
static double across(double x)
{
    return (x - drawing.left) * 1000 / drawing.picture.scale;
}

static double down(double y)
{
    return (drawing.top - y) * 1000 / drawing.picture.scale;
}

static const char *next_of(const char *at)
{
    const char *next = strstr(at, "\n<");
    ck_assert_ptr_nonnull(next);
    return next + 1;
}

static void check_path(const char *at, const tside_stroke *arc, int number)
{
    const double to = arc->from + arc->sweep;
    double x, y, radius, again, x_end, y_end;
    int far = -1;
    at = strstr(at, " d=\"");
    ck_assert_int_eq(
        sscanf(at, " d=\"M%lf %lfA%lf %lf 0 %d 0 %lf %lf\"", &x, &y, &radius, &again, &far, &x_end, &y_end), 7);
    NEAR(x, across(arc->x + arc->radius * cos(arc->from)), 1e-3, "arc's beginning", number);
    NEAR(y, down(arc->y + arc->radius * sin(arc->from)), 1e-3, "arc's beginning", number);
    NEAR(x_end, across(arc->x + arc->radius * cos(to)), 1e-3, "arc's end", number);
    NEAR(y_end, down(arc->y + arc->radius * sin(to)), 1e-3, "arc's end", number);
    NEAR(radius, arc->radius * 1000 / drawing.picture.scale, 1e-3, "radius", number);
    NEAR(again, radius, 0, "radius", number);
    ck_assert_int_eq(far, arc->sweep > PI);
}

static void check_stroke(const char *at, const tside_stroke *stroke, int number)
{
    static const char *const types[] = {" stroke-width=\".5\"", "", " stroke-dasharray=\"3 .75\"",
                                        " stroke-dasharray=\"6 .75 .125 .75\""};
    for (int type = 0; type < 4; type++)
        if (*types[type]) {
            const char *found = strstr(at, types[type]);
            ck_assert_msg((found && found < strchr(at, '>')) == (type == (int)stroke->line), "stroke %d: %.80s", number,
                          at);
        }
    if (!stroke->arc) {
        ck_assert(!strncmp(at, "<line", 5));
        NEAR(number_of(at, "x1"), across(stroke->x), 1e-3, "x1", number);
        NEAR(number_of(at, "y1"), down(stroke->y), 1e-3, "y1", number);
        NEAR(number_of(at, "x2"), across(stroke->x_end), 1e-3, "x2", number);
        NEAR(number_of(at, "y2"), down(stroke->y_end), 1e-3, "y2", number);
    } else if (stroke->sweep > 2 * PI * (1 - 1e-9)) {
        ck_assert(!strncmp(at, "<circle", 7));
        NEAR(number_of(at, "cx"), across(stroke->x), 1e-3, "cx", number);
        NEAR(number_of(at, "cy"), down(stroke->y), 1e-3, "cy", number);
        NEAR(number_of(at, "r"), stroke->radius * 1000 / drawing.picture.scale, 1e-3, "r", number);
    } else
        check_path(at, stroke, number);
}

/* Strokes come first, in their order; then what is told, each text as wide as is stated. */
START_TEST(places_on_paper_are_those_of_the_strokes)
{
    static const double scales[] = {1, 5, 20, 50};
    for (size_t i = 0; i < sizeof scales / sizeof *scales; i++) {
        const char *at;
        int texts = 0;
        draw_plain(scales[i]);
        write_svg("plain");
        NEAR(number_of(svg, "width"), across(drawing.right), 1e-3, "width", 0);
        NEAR(number_of(svg, "height"), down(drawing.bottom), 1e-3, "height", 0);
        at = strstr(svg, "<g fill=\"none\" stroke=\"#000\" stroke-width=\".25\">");
        ck_assert_ptr_nonnull(at);
        ck_assert_ptr_null(strstr(svg, "<style")); /* its rules would be those of a page around it too */
        ck_assert_ptr_null(strstr(svg, "class="));
        for (int k = 0; k < drawing.stroke_count; k++) {
            at = next_of(at);
            check_stroke(at, drawing.strokes + k, k);
        }
        for (at = strstr(at, "<text"); at; at = strstr(at + 1, "<text"), texts++) {
            const tside_dimension *d = drawing.dimensions + texts;
            const tside_note *note = drawing.notes + texts - drawing.dimension_count;
            const int is_dimension = texts < drawing.dimension_count;
            NEAR(number_of(at, "x"), across(is_dimension ? d->text_x : note->text_x), 1e-3, "x", texts);
            NEAR(number_of(at, "y"), down(is_dimension ? d->text_y : note->text_y), 1e-3, "y", texts);
            NEAR(number_of(at, "textLength"),
                 (is_dimension ? d->text_width : note->text_width) * 1000 / drawing.picture.scale, 1e-3, "width",
                 texts);
        }
        ck_assert_int_eq(texts, drawing.dimension_count + drawing.note_count);
    }
}
END_TEST

/* --- what is told --- */

/* The next line drawn is from one place to another, or the next arrowhead's point is at one and looks along. */
static void is_line(const char **at, double x, double y, double x_end, double y_end, const char *what, int number)
{
    *at = next_of(*at);
    ck_assert_msg(!strncmp(*at, "<line", 5), "%s %d: %.60s", what, number, *at);
    NEAR(number_of(*at, "x1"), across(x), 1e-3, what, number);
    NEAR(number_of(*at, "y1"), down(y), 1e-3, what, number);
    NEAR(number_of(*at, "x2"), across(x_end), 1e-3, what, number);
    NEAR(number_of(*at, "y2"), down(y_end), 1e-3, what, number);
}

/* 3 mm long and 1 mm wide. */
static void is_arrow(const char **at, double x, double y, double ux, double uy, int number)
{
    double place[6];
    *at = next_of(*at);
    ck_assert_int_eq(sscanf(*at, "<path fill=\"#000\" stroke=\"none\" d=\"M%lf %lfL%lf %lfL%lf %lfz\"/>", place,
                            place + 1, place + 2, place + 3, place + 4, place + 5),
                     6);
    NEAR(place[0], across(x), 1e-3, "arrow's point", number);
    NEAR(place[1], down(y), 1e-3, "arrow's point", number);
    NEAR(hypot(place[4] - place[2], place[5] - place[3]), 1, 2e-3, "arrow's width", number);
    NEAR(place[0] - (place[2] + place[4]) / 2, 3 * ux, 2e-3, "arrow's length", number);
    NEAR(place[1] - (place[3] + place[5]) / 2, -3 * uy, 2e-3, "arrow's length", number);
    NEAR((place[4] - place[2]) * ux - (place[5] - place[3]) * uy, 0, 3e-3, "arrow's back is square", number);
}

/* Where a point's perpendicular meets a dimension's line; where that is far, it is led there, with 1 and 1.5 mm over.
 */
static void is_led(const char **at, const tside_dimension *d, double x, double y, double foot[2], int number)
{
    const double mm = drawing.picture.scale / 1000, dx = d->to_x - d->from_x, dy = d->to_y - d->from_y,
                 share = ((x - d->from_x) * dx + (y - d->from_y) * dy) / (dx * dx + dy * dy);
    double away;
    foot[0] = d->from_x + share * dx;
    foot[1] = d->from_y + share * dy;
    away = hypot(foot[0] - x, foot[1] - y);
    if (away > mm) {
        const double ux = (foot[0] - x) / away, uy = (foot[1] - y) / away;
        is_line(at, x + mm * ux, y + mm * uy, foot[0] + 1.5 * mm * ux, foot[1] + 1.5 * mm * uy, "leading line", number);
    }
}

static void check_dimension(const char **at, const tside_dimension *d, int number)
{
    if (d->from_x != d->to_x || d->from_y != d->to_y) {
        double first[2], last[2], length;
        is_line(at, d->from_x, d->from_y, d->to_x, d->to_y, "dimension line", number);
        is_led(at, d, d->x, d->y, first, number);
        is_led(at, d, d->x_end, d->y_end, last, number);
        length = hypot(last[0] - first[0], last[1] - first[1]) * (d->arrows_outside ? -1 : 1);
        if (length > 0 || length < 0) {
            const double ux = (last[0] - first[0]) / length, uy = (last[1] - first[1]) / length;
            is_arrow(at, first[0], first[1], -ux, -uy, number);
            is_arrow(at, last[0], last[1], ux, uy, number);
        }
    }
    if (d->leader)
        is_line(at, (d->from_x + d->to_x) / 2, (d->from_y + d->to_y) / 2, d->leader_x, d->leader_y, "leader", number);
}

/* Every tag is closed, and every element that begins ends, the last begun first. */
static void is_well_formed(void)
{
    const char *open[16];
    int depth = 0;
    for (const char *at = strchr(svg, '<'); at; at = strchr(at + 1, '<')) {
        const char *end = strchr(at, '>');
        ck_assert_ptr_nonnull(end);
        ck_assert_msg(strcspn(at + 1, "<") > (size_t)(end - at), "%.40s is not closed", at);
        if (at[1] == '/') {
            ck_assert_int_gt(depth, 0);
            depth--;
            ck_assert_msg(!strncmp(open[depth] + 1, at + 2, strcspn(at + 2, ">")), "%.40s ends %.40s", at, open[depth]);
        } else if (end[-1] != '/') {
            ck_assert_int_lt(depth, 16);
            open[depth++] = at;
        }
    }
    ck_assert_int_eq(depth, 0);
}

static void check_told(void)
{
    const char *at;
    write_svg("told");
    is_well_formed();
    at = strstr(svg, "<g fill=\"none\"");
    for (int k = 0; k < drawing.stroke_count; k++)
        at = next_of(at);
    for (int k = 0; k < drawing.dimension_count; k++)
        check_dimension(&at, drawing.dimensions + k, k);
    for (int k = 0; k < drawing.note_count; k++) {
        const tside_note *note = drawing.notes + k;
        if (note->x != note->to_x || note->y != note->to_y)
            is_line(&at, note->x, note->y, note->to_x, note->to_y, "note's leader", k);
    }
    ck_assert(!strncmp(next_of(at), "</g>", 4));
}

/* After the strokes: dimensions with their leading lines and arrowheads, then the leaders of notes, and no more. */
START_TEST(what_is_told_has_its_lines)
{
    static const struct {
        tside_view view;
        double scale;
    } views[] = {{TSIDE_VIEW_END_WALL, 20}, {TSIDE_VIEW_END_WALL, 5},  {TSIDE_VIEW_CORNER, 5},
                 {TSIDE_VIEW_EXTENDER, 10}, {TSIDE_VIEW_ALONG, 200},   {TSIDE_VIEW_ALONG, 20},
                 {TSIDE_VIEW_ROLL_OPEN, 2}, {TSIDE_VIEW_ROLL_SHUT, 5}, {TSIDE_VIEW_TURNS, 1}};
    const tside_side side = plain();
    const tside_plan plan = planned(&side);
    for (size_t i = 0; i < sizeof views / sizeof *views; i++) {
        const tside_picture picture = {.view = views[i].view, .tape = TSIDE_TAPE_INCH, .scale = views[i].scale};
        tside_fault fault;
        ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
        check_told();
        drawing.dimensions[0].x_end = drawing.dimensions[0].x; /* of nothing, though it has a line: no arrowheads */
        drawing.dimensions[0].y_end = drawing.dimensions[0].y;
        check_told();
    }
}
END_TEST

/* Texts of measures, in their order, are turned about their feet by as many degrees as their lines rise; level ones
 * not. */
START_TEST(texts_lie_as_their_lines_do)
{
    int turned = 0, level = 0;
    const char *at;
    draw_plain(20);
    write_svg("turned");
    at = strstr(svg, "<text");
    for (int i = 0; i < drawing.dimension_count; i++, at = strstr(at + 1, "<text")) {
        const tside_dimension *d = drawing.dimensions + i;
        const char *turn = strstr(at, "rotate(");
        double degrees, x, y, text_x, text_y;
        if (d->text_angle == 0) {
            ck_assert(!turn || turn > strchr(at, '>'));
            level++;
            continue;
        }
        ck_assert(turn && turn < strchr(at, '>'));
        ck_assert_int_eq(sscanf(turn, "rotate(%lf %lf %lf)", &degrees, &x, &y), 3);
        ck_assert_int_eq(sscanf(at, "<text x=\"%lf\" y=\"%lf\"", &text_x, &text_y), 2);
        NEAR(degrees, -d->text_angle * 180 / PI, 1e-2, "turned", i);
        ck_assert(x == text_x && y == text_y);
        turned++;
    }
    ck_assert_int_gt(turned, 2);
    ck_assert_int_gt(level, 2);
}
END_TEST

/* What rounds to nought has no sign; an arc of more than half a turn takes the long way round. */
START_TEST(numbers_and_arcs_are_written_as_they_are_read)
{
    draw_plain(20);
    drawing.left = drawing.bottom = 0;
    drawing.right = drawing.top = 1;
    drawing.strokes[0] = (tside_stroke){.x = -1e-7, .y = 1, .x_end = 0.2, .y_end = 1 + 1e-7};
    drawing.strokes[1] = (tside_stroke){.arc = 1, .x = 0.5, .y = 0.5, .radius = 0.1, .sweep = PI + 0.1};
    drawing.strokes[2] = (tside_stroke){.arc = 1, .x = 0.5, .y = 0.5, .radius = 0.1, .sweep = PI - 0.1};
    write_svg("written");
    drawing.top = 0.75;
    write_svg("written");
    ck_assert_ptr_nonnull(strstr(svg, " width=\"50mm\" height=\"37.5mm\" viewBox=\"0 0 50 37.5\">"));
    drawing.top = 1;
    write_svg("written");
    ck_assert(!strstr(svg, "\"-0\"") && !strstr(svg, " -0 "));
    ck_assert_ptr_nonnull(strstr(svg, "5 0 1 0 "));
    ck_assert_ptr_nonnull(strstr(svg, "5 0 0 0 "));
}
END_TEST

/* --- buffers --- */

/* It would vanish as an arc, whose ends are written alike. */
START_TEST(all_but_a_circle_is_written_as_one)
{
    static const double gaps[] = {0, 1e-12, 1e-8, 1e-6};
    draw_plain(20);
    for (size_t i = 0; i < sizeof gaps / sizeof *gaps; i++) {
        drawing.strokes[0] = (tside_stroke){.arc = 1, .radius = 0.02, .from = 1, .sweep = 2 * PI - gaps[i]};
        write_svg("all but a circle");
        ck_assert(!strncmp(next_of(strstr(svg, "<g fill=\"none\"")), "<circle", 7));
    }
}
END_TEST

START_TEST(no_byte_is_written_beyond_a_buffer_or_into_one_too_small)
{
    size_t needed = 0;
    tside_fault fault;
    draw_plain(20);
    ck_assert_int_eq(tside_drawing_svg(&drawing, "plain", NULL, 0, &needed, &fault), TSIDE_TOO_SMALL);
    ck_assert(fault.value == 0 && fault.bound == (double)needed);
    ck_assert_uint_lt(needed + 2, sizeof svg);
    memset(svg, 'x', sizeof svg);
    ck_assert_int_eq(tside_drawing_svg(&drawing, "plain", svg, needed, NULL, &fault), TSIDE_TOO_SMALL);
    ck_assert_str_eq(fault.field, "size");
    for (size_t i = 0; i <= needed + 1; i++)
        ck_assert(svg[i] == 'x');
    ANSWERS(tside_drawing_svg(&drawing, "plain", svg, needed + 1, NULL, &fault));
    ck_assert_uint_eq(strlen(svg), needed);
    ck_assert(svg[needed + 1] == 'x');
}
END_TEST

/* --- what is no drawing --- */

#define NO_DRAWING(change, name) \
    do { \
        tside_fault fault; \
        draw_plain(20); \
        change; \
        svg[0] = 'x'; \
        ck_assert_int_eq(tside_drawing_svg(&drawing, "", svg, sizeof svg, NULL, &fault), TSIDE_OUT_OF_BOUNDS); \
        ck_assert_str_eq(fault.field, name); \
        ck_assert(svg[0] == 'x'); \
    } while (0)

START_TEST(what_is_no_drawing_is_refused)
{
    NO_DRAWING(drawing.stroke_count = TSIDE_STROKES + 1, "drawing.strokes");
    NO_DRAWING(drawing.stroke_count = -1, "drawing.strokes");
    NO_DRAWING(drawing.dimension_count = TSIDE_DIMENSIONS + 1, "drawing.dimensions");
    NO_DRAWING(drawing.note_count = TSIDE_NOTES + 1, "drawing.notes");
    NO_DRAWING(drawing.strokes[3].x_end = HUGE_VAL, "drawing.strokes[3].x_end");
    NO_DRAWING(drawing.strokes[3].x = 1e16, "drawing.strokes[3].x"); /* more thousandths than a whole number holds */
    NO_DRAWING(drawing.strokes[3].y = -1.0001e5, "drawing.strokes[3].y");
    NO_DRAWING(drawing.strokes[3].line = (tside_line_type)9, "drawing.strokes[3].line");
    NO_DRAWING(drawing.dimensions[2].tells = TSIDE_TELLS_COUNT, "drawing.dimensions[2].tells");
    NO_DRAWING(drawing.dimensions[2].text_width = NAN, "drawing.dimensions[2].text_width");
    NO_DRAWING(drawing.notes[1].part = TSIDE_PART_CODES, "drawing.notes[1].part");
    NO_DRAWING(drawing.left = NAN, "drawing.left");
    NO_DRAWING(drawing.picture.scale = 0, "drawing.picture.scale");
    NO_DRAWING(drawing.dimensions[0].value = 1e9, "drawing.dimensions[0].value");
    NO_DRAWING(drawing.dimensions[0].value = -1e9, "drawing.dimensions[0].value");
}
END_TEST

/* --- what stands on either side --- */

START_TEST(where_outboard_is_is_told)
{
    draw_plain(20);
    drawing.outboard = 1;
    write_svg("");
    ck_assert(strstr(svg, "; outboard is to the right. ") && !strstr(svg, "to the left"));
    drawing.outboard = -1;
    write_svg("");
    ck_assert(strstr(svg, "; outboard is to the left. ") && !strstr(svg, "to the right"));
    drawing.outboard = 0;
    write_svg("");
    ck_assert(strstr(svg, "<desc>") && !strstr(svg, "outboard is"));
}
END_TEST

static int arrows(void)
{
    int count = 0;
    write_svg("");
    for (const char *at = svg; (at = strstr(at, "<path fill=\"#000\" stroke=\"none\"")) != NULL; at++)
        count++;
    return count;
}

/* An arrow has no direction where its points are one. */
START_TEST(a_dimension_of_no_length_has_no_arrows)
{
    int all, tried = 0;
    draw_plain(20);
    all = arrows();
    for (int i = 0; i < drawing.dimension_count; i++) {
        const tside_dimension as_drawn = drawing.dimensions[i];
        tside_dimension *d = drawing.dimensions + i;
        if (d->kind != TSIDE_DIMENSION_LEVEL && d->kind != TSIDE_DIMENSION_PLUMB)
            continue;
        d->x_end = d->x;
        d->y_end = d->y;
        ck_assert_int_eq(arrows(), all - 2);
        ck_assert(!strstr(svg, "nan") && !strstr(svg, "inf"));
        *d = as_drawn;
        tried++;
    }
    ck_assert_int_gt(tried, 2);
}
END_TEST

Suite *svg_suite(void)
{
    Suite *suite = suite_create("svg");
    TCase *tests = tcase_create("svg");
    tcase_add_test(tests, a_title_stays_text);
    tcase_add_test(tests, places_on_paper_are_those_of_the_strokes);
    tcase_add_test(tests, what_is_told_has_its_lines);
    tcase_add_test(tests, numbers_and_arcs_are_written_as_they_are_read);
    tcase_add_test(tests, texts_lie_as_their_lines_do);
    tcase_add_test(tests, all_but_a_circle_is_written_as_one);
    tcase_add_test(tests, no_byte_is_written_beyond_a_buffer_or_into_one_too_small);
    tcase_add_test(tests, what_is_no_drawing_is_refused);
    tcase_add_test(tests, where_outboard_is_is_told);
    tcase_add_test(tests, a_dimension_of_no_length_has_no_arrows);
    suite_add_tcase(suite, tests);
    return suite;
}
