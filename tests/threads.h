/* SPDX-License-Identifier: MIT */
/* The same work in several threads at once, for the thread sanitizer; in one where there are no POSIX threads. */
#ifndef TUNNELSIDE_THREADS_H
#define TUNNELSIDE_THREADS_H

#include <stdlib.h>

/* What every thread has of its own. */
#if defined __GNUC__
#define OWN __extension__ static __thread
#else
#define OWN static
#endif

#if defined __unix__
#include <pthread.h>
#endif

static inline void in_threads(int count, void *(*work)(void *))
{
#if defined __unix__
    enum { MOST = 64 };
    pthread_t threads[MOST];
    count = count < MOST ? count : MOST;
    for (int i = 1; i < count; i++)
        if (pthread_create(threads + i, NULL, work, NULL))
            exit(2);
    work(NULL);
    for (int i = 1; i < count; i++)
        pthread_join(threads[i], NULL);
#else
    (void)count;
    work(NULL);
#endif
}

#endif
