(() => {
  const key = 'plan: ' + document.title, kept = JSON.parse(localStorage.getItem(key) || '{}');
  const save = () => localStorage.setItem(key, JSON.stringify(kept));
  const add = () => {
    let left = 0;
    document.querySelectorAll('.steps > li').forEach(step => {
      const done = step.querySelector('input[type=checkbox]').checked;
      step.classList.toggle('done', done);
      if (!done) left += Number(step.querySelector('input[type=number]').value) || 0;
    });
    document.getElementById('left').textContent = (left / 60).toFixed(1);
  };
  document.querySelectorAll('.steps input, .shopping input').forEach(input => {
    const tick = input.type === 'checkbox';
    if (input.id in kept) tick ? input.checked = kept[input.id] : input.value = kept[input.id];
    input.addEventListener('input', () => { kept[input.id] = tick ? input.checked : input.value; save(); add(); });
  });
  add();
})();
