const number = /^-?(0|[1-9][0-9]*)(\.[0-9]+)?$/;
let unitOfLength = localStorage.getItem('rebuild.unit') ?? 'mm', fieldsMade = 0;
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
const pressed = (group, one) => [...group.children].forEach(b => b.setAttribute('aria-pressed', String(b === one)));
const choices = (label, all, chosen, pick) => el('div', { class: 'row', role: 'group', 'aria-label': label }, all.map(([id, text]) =>
  el('button', { type: 'button', 'aria-pressed': String(id === chosen), onclick: e => { pick(id); pressed(e.currentTarget.parentNode, e.currentTarget); } }, text)));
const limitsOf = (part, row) => {
  const [low, high] = (part.l ?? {})[row.i] ?? [row.lo, row.hi];
  const two = v => row.u === 'mm' ? `${v} mm (${(v / 25.4).toFixed(4)} in)` : `${v} ${row.u}`;
  return low && high ? `${say.limits} ${two(low)} ${say.to} ${two(high)}` : low ? `${say.atLeast} ${two(low)}` : high ? `${say.atMost} ${two(high)}` : say.noLimits;
};
// Enter goes on to the next empty field of a reading; in the last one it keeps the reading.
const onward = inputs => event => {
  const next = inputs.slice(inputs.indexOf(event.target) + 1).find(x => !x.value.trim());
  if (event.key !== 'Enter' || !next || !event.target.value.trim()) return;
  event.preventDefault();
  next.focus();
};
// One reading of so many values. `ask` holds row, open, label, limits, unit, count, known (what was read before) and first (fields that stand before it).
const readingForm = (ask, send) => {
  const isLength = ask.unit === 'mm', id = 'r' + fieldsMade++;
  const echo = el('p', { class: 'echo', 'aria-live': 'polite' });
  const inputs = Array.from({ length: Math.max(1, ask.count) }, (_, i) => el('input', { class: 'reading', id: id + i, inputmode: 'decimal', autocomplete: 'off', enterkeyhint: 'next', 'aria-label': ask.label + ' ' + (i + 1) }));
  const now = () => isLength ? unitOfLength : ask.unit;
  const echoAll = () => { echo.textContent = inputs.map(x => x.value ? both(x.value, now()) : '').filter(Boolean).join(' · '); };
  inputs.forEach(x => { x.addEventListener('input', echoAll); x.addEventListener('keydown', onward(inputs)); });
  const units = isLength ? choices(say.unitOfMeasure, [['mm', 'mm'], ['in', 'in']], unitOfLength, u => { unitOfLength = u; localStorage.setItem('rebuild.unit', u); echoAll(); }) : el('span', { class: 'big' }, ask.unit);
  return el('form', { class: 'card', 'data-row': ask.row, 'data-open': ask.open, onsubmit: event => {
    event.preventDefault();
    const filled = inputs.filter(x => x.value.trim());
    const readings = filled.map(x => read(x.value, now()));
    const wrong = readings.findIndex(r => !r);
    if (!filled.length || wrong >= 0) { heard.textContent = say.numberFirst; (filled[wrong] ?? inputs[0]).focus(); return; }
    send(readings, filled.map(x => x.value.trim()).join(', ') + ' ' + now());
  } }, el('fieldset', {}, el('legend', {}, ask.label), el('p', { class: 'soft' }, ask.limits), ask.known ? el('p', {}, say.readAlready, ' ', ask.known) : null, ask.first,
    el('div', { class: 'row' }, inputs, units, el('button', { class: 'main' }, say.keep)), echo));
};
