// The camera of the scan check; without one, or without this script, labels are typed or photographed.
(() => {
  'use strict';

  const box = document.querySelector('[data-scan-camera]');
  const add = document.getElementById('add');
  if (!box || !add || !navigator.mediaDevices || !navigator.mediaDevices.getUserMedia) return;

  const start = box.querySelector('[data-scan-start]');
  const stop = box.querySelector('[data-scan-stop]');
  const video = box.querySelector('video');
  const says = box.querySelector('[role=status]');
  const remembered = 'loopwright-scan-camera';
  let stream = null;
  box.hidden = false;

  const token = () => JSON.parse(document.body.getAttribute('hx-headers') || '{}');

  // browsers that find codes themselves do so; for the others the server looks at a small picture
  const finder = async () => {
    if (!('BarcodeDetector' in window)) return byServer;
    const formats = await window.BarcodeDetector.getSupportedFormats();
    if (!formats.includes('qr_code')) return byServer;
    const wanted = ['qr_code', 'data_matrix', 'code_128', 'code_39'];
    const detector = new window.BarcodeDetector({ formats: wanted.filter(one => formats.includes(one)) });
    return async () => {
      const found = await detector.detect(video);
      return found.length ? found[0].rawValue : '';
    };
  };

  const byServer = async () => {
    const canvas = document.createElement('canvas');
    const less = Math.min(1, 800 / Math.max(video.videoWidth, video.videoHeight));
    canvas.width = Math.round(video.videoWidth * less);
    canvas.height = Math.round(video.videoHeight * less);
    canvas.getContext('2d').drawImage(video, 0, 0, canvas.width, canvas.height);
    const picture = await new Promise(done => canvas.toBlob(done, 'image/jpeg', 0.8));
    const answer = await fetch('/scan/frame', { method: 'POST', body: picture, headers: { ...token(), 'Content-Type': 'image/jpeg' } });
    if (!answer.ok) throw new Error('The server does not answer. Reload the page, or type the serial.');
    return answer.status === 200 ? answer.text() : '';
  };

  const end = () => {
    if (stream) stream.getTracks().forEach(track => track.stop());
    stream = null;
    video.hidden = stop.hidden = true;
    start.hidden = false;
  };

  const look = async () => {
    try {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment', width: { ideal: 1280 } } });
      video.srcObject = stream;
      video.hidden = stop.hidden = false;
      start.hidden = true;
      says.textContent = 'Hold the label so that its code fills half of the picture.';
      await video.play();
      const find = await finder();
      while (stream) {
        const text = video.videoWidth ? await find() : '';
        // the label just taken is still in the picture while the person reads
        if (text && text === sessionStorage.getItem(remembered)) says.textContent = 'That one is taken. Show the next label.';
        else if (text && stream) {
          sessionStorage.setItem(remembered, text);
          end();
          add.value = text;
          add.form.requestSubmit();
          return;
        }
        await new Promise(done => setTimeout(done, 150));
      }
    } catch (failed) {
      sessionStorage.removeItem(remembered);
      end();
      says.textContent = failed.name === 'NotAllowedError'
        ? 'The browser does not give the camera to this page. Type the serial, or take a picture.'
        : failed.name === 'NotFoundError' ? 'No camera was found. Type the serial.' : failed.message;
    }
  };

  start.addEventListener('click', () => { sessionStorage.removeItem(remembered); look(); });
  stop.addEventListener('click', () => { sessionStorage.removeItem(remembered); end(); says.textContent = ''; });
  window.addEventListener('pagehide', end);

  // who scans with the camera goes on with it until all parts are there
  if (sessionStorage.getItem(remembered) && document.querySelector('.scan-answer.pending')) look();
})();
