// The page in the field: packs on this device, their loops, one loop's sheet. Everything shown is
// made as text, never as markup; everything typed is kept at once.
(() => {
  'use strict';

  const device = LoopDevice;
  const outbox = LoopOutbox;
  const main = document.getElementById('main');
  const bar = document.getElementById('standing');
  const FOUND = 'as found';
  const LEFT = 'as left';
  let reached = null;

  // ---- making elements

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
  const age = pack => `as taken along ${shortly(pack.fetchedAt, pack.state.zone)}, ${ago(pack.fetchedAt)}`;

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
    else await entriesAgain();
  };

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
      el('p', {}, 'To take a pack along, sign in while there is network, open its outage and choose ', el('b', {}, 'On phones and tablets'), ': ', link('/outages', 'outages'), '.'));
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
  const CLASSES = { 'in the outbox': 'due', recorded: 'matches', conflict: 'refused', refused: 'refused', 'set aside': 'attention', 'being typed': 'attention', done: 'matches', failed: 'refused', 'not done': 'attention', open: 'not-judged' };
  const tagged = word => el('span', { class: 'verdict ' + (CLASSES[word] || '') }, word);

  const entriesOf = (entries, pack, tag) => entries
    .filter(entry => entry.pack === pack.key && entry.tag === tag)
    .sort((a, b) => b.createdAt - a.createdAt);

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
      pack.state.closed ? note('This outage is closed. What is sent now waits for somebody’s decision.', true) : '',
      cautions(pack.state),
      el('ol', { class: 'field-loops' }, pack.state.loops.map(loop => row(loop.tag, loop)), gone.map(tag => row(tag, null))));
  };

  // ---- one loop

  let draft = null;

  const begin = (pack, loop) => ({
    key: pack.key + '|' + loop.tag, pack: pack.key, tag: loop.tag, identity: pack.state.identity,
    asOf: pack.state.asOf, revision: pack.state.revision, loop, cells: {}, ticks: {}, updatedAt: 0,
  });

  // a loop that came back as not done goes on from what was sent
  const goOn = (fresh, own) => {
    const last = own[0];
    const outcome = last && last.body.cells.find(cell => cell.line === 'outcome');
    if (last && last.state === 'recorded' && outcome && outcome.text !== 'done') {
      last.body.cells.filter(cell => !['outcome', 'reason'].includes(cell.line))
        .forEach(cell => { fresh.cells[cellKey(cell.line, cell.of, cell.column)] = cell.text; });
    }
    return fresh;
  };

  const cellKey = (line, of, column) => [line, of, column].join('|');
  const typed = (line, of, column) => {
    const text = draft.cells[cellKey(line, of, column)] || '';
    return text.trim() === '-' ? '' : text;
  };

  const kept = sentence => {
    const place = document.getElementById('kept');
    if (place) place.textContent = sentence;
  };

  const save = patch => {
    const base = { ...draft, cells: { ...draft.cells }, ticks: { ...draft.ticks } };
    Object.assign(draft.cells, patch.cells);
    Object.assign(draft.ticks, patch.ticks);
    Object.assign(draft, patch.set);
    LoopDrafts.write(base, patch);
  };

  const write = (line, of, column, text) => save({ cells: { [cellKey(line, of, column)]: text } });

  const stamp = (pack, column) => {
    [['measured at', clock(Date.now(), pack.state.zone)], ['done by', pack.state.device.person]].forEach(([line, text]) => {
      if (!typed(line, '', column)) {
        write(line, '', column, text);
        const input = main.querySelector(`[data-cell="${cellKey(line, '', column)}"]`);
        if (input) input.value = text;
      }
    });
  };

  let fields = 0;
  const field = (pack, label, line, of, column, about = {}) => {
    const id = 'f' + ++fields;
    const input = el('input', {
      id, type: 'text', autocomplete: 'off', 'data-cell': cellKey(line, of, column), class: about.mono ? 'n' : null,
      inputmode: about.mode, placeholder: about.hint, spellcheck: about.mono ? 'false' : null, autocapitalize: about.mono ? 'off' : null,
      'aria-label': about.say, value: typed(line, of, column), onfocus: about.focus, onblur: about.blur,
      oninput: event => {
        write(line, of, column, event.target.value);
        if (about.stamps && event.target.value.trim() && event.target.value.trim() !== '-') stamp(pack, column.replace(', down', ''));
        if (about.then) about.then();
      },
    });
    return label === null ? input : el('div', { class: 'field' }, el('label', { for: id }, label), input);
  };

  // a phone's number keys have no minus: it stands there as soon as the field is touched
  const minus = {
    focus: event => { if (!event.target.value) event.target.value = '-'; },
    blur: event => { if (event.target.value.trim() === '-') { event.target.value = ''; event.target.dispatchEvent(new Event('input')); } },
  };

  const choices = (pack, label, line, column, words, then) => el('fieldset', { class: 'field-choice' }, el('legend', {}, label),
    words.map(word => {
      const id = 'f' + ++fields;
      return el('span', {}, el('input', {
        type: 'radio', id, name: cellKey(line, '', column), checked: typed(line, '', column) === word,
        onchange: () => { write(line, '', column, word); if (then) then(); },
      }), el('label', { for: id }, word));
    }));

  const readingsOf = (loop, column) => (loop.profile ? loop.sheet.limits.readings.flatMap((reading, i) => {
    const of = `${reading.gap} ${loop.sheet.limits.unit}`;
    return [false, true].map(down => ({ um: loop.profile.targets[i], text: typed('reading', of, column + (down ? ', down' : '')), down, of }));
  }) : []);

  const judged = (loop, column) => (loop.profile
    ? LoopVerdict.analyse({ ...loop.profile, unit: loop.sheet.limits.unit }, readingsOf(loop, column))
    : { problems: [], questions: [], runs: [], read: 0, verdict: 'not judged' });

  const signed = percent => {
    const text = percent.toFixed(1);
    return (percent > 0 && Number(text) !== 0 ? '+' : '') + text.replace(/^-(0\.0)$/, '$1');
  };

  const sayVerdict = (loop, column) => {
    const result = judged(loop, column);
    const box = main.querySelector(`[data-verdict="${column}"]`);
    if (!box) return;
    const lines = result.problems.map(one => note(one, true)).concat(result.questions.map(one => note(one)));
    if (result.runs.length) {
      const percent = result.worstIsfPercent === null ? '' : `, worst ${signed(result.worstIsfPercent)} %`;
      const whole = result.complete;
      box.replaceChildren(
        el('p', { class: 'field-verdict', 'data-word': result.verdict }, whole ? verdict(result.verdict) : verdict('not judged'),
          whole ? '' : ' so far: readings do not cover the range yet'),
        el('p', {}, 'ISF ', verdict(result.isfVerdict), percent),
        el('p', {}, 'DSL ', verdict(result.dslVerdict), `, largest ${result.maxDsl.toFixed(1)} µm (${(result.maxDsl / 25.4).toFixed(2)} mil)`),
        ...lines);
      marks(loop, column, result);
    } else {
      box.replaceChildren(el('p', { class: 'why' }, loop.profile ? 'The verdict comes with three readings.' : 'No tolerance profile is known for this loop: nothing is judged here.'), ...lines);
      marks(loop, column, result);
    }
  };

  // beside each reading: its step from the one before
  const marks = (loop, column, result) => {
    main.querySelectorAll(`[data-mark^="${column}|"]`).forEach(place => place.replaceChildren());
    result.runs.forEach((run, i) => run.steps.forEach(step => {
      const at = loop.profile.targets.findIndex(um => Math.abs(um - step.to) < 1e-6);
      const down = result.runs.length === 2 ? i === 1 : readingsOf(loop, column).some(one => one.down && one.text.trim());
      const place = main.querySelector(`[data-mark="${column}|${at}|${down}"]`);
      const off = 100 * (step.isf - loop.profile.slope) / loop.profile.slope;
      if (place) place.replaceChildren(el('span', { class: step.conforms ? 'why' : 'verdict refused' }, `${signed(off)} %${step.conforms ? '' : ' out'}`));
    }));
  };

  const readings = (pack, loop, column, down) => el('ol', { class: 'field-readings' }, loop.sheet.limits.readings.map((reading, i) => {
    const of = `${reading.gap} ${loop.sheet.limits.unit}`;
    const corridor = reading.lowest ? `${reading.lowest} to ${reading.highest} V` : '';
    return el('li', {},
      el('span', { class: 'n' }, of, el('small', {}, reading.other)),
      field(pack, null, 'reading', of, column + (down ? ', down' : ''), {
        mono: true, mode: 'decimal', stamps: true, say: `${column}${down ? ', down' : ''}, ${of}, volts`,
        hint: reading.expected ? `≈ ${reading.expected}` : 'V', then: () => sayVerdict(loop, column), ...minus,
      }),
      el('span', { class: 'why n' }, corridor, el('span', { 'data-mark': `${column}|${i}|${down}` })));
  }));

  const stage = (pack, loop, column) => el('section', { class: 'sheet field-stage', 'data-stage': column },
    el('h2', {}, column === FOUND ? 'As found' : 'As left'),
    field(pack, 'Gap voltage at rest, V', 'gap voltage', '', column, { mono: true, mode: 'decimal', stamps: true, hint: loop.sheet.expectedVolts ? `≈ ${loop.sheet.expectedVolts}` : '', ...minus }),
    el('details', {}, el('summary', {}, 'Serials that differ from the pack'),
      el('p', { class: 'why' }, 'Leave empty what is as the pack says. A serial typed here becomes a survey that is judged.'),
      loop.sheet.chain.map(part => field(pack, `${part.kind} (${part.slot})`, 'serial', part.slot, column, { mono: true, stamps: true, hint: part.serial || 'none' }))),
    loop.profile ? readings(pack, loop, column, false) : '',
    el('div', { class: 'field-says', role: 'status', 'data-verdict': column }),
    loop.profile ? el('details', { open: readingsOf(loop, column).some(one => one.down && one.text) }, el('summary', {}, 'Readings on the way down'), readings(pack, loop, column, true)) : '',
    field(pack, 'No curve because', 'no curve because', '', column, { stamps: true }),
    choices(pack, 'Gap zero', 'gap zero', column, pack.state.zeros),
    field(pack, 'Standards used (codes, with commas)', 'standards used', '', column),
    field(pack, `Measured at (clock of the site, ${pack.state.zone})`, 'measured at', '', column, { mono: true, hint: '2026-03-14 09:40' }),
    field(pack, 'Done by', 'done by', '', column));

  // ---- before a loop goes into the outbox

  const hasResult = (loop, column) => readingsOf(loop, column).some(one => one.text.trim()) || typed('no curve because', '', column).trim() !== '';

  const lacking = (pack, loop) => {
    const lacks = [];
    const outcome = typed('outcome', '', LEFT);
    if (!outcome) lacks.push('Say whether the loop is done, not done or failed.');
    if (outcome && outcome !== 'done' && !typed('reason', '', LEFT).trim()) lacks.push(`Say why it is ${outcome}.`);
    [FOUND, LEFT].forEach(column => {
      const result = judged(loop, column);
      result.problems.forEach(problem => lacks.push(`${column}: ${problem}`));
      if (!result.problems.length && result.read > 0 && !result.runs.length && !typed('no curve because', '', column).trim()) lacks.push(`${column}: a run needs at least three readings.`);
      const anything = hasResult(loop, column) || typed('gap voltage', '', column).trim();
      const gapVolts = typed('gap voltage', '', column).trim();
      if (gapVolts && Number.isNaN(LoopVerdict.number(gapVolts))) lacks.push(`${column}: the gap voltage '${gapVolts}' is no number.`);
      const serial = loop.sheet.chain.some(part => typed('serial', part.slot, column).trim());
      if ((anything || serial) && !typed('measured at', '', column).trim()) lacks.push(`${column}: say when it was measured.`);
      if (anything && !typed('done by', '', column).trim()) lacks.push(`${column}: say who measured.`);
    });
    const wantsLeft = loop.sheet.jobs.some(job => job.work === pack.state.asLeftWork);
    const untouched = typed('nothing touched', '', LEFT) === 'yes' && hasResult(loop, FOUND);
    if (outcome === 'done' && wantsLeft && !hasResult(loop, LEFT) && !untouched) {
      lacks.push('Done needs an as-left curve, or that nothing was touched, or why there is no curve.');
    }
    return lacks;
  };

  // a record of what stands under the site's procedure, sent with the loop
  const bypass = pack => el('details', { class: 'sheet', open: pack.state.bypassCells.some(cell => typed(cell.line, cell.of, cell.column)) },
    el('summary', {}, 'Bypass that stood for this work'),
    el('p', { class: 'why' }, 'A record only, never a permission. It goes into the bypass log with this loop; a second person proves there that it is off.'),
    pack.state.bypassCells.map(cell => field(pack, cell.of[0].toUpperCase() + cell.of.slice(1), cell.line, cell.of, cell.column,
      cell.line === 'bypass' ? {} : { mono: true, hint: '2026-03-14 09:40' })));

  const finish = (pack, loop) => {
    const box = el('div', { role: 'alert' });
    const put = async confirmed => {
      const lacks = lacking(pack, loop);
      const questions = [FOUND, LEFT].flatMap(column => judged(loop, column).questions.map(one => `${column}: ${one}`));
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
        await show();
        send();
      }
    };
    return el('section', { class: 'sheet' }, el('h2', {}, 'This loop is'),
      choices(pack, 'Outcome', 'outcome', LEFT, ['done', 'not done', 'failed']),
      field(pack, 'Why, if not done or failed', 'reason', '', LEFT),
      box,
      el('p', { class: 'acts' }, el('button', { type: 'button', class: 'act go', id: 'finish', onclick: () => put(false) }, 'Put into the outbox')),
      el('p', { class: 'why' }, 'It is sent when the server can be reached, and lands unsigned. Signing is done at the desk.'));
  };

  // ---- photographs

  const MOST = 1600;
  const shrunk = async (file, most, quality) => {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, most / Math.max(picture.width, picture.height));
    const canvas = el('canvas', { width: Math.round(picture.width * scale), height: Math.round(picture.height * scale) });
    canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
    return { canvas, blob: await new Promise(done => canvas.toBlob(done, 'image/jpeg', quality)) };
  };

  const addPhoto = async (pack, loop, input) => {
    for (const file of input.files) {
      try {
        const large = await shrunk(file, MOST, 0.82);
        const small = await shrunk(file, 160, 0.7);
        await device.put('photos', {
          uuid: device.uuid(), pack: pack.key, tag: loop.tag, state: outbox.QUEUED, createdAt: Date.now(),
          name: `${loop.tag.replace(/[^A-Za-z0-9-]/g, '_')} ${clock(Date.now(), pack.state.zone).replaceAll(':', '.')}.jpg`,
          picture: large.blob, small: small.canvas.toDataURL('image/jpeg', 0.7),
        });
      } catch (unreadable) {
        kept(`The picture ${file.name} can’t be read by this browser; nothing of it is kept.`);
      }
    }
    input.value = '';
    await photos(pack, loop);
    send();
  };

  const photos = async (pack, loop) => {
    const place = document.getElementById('photos');
    if (!place) return;
    const own = (await device.all('photos')).filter(one => one.pack === pack.key && one.tag === loop.tag);
    place.replaceChildren(...own.map(photo => el('figure', { 'data-photo': photo.state },
      el('img', { src: photo.small, alt: photo.name }),
      el('figcaption', { class: 'why' }, photo.state === 'sent' ? 'sent' : photo.state === outbox.QUEUED ? 'waits for network' : photo.told || photo.state,
        photo.state === outbox.QUEUED ? el('button', { type: 'button', class: 'act', onclick: async () => { await device.remove('photos', photo.uuid); await photos(pack, loop); } }, 'Drop') : ''))));
  };

  // ---- the sheet of one loop

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
    el('ol', { class: 'field-steps' }, job.steps.map((step, i) => {
      const id = 'f' + ++fields;
      const name = job.work + '|' + i;
      return el('li', {}, el('input', { type: 'checkbox', id, checked: !!(draft && draft.ticks[name]), onchange: event => {
        const on = event.target.checked;
        save({ ticks: { [name]: on } });
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
    const back = begin(pack, loop);
    back.identity = entry.body.identity;
    entry.body.cells.forEach(cell => { back.cells[cellKey(cell.line, cell.of, cell.column)] = cell.text; });
    await device.put('drafts', back);
    await device.remove('outbox', entry.uuid);
    await show();
  };

  let here = null;
  const entriesAgain = async () => {
    const place = document.getElementById('entries');
    if (!place || !here) return;
    const pack = await device.get('packs', here.pack.key);
    const entries = entriesOf(await device.all('outbox'), here.pack, here.tag);
    place.replaceChildren(...[troubled(pack || here.pack)].filter(Boolean), ...entries.map(entry => receipt(pack || here.pack, entry)));
    await photos(here.pack, { tag: here.tag });
  };

  const newer = (pack, present) => {
    if (!present) return note(`${draft.tag} is not in the newest revision of the pack. What you typed is kept; sent, it waits for somebody’s decision.`, true);
    if (present.hash === draft.loop.hash) return null;
    return el('div', { class: 'complaints' },
      el('p', {}, `The pack was revised after you began this loop (revision ${draft.revision}, now ${pack.state.revision}), and its sheet changed. Below stands the sheet you began on.`),
      el('button', { type: 'button', class: 'act', onclick: async () => {
        const { identity, revision } = pack.state;
        save({ set: { identity, revision, loop: present } });
        await LoopDrafts.settled();
        await show();
      } }, 'Go on with the new sheet; keep what is typed'));
  };

  const sheet = async (pack, tag) => {
    const [entries, drafts] = await Promise.all(['outbox', 'drafts'].map(device.all));
    const present = pack.state.loops.find(loop => loop.tag === tag);
    const own = entriesOf(entries, pack, tag);
    draft = drafts.find(one => one.key === pack.key + '|' + tag) || null;
    const begun = draft !== null;
    if (!draft && present) draft = goOn(begin(pack, present), own);
    const loop = draft ? draft.loop : present;
    here = { pack, tag };
    fields = 0;
    const at = pack.state.loops.findIndex(one => one.tag === tag);
    const next = pack.state.loops[at + 1];
    const closedBy = own.find(entry => entry.state === outbox.QUEUED || (entry.state === 'recorded' && entry.body.cells.some(cell => cell.line === 'outcome' && cell.text === 'done')));
    const again = begun || !closedBy;
    main.replaceChildren(
      el('p', { class: 'trail' }, link('#/', 'Packs'), ' / ', link(packHref(pack), pack.state.pack)),
      el('h1', { class: 'n' }, tag),
      el('p', { class: 'why', 'data-age': '' }, `Revision ${draft ? draft.revision : pack.state.revision}, ${age(pack)}`),
      workerMissing() || '',
      cautions(pack.state),
      el('div', { id: 'entries' }),
      loop && loop.back ? note(`Came back as ${loop.back.outcome}: ${loop.back.who}, ${loop.back.at}. ${loop.back.told}`) : '',
      begun ? newer(pack, present) || '' : '',
      loop ? el('details', { class: 'sheet', open: !begun && !own.length }, el('summary', {}, 'What the pack says'), facts(loop),
        loop.sheet.open.map(one => el('p', {}, one)),
        el('p', {}, link(loop.page, 'Loop’s page'), ' · ', link(loop.bypass, 'Enter a bypass'), ' (need network and a sign-in)')) : '',
      loop && again ? el('details', { class: 'sheet', open: !begun }, el('summary', {}, 'Steps'), steps(pack, loop), el('p', { class: 'why' }, 'Ticks help on this device; they are not sent.')) : '',
      loop && again ? el('div', { 'data-sheet': tag },
        el('p', { class: 'field-jumps' }, [['As found', '[data-stage="as found"]'], ['As left', '[data-stage="as left"]'], ['Done or not', '#finish'], ['Photograph', '#photo']]
          .map(([word, to]) => el('button', { type: 'button', class: 'act', onclick: () => main.querySelector(to).scrollIntoView({ block: 'start' }) }, word))),
        stage(pack, loop, FOUND),
        choices(pack, 'Nothing was touched: as found stands as as left', 'nothing touched', LEFT, ['yes', 'no']),
        stage(pack, loop, LEFT),
        bypass(pack),
        finish(pack, loop)) : '',
      loop ? el('section', { class: 'sheet' }, el('h2', {}, 'Photographs'),
        el('div', { class: 'field' }, el('label', { for: 'photo' }, 'Take or choose one'),
          el('input', { id: 'photo', type: 'file', accept: 'image/*', capture: 'environment', onchange: event => addPhoto(pack, loop, event.target) })),
        el('div', { id: 'photos', class: 'field-photos' })) : '',
      el('p', { class: 'acts' }, next ? link(loopHref(pack, next.tag), `Next: ${next.tag}`) : link(packHref(pack), 'All loops')),
      el('p', { id: 'kept', class: 'why', role: 'status' }));
    if (loop && again) [FOUND, LEFT].forEach(column => sayVerdict(loop, column));
    await entriesAgain();
  };

  // ---- which view

  const show = async () => {
    await LoopDrafts.settled();
    const [, key, tag] = location.hash.match(/^#\/p\/([^/]+)(?:\/l\/(.+))?$/) || [];
    const pack = key ? await device.get('packs', decodeURIComponent(key)) : null;
    if (pack && tag) await sheet(pack, decodeURIComponent(tag));
    else if (pack) await loops(pack);
    else await packs();
    document.title = (pack ? (tag ? decodeURIComponent(tag) : pack.state.pack) : 'Work packs') + ' · Loopwright';
  };

  const start = async () => {
    try {
      LoopDrafts.tell(kept);
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
      navigator.serviceWorker.register('/field/worker.js').catch(failed => kept('This page can’t be kept for later: ' + failed.message));
    }
    await standing();
    await send();
  };
  start();
})();
