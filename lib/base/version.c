/* SPDX-License-Identifier: MIT */
/* Which version of the library this is. */
#include <tunnelside/version.h>

const char *tside_version(void)
{
    return TSIDE_VERSION;
}
