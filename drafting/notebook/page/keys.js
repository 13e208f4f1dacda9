// Unseen. JupyterLab takes keys for commands unless what they are pressed in says otherwise.
const OUTPUTS = ".jp-OutputArea-output:not([data-lm-suppress-shortcuts])";

function render({ el }) {
  el.style.display = "none";
  let outputs;
  const begin = () => {
    if (!el.isConnected) return requestAnimationFrame(begin);
    const page = el.closest(".jp-Notebook");
    if (!page) return; // the page without code has no commands
    const mark = () => page.querySelectorAll(OUTPUTS).forEach((output) => {
      output.setAttribute("data-lm-suppress-shortcuts", "true");
    });
    outputs = new MutationObserver(mark);
    outputs.observe(page, { childList: true, subtree: true });
    mark();
  };
  begin();
  return () => outputs?.disconnect();
}

export default { render };
