# SPDX-License-Identifier: MIT
"""Runs the tests beside it on the package in $STAGE, and only on that; without it on the package that is installed."""
import os
import sys
import unittest
from pathlib import Path

import tunnelside
import tunnelside._core

stage = Path(os.environ.get("STAGE") or Path(tunnelside.__file__).parent).resolve()
for module in (tunnelside, tunnelside._core):
    if stage not in Path(module.__file__).resolve().parents:
        sys.exit(f"{module.__name__} was imported from {module.__file__}, not from {stage}")

here = Path(__file__).resolve().parent
sys.path.insert(0, str(here))
suite = unittest.defaultTestLoader.discover(str(here), "test_*.py")
result = unittest.TextTestRunner(verbosity=1, warnings="error").run(suite)
for test, why in result.skipped:
    print(f"*** NOT TESTED: {test.id()}: {why}")
if result.skipped and os.environ.get("CI") == "true":
    sys.exit("skipped, where CI=true")
sys.exit(not result.wasSuccessful())
