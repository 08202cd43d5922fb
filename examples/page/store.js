// SPDX-License-Identifier: MIT
// Sides kept on the device, each under a key of its own, and which tab has which.

const SIDE = "roll-up-side:side:", PLACE = "roll-up-side:place:", HELD = "roll-up-side:held:", LAST = "roll-up-side:last";
const FRESH = 4000; // ms: a tab that has a side says so each second

export class Store {
  constructor(storage) {
    this.storage = storage;
    this.tab = `${Date.now()}-${Math.random()}`;
  }

  /** Whether anything can be kept: a viewer of files may have no room for a page. */
  static open() {
    try {
      const storage = window.localStorage, probe = "roll-up-side:probe";
      storage.setItem(probe, "1");
      storage.removeItem(probe);
      return new Store(storage);
    } catch {
      return null;
    }
  }

  read(key) {
    try {
      return JSON.parse(this.storage.getItem(key));
    } catch {
      return null;
    }
  }

  ids() {
    return Object.keys(this.storage).filter((key) => key.startsWith(SIDE)).map((key) => key.slice(SIDE.length)).sort();
  }

  newId() {
    for (let number = 1; ; number++) if (this.storage.getItem(SIDE + number) === null) return String(number);
  }

  file(id) {
    return this.read(SIDE + id);
  }

  /** As it stands there, to tell whether another tab has changed it. */
  text(id) {
    return this.storage.getItem(SIDE + id);
  }

  /** Throws where there is no room left. Returns the text that is kept. */
  keep(id, file) {
    const text = JSON.stringify(file);
    this.storage.setItem(SIDE + id, text);
    return text;
  }

  forget(id) {
    for (const key of [SIDE, PLACE, HELD]) this.storage.removeItem(key + id);
  }

  place(id) {
    return this.read(PLACE + id) ?? {};
  }

  keepPlace(id, place) {
    this.storage.setItem(PLACE + id, JSON.stringify(place));
    this.storage.setItem(LAST, id);
  }

  last() {
    return this.storage.getItem(LAST);
  }

  /** Takes a side for this tab, or says that another has it. */
  take(id) {
    const held = this.read(HELD + id);
    if (held && held.tab !== this.tab && Date.now() - held.time < FRESH) return false;
    this.hold(id);
    return true;
  }

  /** Where not even that can be kept, nothing else is either, which keep() says. */
  hold(id) {
    try {
      this.storage.setItem(HELD + id, JSON.stringify({ tab: this.tab, time: Date.now() }));
    } catch {
      this.storage.removeItem(HELD + id);
    }
  }

  has(id) {
    return this.read(HELD + id)?.tab === this.tab;
  }

  letGo(id) {
    if (this.has(id)) this.storage.removeItem(HELD + id);
  }
}
