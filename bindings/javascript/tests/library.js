// SPDX-License-Identifier: MIT
// The package as make gathered it, and where the tree is.
import { appendFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

export const tree = process.env.top_srcdir ?? ".", build = process.env.BUILD ?? ".";
export const stage = path.join(build, "bindings/javascript/package");

// Which of C's functions the tests reach: check_javascript.sh compares them with those that the headers declare.
const heard = new Set(), instantiate = WebAssembly.instantiate;
const hears = (exports) => Object.fromEntries(Object.entries(exports).map(([name, one]) => [name, typeof one === "function" ? (...values) => (heard.add(name), one(...values)) : one]));
WebAssembly.instantiate = async (...given) => {
  const made = await instantiate(...given);
  return made instanceof WebAssembly.Instance ? { exports: hears(made.exports) } : { module: made.module, instance: { exports: hears(made.instance.exports) } };
};
if (process.env.HEARD) process.on("exit", () => appendFileSync(process.env.HEARD, [...heard].map((name) => `${name}\n`).join("")));

const module = await import(pathToFileURL(path.join(stage, "tunnelside.js")));

export const { TunnelsideError, load } = module;
export const ts = await load();

/** What a call throws. */
export function refused(call) {
  try {
    call();
  } catch (error) {
    return error;
  }
  throw new Error("nothing was refused");
}

/** How many doubles lie between two numbers. */
export function ulps(one, other) {
  if (Object.is(one, other) || one === other) return 0;
  const bits = new DataView(new ArrayBuffer(16));
  bits.setFloat64(0, one);
  bits.setFloat64(8, other);
  const ordered = (at) => ((value) => (value < 0n ? -(value & 0x7fffffffffffffffn) : value))(bits.getBigInt64(at));
  const between = ordered(0) - ordered(8);
  return Number(between < 0n ? -between : between);
}
