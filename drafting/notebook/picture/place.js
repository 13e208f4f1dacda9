// Unseen. What only the page can do for a picture: say how high the page and how large the picture is,
// keep the picture in sight while its controls are gone through by key, and give it the whole screen.
const TEXTS = "input[type=text], select, textarea, [contenteditable=true]";
const SCROLLED = ".jp-WindowedPanel-outer, .jp-LinkedOutputView";
const NAMELESS = ".noUi-handle, .widget-readout[contenteditable]";

function render({ model, el }) {
  el.style.display = "none";
  const stop = new AbortController(), { signal } = stop;
  let sizes;

  const begin = () => {
    if (signal.aborted) return;
    if (!el.isConnected) return requestAnimationFrame(begin);
    const place = el.closest(".bench, .guide, .swatch-test, .lay-table, .pattern-view");
    if (!place) return;
    for (const list of place.querySelectorAll("select")) list.setAttribute("data-lm-suppress-shortcuts", "true");
    name(place);
    const page = place.closest(SCROLLED), picture = place.querySelector(".pattern-preview");
    sizes = new ResizeObserver(() => {
      place.style.setProperty("--page-height", `${page?.clientHeight || window.innerHeight}px`);
      if (picture?.clientWidth && picture.clientHeight) say(picture.clientWidth, picture.clientHeight);
    });
    for (const seen of [page ?? document.documentElement, picture]) if (seen) sizes.observe(seen);
    if (picture) wide(place);
  };

  const name = (place) => { // what `ipywidgets` leaves without a name
    for (const node of place.querySelectorAll(NAMELESS)) {
      const words = node.closest(".jupyter-widgets")?.querySelector(".widget-label")?.textContent ?? "";
      node.setAttribute("aria-label", node.matches(".noUi-handle") ? `${words}, slider` : words);
      if (!node.matches(".noUi-handle")) node.setAttribute("role", "textbox");
    }
  };

  const say = (across, up) => {
    const [x, y] = model.get("size");
    if (Math.abs(x - across) < 8 && Math.abs(y - up) < 8) return;
    model.set("size", [across, up]);
    model.save_changes();
  };

  const wide = (place) => {
    const stage = place.querySelector(".bench-stage");
    const turn = () => document.fullscreenElement ? document.exitFullscreen() : place.requestFullscreen();
    place.querySelector("button.full-screen")?.addEventListener("click", turn, { signal });
    place.addEventListener("keydown", (event) => {
      const plain = !event.ctrlKey && !event.altKey && !event.metaKey;
      if (event.key.toLowerCase() !== "f" || !plain || event.target.matches(TEXTS)) return;
      event.preventDefault();
      event.stopPropagation();
      turn();
    }, { signal, capture: true });
    stage?.addEventListener("focusin", (event) => {
      if (event.target.matches(":focus-visible")) stage.scrollIntoView({ block: "nearest" });
    }, { signal });
  };

  begin();
  return () => {
    stop.abort();
    sizes?.disconnect();
  };
}

export default { render };
