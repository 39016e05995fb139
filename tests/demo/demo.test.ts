import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText, type Answer } from '@washline/spec';
import { tables } from '@washline/tables';
import { spliced } from '../findings/battery.ts';

const folder = new URL('../../demo/', import.meta.url);
const read = (file: string, variant: string | null = null): Answer => readText(readFileSync(new URL(file, folder), 'utf8'), { tables, file, variant });

interface Expected {
  /** % vol served, [least, most], by arithmetic on the measures with the dilution the trade knows */
  readonly strength: readonly [number, number];
  readonly why: string;
  /** °C as poured */
  readonly celsius: readonly [number, number];
  readonly stops: readonly string[];
  readonly warns: readonly string[];
  readonly notes: readonly string[];
  readonly allergens: readonly string[];
  readonly vegan: boolean;
}
const clean = { stops: [], warns: [], notes: [], allergens: [], vegan: true } as const;

// Dilutions: stirred 15 to 35 %, shaken 30 to 60 % of the measures (common practice, no source). Allergens: EU 1169/2011 Annex II.
const BOOK: Readonly<Record<string, Expected>> = {
  'colada.drink': { ...clean, strength: [7, 11], celsius: [-7, 1], why: '24 mL of ethanol in 205 mL of measures with a fifth to two thirds of them in ice water' },
  'clear-colada.drink': { ...clean, vegan: false, strength: [13, 18], celsius: [-6, 4], why: '24 mL and 1 mL from the cloud in 140 to 185 mL' },
  'daiquiri.drink': { ...clean, strength: [14.3, 18], celsius: [-8, 2], why: '24 mL in 105 mL with 30 to 60 % ice water' },
  'orange-daiquiri.drink': { ...clean, strength: [15, 18.6], celsius: [-8, 2], why: '24 mL in 100 mL with 30 to 60 % ice water' },
  'gin-and-tonic.drink': { ...clean, strength: [11.5, 13], celsius: [-5, 8], why: '21.5 mL in 175 mL, the ice not yet melted' },
  'tea-milk-punch.drink': { ...clean, vegan: false, notes: ['allergen-hidden'], allergens: ['milk'], strength: [8, 11.1], celsius: [-3, 6], why: '120 mL in 1100 mL gives 10.9; the curd takes no ethanol of its own; then 5 to 30 % ice water' },
  'three-floors.drink': { ...clean, strength: [39, 41], celsius: [15, 25], why: '1.6 + 4 + 6.3 mL in 30 mL' },
  'freezer-martini.drink': { ...clean, warns: ['freezes-slush'], notes: ['allergen-hidden'], allergens: ['sulphites'], strength: [35, 36.3], celsius: [-22, -14], why: '225 + 16.2 mL in 680 mL less a little contraction' },
  'pineapple-highball.drink': { ...clean, strength: [9.2, 9.7], celsius: [0, 5], why: '80 mL in 850 mL' },
  'tea-sour.drink': { ...clean, strength: [0, 0], celsius: [-2, 5], why: 'no alcohol in any of its lines' },
  'colada-with-faults.drink': { ...clean, vegan: false, stops: ['fat-set-hard', 'foam-no-whipper', 'gel-not-soaked'], warns: ['fat-without-aroma', 'siphon-charged-warm'], strength: [12, 18], celsius: [-6, 4], why: '24 mL in 80 mL stirred, with jelly and a fallen foam over it' },
  'tonic-from-bark.drink': { ...clean, stops: ['hazard-dose', 'hazard-plant'], strength: [11, 13], celsius: [5, 18], why: '21.5 mL in 180 mL, the ice not yet melted' },
};
const FILES = Object.keys(BOOK);
/** The faults planted in the book: code, line, and what the sentence has to be about. Coconut oil melts between 20 and 28 °C (belitz-fats), sheets are soaked 5 to 10 min, agar gels and does not whip (common practice, no source); bark and its quinine: 21 CFR 172.575 and 172.510. */
const PLANTED: Readonly<Record<string, readonly (readonly [string, string, RegExp])[]>> = {
  'colada-with-faults.drink': [
    ['fat-set-hard', 'rest 4 h at 20 °C', /set at 20 °C/], ['gel-not-soaked', '3 gold gelatin sheets', /soak/i], ['foam-no-whipper', '2 g agar in 150 ml water', /whip|foam/],
  ],
  'tonic-from-bark.drink': [['hazard-plant', '10 g cinchona bark', /bark/], ['hazard-dose', '10 g cinchona bark', /quinine/]],
};

it('the book holds ten drinks and two with planted faults, each with its expectations here; German twins are tried beside their own', () => {
  expect(readdirSync(folder).filter((f) => f.endsWith('.drink') && !f.endsWith('.de.drink')).sort()).toEqual([...FILES].sort());
  expect(FILES.filter((f) => BOOK[f]!.stops.length > 0)).toHaveLength(2);
  expect(FILES).toHaveLength(12);
});

describe.each(FILES)('%s', (file) => {
  const expected = BOOK[file]!;
  const { reading, problems } = read(file);
  const f = reading.figures;

  it('reads with no problem and every ingredient known', () => {
    expect(problems).toEqual([]);
    expect(reading.partial).toBe(false);
  });
  it('stops exactly where a fault was planted, and warns or notes only what is true', () => {
    const codes = (severity: string) => [...new Set(reading.findings.filter((x) => x.severity === severity).map((x) => x.code))].sort();
    expect({ stops: codes('stop'), warns: codes('warn'), notes: codes('note') }).toEqual({ stops: expected.stops, warns: expected.warns, notes: expected.notes });
  });
  it(`has a strength that its measures allow: ${expected.why}`, () => {
    expect(f['strength']!.value).toBeGreaterThanOrEqual(expected.strength[0]);
    expect(f['strength']!.value).toBeLessThanOrEqual(expected.strength[1]);
  });
  it('is as warm as its treatment makes it', () => {
    expect(f['temperature']!.value).toBeGreaterThan(expected.celsius[0]);
    expect(f['temperature']!.value).toBeLessThan(expected.celsius[1]);
  });
  it('fits its glass: the washline is below the brim', () => {
    const glass = reading.glass!;
    const brim = glass.profile[glass.profile.length - 1]![0];
    expect(glass.washline_mm).toBeGreaterThan(0.2 * brim);
    expect(glass.washline_mm).toBeLessThan(brim);
  });
  it('declares its allergens and diet', () => {
    expect([...new Set(reading.allergens.map((a) => a.group))]).toEqual(expected.allergens);
    expect(reading.vegan).toBe(expected.vegan);
  });
  it('shows finite figures with their value inside their range, in the drink, its preps and its stages', () => {
    const all = [reading.figures, ...reading.stages.map((s) => s.figures), ...Object.values(reading.preps).flatMap((p) => [p.figures, { yield: p.yield }, ...p.stages.map((s) => s.figures)])];
    for (const figures of all) for (const [name, one] of Object.entries(figures)) {
      for (const n of [one.value, one.low, one.high]) expect(Number.isFinite(n), `${name} ${one.value} ${one.low} ${one.high}`).toBe(true);
      expect(one.low, name).toBeLessThanOrEqual(one.value + 1e-9);
      expect(one.high, name).toBeGreaterThanOrEqual(one.value - 1e-9);
    }
    for (const name of ['strength', 'volume', 'mass', 'ethanol', 'sugar', 'density', 'brix', 'temperature', 'energy']) expect(f[name], name).toBeDefined();
  });
});

describe('the book as a bartender and a chemist know it', () => {
  it('classic and rework: both coladas carry the rum of 60 ml, the clear one without the cloud of the juice', () => {
    // 60 mL at 40 % vol hold 18.9 g of ethanol; a siphon of foam adds up to a gram
    for (const file of ['colada.drink', 'clear-colada.drink']) expect(Math.abs(read(file).reading.figures['ethanol']!.value - 18.9)).toBeLessThan(1.2);
    const base = (file: string) => read(file).reading.glass!.layers[0]!;
    expect(base('clear-colada.drink').turbidity).toBeLessThan(0.1);
    expect(base('colada.drink').turbidity).toBeGreaterThan(0.5);
  });
  it('the acid-adjusted orange is as sour as lime juice: 45 to 70 g/L as citric acid', () => {
    // lime juice about 6 % citric (common practice: 32 g citric and 20 g malic acid to a litre of orange)
    const sharp = read('orange-daiquiri.drink').reading.preps['sharp orange']!.figures['acidity']!.value;
    expect(sharp).toBeGreaterThan(45);
    expect(sharp).toBeLessThan(70);
  });
  it('the milk punch runs clear and keeps the milk as an allergen', () => {
    const punch = read('tea-milk-punch.drink').reading.preps['tea punch']!;
    expect(punch.turbidity).toBeLessThan(0.1);
    // 1100 mL with a quarter litre of milk: curd holds 0.2 to 0.4 g per g of milk
    expect(punch.yield.value).toBeGreaterThan(950);
    expect(punch.yield.value).toBeLessThan(1060);
  });
  it('the layers stand by density, the densest lowest', () => {
    const { glass } = read('three-floors.drink').reading;
    expect(glass!.layers.map((l) => l.name)).toEqual(['crème de cassis', 'orange liqueur', 'overproof rum']);
    const strengths = glass!.layers.map((l) => l.strength!);
    expect(strengths).toEqual([...strengths].sort((a, b) => a - b));
    for (const l of glass!.layers) expect(l.mL).toBeCloseTo(10, 6);
  });
  it('the freezer bottle stays liquid: its freezing point lies below the freezer', () => {
    // a mix of 35.5 % vol is about 29 % ethanol by mass, which freezes at -19 to -21 °C (CRC Handbook, aqueous ethanol)
    const { strength } = read('freezer-martini.drink').reading.preps['martini bottle']!.figures;
    expect(strength!.value).toBeGreaterThan(34.5);
  });
  it('the highball holds the gas of a soft drink: 5 to 10 g/L', () => {
    // 2 bar gauge at 2 °C: 3.4 to 4.5 volumes of 1.977 g/L each (carbonation charts of the trade)
    const { co2 } = read('pineapple-highball.drink').reading.preps['highball bottle']!.figures;
    expect(co2!.value).toBeGreaterThan(6.5);
    expect(co2!.value).toBeLessThan(9);
  });
  it('the gin and tonic counts the quinine of its cordial, below the 83 mg/kg of 21 CFR 172.575', () => {
    const { text } = read('gin-and-tonic.drink').document;
    const twice = readText(text.replace('25 ml tonic cordial', '75 ml tonic cordial'), { tables });
    expect(twice.reading.findings.map((f) => f.code)).toContain('hazard-dose');
    expect(read('gin-and-tonic.drink').reading.findings.map((f) => f.code)).not.toContain('hazard-dose');
  });
  it('the vegan cloud of the clear colada is vegan', () => {
    const { reading, problems } = read('clear-colada.drink', 'vegan');
    expect(problems).toEqual([]);
    expect(reading.vegan).toBe(true);
    expect(reading.findings.filter((x) => x.severity === 'stop')).toEqual([]);
  });
  it('the faults are named in `about`, each at its line and for its reason', () => {
    for (const [file, faults] of Object.entries(PLANTED)) {
      const { reading, document } = read(file);
      expect(document.head.about!.value).toMatch(/planted to be found/);
      expect(reading.findings.filter((x) => x.severity === 'stop').map((x) => [x.code, document.text.split('\n')[x.where.line! - 1]]).sort()).toEqual(faults.map(([code, line]) => [code, line]).sort());
      for (const [code, , says] of faults) expect(reading.findings.find((x) => x.code === code)!.message, code).toMatch(says);
    }
  });
  it.each(Object.keys(PLANTED))('what is offered for a fault of %s mends it and brings no other, and all of it together leaves no stop', (file) => {
    let { text } = read(file).document;
    const codes = (one: string) => readText(one, { tables }).reading.findings.filter((x) => x.severity === 'stop').map((x) => x.code);
    const before = codes(text);
    for (const fault of read(file).reading.findings.filter((x) => x.severity === 'stop')) {
      expect(fault.remedy, fault.code).toBeDefined();
      const after = codes(spliced(text, fault.remedy!.splices));
      expect(after, fault.code).not.toContain(fault.code);
      expect(before, fault.code).toEqual(expect.arrayContaining(after));
    }
    for (let turn = 0; turn < before.length; turn++) {
      const fault = readText(text, { tables }).reading.findings.find((x) => x.severity === 'stop');
      if (fault) text = spliced(text, fault.remedy!.splices);
    }
    expect(readText(text, { tables }).problems, text).toEqual([]);
    expect(codes(text), text).toEqual([]);
  });
});
