// The page of a room while its file is typed: it asks for what is new, shows it, and lets a layout be tried by hand. Nothing that comes
// from a room becomes markup: text is set as text, a drawing is parsed as a picture.

import { hungForm } from "./hung.js";
import { counts, diff, fill, findings, marks, mistakes, trialCard } from "./lists.js";
import { prints } from "./prints.js";
import { element, perMM, speaker, tell } from "./parts.js";
import { Pane } from "./see.js";

const say = speaker(JSON.parse(document.body.dataset.words ?? "{}"));
const $ = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));
const client = [...crypto.getRandomValues(new Uint8Array(9))].map((b) => b.toString(16).padStart(2, "0")).join("");

/** @type {any} */ let base = null; // as the file has it
let room = 0, wall = 0, step = 0;
/** @type {any[]} */ const trials = [];
/** @type {any} */ let trial = null; // in view; null: the file
let waiting = false, again = false;

const pane = new Pane($("pane"), say, { most: 1, tell: told, press, nudge, open: card });
const ribbon = new Pane(/** @type {HTMLElement} */ (document.querySelector("#ribbon .pane")), say, { choose });

/** What is in view: a trial's state once it has one, else the file's. */
const shown = () => trial?.state?.plan ? trial.state : base;

/** Sizes of the drawings that this screen has room for. */
function sizes() {
  const mm = perMM();
  return { wall, wide: ($("wall").clientWidth - 2) / mm, high: Math.max(45, (window.innerHeight * 0.62) / mm), ribbon: ($("ribbon").clientWidth - 2) / mm };
}

/** Asks for the room as the file has it; while it is asked for, one more wish waits. */
async function load() {
  if (waiting) { again = true; return; }
  waiting = true;
  try {
    do {
      again = false;
      const q = new URLSearchParams({ room: String(room), ...Object.fromEntries(Object.entries(sizes()).map(([k, v]) => [k, String(v)])) });
      const r = await fetch("state?" + q);
      if (!r.ok) throw new Error(String(r.status));
      took(await r.json());
    } while (again);
  } catch { says(say("gone")); }
  waiting = false;
}

let warmed = false;
/** Lays the file's own layout out where trials are, so that the first step of a drag finds what it can go on from. */
function warm() {
  warmed = true;
  setTimeout(() => fetch("try", { method: "POST", headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ ...sizes(), quick: true, room, base: base.base, client, step: ++step, changes: [] }) }).catch(() => {}), 400);
}

function took(/** @type {any} */ state) {
  const changed = base && base.base !== state.base;
  base = state;
  room = state.room;
  if (state.plan) wall = state.plan.wall;
  if (state.good && (changed || !warmed)) warm();
  if (changed) for (const t of trials) { t.stale = t.history[t.at].length > 0; if (t.stale) run(t, false); }
  render();
}

// ---- showing

function says(/** @type {string} */ text) { $("says").textContent = text; }

function render() {
  const state = shown();
  document.title = say("title", state.plan?.title || state.title);
  $("title").textContent = state.plan?.title || state.title;
  $("file").textContent = state.file;
  rooms(state);
  const wrong = trial?.state && !trial.state.good ? trial.state : base;
  mistakes($("mistakes"), wrong, wrong !== base ? "" : say(wrong.plan ? "broken" : "nothing"), say);
  const old = !base.good && !trial;
  document.body.classList.toggle("old", old);
  for (const e of document.querySelectorAll(".pane")) /** @type {HTMLElement} */ (e).dataset.old = say("broken").split(". ")[0] + ".";
  if (state.plan) plan(state.plan);
  else $("says").textContent = say("nothing");
  tries();
  document.body.dataset.version = String(base.version);
  document.body.dataset.step = String(trial?.state?.step ?? 0);
}

function rooms(/** @type {any} */ state) {
  $("rooms").hidden = state.rooms.length < 2;
  const select = $("rooms").querySelector("select");
  fill(select, state.rooms.map((/** @type {any} */ r, /** @type {number} */ i) => [i, r.name + (r.bad ? " (!)" : "")]), state.room);
}

function plan(/** @type {any} */ p) {
  counts($("counts"), p.counts, say);
  if (p.ribbon) ribbon.show(p.ribbon, p.walls, p.metric); // while a hand moves it comes every third time
  if (p.ribbon) for (const svg of ribbon.host.querySelectorAll("svg")) /** @type {any} */ (svg).style.width = p.ribbon.width * perMM() + "px";
  ribbon.chosen(p.wall);
  fill($("which"), p.walls.map((/** @type {any} */ w, /** @type {number} */ i) => [i, (w.mark ? w.mark + "  " : "") + w.name]).filter((/** @type {any} */ _, /** @type {number} */ i) => p.walls[i].covered), p.wall);
  pane.tool = $("tool").value;
  pane.host.dataset.tool = pane.tool;
  if (p.drawing) pane.show(p.drawing, p.walls, p.metric);
  findings($("findings").querySelector("ol"), p.findings, say, find);
  marks($("marks").querySelector("ul"), p, say, (change) => { edit([...edits(), change]); settle(); });
  hungForm($("hung").querySelector("form"), p, base.base, say, (change) => { trial = null; begin(); edit([change]); settle(); });
  $("aim").value = p.aim;
  const focus = pane.things?.find((t) => t.thing.id === pane.at);
  if (focus && pane.tool !== "measure") told(focus.thing, focus.kind);
}

/** Shows the place of a finding, and its line of the file. */
async function find(/** @type {any} */ f) {
  if (f.at !== null && f.wall !== wall) await choose(f.wall);
  if (f.at !== null) { pane.here(f.at); pane.host.scrollIntoView({ block: "nearest" }); }
  tell($("told"), { name: f.place, rows: [[say(f.level), f.message], ...(f.where ? [[f.where, f.text]] : []), ...(f.mend ? [[say("mend", ""), f.mend]] : [])] });
}

function told(/** @type {any} */ thing, /** @type {string} */ kind) {
  const more = [];
  if (kind === "sheet" && thing.card) {
    const b = element("button", say("to_card"));
    b.setAttribute("type", "button");
    b.addEventListener("click", () => card(thing));
    more.push(b);
  }
  tell($("told"), thing, ...more);
}

/** Shows the card of a sheet. */
function card(/** @type {any} */ sheet) {
  if (!sheet.card) return;
  const img = element("img");
  img.setAttribute("alt", sheet.name);
  img.setAttribute("src", "card?" + new URLSearchParams({ room: String(room), key: sheet.card, v: String(base.version) }));
  $("card").querySelector("div").replaceChildren(img);
  $("card").showModal();
}

async function choose(/** @type {number} */ to) {
  wall = to;
  pane.at = "";
  if (trial && trial.history[trial.at].length) await run(trial, false);
  await load();
}

// ---- trying

/** The changes of the trial in view, as they stand. */
const edits = () => (trial ? trial.history[trial.at] : []);

/** Puts changes in the place of those of the trial in view; a trial begins where there is none. */
function edit(/** @type {any[]} */ list, moving = false) {
  if (!trial) begin();
  if (moving && trial.moving) trial.history[trial.at] = list;
  else {
    trial.history.length = trial.at + 1;
    trial.history.push(list);
    trial.at++;
    trial.moving = moving;
  }
}

function begin() {
  trial = { name: say("trial", trials.length + 1), history: [[]], at: 0, state: null, moving: false };
  trials.push(trial);
}

/** Lays a trial out. While a step is under way only the last one that comes waits; what is late is dropped. */
async function run(/** @type {any} */ t, /** @type {boolean} */ quick) {
  if (t.running) { t.want = { quick }; t.stop?.abort(); return t.running; }
  const go = async () => {
    for (let next = { quick }; next; next = t.want ?? null) {
      t.want = null;
      t.stop = next.quick ? null : new AbortController();
      const mine = ++step;
      try {
        const r = await fetch("try", { method: "POST", headers: { "Content-Type": "application/json" }, signal: t.stop?.signal,
          body: JSON.stringify({ ...sizes(), ...(next.quick && mine % 3 ? { ribbon: 0 } : {}), quick: next.quick, room, base: base.base, client, step: mine, changes: t.history[t.at] }) });
        if (r.status === 409) { if (trials.includes(t)) await reload(); continue; }
        if (!r.ok) continue;
        const state = await r.json();
        state.step = mine;
        if (!state.plan && t.state?.plan) state.plan = t.state.plan; // what was last laid out stays, with what is wrong now
        t.state = state;
        if (t === trial) render();
      } catch (e) { if (/** @type {any} */ (e).name !== "AbortError") says(say("gone")); }
    }
  };
  t.running = go().finally(() => { t.running = null; });
  return t.running;
}

/** The file has changed under a trial: it is laid out on the new one. */
async function reload() { says(say("stale")); await load(); }

/** Lays the trial in view out with all that is told of it. */
async function settle() {
  if (!trial) return;
  trial.moving = false;
  if (trial.history[trial.at].length === 0) { trial.state = null; render(); return; }
  await run(trial, false);
}

/** Which change of a list each pin of a wall comes from as the list leaves them, -1 for one of the file. */
function origins(/** @type {any[]} */ list) {
  const pins = base.plan.walls[wall].pins.map(() => -1);
  list.forEach((c, i) => {
    if (c.wall !== wall) return;
    if (c.do === "pin") { if (c.item < 0) pins.push(i); else pins[c.item] = i; }
    if (c.do === "unpin") pins.splice(c.item, 1);
  });
  return pins;
}

/** The change that pins a seam: the pin that holds it moves, the closing seam is wished elsewhere, else a pin comes. */
function pinOf(/** @type {any} */ seam) {
  const list = edits();
  if (seam.closing) return { do: "close", wall, index: list.findIndex((/** @type {any} */ c) => c.do === "close" && c.wall === wall) };
  const from = seam.pin >= 0 ? origins(list)[seam.pin] : -1;
  if (from >= 0) return { ...list[from], index: from };
  const put = seam.pin >= 0 && shown().plan.walls[wall].pins[seam.pin].put === "either" ? "either" : "seam";
  return { do: "pin", wall, item: seam.pin, put, index: -1 };
}

/** Begins what a press on the wall does. */
function press(/** @type {any} */ hand) {
  const { thing, kind, at, tool } = hand;
  if (tool === "middle") return dragging({ do: "pin", wall, item: -1, put: "middle", index: -1 }, at.x);
  if (tool === "keep") return stretching(at.x);
  if (tool !== "seam" || !thing || thing.hung) return null;
  if (kind === "start") {
    const first = shown().plan.walls[wall].seams.find((/** @type {any} */ m) => m.x > thing.x);
    return first ? dragging(pinOf(first), first.x, at.x - first.x) : null;
  }
  return kind === "seam" ? dragging(pinOf(thing), thing.x, at.x - thing.x) : null;
}

/** What a drag of one thing does: every move is a step, the end is laid out with all that is told. */
function dragging(/** @type {any} */ change, /** @type {number} */ from, off = 0) {
  let x = from, moved = change.put === "middle";
  const before = edits();
  const put = () => {
    const c = { ...change, x };
    delete c.index;
    const list = before.slice();
    if (change.index >= 0) list[change.index] = c;
    else list.push(c);
    edit(list, true);
    run(trial, true);
  };
  if (moved) put();
  return {
    lines: () => [x],
    move: (/** @type {any} */ at) => {
      if (!moved && Math.abs(at.x - off - from) < 1.5 * pane.pixel() * pane.drawing.scale) return;
      moved = true;
      x = Math.min(Math.max(at.x - off, 0), pane.drawing.walls[0].to);
      put();
    },
    end: () => { if (moved) settle(); },
  };
}

function stretching(/** @type {number} */ from) {
  let to = from;
  const before = edits();
  const put = () => {
    if (Math.abs(to - from) < 20) return;
    edit([...before, { do: "keep", wall, item: -1, x: from, to }], true);
    run(trial, true);
  };
  return { lines: () => [from, to], move: (/** @type {any} */ at) => { to = at.x; put(); }, end: () => { if (Math.abs(to - from) >= 20) settle(); } };
}

let nudging = 0;
/** Moves a thing by steps of the grid, from the keyboard. */
function nudge(/** @type {any} */ thing, /** @type {number} */ by) {
  if (thing.hung || thing.kind === "sheet") return;
  const plan = shown().plan;
  const seam = thing.kind === "start" ? plan.walls[wall].seams.find((/** @type {any} */ m) => m.x > thing.x) : thing;
  if (!seam) return;
  const change = pinOf(seam), list = edits().slice();
  const from = seam.x;
  const c = { ...change, x: from + by * plan.snap };
  delete c.index;
  if (change.index >= 0) list[change.index] = c;
  else list.push(c);
  edit(list, true);
  run(trial, true);
  clearTimeout(nudging);
  nudging = setTimeout(settle, 350);
}

function tries() {
  const cards = [null, ...trials].map((t) => {
    const b = trialCard(t ? t.name : say("as_file"), (t ? t.state?.plan : base.plan)?.counts, base.plan?.counts, t === trial, say);
    b.addEventListener("click", () => {
      trial = t;
      render();
      if (t && t.history[t.at].length && t.state?.plan?.wall !== wall) run(t, false);
      else if (!t && base.plan?.wall !== wall) load();
    });
    return b;
  });
  $("trials").replaceChildren(...cards);
  const list = edits();
  $("undo").disabled = !trial || trial.at === 0;
  $("redo").disabled = !trial || trial.at === trial.history.length - 1;
  $("drop").disabled = !trial;
  $("keep").disabled = !trial || list.length === 0 || !trial.state?.good;
  diff($("diff"), trial && list.length ? trial.state?.diff ?? [] : [], say);
}

function travel(/** @type {number} */ by) {
  if (!trial || trial.at + by < 0 || trial.at + by >= trial.history.length) return;
  trial.at += by;
  settle();
}

/** Writes the trial in view into the file. */
async function keep() {
  const t = trial;
  if (!t || t.history[t.at].length === 0) return;
  await t.running; // what is written is what is seen
  const r = await fetch("keep", { method: "POST", headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ room, base: base.base, client, changes: t.history[t.at] }) });
  const answer = await r.json();
  if (!r.ok) {
    if (answer.stale) { await reload(); if (t.history[t.at].length) run(t, false); return; }
    says(say("unkept", answer.error));
    return;
  }
  drop(t);
  says(say("kept", answer.file));
}

function drop(/** @type {any} */ t) {
  const i = trials.indexOf(t);
  if (i >= 0) trials.splice(i, 1);
  if (trial === t) trial = null;
  render();
}

// ---- the page's own controls

function tab(/** @type {boolean} */ pages) {
  $("walls").hidden = pages;
  $("pages").hidden = !pages;
  $("tab-walls").setAttribute("aria-pressed", String(!pages));
  $("tab-pages").setAttribute("aria-pressed", String(pages));
  if (pages) prints(base, room, say);
  else load();
}

$("which").addEventListener("change", () => choose(Number($("which").value)));
$("tool").addEventListener("change", () => { pane.tool = $("tool").value; pane.host.dataset.tool = pane.tool; pane.measuring = null; pane.unruled?.(); });
$("rooms").querySelector("select").addEventListener("change", (/** @type {any} */ e) => { room = Number(e.target.value); trial = null; trials.length = 0; wall = -1; pane.at = ""; load(); });
$("zoom-in").addEventListener("click", () => pane.zoom(1.5));
$("zoom-out").addEventListener("click", () => pane.zoom(1 / 1.5));
$("zoom-all").addEventListener("click", () => pane.all());
$("new-trial").addEventListener("click", () => { const from = edits().slice(); begin(); if (from.length) edit(from); settle(); render(); });
$("undo").addEventListener("click", () => travel(-1));
$("redo").addEventListener("click", () => travel(1));
$("drop").addEventListener("click", () => trial && drop(trial));
$("keep").addEventListener("click", keep);
$("aim").addEventListener("change", () => { edit([...edits().filter((/** @type {any} */ c) => c.do !== "aim"), { do: "aim", aim: $("aim").value }]); settle(); });
$("tab-walls").addEventListener("click", () => tab(false));
$("tab-pages").addEventListener("click", () => tab(true));
$("card").querySelector("button").addEventListener("click", () => $("card").close());
document.addEventListener("keydown", (e) => {
  if (!(e.ctrlKey || e.metaKey) || /** @type {any} */ (e.target).matches?.("input")) return;
  if (e.key === "z" || e.key === "Z") { travel(e.shiftKey ? 1 : -1); e.preventDefault(); }
  if (e.key === "y") { travel(1); e.preventDefault(); }
});
let wide = window.innerWidth, resizing = 0;
window.addEventListener("resize", () => {
  if (window.innerWidth === wide) return; // a phone's bars come and go
  wide = window.innerWidth;
  clearTimeout(resizing);
  resizing = setTimeout(() => { load(); if (trial) settle(); }, 120);
});

const events = new EventSource("events");
events.onmessage = () => { if ($("says").textContent === say("gone")) says(""); load(); if (!$("pages").hidden) prints(base, room, say); };
events.onerror = () => says(say("gone"));
