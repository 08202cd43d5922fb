# SPDX-License-Identifier: MIT
"""The demo sites: their bolts, as ordered, are those that the library chooses for their grips, in their files' own hardware."""
import json
import os
import subprocess
import tempfile
import unittest
from pathlib import Path

import tunnelside as ts
from tree import tree

SITES = sorted((tree("examples/sites") / "examples" / "sites").glob("*.json"))
PROGRAM = Path(os.environ.get("BUILD", "")) / "examples" / "tunnelside-order"


def ordered(site):
    """Each side of an order, its pieces by end and code."""
    done = subprocess.run([PROGRAM, "--format=json", site], capture_output=True, text=True)
    return [{(piece["at"], piece["code"]): piece for piece in side["pieces"]} for side in json.loads(done.stdout)["sides"]]


def bolt_for(size, grip):
    washers = 1
    while True:
        try:
            return ts.bolt_choose(ts.Bolt(size=size, grip=grip, washers=washers))
        except ts.Error as error:
            if error.status != ts.Status.CONTRADICTS:
                raise
            washers += 1


class Sites(unittest.TestCase):
    def bolts(self, site, pieces):
        for end in ("drive_end", "free_end"):
            one = getattr(site.side, end)
            if one.hung.text != "extender":
                self.assertNotIn((end, "bow_bolt"), pieces)
                continue
            B, patch = one.extender.tube.side, site.fittings.patch_thickness
            grips = {"bow_bolt": B + patch + site.side.frame.tube.diameter, "member_bolt": B + 2 * patch + site.fittings.member_depth}
            for code, grip in grips.items():
                chosen, piece = bolt_for(site.fittings.bolt_size, grip), pieces[end, code]
                self.assertAlmostEqual(piece["length"]["value"], chosen.length, delta=1e-9, msg=code)
                self.assertAlmostEqual(piece["size"]["value"], chosen.diameter, delta=1e-9, msg=code)
                self.assertAlmostEqual(one.extender.bolt_hole, chosen.hole, delta=1e-6, msg="drilled for another bolt")

    @unittest.skipUnless(PROGRAM.exists(), "no program is built: no jansson")
    def test_bolts_are_those_for_their_grips(self):
        for path in SITES:
            sites, orders = ts.load(path), ordered(path)
            self.assertEqual(len(sites), len(orders))
            for site, pieces in zip(sites, orders):
                with self.subTest(path.name):
                    self.bolts(site, pieces)

    def test_hardware_follows_the_file(self):
        """A hip in feet or inches makes it inch hardware; a file says otherwise; and what is saved stays what it was."""
        inch, metric = (ts.load(SITES[0].parent / name)[0] for name in ("film30.json", "leanto_metric.json"))
        self.assertEqual((inch.fittings.bolt_size, inch.side.drive_end.extender.bolt_hole), (ts.BoltSize.BOLT_5_16, 11 / 32 * 0.0254))
        self.assertEqual((metric.fittings.bolt_size, metric.side.free_end.extender.bolt_hole), (ts.BoltSize.BOLT_M8, 9 * 0.001))
        self.assertEqual(ts.usual(ts.Side, "metric").drive_end.extender.eye_root, metric.side.drive_end.extender.eye_root)
        other = metric._replace(fittings=metric.fittings.replace(bolt_size="5/16"))
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder, "site.json")
            for site in (inch, metric, other):
                ts.save(path, site)
                self.assertEqual(ts.load(path), [site])
            path.write_text(json.dumps({**json.loads(path.read_text()), "fittings": {"hardware": "inch"}}))
            self.assertEqual(ts.load(path)[0].fittings, ts.Fittings())


if __name__ == "__main__":
    unittest.main()
