import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CONSTITUENTS } from '@washline/engine';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { imbalance } from './matter.ts';
import { runs, spec } from './specs.ts';

// Conservation of mass is physics, no source needed: what goes in comes out, stays in a cloth or boils off.

const demo = readdirSync('demo').filter((f) => f.endsWith('.drink')).map((f) => [f, readFileSync(`demo/${f}`, 'utf8')] as const);

describe('matter is kept', () => {
  it.each(demo)('in %s, by constituent', (_, text) => {
    const { off, scale } = imbalance(text, tables);
    off.forEach((grams, i) => expect(Math.abs(grams), CONSTITUENTS[i] ?? 'unknown').toBeLessThan(1e-9 * Math.max(scale, 1)));
  });
  it('in random specs of nested preps, through every method and step', () => {
    fc.assert(fc.property(spec, (text) => {
      const { off, scale } = imbalance(text, tables);
      for (const grams of off) expect(Math.abs(grams)).toBeLessThan(1e-9 * Math.max(scale, 1));
    }), { numRuns: runs(200) });
  });
  it('shows no figure that is not a number, and none below what it can be', () => {
    fc.assert(fc.property(spec, (text) => {
      const { reading } = readText(text, { tables });
      for (const figures of [reading.figures, ...Object.values(reading.preps).map((p) => p.figures), ...reading.stages.map((x) => x.figures)]) {
        for (const [name, f] of Object.entries(figures)) {
          expect(Number.isFinite(f.value), name).toBe(true);
          expect(Number.isFinite(f.low) && Number.isFinite(f.high) && f.low <= f.value && f.value <= f.high, name).toBe(true);
          if (name === 'strength' || name === 'volume' || name === 'mass' || name === 'sugar' || name === 'ethanol') expect(f.value, name).toBeGreaterThanOrEqual(0);
        }
      }
    }), { numRuns: runs(60) });
  });
  it('every stage on ice closes its account of heat within a joule', () => {
    fc.assert(fc.property(spec, (text) => {
      for (const st of readText(text, { tables }).reading.stages) {
        if (!st.balance_kJ) continue;
        const sum = Object.values(st.balance_kJ).reduce((a, b) => a + b, 0);
        expect(Math.abs(sum)).toBeLessThan(0.001);
      }
    }), { numRuns: runs(60) });
  });
});
