#!/bin/sh
# SPDX-License-Identifier: MIT
# Each public header compiles alone, in every C since C99 and every C++ since C++11, with warnings as errors, and brings no name
# without our prefix.
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

# Macros: what the umbrella defines beyond what the standard headers do.
grep -h '^ *# *include <[a-z]*\.h>' "$top_srcdir"/include/tunnelside/*.h | grep -v tunnelside | sort -u > "$work/standard.c"
echo '#include <tunnelside.h>' > "$work/umbrella.c"
for unit in standard umbrella; do
    $CC -std=c99 $includes -E -dM "$work/$unit.c" | awk '{ sub(/\(.*/, "", $2); print $2 }' | sort -u > "$work/$unit.macros"
done
comm -13 "$work/standard.macros" "$work/umbrella.macros" | grep -v '^TSIDE_' | grep -v '^TUNNELSIDE_' > "$work/bad" || :

# Names at file scope, enumerators with them: the preprocessed text of our own headers, without what stands in
# parentheses and in the braces of structures; keywords and standard types aside, each must have the prefix.
$CC -std=c99 $includes -E "$work/umbrella.c" | awk '
    /^# [0-9]+ "/ { ours = $3 ~ /tunnelside/; next }
    !ours { next }
    { text = text " " $0 }
    END {
        for (at = 1; at <= length(text); at++) {
            c = substr(text, at, 1)
            if (c == "(")
                round++
            else if (c == ")")
                round--
            else if (c == "{") {
                hidden[depth + 1] = hidden[depth] || seen ~ /struct[^;{}]*$/
                depth++
            } else if (c == "}")
                depth--
            else if (round == 0 && !hidden[depth]) {
                seen = seen c
                continue
            }
            seen = seen (c ~ /[{}]/ ? c : " ")
        }
        gsub(/=[^,}]*/, " ", seen)
        gsub(/"[^"]*"/, " ", seen)
        count = split(seen, words, /[^A-Za-z0-9_]+/)
        for (i = 1; i <= count; i++)
            if (words[i] ~ /^[A-Za-z_]/)
                print words[i]
    }' | sort -u > "$work/names"
grep -q '^tside_status$' "$work/names" || { echo "the names of the headers were not found"; exit 1; }
grep -v -x -E '(tside|TSIDE)_.*|typedef|struct|enum|extern|const|char|int|unsigned|double|void|size_t|__attribute__' "$work/names" >> "$work/bad" || :
if test -s "$work/bad"; then
    echo "names without the prefix tside_, TSIDE_ or TUNNELSIDE_:"
    sed 's/^/    /' "$work/bad"
    failed=1
fi

test $failed = 0 || exit 1
echo "$(echo $headers | wc -w | tr -d ' ') headers, each alone:$tried"
