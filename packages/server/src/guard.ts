import { problemAnswer } from './problem.ts';

/** The names one's own machine may be called by: a page elsewhere that points its name at this machine is not among them. */
const NAMES = ['localhost', '127.0.0.1'];

function hostsOf(port: number, names: readonly string[]): readonly string[] {
  return names.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`]));
}

/**
 * Refuses what does not come from this machine's own page: a wrong Host (a name rebound to this address), a foreign Origin,
 * or a request a foreign page made. Gives null where the request may pass. `more`: further names it answers to where it is shared.
 */
export function refusal(headers: Headers, path: string, port: number, more: readonly string[] = []): Response | null {
  const hosts = hostsOf(port, [...NAMES, ...more]);
  const host = headers.get('host')?.toLowerCase() ?? '';
  if (!hosts.includes(host)) return problemAnswer(403, 'Wrong host', `This server answers to ${hosts.join(' and ')} only.`);
  const origin = headers.get('origin')?.toLowerCase();
  if (origin !== undefined && !hosts.some((own) => origin === `http://${own}`)) return problemAnswer(403, 'Wrong origin', 'Another page asked; this server answers its own page only.');
  const site = headers.get('sec-fetch-site');
  if (path.startsWith('/api/') && site !== null && site !== 'same-origin' && site !== 'none') return problemAnswer(403, 'Wrong origin', 'Another page asked; this server answers its own page only.');
  return null;
}
