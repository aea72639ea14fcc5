// The pages as they print, set by set, with their PDF to save.

import { element } from "./parts.js";

const $ = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));
let set = "";

/**
 * Shows the sets of a room and the pages of one.
 * @param {{sets: string[], version: number}} state @param {number} room @param {(key: string, ...args: any[]) => string} say
 */
export function prints(state, room, say) {
  set = state.sets.includes(set) ? set : state.sets[0];
  $("sets").replaceChildren(...state.sets.flatMap((name) => {
    const b = element("button", say("set_" + name)), a = element("a", say("pdf", say("set_" + name)));
    b.setAttribute("type", "button");
    b.setAttribute("aria-pressed", String(name === set));
    b.addEventListener("click", () => { set = name; prints(state, room, say); });
    a.setAttribute("href", "pdf?" + new URLSearchParams({ room: String(room), set: name }));
    a.setAttribute("download", name + ".pdf");
    return [b, a];
  }));
  return pages(state.version, room, say);
}

async function pages(/** @type {number} */ version, /** @type {number} */ room, /** @type {(key: string, ...args: any[]) => string} */ say) {
  $("pages-says").textContent = say("drawing_set");
  const mine = set, r = await fetch("pages?" + new URLSearchParams({ room: String(room), set }));
  const list = await r.json();
  if (mine !== set) return;
  $("pages-says").textContent = r.ok ? "" : say("no_set", list.error);
  $("sheets").replaceChildren(...(r.ok ? list : []).map((/** @type {any} */ p, /** @type {number} */ n) => {
    const f = element("figure"), a = element("a"), i = element("img");
    const url = "page?" + new URLSearchParams({ room: String(room), set, n: String(n), v: String(version) });
    a.setAttribute("href", url);
    i.setAttribute("src", url);
    i.setAttribute("loading", "lazy");
    i.setAttribute("width", String(Math.round(p.width * 3.78)));
    i.setAttribute("height", String(Math.round(p.height * 3.78)));
    i.setAttribute("alt", p.name + " " + p.title);
    a.append(i);
    f.append(a, element("figcaption", p.name + "  " + p.title));
    return f;
  }));
}
