/* SPDX-License-Identifier: MIT */
/*
 * What is asked of a side, in the order of one walk: from the drive's end along the side to the free end with its
 * ground. Every form asks these, by these letters.
 */
#ifndef COMMON_QUESTIONS_H
#define COMMON_QUESTIONS_H

typedef struct question {
    const char *path; /* within the side */
    int sixteenths;   /* how closely it is measured, in 1/16 in; 0: counted, chosen, or read off a label */
    int is_usual;     /* 1: asked of every side; 0: where a choice asks for it */
} question;

/* By place in the walk, from 0, and NULL after the last; by path, NULL where it is no question. */
const question *question_at(int i);
const question *question_of(const char *path);

/* Its letter, such as "B" or "AC". */
const char *question_letter(const question *one, char letter[4]);

#endif
