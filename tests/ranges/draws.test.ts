import { describe, expect, it } from 'vitest';
import { compile, drawsOf, quantiles, runMakers, spreads, wanted } from '@washline/engine';
import { parse } from '@washline/spec';
import { tables } from '@washline/tables';
import specs from './specs.json' with { type: 'json' };

// Monte Carlo over the same spreads is the reference method for uncertainty of JCGM 101:2008 (GUM, supplement 1); ends are compared over the width of the draws.
const MAKERS = 10_000, SEED = 7, CLOSE = 0.1;
const SHOWN = /^(drink|glass|prep:)/, PLAIN = /^(word:|margin:|tint_|turbid$|stands$|takes\/|balance:|ice_from_mm|ice_to_mm|over_mL|ice_g)/;

const figuresOf = (text: string) => {
  const compiled = compile(parse(text), tables);
  const { program } = compiled;
  const s = spreads(program);
  const want = Uint8Array.from(program.probes, (p) => (SHOWN.test(p.of) && !PLAIN.test(p.name) ? 1 : 0));
  const columns = wanted(want);
  const record = runMakers(program, drawsOf(program, (i) => i.spread), want, SEED, 0, MAKERS);
  return Array.from(columns, (k, i) => {
    const [low, middle, high] = quantiles(record, columns.length, i, [0.025, 0.5, 0.975]) as [number, number, number];
    return { name: `${program.probes[k]!.of} ${program.probes[k]!.name}`, value: s.value[k]!, low: s.low[k]!, high: s.high[k]!, drawn: { low, middle, high } };
  }).filter((f) => Number.isFinite(f.value) && f.drawn.high - f.drawn.low > 1e-9 * Math.abs(f.drawn.middle));
};

describe('ranges of figures against ten thousand draws with the same spreads', () => {
  it('has fifty specs to try', () => { expect(specs.length).toBeGreaterThanOrEqual(50); });
  it.each(specs.map((text) => [text.split('\n')[0], text] as const))('%s: both ends within a tenth of the width', (_name, text) => {
    const off = figuresOf(text).map((f) => ({ name: f.name, off: Math.max(Math.abs(f.low - f.drawn.low), Math.abs(f.high - f.drawn.high)) / (f.drawn.high - f.drawn.low) }));
    expect(off.length).toBeGreaterThan(5);
    expect(off.filter((f) => f.off > CLOSE)).toEqual([]);
  }, 60_000);
});
