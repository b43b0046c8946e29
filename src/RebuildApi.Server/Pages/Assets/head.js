document.getElementById('out')?.addEventListener('click', async event => {
  try {
    await fetch('/sign-out', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{}' });
    location.assign('/sign-in');
  } catch { event.target.disabled = false; }
});
