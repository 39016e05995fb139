import { existsSync } from 'node:fs';
import { run } from './tally.mjs';

const PLACES = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Where a Chromium stands on this machine, or null. */
function chromium() {
  return PLACES.find((place) => place && existsSync(place)) ?? null;
}

/** Finds Chromium, or installs it where this is Debian and one may; gives the place, or the reason why there is none. */
export function findOrInstall(say) {
  const found = chromium();
  if (found) return { place: found };
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return { place: null, why: 'no Chromium here, and this user cannot install one' };
  say('Installing chromium with apt-get.');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const args = ['install', '-y', '--no-install-recommends', 'chromium'];
  if (run('apt-get', args, { env }).status !== 0) {
    run('apt-get', ['update'], { env });
    run('apt-get', args, { env });
  }
  const place = chromium();
  return place ? { place } : { place: null, why: 'apt-get could not install chromium' };
}
