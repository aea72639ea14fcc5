// The lists of the page: what they show is given to them, and what a press on a row does.

import { element, length } from "./parts.js";

/** @typedef {(key: string, ...args: any[]) => string} Say */

/** Fills a choice; one that is the same stays, so that nobody's hand is disturbed. */
export function fill(/** @type {any} */ select, /** @type {any[][]} */ list, /** @type {any} */ chosen) {
  const key = JSON.stringify(list);
  if (select.dataset.key !== key) {
    select.dataset.key = key;
    select.replaceChildren(...list.map(([value, text]) => { const o = element("option", text); o.setAttribute("value", value); return o; }));
  }
  select.value = String(chosen);
}

/** Says what is wrong in files, under a heading. */
export function mistakes(/** @type {any} */ box, /** @type {any} */ state, /** @type {string} */ head, /** @type {Say} */ say) {
  box.hidden = state.mistakes.length === 0;
  const list = element("ol");
  for (const m of state.mistakes) {
    const li = element("li");
    li.append(element("div", (m.line ? `${m.file}:${m.line}:${m.column}: ` : "") + m.message));
    if (m.text) li.append(element("pre", m.text));
    if (m.mend) li.append(element("div", say("mend", m.mend)));
    list.append(li);
  }
  if (!box.hidden) box.replaceChildren(element("p", head), list);
}

/** Shows the figures over the room. */
export function counts(/** @type {any} */ into, /** @type {any} */ c, /** @type {Say} */ say) {
  const cell = (/** @type {string} */ key, /** @type {any} */ value, bad = false) => {
    const d = element("div", "", bad ? "bad" : "");
    d.append(element("dt", say(key)), element("dd", String(value)));
    return d;
  };
  into.replaceChildren(cell("sheets", c.sheets), cell("narrow", c.narrow), cell("left", c.left), ...(c.short ? [cell("short", c.short, true)] : []), cell("waste", c.waste), cell("musts", c.musts, c.musts > 0));
}

/** Lists findings; a press on one leads to its place. */
export function findings(/** @type {any} */ into, /** @type {any[]} */ list, /** @type {Say} */ say, /** @type {(f: any) => void} */ find) {
  const rows = list.map((/** @type {any} */ f) => {
    const li = element("li", "", f.level + "-level");
    const b = element("button");
    b.setAttribute("type", "button");
    b.append(element("span", say(f.level), "level"), element("span", f.message), element("div", f.place + (f.where ? ", " + f.where : ""), "place"));
    if (f.mend) b.append(element("div", say("mend", f.mend), "line"));
    b.addEventListener("click", () => find(f));
    li.append(b);
    return li;
  });
  into.replaceChildren(...(rows.length ? rows : [element("li", say("none"))]));
}

/** Shows the lines that would be written. */
export function diff(/** @type {any} */ into, /** @type {any[]} */ lines, /** @type {Say} */ say) {
  const row = (/** @type {any} */ l) => [element("span", (l.gone ? "- " : "+ ") + String(l.number).padStart(4) + "  " + l.text, l.gone ? "gone" : "new"), document.createTextNode("\n")];
  into.replaceChildren(...(lines.length ? lines.flatMap(row) : [document.createTextNode(say("no_edits"))]));
}

/** A trial as a card with its figures, those that differ from the file's in bold. */
export function trialCard(/** @type {string} */ name, /** @type {any} */ c, /** @type {any} */ of, /** @type {boolean} */ chosen, /** @type {Say} */ say) {
  const b = element("button");
  b.setAttribute("type", "button");
  b.setAttribute("aria-pressed", String(chosen));
  b.append(element("strong", name));
  if (c) {
    const list = element("dl");
    for (const key of ["sheets", "narrow", "left", "waste", "musts", "shoulds"])
      list.append(element("dt", say(key === "shoulds" ? "should" : key)), element("dd", String(c[key]), of && c[key] !== of[key] ? "changed" : ""));
    b.append(list);
  }
  return b;
}

/** Lists what is marked on the wall in view, each with a way to take it out. */
export function marks(/** @type {any} */ into, /** @type {any} */ p, /** @type {Say} */ say, /** @type {(change: any) => void} */ change) {
  const w = p.walls[p.wall];
  const button = (/** @type {string} */ text, /** @type {any} */ what) => {
    const b = element("button", text);
    b.setAttribute("type", "button");
    b.addEventListener("click", () => change(what));
    return b;
  };
  const row = (/** @type {any} */ m, /** @type {string} */ name, /** @type {any} */ what) => {
    const li = element("li", m.words + ", " + say("line", m.line)), b = button(say("drop"), what);
    b.setAttribute("aria-label", name);
    li.append(b);
    return li;
  };
  const rows = [...w.pins.map((/** @type {any} */ m, /** @type {number} */ i) => row(m, say("drop_pin", length(m.x, p.metric)), { do: "unpin", wall: p.wall, item: i })),
    ...w.kept.map((/** @type {any} */ m, /** @type {number} */ i) => row(m, say("drop_keep", length(m.from, p.metric)), { do: "unkeep", wall: p.wall, item: i }))];
  if (p.wished) {
    const li = element("li");
    li.append(button(say("close_auto"), { do: "close-auto" }));
    rows.push(li);
  }
  into.replaceChildren(...(rows.length ? rows : [element("li", say("marks_none"))]));
}
