// SPDX-License-Identifier: MIT
// A file of sides as the page edits it: answers by path, in one side or, of a job, in what its two sides share.

const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const OWN = new Set(["name", "drive_at", "mark", "hand"]); // of each side of a job, whatever they share

function stepsOf(path) {
  return path.split(".").flatMap((part) => {
    const [, name, ...places] = /^([^[]*)(?:\[(\d+)\])?$/.exec(part);
    return places[0] === undefined ? [name] : [name, Number(places[0])];
  });
}

function find(value, steps) {
  for (const step of steps) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = value[step];
  }
  return value;
}

/** Puts a value where it belongs; an empty text takes the answer away, and what then holds nothing. */
function put(value, steps, answer) {
  const [step, ...rest] = steps;
  if (!rest.length) {
    if (answer === "") Array.isArray(value) ? value.splice(step, 1) : delete value[step];
    else value[step] = answer;
    return;
  }
  if (!Object.hasOwn(value, step) || typeof value[step] !== "object" || value[step] === null) {
    if (answer === "") return;
    value[step] = typeof rest[0] === "number" ? [] : {};
  }
  put(value[step], rest, answer);
  if (!Array.isArray(value) && Object.keys(value[step]).length === 0) delete value[step];
}

export const isJob = (file) => isObject(file) && Array.isArray(file.sides);
export const sideCount = (file) => (isJob(file) ? file.sides.length : 1);
const sideOf = (file, side) => (isJob(file) ? file.sides[side] : file);

/** What is answered at a path, of a side; of a job also what its sides share. */
export function answerAt(file, side, path) {
  const steps = stepsOf(path), own = find(sideOf(file, side), steps);
  return own === undefined && isJob(file) && steps[0] !== "sides" ? find(file, steps) : own;
}

/** Whether both sides have an answer from what they share. */
export function isShared(file, side, path) {
  const steps = stepsOf(path);
  return isJob(file) && find(file.sides[side], steps) === undefined && !OWN.has(steps[0]);
}

export function answer(file, side, path, words) {
  const steps = stepsOf(path);
  put(isShared(file, side, path) ? file : sideOf(file, side), steps, words);
}

/** A house's other side: what both share stands once, and each has its hand. */
export function withOtherSide(file) {
  const shared = structuredClone(file), own = {};
  for (const key of OWN)
    if (Object.hasOwn(shared, key)) {
      own[key] = shared[key];
      delete shared[key];
    }
  const hand = String(own.hand ?? "right").toLowerCase() === "left" ? "right" : "left";
  delete shared.note;
  const note = typeof file.note === "string" ? { note: file.note } : {};
  return { job: typeof file.name === "string" ? file.name : "", ...note, ...shared, sides: [{ ...own, hand: hand === "left" ? "right" : "left" }, { hand, drive_at: own.drive_at ?? "" }] };
}

/** What stands in a text: a side, a job, or a list's sides, each a file of its own; throws what is to be said. */
export function filesIn(text) {
  const json = text.replace(/^\ufeff/, ""), root = JSON.parse(json), twice = keyTwice(json);
  if (twice) throw new Error(twice);
  const files = Array.isArray(root) ? root : [root];
  if (!files.length || files.length > 50 || !files.every(isObject)) throw new Error("it holds no sides");
  return files;
}

export function nameOf(file, side = 0) {
  const name = isJob(file) ? sideOf(file, side)?.name || file.job : file.name;
  return typeof name === "string" && name ? name : "A side without a name";
}
