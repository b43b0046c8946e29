const plans = document.getElementById('plans');
fetch('/v1/units/' + encodeURIComponent(data.unit) + '/plans?limit=5').then(a => a.ok ? a.json() : null).then(found => {
  if (!found?.items?.length) return;
  plans.hidden = false;
  plans.append(el('ul', {}, found.items.map(p => el('li', {}, say.plan.replace('{objective}', p.objective).replace('{status}', p.status).replace('{kept}', p.kept).replace('{replaced}', p.replaced).replace('{minutes}', p.minutes), p.chosen ? ' ' + say.chosen : ''))));
}).catch(() => {});
const live = new EventSource('/v1/events?unit=' + encodeURIComponent(data.unit));
live.onmessage = () => { document.getElementById('changed').hidden = false; };
