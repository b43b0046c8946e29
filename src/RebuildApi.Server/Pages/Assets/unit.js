const here = '/v1/units/' + encodeURIComponent(data.unit);
const person = document.getElementById('person'), bench = document.getElementById('bench'), told = document.getElementById('told');
remembered('person', person); remembered('bench', bench);
// Whoever writes something here signs for it.
const signed = (...fields) => {
  const empty = fields.find(f => !f.value.trim());
  if (empty) { told.textContent = say.whoSigns; empty.focus(); }
  return !empty;
};
const words = field => field?.value.trim() || undefined;
const make = document.getElementById('make-plan'), planned = document.getElementById('planned');
make?.addEventListener('click', () => {
  if (!signed(person)) return;
  make.disabled = true;
  planned.textContent = say.planning;
  queue.add(here + '/plans', { person: person.value.trim() }, say.planOf);
});
const choose = document.getElementById('choose-plan');
choose?.addEventListener('click', () => { if (signed(person)) queue.add(`${here}/plans/${choose.dataset.plan}/approvals`, { person: person.value.trim() }, say.planOf); });
const pass = document.getElementById('pass');
pass?.addEventListener('submit', event => {
  event.preventDefault();
  if (!signed(person)) return;
  const left = [...pass.querySelectorAll('.leave')];
  const blank = left.flatMap(l => [...l.querySelectorAll('input')]).find(i => !i.value.trim());
  if (blank) { told.textContent = say.whyLeft; blank.focus(); return; }
  const of = (leave, more) => left.filter(l => l.dataset.leave === leave).map(l => ({ requirement: l.dataset.requirement, reason: l.querySelector('[name=why]').value.trim(), ...more(l) }));
  queue.add(here + '/stages', { to: pass.dataset.to, person: person.value.trim(), note: words(pass.elements.note),
    notAvailable: of('not-available', () => ({})), exceptions: of('exception', l => ({ person: l.querySelector('[name=by]').value.trim() })) }, say.stepOf);
});
const elsewhere = document.getElementById('elsewhere');
elsewhere?.addEventListener('submit', event => {
  event.preventDefault();
  if (signed(person, elsewhere.elements.note)) queue.add(here + '/stages', { to: elsewhere.elements.to.value, person: person.value.trim(), note: words(elsewhere.elements.note) }, say.stepOf);
});
const sign = document.getElementById('sign');
sign?.addEventListener('submit', event => {
  event.preventDefault();
  if (!signed(person, bench)) return;
  queue.add(here + '/sign-offs', { check: sign.elements.check.value, passed: event.submitter?.value !== 'failed', person: person.value.trim(), bench: bench.value.trim(), note: words(sign.elements.note) },
    sign.elements.check.selectedOptions[0].textContent);
});
queue.hear.sent = item => { if (item.path.startsWith(here + '/')) location.reload(); };
queue.hear.refused = () => { if (make) { make.disabled = false; planned.textContent = ''; } };
const live = new EventSource('/v1/events?unit=' + encodeURIComponent(data.unit));
live.onmessage = () => { document.getElementById('changed').hidden = false; };
queue.flush();
