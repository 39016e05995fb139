import type { Action, Amount, Document, Measure, Path, Splice } from '@washline/engine';
import { writtenIn } from '../say/written.ts';
import { unitRow } from '../vocabulary/units.ts';

/** The action at a path; a carrier or a step's measure goes by its line's path. */
export function actionAt(document: Document, path: Path, variant: string | null = null): Action | undefined {
  const [where, second, third, fourth] = path;
  const isPrep = where === 'preps';
  const key = isPrep ? second : where;
  const index = isPrep ? third : second, action = isPrep ? fourth : third;
  const fits = document.sections.filter((section) => (isPrep ? section.kind === 'prep' : section.kind === where) && section.key === key);
  const section = fits.find((one) => one.variant === variant) ?? fits.find((one) => one.variant === null) ?? fits[0];
  const line = section?.lines.find((one) => one.kind !== 'note' && one.path[one.path.length - 1] === index);
  return line?.actions[typeof action === 'number' ? action : 0];
}

/** What a line puts in: the measure that it is, or that it fills or steps with. */
export function measureOf(action: Action): Measure | null {
  return action.kind === 'measure' ? action : action.kind === 'fill' || action.kind === 'step' ? action.measure ?? null : null;
}

/** The amount a line is turned by: of its measure, its garnish or its ice. */
export function amountOf(action: Action): Amount | null {
  const measure = measureOf(action);
  if (measure !== null) return measure.amount;
  if (action.kind === 'garnish') return action.amount;
  return (action.kind === 'fill' || action.kind === 'step') ? action.ice?.mass ?? null : null;
}

const VULGAR: readonly (readonly [number, string])[] = [[0.125, '⅛'], [0.25, '¼'], [1 / 3, '⅓'], [0.375, '⅜'], [0.5, '½'], [0.625, '⅝'], [2 / 3, '⅔'], [0.75, '¾'], [0.875, '⅞']];

/** A number as it would have been typed there: with a comma where a comma stood or the spec is German, as a fraction where one stood, or where `fractions` are wanted of whole ounces. */
function typed(value: number, was: string, { fractions, german }: { readonly fractions: boolean; readonly german: boolean }): string {
  const rounded = Math.abs(value) >= 100 ? Math.round(value * 10) / 10 : Math.abs(value) >= 1 ? Math.round(value * 100) / 100 : Number(value.toPrecision(3));
  const glyphs = /[¼-¾⅐-⅞]/.test(was);
  if (glyphs || was.includes('/') || (fractions && !/[.,]/.test(was))) {
    const whole = Math.floor(rounded + 1e-9), rest = rounded - whole;
    if (Math.abs(rest) < 0.004) return String(whole);
    const near = VULGAR.find(([fraction]) => Math.abs(fraction - rest) < 0.006);
    if (near !== undefined) {
      const slash: Readonly<Record<string, string>> = { '⅛': '1/8', '¼': '1/4', '⅓': '1/3', '⅜': '3/8', '½': '1/2', '⅝': '5/8', '⅔': '2/3', '¾': '3/4', '⅞': '7/8' };
      return !glyphs ? `${whole === 0 ? '' : `${whole}${was.includes('-') ? '-' : ' '}`}${slash[near[1]] ?? ''}` : `${whole === 0 ? '' : whole}${near[1]}`;
    }
  }
  const plain = String(rounded);
  return /\d,\d{1,2}(?!\d)/.test(was) || (german && !was.includes('.')) ? plain.replace('.', ',') : plain;
}

/**
 * The splices that set a line's amount to a value in its own unit; a twin ("2 oz (60 ml)") is rewritten with it.
 *
 * @param document the parsed text
 * @param path of the line's action
 * @param value the new number, in the unit that is written
 * @param variant whose section is meant
 * @param fractions whole ounces are written on as bar fractions: 2 1/4
 * @returns splices for the number and its twin; empty where the line has no amount
 * @source none - definition
 */
export function setAmount(document: Document, path: Path, value: number, variant: string | null = null, fractions = false): Splice[] {
  const action = actionAt(document, path, variant);
  const amount = action === undefined ? null : amountOf(action);
  if (amount === null || !Number.isFinite(value) || value < 0) return [];
  const was = (amount.low + amount.high) / 2, german = writtenIn(document) === 'de';
  const write = (one: Amount, to: number): Splice => {
    const old = document.text.slice(one.number.from, one.number.to);
    return { from: one.number.from, to: one.number.to, insert: `${typed(to, old, { fractions: fractions && one.unit === 'oz', german })}${one.number.from === one.number.to ? ' ' : ''}` };
  };
  const out = [write(amount, value)];
  const twin = amount.twin;
  if (twin !== undefined && twin.each !== true && was > 0) {
    const own = amount.unit === null ? undefined : unitRow(amount.unit, amount.system ?? null), other = twin.unit === null ? undefined : unitRow(twin.unit, twin.system ?? null);
    const exact = own !== undefined && other !== undefined && own.of === other.of && own.low === own.high && other.low === other.high ? value * own.factor / other.factor : undefined;
    const scaled = (twin.low + twin.high) / 2 * value / was;
    out.push(write(twin, exact !== undefined && Math.abs(exact / scaled - 1) > 0.05 ? exact : scaled));
  }
  return out.sort((a, b) => a.from - b.from);
}
