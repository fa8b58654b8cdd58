// Renews a page under watch: asks its server for what is newer than what stands here, puts each part in its
// place, and keeps what the reader has opened, sorted, sought and looked at.
'use strict';

(() => {
  const state = document.querySelector('[data-version]');
  if (!state) {
    return;
  }
  let version = Number(state.dataset.version);

  // ---- what the reader has done to a part

  // A fold by what it is of, and how often that has come before in its part.
  function folds(part) {
    const counts = new Map();
    const own = [...part.querySelectorAll('details')].filter((fold) => !fold.closest('.number > .origin'));
    return own.map((fold) => {
      const name = fold.id || fold.querySelector(':scope > p > a')?.hash ||
        `${fold.closest('[id]')?.id} ${fold.classList.contains('number') ? '' : fold.firstElementChild.textContent}`;
      const count = counts.get(name) ?? 0;
      counts.set(name, count + 1);
      return [`${name} ${count}`, fold];
    });
  }

  function remembered(part) {
    const field = document.activeElement;
    return {
      open: new Set(folds(part).filter(([, fold]) => fold.open).map(([name]) => name)),
      sorted: [...part.querySelectorAll('table.sorts')].map((table) => {
        const heads = [...table.tHead.rows[0].cells];
        const column = heads.findIndex((head) => head.hasAttribute('aria-sort'));
        return {column, down: heads[column]?.getAttribute('aria-sort') === 'descending'};
      }),
      texts: [...part.querySelectorAll('input[id]')].map((input) => ({id: input.id, value: input.value})),
      field: part.contains(field) ? field.id : '',
      wide: [...part.querySelectorAll('.wide-table')].map((table) => table.scrollLeft)};
  }

  function restore(part, {open, sorted, texts, field, wide}) {
    folds(part).forEach(([name, fold]) => { fold.open = fold.open || open.has(name); });
    part.querySelectorAll('table.sorts').forEach((table, i) => {
      const {column, down} = sorted[i] ?? {column: -1};
      const button = table.tHead.rows[0].cells[column]?.querySelector('button');
      button?.click();
      if (down) {
        button?.click();
      }
    });
    for (const {id, value} of texts) {
      const input = document.getElementById(id);
      if (input && value !== '') {
        input.value = value;
        input.dispatchEvent(new Event('input'));
      }
    }
    if (field) {
      document.getElementById(field)?.focus({preventScroll: true});
    }
    part.querySelectorAll('.wide-table').forEach((table, i) => {
      if (wide[i] > 0) {
        table.scrollLeft = wide[i];
      }
    });
  }

  // ---- parts in their places

  function put(part, markup) {
    if (part.tagName === 'SCRIPT') {
      part.textContent = markup;
    } else {
      part.innerHTML = markup;
      document.dispatchEvent(new CustomEvent('part-renewed', {detail: part}));
    }
  }

  // All is remembered before anything is put: what is asked of a changed page lays it out anew.
  function take(news) {
    const parts = Object.entries(news.parts)
      .map(([name, markup]) => ({part: document.querySelector(`[data-part="${name}"]`), markup}))
      .filter(({part}) => part).map(({part, markup}) => ({part, markup, memory: remembered(part)}));
    parts.forEach(({part, markup}) => put(part, markup));
    parts.forEach(({part, memory}) => restore(part, memory));
    version = news.version;
    if ('assembly' in news.parts) {
      document.dispatchEvent(new Event('fixture-renewed'));
    }
    const title = document.querySelector('[data-title]')?.dataset.title;
    document.title = title || document.title;
    state.dataset.version = String(version);
  }

  // ---- news, while somebody looks

  const pause = (time) => new Promise((done) => setTimeout(done, time));
  const seen = () => new Promise((done) => document.addEventListener('visibilitychange', done, {once: true}));

  function say(lost) {
    document.getElementById('lost').hidden = !lost;
  }

  async function follow() {
    for (;;) {
      if (document.hidden) {
        await seen();
        continue;
      }
      const gone = new AbortController(), leave = () => gone.abort();
      document.addEventListener('visibilitychange', leave, {once: true});
      try {
        const answer = await fetch(`news?after=${version}`, {signal: gone.signal});
        if (!answer.ok) {
          throw new Error(answer.statusText);
        }
        take(await answer.json());
        say(false);
      } catch {
        say(!gone.signal.aborted);
        await pause(gone.signal.aborted ? 0 : 1000);
      }
      document.removeEventListener('visibilitychange', leave);
    }
  }
  follow();
})();
