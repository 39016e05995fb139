import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText, type Answer } from '@washline/spec';
import { tables } from '@washline/tables';

// Oracle: the same text read from nothing. The frame of a stroke must say the same numbers; only its ranges are those of the text before.
const demo = readdirSync('demo').filter((f) => f.endsWith('.drink')).map((f) => [f, readFileSync(`demo/${f}`, 'utf8')] as const);
const AMOUNT = /^((?:top with |float )?)(\d+(?:[.,]\d+)?)( ?(?:ml|g|cl|oz|tsp|tbsp|cup|dash|dashes|drops|barspoon|gold gelatin sheets?|mint|egg|limes?|cm|pinch|jigger|sprigs|cans) )/;

/** Every number a reading shows, by where it stands. */
function numbers({ reading }: Answer): Map<string, number> {
  const out = new Map<string, number>(), all = (of: string, figures: Readonly<Record<string, { readonly value: number }>>): void => { for (const [name, { value }] of Object.entries(figures)) out.set(`${of} ${name}`, value); };
  all('drink', reading.figures);
  reading.stages.forEach((st, i) => all(`stage ${i}`, st.figures));
  for (const [key, prep] of Object.entries(reading.preps)) { all(key, { ...prep.figures, yield: prep.yield }); prep.stages.forEach((st, i) => all(`${key} stage ${i}`, st.figures)); }
  reading.glass?.layers.forEach((l, i) => { out.set(`layer ${i} to`, l.to_mm); });
  if (reading.glass !== null) out.set('washline', reading.glass.washline_mm);
  return out;
}
/** The text with the number of one line another. */
function turned(text: string, line: number, by: number): string {
  return text.split('\n').map((one, i) => (i !== line ? one : one.replace(AMOUNT, (_, verb: string, n: string, unit: string) => `${verb}${String(Number((Number(n.replace(',', '.')) * by).toPrecision(4))).replace('.', n.includes(',') ? ',' : '.')}${unit}`))).join('\n');
}

const bar = ['2 oz white rum', '1 tsp simple syrup', '1 tbsp honey', '0.25 cup pineapple juice', '3 dashes orange bitters', '4 drops saline', '1 barspoon absinthe', '8 mint leaves', '1 egg white', '2 limes', '2 cm ginger', '1 pinch salt', '1 jigger dry sherry', '2 sprigs mint', '1 cans coconut milk'];
const drinks = [...demo, ['every unit of a bar', ['A', 'Syrup (mix):', '100 g sugar', '2 oz water', '2 gold gelatin sheets', '1 dash orange bitters', 'Build:', ...bar, '20 ml syrup', 'shake 12 s over 150 g cubes', 'strain'].join('\n')] as const];

describe('one amount is another number', () => {
  it.each(drinks)('%s: every figure of the frame is that of the text read anew, for every amount and by how much ever', (_, text) => {
    const before = readText(text, { tables, quick: true, before: null }).ranged!, lines = text.split('\n').flatMap((one, i) => (AMOUNT.test(one) ? [i] : []));
    expect(lines.length).toBeGreaterThan(1);
    let carried = 0;
    for (const line of lines) for (const by of [0.5, 0.93, 1.1, 10]) {
      const other = turned(text, line, by), now = readText(other, { tables, quick: true, before }), anew = readText(other, { tables, quick: true, before: null });
      if (now.ranged === null) carried += 1;
      const a = numbers(now), b = numbers(anew);
      expect([...a.keys()]).toEqual([...b.keys()]);
      for (const [of, value] of b) expect(Math.abs(a.get(of)! - value), `${other.split('\n')[line]}: ${of} ${a.get(of)} for ${value}`).toBeLessThanOrEqual(1e-9 * Math.abs(value) + 1e-12);
      for (const [path, g] of Object.entries(anew.weights!)) expect(now.weights![path]).toBeCloseTo(g, 9);
      expect(now.problems).toEqual(anew.problems);
    }
    expect(carried).toBeGreaterThan(0);
  });
  it('an amount in any unit of a bar is a number that moves: none compiles the spec', () => {
    const [, text] = drinks.at(-1)!, before = readText(text, { tables, quick: true, before: null }).ranged!;
    for (const [i, line] of text.split('\n').entries()) if (AMOUNT.test(line)) expect(readText(turned(text, i, 1.1), { tables, quick: true, before }).ranged, line).toBeNull();
  });
  it('what else changes is compiled anew: a name, a unit, a step, a line of the variant that is not read', () => {
    const text = demo.find(([name]) => name === 'clear-colada.drink')![1], before = readText(text, { tables, quick: true, before: null }).ranged!;
    for (const [from, to] of [['60 ml coconut rum\n45', '60 g coconut rum\n45'], ['stir 25 s', 'stir 35 s'], ['45 ml clear pineapple', '45 ml pineapple juice'], ['3 g methylcellulose', '4 g methylcellulose']] as const) {
      const other = text.replace(from, to), now = readText(other, { tables, quick: true, before }), anew = readText(other, { tables, quick: true, before: null });
      expect(other).not.toBe(text);
      const a = numbers(now);
      for (const [of, value] of numbers(anew)) expect(a.get(of), `${to}: ${of}`).toBe(value);
    }
  });
});
