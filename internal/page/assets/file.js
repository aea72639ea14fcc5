import { element, shape, speaker, tell } from "./parts.js";
import { Pane } from "./see.js";
// ----
{
  // What is told on pointing and tapping, where a script runs. Without it the file is plain pages.
  const room = JSON.parse(document.getElementById("room")?.textContent ?? "{}");
  const say = speaker(room.words);
  const dialog = /** @type {any} */ (document.getElementById("card"));
  dialog.querySelector("button").addEventListener("click", () => dialog.close());

  // The card of a sheet is on one of the pages further down: it is shown from there.
  const card = (/** @type {any} */ sheet) => {
    const [place, course] = sheet.card.split("-").slice(-2);
    const g = [...document.querySelectorAll(`.printed g.card[data-place="${place}"][data-course="${course}"]`)].find((e) => "card-" + /** @type {any} */ (e).dataset.run.replace(/[^A-Za-z0-9._-]/g, "-") + `-${place}-${course}` === sheet.card) ??
      document.querySelector(`.printed g.card[data-place="${place}"][data-course="${course}"]`);
    if (!g) return;
    const box = /** @type {any} */ (g).getBBox();
    const svg = shape("svg", { viewBox: `${box.x - 2} ${box.y - 2} ${box.width + 4} ${box.height + 4}`, fill: "none", stroke: "#000", "stroke-miterlimit": 10, "font-family": "Flitchlay Sans", role: "img", "aria-label": sheet.name });
    svg.append(g.cloneNode(true));
    dialog.querySelector("div").replaceChildren(svg);
    dialog.showModal();
  };

  for (const host of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(".pane[data-wall]"))) {
    const part = /** @type {any} */ (host.closest("section")), told = part.querySelector(".told"), wall = Number(host.dataset.wall);
    told.hidden = false;
    told.dataset.hint = say("point_hint");
    const pane = new Pane(host, say, {
      most: 1.45, // of what it is on paper: the page has room
      tell: (thing, kind) => {
        const more = [];
        if (kind === "sheet" && thing.card && document.querySelector(".printed g.card")) {
          const b = element("button", say("to_card"));
          b.setAttribute("type", "button");
          b.addEventListener("click", () => card(thing));
          more.push(b);
        }
        tell(told, thing, ...more);
      },
      open: card,
    });
    const svg = host.querySelector("svg");
    pane.show({ ...room.drawings[wall], svg: new XMLSerializer().serializeToString(/** @type {any} */ (svg)) }, room.walls, room.metric);
    part.querySelector(".zoom").hidden = false;
    part.querySelector(".zoom").addEventListener("click", (/** @type {any} */ e) => {
      switch (e.target.dataset.zoom) {
        case "in": pane.zoom(1.5); break;
        case "out": pane.zoom(1 / 1.5); break;
        case "all": pane.all(); break;
        case "measure": pane.tool = pane.tool === "measure" ? "look" : "measure"; e.target.setAttribute("aria-pressed", String(pane.tool === "measure")); break;
      }
    });
  }
}
