import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CONSTITUENTS } from '@washline/engine';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { imbalance } from './matter.ts';

// Conservation of mass is physics, no source needed: what goes in comes out, stays in a cloth or boils off.

const demo = readdirSync('demo').filter((f) => f.endsWith('.drink')).map((f) => [f, readFileSync(`demo/${f}`, 'utf8')] as const);

const SOLID = ['40 g sugar', '3 g black tea leaves', '10 g lemon peel', '2 gold gelatin sheets, soaked 10 min in cold water', '1 g agar', '20 g virgin coconut oil'];
const LIQUID = ['white rum 40 %', 'pineapple juice', 'lime juice', 'whole milk', 'water', 'simple syrup 1:1', 'tonic water', 'black tea', 'orange liqueur', 'egg white'];
const METHODS = ['mix', 'syrup', 'cordial', 'infusion', 'acid adjust', 'fat wash', 'milk wash', 'clarify with agar', 'clarify with milk', 'siphon foam', 'gel', 'carbonate'];
const STEPS = ['boil 2 min', 'rest 4 h at 30 °C', 'chill 2 h at 4 °C', 'freeze 12 h', 'strain through cheesecloth', 'strain through a paper filter', 'heat to 70 °C', 'reduce to 100 ml', 'stir 10 s', 'blend 20 s'];
const ENDS = ['shake 12 s over 150 g cubes', 'stir 25 s over 200 g cubes at -5 °C', 'stir 20 s', 'shake 10 s', 'build over 120 g cubes', ''];

const line = fc.oneof(
  fc.tuple(fc.integer({ min: 5, max: 400 }), fc.constantFrom(...LIQUID)).map(([n, what]) => `${n} ml ${what}`),
  fc.constantFrom(...SOLID),
);
const prep = (name: string) => fc.tuple(fc.constantFrom(...METHODS), fc.array(line, { minLength: 1, maxLength: 4 }), fc.array(fc.constantFrom(...STEPS), { maxLength: 4 }))
  .map(([method, lines, steps]) => `${name} (${method}):\n${lines.join('\n')}\n${steps.join('\n')}`);
export const spec = fc.tuple(prep('First wash'), prep('Second brew'), fc.array(line, { minLength: 1, maxLength: 4 }), fc.constantFrom(...ENDS), fc.integer({ min: 1, max: 60 }))
  .map(([a, b, lines, end, n]) => `Random\n\n${a}\n${n} ml water\n\n${b}\n${n} ml first wash\n\nBuild:\n${n} ml second brew\n${lines.join('\n')}\n${end}\n`);

describe('matter is kept', () => {
  it.each(demo)('in %s, by constituent', (_, text) => {
    const { off, scale } = imbalance(text, tables);
    off.forEach((grams, i) => expect(Math.abs(grams), CONSTITUENTS[i] ?? 'unknown').toBeLessThan(1e-9 * Math.max(scale, 1)));
  });
  it('in random specs of nested preps, through every method and step', () => {
    fc.assert(fc.property(spec, (text) => {
      const { off, scale } = imbalance(text, tables);
      for (const grams of off) expect(Math.abs(grams)).toBeLessThan(1e-9 * Math.max(scale, 1));
    }), { numRuns: 200 });
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
    }), { numRuns: 60 });
  });
  it('every stage on ice closes its account of heat within a joule', () => {
    fc.assert(fc.property(spec, (text) => {
      for (const st of readText(text, { tables }).reading.stages) {
        if (!st.balance_kJ) continue;
        const sum = Object.values(st.balance_kJ).reduce((a, b) => a + b, 0);
        expect(Math.abs(sum)).toBeLessThan(0.001);
      }
    }), { numRuns: 60 });
  });
});
