// What the modules of a page are made of: elements, words, lengths.

const NS = "http://www.w3.org/2000/svg";

/** @param {string} name @param {Record<string, string|number>} [attrs] */
export function shape(name, attrs = {}) {
  const e = document.createElementNS(NS, name);
  for (const [k, v] of Object.entries(attrs)) e.setAttribute(k, String(v));
  return e;
}

/** An element with text; text is never markup. @param {string} name @param {string} [text] @param {string} [kind] */
export function element(name, text = "", kind = "") {
  const e = document.createElement(name);
  if (text) e.textContent = text;
  if (kind) e.className = kind;
  return e;
}

/** A drawing as it came, as an element. @param {string} text */
export function drawn(text) {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return document.importNode(root, true);
}

/** The words of the screen. @param {Record<string, string>} table */
export function speaker(table) {
  return (/** @type {string} */ key, /** @type {any[]} */ ...args) => (table[key] ?? "").replace(/\{(\d)\}/g, (_, n) => String(args[n - 1] ?? ""));
}

/** A length as on the drawings. @param {number} mm @param {boolean} metric */
export function length(mm, metric) {
  const round = (/** @type {number} */ v) => Math.sign(v) * Math.round(Math.abs(v));
  if (metric) {
    const half = round(mm * 2);
    return (half / 2).toString().replace(".", ",");
  }
  let n = round((mm / 25.4) * 16);
  const sign = n < 0 ? "-" : "";
  n = Math.abs(n);
  const part = (/** @type {number} */ k) => {
    const whole = Math.floor(k / 16);
    let a = k % 16, b = 16;
    while (a > 0 && a % 2 === 0) { a /= 2; b /= 2; }
    return a === 0 ? String(whole) : (whole > 0 ? whole + " " : "") + a + "/" + b;
  };
  if (n < 192) return sign + part(n) + '"';
  const rest = n % 192;
  return sign + Math.floor(n / 192) + "'-" + (rest > 0 && rest < 16 ? "0 " : "") + part(rest) + '"';
}

/** How many pixels a millimetre of a drawing takes: as on paper, larger where the letters of the page are. */
export function perMM() {
  return (96 / 25.4) * (parseFloat(getComputedStyle(document.documentElement).fontSize) / 16);
}

/** Tells of a thing in a place of the page. */
export function tell(/** @type {HTMLElement} */ into, /** @type {any} */ thing, /** @type {Element[]} */ ...more) {
  const list = element("dl");
  for (const [name, value] of thing.rows ?? []) list.append(element("dt", name), element("dd", value));
  into.replaceChildren(element("h3", thing.name), list, ...more);
}
