import { describe, expect, it } from 'vitest';
import { compile, partAt, spreads, type Input, type Spread } from '@washline/engine';
import { parse } from '@washline/spec';
import { tables } from '@washline/tables';
import specs from './specs.json' with { type: 'json' };

/** A width below this is what sums of doubles leave: two layers of one liquid differ by it. */
const ROUNDING = 1e-12;

/** The same spread, twice as wide on both sides. */
function doubled(spread: Spread, value: number): Spread {
  switch (spread.kind) {
    case 'normal': return { ...spread, sd: 2 * spread.sd };
    case 'lognormal': return { ...spread, cv: Math.sqrt(Math.expm1(4 * Math.log1p(spread.cv ** 2))) };        // twice the deviation of the logarithm
    case 'range': return { ...spread, low: value - 2 * (value - spread.low), high: value + 2 * (spread.high - value) };
    case 'exact': return spread;
  }
}

describe('doubling the spread of one input', () => {
  it.each(specs.slice(0, 12).map((text) => [text.split('\n')[0], text] as const))('%s: widens what it moves and nothing else', (_name, text) => {
    const { program } = compile(parse(text), tables);
    const n = program.probes.length;
    const before = spreads(program, undefined, false);
    let tried = 0;
    program.inputs.forEach((input, i) => {
      if (input.spread.kind === 'exact' || i % 5 !== 0) return;
      const after = spreads(program, (other: Input) => (other.key === input.key ? doubled(other.spread, other.value) : other.spread), false);
      for (let k = 0; k < n; k++) {
        const at = k * program.inputs.length + i, moved = before.down[at] !== 0 || before.up[at] !== 0 || after.down[at] !== 0 || after.up[at] !== 0;
        const widened = after.high[k]! - after.low[k]! - (before.high[k]! - before.low[k]!);
        if (!moved) expect(widened === 0 || Number.isNaN(widened)).toBe(true);
        // a figure that turns back (a cube too wide for a narrower glass) may be anywhere
        else if (after.down[at]! * after.up[at]! < 0 && before.down[at]! * before.up[at]! < 0 && partAt(before, at) > 0.05 * before.variance[k]! && before.high[k]! - before.low[k]! > ROUNDING * Math.max(1, Math.abs(before.value[k]!))) { expect(widened, `${input.key} on ${program.probes[k]!.of} ${program.probes[k]!.name}`).toBeGreaterThan(0); tried++; }
      }
    });
    expect(tried).toBeGreaterThan(0);
  });
});
