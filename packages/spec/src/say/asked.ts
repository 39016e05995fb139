import { fold } from '../names/fold.ts';
import { edits } from '../names/nearest.ts';

/** How many names are offered. */
const OFFERED = 5;

/** The names nearest to one that nothing has: a few letters off, in all or behind its last stroke; or with it in them. */
export function nearTo(name: string, names: readonly string[]): string[] {
  const asked = fold(name), most = Math.max(2, Math.floor(asked.length / 3));
  const last = (text: string): string => text.slice(text.lastIndexOf('/') + 1);
  return names.map((each) => {
    const whole = fold(each);
    const far = [within(asked, whole, most), ...(whole.includes(asked) && asked.length > 2 ? [most] : []), ...(name.includes('/') || !each.includes('/') ? [] : [within(asked, fold(last(each)), 2) + 1])];
    return { each, far: Math.min(...far) };
  }).filter(({ far }) => far < Infinity).sort((a, b) => a.far - b.far || a.each.length - b.each.length).slice(0, OFFERED).map(({ each }) => each);
}

/** Edits from one to the other, where they are no more than so many. */
function within(a: string, b: string, most: number): number { const far = edits(a, b, most); return far > most ? Infinity : far; }

/** All names in short: those with a stroke by what stands before it, limits by their code alone. */
export function inShort(names: readonly string[]): string[] {
  return [...new Set(names.filter((each) => !each.includes('@')).map((each) => (each.includes('/') ? `${each.slice(0, each.lastIndexOf('/'))}/*` : each)))];
}
