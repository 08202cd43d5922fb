/* SPDX-License-Identifier: MIT */
/* What JavaScript calls, and what the files of the page share. */
#ifndef PAGE_CORE_H
#define PAGE_CORE_H

#include "job.h"
#include "text.h"

#define SHOWN __attribute__((visibility("default")))

/* A side of those that were planned last, or NULL where it was refused. */
const planned *side_planned(int place);

/* All of them. */
const work *work_planned(void);

/* What was said of faults since it was last cut. */
text *said(void);

#endif
