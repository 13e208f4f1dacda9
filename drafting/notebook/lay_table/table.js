// The lay under the maker's hand: an outline follows the pointer; the kernel judges where it may lie.
const REFUSED = 700; // ms that a refused piece stays hatched
const HATCH = `<svg class="lay-hatch" aria-hidden="true"><defs><pattern id="lay-hatch" width="16" height="16"
  patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="ground" width="16" height="16"/>
  <rect class="stripe" width="6" height="16"/></pattern></defs></svg>`;
const SMALL = 1, LARGE = 10; // mm that an arrow key moves, with Shift the larger

function render({ model, el }) {
  const place = document.createElement("div");
  place.className = "lay-table";
  el.append(place);
  let held = null;

  const draw = () => {
    const kept = document.activeElement?.dataset?.outline;
    place.innerHTML = HATCH + model.get("picture");
    place.querySelectorAll("path.cut-line").forEach((path) => {
      path.dataset.outline = path.id;
      path.setAttribute("tabindex", "0");
      path.setAttribute("role", "button");
      path.setAttribute("aria-label", `${path.id.split(".").slice(0, 2).join(" ").replaceAll("-", " ")}: drag it, or move it with the arrow keys; R turns it`);
    });
    if (kept) outlined(kept)?.focus();
    if (held) keepHeld();
  };
  const outlined = (name) => place.querySelector(`[data-outline="${CSS.escape(name)}"]`);
  const ask = (outline, dx, dy, turn = false) => {
    model.set("asked", { outline, dx, dy, turn, n: (model.get("asked").n || 0) + 1 });
    model.save_changes();
  };
  const at = (event) => {
    const svg = place.querySelector("svg:not(.lay-hatch)");
    return new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
  };
  // What is drawn in a piece goes along with it: its grainline and its name.
  const belonging = (path) => [...place.querySelectorAll("path, text")].filter((element) => {
    if (element.id.startsWith(`${path.id}.`)) return true;
    if (element.tagName !== "text" || !element.textContent.trim()) return false;
    const box = element.getBBox();
    return path.isPointInFill(new DOMPoint(box.x + box.width / 2, box.y + box.height / 2));
  });
  const putBack = (paths) => paths.forEach((path) => {
    path.removeAttribute("transform");
    belonging(path).forEach((element) => { element.style.translate = ""; });
  });
  // A faulty place is pressed, or drawn out, on the cloth itself. mm from its lower left corner.
  const onCloth = (point) => {
    const box = place.querySelector('[id="cloth"]').getBBox();
    return [point.x - box.x, box.y + box.height - point.y];
  };
  let marking = null;
  place.addEventListener("pointerdown", (event) => {
    if (!model.get("marking")) return;
    marking = { start: at(event), pointer: event.pointerId };
    place.setPointerCapture(event.pointerId);
    event.preventDefault();
    event.stopImmediatePropagation();
  }, true);
  place.addEventListener("pointerup", (event) => {
    if (!marking) return;
    const [a, b] = [onCloth(marking.start), onCloth(at(event))];
    marking = null;
    model.set("asked", { fault: [...a, ...b], n: (model.get("asked").n || 0) + 1 });
    model.save_changes();
    event.stopImmediatePropagation();
  }, true);
  place.addEventListener("pointercancel", () => { marking = null; });
  const mark = () => place.classList.toggle("marking", model.get("marking"));
  model.on("change:marking", mark);
  mark();
  place.addEventListener("pointerdown", (event) => {
    const path = event.target.closest("path.cut-line");
    if (!path) return;
    const start = at(event), centre = middle(path);
    take(path, event, { x: start.x - centre.x, y: start.y - centre.y });
    event.preventDefault();
    path.focus();
  });
  place.addEventListener("pointermove", (event) => { if (held) carry(event); });
  const middle = (path) => {
    const box = path.getBBox();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  // `grip` is where the hand holds a piece, from its middle.
  const take = (path, event, grip) => {
    const centre = middle(path);
    held = { path, grip, event, start: { x: centre.x + grip.x, y: centre.y + grip.y }, along: belonging(path) };
    path.parentNode.append(path); // above the others
    place.setPointerCapture(event.pointerId);
    path.classList.add("held");
  };
  const carry = (event) => {
    held.event = event;
    const now = at(event);
    const dx = now.x - held.start.x, dy = now.y - held.start.y;
    held.path.setAttribute("transform", `translate(${dx} ${dy})`);
    held.along.forEach((element) => { element.style.translate = `${dx}px ${dy}px`; });
  };
  // A shorter lay may be found while a piece is in the hand: there it stays, gripped where it was.
  const keepHeld = () => {
    const { path, event, grip } = held, anew = outlined(path.dataset.outline);
    held = null;
    if (!anew) return;
    take(anew, event, grip);
    carry(event);
  };
  const drop = (event) => {
    if (!held) return;
    const now = at(event), { path, start } = held;
    held = null;
    path.classList.remove("held");
    const dx = now.x - start.x, dy = start.y - now.y; // y upwards, as the lay has it
    if (Math.hypot(dx, dy) > 0.5) ask(path.dataset.outline, dx, dy);
    else putBack([path]);
  };
  place.addEventListener("pointerup", drop);
  place.addEventListener("pointercancel", () => { if (held) putBack([held.path]); held = null; });
  place.addEventListener("keydown", (event) => {
    const outline = event.target.dataset?.outline;
    if (!outline) return;
    const by = event.shiftKey ? LARGE : SMALL;
    const way = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, by], ArrowDown: [0, -by] }[event.key];
    if (way) ask(outline, ...way);
    else if (event.key === "r" || event.key === "R") ask(outline, 0, 0, true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  model.on("change:picture", draw);
  // Refused: hatched for a moment where it was let go, then back.
  model.on("msg:custom", (message) => {
    if (!message.back) return;
    const moved = [...place.querySelectorAll("path.cut-line[transform]")].filter((path) => path !== held?.path);
    moved.forEach((path) => path.classList.add("not-there"));
    setTimeout(() => moved.forEach((path) => {
      path.classList.remove("not-there");
      if (path !== held?.path) putBack([path]);
    }), REFUSED);
  });
  draw();
}

export default { render };
