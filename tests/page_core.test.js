// SPDX-License-Identifier: MIT
// What the page's core plans and writes is what the programs write, byte for byte, of every demo site in both units.
import assert from "node:assert";
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync, mkdtempSync, copyFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import test from "node:test";
import { pathToFileURL } from "node:url";

const tree = process.env.top_srcdir, build = process.env.BUILD, sites = path.join(tree, "examples/sites"), program = path.join(build, "examples/tunnelside-plan"), orderer = path.join(build, "examples/tunnelside-order");
const copy = path.join(mkdtempSync(path.join(os.tmpdir(), "page-")), "sheet.mjs");
copyFileSync(path.join(tree, "examples/page/sheet.js"), copy);
const { loadSheet } = await import(pathToFileURL(copy));
const core = await loadSheet(readFileSync(path.join(build, "examples/page/core.wasm")));
const demo = (name) => JSON.parse(readFileSync(path.join(sites, name), "utf8"));

/** The same but for the last of three decimals in a drawing's places: two C libraries round a sine apart. */
function same(one, other, where) {
  if (one === other) return;
  const split = (text) => text.split(/(-?\d+(?:\.\d{1,3})?(?=[" ,A-Zz]))/), [mine, theirs] = [split(one), split(other)];
  assert.strictEqual(mine.length, theirs.length, where);
  mine.forEach((part, i) => assert.ok(part === theirs[i] || (i % 2 && part.includes(".") && Math.abs(part - theirs[i]) < 0.0011), `${where}: ${part} and ${theirs[i]}`));
}

test("sheets", () => {
  let times = 0, calls = 0;
  for (const name of readdirSync(sites))
    for (const units of ["us", "si"]) {
      const started = performance.now(), plan = core.plan(demo(name), units), paper = core.paper(plan);
      times += performance.now() - started;
      calls++;
      assert.ok(plan.sides.every((side) => side.planned && side.turns.value > 0), name);
      same(paper, execFileSync(program, ["--format=html", `--units=${units}`, path.join(sites, name)], { encoding: "utf8", maxBuffer: 1 << 26 }), `${name} ${units}`);
    }
  assert.ok(calls >= 20 && times / calls < 1000, `${times / calls} ms`);
});

test("orders", () => {
  const slowest = [0, ""], folder = mkdtempSync(path.join(os.tmpdir(), "order-"));
  for (const name of readdirSync(sites))
    for (const units of ["us", "si"]) {
      const plan = core.plan(demo(name), units), started = performance.now(), { paper, why } = core.order(plan), took = performance.now() - started;
      if (took > slowest[0]) slowest.splice(0, 2, took, name);
      assert.strictEqual(why, "");
      copyFileSync(path.join(sites, name), path.join(folder, "of-a-page"));
      const told = execFileSync(orderer, ["--format=html", `--units=${units}`, "of-a-page"], { cwd: folder, encoding: "utf8" });
      same(paper, told.replaceAll(" (of-a-page)", ""), `${name} ${units}`); // a page has no file
    }
  console.log(`an order takes at most ${slowest[0].toFixed(1)} ms, of ${slowest[1]}`);
  assert.ok(slowest[0] < 1000);
});

test("no order is made of what is refused, and half of a job says so", () => {
  const none = core.plan({}), film = core.plan(demo("film30.json"));
  assert.deepStrictEqual(core.order(none), { paper: "", why: "" });
  const job = demo("two_sides_job.json");
  job.sides[1].curtain = { hip: "1 x" };
  assert.match(core.order(core.plan(job)).paper, /<dt>INCOMPLETE<\/dt>\n<dd>1(?: |&nbsp;)side is refused/);
  assert.match(core.order(film).paper, /House 30/); // although another was planned since
  assert.doesNotMatch(core.order(film).paper, /INCOMPLETE|PRICE/);
  assert.strictEqual(core.paper(none), "");
  assert.strictEqual(core.paper(film), core.paper(core.plan(demo("film30.json"))));
});

test("refusals are the programs', with their paths", () => {
  const film = demo("film30.json");
  film.curtain.hip = "5 fot";
  const [side] = core.plan(film).sides;
  assert.deepStrictEqual(side.refused.filter((one) => one.path === "curtain.hip").map((one) => one.words), ['"5 fot": at character 3: no such unit (mm, cm, m, km, in, ", ft, \', yd, um)']);
  assert.ok(!side.planned && side.inUse.has("frame.width") && !side.inUse.has("frame.foot_x"));
  const job = demo("two_sides_job.json");
  job.sides[1].curtain = { hip: "1 x" };
  const [first, second] = core.plan(job).sides;
  assert.ok(first.planned && second.refused[0].path === "curtain.hip");
});

test("whatever stands in a file", () => {
  for (const file of [{}, { length: [] }, { length: null }, { sides: [] }, { sides: [1, 2] }, { sides: {} }, { drive_end: { keep_outs: Array(20).fill({}) } }, { frame: true }, { name: 3 }, { curtain: { hip: 1e400 } }, { "a\0b": "\0", tolerances: { x: 1 } }]) {
    const { sides } = core.plan(file);
    assert.ok(sides.length > 0 && sides.every((side) => !side.planned && side.refused.length > 0), JSON.stringify(file));
  }
  assert.ok(core.plan(demo("film30.json")).sides[0].planned);
});

test("questions and pictures", () => {
  const questions = core.questions();
  assert.ok(questions.length > 80 && questions[0].path === "hand" && questions[0].choices.join() === "right,left");
  assert.deepStrictEqual(questions.find((one) => one.path === "drive_end.keep_outs").elements.map((one) => one.path), ["inner", "outer", "bottom", "top"]);
  const pictures = core.pictures();
  for (const letter of ["C", "D", "E"]) assert.match(pictures, new RegExp(`>${letter}<`));
});

test("each question lights what it is about, from the first answer on", () => {
  const parts = (plan, path) => (/<g class="part"[^>]*>([^]*?)<\/g>/.exec(core.lit(plan, 0, path))?.[1].match(/<line/g) ?? []).length;
  for (const file of [{}, { frame: { width: "20 ft" }, curtain: { hip: "4 fo" } }, demo("film30.json")]) {
    const plan = core.plan(file), dark = core.questions().map((one) => one.path).filter((path) => !parts(plan, path));
    assert.deepStrictEqual(dark, [], JSON.stringify(file).slice(0, 60));
  }
  const growing = [{}, { frame: { width: "20 ft" } }, { frame: { width: "20 ft", peak_height: "10 ft" } }].map((file) => core.lit(core.plan(file), 0, "frame.tube.diameter"));
  assert.strictEqual(new Set(growing).size, 3, "what is answered is not drawn");
  assert.strictEqual(core.lit(core.plan({}), 9, "length"), "");
});

test("templates at full size", () => {
  const plan = core.plan(demo("film30.json"));
  for (const paper of ["a4", "letter"]) {
    const sheets = core.template(plan, 0, paper);
    assert.ok(sheets.length >= 2 && sheets.every((one) => one.includes(paper === "a4" ? 'width="' : 'width="')), String(sheets.length));
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(sheets[0]);
    assert.deepStrictEqual([Number(width), Number(height)].map((mm) => Math.round(mm * 10)).sort(), (paper === "a4" ? [2100, 2970] : [2159, 2794]).sort());
  }
  assert.deepStrictEqual(core.template(core.plan({}), 0, "a4"), []);
});

test("a thousand plans need no more memory than ten", () => {
  const film = demo("film30.json"), size = () => core.c.memory.buffer.byteLength;
  for (let i = 0; i < 10; i++) core.order(core.plan(film));
  const before = size();
  for (let i = 0; i < 200; i++) core.order(core.plan(film));
  assert.strictEqual(size(), before);
});
