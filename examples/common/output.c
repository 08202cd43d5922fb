/* SPDX-License-Identifier: MIT */
#include "on_windows.h" /* first: it stands in for what the headers below lack there */

#define _XOPEN_SOURCE 700
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "message.h"
#include "output.h"

static int fail(const char *name, int why)
{
    say("%s: cannot be written: %s", name, strerror(why));
    return 0;
}

/* Writes and closes; returns 0, or what went wrong. */
static int write_all(int handle, const text *everything)
{
    int why = 0;
    for (size_t done = 0; !why && done < everything->length;) {
        const ssize_t count = write(handle, everything->data + done, everything->length - done);
        if (count > 0)
            done += (size_t)count;
        else if (!count || errno != EINTR)
            why = count ? errno : EIO;
    }
    if (close(handle) && !why)
        why = errno;
    return why;
}

/* A device or a pipe cannot be renamed over: it is written to as it is. */
static int is_special(const char *name)
{
    struct stat status;
    return !stat(name, &status) && !S_ISREG(status.st_mode) && !S_ISDIR(status.st_mode);
}

static mode_t mode_for(const char *name)
{
    struct stat status;
    const mode_t mask = umask(0);
    umask(mask);
    return stat(name, &status) ? 0666 & ~mask : status.st_mode & 0777;
}

/* Cuts a path to its folder, with the slash. */
static void cut_to_folder(text *path)
{
    const char *slash = strrchr(text_of(path), '/');
    text_cut(path, slash ? (size_t)(slash + 1 - path->data) : 0);
}

/* Through links to what they name, be it there or not; returns 0, or what went wrong. */
static int follow_links(text *path)
{
    enum { MOST_LINKS = 40, LONGEST = 4096 };
    char target[LONGEST];
    for (int i = 0; i < MOST_LINKS; i++) {
        const ssize_t length = readlink(text_of(path), target, sizeof target);
        if (length < 0)
            return errno == EINVAL || errno == ENOENT ? 0 : errno; /* no link; nothing yet */
        if (length == LONGEST)
            return ENAMETOOLONG;
        if (*target == '/')
            text_cut(path, 0);
        else
            cut_to_folder(path);
        text_add_bytes(path, target, (size_t)length);
    }
    return ELOOP;
}

/*
 * Writes beside the file, under a short name so that none becomes too long, and renames: a reader sees the old file or
 * the whole new one.
 */
static int write_aside(const text *everything, const char *name)
{
    text aside = {NULL, 0, 0};
    int handle, why = 0;
    text_add(&aside, "%s", name);
    cut_to_folder(&aside);
    text_add(&aside, ".tunnelside-XXXXXX");
    handle = mkstemp(aside.data);
    if (handle < 0) {
        why = errno;
    } else {
        fchmod(handle, mode_for(name));
        why = write_all(handle, everything);
        if (!why && rename(aside.data, name))
            why = errno;
        if (why)
            unlink(aside.data);
    }
    text_free(&aside);
    return why;
}

/* A signal waits until the file is renamed or gone, and then ends the program as it always would. */
static int replace(const text *everything, const char *name)
{
    text path = {NULL, 0, 0};
    sigset_t all, before;
    int why;
    text_add(&path, "%s", name);
    why = follow_links(&path);
    sigfillset(&all);
    sigprocmask(SIG_BLOCK, &all, &before);
    if (!why)
        why = write_aside(everything, text_of(&path));
    sigprocmask(SIG_SETMASK, &before, NULL);
    text_free(&path);
    return why;
}

static int write_special(const text *everything, const char *name)
{
    const int handle = open(name, O_WRONLY);
    return handle < 0 ? errno : write_all(handle, everything);
}

int write_output(const text *everything, const char *name)
{
    const int why = !name              ? write_all(STDOUT_FILENO, everything)
                    : is_special(name) ? write_special(everything, name)
                                       : replace(everything, name);
    return why ? fail(name ? name : "standard output", why) : 1;
}

int is_same_file(const char *output, const char *input)
{
    struct stat written, read;
    return !stat(output, &written) && S_ISREG(written.st_mode) &&
           !(strcmp(input, "-") ? stat(input, &read) : fstat(STDIN_FILENO, &read)) && written.st_dev == read.st_dev &&
           written.st_ino && written.st_ino == read.st_ino;
}
