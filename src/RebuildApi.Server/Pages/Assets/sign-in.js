const said = document.getElementById('said');
const wanted = new URLSearchParams(location.search).get('next') ?? '/';
// Only a page of this very service, whatever the address says.
const target = new URL(wanted, location.origin);
const next = target.origin === location.origin ? target.pathname + target.search : '/';
const post = (path, body) => fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
const signIn = async token => {
  try {
    const answer = await post('/sign-in', { token });
    if (answer.ok) { location.replace(next); return; }
    said.textContent = (await answer.json()).detail ?? say.refused;
  } catch { said.textContent = say.away; }
};
document.getElementById('sign-in')?.addEventListener('submit', event => {
  event.preventDefault();
  signIn(event.currentTarget.elements.token.value.trim());
});
const linked = location.hash.slice(1);
if (linked) {
  // Out of the address before anything else, so that it is neither bookmarked nor seen over a shoulder.
  history.replaceState(null, '', location.pathname + location.search);
  signIn(linked);
} else if (!data.signedIn && location.search) {
  // Who followed a link from elsewhere comes without the cookie, which counts again from here.
  fetch('/v1/access').then(answer => { if (answer.ok) location.replace(next); }).catch(() => {});
}
