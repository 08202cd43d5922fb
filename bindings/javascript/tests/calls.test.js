// SPDX-License-Identifier: MIT
// How the library is called: what objects are, what is refused and how, and that nothing is lost between calls.
import assert from "node:assert";
import { readFileSync } from "node:fs";
import path from "node:path";
import test from "node:test";
import { TunnelsideError, load, refused, stage, tree, ts } from "./library.js";

const film = ts.readSides(readFileSync(path.join(tree, "examples/sites/film30.json"), "utf8"))[0];

test("structures are plain, frozen, whole objects", () => {
  const roll = ts.Roll({ core: "1.4 in" });
  assert.deepStrictEqual(Object.keys(roll).slice(0, 2), ["core", "thickness"]);
  assert.strictEqual(roll.core, 0.03556);
  assert.ok(Object.isFrozen(roll) && Object.isFrozen(film.side.frame.tube));
  const other = { ...film.side, curtain: { ...film.side.curtain, sill: "15 in" } };
  assert.notStrictEqual(ts.planSide(other).seal, undefined);
  assert.strictEqual(ts.Side(film.side).frame.width, film.side.frame.width);
  assert.strictEqual(ts.Drive({ kind: "hand" }).mass === ts.Drive({ kind: "motor" }).mass, false, "a hand drive's usual mass is not a motor's");
});

test("every refusal says which field, its value and its bound", () => {
  const unreadable = refused(() => ts.planSide({ ...film.side, frame: { width: "30 fot" } }));
  assert.ok(unreadable instanceof TunnelsideError && unreadable instanceof Error);
  assert.deepStrictEqual([unreadable.status, unreadable.field, unreadable.index], ["unreadable", "frame.width", 3]);
  const outside = refused(() => ts.planSide({ ...film.side, length: -1 }));
  assert.deepStrictEqual([outside.status, outside.field, outside.value, outside.bound, outside.relation, outside.unit], ["out_of_bounds", "length", -1, 0, "not_above", "m"]);
  const contradicts = refused(() => ts.planSide({ ...film.side, curtain: { ...film.side.curtain, sill: 1.8 } }));
  assert.deepStrictEqual([contradicts.status, contradicts.field, contradicts.other], ["contradicts", "curtain.sill", "curtain.hip"]);
  assert.strictEqual(refused(() => ts.lengthWrite(1, "furlongs", 1)).status, "not_found");
  const many = Array.from({ length: 9 }, () => ({ inner: 0, outer: 1 }));
  assert.deepStrictEqual([refused(() => ts.planSide({ ...film.side, drive_end: { keep_outs: many } })).bound], [8]);
  const within = refused(() => ts.planSide({ ...film.side, drive_end: { keep_outs: [{}, { outer: "2 x" }] } }));
  assert.strictEqual(within.field, "drive_end.keep_outs[1].outer");
});

test("what is of another type is a TypeError", () => {
  for (const [call, words] of [
    [() => ts.planSide({ lenght: 1 }), /did you mean 'length'/],
    [() => ts.planSide(null), /side: an object, not null/],
    [() => ts.planSide({ length: true }), /length: a number, or a text with its unit/],
    [() => ts.planSide({ bar: { splices: 1.5 } }), /splices: a whole number, not 1.5/],
    [() => ts.planSide({ drive_end: { keep_outs: {} } }), /keep_outs: a list/],
    [() => ts.planSide(film.side, 1), /1 arguments, not 2/],
    [() => ts.bowAt({ pieces: [] }, 1), /made by bowMake\(\), and never by hand/],
    [() => ts.quantityRead("1 m\0", "m"), /zero character/],
    [() => ts.quantityRead(1, "m"), /text: a text/],
  ]) {
    const error = refused(call);
    assert.ok(error instanceof TypeError, String(error));
    assert.match(error.message, words);
  }
});

test("what one function makes another takes, bit for bit", () => {
  const bow = ts.bowMake(film.side.frame), line = ts.lineMake(bow, film.side.curtain);
  assert.strictEqual(ts.bowAtHeight(bow, 1.2), 1.2); // along a plumb leg
  assert.strictEqual(ts.bowFace(bow, 1.2), film.side.frame.width / 2);
  assert.throws(() => ts.bowAt(line, 1), TypeError);
  assert.ok(Object.isFrozen(line));
});

test("lists and texts come whole, however long", () => {
  const plan = ts.planSide(film.side), items = ts.takeoff(film.side, plan, film.fittings);
  assert.ok(items.length > 20);
  const turns = ts.planTurns({ ...film.side, curtain: { ...film.side.curtain, thickness: "10 um" }, bar: { ...film.side.bar, tube: { diameter: "2 mm", wall: "0.5 mm" }, core_over: 0 } });
  assert.ok(turns.length > 64, `${turns.length}`); // more than there is room for at first
  turns.forEach((row, i) => assert.ok(i === 0 || row.turn > turns[i - 1].turn));
  const drawing = ts.draw(film.side, plan, ts.Picture({}));
  assert.match(ts.drawingSvg(drawing, "film <30>"), /<svg[^]*film &lt;30&gt;/);
  assert.ok(ts.drawingSvg(drawing, "film <30>").length > 4096);
  assert.strictEqual(ts.lengthWrite(1.6, "feet_and_inches", 16), "5 ft 3 in");
  assert.ok(ts.findingText(plan.findings[0]).length > 10);
});

test("drives that do not serve are told although none serves", () => {
  const weak = [{ ...film.side.drive, rated_torque: 0.1 }], error = refused(() => ts.driveSmallest(film.side, weak));
  assert.strictEqual(error.status, "out_of_reach");
  assert.strictEqual(error.answers.choices.length, 1);
});

test("a cut plan", () => {
  const { plan, sticks, taken } = ts.stockPlan({ lengths: [{ length: 6 }] }, [{ length: "2.5 m", count: 4 }, { length: 0.9, count: 2 }]);
  assert.deepStrictEqual([plan.sticks, plan.proven, sticks.reduce((sum, one) => sum + one.count, 0)], [2, 1, 2]);
  assert.strictEqual(taken.reduce((sum, row, i) => sum + row[0] * sticks[i].count, 0), 4);
  assert.strictEqual(refused(() => ts.stockPlan({ lengths: [{ length: 6 }] }, [{ length: 7 }])).field, "cuts[0].length");
});

test("tables of fields", () => {
  const hip = ts.fields("curtain").find((one) => one.name === "hip");
  assert.deepStrictEqual([hip.type, hip.unit, hip.required], ["number", "m", true]);
  assert.strictEqual(ts.fieldRead("side", "curtain.thickness", "6 mil"), 0.0001524);
  assert.strictEqual(ts.fieldRead("side", "hand", "Left"), "left");
  assert.strictEqual(ts.fieldApplies("side", "frame.foot_x", {}), false);
  assert.strictEqual(ts.fieldApplies("side", "frame.foot_x", { frame: { shape: "three_points" } }), true);
  assert.ok(ts.trades().some((one) => one.family === "fence") && ts.trades(true).length > 5);
  assert.strictEqual(refused(() => ts.check("side", {})).field, "length");
  assert.strictEqual(refused(() => ts.fields("sid")).status, "not_found");
});

test("many sides are those planned one by one, to the last bit", () => {
  const hips = ["1.6 m", "5 ft 6 in", 1.7, 9, null, "1.65 m"], tubes = [0.042, 0.0334, null, 0.042, 0.042, "1.66 in"], outputs = ["drive_turns", "worst.drive", "findings", "drive_end.layout.cut_length"];
  const many = ts.planSides(film.side, { "curtain.hip": hips, "drive_end.guide.tube.diameter": tubes }, outputs);
  assert.deepStrictEqual(Object.keys(many), ["status", "findings", "drive_turns", "worst.drive", "drive_end.layout.cut_length"]);
  hips.forEach((hip, i) => {
    const end = tubes[i] === null ? film.side.drive_end : { ...film.side.drive_end, guide: { ...film.side.drive_end.guide, tube: { ...film.side.drive_end.guide.tube, diameter: tubes[i] } } };
    const one = { ...film.side, curtain: hip === null ? film.side.curtain : { ...film.side.curtain, hip }, drive_end: end };
    if (i === 3) {
      assert.strictEqual(many.status[i], refused(() => ts.planSide(one)).status);
      assert.deepStrictEqual([many.drive_turns[i], many["worst.drive"][i], many.findings[i]], [NaN, NaN, []]);
      return;
    }
    const plan = ts.planSide(one);
    assert.deepStrictEqual([many.status[i], many.drive_turns[i], many["worst.drive"][i], many["drive_end.layout.cut_length"][i]], ["ok", plan.drive_turns, plan.worst.drive, plan.drive_end.layout.cut_length]);
    assert.deepStrictEqual([...many.findings[i]].sort(), [...new Set(plan.findings.map((found) => found.code))].sort());
  });
  assert.deepStrictEqual(ts.planSides(film.side, {}).status, ["ok"]);
  assert.deepStrictEqual(ts.planSides(film.side, { length: [] }).status, []);
  assert.deepStrictEqual([...ts.planSides(film.side, { "drive.kind": ["hand", "motor"] }, ["drive_turns"]).status], ["ok", "ok"]);
});

test("columns that no side has are refused", () => {
  for (const [columns, outputs, field] of [[{ lenght: [1] }, [], "lenght"], [{ length: ["1 x"] }, [], "length[0]"], [{ length: [1] }, ["turns"], "turns"]])
    assert.strictEqual(refused(() => ts.planSides(film.side, columns, outputs)).field, field);
  const group = refused(() => ts.planSides(film.side, { length: [10] }, ["worst"]));
  assert.deepStrictEqual([group.status, group.index], ["out_of_bounds", 0]);
  for (const columns of [null, { length: 3 }, { length: "3 m" }, { length: [1, 2], "curtain.hip": [1] }, { length: [{}] }]) assert.ok(refused(() => ts.planSides(film.side, columns)) instanceof TypeError, JSON.stringify(columns));
});

test("a thousand calls need no more memory than ten", async () => {
  const own = await load(readFileSync(path.join(stage, "tunnelside.wasm"))), before = own.planSide(film.side).drive_turns;
  for (let i = 0; i < 1000; i++) {
    own.planSide(film.side);
    refused(() => own.planSide({ length: "1 x" }));
  }
  assert.strictEqual(own.planSide(film.side).drive_turns, before);
});

test("the module asks its host for nothing", async () => {
  const module = await WebAssembly.compile(readFileSync(path.join(stage, "tunnelside.wasm")));
  assert.deepStrictEqual(WebAssembly.Module.imports(module), []);
});
