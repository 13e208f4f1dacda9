// The controls of a garment. The kernel says what each shows and judges what it may be; this page
// only hands on what the hand does. Values are in the choice's own unit (mm, degrees).
const REST = 1000; // ms without a key after which the next key begins a new stroke
const REACHED = new Set(["input", "select", "button", "summary"]);
// A letter typed at one of these is no command for a cell; JupyterLab asks what has the focus itself.

function render({ model, el }) {
  const rows = new Map(); // name -> what stands on the page
  let stroke = Date.now() % 1e9, touched = 0, last = "";

  const sent = () => Math.max(0, ...Object.values(model.get("moves")).map((move) => move.n));
  const ask = (row, what) => {
    const { name } = row.knob;
    if (rows.get(name) !== row) return; // a field that was taken off the page says nothing more
    row.n = sent() + 1;
    model.set("moves", { ...model.get("moves"), [name]: { n: row.n, stroke, garment: model.get("garment"), ...what } });
    model.save_changes();
  };
  const begin = () => { stroke += 1; };
  const keyed = (name) => {
    if (name !== last || performance.now() - touched > REST) begin();
    [touched, last] = [performance.now(), name];
  };

  const make = (tag, props = {}, ...children) => {
    const node = Object.assign(document.createElement(tag), props);
    node.append(...children);
    if (REACHED.has(tag)) node.setAttribute("data-lm-suppress-shortcuts", "true");
    return node;
  };

  const build = (knob, key) => {
    const id = `${key}-${knob.name}`, number = knob.kind === "number";
    const label = make("label", { htmlFor: id, textContent: knob.label });
    const meaning = make("p", { className: "meaning", id: `${id}-meaning`, textContent: knob.meaning });
    meaning.title = `Source: ${knob.source}`;
    const refusal = make("p", { className: "refusal", id: `${id}-refusal` });
    refusal.setAttribute("role", "alert");
    const back = make("button", { type: "button", className: "back", textContent: "Reset" });
    back.setAttribute("aria-label", `Reset ${knob.label}`);
    const row = { knob, refusal, back, n: 0, text: "" };
    row.field = field(row, id);
    back.addEventListener("click", () => { begin(); ask(row, { back: true }); });
    row.field.setAttribute("aria-describedby", `${meaning.id} ${refusal.id}`);
    const first = make("div", { className: "first" }, label, row.field, back);
    const node = make("div", { className: `choice choice-${knob.name.replaceAll("_", "-")}` }, first);
    if (number) {
      row.range = range(row);
      node.append(row.range);
    }
    row.sample = make("div", { className: "sample" });
    row.sample.dataset.choice = knob.name;
    node.append(make("div", { className: "below" }, row.sample, meaning), refusal);
    rows.set(knob.name, row);
    return node;
  };

  const field = (row, id) => {
    const { knob } = row;
    if (knob.kind === "word") {
      const options = knob.words.map(([value, words]) => make("option", { value, textContent: words }));
      const select = make("select", { id }, ...options);
      select.addEventListener("change", () => { begin(); ask(row, { value: select.value }); });
      return select;
    }
    if (knob.kind === "tick") {
      const tick = make("input", { id, type: "checkbox" });
      tick.addEventListener("change", () => { begin(); ask(row, { value: tick.checked }); });
      return tick;
    }
    const typed = make("input", { id, type: "text", className: "typed", autocomplete: "off", spellcheck: false });
    const take = () => {
      if (typed.value.trim() === row.text) return;
      row.text = typed.value.trim();
      begin();
      ask(row, { text: row.text });
    };
    typed.addEventListener("focus", () => typed.select());
    typed.addEventListener("change", take);
    typed.addEventListener("keydown", (event) => {
      if (event.key === "Enter") take();
      if (event.key === "Escape") typed.value = row.text;
    });
    return typed;
  };

  const range = (row) => {
    const { knob } = row;
    const slider = make("input", { type: "range", step: "any" });
    slider.setAttribute("aria-label", `${knob.label}, slider`);
    const put = (value) => {
      const kept = Math.min(Number(slider.max), Math.max(Number(slider.min), value));
      const exact = Number(kept.toFixed(6));
      if (exact === row.value) return;
      slider.value = row.value = exact;
      ask(row, { value: exact });
    };
    slider.addEventListener("focus", () => {
      model.set("held", knob.name);
      model.save_changes();
    });
    slider.addEventListener("pointerdown", begin);
    slider.addEventListener("input", () => put(Math.round(slider.valueAsNumber / knob.step) * knob.step));
    slider.addEventListener("keydown", (event) => {
      const steps = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 };
      const ends = { Home: slider.min, End: slider.max };
      if (!(event.key in steps) && !(event.key in ends)) return;
      event.preventDefault();
      keyed(knob.name);
      put(event.key in ends ? Number(ends[event.key]) : row.value + steps[event.key] * knob.step);
    });
    return slider;
  };

  const show = () => {
    for (const [name, state] of Object.entries(model.get("states"))) {
      const row = rows.get(name);
      if (!row) continue;
      row.back.disabled = !state.apart;
      row.refusal.replaceChildren();
      if (state.refusal) row.refusal.append(make("b", { textContent: "Not possible." }), ` ${state.refusal}`);
      row.field.setAttribute("aria-invalid", String(Boolean(state.refusal)));
      if (state.n < row.n) continue; // the hand has moved on since
      row.value = state.value;
      if (row.knob.kind === "tick") row.field.checked = state.value;
      else if (row.knob.kind === "word") row.field.value = state.value;
      else {
        const writing = document.activeElement === row.field && row.field.value !== row.text;
        row.text = state.text;
        if (!writing) row.field.value = state.text;
        Object.assign(row.range, { min: state.low, max: state.high });
        row.range.value = state.value;
        row.range.setAttribute("aria-valuetext", state.text);
      }
    }
  };

  const seen = new Set(); // choices in sight: their small pictures are asked for
  let asking = 0;
  const sight = new IntersectionObserver((entries) => {
    for (const { target, isIntersecting } of entries) seen[isIntersecting ? "add" : "delete"](target.dataset.choice);
    clearTimeout(asking);
    asking = setTimeout(() => {
      model.set("wanted", [...seen]);
      model.save_changes();
    }, 200);
  });
  const showSamples = () => {
    for (const [name, svg] of Object.entries(model.get("samples"))) {
      const box = rows.get(name)?.sample;
      if (!box || box.shown === svg) continue;
      box.shown = box.innerHTML = svg;
      box.hidden = !svg;
      box.title = box.querySelector("svg")?.getAttribute("aria-label") ?? "No outline moves";
    }
  };

  const open = new Map(); // heading -> whether the hand has opened it
  const fill = () => {
    const at = document.activeElement?.closest?.(".choice")?.className;
    const tag = document.activeElement?.type;
    const kept = new Map([...rows].map(([name, row]) => [name, row.n]));
    rows.clear();
    const key = `k${Math.random().toString(36).slice(2, 8)}`;
    el.replaceChildren(...model.get("groups").map((group) => {
      const count = `${group.knobs.length} ${group.knobs.length === 1 ? "choice" : "choices"}`;
      const head = make("summary", {}, make("span", { textContent: group.heading }), make("small", { textContent: count }));
      const part = make("details", { open: open.get(group.heading) ?? group.open }, head);
      part.addEventListener("toggle", () => open.set(group.heading, part.open));
      if (group.why) part.append(make("p", { className: "why", textContent: group.why }));
      part.append(...group.knobs.map((knob) => build(knob, key)));
      return part;
    }));
    for (const [name, row] of rows) row.n = kept.get(name) ?? 0;
    show();
    showSamples();
    sight.disconnect();
    seen.clear();
    for (const row of rows.values()) sight.observe(row.sample);
    if (at) [...el.getElementsByClassName(at)][0]?.querySelector(`[type="${tag}"]`)?.focus();
  };

  el.classList.add("knobs");
  model.on("change:groups", fill);
  model.on("change:states", show);
  model.on("change:samples", showSamples);
  fill();
  return () => {
    sight.disconnect();
    model.off("change:samples", showSamples);
    model.off("change:groups", fill);
    model.off("change:states", show);
  };
}

export default { render };
