// Takes a pack along: asks for a token, keeps it and the pack on this device, makes sure that the
// page opens without network, and goes there.
(() => {
  'use strict';

  const form = document.querySelector('[data-take-along]');
  const says = document.getElementById('take-along-says');
  if (!form || !says) return;
  const say = (sentence, wrong) => {
    says.textContent = sentence;
    says.className = wrong ? 'notice wrong' : 'notice';
    says.hidden = false;
  };

  if (!('serviceWorker' in navigator)) document.querySelector('[data-no-worker]').hidden = false;
  form.hidden = false;

  const keepPage = async () => {
    if (!('serviceWorker' in navigator)) return;
    await navigator.serviceWorker.register('/field/worker.js', { scope: '/field/' });
    const registration = await navigator.serviceWorker.getRegistration('/field/');
    const worker = registration.installing || registration.waiting || registration.active;
    if (worker.state === 'activated') return;
    await new Promise((done, failed) => worker.addEventListener('statechange', () => {
      if (worker.state === 'activated') done();
      if (worker.state === 'redundant') failed(new Error('the browser dropped it'));
    }));
  };

  // a device that holds this pack already gives up its old token
  const held = async () => {
    const number = form.dataset.takeAlong;
    const packs = await LoopDevice.all('packs');
    return (packs.find(pack => pack.state.pack === number) || {}).token || '';
  };

  const take = async () => {
    const fields = new URLSearchParams(new FormData(form));
    fields.set('replaces', await held());
    const answer = await fetch(form.action, {
      method: 'POST',
      headers: { 'X-Csrf-Token': form.elements.csrf.value },
      body: fields,
    });
    const taken = await answer.json();
    if (!answer.ok) throw new Error(taken.message);
    const pack = await LoopDevice.pack(taken.token, null);
    if (!pack || pack.status !== 200) throw new Error((pack && pack.body.message) || 'The pack could not be fetched.');
    await LoopDevice.keepPack(taken.token, pack.body);
    if (navigator.storage && navigator.storage.persist) await navigator.storage.persist().catch(() => false);
    await keepPage();
    window.location.assign('/field/#/p/' + encodeURIComponent(LoopDevice.key(pack.body)));
  };

  form.addEventListener('submit', async event => {
    event.preventDefault();
    const button = form.querySelector('button');
    button.disabled = true;
    say('Taking it along …');
    try {
      await take();
    } catch (failed) {
      say(failed.message, true);
    } finally {
      button.disabled = false;
    }
  });
})();
