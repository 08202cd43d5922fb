/* SPDX-License-Identifier: MIT */
#include "on_windows.h" /* first: it stands in for what the headers below lack there */

#define _XOPEN_SOURCE 700
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "output.h"

static int fail(const char *name, int why)
{
    fprintf(stderr, "%s: %s: cannot be written: %s\n", program_name, name, strerror(why));
    return 0;
}

/* Writes and closes; returns 0, or what went wrong. */
static int write_all(FILE *file, const text *everything)
{
    int why = 0;
    errno = 0;
    if (everything->length && fwrite(everything->data, 1, everything->length, file) != everything->length)
        why = errno ? errno : EIO;
    if (fclose(file) && !why)
        why = errno ? errno : EIO;
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

/* Writes beside the file and renames; a reader sees the old file or the whole new one. */
static int replace(const text *everything, const char *name)
{
    text aside = {NULL, 0, 0};
    int handle, why;
    FILE *file;
    text_add(&aside, "%s.XXXXXX", name);
    handle = mkstemp(aside.data);
    if (handle < 0) {
        why = errno;
        text_free(&aside);
        return why;
    }
    fchmod(handle, mode_for(name));
    file = fdopen(handle, "wb");
    if (file) {
        why = write_all(file, everything);
    } else {
        why = errno;
        close(handle);
    }
    if (!why && rename(aside.data, name))
        why = errno;
    if (why)
        unlink(aside.data);
    text_free(&aside);
    return why;
}

int write_output(const text *everything, const char *name)
{
    char *real;
    int why;
    if (!name) {
        why = write_all(stdout, everything);
        return why ? fail("standard output", why) : 1;
    }
    if (is_special(name)) {
        FILE *file = fopen(name, "wb");
        why = file ? write_all(file, everything) : errno;
    } else {
        /* through a link to what it names */
        real = realpath(name, NULL);
        why = replace(everything, real ? real : name);
        free(real);
    }
    return why ? fail(name, why) : 1;
}
