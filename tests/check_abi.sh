#!/bin/sh
# SPDX-License-Identifier: MIT
# What callers were compiled with (lib/libtunnelside.abi) is what the headers say, or the soname's number is a new one: no structure grows in silence.
# With --write it writes that file instead: make abi.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
kept=$top_srcdir/lib/libtunnelside.abi

LC_ALL=C $AWK -f "$top_srcdir/lib/records2abi" "$RECORDS" > "$work/abi.c"
# describe [FOLDER]: with the headers of that folder before ours.
describe() {
    $CC $CFLAGS ${1:+-I"$1"} $INCLUDES -o "$work/abi" "$work/abi.c"
    printf 'current\t%s\n' "$LIB_CURRENT"
    "$work/abi"
}
describe > "$work/now"

if test "${1:-}" = --write; then
    cp "$work/now" "$kept"
    exit 0
fi

# A member more is seen.
mkdir -p "$work/grown/tunnelside"
sed 's/^} tside_roll;/    int more;\n&/' "$top_srcdir/include/tunnelside/roll.h" > "$work/grown/tunnelside/roll.h"
describe "$work/grown" > "$work/grown/now"
diff "$work/now" "$work/grown/now" | grep -q '^> struct	tside_roll	' || { echo "a structure that grew was not seen"; exit 1; }

said() { awk -F '\t' -v what="$1" '$1 == what { print $2 }' "$2"; }
if test "$(said machine "$work/now")" != "$(said machine "$kept")"; then
    echo "SKIPPED: $kept is of a machine with $(said machine "$kept"), and this one has $(said machine "$work/now")"
    exit 0
fi
diff "$kept" "$work/now" > "$work/diff" && { echo "$(grep -c '^struct' "$kept") structures and $(grep -c '^function' "$kept") functions, as for LIB_CURRENT $LIB_CURRENT"; exit 0; }

if test "$(said current "$kept")" = "$LIB_CURRENT"; then
    echo "the interface is not that of LIB_CURRENT $LIB_CURRENT: give configure.ac new numbers, as DEVELOPERS.md's part on the ABI says, and then: make abi"
else
    echo "$kept is of LIB_CURRENT $(said current "$kept"), configure.ac of $LIB_CURRENT: make abi"
fi
sed -n 's/^[<>]/    &/p' "$work/diff" | head -n 20
exit 1
