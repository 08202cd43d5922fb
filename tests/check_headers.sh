#!/bin/sh
# SPDX-License-Identifier: MIT
# Each public header compiles alone, in every C since C99 and every C++ since C++11, with warnings as errors, and brings no macro
# without our prefix; of other names include/headers2records, which reads every declaration, refuses those.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0

includes="-I$top_srcdir/include -Iinclude"
headers="tunnelside.h $(for header in $TOPIC_HEADERS; do echo "tunnelside/${header##*/}"; done) tunnelside/version.h"

# compiles LANGUAGE COMPILER STANDARD: one unit per header, since a header that leans on an earlier one must not pass.
compiles() {
    echo 'int main(void) { return 0; }' > "$work/probe.$1"
    # A compiler that does not know a standard yet, or any longer, is not held to it.
    $2 -std="$3" -c -o "$work/probe.o" "$work/probe.$1" 2> /dev/null || return 0
    for header in $headers; do
        echo "#include <$header>" > "$work/unit.$1"
        if ! $2 -std="$3" -Wall -Wextra -Wpedantic -Werror $includes -c -o "$work/unit.o" "$work/unit.$1" 2> "$work/errors"; then
            echo "<$header> does not compile alone with $2 -std=$3:"
            sed 's/^/    /' "$work/errors"
            failed=1
        fi
    done
    tried="$tried $3"
}

tried=
for standard in c99 c11 c17 c2x; do
    compiles c "$CC" $standard
done
if test "$CXX" != no; then
    for standard in c++11 c++14 c++17 c++20; do
        compiles cc "$CXX" $standard
    done
fi
case $tried in
*c99*) ;;
*) echo "$CC does not even take -std=c99"; exit 1 ;;
esac

# A status that is not looked at is warned of, where the compiler can.
cat > "$work/deaf.c" << 'END'
#include <tunnelside.h>
#ifndef __GNUC__
#error cannot warn
#endif
void deaf(tside_plan *plan, const tside_side *side);
void deaf(tside_plan *plan, const tside_side *side) { tside_plan_side(side, plan, NULL); }
END
if $CC $includes -c -o "$work/unit.o" "$work/deaf.c" 2> /dev/null && $CC -Werror=unused-result $includes -c -o "$work/unit.o" "$work/deaf.c" 2> /dev/null; then
    echo "a status that nobody looks at is not warned of"
    failed=1
fi

# Macros: what the umbrella defines beyond what the standard headers do.
grep -h '^ *# *include <[a-z]*\.h>' "$top_srcdir"/include/tunnelside/*.h | grep -v tunnelside | sort -u > "$work/standard.c"
echo '#include <tunnelside.h>' > "$work/umbrella.c"
for unit in standard umbrella; do
    $CC -std=c99 $includes -E -dM "$work/$unit.c" | awk '{ sub(/\(.*/, "", $2); print $2 }' | sort -u > "$work/$unit.macros"
done
comm -13 "$work/standard.macros" "$work/umbrella.macros" | grep -v '^TSIDE_' | grep -v '^TUNNELSIDE_' > "$work/bad" || :

if test -s "$work/bad"; then
    echo "macros without the prefix TSIDE_ or TUNNELSIDE_:"
    sed 's/^/    /' "$work/bad"
    failed=1
fi

test $failed = 0 || exit 1
echo "$(echo $headers | wc -w | tr -d ' ') headers, each alone:$tried"
