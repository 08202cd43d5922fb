/* SPDX-License-Identifier: MIT */
/* What can hurt: each paper says it, in these words, at the step or beside the picture where it does. */
#ifndef COMMON_CAUTION_H
#define COMMON_CAUTION_H

typedef enum caution {
    CAUTION_HANDS,
    CAUTION_POWER,
    CAUTION_WOUND,
    CAUTION_WIND,
    CAUTION_LADDER,
    CAUTION_BURIED,
    CAUTION_TWO_PEOPLE,
    CAUTION_DRILLING,
    CAUTION_CERTIFICATE,
    CAUTION_WIRING,
    CAUTION_CORD
} caution;

const char *caution_text(caution which);

#endif
