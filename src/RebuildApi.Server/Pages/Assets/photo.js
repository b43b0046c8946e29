// A photo is too big to wait on the device like an entry: it is sent at once, or has to be sent again.
const sendPhoto = async (finding, about, file) => {
  if (file.size > data.photoBytes) { heard.textContent = say.photoTooBig; return; }
  const who = signed();
  if (!who) return;
  heard.textContent = say.photoSending;
  try {
    const answer = await fetch(`${here}/attachments?${new URLSearchParams({ person: who.person, finding, note: about.slice(0, 500) })}`,
      { method: 'POST', headers: { 'Content-Type': file.type || 'image/jpeg', 'Idempotency-Key': crypto.getRandomValues(new Uint32Array(4)).join('-') }, body: file });
    const json = await answer.json();
    if (!answer.ok) { heard.textContent = [json.detail, ...(json.errors ?? []).map(e => e.message)].join(' '); return; }
    (data.photos[finding] ??= []).push(json.id);
    heard.textContent = say.photoTaken.replace('{about}', about);
    show();
  } catch { heard.textContent = say.photoAway; }
};
const photos = (finding, about) => [...(data.photos[finding] ?? []).map((id, i) => el('a', { class: 'button', href: `${here}/attachments/${id}`, target: '_blank' }, `${say.photo} ${i + 1}`)),
  el('label', { class: 'button' }, say.photoAdd, el('input', { type: 'file', accept: 'image/jpeg,image/png,image/webp', capture: 'environment', 'aria-label': `${say.photoAdd}: ${about}`,
    onchange: e => { if (e.target.files[0]) sendPhoto(finding, about, e.target.files[0]); } }))];
