// Unseen. What only the page can do for a picture: say how high the page and how large the picture is,
// keep the picture in sight while its controls are gone through by key, and give it the whole screen.
const TEXTS = "input[type=text], select, textarea, [contenteditable=true]";
const SCROLLED = ".jp-WindowedPanel-outer, .jp-LinkedOutputView";
const NAMELESS = ".noUi-handle:not([aria-label]), .widget-readout[contenteditable]:not([aria-label])";

function render({ model, el }) {
  el.style.display = "none";
  const stop = new AbortController(), { signal } = stop;
  let sizes, parts, picture;

  const begin = () => {
    if (signal.aborted) return;
    if (!el.isConnected) return requestAnimationFrame(begin);
    const place = el.closest(".bench, .guide, .swatch-test, .worn-view, .fitting-page") ?? el.closest(".pattern-view");
    if (!place) return;
    const page = place.closest(SCROLLED);
    sizes = new ResizeObserver(() => {
      place.style.setProperty("--page-height", `${page?.clientHeight || window.innerHeight}px`);
      if (picture?.clientWidth && picture.clientHeight) say(picture.clientWidth, picture.clientHeight);
      if (place.contains(document.activeElement)) keep(document.activeElement);
    });
    sizes.observe(page ?? document.documentElement);
    parts = new MutationObserver(() => look(place)); // parts of a page come one after another
    parts.observe(place, { childList: true, subtree: true });
    look(place);
    wide(place);
  };

  const look = (place) => {
    for (const list of place.querySelectorAll("select:not([data-lm-suppress-shortcuts])")) {
      list.setAttribute("data-lm-suppress-shortcuts", "true");
    }
    for (const node of place.querySelectorAll(NAMELESS)) { // what `ipywidgets` leaves without a name
      const words = node.closest(".jupyter-widgets")?.querySelector(".widget-label")?.textContent ?? "";
      node.setAttribute("aria-label", node.matches(".noUi-handle") ? `${words}, slider` : words);
      if (!node.matches(".noUi-handle")) node.setAttribute("role", "textbox");
    }
    for (const foot of place.querySelectorAll(".worn-foot:not([tabindex])")) { // it scrolls: by key as well
      Object.assign(foot, { tabIndex: 0, role: "region", ariaLabel: "What is told of it" });
    }
    const found = place.querySelector(".pattern-preview");
    if (found && found !== picture) sizes.observe(picture = found);
  };

  const keep = (node) => { // the picture in sight, and within its stage the control in use
    if (!node.matches(":focus-visible")) return;
    node.scrollIntoView({ block: "nearest" });
    node.closest(".bench-stage, .guide-stage, .worn-view, .fitting-stage")?.scrollIntoView({ block: "nearest" });
  };

  const say = (across, up) => {
    const [x, y] = model.get("size");
    if (Math.abs(x - across) < 8 && Math.abs(y - up) < 8) return;
    model.set("size", [across, up]);
    model.save_changes();
  };

  const wide = (place) => {
    const turn = () => document.fullscreenElement ? document.exitFullscreen() : place.requestFullscreen();
    place.addEventListener("click", (event) => {
      if (event.target.closest("button.full-screen")) turn();
    }, { signal });
    place.addEventListener("keydown", (event) => {
      const plain = !event.ctrlKey && !event.altKey && !event.metaKey;
      if (event.key.toLowerCase() !== "f" || !plain || event.target.matches(TEXTS)) return;
      event.preventDefault();
      event.stopPropagation();
      turn();
    }, { signal, capture: true });
    place.addEventListener("focusin", (event) => keep(event.target), { signal });
  };

  begin();
  return () => {
    stop.abort();
    sizes?.disconnect();
    parts?.disconnect();
  };
}

export default { render };
