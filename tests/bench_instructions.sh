#!/bin/sh
# SPDX-License-Identifier: MIT
# Instructions of a full plan, which unlike its time hang on nothing else that the machine does: what callgrind counts in eleven plans, less what it counts
# in one. Fails where a plan takes more than it may; says so where valgrind is not installed, or the processor is one for which nobody has counted.
set -eu

command -v valgrind > /dev/null || { echo "instructions not counted: valgrind is not installed"; exit 0; }
test "$(uname -m)" = x86_64 || { echo "instructions not counted: what a plan may take is known for x86_64 alone"; exit 0; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0

# collected SIDE TIMES
collected() {
    ./libtool --mode=execute valgrind --tool=callgrind --callgrind-out-file="$work/out" tests/bench_instructions "$@" 2> "$work/log" ||
        { cat "$work/log" >&2; return 1; }
    sed -n 's/.*Collected : \([0-9][0-9]*\).*/\1/p' "$work/log"
}

# counts SIDE NAME MOST: in thousands.
counts() {
    one=$(collected "$1" 1)
    eleven=$(collected "$1" 11)
    each=$(((eleven - one) / 10))
    echo "one full plan, $2: $each instructions (at most $3 thousand)"
    test $each -gt 0 && test $each -le ${3}000 || failed=1
}
counts 0 plumb 80
counts 1 leaning 230
counts 2 kinked 230
test $failed = 0 || { echo "a plan takes more than it may, or nothing was counted"; exit 1; }
