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
})();
