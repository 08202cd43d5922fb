# SPDX-License-Identifier: MIT
"""The sticks of a bar: sums of a few lengths, which 50 digits hold whole."""

from common import absolute, between, exact
from mpmath import ceil, mpf

STICKS = 5  # that a row can look at, and the last


def bar_sticks(chance):
    at = {
        "bar.joints": "stock",
        "bar.tube.diameter": 0.03,
        "bar.tube.wall": 0.002,
        "bar.stock": chance.choice((between(chance, 1, 10), between(chance, 1, 100))),
        "bar.swage": chance.choice((0.0, chance.uniform(0, 0.3))),
        "bar.splice_near": chance.uniform(0, 0.5),
        "curtain": chance.choice((between(chance, 0.1, 50), between(chance, 10, 1000))),
        "beyond_drive": chance.choice((0.0, chance.uniform(0, 0.4))),
        "beyond_free": chance.choice((0.0, chance.uniform(0, 0.4))),
    }
    x = exact(at)
    stock, swage = x["bar.stock"], x["bar.swage"]
    whole = x["curtain"] + x["beyond_drive"] + x["beyond_free"]
    least = max(swage + x["beyond_free"], mpf("0.01"))
    if whole > stock and stock < max(x["beyond_drive"] + x["bar.splice_near"], swage) + least:
        return bar_sticks(chance)
    count = 1 if whole <= stock else int(ceil((whole - swage) / (stock - swage)))
    if count > 1 and abs((whole - swage) / (stock - swage) % 1) < mpf("1e-8"):  # whether one more is needed hangs on the nanometre that is let pass
        return bar_sticks(chance)
    last = whole - (count - 1) * (stock - swage)
    before = stock - max(least - last, 0)
    last = max(last, least) if count > 1 else last
    lengths = [stock] * (count - 2) + [before] * (count > 1) + [last]
    answers, begins = {"count": (count, "", "")}, mpf(0)
    for i, length in enumerate(lengths):
        if i < STICKS:
            found = {"length": length, "from": begins, "to": begins + length}
            answers.update({f"sticks[{i}].{name}": (value, "", absolute(SUMS * whole)) for name, value in found.items()})
        begins += length - swage
    found = {"length": last, "from": whole - last, "to": whole}
    answers.update({f"last.{name}": (value, "", absolute(SUMS * whole)) for name, value in found.items()})
    return at, answers


SUMS = 5e-16
FUNCTIONS = {"tside_bar_sticks": bar_sticks}
FEW = {"tside_bar_sticks": 4}
