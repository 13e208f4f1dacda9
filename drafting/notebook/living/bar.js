// How a view stands to its costume. A kernel that is gone cannot say so: the page itself does.
const AWAY = "jupyter-widgets-disconnected";
const EVERY = 500, SILENT = 12000; // ms between two looks; without an answer a kernel counts as gone
const GONE = "The kernel was restarted or has stopped: nothing here follows the hand until it is connected again. ";
const KEPT = "Every choice you made is kept. ";
const RERUN = "notebook:restart-run-all";

const STARTING = ["starting", "restarting", "autorestarting", "unknown", "connecting"];
const PATIENCE = 20000; // ms that a kernel is given to start before the page is run again

// A kernel that is started a second time while it starts never answers: wait until it stands.
const standing = (panel, then) => {
  const end = performance.now() + PATIENCE;
  const look = () => {
    const status = panel?.querySelector(".jp-Notebook-ExecutionIndicator")?.dataset.status;
    if (STARTING.includes(status) && performance.now() < end) setTimeout(look, 100);
    else then();
  };
  look();
};

// JupyterLab's own button runs the page again; where there is none, the page is loaded anew.
const runAgain = (panel) => {
  const press = panel?.querySelector(`[data-command="${RERUN}"]`);
  if (!press) {
    location.reload();
    return;
  }
  press.dispatchEvent(new MouseEvent("mousedown", { bubbles: true, composed: true, button: 0 }));
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
  const away = make("p", { className: "away" }), again = make("button", { type: "button" });
  away.setAttribute("role", "alert");
  el.append(words, stale, away);

  const offer = (free) => {
    again.disabled = !free;
    again.textContent = free ? "Connect again" : "Connecting ...";
  };
  offer(true);
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
  again.addEventListener("click", () => {
    const panel = el.closest(".jp-NotebookPanel");
    offer(false);
    standing(panel, () => {
      runAgain(panel);
      setTimeout(() => offer(true), PATIENCE);
    });
  });

  let gone = false, asked = 0, answered = 0;
  const look = () => {
    const silent = asked > answered && performance.now() - asked > SILENT;
    const now = silent || Boolean(el.closest(`.${AWAY}`));
    if (now === gone) return;
    gone = now;
    offer(true);
    away.replaceChildren(...(gone ? [GONE + (model.get("keeps") ? KEPT : ""), again] : []));
    const view = el.closest(".living-view");
    for (let node = el; view && node !== view; node = node.parentElement) { // all of the view but the bar
      for (const part of node.parentElement.children) if (part !== node) part.inert = gone;
    }
    view?.classList.toggle("away", gone);
  };
  // A kernel that died by itself tells nobody: the first touch asks whether it is there.
  const touched = (event) => {
    if (gone || asked > answered || !el.closest(".living-view")?.contains(event.target)) return;
    asked = performance.now();
    model.send({ there: true });
  };
  const heard = (message) => {
    if (message.here) answered = performance.now();
  };
  const watching = setInterval(look, EVERY);
  for (const name of ["pointerdown", "keydown"]) document.addEventListener(name, touched, true);
  model.on("msg:custom", heard);
  for (const name of ["words", "stale", "offer"]) model.on(`change:${name}`, show);
  show();
  look();
  return () => {
    clearInterval(watching);
    for (const name of ["pointerdown", "keydown"]) document.removeEventListener(name, touched, true);
    model.off("msg:custom", heard);
  };
}

export default { render };
