#!/bin/sh
# SPDX-License-Identifier: MIT
# Code and comments keep to 120 columns and headers to 100, in the one shape of .clang-format; tables of fields are exempt. Every release of
# clang-format breaks lines a little otherwise: this asks the one that wrote them, and where it is missing says so.
set -eu
cd "$top_srcdir"

RELEASE=14
for candidate in clang-format-$RELEASE clang-format; do
    case $($candidate --version 2> /dev/null) in
    *" version $RELEASE."*) formatter=$candidate ;;
    esac
    test -z "${formatter-}" || break
done
if test -z "${formatter-}"; then
    echo "clang-format $RELEASE is not installed"
    exit 77
fi
test -e .clang-format || { echo "no .clang-format"; exit 1; }

failed=0
for file in lib/*/*.[ch] include/*.h include/tunnelside/*.h tests/*.[ch] tests/*/*.[ch] examples/*.c examples/*/*.[ch] bindings/python/*.h bindings/python/core_module.c; do
    case $file in
    tests/suites.h | tests/statuses.h | include/tunnelside/version.h) continue ;; # made by make
    esac
    # Headers of C are not those of another language.
    $formatter --style=file --assume-filename="${file%.*}.c" < "$file" | cmp -s "$file" - ||
        { echo "$file: not as $formatter has it: $formatter --style=file --assume-filename=${file%.*}.c < $file"; failed=1; }
done
exit $failed
