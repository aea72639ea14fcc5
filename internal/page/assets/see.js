// A drawing in a page: what lies under the pointer, keys from one thing to the next, zoom and pan, and measuring. It knows no server.

import { drawn, length, perMM, shape } from "./parts.js";
// ----
const LEAST_HIT = 22; // px, of what is touched

/** One wall, or the ribbon, in a pane. */
export class Pane {
  /** @type {any} */ drawing;
  /** @type {any[]} */ walls = [];
  /** @type {any} */ wall;
  /** @type {any[]} */ things = [];
  /** @type {any} */ svg;
  /** @type {any} */ over;
  /** @type {any} */ box;
  /** @type {any} */ hand = null;
  /** @type {any} */ from = null;
  /** @type {any} */ pinch = null;
  metric = false;

  /**
   * @param {HTMLElement} host
   * @param {(key: string, ...args: any[]) => string} say
   * @param {{most?: number, tell?: (thing: any, kind: string) => void, press?: (hand: any) => any, nudge?: (thing: any, by: number) => void, open?: (sheet: any) => void, choose?: (wall: number) => void}} on
   */
  constructor(host, say, on) {
    this.host = host;
    this.say = say;
    this.on = on;
    this.at = "";
    this.tool = "look";
    /** @type {any} */ this.measuring = null;
    /** @type {Map<number, PointerEvent>} */ this.fingers = new Map();
    host.addEventListener("wheel", (e) => this.wheel(e), { passive: false });
    host.addEventListener("pointerdown", (e) => this.down(e));
    host.addEventListener("pointermove", (e) => this.move(e));
    host.addEventListener("pointerup", (e) => this.up(e));
    host.addEventListener("pointercancel", (e) => this.up(e));
    host.addEventListener("keydown", (e) => this.key(e));
    host.addEventListener("focusin", (e) => this.pointed(/** @type {Element} */ (e.target), true));
  }

  /** Shows a drawing with what is pointed at on it. The view stays where it was while the wall is the same. */
  show(/** @type {any} */ drawing, /** @type {any[]} */ walls, /** @type {boolean} */ metric) {
    const focused = this.host.contains(document.activeElement) ? this.at : "";
    const same = this.drawing && this.drawing.walls.length === drawing.walls.length && this.drawing.walls[0]?.wall === drawing.walls[0]?.wall &&
      this.drawing.width === drawing.width && this.drawing.height === drawing.height;
    this.drawing = drawing;
    this.walls = walls;
    this.metric = metric;
    if (this.on.most) this.host.style.maxWidth = drawing.width * perMM() * this.on.most + "px";
    if (!same) this.box = { x: 0, y: 0, w: drawing.width, h: drawing.height };
    this.svg = drawn(drawing.svg);
    this.svg.setAttribute("aria-hidden", "true");
    this.over = shape("svg", { class: "over", role: "group", "aria-label": this.say("drawing", walls[drawing.walls[0]?.wall]?.name ?? "", drawing.ratio) });
    this.host.replaceChildren(this.svg, this.over);
    this.things = [];
    if (drawing.walls.length === 1 && !this.on.choose) this.overlay(drawing.walls[0]);
    else this.ribbon();
    this.look();
    if (this.hand) this.ghost(this.hand);
    this.things.find((t) => t.thing.id === this.at)?.node.classList.add("at");
    if (focused) this.over.querySelector(`[data-id="${CSS.escape(focused)}"]`)?.focus?.();
  }

  x(/** @type {number} */ x, s = this.drawing.walls[0]) { return s.x + x / this.drawing.scale; }
  y(/** @type {number} */ z, s = this.drawing.walls[0]) { return s.y - z / this.drawing.scale; }

  ribbon() {
    for (const s of this.drawing.walls) {
      const g = shape("g", { role: "button", tabindex: 0, "data-wall": s.wall, "aria-label": this.walls[s.wall].name });
      const box = { x: this.x(s.from, s), y: this.y(s.high, s), width: (s.to - s.from) / this.drawing.scale, height: (s.high - s.low) / this.drawing.scale };
      g.append(shape("rect", { ...box, class: "wall-hit" }), shape("rect", { ...box, class: "seen" }));
      this.over.append(g);
      for (const m of this.walls[s.wall].seams) if (m.must) this.seam(m, s, false);
      this.broken(this.walls[s.wall], s);
    }
  }

  /** Marks the wall in view on the ribbon. */
  chosen(/** @type {number} */ wall) {
    this.over.querySelectorAll(".chosen").forEach((/** @type {Element} */ e) => e.remove());
    for (const s of this.drawing.walls) {
      const button = this.over.querySelector(`[data-wall="${s.wall}"]`);
      button?.setAttribute("aria-pressed", String(s.wall === wall));
      if (s.wall === wall)
        this.over.append(shape("rect", { class: "chosen", x: this.x(s.from, s), y: this.y(s.high, s), width: (s.to - s.from) / this.drawing.scale, height: (s.high - s.low) / this.drawing.scale }));
    }
  }

  overlay(/** @type {any} */ s) {
    const w = this.walls[s.wall];
    this.wall = w;
    const line = (/** @type {number[][]} */ o) => o.map(([x, z]) => this.x(x) + "," + this.y(z)).join(" ");
    for (const t of w.sheets) {
      const g = shape("g", { role: "button", tabindex: -1, "data-id": t.id, "aria-label": [t.name, ...t.rows.map((/** @type {string[]} */ r) => r.join(" "))].join(", ") });
      for (const o of t.outline) g.append(shape("polygon", { points: line(o), class: "sheet" + (t.narrow ? " narrow" : "") }), shape("polygon", { points: line(o), class: "seen" }));
      this.over.append(g);
      const xs = t.outline.flat().map((/** @type {number[]} */ p) => p[0]);
      this.things.push({ kind: "sheet", thing: t, node: g, x: (Math.min(...xs) + Math.max(...xs)) / 2 });
    }
    for (const k of w.kept)
      this.over.append(shape("rect", { class: "kept", x: this.x(k.from), y: this.y(s.high), width: (k.to - k.from) / this.drawing.scale, height: (s.high - s.low) / this.drawing.scale }));
    for (const p of w.pins) {
      const x = this.x(p.x), y = this.y(s.low) + 1;
      this.over.append(shape("path", { class: "pin", d: p.put === "middle" ? `M${x} ${y}l1.6 1.6l-1.6 1.6l-1.6-1.6z` : `M${x} ${y}l1.9 3.4h-3.8z` }));
    }
    for (const m of w.seams) this.seam(m, s, true);
    this.broken(w, s);
    w.starts.forEach((/** @type {number} */ at, /** @type {number} */ i) => {
      const x = this.x(at), y = this.y(s.low) + 1;
      const g = shape("g", { role: "button", tabindex: -1, "data-id": "start-" + i, "aria-label": this.say("start") + ", " + this.say("start_about") });
      g.append(shape("path", { class: "start", d: `M${x} ${y}v3.6l3.2-1.8z` }), shape("rect", { class: "hit sheet", x: x - 1, y, width: 6, height: 5 }), shape("rect", { class: "seen", x: x - 1, y, width: 6, height: 5 }));
      this.over.append(g);
      this.things.push({ kind: "start", thing: { id: "start-" + i, name: this.say("start"), rows: [[this.say("start_about"), ""]], x: at }, node: g, x: at });
    });
    this.things.sort((a, b) => a.x - b.x);
    if (this.hand) { // what is in the hand stays what is told of, whatever its number is now
      const x = this.hand.lines()[0];
      const near = this.things.filter((t) => t.kind === "seam").sort((a, b) => Math.abs(a.x - x) - Math.abs(b.x - x))[0];
      if (near) this.at = near.thing.id;
    }
    const first = this.things.find((t) => t.thing.id === this.at) ?? this.things.find((t) => t.kind === "seam") ?? this.things[0];
    first?.node.setAttribute("tabindex", "0");
  }

  seam(/** @type {any} */ m, /** @type {any} */ s, /** @type {boolean} */ alive) {
    const g = shape("g", { class: "seam" + (m.must ? " must" : ""), "data-id": m.id });
    const x = this.x(m.x, s);
    for (const [a, b] of m.shown) {
      if (alive) g.append(shape("line", { class: "hit", x1: x, x2: x, y1: this.y(a, s), y2: this.y(b, s) }));
      g.append(shape("line", { class: "seen", x1: x, x2: x, y1: this.y(a, s), y2: this.y(b, s) }));
    }
    if (alive) {
      g.setAttribute("role", "button");
      g.setAttribute("tabindex", "-1");
      g.setAttribute("aria-label", [m.name, m.must ? this.say("must") : "", ...m.rows.map((/** @type {string[]} */ r) => r.join(" "))].filter(Boolean).join(", "));
      this.things.push({ kind: "seam", thing: m, node: g, x: m.x });
    }
    this.over.append(g);
  }

  /** Marks where a rule is broken that must be met: by a sign, not by its colour alone. */
  broken(/** @type {any} */ w, /** @type {any} */ s) {
    for (const at of w.musts) {
      const x = this.x(at, s), y = this.y(s.high, s), left = x + 5 > this.drawing.width;
      const t = shape("text", { x: x + (left ? -0.8 : 0.8), y: y + 5, "font-size": 5, "text-anchor": left ? "end" : "start" });
      t.textContent = "!";
      const g = shape("g", { class: "broken" });
      g.append(shape("line", { x1: x, x2: x, y1: y - 2, y2: this.y(s.low, s) + 2 }), t);
      this.over.append(g);
    }
  }

  /** Brings the view to its box. */
  look() {
    const { x, y, w, h } = this.box;
    for (const e of [this.svg, this.over]) e.setAttribute("viewBox", `${x} ${y} ${w} ${h}`);
    this.host.classList.toggle("zoomed", w < this.drawing.width - 1e-6);
    const px = this.pixel();
    this.over.querySelectorAll("line.hit").forEach((/** @type {Element} */ e) => e.setAttribute("stroke-width", String(LEAST_HIT * px)));
  }

  /** How much of the drawing a pixel is. */
  pixel() { return this.box.w / Math.max(1, this.over.clientWidth || this.host.clientWidth); }

  /** The point of the drawing under a pointer. */
  point(/** @type {{clientX: number, clientY: number}} */ e) {
    const r = this.over.getBoundingClientRect();
    return { x: this.box.x + ((e.clientX - r.left) / r.width) * this.box.w, y: this.box.y + ((e.clientY - r.top) / r.height) * this.box.h };
  }

  /** The place of the wall under a pointer. */
  place(/** @type {{clientX: number, clientY: number}} */ e) {
    const p = this.point(e), s = this.drawing.walls[0];
    return { x: (p.x - s.x) * this.drawing.scale, z: (s.y - p.y) * this.drawing.scale };
  }

  /** Zooms about a point of the drawing. */
  zoom(/** @type {number} */ by, p = { x: this.box.x + this.box.w / 2, y: this.box.y + this.box.h / 2 }) {
    const d = this.drawing;
    const w = Math.min(d.width, Math.max(d.width / 40, this.box.w / by)), k = w / this.box.w;
    this.box = { x: p.x - (p.x - this.box.x) * k, y: p.y - (p.y - this.box.y) * k, w, h: this.box.h * k };
    this.inside();
  }

  all() { this.box = { x: 0, y: 0, w: this.drawing.width, h: this.drawing.height }; this.look(); }

  pan(/** @type {number} */ dx, /** @type {number} */ dy) { this.box.x += dx; this.box.y += dy; this.inside(); }

  inside() {
    const d = this.drawing, b = this.box;
    b.x = Math.min(Math.max(b.x, 0), d.width - b.w);
    b.y = Math.min(Math.max(b.y, 0), d.height - b.h);
    this.look();
  }

  wheel(/** @type {WheelEvent} */ e) {
    if (!this.drawing || this.on.choose) return;
    const zoomed = this.box.w < this.drawing.width - 1e-6;
    if (e.deltaY > 0 && !zoomed && !e.ctrlKey) return; // all of it is seen: the page moves on
    e.preventDefault();
    if (e.shiftKey) this.pan((e.deltaY + e.deltaX) * this.pixel(), 0);
    else this.zoom(Math.exp(-e.deltaY * 0.0016), this.point(e));
  }

  /** What a thing of the overlay stands for. */
  thing(/** @type {Element|null} */ e) {
    const id = e?.closest?.("[data-id]")?.getAttribute("data-id");
    return id ? this.things?.find((t) => t.thing.id === id) : undefined;
  }

  pointed(/** @type {Element} */ e, focused = false) {
    const t = this.thing(e);
    if (t && focused) this.reveal(t.x);
    if (!t || t.thing.id === this.at && t.node.classList.contains("at")) return;
    this.at = t.thing.id;
    for (const o of this.things) {
      o.node.classList.toggle("at", o === t);
      o.node.setAttribute("tabindex", o === t ? "0" : "-1");
    }
    this.on.tell?.(t.thing, t.kind);
  }

  /** Brings a place of the wall into view where the wall is closer than that all of it is seen. */
  reveal(/** @type {number} */ place) {
    const x = this.x(place), b = this.box, air = b.w / 12;
    if (this.fingers.size > 0) return;
    if (x < b.x + air) this.pan(x - b.x - air, 0);
    else if (x > b.x + b.w - air) this.pan(x - b.x - b.w + air, 0);
  }

  down(/** @type {PointerEvent} */ e) {
    if (!this.drawing) return;
    if (this.on.choose) {
      const wall = /** @type {Element} */ (e.target).closest?.("[data-wall]")?.getAttribute("data-wall");
      if (wall) this.on.choose(Number(wall));
      return;
    }
    if (e.button > 0) return;
    this.fingers.set(e.pointerId, e);
    if (this.fingers.size === 2) { this.hand?.end?.(false); this.hand = null; this.pinch = this.spread(); return; }
    const t = this.thing(/** @type {Element} */ (e.target));
    if (t) { this.pointed(t.node); t.node.focus({ preventScroll: true }); }
    if (this.tool === "measure") { this.measure(this.snapped(e)); e.preventDefault(); return; }
    this.hand = this.on.press?.({ thing: t?.thing, kind: t?.kind, at: this.place(e), tool: this.tool }) ?? null;
    this.from = { ...this.point(e), x0: e.clientX, y0: e.clientY };
    if (this.hand) { this.host.setPointerCapture(e.pointerId); this.host.classList.add("busy"); e.preventDefault(); }
    else if (this.host.classList.contains("zoomed")) this.host.setPointerCapture(e.pointerId);
  }

  spread() {
    const [a, b] = [...this.fingers.values()];
    return { d: Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY), m: { clientX: (a.clientX + b.clientX) / 2, clientY: (a.clientY + b.clientY) / 2 } };
  }

  move(/** @type {PointerEvent} */ e) {
    if (!this.drawing || this.on.choose) return;
    if (this.fingers.has(e.pointerId)) this.fingers.set(e.pointerId, e);
    if (this.fingers.size === 2 && this.pinch) {
      const now = this.spread();
      this.zoom(now.d / Math.max(1, this.pinch.d), this.point(now.m));
      this.pinch = now;
      return;
    }
    if (this.hand) {
      this.hand.move(this.place(e));
      this.ghost(this.hand);
      return;
    }
    if (this.fingers.size === 1 && this.from && this.host.classList.contains("zoomed")) {
      const p = this.point(e);
      this.pan(this.from.x - p.x, this.from.y - p.y);
      return;
    }
    if (this.tool === "measure") this.ruler(this.snapped(e));
    if (e.buttons === 0) { const t = this.thing(/** @type {Element} */ (e.target)); if (t) this.pointed(t.node); }
  }

  up(/** @type {PointerEvent} */ e) {
    this.fingers.delete(e.pointerId);
    if (this.fingers.size < 2) this.pinch = null;
    if (this.hand && this.fingers.size === 0) {
      const hand = this.hand;
      this.hand = null;
      this.host.classList.remove("busy");
      this.ghost(null);
      hand.end(e.type === "pointerup");
    }
    if (this.fingers.size === 0) this.from = null;
  }

  /** Shows where the hand is while the layout comes after it. */
  ghost(/** @type {any} */ hand) {
    this.over.querySelectorAll(".drag").forEach((/** @type {Element} */ e) => e.remove());
    if (!hand) return;
    const s = this.drawing.walls[0];
    for (const x of hand.lines())
      this.over.append(shape("line", { class: "drag", x1: this.x(x), x2: this.x(x), y1: this.y(s.high) - 2, y2: this.y(s.low) + 2 }));
  }

  key(/** @type {KeyboardEvent} */ e) {
    if (!this.drawing) return;
    if (this.on.choose) {
      const wall = /** @type {Element} */ (e.target).getAttribute?.("data-wall");
      if (wall !== null && (e.key === "Enter" || e.key === " ")) { this.on.choose(Number(wall)); e.preventDefault(); }
      return;
    }
    const i = this.things.findIndex((t) => t.thing.id === this.at);
    const t = this.things[i];
    const side = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (side && e.shiftKey && t && this.on.nudge) { this.on.nudge({ ...t.thing, kind: t.kind }, side * (e.altKey ? 16 : 1)); e.preventDefault(); return; }
    if (side && !e.ctrlKey && !e.metaKey && !e.altKey) {
      this.things[Math.min(Math.max(i + side, 0), this.things.length - 1)]?.node.focus({ preventScroll: false });
      e.preventDefault();
      return;
    }
    switch (e.key) {
      case "Home": this.things[0]?.node.focus(); break;
      case "End": this.things.at(-1)?.node.focus(); break;
      case "+": case "=": this.zoom(1.4, t ? { x: this.x(t.x), y: this.box.y + this.box.h / 2 } : undefined); break;
      case "-": this.zoom(1 / 1.4); break;
      case "0": this.all(); break;
      case "Enter": case " ": if (t?.kind === "sheet") this.on.open?.(t.thing); break;
      case "m": case "M": if (t) this.measure({ x: t.x, z: this.wall.level }); break;
      case "Escape": this.measuring = null; this.unruled(); break;
      default: return;
    }
    e.preventDefault();
  }

  /** The place under a pointer, drawn to a seam, an edge or a level that is near. */
  snapped(/** @type {PointerEvent} */ e) {
    const p = this.place(e), w = this.wall, near = 9 * this.pixel() * this.drawing.scale;
    const xs = [...w.seams.map((/** @type {any} */ m) => m.x), ...w.outline.map((/** @type {number[]} */ q) => q[0])];
    const zs = [w.level, ...w.outline.map((/** @type {number[]} */ q) => q[1])];
    for (const h of [...w.openings, ...w.boxes]) { xs.push(h.x0, h.x1); zs.push(h.z0, h.z1); }
    const to = (/** @type {number} */ v, /** @type {number[]} */ list) => {
      const best = list.reduce((a, b) => (Math.abs(b - v) < Math.abs(a - v) ? b : a), Infinity);
      return Math.abs(best - v) <= near ? best : v;
    };
    return { x: to(p.x, xs), z: to(p.z, zs) };
  }

  measure(/** @type {{x: number, z: number}} */ p) {
    if (!this.measuring || this.measuring.to) this.measuring = { from: p };
    else this.measuring.to = p;
    this.ruler(p);
  }

  unruled() { this.over.querySelectorAll(".ruled").forEach((/** @type {Element} */ e) => e.remove()); }

  ruler(/** @type {{x: number, z: number}} */ p) {
    if (!this.measuring) return;
    this.unruled();
    const a = this.measuring.from, b = this.measuring.to ?? p;
    const g = shape("g", { class: "ruled" });
    const x0 = this.x(a.x), y0 = this.y(a.z), x1 = this.x(b.x), y1 = this.y(b.z);
    g.append(shape("line", { class: "rule", x1: x0, y1: y0, x2: x1, y2: y0 }), shape("line", { class: "rule", x1, y1: y0, x2: x1, y2: y1 }),
      shape("circle", { class: "rule", cx: x0, cy: y0, r: 1.2 }), shape("circle", { class: "rule", cx: x1, cy: y1, r: 1.2 }));
    this.over.append(g);
    const dx = length(Math.abs(b.x - a.x), this.metric), dz = length(Math.abs(b.z - a.z), this.metric);
    this.on.tell?.({ name: this.say("measured", dx, dz), rows: this.measuring.to ? [] : [[this.say("measure_hint"), ""]] }, "measure");
  }

  /** Shows a place of the wall for a finding. */
  here(/** @type {number} */ x) {
    this.over.querySelectorAll(".here").forEach((/** @type {Element} */ e) => e.remove());
    const s = this.drawing.walls[0];
    this.over.append(shape("ellipse", { class: "here", cx: this.x(x), cy: (this.y(s.low) + this.y(s.high)) / 2, rx: 4, ry: (s.high - s.low) / this.drawing.scale / 2 }));
  }
}
