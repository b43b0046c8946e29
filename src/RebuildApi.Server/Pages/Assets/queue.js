'use strict';
const data = JSON.parse(document.getElementById('data').textContent);
const say = data.words;
const el = (tag, attributes = {}, ...inside) => {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith('on')) made.addEventListener(name.slice(2), value);
    else made.setAttribute(name, value === true ? '' : value);
  }
  made.append(...inside.flat().filter(x => x !== null && x !== undefined));
  return made;
};
const remembered = (name, field) => {
  field.value = localStorage.getItem('rebuild.' + name) ?? '';
  field.addEventListener('change', () => localStorage.setItem('rebuild.' + name, field.value.trim()));
};
// A number as it was typed: 2.2040 stays 2.2040, which a number of this language would not.
class Typed { constructor(text) { this.text = text; } }
const encode = body => {
  const mark = '#' + Math.random().toString(36).slice(2) + '#';
  return JSON.stringify(body, (_, v) => v instanceof Typed ? mark + v.text : v).replaceAll(new RegExp('"' + mark + '([^"]*)"', 'g'), '$1');
};
// Everything that is written goes through here: kept on this device under its idempotency key until the service has answered for it.
const queue = (() => {
  const prefix = 'rebuild.unsent.';
  const hear = { sent: () => {}, refused: () => {}, changed: () => {} };
  let busy = false, reached = true, out = '', count = 0, timer = 0, taken = 0;
  const key = () => {
    const chance = [...crypto.getRandomValues(new Uint8Array(8))].map(b => b.toString(16).padStart(2, '0')).join('');
    return Date.now().toString(36) + '-' + String(count++).padStart(5, '0') + '-' + chance;
  };
  const all = () => Object.keys(localStorage).filter(k => k.startsWith(prefix)).sort().map(k => JSON.parse(localStorage.getItem(k)));
  const keep = item => localStorage.setItem(prefix + item.key, JSON.stringify(item));
  const drop = item => { localStorage.removeItem(prefix + item.key); hear.changed(all(), reached); };
  const later = () => { clearTimeout(timer); timer = setTimeout(flush, 3000); };
  const words = problem => !problem ? say.refused
    : [problem.detail, ...(problem.errors ?? []).map(e => [e.message, e.fix].filter(Boolean).join(' '))].filter(Boolean).join(' ');
  async function send(item) {
    let answer, json;
    try {
      answer = await fetch(item.path, { method: 'POST', headers: { 'Content-Type': 'application/json', 'Idempotency-Key': item.key }, body: item.body });
      json = await answer.json();
    } catch { return false; }
    // Not signed in, or with a token that may not write: nothing is lost, it waits until somebody signs in who may.
    out = answer.status === 401 || json?.code === 'scope-missing' ? words(json) : '';
    if (out || answer.status >= 500 || answer.status === 429 || answer.status === 408) return false;
    if (answer.ok) { taken++; drop(item); hear.sent(item, json); }
    else { item.refused = words(json); keep(item); hear.refused(item); }
    return true;
  }
  async function flush() {
    if (busy) return;
    busy = true;
    try {
      for (let item; (item = all().find(i => !i.refused));) {
        reached = await send(item);
        if (!reached) { later(); break; }
      }
    } finally { busy = false; hear.changed(all(), reached); }
  }
  const add = (path, body, about, extra = {}) => {
    keep({ key: key(), path, body: encode(body), about, ...extra });
    hear.changed(all(), reached);
    flush();
  };
  window.addEventListener('online', flush);
  return { add, all, drop, flush, hear, get out() { return out; }, get taken() { return taken; },
    lost: problem => { out = words(problem); reached = false; hear.changed(all(), reached); }, set reached(r) { if (r) out = ''; if (reached !== r) { reached = r; hear.changed(all(), r); } if (r) flush(); } };
})();
const showUnsent = (items, reached) => {
  const place = document.getElementById('unsent');
  const waiting = items.filter(i => !i.refused);
  place.replaceChildren(
    ...(waiting.length || !reached ? [el('div', { class: 'note' }, el('strong', {}, reached ? say.sending : queue.out ? say.signedOut : say.away), ' ', say.kept.replace('{n}', waiting.length),
      queue.out ? el('p', {}, queue.out, ' ', el('a', { class: 'button main', href: '/sign-in?next=' + encodeURIComponent(location.pathname) }, say.signIn)) : null,
      el('ul', {}, waiting.slice(0, 8).map(i => el('li', {}, i.about))))] : []),
    ...items.filter(i => i.refused).map(i => el('div', { class: 'note bad', role: 'alert' }, el('strong', {}, say.notTaken), ' ', i.about, el('br'), i.refused, el('br'),
      el('button', { type: 'button', onclick: () => queue.drop(i) }, say.drop))));
};
queue.hear.changed = showUnsent;
