// Hands in steps are the hands of the command line, every maker kept.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { handsText, handsTextInSteps, type EachHandAnswer } from '@washline/spec';
import { tables } from '@washline/tables';

const ASKED = { makers: 1000, seed: 3, profile: 'home' };
const demo = (name: string): string => readFileSync(new URL(`../../demo/${name}.drink`, import.meta.url), 'utf8');
function drained(text: string, aStep: number): { readonly answer: EachHandAnswer; readonly steps: number } {
  const run = handsTextInSteps(text, { tables, ...ASKED }, aStep);
  for (let steps = 0; ; steps += 1) { const step = run.next(); if (step.done) return { answer: step.value, steps }; }
}
const known = (levels: Float64Array): number[] => [...levels].filter(Number.isFinite).sort((a, b) => a - b);

describe('hands in steps', () => {
  it.each(['clear-colada', 'daiquiri', 'colada-with-faults'])('%s: whatever the step, they are the hands run at once', (name) => {
    const whole = handsText(demo(name), { tables, ...ASKED }).hands;
    for (const aStep of [1, 130, 1000, 5000]) {
      const { answer, steps } = drained(demo(name), aStep);
      expect(answer.hands).toEqual(whole);
      if (aStep < 1000) expect(steps).toBeGreaterThan(1000 / aStep);
    }
  });
  it.each(['clear-colada', 'daiquiri', 'colada-with-faults', 'tea-milk-punch'])('%s: each hand’s level and whether it holds are those that are counted', (name) => {
    const { answer: { hands, levels, holds, moves } } = drained(demo(name), 100), sorted = known(levels), band = hands.figures['washline_mm']!;
    const at = (p: number): number => { const k = p * (sorted.length - 1), below = Math.floor(k); return sorted[below]! + (sorted[Math.min(below + 1, sorted.length - 1)]! - sorted[below]!) * (k - below); };
    for (const [p, is] of [[0.025, band.p2_5], [0.5, band.p50], [0.975, band.p97_5]] as const) expect(at(p)).toBeCloseTo(is, 9);
    expect(1 - holds.reduce((n, h) => n + h, 0) / hands.makers).toBeCloseTo(hands.fails.odds, 12);
    expect(moves.length).toBeGreaterThan(0);
    for (const m of moves) expect(m.words).not.toBe('');
    expect(moves.map((m) => m.share)).toEqual(moves.map((m) => m.share).sort((a, b) => b - a));
    expect(moves.reduce((all, m) => all + m.share, 0)).toBeLessThanOrEqual(1 + 1e-9);
  });
  it('without a glass that stands, or of nothing, no level is known and nothing is thrown', () => {
    for (const text of ['', 'Nothing\n', 'x\ny\nz\n', '\u0000'.repeat(50)]) {
      const { answer } = drained(text, 500);
      expect(answer.levels).toHaveLength(1000);
      expect(known(answer.levels).filter((mm) => mm > 0)).toEqual([]);
    }
  });
});
