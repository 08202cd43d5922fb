#!/bin/sh
# SPDX-License-Identifier: MIT
# Every public function has its manual page, every page is clean under mandoc's lint, and every page referred to exists.
set -eu

failed=0
pages="$(ls "$top_srcdir"/man/*.[17]) $(find man/man3 -type f -name '*.3' | sort)"

for name in $(awk -F '\t' '$1 == "function" { print $3 }' "$RECORDS"); do
    grep -q "^\.Fo $name\$" "man/man3/$name.3" 2> /dev/null || { echo "man/man3/$name.3 is missing, or does not have $name"; failed=1; }
done

for reference in $(sed -n 's/^\.\(It \)*Xr \([a-z0-9_-]*\) \([1-9]\).*/\2.\3/p' $pages | sort -u); do
    case $reference in
    tunnelside* | tside_*)
        test -f "$top_srcdir/man/$reference" || test -f "man/man3/$reference" || { echo "a page refers to $reference, which does not exist"; failed=1; } ;;
    esac
done

if test "$MANDOC" != no; then
    "$MANDOC" -T lint -W warning $pages || failed=1
fi

test $failed = 0 || exit 1
echo "$(echo $pages | wc -w | tr -d ' ') pages"
