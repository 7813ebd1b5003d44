// The sheet of one loop: what the pack says, what came of earlier entries, and the form.
(root => {
  'use strict';

  const { el, note, link, packHref, loopHref, shortly, age, cautions, workerMissing, troubled, tagged, entriesOf } = LoopShow;
  const { FOUND, LEFT } = LoopForm;
  const device = LoopDevice;
  const outbox = LoopOutbox;
  const main = document.getElementById('main');
  let draft = null;
  let here = null;
  const anyway = new Set();
  let page = { show: () => {}, send: () => {} };
  let ticks = 0;

  const finish = (pack, loop) => {
    const box = el('div', { role: 'alert' });
    const put = async confirmed => {
      const lacks = LoopForm.lacking(pack, loop);
      const questions = LoopForm.questions(loop);
      if (lacks.length) {
        box.replaceChildren(el('div', { class: 'complaints' }, lacks.map(one => el('p', {}, one))));
      } else if (questions.length && !confirmed) {
        box.replaceChildren(el('div', { class: 'complaints' }, questions.map(one => el('p', {}, one)),
          el('button', { type: 'button', class: 'act', onclick: () => put(true) }, 'It stands so')));
      } else {
        await LoopDrafts.settled();
        await outbox.enqueue(pack, (await device.get('drafts', draft.key)) || draft, questions.length);
        draft = null;
        location.hash = loopHref(pack, loop.tag);
        await page.show();
        page.send();
      }
    };
    return el('section', { class: 'sheet' }, el('h2', {}, 'This loop is'),
      LoopForm.choices(pack, 'Outcome', 'outcome', LEFT, ['done', 'not done', 'failed']),
      LoopForm.field(pack, 'Why, if not done or failed', 'reason', '', LEFT),
      box,
      el('p', { class: 'acts' }, el('button', { type: 'button', class: 'act go', id: 'finish', onclick: () => put(false) }, 'Put into the outbox')),
      el('p', { class: 'why' }, 'It is sent when the server can be reached, and lands unsigned. Signing is done at the desk.'));
  };

  const facts = loop => el('dl', { class: 'facts' }, [
    ['Where', [loop.sheet.loop.train, loop.sheet.loop.machine, loop.sheet.loop.place].filter(Boolean).join(', ')],
    ['Box', loop.sheet.loop.box], ['Area', loop.sheet.loop.area], ['Shaft', loop.sheet.loop.alloy],
    ['Gap to set', loop.sheet.targetGap && loop.sheet.targetGap + (loop.sheet.expectedVolts ? `, about ${loop.sheet.expectedVolts} V` : '')],
    ['Parts', loop.sheet.chain.map(part => `${part.kind} ${part.serial || part.content}${part.metres ? ` (${part.metres} m)` : ''}`).join('; ')],
    ['Length balance', loop.sheet.balance], ['Channel', loop.sheet.channels.join('; ')], ['Votes', loop.sheet.votes.join('; ')],
    ['Put aside', loop.sheet.spares.join('; ')],
    ['Limits', loop.sheet.limits && `${loop.sheet.limits.name}. ISF ${loop.sheet.limits.isf}, step ${loop.sheet.limits.step}; DSL ${loop.sheet.limits.dsl}`],
    ['Expected', loop.sheet.basis],
  ].filter(([, text]) => text).flatMap(([label, text]) => [el('dt', {}, label), el('dd', {}, text)]));

  const steps = (pack, loop) => loop.sheet.jobs.map(job => el('section', {}, el('h3', {}, job.work),
    job.emergent ? el('p', {}, `Emergent work: ${job.emergent}`) : '',
    job.emergent ? el('p', { class: 'why' }, 'Emergent: ' + job.emergent) : '',
    el('ol', { class: 'field-steps' }, job.steps.map((step, i) => {
      const id = 't' + ++ticks;
      const name = job.work + '|' + i;
      return el('li', {}, el('input', { type: 'checkbox', id, checked: !!(draft && draft.ticks[name]), onchange: event => {
        LoopForm.save({ ticks: { [name]: event.target.checked } });
      } }), el('label', { for: id }, step));
    }))));

  const receipt = (pack, entry) => el('div', { class: 'sheet', 'data-entry': entry.state },
    el('p', {}, tagged({ queued: 'in the outbox', waits: 'conflict' }[entry.state] || entry.state), ` put there ${shortly(entry.createdAt, pack.state.zone)}`),
    entry.at ? el('p', { class: 'n', 'data-receipt': '' }, `Receipt ${entry.at}`) : '',
    entry.told.map(one => el('p', {}, one)),
    entry.state === 'waits' ? el('p', {}, 'Both are kept; nothing was overwritten. ', link(pack.state.takeAlong, 'Decide about it'), ' (needs network and a sign-in).') : '',
    entry.state === 'refused' ? el('p', {}, 'It stays on this device.') : '',
    el('details', {}, el('summary', {}, 'What was entered'), el('ul', {}, entry.body.cells.map(cell => el('li', { class: 'n' }, `${cell.line} ${cell.of} ${cell.column}: ${cell.text}`)))),
    entry.state === outbox.QUEUED && entry.tries === 0 || entry.state === 'refused'
      ? el('button', { type: 'button', class: 'act', onclick: () => takeBack(pack, entry) }, 'Take it back and change it') : '');

  // only what was certainly never taken by the server comes back as something to change
  const takeBack = async (pack, entry) => {
    const loop = pack.state.loops.find(one => one.tag === entry.tag) || entry.loop;
    const back = LoopForm.begin(pack, loop);
    back.identity = entry.body.identity;
    entry.body.cells.forEach(cell => { back.cells[LoopForm.cellKey(cell.line, cell.of, cell.column)] = cell.text; });
    await device.put('drafts', back);
    await device.remove('outbox', entry.uuid);
    await page.show();
  };

  const entriesAgain = async () => {
    const place = document.getElementById('entries');
    if (!place || !here) return;
    const pack = await device.get('packs', here.pack.key);
    const entries = entriesOf(await device.all('outbox'), here.pack, here.tag);
    place.replaceChildren(...[troubled(pack || here.pack)].filter(Boolean), ...entries.map(entry => receipt(pack || here.pack, entry)));
    await LoopPhotos.show(here.pack, { tag: here.tag });
  };

  const newer = (pack, present) => {
    if (!present) return note(`${draft.tag} is not in the newest revision of the pack. What you typed is kept; sent, it waits for somebody’s decision.`, true);
    if (present.hash === draft.loop.hash) return null;
    return el('div', { class: 'complaints' },
      el('p', {}, `The pack was revised after you began this loop (revision ${draft.revision}, now ${pack.state.revision}), and its sheet changed. Below stands the sheet you began on.`),
      el('button', { type: 'button', class: 'act', onclick: async () => {
        const { identity, revision } = pack.state;
        LoopForm.save({ set: { identity, revision, loop: present } });
        await LoopDrafts.settled();
        await page.show();
      } }, 'Go on with the new sheet; keep what is typed'));
  };

  const sheet = async (pack, tag) => {
    const [entries, drafts] = await Promise.all(['outbox', 'drafts'].map(device.all));
    const present = pack.state.loops.find(loop => loop.tag === tag);
    const own = entriesOf(entries, pack, tag);
    draft = drafts.find(one => one.key === pack.key + '|' + tag) || null;
    const begun = draft !== null;
    if (!draft && present) draft = LoopForm.goOn(LoopForm.begin(pack, present), own);
    const loop = draft ? draft.loop : present;
    here = { pack, tag };
    ticks = 0;
    LoopForm.use(draft);
    const at = pack.state.loops.findIndex(one => one.tag === tag);
    const next = pack.state.loops[at + 1];
    const closedBy = own.find(entry => entry.state === outbox.QUEUED || (entry.state === 'recorded' && entry.body.cells.some(cell => cell.line === 'outcome' && cell.text === 'done')));
    const done = closedBy || (present && present.back && present.back.outcome === 'done');
    const again = begun || !done || anyway.has(pack.key + tag);
    main.replaceChildren(
      el('p', { class: 'trail' }, link('#/', 'Packs'), ' / ', link(packHref(pack), pack.state.pack)),
      el('h1', { class: 'n' }, tag),
      el('p', { class: 'why', 'data-age': '' }, `Revision ${draft ? draft.revision : pack.state.revision}, ${age(pack)}`),
      workerMissing() || '',
      cautions(pack.state),
      el('div', { id: 'entries' }),
      loop && present && present.back ? note(`Came back as ${present.back.outcome}: ${present.back.who}, ${present.back.at}. ${present.back.told}`) : '',
      begun ? newer(pack, present) || '' : '',
      loop ? el('details', { class: 'sheet', open: !begun && !own.length }, el('summary', {}, 'What the pack says'), facts(loop),
        loop.sheet.open.map(one => el('p', {}, one)),
        el('p', {}, link(loop.page, 'Loop’s page'), ' · ', link(loop.bypass, 'Enter a bypass'), ' (need network and a sign-in)')) : '',
      loop && again ? el('details', { class: 'sheet', open: !begun && !own.length }, el('summary', {}, 'Steps'), steps(pack, loop), el('p', { class: 'why' }, 'Ticks help on this device; they are not sent.')) : '',
      loop && again ? el('div', { 'data-sheet': tag },
        el('p', { class: 'field-jumps' }, [['As found', '[data-stage="as found"]'], ['As left', '[data-stage="as left"]'], ['Done or not', '#finish'], ['Photograph', '#photo']]
          .map(([word, to]) => el('button', { type: 'button', class: 'act', onclick: () => main.querySelector(to).scrollIntoView({ block: 'start' }) }, word))),
        LoopForm.stage(pack, loop, FOUND),
        LoopForm.choices(pack, 'Nothing was touched: as found stands as as left', 'nothing touched', LEFT, ['yes', 'no']),
        LoopForm.stage(pack, loop, LEFT),
        LoopForm.bypass(pack),
        finish(pack, loop)) : '',
      present && !again && !closedBy ? el('p', {}, el('button', { type: 'button', class: 'act', onclick: () => { anyway.add(pack.key + tag); page.show(); } }, 'Enter it again all the same')) : '',
      loop ? LoopPhotos.section(pack, loop, page.send) : '',
      el('p', { class: 'acts' }, next ? link(loopHref(pack, next.tag), `Next: ${next.tag}`) : link(packHref(pack), 'All loops')),
      el('p', { id: 'kept', class: 'why', role: 'status' }));
    if (loop && again) LoopForm.begun(loop);
    await entriesAgain();
  };

  root.LoopSheet = { open: sheet, entriesAgain, with: given => { page = given; } };
})(globalThis);
