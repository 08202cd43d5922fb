/* SPDX-License-Identifier: MIT */
/* When a caller is asked whether his search may go on: every millisecond or so. */
#include "cutting/effort.h"

enum { BETWEEN = 1 << 19 }; /* steps from one question to the next */

void tside_i_effort_ask(tside_i_effort *effort)
{
    effort->next = effort->steps + BETWEEN;
    if (effort->go_on && !effort->stopped)
        effort->stopped = !effort->go_on(effort->context);
}
