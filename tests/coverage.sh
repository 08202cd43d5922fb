#!/bin/sh
# SPDX-License-Identifier: MIT
# Which lines and branches are reached, of lib/ by the C suites, and of the programs by their own tests: both compiled apart in coverage/, by gcc with its counters and unoptimised.
# Fails where a smaller share is reached than is reached now; read_coverage.py says how branches are counted. make coverage calls it: some minutes where nothing else runs.
set -eu

command -v gcov > /dev/null && command -v gcc > /dev/null || {
    echo "not counted: gcc or its gcov is not installed"
    exit 0
}
top_srcdir=$(cd "$top_srcdir" && pwd)
top=$PWD

# counted FOLDER FLAGS SOURCE...: objects in that folder, named by their paths.
counted() {
    folder=$1
    flags=$2
    shift 2
    for source; do
        case $source in
        *.c) gcc -std=gnu99 -O0 -g --coverage -ffp-contract=off $flags -I"$top" -I"$top/include" -I"$top_srcdir/include" -c -o "$folder/$(echo "${source%.c}" | tr / _).o" "$top_srcdir/$source" ;;
        esac
    done
}

rm -rf coverage
mkdir -p coverage/lib
counted coverage/lib "-I$top_srcdir/lib" $LIBRARY_SOURCES
gcc --coverage -o coverage/check_tunnelside $TEST_OBJECTS coverage/lib/*.o $TEST_LIBS
coverage/check_tunnelside > coverage/check.out || {
    cat coverage/check.out
    exit 1
}
short=0
"$PYTHON3" "$top_srcdir/tests/read_coverage.py" coverage/lib lib 100 99 || short=1

# The programs, with the library as it is. What a test does that needs what is not installed here, or a program that was not built, is not counted.
if test -n "$PROGRAM_TESTS"; then
    mkdir -p coverage/common coverage/examples
    counted coverage/common "$PROGRAM_FLAGS" $COMMON_SOURCES
    ar cr coverage/common.a coverage/common/*.o # of which a program links what it has not itself
    for program in $PROGRAMS; do
        name=${program##*tunnelside-}
        mkdir coverage/$name
        eval "sources=\$$(echo "$name" | tr a-z A-Z)_SOURCES"
        counted coverage/$name "$PROGRAM_FLAGS -I$top_srcdir/examples/common" $sources
        gcc --coverage -o coverage/$program coverage/$name/*.o coverage/common.a lib/.libs/libtunnelside.a $PROGRAM_LIBS
    done
    cd coverage
    for test in $PROGRAM_TESTS; do
        got=0
        srcdir=$top_srcdir CFLAGS= sh "$top_srcdir/$test" > "$(basename "$test").out" 2>&1 || got=$?
        case $got in
        0) ;;
        77) echo "not counted: $(tail -n 1 "$(basename "$test").out")" ;;
        *) cat "$(basename "$test").out"; short=1 ;;
        esac
    done
    cd ..
    "$PYTHON3" "$top_srcdir/tests/read_coverage.py" coverage examples 98 89.5 || short=1
fi
exit $short
