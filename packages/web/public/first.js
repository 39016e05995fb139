// Before anything is painted: the sheet this device is on, and whether it has something of its own. Who has is not shown the demo drink first.
(() => {
  const { dataset } = document.documentElement;
  const kept = (name) => { try { return localStorage.getItem(`washline/${name}`); } catch { return null; } };
  const sheet = kept('sheet');
  dataset.sheet = sheet === 'dark' || sheet === 'light' ? sheet : matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  const german = (kept('language') ?? navigator.languages[0] ?? navigator.language).toLowerCase().startsWith('de');
  if (german || location.hash !== '' || ['draft', 'units', 'bench'].some((name) => kept(name) !== null)) dataset.own = '';
})();
