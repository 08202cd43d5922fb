#!/bin/sh
# SPDX-License-Identifier: MIT
# The tests of the Python bindings, on the package as make has gathered it. What a test skips is said aloud, and fails where CI=true.
set -eu

HYPOTHESIS_STORAGE_DIRECTORY=$(mktemp -d)
trap 'rm -rf "$HYPOTHESIS_STORAGE_DIRECTORY"' EXIT
export BUILD HYPOTHESIS_STORAGE_DIRECTORY NM STAGE top_srcdir
PYTHONPATH=$STAGE PYTHONDONTWRITEBYTECODE=1 "$PYTHON" "$top_srcdir/bindings/python/tests/run.py"
