// A curve judged on the device as the program judges it. A test holds this file against the
// program's own analysis over many curves; change both or neither.
(root => {
  'use strict';

  const FEWEST = 3;
  const TOLERANCE = 0.05;
  const HAIR = 1e-9;
  const INCLUSIVE = 1e-9;
  const WIDE_STEP_BONUS = 1e-3;
  const START_OFF_GRID = 1e-5;
  const LOWEST_VOLTS = -30;
  const LOWEST_ON_24_VOLTS = -23.5;
  const CONFORMS = 'conforms';
  const DOES_NOT = 'does not conform';
  const NOT_JUDGED = 'not judged';
  const word = conforms => (conforms ? CONFORMS : DOES_NOT);

  // a number as people type it: decimal point or comma, any minus; NaN when it isn't one beyond doubt
  const NUMBER = /^[+-]?(\d{1,15}([.,]\d{0,30})?|[.,]\d{1,30})([eE][+-]?\d{1,3})?$/;
  const number = text => {
    const cleaned = String(text).trim().replace(/[\u2212\u2013]/, '-');
    return NUMBER.test(cleaned) ? Number(cleaned.replace(',', '.')) : NaN;
  };

  const lattice = grid => {
    const reach = TOLERANCE * grid.step + HAIR * grid.step;
    return {
      from: grid.from,
      step: grid.step,
      tolerance: TOLERANCE * grid.step,
      holds: gap => gap >= grid.from - reach && gap <= grid.to + reach,
      isWhole: width => Math.abs(width - grid.step) <= reach,
      isCoveredBy: (from, to) => from <= grid.from + reach && to >= grid.to - reach,
    };
  };

  const worth = (on, width) => {
    if (on.isWhole(width)) return 1 - WIDE_STEP_BONUS * Math.abs(width - on.step) / on.tolerance;
    return width > on.step ? WIDE_STEP_BONUS : -Infinity;
  };

  // which readings are judged: one increment apart, as many as possible
  const best = (gaps, on, inside) => {
    const score = [];
    const before = [];
    let top = 0;
    inside.forEach((place, to) => {
      score[to] = -START_OFF_GRID * Math.abs(gaps[place] - on.from) / on.step;
      before[to] = -1;
      for (let from = 0; from < to; from++) {
        const candidate = score[from] + worth(on, gaps[place] - gaps[inside[from]]);
        if (candidate > score[to]) {
          score[to] = candidate;
          before[to] = from;
        }
      }
      if (score[to] > score[top]) top = to;
    });
    const chain = [];
    for (let at = top; at >= 0; at = before[at]) chain.unshift(inside[at]);
    return chain;
  };

  const chainOf = (gaps, grid) => {
    const on = lattice(grid);
    const inside = gaps.map((gap, i) => i).filter(i => on.holds(gaps[i]));
    const wholeSteps = chain =>
      chain.filter((place, i) => i > 0 && on.isWhole(gaps[place] - gaps[chain[i - 1]])).length;
    const found = inside.length ? best(gaps, on, inside) : [];
    const fits = wholeSteps(found) > 0 && found.length >= FEWEST;
    const members = fits ? found : inside;
    return { on, members, inside: inside.length, wholeSteps: wholeSteps(members) };
  };

  const gridFor = (runs, profile) => {
    let chosen = null;
    let most = -1;
    profile.grids.forEach(grid => {
      const chains = runs.map(run => chainOf(run.map(reading => reading.um), grid));
      if (chains.some(chain => chain.inside < FEWEST)) return;
      const steps = chains.reduce((sum, chain) => sum + chain.wholeSteps, 0);
      const own = grid.unit === profile.unit;
      if (steps > most || (steps === most && own)) {
        most = steps;
        chosen = grid;
      }
    });
    return chosen;
  };

  const shift = (residuals, rule) => {
    if (rule === 'mean deviation zero') return residuals.reduce((a, b) => a + b, 0) / residuals.length;
    const least = Math.min(...residuals);
    return least + (Math.max(...residuals) - least) / 2;
  };

  const judgeRun = (readings, grid, profile) => {
    const gaps = readings.map(reading => reading.um);
    const volts = readings.map(reading => reading.volts);
    const { on, members, wholeSteps } = chainOf(gaps, grid);
    const residual = i => gaps[i] + 1000 * volts[i] / profile.slope;
    const zero = shift(members.map(residual), profile.shiftRule);
    const isf = (from, to) => 1000 * (volts[from] - volts[to]) / (gaps[to] - gaps[from]);
    const isfConforms = value =>
      value >= profile.isfLowest * (1 - INCLUSIVE) && value <= profile.isfHighest * (1 + INCLUSIVE);
    const steps = [];
    members.forEach((to, i) => {
      if (i === 0) return;
      const from = members[i - 1];
      if (on.isWhole(gaps[to] - gaps[from])) {
        const value = isf(from, to);
        steps.push({ from: gaps[from], to: gaps[to], isf: value, conforms: isfConforms(value) });
      }
    });
    const points = members.map(i => ({ um: gaps[i], deviation: residual(i) - zero }));
    const maxDsl = Math.max(...points.map(point => Math.abs(point.deviation)));
    const first = members[0];
    const last = members[members.length - 1];
    const complete = on.isCoveredBy(gaps[first], gaps[last]) && wholeSteps === members.length - 1;
    const isfVerdict = steps.length ? word(steps.every(step => step.conforms)) : NOT_JUDGED;
    const dslVerdict = word(maxDsl <= profile.dslLimit * (1 + INCLUSIVE));
    let worst = null;
    steps.forEach(step => {
      const off = Math.abs(step.isf - profile.slope);
      if (worst === null || off > Math.abs(worst.isf - profile.slope)) worst = step;
    });
    return {
      points,
      steps,
      complete,
      asf: isf(first, last),
      maxDsl,
      worstIsfPercent: worst === null ? null : 100 * (worst.isf - profile.slope) / profile.slope,
      isfVerdict,
      dslVerdict,
      verdict: word(complete && isfVerdict === CONFORMS && dslVerdict === CONFORMS),
    };
  };

  const badness = (run, profile) => {
    const half = profile.isfHighest - profile.slope;
    const isf = run.worstIsfPercent === null
      ? 0 : Math.abs(run.worstIsfPercent) / 100 * profile.slope / half;
    const dsl = run.maxDsl / profile.dslLimit;
    return (run.verdict === CONFORMS ? 0 : 1e9) + Math.min(Math.max(isf, dsl), 1e8);
  };

  /**
   * Judges one or two runs.
   *
   * readings: [{um, text, down}], text as typed; profile: slope, isfLowest, isfHighest (mV/µm),
   * dslLimit (µm), shiftRule, unit of the gaps typed, grids [{unit, from, to, step}] in µm.
   * Answers {problems, questions, runs, verdict, …} with the worse run's values at the top; runs is
   * empty where too little can be read.
   */
  const analyse = (profile, readings) => {
    const problems = [];
    const questions = [];
    const read = [];
    readings.filter(reading => String(reading.text).trim() !== '').forEach(reading => {
      const value = number(reading.text);
      if (Number.isNaN(value)) {
        problems.push(`'${reading.text}' is no number.`);
      } else if (Math.abs(value) > -LOWEST_VOLTS) {
        problems.push(`${reading.text} V can't be: a driver gives no more than 30 V. Volts or millivolts?`);
      } else {
        read.push({ um: reading.um, volts: 0 - Math.abs(value), sign: Math.sign(value), down: !!reading.down });
      }
    });
    const positive = read.filter(reading => reading.sign > 0).length;
    const negative = read.filter(reading => reading.sign < 0).length;
    if (positive && negative) problems.push('Some voltages are typed with a minus and some without. Type all in one way.');
    else if (positive) questions.push('Voltages are typed without their minus; they are taken as negative.');
    read.filter(reading => reading.volts < LOWEST_ON_24_VOLTS).forEach(reading =>
      questions.push(`${reading.volts} V is more than a 24 V supply can give. Is it right?`));
    const runs = [false, true]
      .map(down => read.filter(reading => reading.down === down).sort((a, b) => a.um - b.um))
      .filter(run => run.length);
    const answer = { problems, questions, runs: [], verdict: NOT_JUDGED, read: read.length };
    if (problems.length || !runs.length || runs.some(run => run.length < FEWEST)) return answer;
    const grid = gridFor(runs, profile);
    if (grid === null) return answer;
    answer.runs = runs.map(run => judgeRun(run, grid, profile));
    let worse = answer.runs[0];
    answer.runs.forEach(run => { if (badness(run, profile) > badness(worse, profile)) worse = run; });
    const { isfVerdict, dslVerdict, verdict, maxDsl, worstIsfPercent, asf, complete } = worse;
    return Object.assign(answer, { isfVerdict, dslVerdict, verdict, maxDsl, worstIsfPercent, asf, complete });
  };

  root.LoopVerdict = { analyse, number };
})(globalThis);
