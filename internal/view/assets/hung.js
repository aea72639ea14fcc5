// The form for what hangs on a wall, with the fields of the wall's page.

import { element } from "./parts.js";

/**
 * Lays the form out for the wall in view, unless somebody is writing in it.
 * @param {any} form @param {any} p @param {string} base @param {(key: string, ...args: any[]) => string} say @param {(change: any) => void} plan
 */
export function hungForm(form, p, base, say, plan) {
  const w = p.walls[p.wall], key = String(p.wall) + base;
  if (form.contains(document.activeElement) || form.dataset.wall === key) return;
  form.dataset.wall = key;
  const open = w.sheets.filter((/** @type {any} */ s) => !s.hung && s.number !== "-").map((/** @type {any} */ s) => Number(s.number));
  const input = (/** @type {string} */ label, /** @type {string} */ name, type = "text", value = "") => {
    const l = element("label", label), i = element("input");
    i.setAttribute("name", name);
    i.setAttribute("type", type);
    if (value) i.setAttribute("value", value);
    l.append(i);
    return l;
  };
  const rows = element("div", "", "tools");
  const first = input(say("hung_from"), "first", "number", String(open[0] ?? "")), last = input(say("hung_to"), "last", "number", String(open[0] ?? ""));
  const lay = () => {
    const a = Number(form.elements.first.value), b = Number(form.elements.last.value);
    const numbers = open.filter((/** @type {number} */ n) => (n - a) * (n - b) <= 0).slice(0, 60);
    rows.replaceChildren(...numbers.map((/** @type {number} */ n) => {
      const set = element("fieldset");
      set.append(element("legend", say("sheet", n)), input(p.fields[0], "edge-" + n), input(p.fields[1], "top-" + n));
      return set;
    }));
    form.numbers = numbers;
  };
  const go = element("button", say("hung_try"));
  go.setAttribute("type", "submit");
  form.replaceChildren(first, last, input(say("hung_left"), "left"), rows, go);
  first.querySelector("input")?.addEventListener("input", lay);
  last.querySelector("input")?.addEventListener("input", lay);
  lay();
  form.onsubmit = (/** @type {Event} */ e) => {
    e.preventDefault();
    const edges = form.numbers.map((/** @type {number} */ n) => [form.elements["edge-" + n].value, form.elements["top-" + n].value]);
    if (!edges.length) return;
    plan({ do: "hung", wall: p.wall, first: form.numbers[0], last: form.numbers.at(-1), left: form.elements.left.value, edges });
  };
}
