/* SPDX-License-Identifier: MIT */
/*
 * Preloaded before a program by check_faults.sh, for the GNU C library: the allocation of number FAIL_AT fails, or the
 * call that FAULT_AT names fails with the error FAULT_ERROR, or a signal FAULT_SIGNAL comes within it, which the
 * program inherits as ignored where FAULT_IGNORED is set. COUNT_IN names a file that receives how many allocations
 * there were. What happens after main is not counted and does not fail: there a compiler's counters write what they
 * have.
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
static int over; /* main is */

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
    if (over || ++allocations != fail_at)
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

/* Whether the call is to fail, after the signal that is to come within it. */
static int comes(const char *call)
{
    const char *wanted = getenv("FAULT_AT"), *number = getenv("FAULT_SIGNAL"), *error = getenv("FAULT_ERROR");
    if (!wanted || strcmp(wanted, call))
        return 0;
    if (number)
        raise(atoi(number));
    if (!error)
        return 0;
    errno = atoi(error);
    return 1;
}

/* The C library's function of this name; C has no other way from an object's address to a function's. */
#define REAL(function) *(void **)&real = dlsym(RTLD_NEXT, function)

static int (*begun)(int, char **, char **);

static void finish(void)
{
    over = 1;
}

/* Whose handlers are run before those of the libraries and compilers, which were there first. */
static int begin_main(int count, char **arguments, char **environment)
{
    atexit(finish);
    return begun(count, arguments, environment);
}

int __libc_start_main(int (*program)(int, char **, char **), int count, char **arguments, void (*init)(void),
                      void (*fini)(void), void (*loader_fini)(void), void *stack_end)
{
    int (*real)(int (*)(int, char **, char **), int, char **, void (*)(void), void (*)(void), void (*)(void), void *);
    REAL("__libc_start_main");
    begun = program;
    return real(begin_main, count, arguments, init, fini, loader_fini, stack_end);
}

int mkstemp(char *name)
{
    int (*real)(char *);
    REAL("mkstemp");
    return comes("mkstemp") ? -1 : real(name);
}

ssize_t write(int file, const void *bytes, size_t count)
{
    ssize_t (*real)(int, const void *, size_t);
    REAL("write");
    return file != STDERR_FILENO && comes("write") ? -1 : real(file, bytes, count);
}

int rename(const char *from, const char *to)
{
    int (*real)(const char *, const char *);
    REAL("rename");
    return comes("rename") ? -1 : real(from, to);
}

/* It is closed nevertheless, as POSIX leaves open and Linux does. */
int close(int file)
{
    int (*real)(int), got;
    REAL("close");
    got = real(file);
    return comes("close") ? -1 : got;
}
