#!/bin/sh
# SPDX-License-Identifier: MIT
# The one reader of the public headers refuses what a comment or a declaration may not be; and every public function is called by a test.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
printf '#include <tunnelside/roll.h>\n' > "$work/tunnelside.h"

# reads: the records of a header with what stands on standard input at its end.
reads() {
    cat "$top_srcdir/include/tunnelside/roll.h" - > "$work/roll.h"
    sh "$top_srcdir/include/headers2records" "$work/tunnelside.h" "$work/roll.h" > "$work/records" 2> "$work/said"
}

# refused WORDS: what stands on standard input is refused, and with these words alone.
refused() {
    if reads; then
        echo "not refused: $1"
        exit 1
    elif ! grep -qF "$1" "$work/said" || test "$(wc -l < "$work/said")" != 1; then
        echo "refused, but not with these words alone: $1"
        sed 's/^/    /' "$work/said"
        exit 1
    fi
}

# says ITEMS: a function with this comment, all else as it should be.
says() {
    printf '/*\n%s\n */\nTSIDE_API TSIDE_NODISCARD tside_status tside_roll_x(const tside_roll *roll, double wraps, int k, double *length, tside_fault *fault);\n' "$1"
}

good=' * What it gives.
 * roll: every field checked.
 * wraps: turn, from 0 to 1000.
 * k: from 1.
 * length: receives m.
 * TSIDE_OUT_OF_BOUNDS: an argument.
 * Accuracy: to 1e-15 m.
 * Source: derivation.'
without() { says "$(echo "$good" | grep -v "$1")"; }
added() { says "$(echo "$good" | awk -v after="$1" -v line=" * $2" '{ print } index($0, after) { print line }')"; }
with() { says "$(echo "$good" | sed "s%$1%$2%")"; }

with x x | reads || { echo "what is as it should be is refused"; cat "$work/said"; exit 1; }
grep -q "^argument	tside_roll_x	wraps	double	in	one		turn	from 0 to 1000	" "$work/records" || { echo "no record of an argument"; exit 1; }

without 'What it gives' | refused "no comment says what it gives"
without roll: | refused "roll: not a word about it"
without length: | refused "length: not a word about it"
without TSIDE_ | refused "no status that it can return"
without Accuracy | refused "no 'Accuracy:' of the numbers that it gives"
says "$(echo "$good" | grep -v Accuracy)" | sed 's/double \*length/tside_roll *length/; s/receives m\./receives it./' | refused "no 'Accuracy:' of the numbers that it gives"
without Source | refused "no 'Source:'"
with 'turn, from 0 to 1000' 'from 0 to 1000' | refused "wraps: no unit"
with 'turn, from 0 to 1000' 'turn, counted' | refused "wraps: no range"
with 'k: from 1' 'k: which one' | refused "k: no range"
with 'receives m' 'metres' | refused "length: is a result: 'receives ...'"
with 'receives m' 'receives metres' | refused "length: no unit"
with 'every field checked' 'the roll' | refused "roll: 'every field checked', 'made by ...'"
with 'every field checked' 'any, or NULL' | refused "roll: it may be NULL: 'optional, ...'"
with TSIDE_OUT_OF_BOUNDS TSIDE_CONTRADICTS | refused "TSIDE_OUT_OF_BOUNDS is not said"
added k: 'j: from 1.' | refused "'j:' is no argument"
added k: 'wraps: turn, from 1.' | refused "wraps stands twice"
added What 'TSIDE_CONTRADICTS: two.' | refused "'roll' stands after 'TSIDE_CONTRADICTS'"
printf '/*\n * One.\n * TSIDE_NOT_FOUND: never.\n * Source: derivation.\n */\nTSIDE_API tside_status tside_roll_x(void);\n' | refused "tside_roll_x: TSIDE_NODISCARD stands at what returns a status"
printf '/*\n * One.\n * Returns 1.\n * Source: derivation.\n */\nTSIDE_API TSIDE_NODISCARD int tside_roll_x(void);\n' | refused "and nowhere else"
echo 'tside_status tside_roll_x(void);' | refused "neither function with TSIDE_API"
printf '/*\n * One.\n * Returns 1.\n * Source: derivation.\n */\nTSIDE_API int roll_x(void);\n' | refused "roll_x: a name without our prefix"
printf '/*\n * One.\n * Source: derivation.\n */\nTSIDE_API int tside_roll_x(void);\n' | refused "no 'Returns ...'"
echo 'typedef enum tside_roll_x { ROLL_X } tside_roll_x;' | refused "a name without our prefix: ROLL_X"
echo 'typedef struct roll_x { int x; } roll_x;' | refused "roll_x: a name without our prefix"
echo '#define ROLL_X 1' | refused "a macro without our prefix"
printf 'typedef struct tside_roll_x {\n    double x; /* wide */\n} tside_roll_x;\n' | refused "x: its comment begins with no unit"
printf 'typedef struct tside_roll_x {\n    double x; /* m; given with y */\n} tside_roll_x;\n' | refused "x: there is no y_given"

# The tests without their comments, a word before a parenthesis on each line.
cd "$top_srcdir"
cat tests/test_*.c tests/calls.c tests/*/test_*.c | awk '
    { text = $0; while (match(text, /\/\*([^*]|\*[^\/])*\*\//)) text = substr(text, 1, RSTART - 1) " " substr(text, RSTART + RLENGTH); print text }' |
    grep -o '[a-z0-9_]* *(' | tr -d ' (' | sort -u > "$work/called"
awk -F '\t' '$1 == "function" { print $3 }' "$RECORDS" | sort -u > "$work/declared"
comm -13 "$work/called" "$work/declared" > "$work/untested"
test -s "$work/declared" || { echo "no functions found in $RECORDS"; exit 1; }
if test -s "$work/untested"; then
    echo "public functions that no test calls:"
    sed 's/^/    /' "$work/untested"
    exit 1
fi
echo "faults refused; $(wc -l < "$work/declared" | tr -d ' ') functions, each called by a test"
