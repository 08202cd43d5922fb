#!/bin/sh
# SPDX-License-Identifier: MIT
# The page: its core against the programs, in Node; then typed into, in a real browser, where one and its driver are.
set -eu

export BUILD top_srcdir PLAN
"$NODE" --test "$top_srcdir/tests/page_core.test.js"
size=$(wc -c < "$BUILD/examples/page/site/index.html")
test "$size" -lt 600000 || { echo "the page has $size bytes"; exit 1; }

# A second run of the same tree need not type a house again.
test "${BROWSER_TESTS:-yes}" = yes || { echo "not in a browser, as asked"; exit; }
driver=
for python in "$PYTHON3" /usr/bin/python3; do
    test -n "$driver" || ! "$python" -c 'import selenium' 2> /dev/null || driver=$python
done
if test -z "$driver" || ! command -v chromedriver > /dev/null 2>&1; then
    echo "NOT TESTED in a browser: python3-selenium and chromium-driver were not found"
    test "${CI:-}" != true
    exit
fi
PYTHONDONTWRITEBYTECODE=1 "$driver" "$top_srcdir/tests/drive_page.py"
