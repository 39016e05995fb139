import { spreadAbout, reach } from '@washline/engine';
import type { AssumptionRow, SpreadRow } from '@washline/engine';
import type { Atom } from './atoms.ts';

/** How far a maker's own value may lie from the truth, as a row of `data/bench.json` says. */
export interface Width { readonly kind: string; readonly a: number; readonly b?: number }

/** A value of the bench as a row of the assumptions: with the ends that were written, else ±, else as wide as its row. */
export function rowOf(atom: Pick<Atom, 'value' | 'low' | 'high'>, plusMinus: number | null, width: Width, unit: string): AssumptionRow {
  const row: SpreadRow = { kind: width.kind as SpreadRow['kind'], a: width.a, b: width.b ?? NaN, unit, grade: 'own', source: 'bench' };
  const wide = reach(spreadAbout(row, atom.value), atom.value);
  const low = plusMinus !== null ? atom.value - plusMinus : atom.low ?? wide.low, high = plusMinus !== null ? atom.value + plusMinus : atom.high ?? wide.high;
  return { value: atom.value, low: unit === '°C' ? low : Math.max(0, low), high, unit, grade: 'own', source: 'bench', say: '' };
}
/** A word of the bench, such as the cloth that is used. */
export const wordRow = (value: string): AssumptionRow => ({ value, low: null, high: null, unit: '', grade: 'own', source: 'bench', say: '' });
