// The page in the field: packs on this device, the loops of one, and which view is shown.
(() => {
  'use strict';

  const { el, note, link, packHref, loopHref, age, cautions, workerMissing, troubled, clockNote, tagged, entriesOf } = LoopShow;
  const device = LoopDevice;
  const outbox = LoopOutbox;
  const main = document.getElementById('main');
  const bar = document.getElementById('standing');
  let reached = null;

  // ---- what stands on every view

  const queued = (entries, key) => entries.filter(entry => entry.state === outbox.QUEUED && (!key || entry.pack === key));

  const standing = async () => {
    const entries = await device.all('outbox');
    const waiting = queued(entries).length;
    const words = reached === true ? 'Server reached.' : reached === false ? 'No network: everything is kept here.' : '';
    bar.replaceChildren(
      el('span', { 'data-reached': String(reached) }, words),
      el('span', { 'data-queued': String(waiting) }, waiting ? `${waiting} in the outbox` : 'Outbox empty'),
      el('button', { type: 'button', class: 'act', onclick: () => send() }, waiting ? 'Send now' : 'Ask anew'),
    );
  };

  const send = async () => {
    reached = await outbox.sync();
    await standing();
    if (!main.querySelector('[data-sheet]')) await show();
    else await LoopSheet.entriesAgain();
  };

  // ---- packs on this device

  const packs = async () => {
    const [all, entries, drafts] = await Promise.all(['packs', 'outbox', 'drafts'].map(device.all));
    main.replaceChildren(
      el('h1', {}, 'Work packs on this device'),
      workerMissing() || '',
      ...all.map(pack => el('section', { class: 'sheet' },
        el('h2', {}, link(packHref(pack), el('span', { class: 'n' }, pack.state.pack), ' ', pack.state.name)),
        el('p', {}, `${pack.state.loops.length} loops, revision ${pack.state.revision}, ${pack.state.site}`),
        el('p', { class: 'why', 'data-age': '' }, age(pack)),
        el('p', {}, `${queued(entries, pack.key).length} in the outbox, ${drafts.filter(one => one.pack === pack.key).length} being typed`),
        troubled(pack),
        forget(pack, entries, drafts))),
      all.length ? '' : el('div', { class: 'empty' }, el('p', {}, 'No pack is on this device.')),
      el('p', {}, 'To take a pack along, sign in while there is network, open its outage and choose ', el('b', {}, 'On phones and tablets'), ': ', link('/outages', 'outages'), '.'),
      el('p', { class: 'why' }, 'Add this page to the home screen: it then opens like a program of its own, and browsers clear less easily what it keeps.'));
  };

  const forget = (pack, entries, drafts) => {
    const held = queued(entries, pack.key).length + drafts.filter(one => one.pack === pack.key).length;
    if (held) return null;
    return el('p', {}, el('button', { type: 'button', class: 'act', onclick: async event => {
      if (event.target.dataset.sure) {
        await device.remove('packs', pack.key);
        await show();
      } else {
        event.target.dataset.sure = 'yes';
        event.target.textContent = 'Yes, remove it from this device';
      }
    } }, 'Remove from this device'));
  };

  // ---- the loops of a pack

  const standingOf = (loop, entries, draft) => {
    const last = entries[0];
    if (draft) return 'being typed';
    if (last) return { queued: 'in the outbox', recorded: 'recorded', waits: 'conflict', 'set aside': 'set aside', refused: 'refused' }[last.state] || last.state;
    return loop.back ? loop.back.outcome : 'open';
  };
  const loops = async pack => {
    const [entries, drafts] = await Promise.all(['outbox', 'drafts'].map(device.all));
    const own = drafts.filter(one => one.pack === pack.key);
    const listed = pack.state.loops.map(loop => loop.tag);
    const gone = [...new Set([...own.map(one => one.tag), ...entries.filter(one => one.pack === pack.key).map(one => one.tag)])]
      .filter(tag => !listed.includes(tag));
    const row = (tag, loop) => {
      const about = loop ? loop.sheet.loop : null;
      const word = standingOf(loop || {}, entriesOf(entries, pack, tag), own.find(one => one.tag === tag));
      return el('li', {}, link(loopHref(pack, tag), el('b', { class: 'n' }, tag),
        el('span', {}, about ? [about.train, about.machine, about.place].filter(Boolean).join(', ') : 'not in the pack any more'), tagged(word)));
    };
    main.replaceChildren(
      el('p', { class: 'trail' }, link('#/', 'Packs on this device')),
      el('h1', {}, el('span', { class: 'n' }, pack.state.pack), ' ', pack.state.name),
      el('p', { class: 'why', 'data-age': '' }, `Revision ${pack.state.revision}, ${age(pack)}; ${pack.state.device.person} on “${pack.state.device.label}”, may send until ${pack.state.device.expires}`),
      workerMissing() || '',
      troubled(pack) || '',
      clockNote(pack) || '',
      pack.state.closed ? note('This outage is closed. What is sent now waits for somebody’s decision.', true) : '',
      cautions(pack.state),
      el('ol', { class: 'field-loops' }, pack.state.loops.map(loop => row(loop.tag, loop)), gone.map(tag => row(tag, null))));
  };

  // ---- which view

  const show = async () => {
    await LoopDrafts.settled();
    const [, key, tag] = location.hash.match(/^#\/p\/([^/]+)(?:\/l\/(.+))?$/) || [];
    const pack = key ? await device.get('packs', decodeURIComponent(key)) : null;
    if (pack && tag) await LoopSheet.open(pack, decodeURIComponent(tag));
    else if (pack) await loops(pack);
    else await packs();
    document.title = (pack ? (tag ? decodeURIComponent(tag) : pack.state.pack) : 'Work packs') + ' · Loopwright';
  };

  const start = async () => {
    try {
      LoopSheet.with({ show, send });
      await LoopDrafts.recover();
      await show();
    } catch (failed) {
      main.replaceChildren(note('This browser keeps nothing for this page (private window, or storage is full): ' + failed.message, true));
      return;
    }
    main.dataset.ready = 'yes';
    window.addEventListener('hashchange', async () => { await show(); window.scrollTo(0, 0); });
    window.addEventListener('online', send);
    document.addEventListener('visibilitychange', () => { if (!document.hidden) send(); });
    setInterval(() => { if (!document.hidden) send(); }, 60000);
    if ('serviceWorker' in navigator) {
      navigator.serviceWorker.register('/field/worker.js').catch(failed => LoopDrafts.say('This page can’t be kept for later: ' + failed.message));
    }
    await standing();
    await send();
  };
  start();
})();
