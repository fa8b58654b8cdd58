// Any two columns of the table of designs against each other. Values are read off the table, places are by
// its SI values, words are its own.
'use strict';

(() => {
  const table = document.getElementById('designs');
  const heads = [...table.tHead.rows[0].cells];
  const axes = heads.map((head, column) => ({name: head.textContent, column, number: head.hasAttribute('data-axis')}))
    .filter(({number, column}) => number && new Set([...table.tBodies[0].rows].map((row) => row.cells[column].dataset.sort)).size > 1);
  // On paper a row is a block of its own, each cell under its head.
  addEventListener('beforeprint', () => [...table.tBodies[0].rows].forEach((row) => [...row.cells].forEach((cell, column) => {
    cell.dataset.head = heads[column].textContent;
  })));
  if (axes.length < 2) {
    return;
  }
  const ranked = table.dataset.ranked.split('|').filter((name) => axes.some((axis) => axis.name === name));
  const byId = (id) => document.getElementById(id);
  const plot = byId('plot');
  byId('scatter').hidden = false;
  const frame = {left: 110, right: 780, top: 15, bottom: 370};

  function element(name, attributes, text) {
    const made = document.createElementNS('http://www.w3.org/2000/svg', name);
    Object.entries(attributes).forEach(([key, value]) => made.setAttribute(key, value));
    made.textContent = text ?? '';
    return made;
  }

  function scale(cells, from, to) {
    const values = cells.map((cell) => Number(cell.dataset.sort));
    const least = Math.min(...values), most = Math.max(...values);
    const room = 0.06 * (most - least || Math.abs(most) || 1);
    return {
      at: (cell) => from + (to - from) * (Number(cell.dataset.sort) - least + room) / (most - least + 2 * room),
      least: cells[values.indexOf(least)], most: cells[values.indexOf(most)]};
  }

  const words = (cell) => cell.textContent.replace(/[\u2605\u25C6]/, '').trim();

  function draw() {
    const across = axes[byId('across').selectedIndex], up = axes[byId('up').selectedIndex];
    const rows = [...table.tBodies[0].rows].filter((row) => row.cells[across.column].dataset.sort && row.cells[up.column].dataset.sort);
    const x = scale(rows.map((row) => row.cells[across.column]), frame.left, frame.right);
    const y = scale(rows.map((row) => row.cells[up.column]), frame.bottom, frame.top);
    const tick = (axis, cell, where) => element('text', {class: 'tick', ...where}, words(cell));
    plot.replaceChildren(
      element('path', {class: 'frame', d: `M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`}),
      tick(x, x.least, {x: x.at(x.least), y: frame.bottom + 20, 'text-anchor': 'middle'}),
      tick(x, x.most, {x: x.at(x.most), y: frame.bottom + 20, 'text-anchor': 'middle'}),
      tick(y, y.least, {x: frame.left - 8, y: y.at(y.least) + 4, 'text-anchor': 'end'}),
      tick(y, y.most, {x: frame.left - 8, y: y.at(y.most) + 4, 'text-anchor': 'end'}),
      element('text', {class: 'axis', x: (frame.left + frame.right) / 2, y: frame.bottom + 42, 'text-anchor': 'middle'}, across.name),
      element('text', {class: 'axis', x: 0, y: 0, transform: `translate(16 ${(frame.top + frame.bottom) / 2}) rotate(-90)`, 'text-anchor': 'middle'}, up.name));
    for (const row of rows) {
      const failing = row.querySelector('.mark');
      const onFront = row.classList.contains('front');
      const point = element('circle', {class: `point ${failing.classList[1]}${onFront ? ' front' : ''}`, r: onFront ? 8 : 6,
        cx: x.at(row.cells[across.column]), cy: y.at(row.cells[up.column])});
      point.append(element('title', {}, `${words(row.cells[0])}: ${across.name} ${words(row.cells[across.column])}, ${up.name} ${words(row.cells[up.column])}`));
      point.addEventListener('mouseenter', () => { byId('plot-words').textContent = point.textContent; });
      plot.append(point);
      if (rows.length <= 12) {
        const at = x.at(row.cells[across.column]), beyond = at > 0.8 * frame.right; // its name on the other side
        plot.append(element('text', {class: 'tick', x: beyond ? at - 9 : at + 9, y: y.at(row.cells[up.column]) + 4,
          'text-anchor': beyond ? 'end' : 'start'}, words(row.cells[0])));
      }
    }
    byId('plot-words').textContent = `${up.name} against ${across.name}, ${rows.length} designs; green passes, brown has cautions, red fails${ranked.length > 0 ? '; a ring: none beats it' : ''}.`;
  }

  for (const id of ['across', 'up']) {
    byId(id).append(...axes.map(({name}) => new Option(name)));
    byId(id).addEventListener('change', draw);
  }
  const axisOf = (name) => axes.findIndex((axis) => axis.name === name);
  byId('across').selectedIndex = ranked.length > 1 ? axisOf(ranked[0]) : 0;
  byId('up').selectedIndex = ranked.length > 1 ? axisOf(ranked[1]) : Math.max(1, axisOf('time of a part'));
  draw();
})();
