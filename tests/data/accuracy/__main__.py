#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Makes points over each function's domain, by chance from a seed, and what is exact there.

    python3 tests/data/accuracy plain > tests/data/accuracy.csv           # calls of numbers and of structures that are asked
    python3 tests/data/accuracy made > tests/data/accuracy/made.csv       # calls of what other functions made: C's tests alone read them
    python3 tests/data/accuracy POINTS [FUNCTION ...] > FOLDER/points.csv # so many points of each, all their answers: "make accuracy" measures them

Each formula is written again here from the function's comment, in mpmath at 50 digits, of the doubles that the call gets;
each row's tolerance is the accuracy that the comment states.
"""

import csv
import sys

sys.dont_write_bytecode = True  # tests/data is shipped as it is
import cutting
import extender
import fixed
import over
import parts
import run
import shape
import statics
import travel
import whole
import wind
from common import points, tolerance
from mpmath import mp

POINTS = 12
SLOW = 20  # so many times fewer are measured of what takes whole travels, each some seconds
PLAIN, MADE = (parts, wind), (shape, travel, statics, whole, run, fixed, over, extender, cutting)


def of_point(answers, turn, few):
    """All answers, or few of them, in turn."""
    names = list(answers)
    return names if few >= len(names) else [names[(turn * few + i) % len(names)] for i in range(few)]


def main(topics, count=POINTS, asked=(), few=None):
    write = csv.writer(sys.stdout, lineterminator="\n").writerow
    write(("function", "arguments", "result", "value", "unit", "tolerance", "source"))
    for topic in topics:
        for function, point in topic.FUNCTIONS.items():
            if asked and function not in asked:
                continue
            fewer = SLOW if few and function in getattr(topic, "SLOW", ()) else 1
            for turn, (at, answers) in enumerate(points(function, point, max(count // fewer, 1))):
                arguments = ";".join(f"{name}={value}" if isinstance(value, str) else f"{name}={value!r}" for name, value in at.items())
                for result in of_point(answers, turn, few or topic.FEW.get(function, 2)):
                    value, unit, accuracy = answers[result]
                    if isinstance(value, (str, int)):  # a choice or a count
                        write((function, arguments, result, value, "", "", "mpmath, 50 digits, by tests/data/accuracy"))
                    else:
                        write((function, arguments, result, mp.nstr(value, 25), unit, tolerance(accuracy), "mpmath, 50 digits, by tests/data/accuracy"))


if __name__ == "__main__":
    what, *asked = sys.argv[1:]
    if what in ("plain", "made"):
        main(PLAIN if what == "plain" else MADE)
    else:
        main(PLAIN + MADE, int(what), asked, few=1000)
