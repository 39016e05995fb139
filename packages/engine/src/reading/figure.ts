import { GRADES } from '../provenance/types.ts';
import type { Grade } from '../provenance/types.ts';
import type { Compiled } from '../program/compile.ts';
import { partAt, type Spreads } from './spread.ts';
import type { Figure } from './types.ts';

const RANK = Object.fromEntries(GRADES.map((grade, rank) => [grade, rank])) as Readonly<Record<Grade, number>>;

/**
 * One probe as a figure: its range, the weakest grade among inputs with at least a hundredth of its variance, and their sources.
 * @param k place of the probe in the program
 * @source none - definition
 */
export function figureOf(c: Compiled, s: Spreads, k: number): Figure {
  const probe = c.program.probes[k]!, inputs = c.program.inputs, row = k * inputs.length;
  // few enough to be looked through
  const sources: string[] = [...probe.sources];
  let weakest = -1;
  const enough = 0.01 * s.variance[k]!;
  if (enough > 0) {
    for (let i = 0; i < inputs.length; i++) {
      if (partAt(s, row + i) < enough) continue;
      const { grade, source } = inputs[i]!;
      weakest = Math.max(weakest, RANK[grade]);
      if (!sources.includes(source)) sources.push(source);
    }
  }
  const grade: Grade = weakest < 0 ? 'compiled' : GRADES[weakest]!;
  // a share of the water is never less than none, nor more than all
  const share = probe.name === 'frozen', value = s.value[k]!, low = share ? Math.max(0, s.low[k]!) : s.low[k]!, high = share ? Math.min(100, s.high[k]!) : s.high[k]!;
  const a = value - low, b = high - value;
  return { value, unit: probe.unit, low, high, skewed: Math.max(a, b) > 1e-12 && Math.abs(a - b) > 0.2 * Math.max(a, b), grade, method: probe.method, sources };
}
