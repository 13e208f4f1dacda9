// The lay under the maker's hand: an outline follows the pointer; the kernel judges where it may lie.
const SMALL = 1, LARGE = 10; // mm that an arrow key moves, with Shift the larger

function render({ model, el }) {
  const place = document.createElement("div");
  place.className = "lay-table";
  el.append(place);
  let held = null;

  const draw = () => {
    const kept = document.activeElement?.dataset?.outline;
    place.innerHTML = model.get("picture");
    place.querySelectorAll("path.cut-line").forEach((path) => {
      path.dataset.outline = path.id;
      path.setAttribute("tabindex", "0");
      path.setAttribute("role", "button");
      path.setAttribute("aria-label", `${path.id}: drag it, or move it with the arrow keys; R turns it`);
    });
    if (kept) place.querySelector(`[data-outline="${CSS.escape(kept)}"]`)?.focus();
  };
  const ask = (outline, dx, dy, turn = false) => {
    model.set("asked", { outline, dx, dy, turn, n: (model.get("asked").n || 0) + 1 });
    model.save_changes();
  };
  const at = (event) => {
    const svg = place.querySelector("svg");
    return new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
  };
  place.addEventListener("pointerdown", (event) => {
    const path = event.target.closest("path.cut-line");
    if (!path) return;
    held = { path, start: at(event) };
    path.setPointerCapture(event.pointerId);
    path.classList.add("held");
    event.preventDefault();
    path.focus();
  });
  place.addEventListener("pointermove", (event) => {
    if (!held) return;
    const now = at(event);
    held.path.setAttribute("transform", `translate(${now.x - held.start.x} ${now.y - held.start.y})`);
  });
  const drop = (event) => {
    if (!held) return;
    const now = at(event), { path, start } = held;
    held = null;
    path.classList.remove("held");
    const dx = now.x - start.x, dy = start.y - now.y; // y upwards, as the lay has it
    if (Math.hypot(dx, dy) > 0.5) ask(path.dataset.outline, dx, dy);
    else path.removeAttribute("transform");
  };
  place.addEventListener("pointerup", drop);
  place.addEventListener("pointercancel", () => { held?.path.removeAttribute("transform"); held = null; });
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
  model.on("msg:custom", (message) => {
    if (message.back) place.querySelectorAll("[transform]").forEach((path) => path.removeAttribute("transform"));
  });
  draw();
}

export default { render };
