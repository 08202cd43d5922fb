// SPDX-License-Identifier: MIT
// The library in WebAssembly: plain objects in, frozen objects out, one error for every refusal.

/** A refusal of the library's: what C has in a fault. */
export class TunnelsideError extends Error {
  constructor(text, fault) {
    super(text);
    this.name = "TunnelsideError";
    this.clause = text; // without the path of what holds the field
    Object.assign(this, fault);
  }

  /** The same, its field named from outside of what holds it. */
  within(path) {
    const { name, message, stack, clause, ...fault } = this;
    const field = this.field ? `${path}${this.field.startsWith("[") ? "" : "."}${this.field}` : path;
    const words = this.field && clause.startsWith(`${this.field}: `) ? clause.slice(this.field.length + 2) : clause;
    return new TunnelsideError(`${field}: ${words}`, { ...fault, field });
  }
}

const OK = 0, TOO_SMALL = 6, PAGE = 65536, POINTER = 4, WHOLE = 4, NUMBER = 8;
const [IS_NUMBER, IS_COUNT, IS_CHOICE, IS_GROUP, IS_LIST] = [0, 1, 2, 3, 4]; // tside_type
const STATUSES = INTERFACE.enums.tside_status, RELATIONS = INTERFACE.enums.tside_relation;

// --- memory ---

/** What the module's memory holds, and room in it for the length of a call. */
class Memory {
  constructor(exports) {
    this.memory = exports.memory;
    this.top = exports.__heap_base.value;
    this.decoder = new TextDecoder();
    this.encoder = new TextEncoder();
  }

  get view() {
    if (this.seen !== this.memory.buffer) {
      this.seen = this.memory.buffer; // another one, once the memory has grown
      this.at = new DataView(this.seen);
      this.bytes = new Uint8Array(this.seen);
    }
    return this.at;
  }

  get all() {
    return this.view && this.bytes;
  }

  /** Room, zeroed, aligned for any number; it lasts until the call that took it ends. */
  room(size) {
    const at = (this.top + 15) & ~15;
    const missing = at + size - this.memory.buffer.byteLength;
    if (missing > 0) this.memory.grow(Math.ceil(missing / PAGE));
    this.top = at + size;
    this.all.fill(0, at, this.top);
    return at;
  }

  /** Runs what takes room, and gives the room back. */
  borrow(work) {
    const before = this.top;
    try {
      return work();
    } finally {
      this.top = before;
    }
  }

  number(at) {
    return this.view.getFloat64(at, true);
  }

  whole(at) {
    return this.view.getInt32(at, true);
  }

  pointer(at) {
    return this.view.getUint32(at, true);
  }

  textAt(at) {
    return at ? this.decoder.decode(this.all.subarray(at, this.all.indexOf(0, at))) : null;
  }

  /** A pointer's text, or null. */
  text(at) {
    return this.textAt(this.pointer(at));
  }

  putText(text) {
    const bytes = this.encoder.encode(text), at = this.room(bytes.length + 1);
    this.all.set(bytes, at);
    return at;
  }
}

// --- words ---

function distance(one, other) {
  let row = Array.from({ length: other.length + 1 }, (_, i) => i);
  for (let i = 1; i <= one.length; i++) {
    const next = [i];
    for (let j = 1; j <= other.length; j++) next[j] = Math.min(next[j - 1] + 1, row[j] + 1, row[j - 1] + (one[i - 1] !== other[j - 1]));
    row = next;
  }
  return row[other.length];
}

/** "; did you mean 'length'?" where a name is near. */
function meant(name, names) {
  const nearest = [...names].map((one) => [distance(name, one), one]).sort((a, b) => a[0] - b[0])[0];
  return nearest && nearest[0] <= Math.max(1, name.length / 3) ? `; did you mean '${nearest[1]}'?` : "";
}

const className = (cName) => cName.slice("tside_".length).split("_").map((part) => part[0].toUpperCase() + part.slice(1)).join("");

function described(value) {
  return value === null ? "null" : Array.isArray(value) ? "a list" : `a value of type ${typeof value}`;
}

// --- structures ---

/** Reads and fills C's structures by their tables of fields. */
class Structures {
  constructor(exports, memory) {
    this.c = exports;
    this.memory = memory;
    this.kept = new WeakMap(); // of what the library answered: its kind and bytes
    this.layouts = this.readLayouts();
    this.kinds = this.readKinds();
    this.byName = new Map(this.kinds.filter(Boolean).map((kind) => [kind.name, kind]));
  }

  readLayouts() {
    let at = this.c.layouts_of_c();
    const layouts = {};
    for (const [name, members] of Object.entries(INTERFACE.layouts)) {
      const layout = (layouts[name] = { size: this.memory.pointer(at) });
      for (const member of members) layout[member] = this.memory.pointer((at += WHOLE));
      at += WHOLE;
    }
    return layouts;
  }

  readKinds() {
    const m = this.memory, first = this.c.structures_of_c(), kinds = [];
    for (let i = 0; i < this.c.structure_count(); i++) {
      const at = first + i * 4 * POINTER, name = m.text(at);
      kinds.push(name ? { index: i, name, size: m.pointer(at + POINTER), rows: m.pointer(at + 2 * POINTER), count: m.whole(at + 3 * POINTER) } : null);
    }
    return kinds;
  }

  /** The rows of a kind, read when first asked for. */
  fields(kind) {
    if (kind.fields) return kind.fields;
    const own = !kind.rows, m = this.memory, { size } = this.layouts.tside_field;
    m.borrow(() => {
      const count = m.room(WHOLE);
      if (own) [kind.rows, kind.count] = [this.c.tside_fields(kind.index, count), m.whole(count)];
    });
    kind.fields = Array.from({ length: kind.count }, (_, i) => this.readField(kind.rows + i * size));
    kind.named = new Map();
    for (const row of kind.fields) if (!kind.named.has(row.name)) kind.named.set(row.name, row); // the first of a name counts
    kind.asked = own;
    return kind.fields;
  }

  readField(at) {
    const m = this.memory, o = this.layouts.tside_field, whole = (name) => m.whole(at + o[name]), number = (name) => m.number(at + o[name]);
    const row = {
      name: m.text(at + o.name), type: whole("type"), unit: m.text(at + o.unit), meaning: m.text(at + o.meaning), offset: whole("offset"),
      low: number("low"), high: number("high"), lowOpen: !!whole("low_open"), highOpen: !!whole("high_open"),
      required: !!whole("required"), optional: !!whole("optional"), usual: number("usual"), usualLow: number("usual_low"), usualHigh: number("usual_high"),
      basis: m.text(at + o.basis), tolerance: number("tolerance"), film: !!whole("film"),
      choices: Array.from({ length: whole("choice_count") }, (_, i) => m.text(m.pointer(at + o.choices) + i * POINTER)),
      kind: whole("kind"), stride: whole("stride"), capacity: whole("capacity"), countOffset: whole("count_offset"),
      appliesTo: m.text(at + o.applies_to), appliesOffset: whole("applies_offset"), appliesMask: m.pointer(at + o.applies_mask), address: at,
    };
    // the int that says whether it is there: an optional number's, or that of a group that applies while a flag is set
    row.flag = row.optional ? whole("given_offset") : row.type === IS_GROUP && row.appliesTo?.endsWith("_given") ? row.appliesOffset : -1;
    return row;
  }

  /** A structure as an object, frozen; the library takes it back bit for bit. */
  read(kind, at, bytes = this.memory.all.slice(at, at + kind.size)) {
    const m = this.memory, object = {};
    this.fields(kind);
    for (const row of kind.named.values()) {
      if (row.flag >= 0 && !m.whole(at + row.flag)) object[row.name] = null;
      else if (row.type === IS_NUMBER) object[row.name] = m.number(at + row.offset);
      else if (row.type === IS_COUNT) object[row.name] = m.whole(at + row.offset);
      else if (row.type === IS_CHOICE) object[row.name] = row.choices[m.whole(at + row.offset)];
      else if (row.type === IS_GROUP) object[row.name] = this.readWithin(row, at + row.offset, bytes, row.offset);
      else {
        const count = Math.min(Math.max(m.whole(at + row.countOffset), 0), row.capacity);
        object[row.name] = Object.freeze(Array.from({ length: count }, (_, i) => this.readWithin(row, at + row.offset + i * row.stride, bytes, row.offset + i * row.stride)));
      }
    }
    this.kept.set(object, { kind, bytes });
    return Object.freeze(object);
  }

  readWithin(row, at, bytes, offset) {
    const kind = this.kinds[row.kind];
    return this.read(kind, at, bytes.subarray(offset, offset + kind.size));
  }

  /** A structure of C's, from an object; returns its place. */
  put(kind, value, name) {
    const at = this.memory.room(kind.size);
    this.putAt(kind, at, value, name, true);
    return at;
  }

  putUsual(kind, at) {
    this.fields(kind);
    if (!kind.asked) return;
    if (!kind.usual) {
      this.c.tside_usual(kind.index, at);
      kind.usual = this.memory.all.slice(at, at + kind.size);
    }
    this.memory.all.set(kind.usual, at);
  }

  putAt(kind, at, value, name, fresh) {
    const known = value && this.kept.get(value);
    if (known?.kind === kind) {
      this.memory.all.set(known.bytes, at);
      return;
    }
    if (INTERFACE.makers[kind.name]) throw new TypeError(`${name}: a ${className(kind.name)} is made by ${INTERFACE.makers[kind.name]}(), and never by hand`);
    if (typeof value !== "object" || value === null || Array.isArray(value)) throw new TypeError(`${name}: an object, not ${described(value)}`);
    if (fresh) this.putUsual(kind, at);
    this.fill(kind, at, value);
  }

  /** Choices first, then what usually follows from them, then all that is given, for a choice may have followed from another too. */
  fill(kind, at, value) {
    const rows = this.fields(kind) && kind.named, given = Object.entries(value).filter(([, one]) => one !== undefined);
    for (const [name] of given) if (!rows.has(name)) throw new TypeError(`${className(kind.name)} has no field '${name}'${meant(name, rows.keys())}`);
    for (const [name, one] of given) if (rows.get(name).type === IS_CHOICE) this.putRow(rows.get(name), at, one);
    if (kind.asked) this.c.tside_usual_by_choice(kind.index, at);
    for (const [name, one] of given) this.putRow(rows.get(name), at, one);
  }

  putRow(row, at, value) {
    const m = this.memory;
    if (row.flag >= 0) {
      m.view.setInt32(at + row.flag, value === null ? 0 : 1, true);
      if (value === null) return;
    }
    if (row.type === IS_NUMBER) m.view.setFloat64(at + row.offset, this.typed(row, value), true);
    else if (row.type === IS_COUNT) m.view.setInt32(at + row.offset, wholeOf(row.name, value), true);
    else if (row.type === IS_CHOICE) m.view.setInt32(at + row.offset, typeof value === "string" ? this.typed(row, value) : wholeOf(row.name, value), true);
    else if (row.type === IS_GROUP) named(row.name, () => this.putAt(this.kinds[row.kind], at + row.offset, value, row.name, false));
    else this.putList(row, at, value);
  }

  putList(row, at, value) {
    const list = listOf(row.name, value), kind = this.kinds[row.kind];
    if (list.length > row.capacity) throw new TunnelsideError(`${row.name}: ${list.length} is above ${row.capacity}`, refusal("out_of_bounds", { field: row.name, relation: "above", value: list.length, bound: row.capacity }));
    list.forEach((one, i) => named(`${row.name}[${i}]`, () => this.putAt(kind, at + row.offset + i * row.stride, one, row.name, true)));
    this.memory.view.setInt32(at + row.countOffset, list.length, true);
  }

  /** What is typed for a field: a number, or a text that the library reads. */
  typed(row, value) {
    if (typeof value === "number") return value;
    if (typeof value !== "string") throw new TypeError(`${row.name}: a number, or a text with its unit, not ${described(value)}`);
    return row.unit || row.type === IS_CHOICE ? this.readTyped(row.name, value, (text, read, fault) => this.c.tside_field_read(row.address, text, read, fault)) : this.quantity(row.name, value, "1");
  }

  quantity(name, value, unit) {
    if (typeof value === "number") return value;
    if (typeof value !== "string") throw new TypeError(`${name}: a number, or a text with its unit, not ${described(value)}`);
    return this.readTyped(name, value, (text, read, fault) => this.c.tside_quantity_read(text, this.memory.putText(unit || "1"), read, fault));
  }

  readTyped(name, value, ask) {
    const m = this.memory;
    noZero(name, value);
    return m.borrow(() => {
      const text = m.putText(value), read = m.room(NUMBER), fault = m.room(this.layouts.tside_fault.size);
      if (ask(text, read, fault) === OK) return m.number(read);
      const refused = this.error(fault), own = refused.field && refused.message.startsWith(`${refused.field}: `);
      throw new TunnelsideError(`${name}: ${own ? refused.message.slice(refused.field.length + 2) : refused.message}`, { ...refused, name: undefined, field: name });
    });
  }

  /** The error of a fault. */
  error(at) {
    const m = this.memory, o = this.layouts.tside_fault;
    return m.borrow(() => {
      const needed = this.c.tside_fault_text(at, 0, 0), text = m.room(needed + 1), relation = m.whole(at + o.relation);
      this.c.tside_fault_text(at, text, needed + 1);
      return new TunnelsideError(m.textAt(text), {
        status: STATUSES[m.whole(at + o.status)], relation: RELATIONS[relation], field: m.textAt(at + o.field) || null, other: m.textAt(at + o.other) || null,
        unit: m.text(at + o.unit) || null, reason: m.text(at + o.reason) || null, index: m.whole(at + o.index),
        value: relation ? m.number(at + o.value) : null, bound: relation ? m.number(at + o.bound) : null, gap: m.number(at + o.gap),
        remedy: m.whole(at + o.remedy_given) ? m.number(at + o.remedy) : null,
      });
    });
  }
}

function refusal(status, more) {
  return { status, relation: null, field: null, other: null, unit: null, reason: null, index: -1, value: null, bound: null, gap: 0, remedy: null, ...more };
}

function wholeOf(name, value) {
  if (!Number.isInteger(value) || value < -2147483648 || value > 2147483647) throw new TypeError(`${name}: a whole number, not ${typeof value === "number" ? value : described(value)}`);
  return value;
}

function listOf(name, value) {
  if (!Array.isArray(value)) throw new TypeError(`${name}: a list, not ${described(value)}`);
  return value;
}

function noZero(name, text) {
  if (text.includes("\0")) throw new TypeError(`${name}: a text with a zero character`);
}

/** Runs what fills in a group or an element; a refusal then names its field from outside. */
function named(path, work) {
  try {
    return work();
  } catch (error) {
    throw error instanceof TunnelsideError ? error.within(path) : error;
  }
}

// --- functions ---

/** Calls C's functions, as the records of the headers tell of their arguments. */
class Caller {
  constructor(exports, memory, structures) {
    this.c = exports;
    this.memory = memory;
    this.structures = structures;
  }

  kind(cType) {
    return this.structures.byName.get(cType);
  }

  /** In which place each argument asked for stands. */
  make([cName, , , , args]) {
    const asked = args.filter(([, direction, , form]) => direction === "in" && form !== "beside").length;
    return (...values) => {
      if (values.length > asked) throw new TypeError(`${cName.slice("tside_".length)}: ${asked} arguments, not ${values.length}`);
      return this.call(cName, values);
    };
  }

  call(cName, values) {
    const record = this.records.get(cName);
    for (let room = 64; ; ) {
      const done = this.memory.borrow(() => this.once(record, values, room));
      if (done.room === undefined) return done.answer;
      room = done.room;
    }
  }

  /** One try, with room for so many elements or bytes; tells how much would do where that is too little. */
  once([cName, , what, returns, args], values, room) {
    const m = this.memory, s = this.structures, places = new Map(), outs = [], sret = what === "structure" ? m.room(this.kind(returns).size) : 0;
    let at = 0, fault = 0;
    for (const [name, direction, is, form, cType, unit, partners] of args) {
      if (direction === "fault") places.set(name, (fault = m.room(s.layouts.tside_fault.size)));
      else if (places.has(name)) continue;
      else if (direction === "in" && form !== "beside") places.set(name, this.argument(name, is, form, cType, unit, partners, values[at++], places));
      else if (direction === "out" && form !== "beside") {
        const out = this.answer(name, is, form, cType, partners, room, places);
        outs.push(out);
        places.set(name, out.at);
      }
    }
    const given = args.map(([name]) => places.get(name));
    const result = this.c[cName](...(sret ? [sret, ...given] : given));
    const lacking = outs.find((out) => out.needed && out.needed(result) > room);
    if (lacking) return { room: lacking.needed(result) };
    if (returns === "tside_status" && result !== OK) throw this.refused(fault, result, outs);
    const answers = outs.map((out) => [out.name, out.read()]);
    if (sret) answers.push([returns.slice("tside_".length), s.read(this.kind(returns), sret)]);
    else if (!["tside_status", "void", "size_t"].includes(returns)) answers.push(["result", returns === "const char *" ? m.textAt(result) : result]);
    return { answer: answers.length > 1 ? Object.freeze(Object.fromEntries(answers)) : answers[0]?.[1] };
  }

  /** Where something is written although nothing is within reach, the error has it as answers. */
  refused(fault, result, outs) {
    const error = this.structures.error(fault), each = outs.filter((out) => out.each);
    if (each.length && STATUSES[result] === "out_of_reach") error.answers = Object.fromEntries(each.map((out) => [out.name, out.read()]));
    return error;
  }

  argument(name, is, form, cType, unit, partners, value, places) {
    const s = this.structures, kind = this.kind(cType);
    if (form === "optional" && (value === null || value === undefined)) return 0;
    if (form === "list") {
      const list = listOf(name, value), at = this.memory.room(Math.max(1, list.length) * kind.size);
      list.forEach((one, i) => named(`${name}[${i}]`, () => s.putAt(kind, at + i * kind.size, one, name, true)));
      places.set(partners[0], list.length).set(`count of ${name}`, list.length);
      return at;
    }
    if (is === "structure") return name === "side" ? s.put(kind, value, name) : named(name, () => s.put(kind, value, name)); // its fields are named from it
    if (is === "number") return s.quantity(name, value, unit);
    if (is === "whole") return wholeOf(name, value);
    if (is === "choice") return choiceOf(name, cType, value);
    if (typeof value !== "string") throw new TypeError(`${name}: a text, not ${described(value)}`);
    noZero(name, value);
    return this.memory.putText(value);
  }

  answer(name, is, form, cType, partners, room, places) {
    const m = this.memory, s = this.structures, kind = this.kind(cType);
    if (form === "text") {
      const at = m.room(room);
      places.set(partners[0], room);
      if (partners[1]) places.set(partners[1], m.room(POINTER));
      return { name: "text", at, read: () => m.textAt(at), needed: (result) => (partners[1] ? m.pointer(places.get(partners[1])) : result) + 1 };
    }
    if (form === "room" || form === "each") {
      const each = form === "each", count = each ? 0 : m.room(WHOLE), many = () => (each ? places.get(`count of ${partners[0]}`) : m.whole(count));
      if (!each) {
        places.set(partners[0], room);
        places.set(partners[1], count);
      }
      const at = m.room(Math.max(1, each ? many() : room) * kind.size);
      return { name, at, each, read: () => Object.freeze(Array.from({ length: many() }, (_, i) => s.read(kind, at + i * kind.size))), needed: each ? null : many };
    }
    const at = m.room(is === "structure" ? kind.size : NUMBER);
    const read = { structure: () => s.read(kind, at), number: () => m.number(at), whole: () => m.whole(at), choice: () => INTERFACE.enums[cType][m.whole(at)] }[is];
    return { name, at, read };
  }
}

function choiceOf(name, cType, value) {
  const words = INTERFACE.enums[cType];
  if (typeof value !== "string") return wholeOf(name, value);
  const place = words.indexOf(value.toLowerCase());
  if (place < 0) throw new TunnelsideError(`${name}: '${value}' is not one of: ${words.join(", ")}`, refusal("not_found", { field: name, other: words.join(", ") }));
  return place;
}

// --- the library ---

async function bytesOf(source) {
  if (source instanceof WebAssembly.Module || source instanceof ArrayBuffer || ArrayBuffer.isView(source)) return source;
  const url = source ?? new URL("tunnelside.wasm", import.meta.url);
  if (typeof process !== "undefined" && process.versions?.node && new URL(url, import.meta.url).protocol === "file:") {
    const { readFile } = await import("node:fs/promises");
    return readFile(new URL(url, import.meta.url));
  }
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  return answer.arrayBuffer();
}

/**
 * Loads the library: its functions, without their prefix, in camel case.
 * source: the bytes of tunnelside.wasm, a compiled module, or where it is; without it the file beside this module.
 */
export async function load(source) {
  const bytes = await bytesOf(source);
  const instance = bytes instanceof WebAssembly.Module ? await WebAssembly.instantiate(bytes, {}) : (await WebAssembly.instantiate(bytes, {})).instance;
  return library(instance.exports);
}

function library(exports) {
  const memory = new Memory(exports), structures = new Structures(exports, memory), caller = new Caller(exports, memory, structures);
  caller.records = new Map(INTERFACE.functions.map((record) => [record[0], record]));
  const ts = { version: memory.textAt(exports.tside_version()), ...INTERFACE.constants };
  for (const record of INTERFACE.functions) ts[record[1]] = caller.make(record);
  Object.assign(ts, byHand(exports, memory, structures));
  for (const kind of structures.kinds)
    if (kind && structures.fields(kind) && kind.asked && !INTERFACE.makers[kind.name])
      ts[className(kind.name)] = (given = {}) => memory.borrow(() => structures.read(kind, structures.put(kind, given, className(kind.name))));
  return Object.freeze(Object.assign(ts, files(ts, structures)));
}

// --- functions of another shape ---

function byHand(c, memory, structures) {
  const kindNamed = (name) => {
    const kind = structures.byName.get(`tside_${name}`);
    if (!kind) throw new TunnelsideError(`no structure is called '${name}'`, refusal("not_found", { field: "name" }));
    structures.fields(kind);
    return kind;
  };

  /** The row at the end of a path, and the structure it stands in, at a place in memory where one is given. */
  const placeOf = (name, path, at = 0, place = memory.room(structures.layouts.tside_place.size)) => {
    const fault = memory.room(structures.layouts.tside_fault.size);
    if (c.tside_field_find(kindNamed(name).index, memory.putText(path), place, fault) !== OK) throw structures.error(fault);
    const row = structures.readField(memory.pointer(place + structures.layouts.tside_place.field));
    return { row, holder: at + memory.pointer(place + structures.layouts.tside_place.offset) - row.offset };
  };

  return {
    fields: (name) => Object.freeze(structures.fields(kindNamed(name)).map((row) => fieldShown(row, structures))),
    usual: (name) => memory.borrow(() => structures.read(kindNamed(name), structures.put(kindNamed(name), {}, name))),
    usualIn: (name, hardware) =>
      memory.borrow(() => {
        const kind = kindNamed(name), at = structures.put(kind, {}, name);
        c.tside_usual_in(kind.index, choiceOf("hardware", "tside_hardware", hardware), at);
        return structures.read(kind, at);
      }),
    check(name, value) {
      memory.borrow(() => {
        const at = structures.put(kindNamed(name), value, name), fault = memory.room(structures.layouts.tside_fault.size);
        if (c.tside_check(kindNamed(name).index, at, fault) !== OK) throw structures.error(fault);
      });
    },
    fieldApplies: (name, path, value) =>
      memory.borrow(() => {
        const at = structures.put(kindNamed(name), value, name), { row, holder } = placeOf(name, path, at);
        return !!c.tside_field_applies(row.address, holder);
      }),
    fieldRead: (name, path, text) =>
      memory.borrow(() => {
        const { row } = placeOf(name, path), read = named(path, () => structures.typed({ ...row, name: "" }, text));
        return row.type === IS_CHOICE ? row.choices[read] : read;
      }),
    planSides: (base, columns, outputs = []) => memory.borrow(() => planSides({ c, memory, structures, placeOf }, base, columns, listOf("outputs", outputs))),
    trades: (ofWalls = false) =>
      memory.borrow(() => {
        const count = memory.room(WHOLE), first = c.tside_trades(ofWalls ? 1 : 0, count), o = structures.layouts.tside_trade;
        return Object.freeze(
          Array.from({ length: memory.whole(count) }, (_, i) => first + i * o.size).map((at) =>
            Object.freeze({ family: memory.text(at + o.family), name: memory.text(at + o.name), value: memory.number(at + o.value) }),
          ),
        );
      }),
    stockPlan: (stock, cuts, nodeLimit = INTERFACE.constants.STOCK_NODES) => memory.borrow(() => stockPlan(c, memory, structures, stock, listOf("cuts", cuts), wholeOf("nodeLimit", nodeLimit))),
  };
}

const TYPES = ["number", "count", "choice", "group", "list"];

/** A row as it is shown: without what only memory is told by. */
function fieldShown(row, structures) {
  const { offset, address, flag, stride, countOffset, appliesOffset, appliesMask, kind, type, ...shown } = row;
  const within = type === IS_GROUP || type === IS_LIST ? structures.kinds[kind].name.slice("tside_".length) : null;
  return Object.freeze({ ...shown, type: TYPES[type], kind: within, appliesWhile: row.appliesTo ? Array.from({ length: 32 }, (_, k) => k).filter((k) => (appliesMask >>> k) & 1) : [] });
}

// Many sides: columns laid over a base, row by row.

const FINDINGS = "findings", NOT_PLANNED = -1;

/** How many rows columns have, all alike. */
function rowsOf(columns) {
  const lengths = columns.map(([path, values]) => {
    if (!Number.isInteger(values?.length) || typeof values === "string") throw new TypeError(`${path}: a list, not ${described(values)}`);
    return values.length;
  });
  const other = lengths.findIndex((length) => length !== lengths[0]);
  if (other >= 0) throw new TypeError(`${columns[other][0]}: ${lengths[other]} rows, while ${columns[0][0]} has ${lengths[0]}`);
  return lengths[0] ?? 1;
}

/** Runs of rows, [from, to], in which the same columns say something. */
function runsOf(columns, rows) {
  const said = (row) => columns.filter(({ values }) => values[row] !== null && values[row] !== undefined), runs = [];
  for (let row = 0; row < rows; row++) {
    const here = said(row), last = runs.at(-1);
    if (last && last.columns.length === here.length && here.every((one, i) => one === last.columns[i])) last.to = row + 1;
    else runs.push({ from: row, to: row + 1, columns: here });
  }
  return runs;
}

function planSides(ask, base, columns, outputs) {
  if (typeof columns !== "object" || columns === null) throw new TypeError(`columns: an object, not ${described(columns)}`);
  const { memory, structures, placeOf } = ask, statuses = INTERFACE.enums.tside_status, given = Object.entries(columns), rows = rowsOf(given);
  const at = structures.put(structures.byName.get("tside_side"), base, "base"), found = outputs.includes(FINDINGS);
  const answer = { status: memory.room(rows * WHOLE), findings: found ? memory.room(rows * NUMBER) : 0 };
  const inputs = given.map(([path, values]) => ({ path, values, data: laidOut(memory, structures, placeOf("side", path).row, path, values) }));
  const filled = [...new Set(outputs)].filter((path) => path !== FINDINGS).map((path) => ({ path, data: memory.room(rows * NUMBER) }));
  for (let row = 0; row < rows; row++) {
    memory.view.setInt32(answer.status + row * WHOLE, NOT_PLANNED, true);
    for (const { data } of filled) memory.view.setFloat64(data + row * NUMBER, NaN, true);
  }
  for (const run of runsOf(inputs, rows)) memory.borrow(() => planRun(ask, at, run, filled, answer));
  const every = (read) => Object.freeze(Array.from({ length: rows }, (_, row) => read(row)));
  return Object.freeze({
    status: every((row) => statuses[memory.whole(answer.status + row * WHOLE)]),
    ...(found ? { findings: every((row) => findingsIn(memory.view.getBigUint64(answer.findings + row * NUMBER, true))) } : {}),
    ...Object.fromEntries(filled.map(({ path, data }) => [path, Float64Array.from({ length: rows }, (_, row) => memory.number(data + row * NUMBER))])),
  });
}

function findingsIn(word) {
  return Object.freeze(INTERFACE.enums.tside_finding_code.filter((_, code) => (word >> BigInt(code)) & 1n));
}

/** A column of numbers in memory; what is typed is read as its field is. */
function laidOut(memory, structures, row, path, values) {
  const data = memory.room(values.length * NUMBER);
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? 0;
    memory.view.setFloat64(data + i * NUMBER, named(`${path}[${i}]`, () => structures.typed({ ...row, name: "" }, value)), true);
  }
  return data;
}

/** Rows in which the same columns say something. */
function planRun({ c, memory, structures, placeOf }, base, { from, to, columns }, filled, answer) {
  const fault = memory.room(structures.layouts.tside_fault.size);
  const put = (cName, name, list) => {
    const layout = structures.layouts[cName], first = memory.room(Math.max(1, list.length) * layout.size);
    list.forEach(({ path, data }, i) => {
      const at = first + i * layout.size;
      placeOf(name, path, 0, at + layout.place);
      memory.view.setUint32(at + layout.data, data + from * NUMBER, true);
      memory.view.setInt32(at + layout.stride, NUMBER, true);
    });
    return first;
  };
  const inputs = put("tside_input", "side", columns), outputs = put("tside_output", "plan", filled);
  const status = answer.status + from * WHOLE, findings = answer.findings && answer.findings + from * NUMBER;
  c.tside_plan_sides(base, to - from, inputs, columns.length, outputs, filled.length, status, findings, fault);
  if (memory.whole(status) === NOT_PLANNED) throw structures.error(fault); // a column that no field has: a bad row has a status
}

function stockPlan(c, memory, structures, stock, cuts, nodeLimit) {
  const [stockKind, cutKind, stickKind, planKind] = ["tside_stock", "tside_cut", "tside_stick", "tside_cut_plan"].map((name) => structures.byName.get(name));
  const stockAt = named("stock", () => structures.put(stockKind, stock, "stock")), cutsAt = memory.room(Math.max(1, cuts.length) * cutKind.size);
  cuts.forEach((one, i) => named(`cuts[${i}]`, () => structures.putAt(cutKind, cutsAt + i * cutKind.size, one, "cuts", true)));
  const size = c.tside_stock_work(cuts.length), work = memory.room(size), plan = memory.room(planKind.size), count = memory.room(WHOLE), fault = memory.room(structures.layouts.tside_fault.size);
  for (let capacity = 64; ; capacity = memory.whole(count)) {
    const sticks = memory.room(capacity * stickKind.size), taken = memory.room(Math.max(1, capacity * cuts.length) * WHOLE);
    const status = c.tside_stock_plan(stockAt, cutsAt, cuts.length, nodeLimit, work, size, sticks, taken, capacity, count, plan, fault);
    if (status === TOO_SMALL && memory.whole(count) > capacity) continue;
    if (status !== OK) throw structures.error(fault);
    const rows = Array.from({ length: memory.whole(count) }, (_, i) => i);
    return Object.freeze({
      plan: structures.read(planKind, plan),
      sticks: Object.freeze(rows.map((i) => structures.read(stickKind, sticks + i * stickKind.size))),
      taken: Object.freeze(rows.map((i) => Object.freeze(cuts.map((_, j) => memory.whole(taken + (i * cuts.length + j) * WHOLE))))),
    });
  }
}
