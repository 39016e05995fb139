import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadLanguage, readText } from '@washline/spec';
import { tables } from '@washline/tables';

// The demo drinks that are there in German too read to the same figures as in English.
const text = (name: string) => readFileSync(new URL(`../../demo/${name}.drink`, import.meta.url), 'utf8');
await loadLanguage('de');
type Figures = Readonly<Record<string, { readonly value: number; readonly low: number; readonly high: number; readonly grade: string }>>;

function same(german: Figures, english: Figures): void {
  expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
  for (const [name, figure] of Object.entries(english)) {
    const other = german[name];
    expect(Math.abs((other?.value ?? NaN) - figure.value), name).toBeLessThan(1e-9 * Math.max(1, Math.abs(figure.value)));
    // draws go by the names of things, so that ranges agree as two samples do
    for (const end of ['low', 'high'] as const) expect(Math.abs((other?.[end] ?? NaN) - figure[end]), `${name} ${end}`).toBeLessThan(1e-9 + 0.1 * (figure.high - figure.low));
    expect(other?.grade, name).toBe(figure.grade);
  }
}

describe.each(['clear-colada', 'tea-milk-punch'])('%s', (name) => {
  it.each([null, ...(name === 'clear-colada' ? ['vegan'] : [])])('in German is the same drink (variant %s)', (variant) => {
    const english = readText(text(name), { tables, variant }), german = readText(text(`${name}.de`), { tables, variant, language: 'de' });
    expect(german.problems).toEqual([]);
    same(german.reading.figures, english.reading.figures);
    const [preps, others] = [Object.values(german.reading.preps), Object.values(english.reading.preps)];
    expect(preps.map((prep) => prep.method)).toEqual(others.map((prep) => prep.method));
    preps.forEach((prep, at) => { same({ ...prep.figures, yield: prep.yield }, { ...others[at]!.figures, yield: others[at]!.yield }); });
    expect(german.reading.glass?.washline_mm).toBeCloseTo(english.reading.glass?.washline_mm ?? NaN, 9);
    expect(german.reading.findings.map((one) => one.code)).toEqual(english.reading.findings.map((one) => one.code));
    expect(german.reading.assumed.map((one) => one.value)).toEqual(english.reading.assumed.map((one) => one.value));
  });
});
