# SPDX-License-Identifier: MIT
"""Where the source tree is, for the tests that read it: a source distribution has what they need in c/, an installed package has none."""
import os
import unittest
from pathlib import Path

HERE = Path(__file__).resolve().parent
PLACES = [Path(os.environ["top_srcdir"])] if "top_srcdir" in os.environ else [HERE.parents[2], HERE.parent / "c"]
TOP = next((place for place in PLACES if (place / "configure.ac").exists()), None)


def tree(*names):
    """The tree, if it has all of these; else the module that asks is skipped."""
    lacks = [name for name in names if TOP is None or not (TOP / name).exists()]
    if lacks:
        raise unittest.SkipTest(f"not in a source tree: no {', '.join(lacks)}")
    return TOP
