#!/bin/sh
# SPDX-License-Identifier: MIT
# The library compiles with the flags of this build, and not where its results would be wrong: with doubles in wide registers, or without NaN.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
tried=

compiles() {
    $CC $LIBRARY_CFLAGS $CFLAGS "$@" -I"$top_srcdir/include" -Iinclude -I"$top_srcdir/lib" -c -o "$work/tube.o" "$top_srcdir/lib/parts/tube.c" 2> "$work/log"
}
compiles || { cat "$work/log"; exit 1; }
echo 'int main(void) { return 0; }' > "$work/probe.c"
# refuses FLAG WORD: with a flag that the compiler takes, the library says why it does not compile.
refuses() {
    $CC $CFLAGS -Werror "$1" -c -o "$work/probe.o" "$work/probe.c" 2> /dev/null || return 0
    tried="$tried $1"
    ! compiles "$1" || { echo "compiles with $1"; failed=1; return 0; }
    grep -q "$2" "$work/log" || { echo "with $1 it says nothing of $2"; cat "$work/log"; failed=1; }
}
refuses -mfpmath=387 wider
refuses -ffast-math NaN
refuses -ffinite-math-only NaN

test $failed = 0 || exit 1
echo "does not compile with${tried:- (this compiler takes no such flag)}"
