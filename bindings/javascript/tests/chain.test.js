// SPDX-License-Identifier: MIT
// The links of a plan, called one by one, answer what the plan of the whole side answers.
import assert from "node:assert";
import { readFileSync } from "node:fs";
import path from "node:path";
import test from "node:test";
import { refused, tree, ts } from "./library.js";

const { side } = ts.readSides(readFileSync(path.join(tree, "examples/sites/film30.json"), "utf8"))[0], plan = ts.planSide(side);
const near = (one, other, what) => assert.ok(Math.abs(one - other) <= 1e-7 * Math.max(1, Math.abs(other)), `${what}: ${one} and ${other}`);

const bow = ts.bowMake(side.frame), line = ts.lineMake(bow, side.curtain);
const roll = ts.Roll({ core: side.bar.tube.diameter + side.bar.core_over, thickness: side.curtain.thickness, packing: side.curtain.packing });
const travel = ts.travelMake(line, side.curtain, roll, side.stops), collar = ts.driveCollar(side.drive), { eye_x, eye_y } = plan.drive_end;
const { hang, sweep } = ts.hangMake(travel, side.drive_end.guide, collar, eye_x, eye_y, plan.drive_end.stand.misfit);
const layout = ts.extenderLayout(side.drive_end.extender, bow, side.curtain.hip, eye_x, eye_y, travel);
const load = ts.Load({ length: plan.curtain_length, bar_mass: 1.6, areal_mass: side.curtain.areal_mass });

test("where the bar is", () => {
  assert.strictEqual(ts.bowAt(bow, ts.bowAtHeight(bow, side.curtain.hip)).y, side.curtain.hip);
  near(ts.bowCrossing(bow, 0, side.curtain.hip, 0).distance, ts.bowAt(bow, ts.bowAtHeight(bow, side.curtain.hip)).x, "a level brace");
  assert.strictEqual(ts.lineAt(line, 0).x, plan.fixing_x);
  assert.deepStrictEqual(ts.travelAt(travel, 0), plan.shut);
  near(ts.travelAt(travel, plan.bar_turns).underside, plan.open.underside, "open");
  near(ts.travelToHeight(travel, plan.open.underside).turns, plan.bar_turns, "turns to the height of open");
  assert.strictEqual(refused(() => ts.travelAt(travel, -1)).field, "turns");
});

test("guide and extender", () => {
  near(ts.eyeBest(travel, eye_y, collar.offset), eye_x, "the best eye");
  for (const name of ["lean_shut", "length", "cut_length", "foot_x", "kick_out"]) near(sweep[name], plan.drive_end.sweep[name], name);
  near(ts.guideSkew(travel, hang).sweep, plan.drive_end.skew.sweep, "sweep along the house");
  const leans = ts.guideLean(travel, hang, plan.bar_turns);
  near(leans.lean, sweep.lean_open, "lean when open");
  near(leans.drive_turns, plan.drive_turns, "the drive's turns");
  for (const name of ["angle", "cut_length", "bow_from_top", "member_from_top"]) near(layout[name], plan.drive_end.layout[name], name);
  const along = { bow: side.frame.tube.diameter, tube: side.drive_end.extender.tube.side, stand_off: side.drive_end.extender.eye_stand_off, past: side.curtain.past, along: collar.along, half_length: collar.half_length, clearance: collar.clearance };
  near(ts.alongStand(along).eye, plan.drive_end.stand.eye, "the eye along the house");
  const bears = ts.extenderBears(side.drive_end.extender, layout, 40, 60, 0, 0), lines = ts.extenderStrength(side.drive_end.extender, layout, 40, 0, 60, 0, 0, "drive_end");
  assert.ok(bears.combined >= bears.bending_in && lines.length > 5 && lines.every((one) => one.end === "drive_end"));
  const least = ts.eyeLeast({ ...side, drive_end: { ...side.drive_end, rise: 0.2 } }, "drive_end");
  assert.ok(least > 0 && least < 1, `${least}`);
});

test("what the drive lifts", () => {
  const { worst, least_down } = ts.liftWorst(travel, load, hang), at = ts.liftAt(travel, load, hang, worst.turns);
  near(at.drive, worst.drive, "the worst torque, where it is");
  assert.ok(least_down.down < worst.down + 1e-9 && ts.liftAt(travel, load, null, 1).lift > 0);
  near(ts.liftLongest(travel, load, hang, worst.drive), plan.curtain_length, "the longest side of the worst torque");
  assert.ok(ts.liftWork(travel, load, hang, plan.bar_turns) > ts.liftWork(travel, load, hang, plan.bar_turns / 2));
  assert.ok(ts.sideForce(travel, load, hang, worst.turns).force > 0);
  const run = ts.driveRun(travel, load, hang, side.drive, side.cable);
  assert.ok(run.time_up > 0 && run.cable_length === plan.run.cable_length);
  assert.strictEqual(ts.driveStall(side.drive, plan.worst.drive), side.drive.stall_torque);
  near(ts.barTwist(2, 3, 8e10, 1e-8), (2 * 3 * 3) / 2 / (8e10 * 1e-8), "twist of a torque that grows along the bar"); // integral of t x dx / G J
  assert.strictEqual(ts.barSticks({ ...side.bar, joints: "stock", stock: "24 ft" }, plan.curtain_length, plan.bar_beyond_drive, plan.bar_beyond_free).length, 5);
  assert.strictEqual(refused(() => ts.barSmallest(side)).field, "bars");
  assert.ok(ts.barSmallest({ ...side, bars: [side.bar, { tube: { diameter: "1.66 in", wall: "0.14 in" } }] }) >= 0);
  assert.ok(ts.cableSmallest(side.cable, 24, 2, "running", 3).gauge >= side.cable.gauge);
});

test("a guide on its foot", () => {
  const fixed = ts.fixedMake(travel, side.drive_end.guide, {}, collar, 0, eye_y, 0), bears = ts.fixedForce(travel, load, fixed, 10);
  assert.ok(fixed.length > side.curtain.sill && Object.values(bears).some((one) => one > 0));
});

test("ropes over the roll", () => {
  const upper = { upper_x: plan.fixing_x + 0.01, lower_x: plan.fixing_x + 0.01, upper_y: side.curtain.hip + 0.1, lower_y: 0, pitch: 2 };
  const rope = { ...upper, line: { by: "stretch", stiffness: 2e4 } }, { longest } = ts.ropeOverWorst(rope, side.length, travel);
  near(ts.ropeOverAt(rope, side.length, travel, longest.turns).path, longest.path, "the longest path over the roll");
  const bay = { pressure: 200, pitch: 2, hanging: 1.1, roll: 0.04, weight: 30, film_stiffness: 2e4, screw_spacing: 0.3, tube: side.bar.tube, material: { grade: "S235" } };
  const most = ts.pitchMost({ ...rope, rope_limit: 700 }, bay);
  assert.ok(most.pitch > 0 && typeof most.rule === "string");
});

test("words, marks and what is left", () => {
  for (const [words, of] of [["findingSentence", ts.FINDINGS], ["findingMends", ts.FINDINGS], ["findingUnit", ts.FINDINGS], ["strengthText", 5], ["strengthMends", 5], ["itemText", 5]])
    for (let code = 0; code < of; code++) assert.strictEqual(typeof ts[words](code), "string", words);
  assert.ok(ts.findingSentence(0).length > 10 && [0, 1].includes(ts.findingStops(0)));
  for (const letters of ["A", "B", "AB"]) assert.strictEqual(ts.markLetters(ts.markPlace(letters)), letters);
  assert.strictEqual(ts.markPiece(1, "extender", "drive_end", 1), "ADX1");
  const { dimensions, notes } = ts.draw(side, plan, {});
  assert.match(ts.dimensionText(dimensions[0], "inch"), /\d/);
  assert.strictEqual(typeof ts.noteText(notes[0]), "string");
  const { given, stick } = ts.stockFill({ lengths: [{ length: 6 }], kerf: 0 }, 5, [{ length: 2, count: 4 }, { length: 1, count: 4 }]);
  assert.deepStrictEqual([given.map((one) => one.count), stick.used], [[2, 1], 5]);
  near(ts.usualIn("extender", "metric").bolt_hole, 0.009, "9 mm");
  near(ts.usualIn("extender", "inch").bolt_hole, (11 / 32) * 0.0254, "11/32 in");
});
