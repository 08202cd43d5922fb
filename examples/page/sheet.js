// SPDX-License-Identifier: MIT
// The programs' reading, planning and writing, as core.c has it in WebAssembly.

/** Loads it from its bytes. */
export async function loadSheet(bytes) {
  const none = () => 8; // EBADF: it has no files
  const host = { wasi_snapshot_preview1: { fd_close: none, fd_seek: none, fd_write: none } };
  const { instance } = await WebAssembly.instantiate(bytes, host);
  instance.exports._initialize();
  return new Sheet(instance.exports);
}

const UNITS = { file: 0, si: 1, us: 2 }; // units of command.h

class Sheet {
  constructor(c) {
    this.c = c;
    this.encoder = new TextEncoder();
    this.decoder = new TextDecoder();
  }

  textAt(at) {
    const bytes = new Uint8Array(this.c.memory.buffer);
    return this.decoder.decode(bytes.subarray(at, bytes.indexOf(0, at)));
  }

  /** Runs what reads a text, which has room for so long. A zero character would end it: there is none in what is typed. */
  withText(words, work) {
    const bytes = this.encoder.encode(words.replaceAll("\0", "\ufffd")), at = this.c.room(bytes.length + 1);
    const memory = new Uint8Array(this.c.memory.buffer);
    memory.set(bytes, at);
    memory[at + bytes.length] = 0;
    try {
      return work(at);
    } finally {
      this.c.give_back(at);
    }
  }

  /** What jansson would have parsed. */
  value(one) {
    if (typeof one === "string") return this.withText(one, (at) => this.c.new_text(at));
    if (typeof one === "number") return this.c.new_number(one);
    if (one === null || typeof one !== "object") return this.c.new_other(one === null ? 1 : 0);
    if (Array.isArray(one)) {
      const list = this.c.new_list();
      for (const element of one) this.c.put_element(list, this.value(element));
      return list;
    }
    const object = this.c.new_object();
    for (const [key, member] of Object.entries(one)) {
      const value = this.value(member);
      this.withText(key, (at) => this.c.put_member(object, at, value));
    }
    return object;
  }

  /**
   * Plans the sides of a file, as tunnelside-plan does.
   * file: what stands in it; units: "file", "si" or "us", of what is written of the plan.
   * Returns { sides }: of each whether it is planned, what was refused, each with its path and words, which questions are in use, and of a planned one its
   * turns and how many things stop the work. What follows is written when it is asked for.
   */
  plan(file, units = "file") {
    const plan = { source: JSON.stringify(file), units };
    const { sides } = JSON.parse(this.run(plan));
    plan.sides = sides.map(({ in_use, refused, ...side }) => ({ ...side, inUse: new Set(in_use), refused: refused.map((line) => split(line, side.within)) }));
    return plan;
  }

  run(plan) {
    this.now = plan;
    return this.withText(plan.source, (source) => this.textAt(this.c.plan_sides(this.value(JSON.parse(plan.source)), source)));
  }

  /** The core has one plan at a time: one that is old by now is made again. */
  hold(plan) {
    if (this.now !== plan) this.run(plan);
    return this.c;
  }

  /** Its sheets, as HTML; "" where no side is planned. */
  paper(plan) {
    plan.paper ??= this.textAt(this.hold(plan).sheets(UNITS[plan.units]));
    return plan.paper;
  }

  /** Its order, as HTML, or why there is none. */
  order(plan) {
    plan.order ??= { paper: this.textAt(this.hold(plan).ordered(UNITS[plan.units])), why: this.textAt(this.c.what_was_said()).trim() };
    return plan.order;
  }

  /** A picture of one of its sides as far as it is answered, with what a question is about drawn thick; SVG, or "". */
  lit(plan, side, path) {
    return this.withText(path, (at) => this.textAt(this.hold(plan).lit(side, at)));
  }

  questions() {
    return JSON.parse(this.textAt(this.c.questions_asked())).questions;
  }

  /** The template's sheets at full size, each as SVG; of a side that is planned. */
  template(plan, side, paper) {
    const documents = this.textAt(this.hold(plan).template_of(side, paper === "letter" ? 1 : 0));
    return documents.split(/(?=<\?xml|<svg xmlns[^>]*mm" viewBox)/).filter((one) => one.includes("<svg"));
  }

  pictures() {
    return this.textAt(this.c.pictures());
  }
}

/** "file:12: sides[0].curtain.hip: words", its path told from the side. */
function split(line, within) {
  const [, path = "", words] = /^[^:]*:\d+: (?:([\w.[\]]+): )?([^]*)$/.exec(line) ?? [null, "", line];
  return { path: within && path.startsWith(`${within}.`) ? path.slice(within.length + 1) : path, words };
}
