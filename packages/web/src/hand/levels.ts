import type { Action, Document, Path, Splice } from '@washline/engine';
import { sectionsOf } from '@washline/drawing';
import { actionAt, measureOf, scaled, setAmount, stepped, turn, turnable } from '@washline/spec';
import { spliced } from '../history.ts';
import type { Read } from '../read.ts';
import { sectionOf } from './section.ts';

/** A text with its reading: what a hand starts from. */
export interface Stand { readonly text: string; readonly now: Read }
/** Reads a text for its numbers alone. */
export type Glance = (text: string) => Read;

/** What a level hangs on: one measure, by its path, or with null every measure of the build. */
export interface Lever {
  readonly of: string; readonly path: Path | null;
  /** the level so many steps away, and the splices that take it there from the text it began with */
  readonly at: (steps: number, fine: boolean) => Tried;
}
export interface Tried { readonly value: number; readonly splices: readonly Splice[]; /** the line as it then is; what it is multiplied by for a whole drink */ readonly words: string; /** of the line, from 1 */ readonly line: number | null; readonly over: boolean }

/** How far one step of a whole drink goes. */
const PART = 0.05, FINE = 0.01;
/** A level that a step moves less than this hangs on something else: mm in the glass, mL in a vessel. */
const STIRS = { mm: 0.02, mL: 0.05 };
/** Steps that are looked at either way. */
const MOST = 400;

/** The path and the amount that `amount:<path>` names, as it is written; null where there is none. */
export function amountAt({ document, reading }: Pick<Read, 'document' | 'reading'>, of: string): { readonly path: Path; readonly value: number; readonly unit: string | null } | null {
  const key = of.slice('amount:'.length), path = sectionsOf(document, reading.variant).flatMap((s) => s.lines).flatMap((l) => l.actions).find((action) => action.path.join('/') === key)?.path;
  const at = path === undefined ? null : turnable(document, path, reading.variant);
  return path === undefined || at === null ? null : { path, value: at.value, unit: at.amount.unit };
}

/** The splices that put a typed number in the place of an amount, its unit staying; null where it is none, or not more than nothing. */
export function typedAmount(now: Read, of: string, text: string): Splice[] | null {
  const at = amountAt(now, of), [, whole = '', top = '', under = ''] = /^\s*(\d+(?:[.,]\d+)?)?\s*(?:(\d+)\s*[/⁄]\s*(\d+))?\s*$/.exec(text) ?? [];
  const value = Number(whole.replace(',', '.')) + (top === '' ? 0 : Number(top) / Number(under));
  return at === null || !Number.isFinite(value) || value <= 0 ? null : setAmount(now.document, at.path, value, now.reading.variant, true);
}

/** Where a level stands in a reading: mm in the glass, mL in a vessel, an amount in its own unit; null where there is none. */
export function valueOf({ reading, document }: Read, of: string): number | null {
  const [kind, key] = [of.slice(0, of.indexOf(':')), of.slice(of.indexOf(':') + 1)];
  if (kind === 'amount') return amountAt({ reading, document }, of)?.value ?? null;
  if (of === 'washline') return reading.glass?.washline_mm ?? null;
  if (kind === 'layer') return reading.glass?.layers[Number(key)]?.to_mm ?? null;
  return reading.preps[key]?.yield.value ?? null;
}

/** Paths of the measures that a level may hang on, the last one poured first. */
export function feeders({ reading, document }: Read, of: string): Path[] {
  const section = sectionOf(document, reading.variant, of.startsWith('prep:') ? of.slice('prep:'.length) : '');
  const poured = (section?.lines ?? []).flatMap((line) => line.actions).flatMap((action) => {
    const measure = measureOf(action);
    return measure === null || turnable(document, action.path, reading.variant) === null ? [] : [{ path: action.path, thing: measure.thing.words.toLowerCase() }];
  }).reverse();
  const layers = reading.glass?.layers ?? [], own = of.startsWith('layer:') ? layers[Number(of.slice('layer:'.length))]?.name.toLowerCase() : undefined;
  const mine = poured.filter((p) => p.thing === own);
  if (mine.length > 0) return mine.map((p) => p.path);
  return poured.filter((p) => own === undefined || !layers.some((layer) => layer.name.toLowerCase() === p.thing)).map((p) => p.path);
}

/** What a line, from 1, begins with. */
const firstOf = (document: Document, line: number): Action | undefined => document.sections.flatMap((s) => s.lines).find((l) => l.line === line)?.actions[0];

/** The splices that turn the first amount of a line by steps of its jigger; empty where it has none. */
export function turnLine({ document, reading }: Read, line: number, steps: number, fine: boolean): Splice[] {
  const action = firstOf(document, line);
  return action === undefined ? [] : turn(document, action.path, steps, fine, reading.variant);
}

/** Has a line an amount that can be turned by a step, one way or the other? */
export function turnsLine({ document, reading }: Read, line: number): boolean {
  const action = firstOf(document, line), at = action === undefined ? null : turnable(document, action.path, reading.variant);
  return at !== null && [1, -1].some((by) => stepped(at.amount.unit, at.value, by, false) !== at.value);
}

/** Takes hold of a level: of the whole drink, or of the last measure poured that moves it. Null where none does. */
export function takeHold(from: Stand, of: string, glance: Glance): Lever | null {
  const start = valueOf(from.now, of);
  if (start === null) return null;
  if (of === 'washline') return lever(from, of, null, glance);
  const amount = of.startsWith('amount:') ? amountAt(from.now, of) : null;
  if (amount !== null) return lever(from, of, amount.path, glance);
  for (const path of feeders(from.now, of)) {
    const one = lever(from, of, path, glance), up = one.at(1, false), down = one.at(-1, false);
    if (Math.max(Math.abs(up.value - start), Math.abs(down.value - start)) > (of.startsWith('prep:') ? STIRS.mL : STIRS.mm)) return one;
  }
  return null;
}

function lever(from: Stand, of: string, path: Path | null, glance: Glance): Lever {
  const { document, reading } = from.now, known = new Map<string, Tried>(), brim = from.now.reading.glass?.profile.at(-1)?.[0] ?? Infinity;
  const began = reading.glass?.washline_mm ?? 0, line = path === null ? null : lineOf(from, path);
  const at = (steps: number, fine: boolean): Tried => {
    const key = `${steps} ${fine}`, had = known.get(key);
    if (had !== undefined) return had;
    const factor = 1 + steps * (fine ? FINE : PART);
    const splices = steps === 0 ? [] : path === null ? (factor > 0 ? scaled(document, factor, reading.variant) : []) : turn(document, path, steps, fine, reading.variant);
    const text = spliced(from.text, splices), now = splices.length === 0 ? from.now : glance(text), level = now.reading.glass?.washline_mm ?? 0;
    const tried: Tried = {
      value: valueOf(now, of) ?? NaN, splices, line, over: level > brim && level > began,
      words: path === null ? `× ${Number(factor.toFixed(2))}` : (text.split(/\r\n|[\n\r]/)[(line ?? 1) - 1] ?? '').trim(),
    };
    known.set(key, tried);
    return tried;
  };
  return { of, path, at };
}

function lineOf({ now }: Stand, path: Path): number | null {
  const action = actionAt(now.document, path, now.reading.variant);
  return action === undefined ? null : now.document.text.slice(0, action.span.from).split(/\r\n|[\n\r]/).length;
}

/**
 * How many steps bring a level nearest to where it is wanted; it stops at the glass's brim, and where a measure has come to its last step.
 * @param near steps to begin from: where the hand is already
 */
export function reach(held: Lever, wanted: number, near: number, fine: boolean): number {
  let best = near;
  const off = (steps: number): number => { const { value, over } = held.at(steps, fine); return over || Number.isNaN(value) ? Infinity : Math.abs(value - wanted); };
  // a few strides by the slope at hand, then step by step
  for (let stride = 0; stride < 4; stride += 1) {
    const here = held.at(best, fine).value, slope = held.at(best + 1, fine).value - here;
    const more = Math.abs(slope) > 1e-9 ? Math.round((wanted - here) / slope) : 0;
    const next = Math.max(-MOST, Math.min(MOST, best + more));
    if (next === best || !(off(next) < off(best))) break;
    best = next;
  }
  for (const way of [1, -1]) while (Math.abs(best + way) <= MOST && off(best + way) < off(best) - 1e-9) best += way;
  if (off(best) === Infinity) { const way = best > 0 ? -1 : 1; while (best !== 0 && off(best) === Infinity) best += way; }
  return best;
}
