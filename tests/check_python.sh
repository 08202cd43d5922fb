#!/bin/sh
# SPDX-License-Identifier: MIT
# The tests of the Python bindings, on the package as make has gathered it. What a test skips is said aloud, and fails where CI=true.
set -eu
export BUILD NM STAGE top_srcdir
PYTHONPATH=$STAGE PYTHONDONTWRITEBYTECODE=1 exec "$PYTHON" "$top_srcdir/bindings/python/tests/run.py"
