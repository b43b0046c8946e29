const make = document.getElementById('make-plan'), planned = document.getElementById('planned');
make?.addEventListener('click', () => {
  const person = (localStorage.getItem('rebuild.person') ?? '').trim();
  if (!person) { planned.textContent = say.whoPlans; return; }
  make.disabled = true;
  planned.textContent = say.planning;
  queue.add('/v1/units/' + encodeURIComponent(data.unit) + '/plans', { person }, say.planOf);
});
queue.hear.sent = (_, plan) => { if (plan?.objective) location.reload(); };
queue.hear.refused = () => { if (make) { make.disabled = false; planned.textContent = ''; } };
const live = new EventSource('/v1/events?unit=' + encodeURIComponent(data.unit));
live.onmessage = () => { document.getElementById('changed').hidden = false; };
queue.flush();
