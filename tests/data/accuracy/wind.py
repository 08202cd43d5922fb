# SPDX-License-Identifier: MIT
"""Wind, what bellies in it, ropes, the bar between them, and air."""

from common import GRAVITY, absolute, between, exact, root
from mpmath import acos, atan, atan2, ceil, cos, diff, fabs, hypot, log, mpf, pi, power, sin, sqrt, tan
from parts import GRADES, METALS

FOOT = mpf("0.3048")

# --- pressure ---

PROFILES = {  # factor, power's a, height of the gradient in ft
    "ASCE_7_16": ("2.01", {"B": ("7.0", 1200), "C": ("9.5", 900), "D": ("11.5", 700)}),
    "ASCE_7_22": ("2.41", {"B": ("7.5", 3280), "C": ("9.8", 2460), "D": ("11.5", 1935)}),
}
TERRAIN = {"0": ("0.003", 1), "I": ("0.01", 1), "II": ("0.05", 2), "III": ("0.3", 5), "IV": ("1", 10)}


def wind(chance, rules):
    rule = chance.choice(rules)
    at = {"wind.rule": rule, "wind.coefficient": between(chance, 0.01, 10), "wind.load_factor": between(chance, 0.1, 10)}
    if rule == "given":
        at["wind.velocity_pressure"] = between(chance, 0.001, 1e5)
    else:
        at["wind.speed"] = between(chance, 0.01, 150)
    if rule in ("plain", "EN_1991_1_4"):
        at["wind.density"] = between(chance, 0.1, 2)
    if rule[:2] in ("AS", "EN"):
        at["wind.height"] = between(chance, 0.1, 200)
    if rule[:2] == "AS":
        at.update({"wind.exposure": chance.choice("BCD"), "wind.directionality": chance.uniform(0.1, 1), "wind.topography": between(chance, 0.1, 10), "wind.elevation": between(chance, 0.1, 2)})
    if rule[:2] == "EN":
        at.update({"wind.category": chance.choice((*TERRAIN, "given")), "wind.direction": between(chance, 0.1, 2), "wind.season": between(chance, 0.1, 2), "wind.orography": between(chance, 0.1, 10), "wind.turbulence": chance.uniform(0, 10)})
        if at["wind.category"] == "given":
            at["wind.roughness"] = between(chance, 1e-6, 10)
            at["wind.height_least"] = min(max(0.01, at["wind.roughness"] * between(chance, 1.0001, 1000)), 200.0)
    return at


def blown_with(at, speed):
    """q, what a coefficient multiplies, what else is told, and by how much a code's logarithm makes the rounding of its height greater."""
    x = exact(at)
    rule, told, worse = at["wind.rule"], {}, mpf(1)
    directed = mpf(1)
    if rule == "given":
        q = x["wind.velocity_pressure"]
    elif rule == "plain":
        q = x["wind.density"] * speed**2 / 2
    elif rule[:2] == "AS":
        factor, grounds = PROFILES[rule]
        a, gradient = grounds[at["wind.exposure"]]
        kz = mpf(factor) * power(max(x["wind.height"], 15 * FOOT) / (gradient * FOOT), 2 / mpf(a))
        q = mpf("0.613") * kz * x["wind.topography"] * x["wind.elevation"] * speed**2
        told["exposure"] = kz
        if rule == "ASCE_7_16":
            q *= x["wind.directionality"]
        else:
            directed = x["wind.directionality"]
    else:
        z0, least = (x["wind.roughness"], x["wind.height_least"]) if at["wind.category"] == "given" else map(mpf, TERRAIN[at["wind.category"]])
        logarithm = log(max(x["wind.height"], least) / z0)
        vm = mpf("0.19") * power(z0 / mpf("0.05"), mpf("0.07")) * logarithm * x["wind.orography"] * x["wind.direction"] * x["wind.season"] * speed
        intensity = x["wind.turbulence"] / (x["wind.orography"] * logarithm)
        q = (1 + 7 * intensity) * x["wind.density"] * vm**2 / 2
        told.update(mean_speed=vm, intensity=intensity)
        worse += 1 / logarithm
    return q, q * x["wind.load_factor"] * directed, told, worse


def wind_pressure(chance):
    at = wind(chance, ("given", "plain", "ASCE_7_16", "ASCE_7_22", "EN_1991_1_4"))
    q, counted, told, worse = blown_with(at, mpf(at.get("wind.speed", 0)))
    answers = {"velocity": q, "net": counted * mpf(at["wind.coefficient"]), "counted": counted, **told}
    return at, {f"pressure.{name}": (value, "", float(PRESSURE * worse)) for name, value in answers.items()}


def wind_speed(chance):
    at = wind(chance, ("plain", "ASCE_7_16", "ASCE_7_22", "EN_1991_1_4"))
    del at["wind.speed"]
    at["net"] = between(chance, 0.01, 1e5)
    _, counted, _, worse = blown_with(at, mpf(1))
    return at, {"speed": (sqrt(mpf(at["net"]) / (counted * mpf(at["wind.coefficient"]))), "", float(PRESSURE * worse))}


# --- what bellies ---


def belly(chord, load, sag=None, slack=0, stiffness=None, pretension=0):
    """Half angle, radius, tension, sag and length; None where it would belly by more than half its chord."""
    if sag is not None:
        if 2 * sag > chord:
            return None
        b = 2 * atan(2 * sag / chord)
    else:
        whole = 1 / (1 + pretension / stiffness) if pretension else 1 + slack
        k = load * chord / (2 * stiffness) if stiffness is not None else mpf(0)

        def beyond(b):
            return b - whole * (sin(b) + k)

        if beyond(pi / 2) < 0:
            return None
        b = root(beyond, acos(1 / whole) if whole > 1 else mpf(0), pi / 2)
    R = chord / (2 * sin(b))
    return {"half_angle": b, "radius": R, "tension": load * R, "sag": chord / 2 * tan(b / 2), "length": 2 * R * b, "square": load * chord / 2, "along": load * R * cos(b)}


def give(chance, most_slack):
    """Slack, stretch, or a pretension, and what of them is given."""
    kind = chance.choice(("slack", "stretch", "both", "pulled"))
    given = {}
    if kind in ("slack", "both"):
        given["slack"] = between(chance, 1e-9, most_slack)
    if kind != "slack":
        given["stiffness"] = between(chance, 1e2, 1e9)
    if kind == "pulled":
        given["pretension"] = given["stiffness"] * between(chance, 1e-6, 1)
    return given


def span_belly(chance):
    at = {"span.chord": between(chance, 0.001, 1000), "span.load": between(chance, 1e-6, 1e6)}
    if chance.random() < 0.3:
        at["span.by"], given = "sag", {"sag": max(1e-6, min(500.0, at["span.chord"] / 2 * chance.choice((1.0, between(chance, 1e-3, 1)))))}
    else:
        at["span.by"], given = "stretch", give(chance, 0.57)
    at.update({f"span.{name}": value for name, value in given.items()})
    x = exact(at)
    answers = belly(x["span.chord"], x["span.load"], **{name: mpf(value) for name, value in given.items()})
    if answers is None:
        return span_belly(chance)
    near = {name: BELLY for name in answers}
    near["along"] = absolute(BELLY * answers["tension"])
    return at, {f"belly.{name}": (value, "", near[name]) for name, value in answers.items()}


# --- a loose curtain ---


def arc(x, p):
    tension = hypot(x["loose.weight"], p * x["loose.roll"])
    bar = atan(p * x["loose.roll"] / x["loose.weight"])
    return tension, bar, bar + x["loose.hanging"] * p / tension


def stands(x, p):
    tension, b, t = arc(x, p)
    R = tension / p
    return R * (cos(b) - cos(t)) - x["loose.hanging"] * sin(x["loose.lean"]), x["loose.hanging"] * cos(x["loose.lean"]) - R * (sin(t) - sin(b)), tension, t


def loose(chance):
    at = {
        "loose.hanging": between(chance, 0.01, 100),
        "loose.roll": between(chance, 1e-3, 5),
        "loose.weight": between(chance, 0.01, 1e5),
        "loose.lean": chance.choice((0.0, chance.uniform(0, 0.78))),
        "loose.seal": 0.05,
    }
    at["loose.seal"] = min(10.0, at["loose.hanging"] * between(chance, 1e-3, 0.9))
    return at, exact(at)


def limits(x):
    flies = root(lambda p: arc(x, p)[2] - pi / 2, mpf(0), pi / 2 * x["loose.weight"] / x["loose.hanging"])
    leaves = root(lambda p: (arc(x, p)[1] + arc(x, p)[2]) / 2 - x["loose.lean"], mpf(0), flies) if x["loose.lean"] else mpf(0)
    beyond = lambda p: stands(x, p)[1] - x["loose.seal"] if p else -x["loose.seal"]
    unseals = leaves if beyond(leaves) >= 0 else flies if beyond(flies) <= 0 else root(beyond, leaves, flies)
    return leaves, unseals, flies


def loose_limits(chance):
    at, x = loose(chance)
    leaves, unseals, flies = limits(x)
    slim = 1 + x["loose.roll"] / x["loose.hanging"]
    rate = diff(lambda p: stands(x, p)[1], unseals, h=unseals * mpf(10) ** -15) if leaves < unseals < flies else None
    near = LOOSE * slim * unseals + (LOOSE * x["loose.hanging"] / rate if rate else 0)
    return at, {
        "loosening.unseals": (unseals, "", absolute(near)),
        "loosening.leaves": (leaves, "", float(LOOSE * slim)),
        "loosening.flies": (flies, "", float(LOOSE * slim)),
    }


def loose_blown(chance):
    at, x = loose(chance)
    leaves, _, flies = limits(x)
    at["pressure"] = float(leaves + (flies - leaves) * mpf(chance.uniform(0.001, 0.999)))
    out, raised, tension, t = stands(x, mpf(at["pressure"]))
    return at, {
        "blown.stand_out": (max(out, mpf(0)), "", absolute(LOOSE * x["loose.hanging"])),
        "blown.raise": (raised, "", absolute(LOOSE * x["loose.hanging"])),
        "blown.tension": (tension, "", LOOSE),
        "blown.rail_angle": (t, "", LOOSE),
    }


# --- bar and rail between ropes ---


def bay(chance):
    across = between(chance, 0.02, 0.2)
    grade = chance.choice(tuple(GRADES))
    at = {
        "bay.pressure": between(chance, 1, 1e4),
        "bay.pitch": between(chance, 0.05, 6),
        "bay.overhang": chance.choice((0.0, between(chance, 0.01, 3))),
        "bay.hanging": between(chance, 0.1, 10),
        "bay.roll": between(chance, 0.01, 1),
        "bay.tube.diameter": across,
        "bay.tube.wall": across * chance.uniform(0.01, 0.4),
        "bay.material.metal": GRADES[grade][0],
        "bay.material.grade": grade,
        "bay.foot": chance.choice(("rises", "held_down")),
        "bay.screw_spacing": between(chance, 0.001, 10),
    }
    if at["bay.foot"] == "rises":
        at["bay.weight"] = between(chance, 0.01, 1e5)
    else:
        at["bay.film_stiffness"] = between(chance, 1e3, 1e9)
    return at


def bay_load(at, x):
    """Answers and how near they come; None where the film would belly too far."""
    p, s, a, c = (x[f"bay.{name}"] for name in ("pressure", "hanging", "pitch", "overhang"))
    D = x["bay.tube.diameter"]
    inertia = pi / 64 * (D**4 - (D - 2 * x["bay.tube.wall"]) ** 4)
    E, _, _, safety, _ = METALS[at["bay.material.metal"]]
    w = p * (s / 2 + x["bay.roll"])
    moment = max(w * a**2 / 8, w * c**2 / 2)
    stress, limit = moment / (2 * inertia / D), GRADES[at["bay.material.grade"]][1] / mpf(safety)
    along, pull = x.get("bay.weight"), mpf(0)
    if along is None:
        film = belly(s, p, stiffness=x["bay.film_stiffness"])
        if film is None:
            return None
        along, pull = film["along"], film["tension"]
    square = p * s / 2
    return {
        "bar": (w, BAY),
        "stress": (stress, BAY),
        "moment": (moment, BAY),
        "deflection": (5 * w * a**4 / (384 * E * inertia), BAY),
        "rail_square": (square, BAY),
        "rail_along": (along, absolute(BAY * max(along, pull))),
        "screw": (x["bay.screw_spacing"] * hypot(square, along), BAY),
        "limit": (limit, BAY),
        "utilisation": (stress / limit, BAY),
    }


def bay_bears(chance):
    at = bay(chance)
    answers = bay_load(at, exact(at))
    return (at, {f"load.{name}": (value, "", near) for name, (value, near) in answers.items()}) if answers else bay_bears(chance)


# --- ropes ---


def rope(chance):
    at = {
        "rope.run": chance.choice(("straight", "zigzag")),
        "rope.upper_x": chance.uniform(2, 5),
        "rope.upper_y": chance.uniform(0.5, 4),
        "rope.lower_y": chance.uniform(-1, 0.4),
        "rope.pitch": between(chance, 0.05, 6),
        "rope.ends": chance.uniform(0, 2),
    }
    at["rope.lower_x"] = at["rope.upper_x"] + chance.choice((0.0, chance.uniform(-1, 1)))
    for which in ("line", "film"):
        given = {"sag": between(chance, 1e-4, 0.5)} if chance.random() < 0.5 else give(chance, 0.5)
        at[f"rope.{which}.by"] = "sag" if "sag" in given else "stretch"
        at.update({f"rope.{which}.{name}": value for name, value in given.items()})
    return at


def gives(x, which, span):
    got = {name: x[f"rope.{which}.{name}"] for name in ("sag", "slack", "stiffness", "pretension") if f"rope.{which}.{name}" in x}
    return {**got, "sag": got["sag"] * span} if "sag" in got else got


def unstretched(x, which):
    got = gives(x, which, mpf(1))
    b = 2 * atan(2 * got["sag"]) if "sag" in got else None
    return b / sin(b) - 1 if b else 1 / (1 + got["pretension"] / got["stiffness"]) - 1 if "pretension" in got else got.get("slack", mpf(0))


def strung(at, x, length):
    """Bays, pitch, height and lean of the hooks' line, leg, slant, and the leg's slack."""
    bays = max(int(ceil(length / x["rope.pitch"] - mpf("1e-9"))), 1)
    out, down = x["rope.lower_x"] - x["rope.upper_x"], x["rope.upper_y"] - x["rope.lower_y"]
    a, h = length / bays, hypot(out, down)
    zigzag = at["rope.run"] == "zigzag"
    return bays, a, h, atan2(out, down), hypot(h, a / 2) if zigzag else h, atan2(a / 2, h) if zigzag else mpf(0), unstretched(x, "line")


def bears(at, x, length, p):
    bays, a, h, lean, leg, slant, slack = strung(at, x, length)
    zigzag = at["rope.run"] == "zigzag"
    load = p * a / 2 * cos(slant) if zigzag else p * a
    line, film = belly(leg, load, **gives(x, "line", leg)), belly(a, p, **gives(x, "film", a))
    if line is None or film is None:
        return None
    legs = 2 if zigzag else 1
    n, A = legs * line["square"], legs * line["along"] * cos(slant)
    pull, count, ropes = hypot(n, A), 2 * bays if zigzag else bays + 1, 1 if zigzag else bays + 1
    near = absolute(ROPE * legs * line["tension"])
    return {
        "tension": (line["tension"], ROPE),
        "anchor_up": (n * sin(lean) + A * cos(lean), near),
        "pitch": (a, ROPE),
        "leg": (leg, ROPE),
        "slant": (slant, ROPE),
        "lean": (lean, absolute(ROPE)),
        "load": (load, ROPE),
        "sag": (line["sag"], ROPE),
        "film_tension": (film["tension"], ROPE),
        "film_sag": (film["sag"], ROPE),
        "billow": (line["sag"] + film["sag"], ROPE),
        "hook_out": (n * cos(lean) + A * sin(lean), near),
        "hook_up": (n * sin(lean) - A * cos(lean), near),
        "anchor_out": (n * cos(lean) - A * sin(lean), near),
        "pull": (pull, ROPE),
        "end_along": (line["along"] * sin(slant), absolute(ROPE * line["tension"])),
        "edge_pull": (film["along"], absolute(ROPE * film["tension"])),
        "slack": (slack, absolute(ROPE)),
        "rope_length": (count * leg * (1 + slack) + ropes * 2 * x["rope.ends"], ROPE),
    }


SHARES = {"rope": "tension", "hook": "pull", "anchor": "pull", "film": "film_tension"}


def rope_bears(chance):
    at = dict(rope(chance), length=between(chance, 1, 500), pressure=between(chance, 0.1, 1e4))
    x = exact(at)
    answers = bears(at, x, x["length"], x["pressure"])
    if answers is None:
        return rope_bears(chance)
    for name, share in SHARES.items():
        at[f"rope.{name}_limit"] = between(chance, 1, 1e6)
        answers[f"{name}_utilisation"] = (answers[share][0] / mpf(at[f"rope.{name}_limit"]), ROPE)
    return at, {f"roped.{name}": (value, "", near) for name, (value, near) in answers.items()}


def pitch_most(chance):
    """Where the greatest share of a limit is 1, of one bay as long as its pitch."""
    at = {**rope(chance), **bay(chance)}
    del at["rope.pitch"], at["bay.pitch"]
    for name in SHARES:
        if chance.random() < 0.7:
            at[f"rope.{name}_limit"] = between(chance, 10, 1e6)
    x = exact(at)

    def share(pitch):
        y = dict(x, **{"rope.pitch": pitch, "bay.pitch": pitch, "bay.overhang": x["bay.overhang"] + (pitch / 2 if at["rope.run"] == "zigzag" else 0)})
        roped, load = bears(at, y, pitch, x["bay.pressure"]), bay_load(at, y)
        if load is None or roped is None:
            return None
        return max(load["utilisation"][0], *(roped[of][0] / x[f"rope.{name}_limit"] for name, of in SHARES.items() if f"rope.{name}_limit" in x), mpf(0))

    least, most = share(mpf("0.05")), share(mpf(6))
    if least is None or most is None or not least < 1 < most:
        return pitch_most(chance)
    at.update({"rope.pitch": 1.0, "bay.pitch": 1.0})
    return at, {"pitch": (root(lambda pitch: share(pitch) - 1, mpf("0.05"), mpf(6)), "", absolute(1e-12))}


# --- air ---


def air(chance):
    at = {
        "air.sides": chance.choice(("one", "alike", "other")),
        "air.blocked": chance.choice((0.0, chance.uniform(0, 0.99))),
        "air.wind": chance.choice((0.0, between(chance, 0.01, 60))),
        "air.warmth": chance.choice(("given", "sun", "sun")),
        "air.outside": chance.uniform(-60, 60),
        "air.floor_area": between(chance, 10, 1e4),
        "air.volume": between(chance, 10, 1e5),
        "air.roof_vent": chance.choice(("none", "vent")),
        "air.changes_asked": between(chance, 1e-4, 0.1),
        "length": between(chance, 1, 500),
        "opening": between(chance, 0.01, 5),
    }
    if at["air.sides"] == "other":
        at.update({"air.other_opening": between(chance, 0.01, 10), "air.other_length": between(chance, 1, 500)})
    if at["air.sides"] != "one":
        at["air.effectiveness"] = chance.uniform(0.1, 1)
    if at["air.roof_vent"] == "vent":
        at.update({"air.vent_area": between(chance, 0.1, 1e3), "air.vent_rise": between(chance, 0.1, 20)})
    if at["air.warmth"] == "given":
        at["air.warmer"] = chance.uniform(0.1, 60)
    else:
        at.update({"air.sun": between(chance, 1, 1500), "air.transmission": chance.uniform(0.01, 1), "air.evaporation": chance.uniform(0, 0.99), "air.cover_area": between(chance, 10, 1e5), "air.cover_loss": between(chance, 0.1, 100), "air.density": chance.uniform(0.5, 2), "air.heat": chance.uniform(500, 2000), "air.rise_asked": between(chance, 0.1, 60)})
    return at


def flows(at, x, opening, rise):
    """By wind, by warmth through the sides, and to the roof vent; with both areas."""
    clear = 1 - x["air.blocked"]
    A = clear * x["length"] * opening
    B, height = {"one": lambda: (mpf(0), mpf(0)), "alike": lambda: (A, opening), "other": lambda: (clear * x["air.other_length"] * x["air.other_opening"], x["air.other_opening"])}[at["air.sides"]]()
    outside = x["air.outside"] + mpf("273.15")

    def series(one, other):
        return one * other / hypot(one, other) if one and other else mpf(0)

    def one_side(area, height):
        return mpf("0.61") / 3 * area * sqrt(GRAVITY * height * rise / (outside + rise / 2))

    across = x["air.effectiveness"] * sqrt(mpf(2)) * series(A, B) * x["air.wind"] if at["air.sides"] != "one" else mpf(0)
    vent = mpf("0.61") * series(A + B, x["air.vent_area"]) * sqrt(2 * GRAVITY * x["air.vent_rise"] * rise / (outside + rise)) if at["air.roof_vent"] == "vent" else mpf(0)
    return (max(across, mpf("0.025") * max(A, B) * x["air.wind"]), one_side(A, opening) + one_side(B, height), vent), A, B


def air_through(chance):
    at = air(chance)
    x = exact(at)
    if at["air.warmth"] == "given":
        gained, heat, lost, rise = None, None, None, x["air.warmer"]
    else:
        gained = x["air.sun"] * x["air.transmission"] * (1 - x["air.evaporation"]) * x["air.floor_area"]
        heat, lost = x["air.density"] * x["air.heat"], x["air.cover_loss"] * x["air.cover_area"]
        rise = root(lambda rise: (heat * max(flows(at, x, x["opening"], rise)[0]) + lost) * rise - gained, mpf(0), gained / lost)
    through, A, B = flows(at, x, x["opening"], rise)
    flow = max(through)
    answers = {
        "flow": (flow, AIR),
        "rise": (rise, AIR if gained else absolute(0)),
        "area": (A, AIR),
        "other_area": (B, AIR),
        "floor_share": ((A + B) / x["air.floor_area"], AIR),
        "vent_share": (x.get("air.vent_area", mpf(0)) / x["air.floor_area"], AIR),
        "flow_wind": (through[0], AIR),
        "flow_warmth": (through[1], AIR),
        "flow_vent": (through[2], AIR),
        "changes": (flow / x["air.volume"], AIR),
    }

    def least(asked, rise):
        """The least opening, and how far it may be off: where the flow is off by the accuracy of the flow."""
        beyond = lambda opening: max(flows(at, x, opening, rise)[0]) - asked
        if asked <= 0 or beyond(x["opening"]) <= asked * mpf("1e-6") or beyond(mpf(10) ** -30) > 0:
            return None
        opening = root(beyond, mpf(10) ** -30, x["opening"])
        step = opening * mpf(10) ** -12
        rate = min(fabs(beyond(opening + step)), fabs(beyond(opening - step))) / step
        return (opening, absolute(AIR * (opening + asked / rate))) if rate else None

    asked = x["air.changes_asked"] * x["air.volume"]
    openings = {"for_changes": least(asked, gained / (heat * asked + lost) if gained else rise)}
    if gained:
        openings["for_rise"] = least((gained / x["air.rise_asked"] - lost) / heat, x["air.rise_asked"])
    answers.update({name: found for name, found in openings.items() if found})
    return at, {f"airing.{name}": (value, "", near) for name, (value, near) in answers.items()}


PRESSURE = 2e-15
BELLY = 2e-15
LOOSE = 4e-15
BAY = 4e-15
ROPE = 4e-15
AIR = 4e-15
FUNCTIONS = {
    "tside_wind_pressure": wind_pressure,
    "tside_wind_speed": wind_speed,
    "tside_span_belly": span_belly,
    "tside_loose_limits": loose_limits,
    "tside_loose_blown": loose_blown,
    "tside_bay_bears": bay_bears,
    "tside_rope_bears": rope_bears,
    "tside_pitch_most": pitch_most,
    "tside_air_through": air_through,
}
FEW = {}
