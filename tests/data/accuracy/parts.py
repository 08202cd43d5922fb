# SPDX-License-Identifier: MIT
"""Materials, tubes, bolts, drive, cable, crank, and the roll."""

from common import KSI, absolute, between, exact
from mpmath import mpf, pi, power, sqrt


def roll(chance):
    return {
        "roll.core": between(chance, 1e-3, 1),
        "roll.thickness": chance.choice((0.0, between(chance, 1e-6, 0.2))),
        "roll.packing": between(chance, 0.1, 5),
    }


def te(at):
    return at["roll.packing"] * at["roll.thickness"]


def taken_up(chance):
    at = dict(roll(chance), wraps=between(chance, 1e-3, 1000))
    x = exact(at)
    return at, {"length": (pi * x["wraps"] * (x["roll.core"] + te(x) * x["wraps"]), "m", 1e-15)}


def wraps(chance):
    at = dict(roll(chance), taken_up=between(chance, 1e-3, 10000))
    x = exact(at)
    q = x["taken_up"] / pi
    # the root of te n^2 + D0 n = q that is not below 0
    n = q / x["roll.core"] if te(x) == 0 else (sqrt(x["roll.core"] ** 2 + 4 * te(x) * q) - x["roll.core"]) / (2 * te(x))
    return at, {"wraps": (n, "turn", 1e-15)}


def diameter(chance):
    at = dict(roll(chance), wraps=between(chance, 1e-3, 1000))
    x = exact(at)
    return at, {"diameter": (x["roll.core"] + 2 * te(x) * x["wraps"], "m", 5e-16)}


def thickness(chance):
    core, before, turns = between(chance, 1e-3, 1), chance.choice((0.0, between(chance, 0.1, 1000))), between(chance, 0.1, 1000)
    least = float(pi * core * turns)
    at = {"core": core, "wraps_before": before, "turns": turns, "taken_up": min(least * between(chance, 1.001, 10), 10000.0)}
    x = exact(at)
    under = x["turns"] * (2 * x["wraps_before"] + x["turns"])
    answer = (x["taken_up"] / pi - x["turns"] * x["core"]) / under
    return (at, {"thickness": (answer, "m", float(5e-16 * (x["taken_up"] / pi / under / answer)))}) if answer > 0 else thickness(chance)


def cable(chance):
    at = {
        "cable.wire": "awg",
        "cable.strands": chance.choice(("stranded", "solid", "flexible")),
        "cable.gauge": chance.randint(-3, 40),
        "cable.length": between(chance, 0.01, 10000),
        "cable.temperature": chance.uniform(-60, 200),
    }
    x = exact(at)
    breadth = mpf("0.127e-3") * power(92, mpf(36 - at["cable.gauge"]) / 39)
    per_metre = mpf("1e-6") / 58 / (pi * breadth**2 / 4) * (1 if at["cable.strands"] == "solid" else mpf("1.02"))
    return at, {"resistance": (2 * x["cable.length"] * per_metre * (1 + mpf("0.00393") * (x["cable.temperature"] - 20)), "ohm", 2e-15)}


def crank(chance):
    at = {
        "crank.fitted": "crank",
        "crank.rule": "given",
        "crank.effort_limit": between(chance, 1, 500),
        "crank.ratio": between(chance, 0.1, 100),
        "crank.efficiency": between(chance, 0.1, 1),
        "crank.arm": between(chance, 0.05, 1),
        "crank.rate": between(chance, 0.5, 10),
        "torque": between(chance, 0.1, 1000),
        "drive_turns": between(chance, 0.1, 1000),
    }
    x = exact(at)
    effort = x["torque"] / (x["crank.ratio"] * x["crank.efficiency"] * x["crank.arm"])
    turns = x["drive_turns"] * x["crank.ratio"]
    return at, {
        "cranking.effort": (effort, "N", 1e-15),
        "cranking.utilisation": (effort / x["crank.effort_limit"], "", 1e-15),
        "cranking.turns": (turns, "turn", 1e-15),
        "cranking.time": (2 * pi * turns / x["crank.rate"], "s", 1e-15),
    }


def twist(chance):
    at = {
        "per_metre": between(chance, 1e-3, 1e4),
        "length": between(chance, 0.1, 500),
        "shear_modulus": between(chance, 1e9, 1e11),
        "torsion": between(chance, 1e-12, 1e-2),
    }
    x = exact(at)
    return at, {"twist": (x["per_metre"] * x["length"] ** 2 / (2 * x["shear_modulus"] * x["torsion"]), "rad", 1e-15)}


def round_section(D, wall):
    d = D - 2 * wall
    area, inertia = pi / 4 * (D**2 - d**2), pi / 64 * (D**4 - d**4)
    return {
        "area": area,
        "inertia": inertia,
        "section_modulus": 2 * inertia / D,
        "plastic_modulus": (D**3 - d**3) / 6,
        "gyration": sqrt(inertia / area),
        "torsion": 2 * inertia,
        "torsion_modulus": 4 * inertia / D,
    }


def round_tube(chance):
    """A wall as thin as its bounds allow: what is printed as D^4 - d^4 would cancel."""
    across = between(chance, 1e-3, 1)
    at = {"tube.diameter": across, "tube.wall": between(chance, 1e-5, min(0.1, 0.49 * across)), "density": between(chance, 1000, 10000)}
    x = exact(at)
    answers = round_section(x["tube.diameter"], x["tube.wall"])
    answers["mass"] = x["density"] * answers["area"]
    return at, {f"section.{name}": (value, SECTION[name], 2e-15) for name, value in answers.items()}


SECTION = {"area": "m2", "inertia": "m4", "section_modulus": "m3", "plastic_modulus": "m3", "gyration": "m", "torsion": "m4", "torsion_modulus": "m3", "mass": "kg/m"}


def square_section(B, T, outer, inner):
    """EN 10219-2, annex B, as it is printed: what lies between a corner and its round, outside less inside."""
    share, centre, own = 1 - pi / 4, (10 - 3 * pi) / (12 - 3 * pi), mpf(1) / 3 - pi / 16 - 1 / (3 * (12 - 3 * pi))

    def corners(width, radius):
        area, arm = share * radius**2, width / 2 - centre * radius
        return 4 * area, 4 * area * arm, 4 * (own * radius**4 + area * arm**2)

    (A, S, I), (a, s, i) = corners(B, outer), corners(B - 2 * T, inner)
    b = B - 2 * T
    area, inertia, plastic = B**2 - b**2 - (A - a), (B**4 - b**4) / 12 - (I - i), (B**3 - b**3) / 4 - (S - s)
    amid = (outer + inner) / 2
    h, Ah = 4 * (B - T) - 2 * amid * (4 - pi), (B - T) ** 2 - amid**2 * (4 - pi)
    K = 2 * Ah * T / h
    torsion = T**3 * h / 3 + 2 * K * Ah
    return {
        "area": area,
        "inertia": inertia,
        "section_modulus": 2 * inertia / B,
        "plastic_modulus": plastic,
        "gyration": sqrt(inertia / area),
        "torsion": torsion,
        "torsion_modulus": torsion / (T + K / T),
    }


def usual_radii(wall):
    """Outer and inner, of a wall given as a double."""
    outer = mpf(wall) * (2 if wall <= 6e-3 else 2.5 if wall <= 10e-3 else 3)
    return outer, outer - mpf(wall)


def square_tube(chance):
    side = between(chance, 1e-3, 1)
    at = {"tube.side": side, "tube.wall": between(chance, 1e-5, min(0.1, 0.24 * side)), "density": between(chance, 1000, 10000)}
    if at["tube.wall"] > 6e-3:
        at["tube.wall"] = min(at["tube.wall"], 0.16 * side)
    x = exact(at)
    outer, inner = usual_radii(at["tube.wall"])
    if chance.random() < 0.5:
        at.update({"tube.corner": "given", "tube.inner_radius": float(inner) * chance.uniform(0, 1)})
        at["tube.outer_radius"] = at["tube.inner_radius"] + at["tube.wall"] * chance.uniform(0, 1)
        outer, inner = mpf(at["tube.outer_radius"]), mpf(at["tube.inner_radius"])
    answers = square_section(x["tube.side"], x["tube.wall"], outer, inner)
    answers["mass"] = x["density"] * answers["area"]
    return at, {f"section.{name}": (value, "", SQUARE) for name, value in answers.items()}


METALS = {"steel": (29000 * KSI, 11200 * KSI, 7850, "1.67", "12e-6"), "aluminium_6061": (10100 * KSI, 3800 * KSI, 2700, "1.65", "23e-6"), "aluminium_6063": (10100 * KSI, 3800 * KSI, 2700, "1.65", "23e-6")}
GRADES = {
    "A53_B": ("steel", 35 * KSI),
    "A500_B_round": ("steel", 42 * KSI),
    "A500_B_shaped": ("steel", 46 * KSI),
    "A500_C_round": ("steel", 46 * KSI),
    "A500_C_shaped": ("steel", 50 * KSI),
    "S235": ("steel", 235 * mpf(10) ** 6),
    "S355": ("steel", 355 * mpf(10) ** 6),
    "6061_T6": ("aluminium_6061", 35 * KSI),
    "6063_T5": ("aluminium_6063", 16 * KSI),
    "6063_T6": ("aluminium_6063", 25 * KSI),
}


def material(chance):
    at, strength = {"material.metal": "steel", "material.grade": chance.choice(("given", *GRADES))}, None
    if at["material.grade"] == "given":
        at["material.metal"] = chance.choice(tuple(METALS))
        at["material.yield"] = between(chance, 1e6, 2e9)
        strength, near = mpf(at["material.yield"]), absolute(0)
    else:
        (at["material.metal"], strength), near = GRADES[at["material.grade"]], 3e-16
    E, G, density, safety, expansion = METALS[at["material.metal"]]
    return at, {
        "values.yield": (strength, "", near),
        "values.modulus": (E, "", 3e-16),
        "values.shear_modulus": (G, "", 3e-16),
        "values.density": (mpf(density), "", absolute(0)),
        "values.safety": (mpf(safety), "", 3e-16),
        "values.expansion": (mpf(expansion), "", 3e-16),
    }


# diameter, pitch, neck, its depth, nut, holes; washers narrow and wide: thinnest, thickest. As the standards in bolt.h have them, in the series' unit.
BOLTS = {
    "1/4": ("1/4", "1/20", "0.260", "0.156", "0.226", ("17/64", "9/32", "19/64"), (("0.051", "0.080"), ("0.051", "0.080"))),
    "5/16": ("5/16", "1/18", "0.324", "0.187", "0.273", ("21/64", "11/32", "23/64"), (("0.051", "0.080"), ("0.064", "0.104"))),
    "3/8": ("3/8", "1/16", "0.388", "0.219", "0.337", ("25/64", "13/32", "27/64"), (("0.051", "0.080"), ("0.064", "0.104"))),
    "1/2": ("1/2", "1/13", "0.515", "0.281", "0.448", ("17/32", "9/16", "39/64"), (("0.074", "0.121"), ("0.086", "0.132"))),
    "M6": ("6", "1", "6.48", "4.6", "5.2", ("6.4", "6.6", "7"), (("1.4", "1.8"), ("1.4", "1.8"))),
    "M8": ("8", "1.25", "8.58", "5.6", "6.8", ("8.4", "9", "10"), (("1.4", "1.8"), ("1.8", "2.2"))),
    "M10": ("10", "1.5", "10.58", "6.6", "8.4", ("10.5", "11", "12"), (("1.8", "2.2"), ("2.3", "2.7"))),
    "M12": ("12", "1.75", "12.7", "8.75", "10.8", ("13", "13.5", "14.5"), (("2.3", "2.7"), ("2.7", "3.3"))),
}
STOCK = {
    False: [mpf(3 + i) / 4 for i in range(10)] + [mpf(7 + i) / 2 for i in range(6)] + [mpf(7 + i) for i in range(6)],
    True: [mpf(20 + 5 * i) for i in range(11)] + [mpf(80 + 10 * i) for i in range(9)] + [mpf(180), mpf(200)],
}
TENSILE = {"A307_A": 60 * KSI, "J429_2": 74 * KSI, "J429_5": 120 * KSI, "J429_8": 150 * KSI, "class_4_8": mpf(420) * 10**6, "class_8_8": mpf(800) * 10**6, "class_10_9": mpf(1040) * 10**6}


def number(text):
    over, _, under = text.partition("/")
    return mpf(over) / mpf(under or 1)


def bolt(chance):
    size = chance.choice(tuple(BOLTS))
    metric = size[0] == "M"
    at = {
        "bolt.size": size,
        "bolt.washer": chance.choice(("narrow", "wide")),
        "bolt.clearance": chance.choice(("close", "normal", "loose")),
        "bolt.grade": chance.choice(("unknown", "given", *(("class_4_8", "class_8_8", "class_10_9") if metric else ("A307_A", "J429_2", "J429_5", "J429_8")))),
        "bolt.grip": between(chance, 0.01, 0.17 if metric else 0.27),
        "bolt.washers": str(chance.randint(0, 3)),
        "bolt.planes": str(chance.randint(1, 2)),
        "bolt.force": between(chance, 1, 1e6),
    }
    if at["bolt.grade"] == "given":
        at["bolt.shear_limit"] = between(chance, 1, 1e6)
    unit = mpf("0.001") if metric else mpf("0.0254")
    d, pitch, neck, depth, nut = map(number, BOLTS[size][:5])
    hole = number(BOLTS[size][5][("close", "normal", "loose").index(at["bolt.clearance"])])
    thinnest, thickest = map(number, BOLTS[size][6][at["bolt.washer"] == "wide"])
    return at, metric, unit, d, pitch, neck, depth, nut, hole, thinnest, thickest


def shear_area(metric, unit, d, pitch):
    return pi / 4 * ((d - (mpf("0.9382") if metric else mpf("0.9743")) * pitch) * unit) ** 2


def bolt_choose(chance):
    """A bolt that tightens; the length is one of a list, and all lengths are within a rounding of an inch or a millimetre times what is printed."""
    at, metric, unit, d, pitch, neck, depth, nut, hole, thinnest, thickest = bolt(chance)
    count, grip = int(at["bolt.washers"]), mpf(at["bolt.grip"]) / unit
    need = grip + count * thickest + nut + 2 * pitch
    lengths = [length for length in STOCK[metric] if length >= need]
    if not lengths:
        return bolt_choose(chance)
    length = lengths[0]
    thread = 2 * d + ((6 if length <= 125 else 12) if metric else mpf(1) / 4 if length <= 6 else mpf(1) / 2)
    plain = max(length - thread, depth + 3 * pitch)
    if plain >= grip + count * thinnest:
        return bolt_choose(chance)
    area, planes, force = shear_area(metric, unit, d, pitch), int(at["bolt.planes"]), mpf(at["bolt.force"])
    grade = at["bolt.grade"]
    answers = {
        "length": (length * unit, 5e-16),
        "unthreaded": (plain * unit, 5e-16),
        "thread": ((length - plain) * unit, absolute(1e-16)),
        "beyond": ((length - need + 2 * pitch) * unit, absolute(1e-16)),
        "diameter": (d * unit, 5e-16),
        "pitch": (pitch * unit, 5e-16),
        "hole": (hole * unit, 5e-16),
        "square_hole": (max(hole, neck) * unit, 5e-16),
        "neck": (neck * unit, 5e-16),
        "nut_height": (nut * unit, 5e-16),
        "edge": (3 * d / 2 * unit, 5e-16),
        "stress_area": (area, 2e-15),
    }
    if grade == "unknown":
        answers["strength_needed"] = (force * 2 / (mpf("0.563") * area * planes), 2e-15)
    else:
        tensile = TENSILE.get(grade)
        if grade == "J429_2" and length > 6:
            tensile = 60 * KSI
        limit = planes * (mpf(at["bolt.shear_limit"]) if grade == "given" else mpf("0.563") * tensile * area / 2)
        answers.update(shear_limit=(limit, 2e-15), utilisation=(force / limit, 2e-15))
    return at, {f"plan.{name}": (value, "", near) for name, (value, near) in answers.items()}


def bolt_bearing(chance):
    at, metric, unit, d, pitch, neck, depth, nut, hole, *_ = bolt(chance)
    grade = chance.choice(("unknown", "given", *GRADES))
    metal = GRADES[grade][0] if grade in GRADES else chance.choice(tuple(METALS))
    at.update({"part.wall": between(chance, 1e-5, 0.1), "part.walls": str(chance.randint(1, 2)), "part.material.metal": metal, "part.material.grade": grade})
    if grade == "given":
        at["part.material.yield"] = between(chance, 1e6, 2e9)
    strength = mpf(at["part.material.yield"]) if grade == "given" else GRADES[grade][1] if grade in GRADES else None
    each = (mpf("1.8") if metal == "steel" else 2) * d * unit
    if chance.random() < 0.6:
        at["part.edge"] = float(3 * d / 2 * unit) * chance.choice((1.0, between(chance, 1, 3)))
        edge = mpf(at["part.edge"])
        each = min(each, mpf("1.2") * (edge - max(hole, neck) * unit / 2) if metal == "steel" else edge)
    area = int(at["part.walls"]) * mpf(at["part.wall"]) * each / (2 if metal == "steel" else mpf("1.95"))
    force = mpf(at["bolt.force"])
    if strength is None:
        return at, {"bearing.yield_needed": (force / area, "", 2e-15)}
    return at, {"bearing.limit": (strength * area, "", 2e-15), "bearing.utilisation": (force / strength / area, "", 2e-15)}


# As ASME B36.10M and the chain-link trade have them, in inches.
SIZES = {"3/4": "1.050", "1": "1.315", "1-1/4": "1.660", "1-1/2": "1.900", "2": "2.375", "2-1/2": "2.875", "3": "3.500"}
SCHEDULE_40 = {"3/4": "0.113", "1": "0.133", "1-1/4": "0.140", "1-1/2": "0.145", "2": "0.154", "2-1/2": "0.203", "3": "0.216"}
SCHEDULE_80 = {"3/4": "0.154", "1": "0.179", "1-1/4": "0.191", "1-1/2": "0.200", "2": "0.218", "2-1/2": "0.276", "3": "0.300"}
FENCE = {"1-3/8 in": "1.315", "1-5/8 in": "1.660", "1-7/8 in": "1.900", "2 in": "1.900", "2-3/8 in": "2.375", "2-1/2 in": "2.375", "2-7/8 in": "2.875", "3 in": "2.875"}


def tube_size(chance):
    if chance.random() < 0.3:
        written = round(chance.uniform(1, 1000), chance.randint(0, 6))
        return {"text": f"tube {written!r} mm"}, {"diameter": (mpf(repr(written)) / 1000, "", 1.2e-16)}
    family, names = chance.choice((("nps", SIZES), ("fence", FENCE)))
    name = chance.choice(tuple(names))
    return {"text": f"{family} {name}"}, {"diameter": (mpf(names[name]) * mpf("0.0254"), "", 5e-16)}


def tube_wall(chance):
    family, names = chance.choice((("sch 40 nps", SCHEDULE_40), ("sch 80 nps", SCHEDULE_80)))
    name = chance.choice(tuple(names))
    return {"text": f"{family} {name}"}, {"wall": (mpf(names[name]) * mpf("0.0254"), "", 5e-16)}


def stall(chance):
    at = {"drive.kind": chance.choice(("motor", "motor", "hand")), "running": between(chance, 0.1, 1e4)}
    torque = mpf(at["running"])
    if at["drive.kind"] == "motor":
        at["drive.safety_factor"] = chance.uniform(1, 10)
        torque *= mpf(at["drive.safety_factor"])
        if chance.random() < 0.5:
            at["drive.rated_torque"] = between(chance, 0.01, 1e5)
            torque = mpf(at["drive.rated_torque"])
    torque *= mpf("2.5")
    if at["drive.kind"] == "motor" and chance.random() < 0.5:
        at["drive.stall_torque"] = between(chance, 0.01, 1e6)
        torque = mpf(at["drive.stall_torque"])
    if at["drive.kind"] == "motor" and chance.random() < 0.5:
        at["drive.supply_voltage"], at["drive.rated_voltage"] = between(chance, 0.1, 1000), between(chance, 0.1, 1000)
        torque *= mpf(at["drive.supply_voltage"]) / mpf(at["drive.rated_voltage"])
    return at, {"torque": (torque, "", 5e-16)}


def cable_smallest(chance):
    """By gauge: the first size whose drop is not above what may be lost."""
    at = {
        "cable.wire": "awg",
        "cable.strands": chance.choice(("stranded", "solid", "flexible")),
        "cable.length": between(chance, 1, 1000),
        "cable.temperature": chance.uniform(-60, 200),
        "voltage": between(chance, 5, 500),
        "current": between(chance, 0.1, 100),
        "loading": str(chance.randint(0, 1)),
        "drop": 0.0,
    }
    at["drop"] = at["voltage"] * between(chance, 0.01, 0.3)
    x = exact(at)
    for gauge in (20, 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3):
        breadth = mpf("0.127e-3") * power(92, mpf(36 - gauge) / 39)
        R = 2 * x["cable.length"] * mpf("1e-6") / 58 / (pi * breadth**2 / 4) * (1 if at["cable.strands"] == "solid" else mpf("1.02"))
        R *= 1 + mpf("0.00393") * (x["cable.temperature"] - 20)
        current = x["current"] if at["loading"] == "0" else x["voltage"] * x["current"] / (x["voltage"] + R * x["current"])
        if R * current <= x["drop"]:
            return at, {"smallest.gauge": (gauge, "", ""), "smallest.length": (x["cable.length"], "", absolute(0))}
    return cable_smallest(chance)


def along(chance):
    """Sums of a few lengths."""
    at = {
        "along.hung": chance.choice(("extender", "hip")),
        "along.bow": between(chance, 0.01, 1),
        "along.past": chance.uniform(0, 3),
        "along.alignment": chance.choice(("in_line", "given")),
        "along.along": chance.uniform(-1, 1),
        "along.half_length": chance.uniform(0, 1),
        "along.clearance": chance.uniform(0, 1),
    }
    if at["along.hung"] == "extender":
        at.update({"along.spacer": chance.uniform(0, 1), "along.tube": between(chance, 0.01, 1), "along.stand_off": chance.uniform(0, 1)})
    elif chance.random() < 0.5:
        at["along.eye_past"] = chance.uniform(0, 3)
    if at["along.alignment"] == "given":
        at["along.run_on"] = chance.uniform(0, 3)
    x = {name[6:]: value for name, value in exact(at).items()}
    room = x["half_length"] + x["clearance"]
    eye = x["bow"] / 2 + x["spacer"] + x["tube"] + x["stand_off"] if "tube" in x else x.get("eye_past", x["past"] + room + x["along"])
    run_on = x.get("run_on", eye - x["past"] - x["along"])
    line = x["past"] + run_on + x["along"]
    if run_on < room + mpf("1e-6"):
        return along(chance)
    answers = {"eye": eye, "run_on": run_on, "line": line, "misfit": line - eye, "clear": run_on - room}
    if "tube" in x or "eye_past" in x:
        answers["past_most"] = eye - x["along"] - room
    return at, {f"stand.{name}": (value, "", absolute(4e-15)) for name, value in answers.items()}


SQUARE = 2e-15
FUNCTIONS = {
    "tside_round_section": round_tube,
    "tside_bar_twist": twist,
    "tside_roll_taken_up": taken_up,
    "tside_roll_wraps": wraps,
    "tside_roll_diameter": diameter,
    "tside_roll_thickness": thickness,
    "tside_cable_resistance": cable,
    "tside_crank_effort": crank,
    "tside_square_section": square_tube,
    "tside_material_values": material,
    "tside_bolt_choose": bolt_choose,
    "tside_bolt_bearing": bolt_bearing,
    "tside_tube_size": tube_size,
    "tside_tube_wall": tube_wall,
    "tside_drive_stall": stall,
    "tside_cable_smallest": cable_smallest,
    "tside_along_stand": along,
}
FEW = {"tside_round_section": 8, "tside_crank_effort": 4}
