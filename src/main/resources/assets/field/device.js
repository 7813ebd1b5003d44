// What the device keeps: packs, what is being typed, the outbox, photographs. All of it lies in one
// database of the browser, so that a closed page or an empty battery loses nothing.
(root => {
  'use strict';

  const NAME = 'loopwright-field';
  const STORES = { packs: 'key', drafts: 'key', outbox: 'uuid', photos: 'uuid' };

  const wait = request => new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });

  let opened = null;
  const open = () => {
    opened = opened || new Promise((done, failed) => {
      const request = root.indexedDB.open(NAME, 1);
      request.onupgradeneeded = () => Object.entries(STORES).forEach(([store, key]) =>
        request.result.createObjectStore(store, { keyPath: key }));
      request.onsuccess = () => {
        request.result.onversionchange = () => request.result.close();
        done(request.result);
      };
      request.onerror = () => failed(request.error);
    });
    return opened;
  };

  const within = async (store, mode, work) => {
    const transaction = (await open()).transaction(store, mode, { durability: 'strict' });
    const result = await work(transaction.objectStore(store));
    if (mode === 'readwrite') {
      await new Promise((done, failed) => {
        transaction.oncomplete = done;
        transaction.onabort = () => failed(transaction.error);
        transaction.onerror = () => failed(transaction.error);
      });
    }
    return result;
  };

  const get = (store, key) => within(store, 'readonly', from => wait(from.get(key)));
  const all = store => within(store, 'readonly', from => wait(from.getAll()));
  const put = (store, value) => within(store, 'readwrite', into => { into.put(value); });
  const remove = (store, key) => within(store, 'readwrite', from => { from.delete(key); });

  /** Changes what is kept under a key in one step, so that two open pages don't undo one another. */
  const change = (store, key, alter) => within(store, 'readwrite', into => {
    const request = into.get(key);
    request.onsuccess = () => {
      const altered = alter(request.result);
      if (altered !== undefined) into.put(altered);
    };
  });

  const uuid = () => {
    if (root.crypto.randomUUID) return root.crypto.randomUUID();
    const bytes = root.crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const hex = [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
    return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
  };

  const key = state => state.register + '-' + state.pack;

  /**
   * Asks the server with a device's token; {status, body}, or null when it can't be reached. An
   * answer that is not ours (a gateway's sign-in page comes with 200) counts as not reached.
   */
  const ask = async (token, path, options = {}) => {
    const control = new AbortController();
    const timer = setTimeout(() => control.abort(), 20000);
    try {
      const answer = await fetch(path, {
        ...options,
        credentials: 'omit',
        cache: 'no-store',
        signal: control.signal,
        headers: { ...options.headers, Authorization: 'Bearer ' + token },
      });
      const body = await answer.json();
      const ours = body && (answer.status === 200 ? body.uuid || body.identity : body.code);
      return ours ? { status: answer.status, body } : null;
    } catch (unreachable) {
      return null;
    } finally {
      clearTimeout(timer);
    }
  };

  /** Keeps a pack as the server tells it now; the outbox and what is typed stay as they are. */
  const keepPack = (token, state) => change('packs', key(state), () => ({
    key: key(state), token, state, fetchedAt: Date.now(), trouble: null,
  }));

  // sheets that the device has already are not sent again; null where one is missing after all
  const whole = (state, before) => {
    const known = new Map(before ? before.state.loops.map(loop => [loop.tag + loop.hash, loop]) : []);
    const loops = state.loops.map(loop => {
      const held = loop.sheet ? loop : known.get(loop.tag + loop.hash);
      return held ? { ...loop, sheet: held.sheet, profile: held.profile } : null;
    });
    return loops.includes(null) ? null : { ...state, loops };
  };

  /** The pack as the server tells it now; answers as ask does. */
  const pack = async (token, before) => {
    const have = before ? '?have=' + encodeURIComponent(before.state.identity) : '';
    const answer = await ask(token, '/api/field/pack' + have);
    if (!answer || answer.status !== 200) return answer;
    const state = whole(answer.body, before);
    return state ? { status: 200, body: state } : pack(token, null);
  };

  root.LoopDevice = { get, all, put, remove, change, uuid, key, ask, keepPack, pack };
})(globalThis);
