const form = document.getElementById('intake');
remembered('person', form.elements.person);
const choose = () => {
  const family = data.families.find(f => f.id === form.elements.family.value);
  form.elements.symptom.replaceChildren(el('option', { value: '' }, say.noSymptom), ...(family?.symptoms ?? []).map(s => el('option', { value: s.id }, s.name)));
  gears();
};
const gears = () => {
  const symptom = data.families.find(f => f.id === form.elements.family.value)?.symptoms.find(s => s.id === form.elements.symptom.value);
  const some = symptom?.gears ?? [];
  form.elements.gear.replaceChildren(el('option', { value: '' }, say.noGear), ...some.map(g => el('option', { value: g }, g)));
  form.elements.gear.disabled = some.length === 0;
};
form.elements.family.addEventListener('change', choose);
form.elements.symptom.addEventListener('change', gears);
choose();
form.addEventListener('submit', event => {
  event.preventDefault();
  const e = form.elements, symptom = e.symptom.value;
  const body = { tag: e.tag.value.trim(), family: e.family.value, person: e.person.value.trim() };
  if (e.customer.value.trim()) body.customer = e.customer.value.trim();
  if (e.words.value.trim()) body.words = e.words.value.trim();
  if (symptom) body.complaint = [e.gear.value ? { symptom, gear: e.gear.value } : { symptom }];
  queue.add('/v1/units', body, say.intakeOf.replace('{tag}', body.tag));
});
queue.hear.sent = (_, unit) => { if (unit?.tag) location.assign('/bench/' + encodeURIComponent(unit.id)); };
queue.flush();
