/* SPDX-License-Identifier: MIT */
/* A finding: put on a plan's list, and told in words. */
#include "side/remark.h"

#include <string.h>

#include "base/number.h"

void tside_i_remark(tside_plan *plan, tside_finding_code code, tside_which_end end, int index, double value,
                    double bound)
{
    if (plan->finding_count < TSIDE_FINDINGS)
        plan->findings[plan->finding_count++] = (tside_finding){code, end, index, value, bound};
}

void tside_i_remark_whole(tside_plan *plan, tside_finding_code code, double value, double bound)
{
    tside_i_remark(plan, code, TSIDE_DRIVE_END, -1, value, bound);
}

void tside_i_hold(tside_plan *plan, tside_finding_code code, double value, int bound_given, double bound)
{
    if (bound_given && value > bound)
        tside_i_remark_whole(plan, code, value, bound);
}

/* --- in words --- */

enum { KNOWN, STOPS };

static const struct {
    const char *unit, *mends, *sentence;
    int stops;
} findings[TSIDE_FINDING_CODES] = {
#define FINDING(code, name, unit, stops, mends, sentence) [TSIDE_FINDING_##code] = {unit, mends, sentence, stops},
    TSIDE_FINDING_LIST(FINDING)
#undef FINDING
};

static int is_code(int code)
{
    return code >= 0 && code < TSIDE_FINDING_CODES;
}

int tside_finding_stops(int code)
{
    return is_code(code) && findings[code].stops;
}

const char *tside_finding_unit(int code)
{
    return is_code(code) ? findings[code].unit : "1";
}

const char *tside_finding_sentence(int code)
{
    return is_code(code) ? findings[code].sentence : "";
}

const char *tside_finding_mends(int code)
{
    return is_code(code) ? findings[code].mends : "";
}

static void put_with_unit(tside_i_text *text, double value, const char *unit)
{
    tside_i_put_number(text, value);
    if (strcmp(unit, "1") == 0)
        return;
    tside_i_put_character(text, ' ');
    tside_i_put(text, strcmp(unit, "turn") == 0 ? "turns" : unit);
}

size_t tside_finding_text(const tside_finding *finding, char *buffer, size_t size)
{
    static const char value[] = "{value}", bound[] = "{bound}";
    tside_i_text text = tside_i_empty(buffer, size);
    int code = (int)finding->code;
    if (!is_code(code))
        return 0;
    for (const char *at = findings[code].sentence; *at;) {
        if (!strncmp(at, value, sizeof value - 1)) {
            put_with_unit(&text, finding->value, findings[code].unit);
            at += sizeof value - 1;
        } else if (!strncmp(at, bound, sizeof bound - 1)) {
            put_with_unit(&text, finding->bound, findings[code].unit);
            at += sizeof bound - 1;
        } else
            tside_i_put_character(&text, *at++);
    }
    return text.length;
}
