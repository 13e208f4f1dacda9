// A button a costume, its pieces on it. The kernel draws; the page only says which was pressed.
function render({ model, el }) {
  const place = document.createElement("div");
  place.className = "gallery";
  el.append(place);
  const made = new Map();
  const card = (one) => {
    if (!made.has(one.name)) {
      const button = Object.assign(document.createElement("button"), { type: "button" });
      button.dataset.costume = one.name;
      button.append(...["b", "small", "span"].map((tag) => document.createElement(tag)));
      button.addEventListener("click", () => {
        model.set("picked", { name: one.name, n: (model.get("picked").n || 0) + 1 });
        model.save_changes();
      });
      made.set(one.name, button);
      place.append(button);
    }
    return made.get(one.name);
  };
  const show = () => {
    for (const one of model.get("cards")) {
      const button = card(one), [title, where, picture] = button.children;
      title.textContent = one.title;
      where.textContent = one.place;
      if (picture.said !== one.picture + one.said) {
        picture.said = one.picture + one.said;
        if (one.picture) picture.innerHTML = one.picture;
        else picture.textContent = one.said || "Its pieces are being drawn ...";
      }
      button.setAttribute("aria-pressed", String(one.name === model.get("chosen")));
      picture.querySelector("svg")?.setAttribute("aria-hidden", "true");
    }
  };
  model.on("change:cards", show);
  model.on("change:chosen", show);
  show();
}

export default { render };
