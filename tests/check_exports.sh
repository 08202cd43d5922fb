#!/bin/sh
# SPDX-License-Identifier: MIT
# What the public headers declare is what the shared library exports, no less and no more; and a program that links the static
# library meets no name of ours without the prefix.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

awk -F '\t' '$1 == "function" { print $3 }' "$RECORDS" | sort -u > "$work/declared"
test -s "$work/declared" || { echo "no functions found in $RECORDS"; exit 1; }

failed=0
compare() {
    if ! diff "$1" "$2" > "$work/diff"; then
        echo "$3"
        sed -n 's/^[<>] /    &/p' "$work/diff"
        failed=1
    fi
}

shared=$(ls lib/.libs/libtunnelside.so lib/.libs/libtunnelside.dylib lib/.libs/libtunnelside-*.dll 2> /dev/null | head -n 1)
if test -n "$shared"; then
    case $shared in
    *.dll) $OBJDUMP -p "$shared" | awk '/Ordinal\/Name Pointer/ { inside = 1; next } NF == 0 { inside = 0 } inside { print $NF }' ;;
    # Beside functions and data a version script exports its own name, of type A.
    *) $NM -D -g --defined-only "$shared" | awk '$2 != "A" { sub(/@.*/, "", $3); print $3 }' ;;
    esac | sort -u > "$work/exported"
    compare "$work/declared" "$work/exported" "declared but not exported (<), exported but not declared (>):"
fi
if test -f lib/.libs/libtunnelside.a; then
    $NM -g --defined-only lib/.libs/libtunnelside.a | awk 'NF == 3 { print $3 }' | sort -u > "$work/static"
    # tside_i_ is for what the library's files share; .refptr. is a compiler's own, for Windows.
    grep -v -E '^(\.refptr\.)?tside_i_' "$work/static" > "$work/static-public" || :
    compare "$work/declared" "$work/static-public" "declared but not in the static library (<), public there but not declared (>):"
fi
test -n "$shared" || test -f lib/.libs/libtunnelside.a || { echo "no library found in lib/.libs"; exit 1; }

test $failed = 0 || { echo "To mend: a public function has TSIDE_API and a declaration in its topic's header; any other is static or named tside_i_*."; exit 1; }
echo "$(wc -l < "$work/declared" | tr -d ' ') functions declared and exported"
