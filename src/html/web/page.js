// What makes the page's text answer: bytes carried in it, numbers that open where they come from, drawings
// that unfold, tables that sort, a search over all numbers. Without it everything but the drawings can be read.
'use strict';

// Bytes of an element that holds them compressed, as base64.
async function unpacked(element) {
  const bytes = Uint8Array.from(atob(element.textContent), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).arrayBuffer();
}

(() => {
  // ---- where a number comes from, in place; its inputs open in the same way

  function ownerOf(link) {
    return document.getElementById(decodeURIComponent(link.hash.slice(1)));
  }

  function openTrace(number) {
    const link = number.querySelector(':scope > p > a');
    const origin = link && ownerOf(link)?.querySelector('.origin');
    if (!origin || number.querySelector(':scope > .origin')) {
      return;
    }
    const copy = origin.cloneNode(true);
    copy.querySelectorAll('.origin').forEach((nested) => nested.remove()); // opened in the list below
    number.append(copy);
  }

  document.addEventListener('toggle', (event) => {
    if (event.target.matches?.('.number') && event.target.open) {
      openTrace(event.target);
    }
  }, true);

  // ---- a link to a number or a rule opens what it lies in

  function unfold() {
    const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    for (let at = target; at; at = at.parentElement) {
      if (at.tagName === 'DETAILS') {
        at.open = true;
      }
    }
    if (target) {
      target.querySelector('details')?.setAttribute('open', '');
      target.scrollIntoView();
    }
  }
  addEventListener('hashchange', unfold);
  unfold();

  // ---- drawings

  async function showSheet(sheet) {
    const paper = sheet.querySelector('.paper');
    if (paper.firstChild) {
      return;
    }
    const picture = document.createElement('img');
    picture.alt = paper.dataset.words;
    paper.append(picture);
    const bytes = await unpacked(sheet.querySelector('script'));
    picture.src = URL.createObjectURL(new Blob([bytes], {type: 'image/svg+xml'}));
  }

  function unfoldSheets(root) {
    for (const sheet of root.querySelectorAll('.sheet')) {
      sheet.addEventListener('toggle', () => sheet.open && showSheet(sheet));
    }
  }

  // ---- tables that sort

  function keyOf(row, column) {
    const cell = row.cells[column];
    const text = cell.dataset.sort ?? cell.textContent.trim();
    const number = text === '' ? -Infinity : Number(text);
    return Number.isNaN(number) ? text.toLowerCase() : number;
  }

  function compare(a, b) {
    if (typeof a === typeof b) {
      return a < b ? -1 : a > b ? 1 : 0;
    }
    return typeof a === 'number' ? -1 : 1; // numbers before words
  }

  function sortBy(table, column, head) {
    const down = head.getAttribute('aria-sort') === 'ascending';
    table.querySelectorAll('th[aria-sort]').forEach((other) => other.removeAttribute('aria-sort'));
    head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
    const body = table.tBodies[0];
    const rows = [...body.rows].map((row) => [keyOf(row, column), row]);
    rows.sort((a, b) => (down ? -1 : 1) * compare(a[0], b[0]));
    body.append(...rows.map(([, row]) => row));
  }

  function sortTables(root) {
    for (const table of root.querySelectorAll('table.sorts')) {
      [...table.tHead.rows[0].cells].forEach((head, column) => {
        const button = document.createElement('button');
        button.type = 'button';
        button.textContent = head.textContent;
        button.addEventListener('click', () => sortBy(table, column, head));
        head.replaceChildren(button);
      });
    }
  }

  // ---- search over all numbers

  function search(find) {
    const words = find.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const topic of document.querySelectorAll('.topic')) {
      let any = false;
      for (const figure of topic.querySelectorAll('.figure')) {
        const text = figure.firstChild.textContent.toLowerCase();
        figure.hidden = !words.every((word) => text.includes(word));
        any ||= !figure.hidden;
        count += figure.hidden ? 0 : 1;
      }
      topic.hidden = !any;
      topic.open = words.length > 0 && any;
    }
    document.getElementById('found').textContent = words.length > 0 ? `${count} numbers` : '';
  }

  // ---- what stands in the page, and what is put there later

  function prepare(root) {
    unfoldSheets(root);
    sortTables(root);
    const find = root.querySelector('#find');
    find?.closest('.find').removeAttribute('hidden');
    find?.addEventListener('input', () => search(find));
  }
  prepare(document);
  document.addEventListener('part-renewed', ({detail}) => prepare(detail));
})();
