// A click on an edge is told to the kernel with how far along the edge it lies; a point tells its own place.
const STEPS = 400;

function shareAt(path, event) {
  if (!path.getTotalLength) return 0.5;
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(path.getScreenCTM().inverse());
  const length = path.getTotalLength();
  let best = 0, least = Infinity;
  for (let k = 0; k <= STEPS; k += 1) {
    const here = path.getPointAtLength((length * k) / STEPS);
    const far = (here.x - at.x) ** 2 + (here.y - at.y) ** 2;
    if (far < least) { least = far; best = k / STEPS; }
  }
  return best;
}

function render({ model, el }) {
  let page = null;
  const clicked = (event) => {
    const mark = event.target.closest?.("[data-edge]");
    if (!mark) return;
    const share = mark.dataset.share === undefined ? shareAt(mark, event) : Number(mark.dataset.share);
    model.set("place", { edge: mark.dataset.edge, share, n: (model.get("place").n ?? 0) + 1 });
    model.save_changes();
  };
  const find = requestAnimationFrame(function look() {
    page = el.closest(`.${model.get("page")}`);
    if (page) page.addEventListener("click", clicked);
    else if (el.isConnected) requestAnimationFrame(look);
  });
  return () => {
    cancelAnimationFrame(find);
    page?.removeEventListener("click", clicked);
  };
}

export default { render };
