import type { Figure, PrepReading } from '@washline/engine';
import { SIZE, broken, cut, run, runsWidth } from '../pen/lettering.ts';
import { decimalsFor, figureShown, shown, spreadShown } from '../pen/numbers.ts';
import { inUnits } from '../pen/units.ts';
import type { Run } from '../shapes.ts';
import { lettered, words } from '../words.ts';
import { factsOf } from './facts.ts';
import type { Flow, FlowBuild, FlowPrep, Grip } from './flow.ts';

/** What stands beside a vessel: letter and name, then a few short lines. A line with a giver shows its letter in a circle. */
export interface Caption {
  readonly letter: string; readonly name: readonly Run[]; readonly lines: readonly CaptionLine[]; readonly width: number; readonly height: number;
  /** with fewer lines, for where this one finds no room */
  readonly less?: Caption | undefined;
}
/** `sign`: a cloth is drawn before it; `small`: lettered as a note. */
export interface CaptionLine { readonly figure: 'yield' | 'strength' | 'pressure' | 'cloth mass' | null; readonly giver: string | null; readonly from: string | null; readonly runs: readonly Run[]; readonly grip?: Grip | undefined; readonly sign?: boolean; readonly small?: boolean }
/** How far down a line is from the one before, px. */
export const lineHeight = (line: CaptionLine): number => (line.giver !== null || line.sign === true ? 19 : line.small === true ? 14 : 15);
/** The figure a line names. */
export function figureOf(prep: PrepReading, name: NonNullable<CaptionLine['figure']>): Figure | undefined {
  return name === 'yield' ? prep.yield : name === 'cloth mass' ? prep.cloth?.mass : prep.figures[name];
}

const LEAD = 24;

export function captionOf(prep: FlowPrep, flow: Flow, poured: ReadonlySet<string>, short: boolean): Caption {
  const lines: CaptionLine[] = [];
  const made = prep.reading?.yield === undefined ? undefined : inUnits(prep.reading.yield);
  if (made !== undefined) {
    const decimals = decimalsFor(made.low, made.high);
    const spread = spreadShown(made, decimals), gross = prep.reading?.gas?.siphon?.gross;
    const full = gross === undefined ? figureShown(made) : words('of-gross', { yield: figureShown(made), gross: gross.unit === 'mL' ? shown(inUnits(gross).value, inUnits(gross).unit === 'mL' ? 0 : 1) : shown(gross.value, 0) });
    lines.push({ figure: 'yield', giver: null, from: null, runs: [run(`${full}${spread === '' || short ? '' : `, ${spread}`}`, SIZE.small, 'ink2')] });
  }
  const strength = prep.reading?.figures['strength'];
  if (strength !== undefined && strength.value > 0.05) lines.push({ figure: 'strength', giver: null, from: null, runs: [run(`${shown(strength.value, Math.max(1, decimalsFor(strength.low, strength.high)))} % vol`, SIZE.small, 'ink2')] });
  for (const take of prep.takes) {
    if (poured.has(`${take.from}>${prep.key}`)) continue;
    const giver = flow.preps.find((p) => p.key === take.from);
    if (giver !== undefined) lines.push({ figure: null, giver: giver.letter, from: take.from, runs: [run(take.amount, SIZE.small, 'ink2')], grip: take.grip });
  }
  const name = [run(cut(lettered(prep.name), short ? 92 : 170, SIZE.name, 600), SIZE.name, 'ink', 600)];
  if (short || prep.reading === null) return caption(prep.letter, name, lines.slice(0, 2));
  const { pressure, charged, caution, frozen, stays, held } = factsOf(prep.reading);
  const plain = (text: string, more: Partial<CaptionLine> = {}): CaptionLine => ({ figure: null, giver: null, from: null, runs: [run(text, more.small === true ? SIZE.note : SIZE.small, more.small === true ? 'ink3' : 'ink2')], ...more });
  // every letter that goes in is named here; where many do, the strength is left to them
  const takes = lines.filter((l) => l.giver !== null), figures = lines.filter((l) => l.giver === null);
  const base = [...figures.slice(0, takes.length > 2 ? 1 : 2), ...takes, ...(frozen === null ? [] : [plain(frozen)])], own = prep.reading.figures['pressure'] !== undefined;
  const presses = pressure === null ? [] : [plain(pressure, own ? { figure: 'pressure' } : {})], kept = stays === null ? [] : [plain(stays, { figure: 'cloth mass', sign: true })];
  const warned = (width: number): CaptionLine[] => (caution === null ? [] : broken(caution, width, SIZE.note).map((text) => plain(text, { small: true })));
  const all = (width: number, texts: readonly string[]): CaptionLine[] => texts.flatMap((text) => broken(text, width, SIZE.small)).map((text) => plain(text));
  // what can hurt stays longest
  const sets = presses.length + kept.length === 0 ? [] : [[...presses, ...kept], [...presses, ...warned(WIDE), ...kept, ...all(WIDE, held.slice(1))], ...[NARROW, WIDE].map((width) => [...presses, ...(charged === null ? [] : [plain(charged)]), ...warned(width), ...kept, ...all(width, held)])];
  let told = caption(prep.letter, name, base);
  for (const lines of sets) told = { ...caption(prep.letter, name, [...base, ...lines]), less: told };
  return told;
}
/** How wide the lines of a caution and of what a cloth holds may run, px. */
const WIDE = 184, NARROW = 122;

export function buildCaption(build: FlowBuild): Caption {
  const { stage } = build;
  const melt = stage?.figures['melt'] ?? stage?.figures['dilution'];
  const lines: CaptionLine[] = [];
  if (melt !== undefined) {
    const decimals = decimalsFor(melt.low, melt.high);
    lines.push({ figure: null, giver: null, from: null, runs: [run([`${figureShown(melt)} ${words(melt.unit === 'g' ? 'melts' : 'short.dilution', {})}`, spreadShown(melt, decimals)].filter((t) => t !== '').join(', '), SIZE.small, 'ink2')] });
  }
  return caption(build.letter, [run(build.title, SIZE.name, 'ink', 600)], lines);
}

function caption(letter: string, name: readonly Run[], lines: readonly CaptionLine[]): Caption {
  const width = Math.max(LEAD + runsWidth(name), ...lines.map((l) => (l.giver === null && l.sign !== true ? 0 : LEAD) + runsWidth(l.runs)));
  return { letter, name, lines, width, height: 22 + lines.reduce((sum, l) => sum + lineHeight(l), 0) };
}

/** Captions of the preps of one drawing: they hang on what was poured into the prep, not on where it stands. */
const kept = new WeakMap<FlowPrep, Map<string, Caption>>();
/** The whole caption of a prep, reckoned once. */
export function captionKept(prep: FlowPrep, flow: Flow, poured: ReadonlySet<string>): Caption {
  const known = kept.get(prep) ?? new Map<string, Caption>(), key = prep.takes.map((t) => (poured.has(`${t.from}>${prep.key}`) ? '1' : '0')).join('');
  kept.set(prep, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const caption = captionOf(prep, flow, poured, false);
  known.set(key, caption);
  return caption;
}
