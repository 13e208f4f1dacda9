// Unseen: marks every list of the bench it stands in as one that JupyterLab's keys pass by.
function render({ el }) {
  el.style.display = "none";
  const mark = () => {
    if (!el.isConnected) return requestAnimationFrame(mark);
    const place = el.closest(".bench, .pattern-view");
    for (const list of place?.querySelectorAll("select") ?? []) {
      list.setAttribute("data-lm-suppress-shortcuts", "true");
    }
  };
  mark();
}

export default { render };
