import type { Input } from '../program/inputs.ts';
import type { Ranged } from './carry.ts';
import { EndSums } from './ends.ts';

/** By how much a figure of one drink is more than the same figure of another, with the range of that difference. */
export interface Difference {
  readonly name: string; readonly of: string; readonly unit: string;
  readonly a: number; readonly b: number;
  /** b less a, and the ends it lies between nineteen times in twenty */
  readonly value: number; readonly low: number; readonly high: number;
  /** the range keeps clear of nothing, and it is more than a hundredth */
  readonly differs: boolean;
}

/** Less than this share of the larger value is called alike, however sure it is. @source common-practice judged: nobody pours or tastes a hundredth */
const LEAST = 0.01;

/**
 * The figures that two readings share, as differences. Both are made by one hand from one shelf: what both name by the same key (a bottle, a jigger, a glass, a place) is moved
 * together and goes out of the difference as far as it does the same to both; everything else is independent. Two labels or two fruits of one name that say another number
 * (a rum of 40 % and one of 37.5 %) are two things, not one. Ranges follow from what each input does at its own ends, as those of a figure do.
 * @param figures names as `of|name`; of `drink` or `glass`
 * @source none - variance of a difference of sums of independent parts
 */
export function differences(a: Ranged, b: Ranged, figures: readonly (readonly [of: string, name: string])[]): Difference[] {
  const inputsA = a.compiled.program.inputs, inputsB = b.compiled.program.inputs, probesA = a.compiled.program.probes, probesB = b.compiled.program.probes;
  const other = new Map(inputsA.map((input, i) => [input.key, i]));
  const sums = new EndSums(), ends = new Float64Array(2);
  return figures.flatMap(([of, name]): Difference[] => {
    const i = probesA.findIndex((p) => p.of === of && p.name === name), j = probesB.findIndex((p) => p.of === of && p.name === name);
    if (i < 0 || j < 0) return [];
    const va = a.spreads.value[i]!, vb = b.spreads.value[j]!;
    if (!Number.isFinite(va) || !Number.isFinite(vb)) return [];
    sums.clear();
    const shared = new Set<number>();
    for (let k = 0; k < inputsB.length; k++) {
      const named = other.get(inputsB[k]!.key), at = named !== undefined && isOne(inputsA[named]!, inputsB[k]!) ? named : undefined;
      let down = b.spreads.down[j * inputsB.length + k]!, up = b.spreads.up[j * inputsB.length + k]!;
      if (at !== undefined) { shared.add(at); down -= a.spreads.down[i * inputsA.length + at]!; up -= a.spreads.up[i * inputsA.length + at]!; }
      if (down !== 0 || up !== 0) sums.add(down, up);
    }
    for (let k = 0; k < inputsA.length; k++) {
      if (shared.has(k)) continue;
      const down = a.spreads.down[i * inputsA.length + k]!, up = a.spreads.up[i * inputsA.length + k]!;
      if (down !== 0 || up !== 0) sums.add(-down, -up);
    }
    sums.ends(ends);
    const value = vb - va, low = value + ends[0]!, high = value + ends[1]!;
    return [{ name, of, unit: probesB[j]!.unit, a: va, b: vb, value, low, high, differs: (low > 0 || high < 0) && Math.abs(value) > LEAST * Math.max(Math.abs(va), Math.abs(vb)) }];
  });
}

/** Is what two drinks name by one key one thing? A hand and its tools are, whatever they measure; of what is bought only what says the same number. */
function isOne(a: Input, b: Input): boolean {
  return a.unit === b.unit && (a.value === b.value || (b.role !== 'label' && b.role !== 'nature'));
}
