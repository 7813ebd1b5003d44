// What is typed for one loop: fields that keep every keystroke, the verdict while typing, and what
// is still lacking before the loop can go into the outbox.
(root => {
  'use strict';

  const { el, verdict, note, now } = LoopShow;
  const main = document.getElementById('main');
  const FOUND = 'as found';
  const LEFT = 'as left';
  let draft = null;

  /** From here on fields show and change that draft. */
  const use = one => { draft = one; fields = 0; };


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

  const save = patch => {
    const base = { ...draft, cells: { ...draft.cells }, ticks: { ...draft.ticks } };
    Object.assign(draft.cells, patch.cells);
    Object.assign(draft.ticks, patch.ticks);
    Object.assign(draft, patch.set);
    LoopDrafts.write(base, patch);
  };

  const write = (line, of, column, text) => save({ cells: { [cellKey(line, of, column)]: text } });

  const stamp = (pack, column) => {
    [['measured at', now(pack)], ['done by', pack.state.device.person]].forEach(([line, text]) => {
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
        if (about.focus) once(event.target);
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

  // who types the minus that stood there already, means one
  const once = input => {
    const text = input.value.replace(/^\s*[-\u2212\u2013]\s*(?=[-\u2212\u2013])/, '');
    if (text !== input.value) input.value = text;
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


  const questions = loop => [FOUND, LEFT].flatMap(column => judged(loop, column).questions.map(one => `${column}: ${one}`));

  // a record of what stands under the site's procedure, sent with the loop
  const bypass = pack => el('details', { class: 'sheet', open: pack.state.bypassCells.some(cell => typed(cell.line, cell.of, cell.column)) },
    el('summary', {}, 'Bypass that stood for this work'),
    el('p', { class: 'why' }, 'A record only, never a permission. It goes into the bypass log with this loop; a second person proves there that it is off.'),
    pack.state.bypassCells.map(cell => field(pack, cell.of[0].toUpperCase() + cell.of.slice(1), cell.line, cell.of, cell.column,
      cell.line === 'bypass' ? {} : { mono: true, hint: '2026-03-14 09:40' })));

  const begun = loop => [FOUND, LEFT].forEach(column => sayVerdict(loop, column));

  root.LoopForm = { FOUND, LEFT, use, begin, goOn, cellKey, save, field, choices, stage, bypass, lacking, questions, begun };
})(globalThis);
