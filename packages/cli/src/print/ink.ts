import type { World } from '../world.ts';

export interface Ink { readonly bold: (text: string) => string; readonly dim: (text: string) => string; readonly signal: (text: string) => string }

const paint = (from: number, to: number) => (text: string): string => `\u001b[${from}m${text}\u001b[${to}m`;
const none = (text: string): string => text;

/** Bold, dim and one signal colour on a terminal; plain text elsewhere, with `--no-color` or NO_COLOR. */
export function inkFor(world: World, wanted: boolean): Ink {
  const forbidden = (world.env['NO_COLOR'] ?? '') !== '' || world.env['TERM'] === 'dumb';
  if (!wanted || forbidden || world.stdout.isTTY !== true) return { bold: none, dim: none, signal: none };
  return { bold: paint(1, 22), dim: paint(2, 22), signal: paint(31, 39) };
}

/** A terminal whose locale is named and is not UTF-8: drawings keep to ASCII there. What is piped on is UTF-8. */
export function plainTerminal({ stdout, env }: World): boolean {
  const locale = [env['LC_ALL'], env['LC_CTYPE'], env['LANG']].find((name) => (name ?? '') !== '');
  return stdout.isTTY === true && locale !== undefined && !/utf-?8/i.test(locale);
}
