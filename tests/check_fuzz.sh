#!/bin/sh
# SPDX-License-Identifier: MIT
# Calls made of any bytes: each input kept in tests/data/fuzz, and some changes of it that are the same each time. FUZZ_CHANGES of each, else a few.
set -eu

for fuzzer in $FUZZERS; do
    name=$(basename "$fuzzer" "$EXEEXT")
    case $name in
    site) set -- "$top_srcdir"/examples/sites/*.json ;;
    list) set -- "$top_srcdir"/examples/*.csv ;;
    *) set -- ;;
    esac
    printf '%s: ' "$name"
    "$fuzzer" "${FUZZ_CHANGES:-10}" "$@" "$top_srcdir/tests/data/fuzz/$name.hex"
done
