import { CODES } from '../findings/codes.ts';
import type { Compiled } from '../program/compile.ts';
import { place } from './place.ts';
import type { Spreads } from './spread.ts';
import type { Finding } from './types.ts';

/** Something whose why can be asked: its name, of what it is, which probe it is; -1 where this reading has no such number. */
export interface Askable {
  readonly name: string; readonly of: string; readonly figure: string; readonly probe: number;
  /** a limit: its code; `through`: what is looked at is the figure that reading a line otherwise would move */
  readonly code?: string; readonly through?: string;
}
/** A name nobody has here, and all that can be asked. */
export interface NotAsked { readonly name: string; readonly names: readonly string[] }

/** Figures every drink and prep may have; one that this reading has no number for is absent, and says why. */
const USUAL: Readonly<Record<'drink' | 'prep', readonly string[]>> = {
  drink: ['strength', 'volume', 'mass', 'ethanol', 'sugar', 'acidity', 'ph', 'density', 'brix', 'temperature', 'dilution', 'energy', 'cost'],
  prep: ['strength', 'volume', 'mass', 'ethanol', 'sugar', 'acidity', 'ph', 'density', 'brix', 'temperature', 'energy', 'cost', 'yield', 'overrun', 'foam_volume', 'pressure', 'co2', 'frozen'],
};
const INNER = /^(word:|tint_|turbid$|stands$|takes\/|balance:|margin:)/;
/** What the page calls the level. */
const ALSO: Readonly<Record<string, string>> = { washline: 'washline mm', level: 'washline mm', 'layer base/strength': 'layer 1/strength' };

/** Letters and signs that do not tell names apart. */
const folded = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, ' ').replace(/ *([/@]) */g, '$1').trim();

/** Everything that can be asked of a reading, by its name. @source none - definition */
export function askables(c: Compiled, s: Spreads, findings: readonly Finding[]): Askable[] {
  const out: Askable[] = [], taken = new Set<string>();
  const add = (a: Askable): void => { if (!taken.has(folded(a.name))) { taken.add(folded(a.name)); out.push(a); } };
  const { probes } = c.program;
  const before: Readonly<Record<string, string>> = { drink: '', glass: '' };
  const prefix = (of: string): string | null => {
    if (of in before) return before[of]!;
    const [, prep = '', stage] = /^(?:prep:(.*?))?\/?(?:stage:(\d+))?$/.exec(of) ?? [];
    if (stage !== undefined) return `${prep === '' ? '' : `${prep}/`}stage ${Number(stage) + 1}/`;
    if (prep !== '') return `${prep}/`;
    const [, part, owner = ''] = /^(cloth|gas):(.+)$/.exec(of) ?? [];
    if (part !== undefined) return `${owner}/${part} `;
    const layer = /^layer:(.+)$/.exec(of)?.[1];
    return layer === undefined ? null : `layer ${layer === 'base' ? 1 : Number(layer) + 2}/`;
  };
  probes.forEach((p, k) => {
    const front = INNER.test(p.name) ? null : prefix(p.of);
    if (front !== null) add({ name: front + p.name, of: p.of, figure: p.name, probe: k });
  });
  for (const figure of USUAL.drink) add({ name: figure, of: 'drink', figure, probe: -1 });
  for (const key of c.ctx.preps.keys()) for (const figure of USUAL.prep) add({ name: `${key}/${figure}`, of: `prep:${key}`, figure, probe: -1 });
  const order = (a: Askable): number => (a.of === 'drink' ? 0 : a.of === 'glass' ? 1 : 2);
  out.sort((a, b) => order(a) - order(b));
  limits(c, s, add);
  choices(c, s, findings, add);
  // limits that nothing in the recipe can reach
  for (const code of Object.keys(CODES)) add({ name: code, of: '', figure: code, probe: -1, code });
  return out;
}

/** Limits by code and line; the code alone is the one that is furthest beyond. */
function limits(c: Compiled, s: Spreads, add: (a: Askable) => void): void {
  const found: { a: Askable; far: number }[] = [];
  c.program.probes.forEach((p, k) => {
    if (!p.name.startsWith('margin:')) return;
    const code = p.name.slice('margin:'.length), seed = c.ctx.margins[Number(p.of.slice('finding:'.length))];
    if (!seed) return;
    const line = place(c.ctx.document, seed.at).line;
    const value = s.value[k]!, side = value > 0 ? value - s.low[k]! : s.high[k]! - value;
    const far = Number.isNaN(value) ? -Infinity : side > 0 ? value / side : value > 0 ? Infinity : -1e9;
    found.push({ a: { name: line === undefined ? code : `${code}@${line}`, of: p.of, figure: p.name, probe: k, code }, far });
  });
  found.sort((x, y) => y.far - x.far);
  for (const { a } of found) add({ ...a, name: a.code! });
  for (const { a } of found) add(a);
}

/** Lines that may be read otherwise: what they hang on is what the figure hangs on that the other reading moves. */
function choices(c: Compiled, s: Spreads, findings: readonly Finding[], add: (a: Askable) => void): void {
  const codes = new Set(c.ctx.choices.map((x) => x.code));
  for (const f of findings) {
    if (!codes.has(f.code) || f.words['figure'] === undefined) continue;
    const k = c.program.probes.findIndex((p, i) => p.name === f.words['figure'] && s.value[i] === f.words['from']);
    if (k < 0) continue;
    const p = c.program.probes[k]!;
    for (const name of [f.code, ...(f.where.line === undefined ? [] : [`${f.code}@${f.where.line}`])]) add({ name, of: p.of, figure: p.name, probe: k, code: f.code, through: p.name.replace('margin:', '') });
  }
}

/**
 * What a request means: names with commas between them, or several.
 * @param asked as typed: `strength`, `coconut rum/strength`, `stage 2/temperature`, `washline_mm`, `foam-too-strong@26`
 * @returns what is meant, in order, and the names that mean nothing here
 * @source none - definition
 */
export function askedOf(all: readonly Askable[], asked: string | readonly string[]): { readonly meant: readonly Askable[]; readonly not: readonly NotAsked[] } {
  const index = new Map(all.map((a) => [folded(a.name), a]));
  const of = (name: string): Askable | undefined => {
    const key = folded(name).replace(/^(?:glass|drink)\//, '');
    return index.get(key) ?? index.get(ALSO[key] ?? '');
  };
  const meant: Askable[] = [], not: NotAsked[] = [];
  for (const text of typeof asked === 'string' ? [asked] : asked) {
    for (const name of of(text) ? [text] : text.split(',').map((part) => part.trim()).filter((part) => part !== '')) {
      const a = of(name);
      if (!a) not.push({ name, names: all.filter((x) => x.probe >= 0 || x.code === undefined).map((x) => x.name) });
      else if (!meant.includes(a)) meant.push(a);
    }
  }
  return { meant, not };
}
