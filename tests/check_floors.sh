#!/bin/sh
# SPDX-License-Identifier: MIT
# No file of the library uses what a later one defines: the order is the list of sources in Makefile.am, the proof are the symbols of the
# compiled objects; and DEVELOPERS.md prints that order.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=

for source in $LIBRARY_SOURCES; do
    object=$(dirname "$source")/libwhole_la-$(basename "$source" .c).o
    test -f "$object" || object=$(dirname "$object")/.libs/$(basename "$object")
    $NM -g "$object" | awk -v file="$source" '{ print file, $(NF - 1), $NF }'
done > "$work/symbols"

awk '
    $2 == "U" { uses[++n] = $3; user[n] = $1; next }
    !($1 in place) { place[$1] = ++files; floor = $1; gsub(/^lib\/|\/[^\/]*$/, "", floor); name = $1; gsub(/.*\/|\.c$/, "", name)
        if (floor != last) { printf "%s%s:", last ? "\n" : "", floor; last = floor; floors++ }
        printf " %s", name }
    { home[$3] = $1; defined++ }
    END {
        print ""
        for (i = 1; i <= n; i++)
            if (uses[i] in home) {
                compared++
                if (place[home[uses[i]]] > place[user[i]]) {
                    print user[i] " uses " uses[i] " of " home[uses[i]] ", which comes after it"
                    failed = 1
                }
            }
        if (!compared) { print "no file uses another"; failed = 1 }
        print files " files on " floors " floors, " compared " uses of symbols of other files"
        exit failed
    }
' "$work/symbols" > "$work/floors" || failed=1
cat "$work/floors"
grep '^[a-z]*:' "$work/floors" | while read -r floor; do
    grep -qxF "    $floor" "$top_srcdir/DEVELOPERS.md" || echo "DEVELOPERS.md prints another order than: $floor"
done > "$work/printed"
cat "$work/printed"
test -z "$failed" && test ! -s "$work/printed"
