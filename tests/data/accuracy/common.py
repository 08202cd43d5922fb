# SPDX-License-Identifier: MIT
"""What the topics share: chance, the doubles themselves, how near an answer must come, and one-dimensional searches."""

import random

from mpmath import findroot, mp, mpf

mp.dps = 50

KSI = mpf("4448.2216152605") / mpf("0.0254") ** 2
GRAVITY = mpf("9.80665")


def between(chance, low, high):
    """Evenly over the orders of magnitude: a bound of a domain is as likely as its middle."""
    return float(low * (high / low) ** chance.random())


def exact(at):
    """The doubles themselves."""
    return {name: mpf(value) for name, value in at.items() if not isinstance(value, str)}


class absolute(float):
    """An accuracy in the unit of the answer; a plain number is a share of the answer."""


def tolerance(accuracy):
    return repr(float(accuracy)) if isinstance(accuracy, absolute) else f"rel {accuracy:.3g}"


def least_in(function, low, high, near):
    """A function that falls and then rises, by the golden section: between which places it is least, so near to each other, and the least there."""
    golden = (3 - mpf(5) ** mpf("0.5")) / 2
    a, b = low + golden * (high - low), high - golden * (high - low)
    at_a, at_b = function(a), function(b)
    while high - low > near:
        if at_a <= at_b:
            high, b, at_b = b, a, at_a
            a = low + golden * (high - low)
            at_a = function(a)
        else:
            low, a, at_a = a, b, at_b
            b = high - golden * (high - low)
            at_b = function(b)
    return low, high, min(at_a, at_b)


def root(function, low, high):
    """Where a function that changes its sign between two places is 0, to 45 digits."""
    at_low, at_high = function(low), function(high)
    if at_low == 0 or at_high == 0:
        return low if at_low == 0 else high
    assert (at_low < 0) != (at_high < 0)
    for _ in range(30):  # near enough for what converges fast, and no wrong root
        middle = (low + high) / 2
        if (function(middle) < 0) == (at_low < 0):
            low = middle
        else:
            high = middle
    found = findroot(function, (low, high), solver="anderson", tol=mpf(10) ** -80, verify=False)
    if low <= found <= high:
        return found
    for _ in range(170):  # where a corner makes it leave its bracket
        middle = (low + high) / 2
        if (function(middle) < 0) == (at_low < 0):
            low = middle
        else:
            high = middle
    return low


def points(function, point, count):
    """As many points of a function's domain, the same at each run."""
    chance = random.Random(function)
    return [point(chance) for _ in range(count)]
