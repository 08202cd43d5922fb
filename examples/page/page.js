// SPDX-License-Identifier: MIT
// The page: one question at a time, the sheet as it stands, one step of the work at a time, and the sides that are kept.

const TEXTS = [
  { path: "name", meaning: "what this side is called", type: "text" },
  { path: "drive_at", meaning: "at which end of the house the drive is", type: "text" },
];
const FILE_NAME = "side.json", LINK = "side=", ORDER = "order";
const $ = (id) => document.getElementById(id);

/** An element with properties and children; texts are texts. */
function make(name, properties = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) key in element ? (element[key] = value) : element.setAttribute(key, value);
  element.append(...children);
  return element;
}

const button = (words, press, properties = {}) => make("button", { type: "button", onclick: press, ...properties }, words);

// --- what the page knows ---

const store = Store.open();
const sheet = await loadSheet(await unpacked(CORE));
const questions = sheet.questions();
const state = { id: null, file: {}, side: 0, units: "file", mine: true, plan: null, last: null, part: "ask", at: 0, step: 0, left: new Set(), list: false, was: {}, arrived: null };

/** The bytes of a text that was packed with deflate and base 64. */
async function unpacked(text) {
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

const current = () => state.plan.sides[Math.min(state.side, state.plan.sides.length - 1)];

/** The questions in use as the choices stand, and before them what the side is called. */
function asked() {
  const found = [...TEXTS];
  for (const one of questions)
    if (current().inUse.has(one.path)) {
      if (one.type === "list") found.push(...listed(one));
      else found.push(one);
    }
  return found;
}

/** Of a list what each element has, and one more to add. */
function listed(one) {
  const count = answerAt(state.file, state.side, one.path)?.length ?? 0, found = [];
  for (let i = 0; i < count; i++) {
    found.push({ path: `${one.path}[${i}].name`, letter: one.letter, meaning: `${one.meaning}, ${i + 1}: what it is called`, type: "text" });
    for (const element of one.elements) found.push({ ...element, letter: one.letter, path: `${one.path}[${i}].${element.path}`, meaning: `${one.meaning}, ${i + 1}: ${element.meaning}` });
  }
  found.push({ ...one, count });
  return found;
}

function replan() {
  state.plan = sheet.plan(state.file, state.units);
  if (current().planned) state.last = state.plan;
}

const isOld = () => !!state.last && state.last !== state.plan;

// --- keeping ---

function say(words) {
  $("told").textContent = words;
}

function keep() {
  if (!store || !state.mine) return;
  try {
    if (!store.has(state.id) && (!store.take(state.id) || store.text(state.id) !== state.kept)) return lose();
    state.kept = store.keep(state.id, state.file);
    store.keepPlace(state.id, { part: state.part, at: state.at, step: state.step, side: state.side, units: state.units, was: state.was });
  } catch {
    say("This device has no more room for the page: save the side as a file now.");
  }
}

const OTHER = "This side is open in another tab, which keeps it. Nothing can be typed here until that one is closed.";

/** Another tab has the side: this one shows it, and changes nothing. */
function lose() {
  state.mine = false;
  say(OTHER);
  show();
}

function open(id, file, place = {}) {
  if (store && state.id !== null) store.letGo(state.id);
  Object.assign(state, { id, file, side: place.side ?? 0, part: place.part ?? "ask", at: place.at ?? 0, step: place.step ?? 0, units: place.units ?? "file", was: place.was ?? {}, arrived: null, last: null, left: new Set(), list: false, kept: store ? store.text(id) : null });
  state.mine = !store || store.take(id);
  replan();
  if (!state.mine) return lose();
  keep();
  show();
}

/** As another side: never over work at hand. */
function openAnother(file) {
  const id = store ? store.newId() : "0";
  try {
    store?.keep(id, file);
  } catch {
    say("This device has no more room for the page: save sides as files, and forget some.");
  }
  open(id, file);
}

// --- showing ---

function show() {
  $("whose").textContent = nameOf(state.file, state.side);
  for (const one of document.querySelectorAll("[data-part]")) {
    if (one.dataset.part === state.part) one.setAttribute("aria-current", "page");
    else one.removeAttribute("aria-current");
    $(one.dataset.part).hidden = one.dataset.part !== state.part;
  }
  showState();
  ({ ask: showQuestion, see: showSheet, work: showStep, keep: showKept })[state.part]();
}

function showState() {
  const side = current(), missing = side.refused.filter((one) => one.words.startsWith("missing:")).length, wrong = side.refused.length - missing;
  const lacking = [missing && `${missing} still to answer`, wrong && `${wrong} to mend`].filter(Boolean).join(", ");
  $("state").textContent = side.planned ? told(state.plan) : `${lacking}${isOld() ? "; the plan shown is old" : ""}`;
}

/** What a plan comes to, in one line. */
function told(plan) {
  const { turns, stops } = plan.sides[state.side];
  return `${turns.value.toFixed(1)} turns; ${stops ? `${stops} ${stops > 1 ? "things stop" : "thing stops"} the work` : "nothing stops the work"}`;
}

// --- answering ---

function faultOf(path) {
  const found = current().refused.find((one) => one.path === path && (state.left.has(path) || !one.words.startsWith("missing:")));
  return found && state.left.has(path) ? found.words : "";
}

function typed(one, words) {
  const text = words.trim();
  return one.type === "count" && /^\d{1,9}$/.test(text) ? Number(text) : text;
}

function change(one, words) {
  if (!state.mine) return;
  answer(state.file, state.side, one.path, typed(one, words));
  replan();
  keep();
  showState();
  showBack(one);
  cancelAnimationFrame(state.frame);
  state.frame = requestAnimationFrame(() => light(one));
  $("whose").textContent = nameOf(state.file, state.side);
}

function leave(one) {
  state.left.add(one.path);
  if ($("fault")) $("fault").textContent = faultOf(one.path);
}

function closeness(one) {
  const sixteenths = one.sixteenths;
  if (!sixteenths) return "";
  const inches = sixteenths >= 16 ? `${sixteenths / 16}` : `${sixteenths / (sixteenths % 8 === 0 ? 8 : sixteenths % 4 === 0 ? 4 : sixteenths % 2 === 0 ? 2 : 1)}/${sixteenths % 8 === 0 ? 2 : sixteenths % 4 === 0 ? 4 : sixteenths % 2 === 0 ? 8 : 16}`;
  return `Measure to ${inches} in, ${Math.max(1, Math.round(sixteenths * 1.5875))} mm.`;
}

function hint(one) {
  const shared = isJob(state.file) && isShared(state.file, state.side, one.path) ? "Both sides share this. " : "";
  return `${shared}${one.required ? "" : "May stay empty if unknown. "}${closeness(one)}`;
}

// --- what an answer was, before it was typed over ---

const wordsAt = (one) => String(answerAt(state.file, state.side, one.path) ?? "");
const keyOf = (one) => `${state.side} ${one.path}`;

/** Remembers what a question is answered with as it comes on the screen. */
function arrive(one) {
  if (state.arrived?.key !== keyOf(one)) state.arrived = { key: keyOf(one), words: wordsAt(one) };
}

/** The last answer that is not the one that stands there. */
function before(one) {
  if (state.arrived.words && state.arrived.words !== wordsAt(one)) state.was[keyOf(one)] = state.arrived.words;
  const words = state.was[keyOf(one)];
  return words === undefined || words === wordsAt(one) ? "" : words;
}

/** The button stands where it stands, whether or not there is something to bring back. */
function showBack(one) {
  const words = before(one).replaceAll("_", " ");
  $("ask-undo").disabled = !words || !state.mine;
  $("ask-undo").setAttribute("aria-label", words ? `Bring back ${words}` : "Bring back");
  if ($("close")) $("close").textContent = `${hint(one)}${words ? ` It was ${words}.` : ""}`;
}

function bringBack() {
  const one = asked()[state.at], words = before(one), now = wordsAt(one);
  change(one, words);
  if (now) state.was[keyOf(one)] = now;
  state.arrived.words = words;
  keep();
  show();
}

function showQuestion() {
  const all = asked();
  state.at = Math.min(Math.max(state.at, 0), all.length - 1);
  const one = all[state.at];
  if (!state.list) light(one);
  $("picture").hidden = $("keys").hidden = state.list;
  arrive(one);
  $("question").replaceChildren(...(state.list ? [listOf(all)] : [fieldOf(one)]));
  $("ask-undo").hidden = state.list;
  showBack(one);
  if (!state.list) showKeys(one);
  $("ask-back").disabled = !state.list && state.at === 0;
  $("ask-next").disabled = !state.list && state.at === all.length - 1;
}

function fieldOf(one) {
  const box = make("div"), value = answerAt(state.file, state.side, one.path);
  const words = `${one.letter ? `${one.letter}  ` : ""}${one.meaning}`;
  if (one.type === "list") {
    const add = button(`Add one to ${one.count}`, () => {
      answer(state.file, state.side, `${one.path}[${one.count}]`, { name: "" });
      replan();
      keep();
      show();
    });
    const rest = one.count ? [button(`Take away the last of ${one.count}`, () => {
      answer(state.file, state.side, `${one.path}[${one.count - 1}]`, "");
      replan();
      keep();
      state.at = Math.max(0, state.at - one.elements.length - 1);
      show();
    })] : [];
    box.append(make("h2", {}, words), make("p", { className: "close" }, "May stay empty if there are none."), add, ...rest, make("p", { id: "fault", className: "fault", role: "alert" }));
    return box;
  }
  const label = make("label", { htmlFor: "answer" }, words);
  const about = { id: "answer", "aria-describedby": "close fault", oninput: (event) => change(one, event.target.value), onblur: () => leave(one) };
  let field;
  if (one.type === "choice") {
    field = make("select", { ...about, onchange: (event) => (change(one, event.target.value), leave(one), show()) }, make("option", { value: "" }, "not answered: as is usual"), ...one.choices.map((choice) => make("option", { value: choice }, choice.replaceAll("_", " "))));
    field.value = one.choices.includes(String(value).toLowerCase()) ? String(value).toLowerCase() : "";
  } else {
    field = make("input", { ...about, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: false, value: value === undefined ? "" : String(value) });
    if (one.type !== "text") field.inputMode = state.keyboard ? "text" : "none";
  }
  field.disabled = !state.mine;
  box.append(label, field, make("p", { id: "close", className: "close" }, hint(one)), make("p", { id: "fault", className: "fault", role: "alert" }, faultOf(one.path)));
  return box;
}

function listOf(all) {
  return make("ul", { id: "list" }, ...all.map((one, i) => {
    const value = answerAt(state.file, state.side, one.path), fault = current().refused.find((other) => other.path === one.path);
    const words = `${one.letter ? `${one.letter}  ` : ""}${one.meaning}: ${one.type === "list" ? `${one.count}` : value === undefined || value === "" ? (fault ? "to answer" : "not answered") : String(value)}${fault && value !== undefined ? " (to mend)" : ""}`;
    return make("li", {}, button(words, () => {
      Object.assign(state, { at: i, list: false });
      keep();
      show();
    }));
  }));
}

/** Lights the place of a question's letter in the form's pictures; of one that has none there, the part that it is about in a picture of the side as far as it is answered. */
function light(one) {
  const svg = $("form-pictures"), found = [];
  svg.classList.remove("aside"); // what is not shown has no box
  for (const place of svg.querySelectorAll(".place")) {
    const lit = !!one.letter && place.textContent.trim() === one.letter;
    place.classList.toggle("lit", lit);
    if (lit) found.push(place.getBBox());
  }
  const part = found.length ? "" : sheet.lit(state.plan, state.side, one.path);
  $("part").replaceChildren(...(part ? [pictureOf(part)] : []));
  $("part").hidden = !part;
  svg.classList.toggle("aside", !!part);
  const [at] = found, width = 100, height = 60;
  if (at) svg.setAttribute("viewBox", `${at.x + at.width / 2 - width / 2} ${at.y + at.height / 2 - height / 2} ${width} ${height}`);
  else svg.setAttribute("viewBox", svg.dataset.whole);
}

const pictureOf = (svg) => document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);

// --- keys of its own, for gloves ---

const SIXTEENTHS = Array.from({ length: 15 }, (_, i) => {
  const divisor = [8, 4, 2, 1].find((one) => (i + 1) % one === 0);
  return `${(i + 1) / divisor}/${16 / divisor}`;
});
const PLAIN = ["7", "8", "9", " ft ", " m", "4", "5", "6", " in", " mm", "1", "2", "3", "n/16", "Rub", "0", ".", "/", "Gap", "abc"];

function showKeys(one) {
  const keys = one.type === "number" || one.type === "count" ? (state.fractions ? [...SIXTEENTHS, "Digits"] : PLAIN) : [];
  $("keys").replaceChildren(...keys.map((key) => button(key.trim() || key, () => press(one, key), { onpointerdown: (event) => event.preventDefault() })));
}

function press(one, key) {
  const field = $("answer"), at = field.selectionStart ?? field.value.length, to = field.selectionEnd ?? at;
  if (key === "n/16" || key === "Digits" || key === "abc") {
    if (key === "abc") {
      state.keyboard = !state.keyboard;
      field.inputMode = state.keyboard ? "text" : "none";
      field.blur();
      field.focus();
    } else state.fractions = key === "n/16";
    return showKeys(one);
  }
  if (key === "Rub") field.setRangeText("", at === to ? Math.max(0, at - 1) : at, to, "end");
  else {
    const fraction = SIXTEENTHS.includes(key), before = field.value.slice(0, at);
    field.setRangeText(key === "Gap" ? " " : fraction ? `${/\d$/.test(before) ? " " : ""}${key} in` : key, at, to, "end");
    if (fraction) state.fractions = false;
  }
  change(one, field.value);
  return key.includes("/") && showKeys(one);
}

// --- the sheet ---

/** The sheets' pages, and their style. */
function pagesOf(paper) {
  const read = new DOMParser().parseFromString(paper, "text/html");
  return { pages: [...read.querySelectorAll("main > section")], style: read.querySelector("style")?.textContent ?? "" };
}

const STACKED = "@media screen { table { font-size: 1rem } } @media screen and (max-width: 480px) { .stacked td:empty { display: none !important } .stacked :is(tbody, tr, th, td) { display: block } .stacked thead { display: none } .stacked :is(th, td):not(:empty)::before { content: attr(data-of) } .stacked :is(th, td) { text-align: left } }";

function stack(page) {
  for (const table of page.querySelectorAll("table")) {
    const titles = [...table.querySelectorAll("thead th")].map((one) => one.textContent.trim());
    table.classList.toggle("stacked", titles.length > 0); // a count and of what stand beside each other on any screen
    for (const row of table.querySelectorAll("tbody tr"))
      [...row.children].forEach((cell, i) => titles[i] && cell.setAttribute("data-of", `${titles[i]}: `));
  }
  return page;
}

function showSheet() {
  const plan = state.last;
  $("see-old").hidden = !isOld();
  $("paper").classList.toggle("is-old", isOld());
  $("prints").hidden = $("page").hidden = !plan;
  const shadow = $("paper").shadowRoot ?? $("paper").attachShadow({ mode: "open" });
  if (!plan) return shadow.replaceChildren(make("p", {}, "Nothing is planned yet: answer what is still to answer."));
  const { pages, style } = pagesOf(sheet.paper(plan)), ordering = state.page === ORDER;
  const options = pages.map((page, i) => make("option", { value: String(i) }, page.querySelector("h2").textContent));
  $("page").replaceChildren(...options, make("option", { value: ORDER }, "ORDER, what to buy and how to cut it"));
  $("page").value = ordering ? ORDER : String(Math.min(state.page ?? 0, pages.length - 1));
  $("print").textContent = ordering ? "Print the order" : "Print the sheet";
  if (!ordering) return showPages(shadow, pages, style, Number($("page").value));
  const order = sheet.order(plan), shown = pagesOf(order.paper);
  return order.paper ? showPages(shadow, shown.pages, shown.style, 0) : shadow.replaceChildren(make("p", {}, order.why || "Nothing can be ordered: no piece of a side is known."));
}

/** On a screen one of them, on paper all. */
function showPages(shadow, pages, style, chosen) {
  const sheetStyle = new CSSStyleSheet();
  sheetStyle.replaceSync(style.replaceAll(":root", ":host").replace(/\bbody\b/g, ":host") + STACKED + "@media screen { section { display: none } section.chosen { display: block; margin: 0 } }");
  shadow.adoptedStyleSheets = [sheetStyle];
  shadow.replaceChildren(...pages.map(stack));
  pages[chosen].classList.add("chosen");
}

/** At full size on pages without margins of their own: the sheets have theirs. */
function printTemplate(paper) {
  if (isOld()) return say("The template is of a plan, and the last change has none yet.");
  const documents = sheet.template(state.plan, state.side, paper), style = new CSSStyleSheet();
  if (!documents.length) return say("There is no template: no end of this side has an extender.");
  style.replaceSync(`@page { size: ${paper === "a4" ? "A4" : "letter"}; margin: 0 }`);
  $("template").replaceChildren(...documents.map(pictureOf));
  document.adoptedStyleSheets = [style];
  document.body.classList.add("template");
  print();
  document.adoptedStyleSheets = [];
  return undefined;
}

// --- the work, a step at a time ---

function stepsOfWork() {
  return pagesOf(sheet.paper(state.last)).pages.flatMap((page) => {
    const title = page.querySelector("h2").textContent;
    return [...page.querySelectorAll("ol > li")].map((step, i) => ({ title, number: i + 1, step }));
  });
}

function showStep() {
  $("work-old").hidden = !isOld();
  const steps = state.last ? stepsOfWork() : [];
  state.step = Math.min(Math.max(state.step, 0), Math.max(0, steps.length - 1));
  $("work-back").disabled = state.step === 0;
  $("work-next").disabled = state.step >= steps.length - 1;
  if (!steps.length) return $("step").replaceChildren(make("p", {}, "Nothing is planned yet: answer what is still to answer."));
  const { title, number, step } = steps[state.step];
  const shown = document.importNode(step, true);
  shown.replaceWith();
  $("step").replaceChildren(make("h2", {}, `${title}, step ${number}; ${state.step + 1} of ${steps.length}`), make("div", { className: "what" }, ...shown.childNodes));
  return undefined;
}

// --- the sides that are kept ---

function download(words, name, type) {
  const link = make("a", { href: URL.createObjectURL(new Blob([words], { type })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

async function linkOf(file) {
  const stream = new Blob([JSON.stringify(file)]).stream().pipeThrough(new CompressionStream("deflate"));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  return `${location.href.split("#")[0]}#${LINK}${text.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "")}`;
}

/** What a link or a file brings: text, whoever made it. */
function bring(text, from) {
  try {
    for (const file of filesIn(text)) openAnother(file);
    say("");
  } catch (error) {
    say(`${from} cannot be read: ${error.message}`);
  }
}

async function bringLink() {
  const packed = location.hash.slice(1);
  if (!packed.startsWith(LINK)) return;
  history.replaceState(null, "", location.pathname + location.search);
  try {
    const bytes = await unpacked(packed.slice(LINK.length).replaceAll("-", "+").replaceAll("_", "/"));
    if (bytes.length > 1 << 20) throw new Error("it is too long");
    bring(new TextDecoder("utf-8", { fatal: true }).decode(bytes), "The link");
  } catch (error) {
    say(`The link cannot be read: ${error.message}`);
  }
}

function showKept() {
  const served = location.protocol === "http:" || location.protocol === "https:", parts = [];
  parts.push(make("h2", {}, "This side"));
  if (isJob(state.file))
    parts.push(...state.file.sides.map((_, i) => button(`Side ${i + 1}: ${nameOf(state.file, i)}`, () => {
      Object.assign(state, { side: i, at: 0, step: 0, left: new Set() });
      keep();
      show();
    }, { "aria-pressed": String(state.side === i) })));
  else parts.push(button("Add the house's other side", () => {
    state.file = withOtherSide(state.file);
    state.side = 1;
    replan();
    keep();
    show();
  }));
  parts.push(button("Save as a file", () => download(`${JSON.stringify(state.file, null, 2)}\n`, FILE_NAME, "application/json")));
  if (served) parts.push(button("Copy a link to it", async () => {
    const link = await linkOf(state.file);
    try {
      await navigator.clipboard.writeText(link);
      say("The link is copied: whoever opens it gets this side as another one.");
    } catch {
      say(link);
    }
  }));
  const units = make("select", { id: "units", onchange: (event) => {
    state.units = event.target.value;
    replan();
    keep();
    showState();
  } }, make("option", { value: "file" }, "as the hip is given"), make("option", { value: "us" }, "feet and inches"), make("option", { value: "si" }, "millimetres"));
  units.value = state.units;
  parts.push(make("label", { htmlFor: "units" }, "The sheet speaks"), units);
  parts.push(make("h2", {}, store ? "Kept on this device" : "Nothing can be kept on this device: save a file after each part"));
  for (const id of store ? store.ids() : [])
    parts.push(button(store.file(id)?.job || nameOf(store.file(id) ?? {}), () => open(id, store.file(id) ?? {}, store.place(id)), { "aria-pressed": String(id === state.id) }));
  parts.push(button("A new side", () => openAnother({})));
  parts.push(make("label", { className: "file" }, "Open a file", make("input", { type: "file", accept: ".json,application/json", onchange: async (event) => {
    const [file] = event.target.files;
    if (file && file.size <= 1 << 20) bring(await file.text(), file.name);
    else if (file) say(`${file.name} cannot be read: it is too long`);
    event.target.value = "";
  } })));
  if (store && store.ids().length > 1) parts.push(button(state.forget ? "Yes, forget this side" : "Forget this side", () => {
    if (!state.forget) {
      state.forget = true;
      return show();
    }
    state.forget = false;
    store.forget(state.id);
    const [id] = store.ids();
    state.id = null;
    return open(id, store.file(id) ?? {}, store.place(id));
  }));
  $("keep").replaceChildren(...parts);
}

// --- beginning ---

function go(by) {
  if (state.part === "ask" && state.list) state.list = false;
  else if (state.part === "ask") {
    const one = asked()[state.at];
    state.left.add(one.path);
    state.at += by;
  } else state.step += by;
  keep();
  show();
}

$("ask-back").onclick = () => go(-1);
$("ask-next").onclick = () => go(1);
$("ask-undo").onclick = bringBack;
$("ask-list").onclick = () => {
  state.list = !state.list;
  show();
};
$("work-back").onclick = () => go(-1);
$("work-next").onclick = () => go(1);
$("page").onchange = (event) => {
  state.page = event.target.value === ORDER ? ORDER : Number(event.target.value);
  showSheet();
};
$("print").onclick = () => print();
for (const paper of ["a4", "letter"])
  $(`template-${paper}`).onclick = () => {
    printTemplate(paper);
  };
addEventListener("afterprint", () => document.body.classList.remove("template"));
for (const one of document.querySelectorAll("[data-part]"))
  one.onclick = () => {
    state.part = one.dataset.part;
    state.forget = false;
    keep();
    show();
  };
const pictures = pictureOf(sheet.pictures());
pictures.id = "form-pictures";
pictures.dataset.whole = pictures.getAttribute("viewBox");
pictures.setAttribute("role", "img");
pictures.setAttribute("aria-label", "Where the tape goes, by the questions' letters");
$("picture").append(pictures, make("div", { id: "part", hidden: true, role: "img", "aria-label": "What is asked about, drawn thick; what is not answered yet is invented" }));

const last = store?.last(), ids = store?.ids() ?? [];
if (last && ids.includes(last)) open(last, store.file(last) ?? {}, store.place(last));
else if (ids.length) open(ids[0], store.file(ids[0]) ?? {}, store.place(ids[0]));
else openAnother({});
if (!store) say("This viewer keeps nothing: save the side as a file after each part.");
await bringLink();
addEventListener("hashchange", bringLink);
if (store) {
  setInterval(() => {
    if (state.mine && store.has(state.id)) store.hold(state.id);
    else if (state.mine) lose();
    else if (store.take(state.id)) {
      say("");
      open(state.id, store.file(state.id) ?? {}, store.place(state.id)); // as the other tab left it
    }
  }, 1000);
  addEventListener("pagehide", () => store.letGo(state.id));
}
if (location.protocol === "http:" || location.protocol === "https:") {
  document.head.append(make("link", { rel: "manifest", href: "manifest.webmanifest" }));
  navigator.serviceWorker?.register("worker.js").catch(() => {}); // without it the page works, but not without a network
}
document.documentElement.dataset.ready = "yes";
