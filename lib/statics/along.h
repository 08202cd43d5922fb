/* SPDX-License-Identifier: MIT */
/* Places along the house as the library's own files see them: unchecked, and refused by the caller's own names. */
#ifndef TUNNELSIDE_I_ALONG
#define TUNNELSIDE_I_ALONG

#include <tunnelside/along.h>

#include "shape/peak.h"

/* What the fields are called by whoever asks: "along.past", or a side's "curtain.past". */
typedef struct tside_i_along_names {
    const char *past, *stand_off, *eye_past, *run_on;
} tside_i_along_names;

/* All places, of one that passed its check. */
void tside_i_along_stand(const tside_along *along, tside_stand *stand);
/* Refuses a drive or collar over the curtain's edge, with what would mend it. */
tside_status tside_i_along_refuse(const tside_along *along, const tside_stand *stand, const tside_i_along_names *names,
                                  tside_fault *fault);
/* A guide's lean and sweep along the house. */
tside_skew tside_i_skew(const tside_i_track *track, const tside_hang *hang);

#endif
