/* SPDX-License-Identifier: MIT */
/*
 * Preloaded before a program by check_faults.sh, for the GNU C library: the allocation of number FAIL_AT fails, or a
 * signal FAULT_SIGNAL comes within the call that FAULT_AT names, which the program inherits as ignored where
 * FAULT_IGNORED is set. COUNT_IN names a file that receives how many allocations there were.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* The C library's own, under its other names. */
void *__libc_malloc(size_t size);
void *__libc_calloc(size_t count, size_t size);
void *__libc_realloc(void *memory, size_t size);

static long allocations, fail_at;

__attribute__((constructor)) static void begin(void)
{
    const char *number = getenv("FAIL_AT"), *fault = getenv("FAULT_SIGNAL");
    fail_at = number ? atol(number) : 0;
    /* however the tests were started: a shell without job control starts what runs behind with some signals ignored */
    if (fault)
        signal(atoi(fault), getenv("FAULT_IGNORED") ? SIG_IGN : SIG_DFL);
}

__attribute__((destructor)) static void end(void)
{
    char digits[24];
    const char *name = getenv("COUNT_IN");
    const int file = name ? open(name, O_WRONLY | O_CREAT | O_TRUNC, 0600) : -1;
    if (file >= 0 && write(file, digits, (size_t)snprintf(digits, sizeof digits, "%ld\n", allocations)) > 0)
        close(file);
}

static int fails(void)
{
    if (++allocations != fail_at)
        return 0;
    errno = ENOMEM;
    return 1;
}

void *malloc(size_t size)
{
    return fails() ? NULL : __libc_malloc(size);
}

void *calloc(size_t count, size_t size)
{
    return fails() ? NULL : __libc_calloc(count, size);
}

void *realloc(void *memory, size_t size)
{
    return fails() ? NULL : __libc_realloc(memory, size);
}

static void come(const char *call)
{
    const char *wanted = getenv("FAULT_AT"), *number = getenv("FAULT_SIGNAL");
    if (wanted && number && !strcmp(wanted, call))
        raise(atoi(number));
}

int mkstemp(char *name)
{
    int (*real)(char *);
    int file;
    *(void **)&real = dlsym(RTLD_NEXT, "mkstemp");
    file = real(name);
    come("mkstemp");
    return file;
}

ssize_t write(int file, const void *bytes, size_t count)
{
    ssize_t (*real)(int, const void *, size_t);
    *(void **)&real = dlsym(RTLD_NEXT, "write");
    come("write");
    return real(file, bytes, count);
}

int rename(const char *from, const char *to)
{
    int (*real)(const char *, const char *);
    *(void **)&real = dlsym(RTLD_NEXT, "rename");
    come("rename");
    return real(from, to);
}
