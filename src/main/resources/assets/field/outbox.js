// Brings what waits in the outbox to the server, once, whenever it can be reached.
(root => {
  'use strict';

  const device = root.LoopDevice;
  const QUEUED = 'queued';

  /** Puts a loop into the outbox; what was typed stays beside it until the server has it. */
  const enqueue = async (pack, draft, confirmed) => {
    const uuid = device.uuid();
    const cells = Object.entries(draft.cells)
      .filter(([, text]) => !['', '-'].includes(text.trim()))
      .map(([name, text]) => {
        const [line, of, column] = name.split('|');
        return { line, of, column, text };
      });
    await device.put('outbox', {
      uuid,
      pack: pack.key,
      tag: draft.tag,
      loop: draft.loop,
      createdAt: Date.now(),
      state: QUEUED,
      told: [],
      at: '',
      tries: 0,
      body: {
        uuid,
        tag: draft.tag,
        identity: draft.identity,
        asOf: draft.asOf,
        typedAt: new Date().toISOString(),
        confirmed,
        cells,
      },
    });
    await device.remove('drafts', draft.key);
  };

  const settle = (uuid, told) => device.change('outbox', uuid, entry =>
    entry && Object.assign(entry, told, { tries: entry.tries + 1 }));

  // of a pack that was taken along anew meanwhile nothing old is to be told
  const tell = (pack, told) => device.change('packs', pack.key, kept =>
    (kept && kept.token === pack.token ? Object.assign(kept, told) : undefined));

  // what an answer means for one entry; false when there is no use in going on
  const entrySent = async (pack, entry, answer) => {
    if (answer === null || answer.status >= 500) {
      await settle(entry.uuid, answer ? { told: [answer.body.message || 'The server could not take it now.'] } : {});
      return false;
    }
    if (answer.status === 401) {
      await tell(pack, { trouble: answer.body.message });
      return false;
    }
    if (answer.status === 200 && answer.body.uuid === entry.uuid) {
      await settle(entry.uuid, { state: answer.body.state, told: answer.body.told, at: answer.body.at });
    } else {
      await settle(entry.uuid, { state: 'refused', told: [answer.body.message || 'Refused.'] });
    }
    return true;
  };

  const sendEntries = async pack => {
    const waiting = (await device.all('outbox'))
      .filter(entry => entry.pack === pack.key && entry.state === QUEUED)
      .sort((a, b) => a.createdAt - b.createdAt);
    for (const entry of waiting) {
      const answer = await device.ask(pack.token, '/api/field/entries', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(entry.body),
      });
      if (!await entrySent(pack, entry, answer)) return answer !== null;
    }
    return true;
  };

  const sendPhotos = async pack => {
    const waiting = (await device.all('photos')).filter(photo => photo.pack === pack.key && photo.state === QUEUED);
    for (const photo of waiting) {
      const path = `/api/field/photos/${photo.uuid}?loop=${encodeURIComponent(photo.tag)}&name=${encodeURIComponent(photo.name)}`;
      const answer = await device.ask(pack.token, path, {
        method: 'POST', headers: { 'Content-Type': 'image/jpeg' }, body: photo.picture,
      });
      if (answer === null || answer.status >= 500 || answer.status === 401) return;
      await device.change('photos', photo.uuid, kept => kept && Object.assign(kept, answer.status === 200
        ? { state: 'sent', picture: null } : { state: 'refused', told: answer.body.message }));
    }
  };

  // decisions that somebody took about entries that waited come back with the pack
  const refresh = async pack => {
    const answer = await device.pack(pack.token, pack);
    if (answer === null) return false;
    if (answer.status === 401) await tell(pack, { trouble: answer.body.message });
    if (answer.status !== 200) return true;
    await tell(pack, { state: answer.body, fetchedAt: Date.now(), trouble: null });
    for (const told of answer.body.entries) {
      await device.change('outbox', told.uuid, entry =>
        entry && Object.assign(entry, { state: told.state, told: told.told, at: told.at }));
    }
    return true;
  };

  const sendAll = async () => {
    let reached = null;
    for (const pack of await device.all('packs')) {
      if (reached === false) break;
      reached = await sendEntries(pack);
      if (reached) {
        await sendPhotos(pack);
        reached = await refresh(pack);
      }
    }
    return reached;
  };

  let running = null;

  /** Sends and asks anew; true when the server was reached, false when not, null without a pack. */
  const sync = () => {
    const locked = root.navigator.locks
      ? () => root.navigator.locks.request('loopwright-outbox', sendAll) : sendAll;
    running = running || locked().finally(() => { running = null; });
    return running;
  };

  root.LoopOutbox = { enqueue, sync, QUEUED };
})(globalThis);
