// Photographs: made small, kept on the device, sent when the server can be reached.
(root => {
  'use strict';

  const { el, clock } = LoopShow;
  const device = LoopDevice;
  const QUEUED = LoopOutbox.QUEUED;

  const MOST = 1600;
  const shrunk = async (file, most, quality) => {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, most / Math.max(picture.width, picture.height));
    const canvas = el('canvas', { width: Math.round(picture.width * scale), height: Math.round(picture.height * scale) });
    canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
    return { canvas, blob: await new Promise(done => canvas.toBlob(done, 'image/jpeg', quality)) };
  };

  const add = async (pack, loop, input, after) => {
    for (const file of input.files) {
      try {
        const large = await shrunk(file, MOST, 0.82);
        const small = await shrunk(file, 160, 0.7);
        await device.put('photos', {
          uuid: device.uuid(), pack: pack.key, tag: loop.tag, state: QUEUED, createdAt: Date.now(),
          name: `${loop.tag.replace(/[^A-Za-z0-9-]/g, '_')} ${clock(Date.now(), pack.state.zone).replaceAll(':', '.')}.jpg`,
          picture: large.blob, small: small.canvas.toDataURL('image/jpeg', 0.7),
        });
      } catch (unreadable) {
        LoopDrafts.say(`The picture ${file.name} can’t be read by this browser; nothing of it is kept.`);
      }
    }
    input.value = '';
    await show(pack, loop);
    after();
  };

  const show = async (pack, loop) => {
    const place = document.getElementById('photos');
    if (!place) return;
    const own = (await device.all('photos')).filter(one => one.pack === pack.key && one.tag === loop.tag);
    place.replaceChildren(...own.map(photo => el('figure', { 'data-photo': photo.state },
      el('img', { src: photo.small, alt: photo.name }),
      el('figcaption', { class: 'why' }, photo.state === 'sent' ? 'sent' : photo.state === QUEUED ? 'waits for network' : photo.told || photo.state,
        photo.state === QUEUED ? el('button', { type: 'button', class: 'act', onclick: async () => { await device.remove('photos', photo.uuid); await show(pack, loop); } }, 'Drop') : ''))));
  };

  const section = (pack, loop, after) => el('section', { class: 'sheet' }, el('h2', {}, 'Photographs'),
    el('div', { class: 'field' }, el('label', { for: 'photo' }, 'Take or choose one'),
      el('input', { id: 'photo', type: 'file', accept: 'image/*', capture: 'environment', onchange: event => add(pack, loop, event.target, after) })),
    el('div', { id: 'photos', class: 'field-photos' }));

  root.LoopPhotos = { section, show };
})(globalThis);
