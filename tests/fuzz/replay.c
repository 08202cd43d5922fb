/* SPDX-License-Identifier: MIT */
/*
 * Runs one maker over inputs, and over changes of them by a chance that is the same each time: replay CHANGES FILE...
 * A file is an input; one whose name ends with .hex has an input a line, in hexadecimal. Prints how many inputs it was,
 * and the slowest. THREADS of them do all of it at once.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "../threads.h"
#include "fuzz.h"

enum { MOST = 1 << 16, INPUTS = 10000 };

typedef struct input {
    uint8_t *bytes;
    size_t size;
} input;

OWN uint8_t tried[MOST + 1];
static input inputs[INPUTS];
static int input_count;

static void keep(const uint8_t *bytes, size_t size)
{
    input *kept = inputs + input_count;
    kept->bytes = malloc(size + 1);
    if (!kept->bytes || ++input_count == INPUTS)
        exit(2);
    memcpy(kept->bytes, bytes, size);
    kept->size = size;
}

static int digit(int character)
{
    static const char digits[] = "0123456789abcdef";
    const char *at = character > 0 ? strchr(digits, character) : NULL;
    return at ? (int)(at - digits) : -1;
}

static void keep_lines(FILE *file)
{
    size_t size = 0;
    int high = -1, character;
    while ((character = getc(file)) != EOF) {
        int value = digit(character);
        if (character == '\n') {
            keep(tried, size);
            size = 0;
        } else if (value < 0 || size == MOST)
            exit(2);
        else if (high < 0)
            high = value;
        else {
            tried[size++] = (uint8_t)(16 * high + value);
            high = -1;
        }
    }
}

static void keep_file(const char *name)
{
    FILE *file = fopen(name, "rb");
    size_t length = strlen(name);
    if (!file) {
        perror(name);
        exit(2);
    }
    if (length > 4 && !strcmp(name + length - 4, ".hex"))
        keep_lines(file);
    else
        keep(tried, fread(tried, 1, MOST, file));
    fclose(file);
}

static unsigned below(uint64_t *state, unsigned limit)
{
    *state = *state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (unsigned)((*state >> 33) % limit);
}

/* A few of: another byte, a byte more, a stretch less, a stretch twice, the tail of another file. */
static size_t change(uint64_t *chance, const input *kept, const input *other)
{
    size_t made = kept->size;
    memcpy(tried, kept->bytes, made);
    for (unsigned more = 1 + below(chance, 6); more > 0; more--) {
        size_t at = made ? below(chance, (unsigned)made) : 0, length = 1 + below(chance, 8);
        switch (below(chance, 6)) {
        case 0:
        case 1:
            if (made)
                tried[at] = (uint8_t)below(chance, 256);
            break;
        case 2:
            if (made < MOST) {
                memmove(tried + at + 1, tried + at, made - at);
                tried[at] = (uint8_t)below(chance, 256);
                made++;
            }
            break;
        case 3:
            length = length < made - at ? length : made - at;
            memmove(tried + at, tried + at + length, made - at - length);
            made -= length;
            break;
        case 4:
            length = length < made - at ? length : made - at;
            if (made + length <= MOST) {
                memmove(tried + at + length, tried + at, made - at);
                made += length;
            }
            break;
        default:
            if (other->size) {
                size_t from = below(chance, (unsigned)other->size);
                length = other->size - from < MOST - at ? other->size - from : MOST - at;
                memcpy(tried + at, other->bytes + from, length);
                made = at + length;
            }
        }
    }
    return made;
}

OWN double slowest;

/* In memory of its own size, so that a sanitizer sees a step beyond its end. */
static void run(const uint8_t *bytes, size_t size)
{
    uint8_t *own = malloc(size ? size : 1);
    clock_t begun = clock();
    double took;
    if (!own)
        exit(2);
    memcpy(own, bytes, size);
    LLVMFuzzerTestOneInput(own, size);
    took = (double)(clock() - begun) / CLOCKS_PER_SEC;
    slowest = took > slowest ? took : slowest;
    free(own);
}

static long changes;
OWN long ran;

/* Every input, and its changes. */
static void *run_all(void *unused)
{
    uint64_t chance = 20;
    (void)unused;
    for (int i = 0; i < input_count; i++) {
        run(inputs[i].bytes, inputs[i].size);
        for (long k = 0; k < changes; k++)
            run(tried, change(&chance, inputs + i, inputs + below(&chance, (unsigned)input_count)));
        ran += 1 + changes;
    }
    return NULL;
}

int main(int count, char **words)
{
    const char *threads = getenv("THREADS");
    changes = count > 1 ? strtol(words[1], NULL, 10) : 0;
    for (int i = 2; i < count; i++)
        keep_file(words[i]);
    if (!input_count) {
        fprintf(stderr, "replay CHANGES FILE...\n");
        return 2;
    }
    in_threads(threads ? atoi(threads) : 1, run_all);
    printf("%ld inputs, the slowest %.0f ms\n", ran, slowest * 1000);
    return 0;
}
