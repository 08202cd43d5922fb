# SPDX-License-Identifier: MIT
"""The library against a plan of the same sides that NumPy and SciPy compute from the mechanics, sharing no code with it: bench/analyst.py."""
import importlib.util
import sys
import unittest
from pathlib import Path

import tunnelside as ts

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "bench"))
LACKS = [name for name in ("numpy", "scipy") if importlib.util.find_spec(name) is None]

# What follows from an angle that nothing but the valley of the tip's flexibility decides: its bottom is flat, so that its place is known to half of
# the digits.
FROM_THE_ANGLE = ("layout.", "lines[")


@unittest.skipIf(LACKS, f"missing: {', '.join(LACKS)}")
class TestAgainstAnalyst(unittest.TestCase):
    def test_plumb_sides(self):
        import bench

        side, _, _, apart = bench.agreement(60, spacing=1.4)
        self.assertGreater(len(apart), 190)
        for path, difference in apart.items():
            self.assertLessEqual(difference, 1e-9, path)

    def test_angle_in_a_valley(self):
        import bench

        _, _, _, apart = bench.agreement(40, spacing=0.3)
        for path, difference in apart.items():
            self.assertLessEqual(difference, 5e-7 if any(word in path for word in FROM_THE_ANGLE) else 1e-9, path)

    def test_bows_bars_and_guides(self):
        """Half circles, pointed and flat bows; few and many wraps; every number of the side another one."""
        import analyst
        import bench

        changes = {
            "frame.peak_height": (6.322, 7.9, 2.9, 3.4), "frame.leg_height": (1.75, 1.8, 1.71, 1.9), "curtain.thickness": (0.15e-3, 6e-3, 0.0, 0.4e-3),
            "curtain.packing": (1.15, 0.8, 1.0, 1.3), "curtain.areal_mass": (0.14, 0.9, 0.2, 0.185), "curtain.wet": (0.035, 0.1, 0.0, 0.05),
            "curtain.standoff": (0.03, 0.05, 0.0, 0.08), "curtain.rail_depth": (0.0, 0.025, 0.03, 0.01), "curtain.past": (0.2, 0.3, 0.0, 0.25), "drive_end.extender.eye_stand_off": (0.35, 0.4, 0.1, 0.3), "free_end.extender.eye_stand_off": (0.3, 0.38, 0.05, 0.35),
            "stops.wraps_shut": (1.0, 0.8, 2.5, 1.5), "stops.seal": (0.1, 0.12, 0.06, 0.08), "friction": (0.15, 0.3, 0.0, 0.2), "drive.mass": (8.0, 5.0, 12.0, 3.0),
            "drive.collar_offset": (0.1, 0.0, 0.15, 0.08), "drive.safety_factor": (1.5, 2.0, 1.25, 1.0), "collar.offset": (0.05, 0.1, 0.0, 0.02),
            "drive_end.guide.chain": (0.06, 0.0, 0.05, 0.08), "drive_end.guide.placing_error": (0.02, 0.01, 0.04, 0.0), "bar.play": (0.03, 0.0, 0.05, 0.01),
            "out_of_level": (0.0, 0.02, -0.01, 0.005), "diameter_difference": (0.0, 0.02, -0.03, 0.01), "drive_end.extender.tube.wall": (3e-3, 2e-3, 4e-3, 6.5e-3),
        }
        side = bench.analyst_side(spacing=1.7)
        values = bench.values_of(side)
        bench.yields(values)
        values.update(changes)
        figures = analyst.plan(values)
        planned = ts.plan_many(changes, base=side, outputs=list(figures), errors="raise")
        for path, column in figures.items():
            self.assertLessEqual(bench.far_apart(column.tolist(), planned[path].tolist()), 1e-9, path)


if __name__ == "__main__":
    unittest.main()
