import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CONSTITUENTS, compile, freezingPoint, type Reading } from '@washline/engine';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { imbalance } from './matter.ts';
import { VERBS, runs, spec, verbsIn } from './specs.ts';

// Conservation of mass is physics, no source needed: what goes in comes out, stays in a cloth or boils off.

const demo = readdirSync('demo').filter((f) => f.endsWith('.drink')).map((f) => [f, readFileSync(`demo/${f}`, 'utf8')] as const);

describe('matter is kept', () => {
  it.each(demo)('in %s, by constituent', (_, text) => {
    const { off, scale } = imbalance(text, tables);
    off.forEach((grams, i) => expect(Math.abs(grams), CONSTITUENTS[i] ?? 'unknown').toBeLessThan(1e-9 * Math.max(scale, 1)));
  });
  it('in random specs of nested preps, through every method and verb', () => {
    const seen = new Set<string>();
    fc.assert(fc.property(spec, (text) => {
      const { off, scale, compiled } = imbalance(text, tables);
      for (const verb of verbsIn(compiled.ctx.document)) seen.add(verb);
      for (const grams of off) expect(Math.abs(grams)).toBeLessThan(1e-9 * Math.max(scale, 1));
    }), { numRuns: runs(300) });
    expect(VERBS.filter((verb) => !seen.has(verb)), 'verbs that were never drawn and read').toEqual([]);
  });
  it('of a liquid that something dry is floated, topped or crowned with', () => {
    for (const line of ['float 1 g salt in 10 ml water', 'top with 5 g sugar in 40 ml water', 'crown with 2 g agar in 30 ml water', '5 g salt in 20 ml water']) {
      const { off, compiled } = imbalance(`Carried\n60 ml white rum 40 %\n${line}`, tables);
      expect(compiled.build?.puts, line).toHaveLength(3);
      for (const grams of off) expect(Math.abs(grams), line).toBeLessThan(1e-9);
    }
  });
});

/** Numbers of a reading that are none, and ranges whose value lies outside, each with its place. */
function wrong(one: unknown, place = ''): string[] {
  if (typeof one === 'number') return Number.isFinite(one) ? [] : [`${place} is ${one}`];
  if (typeof one !== 'object' || one === null) return [];
  const { value, low, high } = one as Record<string, unknown>;
  const ranged = typeof value === 'number' && typeof low === 'number' && typeof high === 'number';
  return [...(ranged && !(low <= value && value <= high) ? [`${place} is ${low} to ${high} about ${value}`] : []), ...Object.entries(one).flatMap(([key, inner]) => wrong(inner, `${place}/${key}`))];
}
/** Whether part of it is ice of its own: what is still liquid is stronger than the whole, and freezes lower than the whole is told to. */
const isFrozen = ({ frozen }: Reading['figures']): boolean => (frozen?.value ?? 0) > 0;

/** A long proof reads hundreds of specs with half an hour of each, and more slowly where the machine has other work. */
const LONG_MS = 1_800_000;

describe('what a reading says can be', () => {
  it('shows no figure that is not a number, none below what it can be, and no liquid colder than its own freezing point', () => {
    // Thermodynamics, no source needed: over ice a liquid comes to rest at the freezing point of what it has become, and melt only raises that. The figures of one moment may differ by what a step of time leaves.
    // Ice as it comes (-5 °C) that is warmer than its surface melts on its own warmth and thins the drink while that lags behind: a fifth of a kelvin, as in the course of a drink on ice.
    const close = (freezes: number): number => (freezes < -5 ? 0.2 : 0.02);
    fc.assert(fc.property(spec, fc.constantFrom('alone' as const, 'hand' as const), (text, left) => {
      const { reading, document } = readText(text, { tables, later: left }), later = reading.later ?? [];
      expect(wrong(reading)).toEqual([]);
      for (const figures of [reading.figures, ...Object.values(reading.preps).map((p) => p.figures), ...reading.stages.map((x) => x.figures), ...later.map((x) => x.figures)]) {
        for (const name of ['strength', 'volume', 'mass', 'sugar', 'ethanol', 'ice_left', 'co2']) expect(figures[name]?.value ?? 0, name).toBeGreaterThanOrEqual(0);
      }
      for (const { step, figures } of reading.stages) {
        const { temperature, freezing_point } = figures;
        if (temperature && freezing_point && !isFrozen(figures)) expect(temperature.value, step).toBeGreaterThan(freezing_point.value - close(freezing_point.value));
      }
      const { program, build } = compile(document, tables), w = program.workspace();
      program.run(program.nominal, new Float64Array(program.probes.length), new Uint8Array(program.probes.length).fill(1), w);
      const poured = build ? freezingPoint(w.s, build.base.liquid) : -Infinity;
      for (const figures of [reading.figures, ...later.map((l) => l.figures)]) if (!isFrozen(reading.figures)) expect(figures['temperature']?.value ?? Infinity).toBeGreaterThan(poured - close(poured));
    }), { numRuns: runs(60) });
  }, LONG_MS);
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
