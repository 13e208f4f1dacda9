// How a view stands to its costume. A kernel that is gone cannot say so: the page itself does.
const AWAY = "jupyter-widgets-disconnected";
const GONE = "The kernel was restarted or has stopped: nothing here follows the hand until it is connected again. "
  + "Every choice you made is kept.";
const RERUN = "notebook:restart-run-all";

// JupyterLab's own button runs the page again; where there is none, the page is loaded anew.
const reconnect = () => {
  const press = document.querySelector(`.lm-Widget:not(.lm-mod-hidden) [data-command="${RERUN}"]`)
    ?? document.querySelector(`[data-command="${RERUN}"]`);
  if (!press) {
    location.reload();
    return;
  }
  (press.shadowRoot?.querySelector("button") ?? press.closest("button") ?? press).click();
  const end = performance.now() + 4000;
  const agree = () => {
    const yes = document.querySelector(".jp-Dialog button.jp-mod-accept");
    if (yes) yes.click();
    else if (performance.now() < end) setTimeout(agree, 50);
  };
  agree();
};

function render({ model, el }) {
  const make = (tag, props = {}) => Object.assign(document.createElement(tag), props);
  el.classList.add("living-bar");
  const words = make("p", { className: "kept" });
  words.setAttribute("role", "status");
  const stale = make("p", { className: "stale" }), said = make("span");
  stale.setAttribute("role", "status");
  const follow = make("button", { type: "button", className: "follow" });
  stale.append(said, follow);
  const away = make("p", { className: "away" }), again = make("button", { type: "button", textContent: "Connect again" });
  away.setAttribute("role", "alert");
  el.append(words, stale, away);

  const show = () => {
    words.textContent = model.get("words");
    said.textContent = model.get("stale");
    follow.textContent = model.get("offer");
    stale.hidden = !model.get("stale");
  };
  follow.addEventListener("click", () => {
    follow.disabled = true;
    setTimeout(() => { follow.disabled = false; }, 1500);
    model.set("follows", model.get("follows") + 1);
    model.save_changes();
  });
  again.addEventListener("click", reconnect);

  let gone = false;
  const look = () => {
    const now = Boolean(el.closest(`.${AWAY}`) ?? el.querySelector(`.${AWAY}`));
    if (now === gone) return;
    gone = now;
    away.replaceChildren(...(gone ? [GONE + " ", again] : []));
    // the whole view: the nearest holder that has more in it than this bar
    const view = el.closest(".living-view");
    for (const part of view?.children ?? []) {
      if (!part.contains(el)) part.inert = gone;
    }
    view?.classList.toggle("away", gone);
  };
  const watching = new MutationObserver(look);
  watching.observe(el, { attributes: true, attributeFilter: ["class"] });
  for (const name of ["words", "stale", "offer"]) model.on(`change:${name}`, show);
  show();
  look();
  return () => watching.disconnect();
}

export default { render };
