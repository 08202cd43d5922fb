#!/bin/sh
# SPDX-License-Identifier: MIT
# Drives the makers of calls by libFuzzer under the address and undefined-behaviour sanitizers, each for FUZZ_SECONDS, compiled apart in fuzzing/. What they find is
# left there, by name; what is new in the corpus stays in fuzzing/corpus. FUZZ_MERGE=yes keeps in tests/data/fuzz the least that reaches as much code.
set -eu

mkdir -p fuzzing
flags='-std=c99 -D_POSIX_C_SOURCE=200809L -O1 -g -fno-omit-frame-pointer -fsanitize=fuzzer-no-link,address,undefined,float-cast-overflow -fno-sanitize-recover=all -fno-math-errno -ffp-contract=off'
folders="-Iinclude -I$top_srcdir/include -I$top_srcdir/lib -I$top_srcdir/examples/common -I$top_srcdir/examples/order -I$top_srcdir/tests -I$top_srcdir/tests/fuzz"

# object SOURCE: compiled, if it is newer than what there is.
object() {
    made=fuzzing/$(echo "$1" | tr / _).o
    test "$made" -nt "$top_srcdir/$1" || clang $flags $folders -c -o "$made" "$top_srcdir/$1" >&2
    echo "$made"
}
objects() {
    for source; do
        case $source in
        *.c) object "$source" || return 1 ;;
        esac
    done
}

rm -f fuzzing/library.a fuzzing/programs.a
ar rc fuzzing/library.a $(objects $LIBRARY_SOURCES)
ar rc fuzzing/programs.a $(objects $PROGRAM_SOURCES)
for fuzzer in $FUZZERS; do
    name=$(basename "$fuzzer")
    case $name in
    cuts) more=$(objects tests/cut_answer.c) ;;
    site | list) more="$(objects tests/fuzz/programs.c) fuzzing/programs.a -ljansson" ;;
    *) more= ;;
    esac
    clang -fsanitize=fuzzer,address,undefined,float-cast-overflow -o "fuzzing/$name" $(objects "tests/fuzz/$name.c" tests/fuzz/fuzz.c) $more fuzzing/library.a -lm
    mkdir -p "fuzzing/corpus/$name"
    perl -ne 'chomp; open F, ">", "'"fuzzing/corpus/$name"'/kept$."; print F pack "H*", $_' "$top_srcdir/tests/data/fuzz/$name.hex"
    set -- "fuzzing/corpus/$name"
    test "$name" != site || set -- "$@" "$top_srcdir/examples/sites"
    echo "== $name, ${FUZZ_SECONDS:-60} s"
    "fuzzing/$name" -max_total_time="${FUZZ_SECONDS:-60}" -print_final_stats=1 -artifact_prefix="fuzzing/$name-" -timeout=20 -max_len=4096 "$@" > "fuzzing/$name.log" 2>&1 ||
        { tail -n 40 "fuzzing/$name.log"; exit 1; }
    grep -E 'DONE|number_of_executed_units|slowest_unit' "fuzzing/$name.log"
    test "${FUZZ_MERGE-}" = yes || continue
    rm -rf "fuzzing/least" && mkdir "fuzzing/least"
    "fuzzing/$name" -set_cover_merge=1 fuzzing/least "$@" 2> /dev/null
    find fuzzing/least -size -3 -type f | LC_ALL=C sort | xargs perl -e 'undef $/; for (@ARGV) { open F, "<", $_; print unpack("H*", <F>), "\n" }' > "$top_srcdir/tests/data/fuzz/$name.hex"
done
