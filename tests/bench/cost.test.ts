import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const read = (text: string, bench?: string) => readText(text, { tables, ...(bench === undefined ? {} : { bench }) }).reading;
const costOf = (text: string, bench?: string) => read(text, bench).figures['cost'];

describe('printed costings', () => {
  // Foodservice management textbook, supplement of 2025, appendix A, "Costing a recipe formula", a baked dish for 50: 3 cups of milk at 4.30 a gallon are printed as 0.81 of 52.91
  it('three cups of milk at 4.30 a gallon cost 0.81', () => { expect(costOf('A\n3 cups whole milk', 'currency: USD\nmeasures: us\nShelf:\nwhole milk: 4.30 per gal')!.value).toBeCloseTo(0.81, 2); });
  // the same: 4 lb 10 oz of spinach at 1.55 a pound, printed 7.17 (1 lb = 453.59237 g by definition)
  it('4 lb 10 oz at 1.55 a pound cost 7.17', () => { expect(costOf(`A\n${(4.625 * 453.59237).toFixed(2)} g sugar`, 'currency: USD\nShelf:\nsugar: 1.55 per lb')!.value).toBeCloseTo(7.17, 2); });
  // Costing sheet of a catering course, "Buffet dessert" (total 6.12 for four): a kilo of coconut at 10.45, of which 250 g, printed 2.61; a litre of milk of 12 L at 20.08, printed 1.67
  it('a litre of twelve at 20.08 costs 1.67', () => { expect(costOf('A\n1 l whole milk', 'currency: AUD\nShelf:\nwhole milk: 20.08 per 12 l')!.value).toBeCloseTo(1.67, 2); });
  it('250 g of a kilo at 10.45 cost 2.61', () => { expect(costOf('A\n250 g sugar', 'currency: AUD\nShelf:\nsugar: 10.45 per kg')!.value).toBeCloseTo(2.61, 2); });
});

describe('whole coins', () => {
  const gin = (head: string, price: string, spec = 'A\n70 ml gin 40 %') => read(spec, `${head}\nShelf:\ngin: ${price} per 700 ml`);
  // ISO 4217 minor units: JPY 0, EUR 2, KWD 3
  it.each([['JPY', '2400', 0, 240], ['EUR', '24.00', 2, 240], ['KWD', '7.250', 3, 725]])('%s', (currency, price, digits, coins) => {
    const reading = gin(`currency: ${currency}`, price);
    expect(reading.cost).toMatchObject({ currency, digits, coins, partial: false, unpriced: [], assumed: false });
    expect(reading.figures['cost']!.unit).toBe(currency);
    expect(reading.figures['cost']!.value).toBeCloseTo(coins / 10 ** digits, 9);
    for (const n of [reading.cost!.coins, reading.cost!.low, reading.cost!.high]) expect(Number.isInteger(n)).toBe(true);
    expect(reading.cost!.low).toBeLessThan(coins);
    expect(reading.cost!.high).toBeGreaterThan(coins);
  });
  it('a spec’s own price without a currency is in that of the bench', () => {
    const spec = 'A\n70 ml gin 40 %\n\nShelf:\ngin: 24.00 per 700 ml';
    expect(read(spec, 'currency: KWD').cost).toMatchObject({ currency: 'KWD', coins: 2400 });
    expect(read(spec, 'currency: JPY').cost).toMatchObject({ currency: 'JPY', coins: 2 });
    expect(read(spec).cost).toMatchObject({ currency: 'EUR', coins: 240, assumed: true });
    expect(read(spec.replace('24.00', 'GBP 24.00')).cost).toMatchObject({ currency: 'GBP', coins: 240, assumed: false });
  });
});

describe('lines without a price', () => {
  const SOUR = 'Sour\n60 ml white rum 40 %\n25 ml lime juice\n20 ml simple syrup 1:1\n30 ml water\nshake 12 s';
  it('are named, and the cost is that of the others: at least', () => {
    const reading = read(SOUR, 'Shelf:\nwhite rum: 24.00 per 700 ml');
    expect(reading.cost).toMatchObject({ partial: true, unpriced: [{ path: ['build', 1], thing: 'lime juice' }, { path: ['build', 2], thing: 'simple syrup' }] });
    const more = read(SOUR, 'Shelf:\nwhite rum: 24.00 per 700 ml\nlime juice: 6 per l\nsimple syrup: 2 per l');
    expect(more.cost).toMatchObject({ partial: false, unpriced: [] });
    expect(more.figures['cost']!.value).toBeGreaterThan(reading.figures['cost']!.value);
  });
  it('a price in another currency does not count, and says so', () => {
    expect(read(SOUR, 'currency: EUR\nShelf:\nwhite rum: 24.00 per 700 ml\nlime juice: 6 GBP per l\nsimple syrup: 2 per l').cost!.unpriced).toEqual([{ path: ['build', 1], thing: 'lime juice', currency: 'GBP' }]);
  });
  it('without any price there is no cost, not nought', () => { const reading = read(SOUR); expect([reading.cost, reading.figures['cost']]).toEqual([undefined, undefined]); });
  it('the losses of a prep are paid for: what is not in the glass has its cost there too', () => {
    const prep = (step: string) => `A\nP (mix):\n500 ml pineapple juice\n${step}\nBuild:\nall of the p\n`;
    const bench = 'Shelf:\npineapple juice: 3.00 per l';
    const [whole, strained] = [read(prep('chill 1 h at 4 °C'), bench), read(prep('strain through cheesecloth'), bench)];
    expect(strained.figures['mass']!.value).toBeLessThan(whole.figures['mass']!.value - 5);
    expect(strained.figures['cost']!.value).toBeCloseTo(1.5, 6);
    expect(whole.figures['cost']!.value).toBeCloseTo(1.5, 6);
  });
});

// property of the account: when everything made is used, what the glass costs is what all that was put in costs
describe('nothing paid for is lost', () => {
  const BENCH = 'Shelf:\nwhite rum: 24.00 per 700 ml\ncoconut oil: 6.50 per 500 g\npineapple juice: 2.20 per l\nagar: 9.00 per 100 g\nlime juice: 8.00 per l\nblack tea: 1.50 per l\nwhole milk: 1.20 per l\nsugar: 1.30 per kg\ngold gelatin: 3.00 per 20 g';
  const PRICE = { rum: 24 / 700, oil: 6.5 / 500, pineapple: 2.2 / 1000, agar: 0.09, lime: 0.008, tea: 0.0015, milk: 0.0012 };
  it.each([
    ['a fat wash', 'A\nP (fat wash):\n300 ml white rum 40 %\n40 g coconut oil, melted at 40 °C\nrest 4 h at 30 °C\nfreeze 12 h at -18 °C\nstrain through cheesecloth\nBuild:\nall of the p\n', 300 * PRICE.rum + 40 * PRICE.oil],
    ['clearing with agar', 'A\nP (clarify with agar):\n1 g agar in 100 ml water\nboil 2 min\n400 ml pineapple juice at 40 °C\nchill 1 h at 4 °C\nbreak the gel\nstrain through cheesecloth\nBuild:\nall of the p\n', PRICE.agar + 400 * PRICE.pineapple],
    ['a milk wash', 'A\nP (milk wash):\n200 ml white rum 40 %\n100 ml black tea\n50 ml lime juice\n150 ml whole milk\nrest 1 h\nstrain through cheesecloth\nBuild:\nall of the p\n', 200 * PRICE.rum + 100 * PRICE.tea + 50 * PRICE.lime + 150 * PRICE.milk],
    ['a prep in a prep', 'A\nQ (mix):\n100 ml lime juice\nstrain through a paper filter\nP (mix):\nall of the q\n100 ml white rum 40 %\nstrain through cheesecloth\nBuild:\nall of the p\n', 100 * PRICE.lime + 100 * PRICE.rum],
  ])('%s', (_what, text, cost) => {
    const reading = read(text, BENCH);
    expect(reading.cost!.unpriced).toEqual([]);
    expect(reading.figures['cost']!.value).toBeCloseTo(cost, 6);
  });
  it('what the maker keeps is not in the glass’s cost: half used, half paid', () => {
    const text = (used: string) => `A\nP (mix):\n100 ml white rum 40 %\n100 ml lime juice\nBuild:\n${used} of the p\n`;
    expect(costOf(text('1/2'), BENCH)!.value).toBeCloseTo(costOf(text('all'), BENCH)!.value / 2, 6);
  });
  it('serves divides it', () => {
    const text = (serves: number) => `A\nserves: ${serves}\n100 ml white rum 40 %`;
    expect(costOf(text(4), BENCH)!.value).toBeCloseTo(costOf(text(1), BENCH)!.value / 4, 9);
  });
});
