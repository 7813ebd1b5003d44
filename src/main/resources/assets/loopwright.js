// Only what a person gains from; every page works without it.
(() => {
  'use strict';

  // "/" goes to the search box, as its placeholder says
  document.addEventListener('keydown', event => {
    const box = document.querySelector('[data-focus-key="/"]');
    const typing = event.target.closest('input, textarea, select, [contenteditable]');
    if (event.key === '/' && box && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      box.focus();
      box.select();
    }
  });

  // leaving a page with something typed but not sent asks first
  const asks = form => form && form.method === 'post' && !form.closest('header, footer, .door');
  let unsent = document.querySelector('main .complaints') !== null && !document.querySelector('.door');
  document.addEventListener('input', event => { unsent = unsent || asks(event.target.form); });
  document.addEventListener('submit', event => { unsent = unsent && !asks(event.target); });
  window.addEventListener('beforeunload', event => { if (unsent) event.preventDefault(); });

  // choices under a field: arrow keys walk, Escape returns, a choice fills the field
  document.addEventListener('keydown', event => {
    const list = document.getElementById(event.target.getAttribute('aria-controls') || '') || event.target.closest('.choices');
    if (!list || !list.matches('.choices') || !['ArrowDown', 'ArrowUp', 'Escape'].includes(event.key)) return;
    event.preventDefault();
    const field = document.querySelector(`[aria-controls="${list.id}"]`);
    const stops = [field, ...list.querySelectorAll('button')];
    const at = stops.indexOf(event.target);
    const step = event.key === 'ArrowDown' ? 1 : -1;
    if (event.key === 'Escape') list.replaceChildren();
    (event.key === 'Escape' ? field : stops[Math.min(Math.max(at + step, 0), stops.length - 1)]).focus();
  });
  document.addEventListener('click', event => {
    const choice = event.target.closest('.choices button[data-value]');
    if (!choice) return;
    const list = choice.closest('.choices');
    const field = document.querySelector(`[aria-controls="${list.id}"]`);
    field.value = choice.dataset.value;
    list.replaceChildren();
    field.focus();
    field.dispatchEvent(new Event('change', {bubbles: true}));
  });

  // a block copied from a spreadsheet fills the table from the cell it is pasted into
  document.addEventListener('paste', event => {
    const table = event.target.closest('[data-paste-block]');
    const text = event.clipboardData ? event.clipboardData.getData('text') : '';
    if (!table || !/[\t\n]/.test(text.trim())) return;
    event.preventDefault();
    const body = table.tBodies[0];
    const fields = row => [...row.querySelectorAll('input')];
    const top = [...body.rows].findIndex(row => row.contains(event.target));
    const left = fields(body.rows[top]).indexOf(event.target);
    let beyond = 0;
    text.replace(/\s+$/, '').split(/\r?\n/).forEach((line, i) => {
      if (!body.rows[top + i]) {
        const fresh = body.rows[body.rows.length - 1].cloneNode(true);
        fields(fresh).forEach(field => { field.value = ''; });
        body.append(fresh);
      }
      const row = fields(body.rows[top + i]);
      line.split(line.includes('\t') ? '\t' : ';').forEach((cell, j) => {
        if (row[left + j]) row[left + j].value = cell.trim();
        else if (cell.trim()) beyond++;
      });
    });
    document.getElementById('notice').textContent = beyond
      ? `${beyond} cells of the pasted block lie beyond the table and were not taken. Paste from the first column.`
      : '';
    event.target.dispatchEvent(new Event('input', { bubbles: true }));
  });
})();
