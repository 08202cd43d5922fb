// SPDX-License-Identifier: MIT
// The demo sites: what JavaScript reads and plans is what the programs, compiled from the same C, tell in JSON.
import assert from "node:assert";
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import test from "node:test";
import { build, refused, tree, ts, ulps } from "./library.js";

const SITES = path.join(tree, "examples/sites"), PROGRAM = path.join(build, "examples/tunnelside-plan");
const names = readdirSync(SITES).filter((name) => name.endsWith(".json"));
const skip = existsSync(PROGRAM) ? false : "no program is built";
const textOf = (name) => readFileSync(path.join(SITES, name), "utf8");

/*
 * Sines and powers come from two C libraries, musl's here and the system's there, which differ in last digits: what rests on them is held to 1e-9. The best
 * angle's search states 1e-8 rad, and the place of a flat top is known to the root of a double's last digit: what rests on those is held to 1e-7.
 */
const nearAt = (where) => (/layout|lines|least_down|worst|_turns$/.test(where) ? 1e-7 : 1e-9);

function same(mine, theirs, where, far) {
  if (mine === null || theirs === null || theirs === undefined) return assert.strictEqual(mine ?? null, theirs ?? null, where);
  if (typeof theirs === "object" && "value" in theirs && "unit" in theirs) return same(mine, theirs.value, where, far);
  if (Array.isArray(theirs)) {
    assert.strictEqual(mine.length, theirs.length, where);
    return theirs.forEach((one, i) => same(mine[i], one, `${where}[${i}]`, far));
  }
  if (typeof theirs === "object") {
    for (const [key, one] of Object.entries(theirs)) if (key in mine) same(mine[key], one, `${where}.${key}`, far);
    return undefined;
  }
  if (typeof theirs !== "number" || Number.isInteger(mine)) {
    far.compared++;
    return assert.ok(mine === theirs || Number(mine) === Number(theirs), `${where}: ${mine} and ${theirs}`);
  }
  far.compared++;
  if (mine !== theirs) far.apart.push([ulps(mine, theirs), where, mine, theirs]);
  assert.ok(Math.abs(mine - theirs) <= nearAt(where) * Math.max(1, Math.abs(theirs)), `${where}: ${mine} and ${theirs}`);
  return undefined;
}

test("plans are those of the program", { skip }, (t) => {
  const far = { compared: 0, apart: [] };
  for (const name of names) {
    const told = JSON.parse(execFileSync(PROGRAM, ["--format=json", path.join(SITES, name)], { encoding: "utf8" }));
    const sites = ts.readSides(textOf(name)), sides = told.sides ?? told;
    assert.strictEqual(sites.length, sides.length);
    sites.forEach((site, i) => {
      assert.strictEqual(site.name, sides[i].name);
      same(ts.planSide(site.side), sides[i].plan, `${name}[${i}].plan`, far);
      if (sides[i].turns) same(ts.planTurns(site.side), sides[i].turns, `${name}[${i}].turns`, far);
      same(site.side, sides[i].side ?? {}, `${name}[${i}].side`, far);
    });
  }
  assert.ok(far.compared > 2000, `${far.compared} compared`);
  t.diagnostic(`${far.compared} figures compared, ${far.apart.length} apart, at most ${Math.max(0, ...far.apart.map(([n]) => n))} doubles: ${far.apart.sort((a, b) => b[0] - a[0])[0]}`);
});

test("what a roll does is the same to the last bit", { skip }, () => {
  const turns = path.join(build, "examples/tunnelside-turns");
  const told = JSON.parse(execFileSync(turns, ["--core=1.4in", "--drop=4 ft 6 in", "--format=json"], { encoding: "utf8" }));
  const { core, thickness, packing, wraps_shut } = told.asked, roll = { core: core.value, thickness: thickness.value, packing: packing.value };
  assert.ok(told.turns.length > 8);
  for (const row of told.turns) {
    const wraps = row.turn.value + wraps_shut.value;
    assert.strictEqual(ts.rollDiameter(roll, wraps), row.diameter.value);
    assert.strictEqual(ts.rollTakenUp(roll, wraps), row.on_bar.value);
  }
});

test("files are refused as the programs refuse them", () => {
  const film = JSON.parse(textOf("film30.json"));
  const says = (change, ...words) => {
    const site = structuredClone(film);
    change(site);
    const error = refused(() => ts.readSides(JSON.stringify(site)));
    for (const word of words) assert.ok(error.message.includes(word), error.message);
  };
  says((site) => (site.stok = 1), "stok: no such field");
  says((site) => (site.lenght = "3 ft"), "did you mean 'length'?");
  says((site) => (site.curtain.hip = 56), "was taken for 56 m", "feet, inches or pounds");
  says((site) => delete site.frame.width, "frame.width: missing");
  says((site) => (site.frame.foot_x = "1 ft"), "used only while shape is three_points");
  says((site) => (site.frame.tube.wall = "14 ga"), "needs its family");
  says((site) => (site.drive.kind = "crank"), 'drive.kind: "crank": no such choice', "motor, hand");
  says((site) => (site.tolerances = { "frame.foot_x": "1 in" }), "not in use");
  says((site) => (site.drive_end.keep_outs = { inner: "1 ft" }), "wanted a list");
  assert.match(refused(() => ts.readSides("{")).message, /JSON/);
  assert.match(refused(() => ts.readSides("[]")).message, /a list of 0 sides/);
  assert.match(refused(() => ts.readSides(`${'{"a":'.repeat(1e5)}1${"}".repeat(1e5)}`)).message, /no such field|nested too deeply/);
});

test("a key that stands twice is refused in the programs' words", { skip }, () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), "twice-")), file = path.join(folder, "twice.json");
  for (const text of ['{"name": "a",\n "hand": "left", "hand": "right"}', '{"sides": [{"frame": {"width": 3, "wi\\u0064th": 4}}]}', '[{"a": {"a": 1}, "b": "}\\"{", "\u00e9": 1,\n\n"\u00e9": 2}]', '\ufeff{"aaaaaaaaaaaaaaaaaaa": 1, "aaaaaaaaaaaaaaaaaaa": 2}', '{"aaaaaaaaaaaaaaaaaa": 1, "aaaaaaaaaaaaaaaaaa": 2}']) {
    writeFileSync(file, text);
    const { stderr } = spawnSync(PROGRAM, ["twice.json"], { cwd: folder, encoding: "utf8" });
    assert.strictEqual(refused(() => ts.readSides(text)).message, stderr.trim().replace("tunnelside-plan: twice.json:", "line "));
  }
  assert.strictEqual(ts.readSides(textOf("film30.json")).length, 1); // the same key in two objects is none twice
  assert.match(refused(() => ts.readSides(`{"a": "${"\\n".repeat(1e6)}", "a": 1}`)).message, /duplicate object key near '"a"'/);
});

test("blank files say what is missing, and a text from a stranger stays a text", () => {
  assert.match(refused(() => ts.readSides('{"length": ""}')).message, /missing/);
  const site = { ...JSON.parse(textOf("film30.json")), name: "<script>alert(1)</script>" };
  assert.strictEqual(ts.readSides(JSON.stringify(site))[0].name, site.name);
  const job = (own) => refused(() => ts.readSides(`{"job": "", "length": "9 m", "sides": [{${own}}]}`)).message;
  assert.match(job('"__proto__": {"length": "3 m"}'), /__proto__: no such field/);
  assert.match(job('"constructor": 1'), /constructor: no such field/);
});
