# SPDX-License-Identifier: MIT
"""The extender as a frame in space, solved by stiffness with its supports as constraints at the bow's and the member's face; its section by integration."""
import math
import random
import unittest

import tunnelside as ts
from sides import END, SIDE

try:
    import numpy as np
except ImportError:
    np = None

STEEL_E, STEEL_G = 29000 * 6894757.293168, 11200 * 6894757.293168  # AISC 360


def element(a, b, area, inertia, torsion):
    """A straight member between two places, 12 by 12, the same both ways across: Przemieniecki, Theory of Matrix Structural Analysis, from memory."""
    length = np.linalg.norm(b - a)
    x = (b - a) / length
    y = np.cross(x, [0.3, 0.5, 0.8])
    y /= np.linalg.norm(y)
    turn = np.kron(np.eye(4), np.array([x, y, np.cross(x, y)]))
    k = np.zeros((12, 12))
    for i, value in ((0, STEEL_E * area / length), (3, STEEL_G * torsion / length)):
        k[i, i] = k[i + 6, i + 6] = value
        k[i, i + 6] = k[i + 6, i] = -value
    bend = STEEL_E * inertia / length**3
    for v, r, sign in ((1, 5, 1), (2, 4, -1)):
        at = np.ix_([v, r, v + 6, r + 6], [v, r, v + 6, r + 6])
        s = sign * length
        k[at] += bend * np.array([[12, 6 * s, -12, 6 * s], [6 * s, 4 * s * s, -6 * s, 2 * s * s], [-12, -6 * s, 12, -6 * s], [6 * s, 2 * s * s, -6 * s, 4 * s * s]])
    return turn.T @ k @ turn


class Frame:
    """The tube from eye to member, its axis half a tube and a spacer outside the faces that hold it, its eye standing off it the other way."""

    def __init__(self, extender, layout, force, weight, bow_holds=True, at_axis=False):
        section = ts.square_section(extender.tube, 7850)
        eye = np.array([layout.eye_x, layout.eye_y, 0])
        down = np.array([layout.bow_x, layout.bow_height, 0]) - eye
        down /= np.linalg.norm(down)
        across = np.array([-down[1], down[0], 0])  # outboard and down
        place = [eye, eye + layout.bow_distance * down, eye + layout.member_distance * down]
        face = np.array([0, 0, 0 if at_axis else -(extender.tube.side / 2 + extender.spacer)])
        off = np.array([0, 0, extender.tube.side / 2 + extender.eye_stand_off])
        load = np.array([force, -weight, 0])
        n = 18
        k, self.parts = np.zeros((n, n)), []
        for i in (0, 1):
            part = element(place[i], place[i + 1], section.area, section.inertia, section.torsion)
            at = np.arange(6 * i, 6 * i + 12)
            k[np.ix_(at, at)] += part
            self.parts.append((at, part))
        f = np.zeros(n)
        f[:3], f[3:6] = load, np.cross(off, load)
        rows = []

        def hold(node, way):
            row = np.zeros(n)
            row[6 * node:6 * node + 3], row[6 * node + 3:6 * node + 6] = way, np.cross(face, way)
            rows.append(row)

        for node in (1, 2):
            hold(node, across)
            hold(node, np.array([0, 0, 1.0]))
        hold(1 if bow_holds else 2, down)
        tips = np.zeros(n)
        tips[9:12] = down
        rows.append(tips)
        c = np.array(rows)
        scale = STEEL_E * section.inertia
        solved = np.linalg.solve(np.block([[k / scale, c.T], [c, np.zeros((6, 6))]]), np.concatenate([f / scale, np.zeros(6)]))
        self.moved = solved[:n]
        held = -solved[n:] * scale  # what bolts and walls do to the tube
        self.bow_across, self.bow_out, self.member_across, self.member_out, self.held_along, self.tipping = held
        self.down, self.across = down, across

    def cut(self, part, end):
        """Force and moment on the end of a part, along (down, across, outward)."""
        at, k = self.parts[part]
        acts = (k @ self.moved[at])[6 * end:6 * end + 6]
        axes = np.array([self.down, self.across, [0, 0, 1]])
        return axes @ acts[:3], axes @ acts[3:]


def sections(tube, hole):
    """Net area and second moments by integration over the depth: holes in two opposite walls, at mid-depth and in the farthest walls."""
    side, wall = tube.side, tube.wall
    ro, ri = 2 * wall, wall  # EN 10219-2, to 6 mm

    def width(depth, half, radius):
        corner = np.clip(np.abs(depth) - (half - radius), 0, radius)
        return np.where(np.abs(depth) <= half, 2 * (half - radius + np.sqrt(radius**2 - corner**2)), 0)

    edges = [0, hole / 2, side / 2 - ro, side / 2 - wall, side / 2]  # in order, for what is tested
    depth = np.concatenate([a + (b - a) * (np.arange(20000) + 0.5) / 20000 for a, b in zip(edges, edges[1:])])
    step = np.concatenate([np.full(20000, 2 * (b - a) / 20000) for a, b in zip(edges, edges[1:])])  # of both halves
    metal = width(depth, side / 2, ro) - width(depth, side / 2 - wall, ri)
    mid = metal - 2 * wall * (np.abs(depth) < hole / 2)
    far = metal - hole * (np.abs(depth) > side / 2 - wall)
    return np.sum(mid * step), np.sum(mid * depth**2 * step), np.sum(far * depth**2 * step)


@unittest.skipUnless(np, "needs numpy")
class Extender(unittest.TestCase):
    def near(self, got, want, relative, floor=1e-6):
        self.assertLessEqual(abs(got - want), relative * abs(want) + floor, f"{got} is not {want}")

    def cases(self):
        dice = random.Random(8)
        for _ in range(40):
            extender = END.extender.replace(
                tube=ts.Square(side=dice.uniform(0.04, 0.08), wall=dice.uniform(0.002, 0.004)), angle=dice.uniform(0.5, 0.9), spacer=dice.choice([0.0, 0.02]),
                eye_stand_off=dice.uniform(0.0, 0.15), bar_clearance=0.0)
            plan = ts.plan_side(SIDE.replace(drive_end=END.replace(extender=extender, alignment="given", rise=dice.uniform(0.25, 0.4))))
            yield extender, plan.drive_end.layout, dice.uniform(-3000, 3000), dice.uniform(0, 300)

    def test_the_frame_bends_and_twists_as_the_tables_do(self):
        length, load = 1.3, 700.0
        k = element(np.zeros(3), np.array([length, 0, 0]), 1e-3, 2e-7, 3e-7)[6:, 6:]
        moved = np.linalg.solve(k, [load, load, 0, load, 0, 0])
        self.near(moved[0], load * length / (STEEL_E * 1e-3), 1e-9, 0)
        self.near(moved[1], load * length**3 / (3 * STEEL_E * 2e-7), 1e-9, 0)  # standard beam tables
        self.near(moved[5], load * length**2 / (2 * STEEL_E * 2e-7), 1e-9, 0)
        self.near(moved[3], load * length / (STEEL_G * 3e-7), 1e-9, 0)

    def test_bolts_and_walls_hold_what_the_frame_asks(self):
        ways = set()
        for extender, layout, force, weight in self.cases():
            bears = ts.extender_bears(extender, layout, force, weight, 0, 0)
            bow, member = (Frame(extender, layout, force, weight, bow_holds=holds) for holds in (True, False))
            floor = 1e-6 * (abs(force) + weight)
            self.near(bears.bow_shear, math.hypot(bow.bow_across, bow.held_along), 1e-6, floor)
            self.near(bears.member_shear, math.hypot(member.member_across, member.held_along), 1e-6, floor)
            flat = extender.tube.side / 2 - 2 * extender.tube.wall
            # a bolt pulls its tube inward; what pushes outward is the wall
            self.near(bears.bow_pull, abs(bow.tipping) / flat + max(0, -bow.bow_out), 1e-6, floor)
            self.near(bears.member_pull, max(0, -bow.member_out), 1e-6, floor)
            flat_frame = Frame(extender, layout, force, weight, at_axis=True)  # the tip is told in the wall's plane: nothing twists below the bow bolt
            self.near(bears.tip, flat_frame.across @ flat_frame.moved[:3], 1e-6, 1e-12)
            ways.add(bears.along > 0)
        self.assertEqual(ways, {True, False})

    def test_stresses_are_those_of_the_frame_on_the_net_section(self):
        for extender, layout, force, weight in self.cases():
            bears, tube, hole = ts.extender_bears(extender, layout, force, weight, 0, 0), extender.tube, extender.bolt_hole
            frame = Frame(extender, layout, force, weight)
            (along, across, _), (twist, above_out, bend_in) = frame.cut(0, 1)
            _, (_, below_out, _) = frame.cut(1, 0)
            area, at_mid, far = sections(tube, hole)
            self.near(bears.bending_in, abs(bend_in) * tube.side / 2 / at_mid, 1e-5)
            self.near(bears.bending_out, max(abs(above_out), abs(below_out)) * tube.side / 2 / far, 1e-5)
            self.near(bears.axial, abs(along) / area, 1e-5)
            self.near(bears.twist, abs(twist) / ts.square_section(tube, 7850).torsion_modulus, 1e-6)
            self.near(bears.shear, abs(across) / (2 * (tube.side - 4 * tube.wall) * tube.wall), 1e-6)
            root = extender.eye_root
            self.near(bears.eye_bolt, math.hypot(force, weight) * extender.eye_stand_off * (root / 2) / (math.pi * (root / 2)**4 / 4), 1e-12)

    def test_wind_along_the_house_bends_the_tube_and_pulls_at_its_bolts(self):
        dice = random.Random(3)
        for extender, layout, force, weight in self.cases():
            eye, spread = dice.uniform(0, 300), dice.uniform(0, 100)
            calm, blown = (ts.extender_bears(extender, layout, force, weight, *wind) for wind in ((0, 0), (eye, spread)))
            above, bow, member = extender.end_distance, layout.bow_distance, layout.member_distance
            places = np.linspace(-above, member + extender.tail, 100001)  # from the eye down, the load in short pieces
            middle, piece = (places[1:] + places[:-1]) / 2, np.diff(places)
            moment = eye * bow + np.sum(np.where(middle < bow, spread * piece * (bow - middle), 0))
            _, _, far = sections(extender.tube, extender.bolt_hole)
            self.near(blown.bending_wind, moment * extender.tube.side / 2 / far, 1e-4)
            # two bolts hold what the wind pushes, and its moment
            holds = np.linalg.solve([[1, 1], [bow, member]], [eye + spread * np.sum(piece), spread * np.sum(middle * piece)])
            self.near(blown.bow_pull - calm.bow_pull, abs(holds[0]), 1e-6)
            self.near(blown.member_pull - calm.member_pull, abs(holds[1]), 1e-6, 1e-4)
            normal = blown.bending_in + blown.bending_out + blown.bending_wind + blown.axial
            self.near(normal / blown.combined + ((blown.twist + blown.shear) / (0.6 * blown.combined))**2, 1, 1e-12, 0)
            for name in ("bending_in", "bending_out", "axial", "twist", "shear", "bow_shear", "member_shear", "tip", "eye_bolt"):
                self.assertEqual(getattr(calm, name), getattr(blown, name), name)
            self.assertEqual(calm.bending_wind, 0)

    def test_one_stress_is_h3_6_with_all_loads_scaled_alike(self):
        for extender, layout, force, weight in self.cases():
            bears = ts.extender_bears(extender, layout, force, weight, 0, 0)
            normal, shear, one = bears.bending_in + bears.bending_out + bears.axial, bears.twist + bears.shear, bears.combined
            self.near(normal / one + (shear / (0.6 * one))**2, 1, 1e-12, 0)  # AISC 360-16, H3-6: the sum that may not pass 1, at the limit
            mises = math.sqrt(normal**2 + 3 * shear**2)
            self.assertGreaterEqual(one, mises if normal > 0.14 * shear else 0.96 * mises)
            half = ts.extender_bears(extender, layout, force / 2, weight / 2, 0, 0)
            self.near(half.combined, one / 2, 1e-12, 0)

    def test_the_eye_bolt_bears_its_greatest_stand_off(self):
        for extender, layout, force, weight in self.cases():
            self.assertIsNone(ts.extender_bears(extender, layout, force, weight, 0, 0).stand_off_most)
            known = extender.replace(eye_material=ts.Material(grade="given", yield_=250e6))
            most = ts.extender_bears(known, layout, force, weight, 0, 0).stand_off_most
            if most <= 1:
                self.near(ts.extender_bears(known.replace(eye_stand_off=most), layout, force, weight, 0, 0).eye_bolt, 250e6 / 1.67, 1e-12)
            self.assertIsNone(ts.extender_bears(known, layout, 0, 0, 0, 0).stand_off_most)

    def test_the_flat_inside_is_aisc_s(self):
        # AISC Steel Construction Manual, Table 1-12: HSS2X2X1/8, design wall 0.116 in, flat of the inside 1.65 in, corners of 1.5 and 0.5 walls
        wall = 0.116 * 0.0254
        extender, layout = END.extender.replace(tube=ts.Square(side=2 * 0.0254, wall=wall, corner="given", outer_radius=1.5 * wall, inner_radius=0.5 * wall)), ts.plan_side(SIDE).drive_end.layout
        bears = ts.extender_bears(extender, layout, 1000, 0, 0, 0)
        self.near(abs(bears.across) / (2 * wall * bears.shear) / 0.0254, 1.65, 0, 0.005)

    def test_what_it_cannot_bear_is_refused_by_name(self):
        layout = ts.plan_side(SIDE).drive_end.layout
        wide = END.extender.replace(tube=ts.Square(side=0.02, wall=0.004))
        with self.assertRaises(ts.Error) as caught:
            ts.extender_bears(wide, layout, 1, 0, 0, 0)
        self.assertEqual((caught.exception.status, caught.exception.field), (ts.Status.CONTRADICTS, "extender.bolt_hole"))
        self.assertAlmostEqual(caught.exception.bound, 0.02 - 4 * 0.004)
        ts.extender_bears(wide.replace(bolt_hole=caught.exception.bound - 1e-6), layout, 1, 0, 0, 0)
        for force, weight, field in ((math.nan, 0, "force"), (1, -1, "weight")):
            with self.assertRaises(ts.Error) as caught:
                ts.extender_bears(END.extender, layout, force, weight, 0, 0)
            self.assertEqual(caught.exception.field, field)
        for eye, spread, field in ((-1, 0, "wind_eye"), (0, math.inf, "wind_tube")):
            with self.assertRaises(ts.Error) as caught:
                ts.extender_bears(END.extender, layout, 1, 0, eye, spread)
            self.assertEqual(caught.exception.field, field)
        round_inside = ts.Square(side=0.05, wall=0.003, corner="given", outer_radius=0.022, inner_radius=0.022)
        with self.assertRaises(ts.Error) as caught:
            ts.extender_bears(END.extender.replace(tube=round_inside, bolt_hole=0.004), layout, 1, 0, 0, 0)
        self.assertEqual(caught.exception.field, "extender.tube.inner_radius")


if __name__ == "__main__":
    unittest.main()
