/* SPDX-License-Identifier: MIT */
/* Files of sides, as the programs read them: each is planned, or something is said of it. */
#include <string.h>

#include "finite.h"
#include "fuzz.h"
#include "job.h"
#include "programs.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static char name[] = "site.json";
    static char *const names[] = {name};
    work all = {.take_off = 1};
    fuzz_content(data, size);
    work_add_files(&all, 1, names);
    HOLDS(!all.bad || fuzz_said(), "bad, and nothing said");
    HOLDS(all.bad || all.count, "not bad, and no side");
    for (size_t i = 0; i < all.count; i++) {
        const planned *side = all.sides[i];
        if (!is_planned(side)) {
            HOLDS(side->refusals.count, "side %d: neither planned nor refused", (int)i);
            continue;
        }
        HOLDS(!not_finite(TSIDE_KIND_SIDE, (const char *)&side->wanted.side), "side %d asks for what is no number",
              (int)i);
        HOLDS(!not_finite(TSIDE_KIND_PLAN, (const char *)&side->plan), "side %d is no number", (int)i);
    }
    work_free(&all);
    return 0;
}
