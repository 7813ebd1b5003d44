// Making what the field pages show: always as text, never as markup.
(root => {
  'use strict';

  const el = (name, about, ...inside) => {
    const made = document.createElement(name);
    Object.entries(about || {}).forEach(([key, value]) => {
      if (value === null || value === undefined || value === false) return;
      if (key.startsWith('on')) made.addEventListener(key.slice(2), value);
      else if (key === 'value') made.value = value;
      else if (key === 'checked') made.checked = value;
      else made.setAttribute(key, value === true ? '' : value);
    });
    made.append(...inside.flat().filter(one => one !== null && one !== undefined && one !== ''));
    return made;
  };
  const verdict = word => el('span', { class: 'verdict ' + word.replaceAll(' ', '-') }, word);
  const note = (sentence, wrong) => el('p', { class: wrong ? 'notice wrong' : 'notice' }, sentence);
  const link = (to, ...inside) => el('a', { href: to }, ...inside);
  const packHref = pack => '#/p/' + encodeURIComponent(pack.key);
  const loopHref = (pack, tag) => packHref(pack) + '/l/' + encodeURIComponent(tag);

  // ---- words about time

  const clock = (time, zone) => {
    const parts = {};
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23',
    }).formatToParts(new Date(time)).forEach(part => { parts[part.type] = part.value; });
    return `${parts.year}-${parts.month}-${parts.day} ${parts.hour}:${parts.minute}`;
  };
  const shortly = (time, zone) => new Intl.DateTimeFormat('en-GB', {
    timeZone: zone, day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', hourCycle: 'h23',
  }).format(new Date(time)).replace(',', '');
  const ago = time => {
    const minutes = Math.max(0, Math.floor((Date.now() - time) / 60000));
    if (minutes < 1) return 'just now';
    if (minutes < 60) return minutes + ' min ago';
    return minutes < 48 * 60 ? Math.floor(minutes / 60) + ' h ago' : Math.floor(minutes / 1440) + ' days ago';
  };
  // how far the device's clock is ahead of the server's, ms; small differences don't count
  const ahead = pack => {
    const by = pack.fetchedAt - Date.parse(pack.state.asOf);
    return Math.abs(by) > 120000 ? by : 0;
  };
  const now = pack => clock(Date.now() - ahead(pack), pack.state.zone);
  const clockNote = pack => (ahead(pack) ? note(`This device’s clock is ${Math.round(Math.abs(ahead(pack)) / 60000)} min ${ahead(pack) > 0 ? 'ahead of' : 'behind'} the server’s; moments of measuring are filled in by the server’s.`) : null);
  const age = pack => `as taken along ${shortly(pack.fetchedAt, pack.state.zone)}, ${ago(pack.fetchedAt)}`;

  // ---- what stands on several views

  const cautions = state => el('details', { class: 'caution', role: 'note' },
    el('summary', {}, el('b', {}, 'Caution.'), ' No permission to work. Permit and bypass as the site’s procedure says; one channel of a voting group at a time; restore and prove.'),
    el('ul', {}, state.cautions.map(one => el('li', {}, one))));

  const workerMissing = () => ('serviceWorker' in navigator ? null : note(
    'This browser keeps no page for later here, because the page came over plain http: without network it can’t be opened or reloaded. '
    + 'What you type is still kept on this device. For pages that work without network serve Loopwright over TLS '
    + '(serve --keystore FILE), open it by https, and take the pack along again.', true));

  const troubled = pack => (pack.trouble ? el('div', { class: 'complaints', role: 'alert', 'data-trouble': '' },
    el('p', {}, pack.trouble),
    el('p', {}, 'Nothing is lost: the outbox waits on this device. ',
      link(pack.state.takeAlong, 'Sign in and take the pack along again'), '; then it goes by itself.')) : null);

  const CLASSES = { 'in the outbox': 'due', recorded: 'matches', conflict: 'refused', refused: 'refused', 'set aside': 'attention', 'being typed': 'attention', done: 'matches', failed: 'refused', 'not done': 'attention', open: 'not-judged' };
  const tagged = word => el('span', { class: 'verdict ' + (CLASSES[word] || '') }, word);

  const entriesOf = (entries, pack, tag) => entries
    .filter(entry => entry.pack === pack.key && entry.tag === tag)
    .sort((a, b) => b.createdAt - a.createdAt);

  root.LoopShow = { el, verdict, note, link, packHref, loopHref, clock, now, clockNote, shortly, age, cautions, workerMissing, troubled, tagged, entriesOf };
})(globalThis);
