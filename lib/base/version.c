/* SPDX-License-Identifier: MIT */
#include <tunnelside/version.h>

const char *tside_version(void)
{
    return TSIDE_VERSION;
}
