/* SPDX-License-Identifier: MIT */
/* How a search's effort is shared out, and when its caller is asked whether it may go on: every millisecond or so. */
#include "cutting/effort.h"

enum { BETWEEN = 1 << 19 }; /* steps from one question to the next */

int64_t tside_i_effort_narrow(tside_i_effort *effort, int64_t steps)
{
    const int64_t limit = effort->limit;
    if (steps < limit - effort->steps)
        effort->limit = effort->steps + steps;
    return limit;
}

int64_t tside_i_effort_left(const tside_i_effort *effort)
{
    return effort->steps < effort->limit ? effort->limit - effort->steps : 0;
}

void tside_i_effort_ask(tside_i_effort *effort)
{
    effort->next = effort->steps + BETWEEN;
    if (effort->go_on && !effort->stopped)
        effort->stopped = !effort->go_on(effort->context);
}
