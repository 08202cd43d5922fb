#!/bin/sh
# SPDX-License-Identifier: MIT
# Which lines and branches of lib/ the C suites reach: compiled apart in coverage/, by gcc with its counters and unoptimised, and linked with the suites that make has.
# Fails where a smaller share is reached than is reached now; read_coverage.py says how branches are counted. make coverage calls it: two or three minutes where nothing else runs.
set -eu

command -v gcov > /dev/null && command -v gcc > /dev/null || {
    echo "not counted: gcc or its gcov is not installed"
    exit 0
}
rm -rf coverage
mkdir coverage
for source in $LIBRARY_SOURCES; do
    case $source in
    *.c) gcc -std=gnu99 -O0 -g --coverage -ffp-contract=off -DHAVE_CONFIG_H -I. -Iinclude -I"$top_srcdir/include" -I"$top_srcdir/lib" -c -o "coverage/$(echo "${source%.c}" | tr / _).o" "$top_srcdir/$source" ;;
    esac
done
gcc --coverage -o coverage/check_tunnelside $TEST_OBJECTS coverage/*.o $TEST_LIBS
coverage/check_tunnelside > coverage/check.out || {
    cat coverage/check.out
    exit 1
}
"$PYTHON3" "$top_srcdir/tests/read_coverage.py" 99.4 95.5
