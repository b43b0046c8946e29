const here = '/v1/units/' + encodeURIComponent(data.unit.id);
const view = document.getElementById('part'), list = document.getElementById('parts'), ask = document.getElementById('ask'), heard = document.getElementById('heard');
const person = document.getElementById('person'), bench = document.getElementById('bench'), gauge = document.getElementById('gauge');
remembered('person', person); remembered('bench', bench); remembered('gauge', gauge);
let current = '', supersedes = {};
const places = [...(data.whole.length ? [{ id: '~whole', name: say.whole, group: say.wholeGroup, whole: data.whole }] : []),
  ...data.parts.map(p => ({ id: p.s, name: p.n, group: p.g, part: p })), ...data.trials.map(t => ({ id: t.i, name: t.n, group: t.g, trial: t }))];
const missingAt = id => data.missing.filter(m => m[0] === id);
const isOpen = place => place.trial ? !data.tried.includes(place.id) : missingAt(place.id).length > 0;
const firstOpen = () => (places.find(p => p.part && isOpen(p)) ?? places.find(isOpen))?.id;
const untried = () => data.trials.filter(t => !data.tried.includes(t.i)).length;
const leftWords = () => [[data.missing.length, say.left], [untried(), say.leftTrials]].filter(([n]) => n).map(([n, words]) => words.replace('{n}', n)).join(' · ');
const outcome = (o, more) => el('span', { class: 'o o-' + o }, say['o-' + o] + (more ? ': ' + more : ''));
const signed = () => {
  for (const field of [person, bench]) {
    if (!field.value.trim()) { field.focus(); heard.textContent = say.whoFirst; return null; }
  }
  return { person: person.value.trim(), bench: bench.value.trim(), time: new Date().toISOString() };
};
// What is entered is no longer missing, also before the service has answered. The first entry on a part says that it is there: then all that its sheet asks for is.
const settle = (place, id) => {
  const part = data.parts.find(p => p.s === place);
  if (!part) { if (data.trials.some(t => t.i === place) && !data.tried.includes(place)) data.tried.push(place); return; }
  if (missingAt(place).some(m => m[1] === 'part')) {
    data.missing = data.missing.filter(m => m[0] !== place);
    const asked = data.kinds[part.k].r.filter(r => r.w === 'a' || r.lo || r.hi || (part.l ?? {})[r.i]);
    data.missing.push([place, 'inspection', ''], ...asked.map(r => [place, r.w === 'a' ? 'attribute' : 'reading', r.i]));
  }
  data.missing = data.missing.filter(m => !(m[0] === place && (id ? m[2] === id : m[1] === 'inspection')));
};
const enter = (address, body, about, place, id) => {
  queue.add(here + address, body, about, { at: place, id, reading: id ? place + '/' + id : place });
  settle(place, id);
  show('next');
};
const replacing = (record, subject) => {
  if (supersedes[subject]) record.supersedes = supersedes[subject];
  delete supersedes[subject];
  return record;
};
const sentFinding = (place, what, about) => {
  const who = signed();
  if (!who) return;
  const finding = replacing({ position: place, ...what }, what.attribute ? place + '/' + what.attribute.id : place);
  (data.seen[place] ??= []).push([null, about]);
  enter('/findings', { ...who, findings: [finding] }, about, place, what.attribute?.id);
};
const condition = (part, kind, open) => {
  let extent = 'moderate';
  const where = el('input', { id: 'where', autocomplete: 'off' });
  const damaged = d => {
    const damage = { class: d, extent };
    if (where.value.trim()) damage.place = where.value.trim();
    sentFinding(part.s, { damage }, `${part.n}: ${data.damage[d][0]}, ${say['x-' + extent]}`);
  };
  return el('section', { class: 'card', 'data-row': '~look', 'data-open': open }, el('h3', {}, say.condition),
    el('div', { class: 'row' }, el('button', { type: 'button', class: 'main', onclick: () => sentFinding(part.s, { sound: true }, part.n + ': ' + say.sound) }, say.sound)),
    kind.d.length ? el('div', { class: 'stack' }, el('h3', {}, say.orDamage), choices(say.extent, ['slight', 'moderate', 'severe'].map(x => [x, say['x-' + x]]), extent, x => { extent = x; }),
      el('div', {}, el('label', { for: 'where' }, say.where), where),
      el('div', { class: 'row damage' }, kind.d.map(d => el('button', { type: 'button', onclick: () => damaged(d) }, el('span', {}, data.damage[d][0], data.damage[d][1] ? el('small', {}, data.damage[d][1]) : null)))),
      el('p', { class: 'soft' }, say.classesFrom)) : null);
};
const attribute = (part, row, open) => el('fieldset', { class: 'card', 'data-row': row.i, 'data-open': open }, el('legend', {}, row.q), el('div', { class: 'row' }, row.c.map(c =>
  el('button', { type: 'button', onclick: () => sentFinding(part.s, { attribute: { id: row.i, value: c[0] } }, `${part.n}: ${row.q} ${c[1]}`) }, c[1]))));
const reading = (part, row, open) => {
  const at = part.s + '/' + row.i;
  return readingForm({ row: row.i, open, label: row.q, limits: limitsOf(part, row), unit: row.u, count: row.k, known: data.read[at] }, (readings, text) => {
    const who = signed();
    if (!who) return;
    const measurement = replacing({ at, readings }, at);
    if (gauge.value) measurement.instrument = gauge.value;
    data.read[at] = text;
    enter('/measurements', { ...who, measurements: [measurement] }, `${part.n}: ${row.q} ${text}`, part.s, row.i);
  });
};
const trial = t => {
  const pieces = t.p.map((p, i) => [p, el('select', { id: 'piece' + i }, p[1].map(m => el('option', { value: m[0] }, `${m[0]}: ${m[1]}`)))]);
  const first = pieces.map(([p, s], i) => el('div', { class: 'stack' }, el('label', { for: 'piece' + i }, say.pieceAt + ' ' + p[2]), s));
  return [el('p', {}, say.tryWords), readingForm({ row: t.i, open: !data.tried.includes(t.i), label: say.gap, limits: `${say.window} ${t.w}`, unit: 'mm', count: 3, known: data.read[t.i], first }, (readings, text) => {
    const who = signed();
    if (!who) return;
    const one = replacing({ clearance: t.i, readings, ...who }, t.i);
    if (pieces.length) one.pieces = pieces.map(([p, s]) => ({ position: p[0], member: s.value }));
    if (gauge.value) one.instrument = gauge.value;
    data.read[t.i] = text;
    enter('/trials', one, `${t.n}: ${text}`, t.i);
  })];
};
// What can only be tried while the gearbox is whole.
const before = tests => [el('p', {}, say.wholeWords), ...tests.map(t => el('fieldset', { class: 'card', 'data-row': t.i, 'data-open': !(t.i in data.tests) }, el('legend', {}, t.n),
  t.i in data.tests ? el('p', { class: 'soft' }, say.readAlready, ' ', data.tests[t.i] ? say.shown : say.notShown) : null,
  el('div', { class: 'row' }, [[true, say.shown], [false, say.notShown]].map(([shown, text]) => el('button', { type: 'button', onclick: () => {
    const who = signed();
    if (!who) return;
    data.tests[t.i] = shown;
    enter('/tests', { test: t.i, shown, ...who }, `${t.n}: ${text}`, '~whole');
  } }, text)))))];
const seenAlready = place => (data.seen[place] ?? []).length ? el('ul', { class: 'seen' }, data.seen[place].map(([id, text, sort, attribute]) => el('li', {}, el('span', {}, text),
  id ? el('span', { class: 'row' }, el('button', { type: 'button', 'aria-label': say.correct + ': ' + text, onclick: () => { supersedes[sort === 'a' ? place + '/' + attribute : place] = id; heard.textContent = say.correctNow.replace('{what}', text); } }, say.correct), photos(id, text)) : null)),
  data.seen[place].some(s => s[0]) ? el('li', { class: 'soft' }, say.photoSorts) : null) : null;
const verdict = place => { const s = data.state[place]; return s ? el('p', { class: 'big' }, outcome(s.o, s.d ? say['d-' + s.d] : ''), s.t ? el('span', { class: 'soft' }, ' ' + s.t) : null) : null; };
const sheetOf = part => {
  const kind = data.kinds[part.k], missing = missingAt(part.s), open = new Set(missing.map(m => m[2]));
  const look = missing.some(m => m[1] === 'inspection' || m[1] === 'part');
  const rows = [...kind.r].sort((a, b) => open.has(b.i) - open.has(a.i)).map(r => r.w === 'a' ? attribute(part, r, open.has(r.i)) : reading(part, r, open.has(r.i)));
  return look ? [condition(part, kind, look), ...rows] : [...rows, condition(part, kind, look)];
};
const onwards = at => el('div', { class: 'row' }, el('button', { type: 'button', onclick: () => go(places[(at + places.length - 1) % places.length].id) }, say.before),
  el('button', { type: 'button', onclick: () => go(places[(at + 1) % places.length].id) }, say.after),
  firstOpen() ? el('button', { type: 'button', class: 'main', id: 'next', onclick: () => go(firstOpen() ?? current, 'next') }, say.nextMissing)
    : el('a', { class: 'button main', id: 'next', href: '/units/' + encodeURIComponent(data.unit.id) }, say.allEntered));
// The list of all parts is made once and then only told anew, so that it keeps its place and its focus.
list.append(...places.map(p => el('li', {}, el('button', { type: 'button', onclick: () => go(p.id) }, el('span', {}, p.name), el('span')))));
const told = (place, i) => {
  const button = list.children[i].firstChild, state = data.state[place.id];
  if (place.id === current) button.setAttribute('aria-current', 'true'); else button.removeAttribute('aria-current');
  if (button.dataset.o === state?.o) return;
  button.dataset.o = state.o;
  button.lastChild.replaceWith(outcome(state.o));
};
// Whatever has the focus keeps it when the page is written anew, so that nobody who works by keyboard is thrown back to its top.
const held = e => (e.closest('[data-row]')?.dataset.row ?? '') + e.tagName + (e.getAttribute('aria-label') ?? e.textContent);
function show(focus) {
  const kept = view.contains(document.activeElement) ? held(document.activeElement) : null;
  const at = places.findIndex(p => p.id === current), place = places[at];
  if (!place) return;
  view.replaceChildren(...[el('h2', { tabindex: '-1', id: 'now' }, place.name), el('p', { class: 'soft' }, place.group, place.whole ? '' : ' · ' + place.id), verdict(place.id), seenAlready(place.id),
    ...(place.whole ? before(place.whole) : place.trial ? trial(place.trial) : sheetOf(place.part)), onwards(at)].filter(Boolean));
  places.forEach(told);
  document.getElementById('left').textContent = leftWords() || say.nothingLeft;
  if (focus === 'now') document.getElementById('now').focus();
  else if (focus === 'next') (view.querySelector('[data-open] :is(select, input, button)') ?? document.getElementById('next')).focus();
  else if (focus) (view.querySelector(`[data-row="${CSS.escape(focus)}"] :is(select, input, button)`) ?? document.getElementById('now')).focus();
  else if (kept) ([...view.querySelectorAll('input, button, select, a, h2')].find(e => held(e) === kept) ?? document.getElementById('now')).focus();
}
const go = (id, focus = 'now') => { current = id; show(focus); document.getElementById('now').scrollIntoView({ block: 'start' }); };
const written = () => JSON.stringify([missingAt(current), data.photos, data.seen[current], data.read, data.tests, data.tried.includes(current), data.state]);
async function renew() {
  const before = queue.taken;
  try {
    const answer = await fetch('/bench/' + encodeURIComponent(data.unit.id) + '/state');
    if (answer.status === 401) queue.lost(await answer.json());
    if (!answer.ok) return;
    const fresh = await answer.json();
    // Something was taken meanwhile that this answer may not know of yet.
    if (queue.taken !== before) { renewSoon(); return; }
    const was = data.state[current]?.o, stood = written();
    Object.assign(data, fresh);
    queue.all().filter(i => !i.refused && i.path.startsWith(here + '/') && i.at).forEach(i => settle(i.at, i.id));
    const now = data.state[current];
    if (now && now.o !== was) heard.textContent = `${places.find(p => p.id === current)?.name}: ${say['o-' + now.o]}. ${now.t ?? ''}`;
    if (written() !== stood && ![...view.querySelectorAll('input')].some(i => i.value)) show();
  } catch { queue.reached = false; }
}
let soon = 0;
const renewSoon = () => { clearTimeout(soon); soon = setTimeout(renew, 250); };
// The question may come while somebody types: the focus goes to its heading, so that an Enter meant for a field answers nothing.
const doubt = (item, d) => {
  ask.replaceChildren(el('h2', { tabindex: '-1', autofocus: true }, say.isThatRight), el('p', {}, d.text), el('div', { class: 'row' },
    el('button', { type: 'button', class: 'main', onclick: () => { supersedes[item.reading] = d.measurement; delete data.read[item.reading]; ask.close(); go(item.at, item.id ?? item.at); } }, say.readAgain),
    el('button', { type: 'button', onclick: () => ask.close() }, say.asRead)));
  if (!ask.open) ask.showModal();
};
ask.addEventListener('close', () => { if (!view.contains(document.activeElement)) show('next'); });
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
const begun = [data.tests, data.seen, data.read].some(x => Object.keys(x).length);
current = data.whole.length && !begun ? places[0].id : firstOpen() ?? places[0].id;
show();
queue.flush();
