// SPDX-License-Identifier: MIT
// The rows of tests/data, which C and Python run too: tests/rows.h describes them.
import assert from "node:assert";
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import test from "node:test";
import { TunnelsideError, build, stage, tree, ts } from "./library.js";

const DATA = path.join(tree, "tests/data");
const UNITS = "m m2 m3 m4 kg kg/m kg/m2 kg/m3 N N_m N/m Pa rad rad/s s m/s V A W J K ohm turn 1 m3/s 1/h W/m2".split(" ").map((unit) => unit.replace("_", " "));

/** The rows of a CSV file, its quotes taken off. */
function parse(text) {
  const rows = [];
  for (const line of text.split("\n").filter((one) => one && !one.startsWith("#"))) {
    const cells = [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map((match) => match[1]).slice(0, line.endsWith(",") ? undefined : -1);
    rows.push(cells.map((cell) => (cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell)));
  }
  const [head, ...rest] = rows;
  return rest.map((row) => Object.fromEntries(head.map((name, i) => [name, row[i] ?? ""])));
}

function read(text, unit) {
  try {
    return ts.quantityRead(text, unit);
  } catch (error) {
    if (!(error instanceof TunnelsideError)) throw error;
    return undefined;
  }
}

function numberOf(text, unit, si) {
  if (!unit) return Number(text);
  const found = (si ? [si] : UNITS).map((one) => read(`${text} ${unit}`, one)).find((one) => one !== undefined);
  assert.notStrictEqual(found, undefined, `cannot read ${text} ${unit}`);
  return found;
}

const SPECIAL = { nan: NaN, inf: Infinity, "-inf": -Infinity };
const valueOf = (text) => SPECIAL[text] ?? (text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text);

/** Puts a value where the path leads into nested objects and lists; a number where a list stands is its length. */
function lay(values, steps, given) {
  const last = steps.at(-1);
  let holder = values;
  steps.slice(0, -1).forEach((step, i) => {
    const following = steps[i + 1];
    if (holder[step] === undefined) holder[step] = /^\d+$/.test(following) ? [] : {};
    holder = holder[step];
    while (Array.isArray(holder) && holder.length <= Number(following)) holder.push({});
  });
  if (Number.isInteger(given) && Array.isArray(holder[last])) while (holder[last].length < given) holder[last].push({});
  else holder[last] = given;
}

const camel = (name) => name.slice("tside_".length).replace(/_(\w)/g, (_, letter) => letter.toUpperCase());

/** What C's functions ask for, in their order, as TypeScript's declarations have them. */
const declared = readFileSync(path.join(stage, "tunnelside.d.ts"), "utf8");
function asked(name) {
  const found = declared.match(new RegExp(`^  ${name}\\((.*)\\): (.*);$`, "m"));
  assert.ok(found, `${name} is not declared`);
  const names = [...found[1].matchAll(/(\w+)\??: ([^,]+)/g)].map((match) => ({ name: match[1], text: match[2] === "string", structure: /Given/.test(match[2]) || ["Bow", "Travel", "Line"].includes(match[2]) }));
  return { names, many: found[2].startsWith("{") };
}

function callOf(row) {
  const name = camel(row.function), { names } = asked(name), values = {};
  for (const pair of row.arguments.split(";").filter(Boolean)) {
    const at = pair.indexOf("="), [head, ...rest] = pair.slice(0, at).match(/\w+/g), given = pair.slice(at + 1);
    const text = names.find((one) => one.name === head)?.text;
    if (rest.length) lay((values[head] ??= {}), rest, valueOf(given));
    else values[head] = text ? given : valueOf(given);
  }
  return () => ts[name](...names.map((one) => values[one.name] ?? (one.structure ? {} : undefined)));
}

/** The value at a path in what was answered, and the unit of its field. */
function follow(answer, steps) {
  let found = answer;
  for (const step of steps) {
    assert.ok(found !== null && typeof found === "object", `nothing at ${step}`);
    found = found[step];
  }
  return found;
}

const units = new Map();
for (const line of readFileSync(path.join(build, "include/interface.tsv"), "utf8").split("\n")) {
  const [kind, owner, name, , , unit] = line.split("\t");
  if (kind === "member") units.set(name, [...(units.get(name) ?? []), unit]);
  if (kind === "argument") units.set(`${owner}.${name}`, [line.split("\t")[7]]);
}

function run(row) {
  let answer, failure;
  try {
    answer = callOf(row)();
  } catch (error) {
    if (!(error instanceof TunnelsideError)) throw error;
    failure = error;
  }
  if (row.result === "status") {
    const got = failure ? ts.statusText(["ok", "out_of_bounds", "contradicts", "out_of_reach", "not_modelled", "unreadable", "too_small", "not_found"].indexOf(failure.status)) + (failure.field ? `: ${failure.field}` : "") : "ok";
    return assert.strictEqual(got, row.value);
  }
  if (row.result.startsWith("fault.")) {
    assert.ok(failure, "did not fail");
    const name = row.result.slice("fault.".length), got = failure[name];
    if (name === "other") return assert.strictEqual(got ?? "", row.value);
    if (name === "index") return assert.strictEqual(got, Number(row.value));
    return close(got, row, [failure.unit]);
  }
  if (failure) throw failure;
  const steps = row.result.split("."), { many } = asked(camel(row.function));
  const got = many ? follow(answer, steps) : follow(answer, steps.slice(1));
  if (typeof got === "string" || typeof got === "boolean") return assert.strictEqual(String(got), row.value);
  if (row.value === "none") return assert.strictEqual(got, null);
  return close(got, row, steps.length > 1 ? units.get(steps.at(-1)) : units.get(`${row.function}.${steps[0]}`));
}

function close(got, row, candidates) {
  assert.strictEqual(typeof got, "number");
  const unit = row.unit.replaceAll("_", " "), fits = [...new Set(candidates)].filter((one) => !unit || read(`${row.value} ${unit}`, one || "1") !== undefined);
  assert.ok(!unit || fits.length, `no unit of ${row.unit}`);
  const relative = row.tolerance.startsWith("rel ");
  const wants = (fits.length ? fits : [""]).map((si) => {
    const want = numberOf(row.value, unit, si), room = relative ? Math.abs(want) * Number(row.tolerance.slice(4)) : numberOf(row.tolerance || "0", unit, si);
    return Math.abs(got - want) <= room;
  });
  assert.ok(wants.some(Boolean), `got ${got}, not ${row.value} ${unit} +- ${row.tolerance}`);
}

const rows = readdirSync(DATA).filter((name) => name.endsWith(".csv")).flatMap((file) => parse(readFileSync(path.join(DATA, file), "utf8")).map((row, i) => [`${file}:${i + 2}`, row]));

test("every row", () => {
  assert.ok(rows.length > 400);
  for (const [place, row] of rows) {
    try {
      run(row);
    } catch (error) {
      error.message = `${place}: ${row.function} ${row.arguments} ${row.result}: ${error.message}`;
      throw error;
    }
  }
});

test("a row can fail", () => {
  const row = { function: "tside_round_section", arguments: "tube.diameter=1.315 in;tube.wall=0.133 in;density=7850", result: "section.area", value: "0.4939", unit: "in2", tolerance: "0.00005" };
  run(row);
  for (const change of [{ value: "0.4941" }, { value: "nan", unit: "", tolerance: "1" }, { result: "status", value: "contradicts: tube.wall" }, { result: "fault.bound", value: "1" }])
    assert.throws(() => run({ ...row, ...change }), assert.AssertionError);
});
