#!/bin/sh
# SPDX-License-Identifier: MIT
# Every source, header, suite and script in the tree stands in Makefile.am, so that none is left out in silence.
set -eu
cd "$top_srcdir"

failed=0
for file in lib/*/*.[ch] include/*.h include/tunnelside/*.h tests/*.[ch] tests/*/*.[ch] tests/*.sh examples/*.py examples/*.c examples/*/*.[ch] man/*.[1-9] \
    bindings/python/*.[hi] bindings/python/*.py bindings/python/*.toml bindings/python/tunnelside/*.py; do
    case $file in
    *\** | tests/statuses.h | tests/suites.h) continue ;; # no such file, or made by make
    esac
    grep -qF "$file" Makefile.am || { echo "$file is not in Makefile.am"; failed=1; }
done
test $failed = 0
