// SPDX-License-Identifier: MIT
// An object's key that stands twice: JSON.parse takes the last without a word, and the programs refuse it.

const LONGEST_NEAR = 20; // bytes of what stands there: the programs' parser tells no more

/** Of a text that is JSON, where a key stands for the second time, in the words of the programs; "" where none does. */
function keyTwice(text) {
  const open = []; // of each object that is open the keys it has had, and whether one is due; of a list null
  for (let at = 0; at < text.length; at++) {
    const sign = text[at], holder = open.at(-1), from = at;
    if (sign === "{") open.push({ keys: new Set(), due: true });
    else if (sign === "[") open.push(null);
    else if (sign === "}" || sign === "]") open.pop();
    else if (sign === "," && holder) holder.due = true;
    if (sign !== '"') continue;
    for (at++; text[at] !== '"'; at++) if (text[at] === "\\") at++;
    if (!holder?.due) continue;
    const token = text.slice(from, at + 1), key = JSON.parse(token);
    if (holder.keys.has(key)) return `${placeOf(text, at + 1)}duplicate object key${new TextEncoder().encode(token).length > LONGEST_NEAR ? "" : ` near '${token}'`}`;
    holder.keys.add(key);
    holder.due = false;
  }
  return "";
}

/** Line and column of the last character before a place. */
function placeOf(text, end) {
  const lines = text.slice(0, end).split("\n");
  return `line ${lines.length}: column ${[...lines.at(-1)].length}: `;
}
