const here = '/v1/units/' + encodeURIComponent(data.unit.id);
const view = document.getElementById('part'), list = document.getElementById('parts'), ask = document.getElementById('ask'), heard = document.getElementById('heard');
const person = document.getElementById('person'), bench = document.getElementById('bench'), gauge = document.getElementById('gauge');
remembered('person', person); remembered('bench', bench); remembered('gauge', gauge);
let unitOfLength = localStorage.getItem('rebuild.unit') ?? 'mm', current = '', supersedes = {}, newest = 0;
const places = [...data.parts.map(p => ({ id: p.s, name: p.n, group: p.g, part: p })), ...data.trials.map(t => ({ id: t.i, name: t.n, group: t.g, trial: t }))];
const missingAt = id => data.missing.filter(m => m[0] === id);
const isOpen = place => place.trial ? !data.tried.includes(place.id) : missingAt(place.id).length > 0;
const firstOpen = () => (places.find(p => p.part && isOpen(p)) ?? places.find(isOpen) ?? places[0])?.id ?? '';
const outcome = (o, more) => el('span', { class: 'o o-' + o }, say['o-' + o] + (more ? ': ' + more : ''));
const time = () => new Date().toISOString();
const signed = () => {
  for (const field of [person, bench]) {
    if (!field.value.trim()) { field.focus(); heard.textContent = say.whoFirst; return null; }
  }
  return { person: person.value.trim(), bench: bench.value.trim(), time: time() };
};
const number = /^-?(0|[1-9][0-9]*)(\.[0-9]+)?$/;
const read = (text, unit) => {
  const t = text.trim().replace(',', '.');
  if (/^tight$/i.test(t)) return { tight: true };
  const bound = /^(>=|<=)\s*(.+)$/.exec(t);
  const plain = (bound ? bound[2] : t).replace(/^\./, '0.');
  if (!number.test(plain)) return null;
  return bound ? { [bound[1] === '>=' ? 'atLeast' : 'atMost']: { value: new Typed(plain), unit } } : { value: new Typed(plain), unit };
};
// Both units of measure are shown beside what is typed; this is for the eye only, what was typed is what is sent.
const both = (text, unit) => {
  const v = parseFloat(text.replace(',', '.').replace(/^[<>=\s]+/, ''));
  if (!Number.isFinite(v) || (unit !== 'mm' && unit !== 'in')) return '';
  return unit === 'mm' ? `${text.trim()} mm = ${(v / 25.4).toFixed(5)} in` : `${text.trim()} in = ${(v * 25.4).toFixed(4)} mm`;
};
const sentFinding = (place, what, about) => {
  const who = signed();
  if (!who) return;
  const finding = { position: place, ...what };
  const subject = what.attribute ? place + '/' + what.attribute.id : place;
  if (supersedes[subject]) { finding.supersedes = supersedes[subject]; delete supersedes[subject]; }
  queue.add(here + '/findings', { ...who, findings: [finding] }, about, { at: place });
  (data.seen[place] ??= []).push([null, about]);
  data.missing = data.missing.filter(m => !(m[0] === place && (what.attribute ? m[2] === what.attribute.id : m[1] === 'inspection')));
  show('next');
};
const unitSwitch = redraw => el('div', { class: 'row', role: 'group', 'aria-label': say.unitOfMeasure }, ['mm', 'in'].map(u =>
  el('button', { type: 'button', 'aria-pressed': String(unitOfLength === u), onclick: () => { unitOfLength = u; localStorage.setItem('rebuild.unit', u); redraw(u); } }, u)));
const readingForm = (open, label, limits, unit, count, known, send) => {
  const isLength = unit === 'mm';
  const echo = el('p', { class: 'echo', 'aria-live': 'polite' });
  const id = 'r' + (newest++);
  const inputs = Array.from({ length: Math.max(1, count) }, (_, i) => el('input', { class: 'reading', id: id + i, inputmode: 'decimal', autocomplete: 'off', 'aria-label': label + ' ' + (i + 1) }));
  const now = () => isLength ? unitOfLength : unit;
  const echoAll = () => { echo.textContent = inputs.map(x => x.value ? both(x.value, now()) : '').filter(Boolean).join(' · '); };
  inputs.forEach(x => x.addEventListener('input', echoAll));
  const units = isLength ? unitSwitch(u => { units.querySelectorAll('button').forEach(b => b.setAttribute('aria-pressed', String(b.textContent === u))); echoAll(); }) : el('span', { class: 'big' }, unit);
  return el('form', { class: 'card', 'data-open': open, onsubmit: event => {
    event.preventDefault();
    const filled = inputs.filter(x => x.value.trim());
    const readings = filled.map(x => read(x.value, now()));
    const wrong = readings.findIndex(r => !r);
    if (!filled.length || wrong >= 0) { heard.textContent = say.numberFirst; (filled[wrong] ?? inputs[0]).focus(); return; }
    send(readings, filled.map(x => x.value.trim()).join(', ') + ' ' + now());
  } }, el('fieldset', {}, el('legend', {}, label), el('p', { class: 'soft' }, limits), known ? el('p', {}, say.readAlready, ' ', known) : null,
    el('div', { class: 'row' }, inputs, units, el('button', { class: 'main' }, say.keep)), echo));
};
const limitsOf = (part, row) => {
  const [low, high] = (part.l ?? {})[row.i] ?? [row.lo, row.hi];
  const two = v => row.u === 'mm' ? `${v} mm (${(v / 25.4).toFixed(4)} in)` : `${v} ${row.u}`;
  return low && high ? `${say.limits} ${two(low)} ${say.to} ${two(high)}` : low ? `${say.atLeast} ${two(low)}` : high ? `${say.atMost} ${two(high)}` : say.noLimits;
};
const condition = (part, kind, open) => {
  let extent = 'moderate';
  const extents = el('div', { class: 'row', role: 'group', 'aria-label': say.extent }, ['slight', 'moderate', 'severe'].map(x =>
    el('button', { type: 'button', 'aria-pressed': String(x === extent), onclick: e => { extent = x; [...e.currentTarget.parentNode.children].forEach(b => b.setAttribute('aria-pressed', String(b === e.currentTarget))); } }, say['x-' + x])));
  const where = el('input', { id: 'where', autocomplete: 'off' });
  return el('section', { class: 'card', 'data-open': open }, el('h3', {}, say.condition),
    el('div', { class: 'row' }, el('button', { type: 'button', class: 'main', onclick: () => sentFinding(part.s, { sound: true }, part.n + ': ' + say.sound) }, say.sound)),
    kind.d.length ? el('div', { class: 'stack' }, el('h3', {}, say.orDamage), extents, el('div', {}, el('label', { for: 'where' }, say.where), where),
      el('div', { class: 'row' }, kind.d.map(d => el('button', { type: 'button', onclick: () => {
        const damage = { class: d, extent };
        if (where.value.trim()) damage.place = where.value.trim();
        sentFinding(part.s, { damage }, `${part.n}: ${d} ${say['x-' + extent]}`);
      } }, d.replaceAll('-', ' ')))),
      el('p', { class: 'soft' }, say.classesFrom)) : null);
};
const attribute = (part, row, open) => el('fieldset', { class: 'card', 'data-open': open }, el('legend', {}, row.q), el('div', { class: 'row' }, row.c.map(c =>
  el('button', { type: 'button', onclick: () => sentFinding(part.s, { attribute: { id: row.i, value: c[0] } }, `${part.n}: ${row.q} ${c[1]}`) }, c[1]))));
const reading = (part, row, open) => readingForm(open, row.q, limitsOf(part, row), row.u, row.k, data.read[part.s + '/' + row.i], (readings, text) => {
  const who = signed();
  if (!who) return;
  const at = part.s + '/' + row.i, about = `${part.n}: ${row.q} ${text}`;
  const measurement = { at, readings };
  if (supersedes[at]) { measurement.supersedes = supersedes[at]; delete supersedes[at]; }
  if (gauge.value) measurement.instrument = gauge.value;
  queue.add(here + '/measurements', { ...who, measurements: [measurement] }, about, { at: part.s, reading: at });
  data.read[at] = text;
  data.missing = data.missing.filter(m => !(m[0] === part.s && m[2] === row.i));
  show('next');
});
const trial = t => {
  const pieces = t.p.map((p, i) => [p, el('select', { id: 'piece' + i }, p[1].map(m => el('option', { value: m[0] }, `${m[0]}: ${m[1]}`)))]);
  const form = readingForm(!data.tried.includes(t.i), say.gap, `${say.window} ${t.w}`, 'mm', 3, data.read[t.i], (readings, text) => {
    const who = signed();
    if (!who) return;
    const one = { clearance: t.i, readings, person: who.person, bench: who.bench, time: who.time };
    if (pieces.length) one.pieces = pieces.map(([p, s]) => ({ position: p[0], member: s.value }));
    if (supersedes[t.i]) { one.supersedes = supersedes[t.i]; delete supersedes[t.i]; }
    if (gauge.value) one.instrument = gauge.value;
    queue.add(here + '/trials', one, `${t.n}: ${text}`, { at: t.i, reading: t.i });
    data.read[t.i] = text; data.tried.push(t.i);
    show('next');
  });
  return [el('p', {}, say.tryWords), ...pieces.map(([p, s], i) => el('div', { class: 'card' }, el('label', { for: 'piece' + i }, say.pieceAt + ' ' + p[2]), s)), form];
};
const seenAlready = place => (data.seen[place] ?? []).length ? el('ul', {}, data.seen[place].map(([id, text, sort, attribute]) => el('li', {}, text, ' ',
  id ? el('button', { type: 'button', onclick: () => { supersedes[sort === 'a' ? place + '/' + attribute : place] = id; heard.textContent = say.correctNow.replace('{what}', text); } }, say.correct) : null))) : null;
const verdict = place => { const s = data.state[place]; return s ? el('p', { class: 'big' }, outcome(s.o, s.d ? say['d-' + s.d] : ''), s.t ? el('span', { class: 'soft' }, ' ' + s.t) : null) : null; };
// Whatever has the focus keeps it when the page is written anew, so that nobody who works by keyboard is thrown back to its top.
const named = e => e.tagName + (e.getAttribute('aria-label') ?? e.textContent);
function show(focus) {
  const held = view.contains(document.activeElement) ? named(document.activeElement) : null;
  const at = places.findIndex(p => p.id === current), place = places[at];
  if (!place) return;
  const open = new Set(missingAt(place.id).map(m => m[2]));
  const order = rows => [...rows].sort((a, b) => open.has(b.i) - open.has(a.i));
  const kind = place.part ? data.kinds[place.part.k] : null;
  const rows = kind ? order(kind.r) : [];
  const look = missingAt(place.id).some(m => m[1] === 'inspection' || m[1] === 'part');
  const conditionCard = kind ? condition(place.part, kind, look) : null;
  const fields = rows.map(r => r.w === 'a' ? attribute(place.part, r, open.has(r.i)) : reading(place.part, r, open.has(r.i)));
  view.replaceChildren(...[el('h2', { tabindex: '-1', id: 'now' }, place.name), el('p', { class: 'soft' }, place.group, ' · ', place.id), verdict(place.id), seenAlready(place.id),
    ...(place.trial ? trial(place.trial) : look ? [conditionCard, ...fields] : [...fields, conditionCard]),
    el('div', { class: 'row' }, el('button', { type: 'button', onclick: () => go(places[(at + places.length - 1) % places.length].id) }, say.before),
      el('button', { type: 'button', onclick: () => go(places[(at + 1) % places.length].id) }, say.after),
      el('button', { type: 'button', class: 'main', id: 'next', onclick: () => go(firstOpen()) }, say.nextMissing))].filter(Boolean));
  list.replaceChildren(...places.map(p => el('li', {}, el('button', { type: 'button', 'aria-current': p.id === current ? 'true' : null, onclick: () => go(p.id) },
    el('span', {}, p.name), ' ', data.state[p.id] ? outcome(data.state[p.id].o) : null))));
  document.getElementById('left').textContent = say.left.replace('{n}', data.missing.length);
  if (focus === 'now') document.getElementById('now').focus();
  else if (focus === 'next') (view.querySelector('[data-open] input, [data-open] button') ?? document.getElementById('next')).focus();
  else if (held) [...view.querySelectorAll('input, button, select, h2')].find(e => named(e) === held)?.focus();
}
const go = id => { current = id; show('now'); document.getElementById('now').scrollIntoView({ block: 'start' }); };
async function renew() {
  try {
    const answer = await fetch('/bench/' + encodeURIComponent(data.unit.id) + '/state');
    if (answer.status === 401) queue.lost(await answer.json());
    if (!answer.ok) return;
    const fresh = await answer.json();
    const before = data.state[current]?.o;
    Object.assign(data, fresh);
    const now = data.state[current];
    if (now && now.o !== before) heard.textContent = `${places.find(p => p.id === current)?.name}: ${say['o-' + now.o]}. ${now.t ?? ''}`;
    if (![...view.querySelectorAll('input')].some(i => i.value)) show();
  } catch { queue.reached = false; }
}
let soon = 0;
const renewSoon = () => { clearTimeout(soon); soon = setTimeout(renew, 250); };
const doubt = (item, d) => {
  ask.replaceChildren(el('h2', {}, say.isThatRight), el('p', {}, d.text), el('div', { class: 'row' },
    el('button', { type: 'button', class: 'main', onclick: () => { supersedes[item.reading] = d.measurement; delete data.read[item.reading]; ask.close(); go(item.at); } }, say.readAgain),
    el('button', { type: 'button', onclick: () => ask.close() }, say.asRead)));
  if (!ask.open) ask.showModal();
};
queue.hear.sent = (item, json) => { heard.textContent = say.taken + ' ' + item.about; (json?.doubts ?? []).forEach(d => doubt(item, d)); renewSoon(); };
queue.hear.refused = () => renewSoon();
// A browser tries again by itself when a connection breaks, but not when it was refused: then somebody has to sign in, here or on another page.
const listen = () => {
  const live = new EventSource('/v1/events?unit=' + encodeURIComponent(data.unit.id));
  live.onopen = () => { queue.reached = true; renewSoon(); };
  live.onmessage = renewSoon;
  live.onerror = () => {
    if (!navigator.onLine) queue.reached = false;
    if (live.readyState === EventSource.CLOSED) { renew(); setTimeout(listen, 5000); }
  };
};
listen();
current = firstOpen();
show();
queue.flush();
