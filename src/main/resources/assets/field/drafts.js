// What is being typed. Each keystroke is noted at once where a closing page can't lose it
// (localStorage, which waits for nobody) and moved into the device's database, which holds all of
// it; a note goes when the database has it. Cells are merged one by one, so that two open pages of
// one loop don't undo one another.
(root => {
  'use strict';

  const device = root.LoopDevice;
  const PREFIX = 'loopwright-field-note|';
  const page = device.uuid();
  const pending = new Map();
  let running = null;

  /** Says how it stands, at the foot of the page that is shown. */
  const say = sentence => {
    const place = document.getElementById('kept');
    if (place) place.textContent = sentence;
  };

  const noteName = key => PREFIX + page + '|' + key;

  const note = (key, change) => {
    try {
      root.localStorage.setItem(noteName(key), JSON.stringify(change));
    } catch (full) {
      // the database is what counts; it says so itself when it can't
    }
  };

  const merge = (into, patch) => {
    Object.assign(into.cells, patch.cells);
    Object.assign(into.ticks, patch.ticks);
    Object.assign(into, patch.set);
  };

  const flush = async () => {
    while (pending.size) {
      const [key, change] = pending.entries().next().value;
      pending.delete(key);
      await device.change('drafts', key, before => {
        const now = before || change.base;
        merge(now, change.patch);
        now.updatedAt = Date.now();
        return now;
      }).catch(failed => {
        say('NOT kept: ' + (failed && failed.message) + ' Write it on paper too.');
        throw failed;
      });
      if (!pending.has(key)) root.localStorage.removeItem(noteName(key));
    }
    say('Kept on this device.');
  };

  const run = () => {
    running = running || flush().catch(() => {}).finally(() => { running = null; });
    return running;
  };

  /** Keeps changed cells, ticks or other fields of a draft; base is what it begins as. */
  const write = (base, patch) => {
    const before = pending.get(base.key);
    const change = before || { base, patch: { cells: {}, ticks: {}, set: {} } };
    ['cells', 'ticks', 'set'].forEach(part => Object.assign(change.patch[part], patch[part]));
    pending.set(base.key, change);
    note(base.key, change);
    say('Keeping …');
    run();
  };

  /** Everything written so far is in the database. */
  const settled = async () => { while (running || pending.size) await run(); };

  /** Notes of pages that were closed before the database had them. */
  const recover = async () => {
    const names = Object.keys(root.localStorage).filter(name => name.startsWith(PREFIX));
    for (const name of names) {
      const { base, patch } = JSON.parse(root.localStorage.getItem(name));
      write(base, patch);
      await settled();
      root.localStorage.removeItem(name);
    }
  };

  root.LoopDrafts = { write, settled, recover, say };
})(globalThis);
