#!/bin/sh
# SPDX-License-Identifier: MIT
# Instructions of a full plan and of all drawings of a side, which unlike their time hang on nothing else that the machine does: what callgrind counts in
# eleven of them, less what it counts in one. Fails where one takes more than it may; says so where valgrind is not installed, or the processor is one for which nobody has counted.
set -eu

command -v valgrind > /dev/null || { echo "instructions not counted: valgrind is not installed"; exit 0; }
test "$(uname -m)" = x86_64 || { echo "instructions not counted: what they may take is known for x86_64 alone"; exit 0; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0

# collected WHAT SIDE TIMES
collected() {
    ./libtool --mode=execute valgrind --tool=callgrind --callgrind-out-file="$work/out" tests/bench_instructions "$@" 2> "$work/log" ||
        { cat "$work/log" >&2; return 1; }
    sed -n 's/.*Collected : \([0-9][0-9]*\).*/\1/p' "$work/log"
}

# counts WHAT SIDE NAME MOST: in thousands.
counts() {
    one=$(collected "$1" "$2" 1)
    eleven=$(collected "$1" "$2" 11)
    each=$(((eleven - one) / 10))
    echo "$3: $each instructions (at most $4 thousand)"
    test $each -gt 0 && test $each -le ${4}000 || failed=1
}
counts plan 0 "one full plan, plumb" 78
counts plan 1 "one full plan, leaning" 220
# how many steps the search for its clearance takes hangs on last digits: with legs longer by some 1e-13 m it is 220 to 248
counts plan 2 "one full plan, kinked" 240
counts draw 0 "all views of a side, plumb" 2050
counts draw 1 "all views of a side, leaning" 2550
counts draw 2 "all views of a side, kinked" 2400
test $failed = 0 || { echo "something takes more than it may, or nothing was counted"; exit 1; }
