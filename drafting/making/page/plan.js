(() => {
  const read = name => JSON.parse(localStorage.getItem(name) || '{}');
  const write = (name, what) => localStorage.setItem(name, JSON.stringify(what));
  const key = 'plan: ' + document.documentElement.dataset.kept, paces = 'plan: paces';
  const kept = read(key), pace = read(paces);
  const add = () => {
    let left = 0;
    document.querySelectorAll('.steps > li').forEach(step => {
      const done = step.querySelector('input[type=checkbox]').checked;
      step.classList.toggle('done', done);
      if (!done) left += Number(step.querySelector('input[type=number]').value) || 0;
    });
    document.getElementById('left').textContent = (left / 60).toFixed(1);
  };
  // A pace is her minutes over the guess, by the kind of work: the mean of what she put in at other costumes.
  const learn = (work, guess, mine) => {
    if (!(guess > 0 && mine > 0)) return;
    const of = pace[work] || (pace[work] = {});
    of[key] = mine / guess;
    write(paces, pace);
  };
  const known = work => {
    const all = Object.entries(pace[work] || {}).filter(([where]) => where !== key).map(([, one]) => one);
    return all.length ? all.reduce((sum, one) => sum + one, 0) / all.length : 1;
  };
  document.querySelectorAll('.steps input, .shopping input').forEach(input => {
    const tick = input.type === 'checkbox', guess = tick ? 0 : Number(input.value);
    if (input.id in kept) tick ? input.checked = kept[input.id] : input.value = kept[input.id];
    else if (!tick) input.value = Math.round(guess * known(input.dataset.work));
    input.addEventListener('input', () => {
      kept[input.id] = tick ? input.checked : input.value;
      if (!tick) learn(input.dataset.work, guess, Number(input.value));
      write(key, kept);
      add();
    });
  });
  add();
  // In a frame of a notebook page Escape leaves the plan: Tab then goes on behind it, and not through all its ticks.
  document.addEventListener('keydown', event => {
    if (event.key === 'Escape') window.frameElement?.nextElementSibling?.focus();
  });
})();
