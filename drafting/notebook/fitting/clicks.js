// An edge of the picture that is clicked is named to the kernel; the picture itself stays plain SVG.
function render({ model, el }) {
  let page = null;
  const clicked = (event) => {
    const edge = event.target.closest?.("[data-edge]");
    if (edge) {
      model.set("edge", { name: edge.dataset.edge, n: (model.get("edge").n ?? 0) + 1 });
      model.save_changes();
    }
  };
  const find = requestAnimationFrame(function look() {
    page = el.closest(".fitting-page");
    if (page) page.addEventListener("click", clicked);
    else if (el.isConnected) requestAnimationFrame(look);
  });
  return () => {
    cancelAnimationFrame(find);
    page?.removeEventListener("click", clicked);
  };
}

export default { render };
