/* SPDX-License-Identifier: MIT */
/*
 * What Windows lacks of what the writing of files asks of POSIX. There a file has no modes of owner and group, a link
 * is followed by whoever opens it, a signal comes in a thread of its own and cannot be masked, and rename refuses where
 * a file is there already.
 */
#ifndef ON_WINDOWS_H
#define ON_WINDOWS_H

#ifdef _WIN32
#define WIN32_LEAN_AND_MEAN
#include <errno.h>
#include <io.h>
#include <windows.h>

typedef int sigset_t;
enum { SIG_BLOCK, SIG_SETMASK };

static inline int sigfillset(sigset_t *set)
{
    return *set = 0;
}

static inline int sigprocmask(int how, const sigset_t *set, sigset_t *before)
{
    (void)how, (void)set, (void)before;
    return 0;
}

static inline int fchmod(int handle, int mode)
{
    (void)handle, (void)mode;
    return 0;
}

/* As POSIX answers for what is no link. */
static inline int readlink(const char *path, char *target, size_t size)
{
    (void)path, (void)target, (void)size;
    errno = EINVAL;
    return -1;
}

static inline int rename_over(const char *from, const char *to)
{
    if (MoveFileExA(from, to, MOVEFILE_REPLACE_EXISTING))
        return 0;
    errno = EACCES;
    return -1;
}
#define rename rename_over
#endif

#endif
