import { describe, expect, it } from 'vitest';
import type { Figure } from '@washline/engine';
import type { Reading } from '../reader.ts';
import { printReading } from './reading.ts';
import { columns } from './text.ts';

const figure = (value: number, spread: number, unit: string): Figure => ({ value, unit, low: value - spread, high: value + spread, skewed: false, grade: 'compiled', method: 'test', sources: ['oiml-r22'] });

/** An invented reading: what it says is not checked, only how it is shown. */
function reading(change: Partial<Reading> = {}): Reading {
  return {
    drink: 'A long drink', variant: null, partial: false,
    figures: { strength: figure(16.23, 0.8, '% vol'), volume: figure(152, 6, 'mL'), temperature: figure(-4.1, 0.6, '°C') },
    stages: [{ step: 'stir 25 s over 200 g cubes at -5 °C and then some more words', path: ['build', 4], figures: { strength: figure(16.2, 0.8, '% vol') } }],
    preps: {
      'tea syrup': {
        name: 'Tea syrup', method: 'syrup', figures: { sugar: figure(500, 20, 'g/L') }, yield: figure(240, 10, 'mL'), ready_after: 'PT16H5M', stages: [],
        colour: '#b07030', turbidity: 0, vessel: 'bottle', takes: [],
      },
    },
    glass: {
      name: 'double rocks', brim_mL: 399.6, washline_mm: 50, liquid_mm: 40, top_mm: 50, profile: [[0, 38], [90, 42]], base_mm: 8, wall_mm: 3, stem_mm: 0, foot_mm: 0,
      layers: [
        { name: 'drink', kind: 'liquid', from_mm: 0, to_mm: 40, colour: '#ffffff', turbidity: 0, mL: 150, strength: 16 },
        { name: 'pineapple cloud', kind: 'foam', from_mm: 40, to_mm: 50, colour: '#ffffff', turbidity: 3, mL: 50, strength: null },
      ],
      ice: [{ kind: 'clear cube', count: 1, mass_g: 110, size_mm: 50, clear: true, from_mm: 0, to_mm: 45 }], garnish: [], washline: figure(50, 2, 'mm'),
    },
    standard_drinks: { US: 1.4, UK: 2.4, AU: 1.9 },
    allergens: [{ group: 'milk', from: ['preps', 'tea syrup', 1], certain: true, hidden: true }], vegan: false, vegetarian: true, diet: [],
    assumed: [{ key: 'ice/kind', value: 'cubes', unit: '', low: null, high: null, grade: 'trade', source: 'common-practice', where: { path: ['build', 4] }, say: 'over 200 g cubes at -5 °C', splices: [] }],
    findings: [
      { code: 'prep-unused', severity: 'note', where: { path: ['preps', 'x'], line: 3, column: 1 }, message: 'Nothing takes from it.', sources: [] },
      { code: 'foam-too-strong', severity: 'stop', where: { path: ['preps', 'x', 2], line: 26, column: 1 }, margin: { value: 4.1, low: 2.9, high: 5.3, unit: '% vol' }, odds: 0.99, message: 'The foam is too strong to stand.', remedy: { say: 'Take 40 ml of rum instead of 60.', splices: [] }, sources: ['common-practice'] },
    ],
    accepted: [], ...change,
  };
}

function shown(value: Reading, { tty = false, color = true, env = {} as Record<string, string> } = {}): string {
  let text = '';
  const out = { write: (part: string) => { text += part; }, isTTY: tty };
  printReading({ stdin: (async function* () { /* nothing typed */ })(), stdout: out, stderr: out, env }, value, color);
  return text;
}

describe('a reading on a terminal', () => {
  it('keeps within 80 columns, whatever is long in it', () => {
    const long = 'a very long name indeed '.repeat(12).trim();
    const wide = reading({ drink: long, findings: [{ code: 'x', severity: 'warn', where: { path: [], line: 1, column: 1 }, message: `${long} ${'w'.repeat(200)}`, sources: [] }] });
    for (const line of shown(wide).split('\n')) expect(columns(line), line).toBeLessThanOrEqual(80);
  });
  it('draws the glass with its washline, the millimetres and the strength beside it', () => {
    const text = shown(reading());
    expect(text).toMatch(/━{3}/);
    expect(text).toMatch(/50(\.0)? mm/);
    expect(text.slice(0, text.indexOf('Stages'))).toContain('16.2 ± 0.8 % vol');
  });
  it('shows the stop before the note, with place, margin, odds and remedy', () => {
    const text = shown(reading());
    expect(text.indexOf('STOP')).toBeLessThan(text.indexOf('Nothing takes from it.'));
    expect(text).toContain('line 26:1: The foam is too strong to stand.');
    expect(text).toContain('beyond the limit by 4.1 % vol (2.9 to 5.3), odds 99 %');
    expect(text).toContain('→ Take 40 ml of rum instead of 60.');
  });
  it('says yield and readiness of a prep, what was assumed and its replacement, allergens, drinks and cautions', () => {
    const text = shown(reading()).replace(/\s+/g, ' ');
    for (const part of ['Tea syrup (syrup) gives 240 ± 10 mL, ready after 16 h 5 min', 'the ice is cubes; to say otherwise: over 200 g cubes at -5 °C', 'milk, not in the name, from preps / tea syrup / 1', 'US 1.4 · UK 2.4 · AU 1.9', 'vegetarian, not vegan', 'local food and alcohol law']) expect(text).toContain(part);
  });
  it('a figure that is not known is named as such, never shown as zero', () => {
    expect(shown(reading())).toMatch(/not known: [^]*sugar/);
  });
  it('colours a terminal only, and not with NO_COLOR or --no-color', () => {
    expect(shown(reading(), { tty: true })).toContain('\u001b[1m');
    expect(shown(reading())).not.toContain('\u001b');
    expect(shown(reading(), { tty: true, color: false })).not.toContain('\u001b');
    expect(shown(reading(), { tty: true, env: { NO_COLOR: '1' } })).not.toContain('\u001b');
  });
  it('lets no control or bidirectional character of a name through', () => {
    const text = shown(reading({ drink: 'a\u001b[2Jb\u202ec\u0007' }));
    expect(text).not.toMatch(/[\u001b\u202e\u0007]/u);
    expect(text).toContain('a[2Jbc');
  });
  it('draws half an hour as curves under its rows, in ASCII where the terminal is not UTF-8, and without it nothing', () => {
    const later = [2, 10, 30].map((minutes) => ({ minutes, figures: { temperature: figure(-2 + minutes / 20, 2, '°C'), strength: figure(16 - minutes / 10, 0.8, '% vol') } }));
    const part = (text: string): string => text.slice(text.indexOf('In the glass, later'), text.indexOf('Preps'));
    const drawn = part(shown(reading({ later }))), ascii = part(shown(reading({ later }), { tty: true, color: false, env: { LANG: 'C' } }));
    expect(drawn).toMatch(/after 30 min[^]*temperature, °C[^]*░●|●░/);
    for (const line of drawn.split('\n')) expect(columns(line), line).toBeLessThanOrEqual(80);
    expect(ascii).toMatch(/[*]/);
    expect(ascii.slice(ascii.indexOf('temperature')).replace(/[°±]/g, '')).toMatch(/^[ -~\n]*$/);
    expect(shown(reading())).not.toContain('░●');
  });
  it('shows a reading without a glass', () => {
    expect(shown(reading({ glass: null }))).toContain('strength');
  });
});
