
// --- files of sides, with the keys of the programs' and the same meaning ---

const TEXTS = ["name", "note", "drive_at", "mark"], BESIDE = [...TEXTS, "tolerances", "fittings"], JOBS_OWN = ["job", "sides", "note"];
const TEXTS_IN = { tside_drive: ["name", "note"], tside_keep_out: ["name"] };
const UNITLESS = ["1", "turn"], MOST_SIDES = 2, MOST_LISTED = 10000, MOST_TOLERANCES = 1000, LONGEST = 16 << 20;

const joined = (within, key) => (within ? `${within}.${key}` : key);
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
/** An empty text, and an object or a list of nothing else: a file to fill in before it is filled in. */
const isBlank = (value) => (typeof value === "object" && value !== null ? Object.values(value).every(isBlank) : value === "" || value === undefined);

function refuseAt(path, why, status = "unreadable") {
  throw new TunnelsideError(`${path}${path ? ": " : ""}${why}`, refusal(status, { field: path || null }));
}

/** What a JSON value is, for those that are not wanted. */
function whatIs(value) {
  if (value === null || typeof value === "boolean") return value === null ? "null" : "a yes or no";
  return Array.isArray(value) ? "a list" : typeof value === "object" ? "an object" : typeof value === "string" ? "a text" : String(value);
}

function files(ts, structures) {
  const { memory, c } = structures;
  const kindOf = (name) => structures.byName.get(name);
  const isInFeet = (words) => {
    if (!/[fiy'"\u2000-\u2fff]/.test(words)) return false;
    try {
      ts.quantityRead(words, "m");
      return true;
    } catch {
      return false;
    }
  };
  const speaksFeet = (value) => (typeof value === "string" ? isInFeet(value) : typeof value === "object" && value !== null && Object.values(value).some(speaksFeet));

  /** Which rows apply, as a structure's choices stand; of one name the one that applies, else the first. */
  function rowsOf(kind, choices) {
    return memory.borrow(() => {
      const at = structures.put(kind, choices, kind.name), found = new Map();
      for (const row of structures.fields(kind)) {
        const applies = !!c.tside_field_applies(row.address, at);
        if (!found.has(row.name) || (applies && !found.get(row.name).applies)) found.set(row.name, { ...row, applies });
      }
      return [...found.values()];
    });
  }

  /** What reads a side: it knows how its file speaks. */
  class Reader {
    constructor(amongFeet, hardware) {
      this.amongFeet = amongFeet;
      this.hardware = hardware;
    }

    structure(kind, value, path, beside = []) {
      const more = [...beside, ...(TEXTS_IN[kind.name] ?? [])];
      if (!isObject(value)) refuseAt(path, "wanted an object");
      const rows = structures.fields(kind);
      for (const key of Object.keys(value)) if (!more.includes(key) && !kind.named.has(key)) refuseAt(joined(path, key), `no such field${this.meant(kind, key, more)}`, "not_found");
      const choices = {};
      for (const row of rows) if (row.type === IS_CHOICE && !isBlank(value[row.name])) choices[row.name] = this.leaf(kind, row, value[row.name], joined(path, row.name));
      if (kind.named.has("hardware")) choices.hardware ??= this.hardware;
      const chosen = rowsOf(kind, choices), given = { ...choices };
      for (const row of chosen) {
        const one = this.row(kind, row, choices, value[row.name], joined(path, row.name));
        if (one !== undefined) given[row.name] = one;
      }
      return given;
    }

    meant(kind, key, beside) {
      if (beside.includes("fittings") && kindOf("tside_fittings") && structures.fields(kindOf("tside_fittings")).some((row) => row.name === key)) return `; did you mean 'fittings.${key}'?`;
      return meant(key, [...kind.named.keys(), ...beside]);
    }

    /** What a file gives for a field; nothing where it gives nothing. */
    row(kind, row, choices, value, path) {
      if (!row.applies) {
        if (!isBlank(value)) refuseAt(path, unused(kind, row, choices));
        return undefined;
      }
      if (row.type === IS_GROUP) return this.structure(structures.kinds[row.kind], isBlank(value) ? {} : value, path);
      if (isBlank(value)) {
        if (row.required) refuseAt(path, `missing: ${row.meaning}${["", "1"].includes(row.unit) ? "" : ` (${row.unit})`}`, "out_of_bounds");
        return undefined;
      }
      if (row.type !== IS_LIST) return this.leaf(kind, row, value, path);
      if (!Array.isArray(value)) refuseAt(path, "wanted a list");
      if (value.length > row.capacity) refuseAt(path, `${value.length} are too many: the most is ${row.capacity}`);
      return value.map((one, i) => this.structure(structures.kinds[row.kind], one, `${path}[${i}]`));
    }

    /** A number, a count or a choice. */
    leaf(kind, row, value, path) {
      if (row.type === IS_COUNT) {
        if (!Number.isInteger(value) || Math.abs(value) > 1e9) refuseAt(path, `${whatIs(value)}; wanted a whole number`);
        return value;
      }
      if (row.type === IS_CHOICE) {
        if (typeof value !== "string") refuseAt(path, `${whatIs(value)}; wanted one of: ${row.choices.join(", ")}`);
        return row.choices[this.typed(value, path, () => structures.typed(row, value))];
      }
      if (typeof value === "string") return this.typed(value, path, () => measured(kind, row, value));
      if (typeof value !== "number") refuseAt(path, `${whatIs(value)}; wanted a number${row.unit === "1" ? "" : ` in ${row.unit}`}, or a text with its unit`);
      if (this.amongFeet && !UNITLESS.includes(row.unit) && (value !== 0 || row.unit === "degC"))
        refuseAt(path, `${value} was taken for ${value} ${row.unit}, while this file elsewhere speaks feet, inches or pounds: give it as a text with its unit`);
      return value;
    }

    /** What a text says; a refusal names the path in the file, and the text. */
    typed(words, path, read) {
      try {
        return read();
      } catch (error) {
        if (!(error instanceof TunnelsideError)) throw error;
        const clause = error.field && error.message.startsWith(`${error.field}: `) ? error.message.slice(error.field.length + 2) : error.message;
        throw new TunnelsideError(`${path}: ${JSON.stringify(words)}: ${clause}`, { ...error, name: undefined, clause: undefined, field: path });
      }
    }

    tolerances(side, value, path) {
      const read = {};
      if (isBlank(value)) return read;
      if (!isObject(value) || Object.keys(value).length > MOST_TOLERANCES) refuseAt(path, `wanted an object of at most ${MOST_TOLERANCES} paths and tolerances, such as {"curtain.hip": "1/2 in"}`);
      for (const [where, given] of Object.entries(value)) if (!isBlank(given)) read[where] = this.tolerance(side, where, given, joined(path, where));
      return read;
    }

    tolerance(side, where, given, path) {
      const row = this.measuredRow(side, where, path), kind = kindOf("tside_side"), number = this.leaf(kind, row, given, path);
      if (number < 0) refuseAt(path, `${number}${row.unit === "1" ? "" : ` ${row.unit}`}; a tolerance is 0 or above, and is off either way`, "out_of_bounds");
      return number;
    }

    /** The row of a number of the side that is in use. */
    measuredRow(side, where, path) {
      let kind = kindOf("tside_side"), holder = side, row;
      for (const step of where.split(".")) {
        structures.fields(kind);
        if (step.includes("[")) refuseAt(path, "moves nothing that is asked: what lists hold is not measured");
        if (!kind.named.has(step)) refuseAt(path, `no such field${meant(step, kind.named.keys())}`, "not_found");
        row = rowsOf(kind, holder).find((one) => one.name === step);
        if (!row.applies) refuseAt(path, "not in use, as the choices of this side stand");
        if (row.type === IS_GROUP) [kind, holder] = [structures.kinds[row.kind], holder[step]];
      }
      if (row.type === IS_GROUP || row.type === IS_LIST) refuseAt(path, 'holds fields of its own: wanted the path of one number, such as "curtain.hip"');
      if (row.type !== IS_NUMBER) refuseAt(path, "is counted or chosen, not measured");
      if (holder[row.name] === null) refuseAt(path, "the side does not give it");
      return row;
    }
  }

  function unused(kind, row, choices) {
    const whole = memory.borrow(() => structures.read(kind, structures.put(kind, choices, kind.name))), choice = kind.named.get(row.appliesTo);
    const names = choice.choices.filter((_, k) => (row.appliesMask >>> k) & 1);
    return `used only while ${choice.name} is ${names.join(" or ")}; it is ${whole[choice.name]}`;
  }

  // Trade sizes, which a tube's diameter and wall are read as first.

  function measured(kind, row, words) {
    const isTube = kind.name === "tside_round" || kind.name === "tside_square";
    if (isTube && row.name === "diameter") return diameterOf(words);
    if (isTube && row.name === "wall") return wallOf(words);
    return structures.typed(row, words);
  }

  const startsWithLetter = (words) => /^ *[A-Za-z]/.test(words);

  /** "1-3/8 in" names tubes of different size: where more families than that of true tube have the name, it is refused with all of them. */
  function diameterOf(words) {
    try {
      return ts.tubeSize(words);
    } catch (error) {
      const other = error.other ?? "";
      if (startsWithLetter(words) || (error.status === "not_found" && other.includes(",") && other.includes("tube "))) throw error;
    }
    return ts.quantityRead(words, "m");
  }

  /** A gauge without its series is refused with the series that have it. */
  function wallOf(words) {
    let trade;
    try {
      return ts.tubeWall(words);
    } catch (error) {
      trade = error;
    }
    if (!startsWithLetter(words)) {
      try {
        return ts.quantityRead(words, "m");
      } catch (error) {
        if (words.replace(/^[ 0-9]+|[ 0-9]+$/g, "") && !words.includes("ga")) throw error;
      }
    }
    throw trade;
  }

  // Sides.

  function textOf(owner, within, key) {
    const value = owner[key] ?? "";
    if (typeof value !== "string") refuseAt(joined(within, key), "wanted a text");
    return value;
  }

  /** What of a file's side may have texts of its own, each with its path. */
  function withTexts(side) {
    const found = [["drive", side.drive, TEXTS_IN.tside_drive]];
    for (const end of ["drive_end", "free_end"]) (Array.isArray(side[end]?.keep_outs) ? side[end].keep_outs : []).forEach((one, i) => found.push([`${end}.keep_outs[${i}]`, one, TEXTS_IN.tside_keep_out]));
    return found.filter(([, one]) => isObject(one));
  }

  function textsOf(within, side, key) {
    const found = withTexts(side).filter(([, , keys]) => keys.includes(key)).map(([path, one]) => [path, textOf(one, joined(within, path), key)]);
    return Object.fromEntries(found.filter(([, text]) => text));
  }

  function site(within, value, amongFeet) {
    if (!isObject(value)) refuseAt(within, "wanted an object that describes a side");
    const hip = isObject(value.curtain) ? value.curtain.hip : undefined;
    const reader = new Reader(amongFeet, typeof hip === "string" && isInFeet(hip) ? "inch" : "metric");
    const texts = Object.fromEntries(TEXTS.map((key) => [key, textOf(value, within, key)]));
    if (texts.mark) reader.typed(texts.mark, joined(within, "mark"), () => ts.markPlace(texts.mark));
    const side = ts.Side(reader.structure(kindOf("tside_side"), value, within, BESIDE));
    const fittings = ts.Fittings(reader.structure(kindOf("tside_fittings"), isBlank(value.fittings) ? {} : value.fittings, joined(within, "fittings")));
    const tolerances = reader.tolerances(side, value.tolerances ?? "", joined(within, "tolerances"));
    return { side, fittings, ...texts, tolerances, job: "", job_note: "", names: textsOf(within, value, "name"), notes: textsOf(within, value, "note") };
  }

  /** What is shared, less what a side says otherwise. */
  function laid(shared, own) {
    const whole = new Map(Object.entries(shared));
    for (const [key, value] of Object.entries(own)) whole.set(key, isObject(value) && isObject(whole.get(key)) ? laid(whole.get(key), value) : value);
    return Object.fromEntries(whole); // which makes "__proto__" a key like any other
  }

  function jobOf(root) {
    if (!Array.isArray(root.sides) || root.sides.length < 1 || root.sides.length > MOST_SIDES) refuseAt("sides", "wanted a list of one or two sides");
    const shared = Object.fromEntries(Object.entries(root).filter(([key]) => !JOBS_OWN.includes(key)));
    const job = textOf(root, "", "job"), job_note = textOf(root, "", "note"), feet = speaksFeet(root);
    const sites = root.sides.map((one, i) => ({ ...site(`sides[${i}]`, isObject(one) ? laid(shared, one) : one, feet), job, job_note }));
    if (sites.length > 1 && sites[0].side.hand === sites[1].side.hand && sites[0].drive_at === sites[1].drive_at)
      refuseAt("sides[1].hand", "the same hand as the other side's, with the drive at the same end: it would be the same side; give hand, or drive_at, as it is", "contradicts");
    return sites;
  }

  function parsed(text) {
    if (typeof text !== "string") throw new TypeError(`readSides: a text, not ${described(text)}`);
    if (text.length > LONGEST) refuseAt("", "longer than 16 MiB: no file of sides");
    const json = text.replace(/^\ufeff/, "");
    let root;
    try {
      root = JSON.parse(json, (key, value) => {
        if (typeof value === "number" && !Number.isFinite(value)) throw new SyntaxError(`${key}: no finite number`);
        if ((typeof value === "string" ? value + key : key).includes("\0")) throw new SyntaxError("a text with a zero character");
        return value;
      });
    } catch (error) {
      if (!(error instanceof SyntaxError || error instanceof RangeError)) throw error;
      refuseAt("", error instanceof RangeError ? "nested too deeply" : error.message);
    }
    const twice = keyTwice(json);
    if (twice) refuseAt("", twice);
    return root;
  }

  function readSides(text) {
    const root = parsed(text);
    let sites;
    if (Array.isArray(root)) {
      if (root.length < 1 || root.length > MOST_LISTED) refuseAt("", `a list of ${root.length} sides: wanted 1 to ${MOST_LISTED}`);
      sites = root.map((one, i) => site(`[${i}]`, one, speaksFeet(one)));
    } else sites = isObject(root) && ("sides" in root || "job" in root) ? jobOf(root) : [site("", root, speaksFeet(root))];
    const places = sites.filter((one) => one.mark).map((one) => ts.markPlace(one.mark));
    if (new Set(places).size < places.length) refuseAt("mark", "another side has it too", "contradicts");
    return Object.freeze(sites.map(Object.freeze));
  }

  return { readSides };
}
