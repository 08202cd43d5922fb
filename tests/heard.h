/* SPDX-License-Identifier: MIT */
/*
 * Which statuses the public functions were heard to return while the tests ran: those that their comments name, no
 * fewer and no more.
 */
#ifndef TUNNELSIDE_HEARD_H
#define TUNNELSIDE_HEARD_H

/* Forgets what was heard before. */
void heard_nothing(void);

/* How many pairs of function and status were not heard though documented, or heard though not; says which. */
int heard_wrong(void);

#endif
