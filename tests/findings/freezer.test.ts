import { describe, expect, it } from 'vitest';
import { battery, read } from './battery.ts';

// Ice that stands in balance with spirit at -18 °C: 28 % ethanol by mass stay liquid (Melinder 2010, ethanol-water, freezing points).
const balance = 'freezing points of ethanol and water, Melinder 2010; what pours is common practice';
const room = 'densities of water and ice at 0 °C, CRC Handbook';
const gas = 'C6H12O6 to 2 CO2, Henry in water by Carroll 1991, in drinks by the EU rule for wine; what a bottle bears is common practice';
const live = (...steps: string[]) => ['A', 'Jar (ferment):', '1 l water', '100 g sugar', ...steps, 'Build:', '100 ml jar'].join('\n');
const trade = 'common practice, no source';
const batch = (...lines: string[]) => ['A', 'Batch (mix):', ...lines, 'Build:', '90 ml batch'].join('\n');
const kept = (celsius: string, ...lines: string[]) => batch(...lines).replace('A\n', `A\npreps at: ${celsius}\n`);

describe('the freezer', () => {
  battery('freezes-solid', {
    remedies: 'all',
    raises: [
      { text: batch('600 ml pineapple juice', 'freeze 24 h at -18 °C'), why: 'juice', source: balance },
      { text: batch('100 ml white rum 40 %', '500 ml pineapple juice', 'freeze 24 h at -18 °C'), why: '7 % vol', source: balance },
      { text: batch('600 ml strong black tea', '100 ml gin 40 %', 'freeze 24 h at -18 °C'), why: 'tea with a little gin', source: balance },
      { text: kept('-18 °C', '600 ml pineapple juice'), why: 'juice kept in the freezer', source: balance },
      { text: kept('-18 °C', '600 ml pineapple juice', 'chill 2 h at 4 °C', 'strain through a fine sieve'), why: 'chilled, strained and kept in the freezer', source: balance },
    ],
    twins: [
      { text: batch('600 ml gin 40 %', 'freeze 24 h at -18 °C'), why: 'spirit pours', source: balance },
      { text: batch('600 ml pineapple juice', 'chill 24 h at 4 °C'), why: 'in the fridge', source: balance },
      { text: kept('-18 °C', '600 ml gin 40 %'), why: 'spirit kept in the freezer pours', source: balance },
      { text: kept('4 °C', '600 ml pineapple juice'), why: 'juice kept in the fridge', source: balance },
      { text: kept('-18 °C', '600 ml pineapple juice', 'chill 2 h at 4 °C'), why: 'its own last step says where it stands', source: trade },
      { text: kept('-18 °C', '600 ml water').replace('mix', 'ice'), why: 'ice kept as ice', source: trade },
      { text: batch('600 ml pineapple juice', 'freeze 10 min at -18 °C'), why: 'ten minutes only chill it', source: 'cooling of a lump in still air' },
      { text: ['A', 'Cubes (ice):', '600 ml water', 'freeze 24 h at -18 °C', 'Build:', '60 ml white rum 40 %', '60 g cubes'].join('\n'), why: 'ice is wanted', source: trade },
    ],
    edges: [{ text: batch('230 ml white rum 40 %', '480 ml pineapple juice', 'freeze 24 h at -18 °C'), why: '13 % vol: two thirds of its water', source: balance }],
  });
  battery('freezes-slush', {
    remedies: 'all',
    raises: [
      { text: batch('400 ml gin 40 %', '200 ml water', 'freeze 24 h at -18 °C'), why: '27 % vol', source: balance },
      { text: batch('300 ml white rum 40 %', '300 ml pineapple juice', 'freeze 24 h at -18 °C'), why: '20 % vol with sugar', source: balance },
      { text: batch('600 ml dry vermouth 18 %', 'store in the freezer'), why: 'vermouth', source: balance },
      { text: kept('-18 °C', '600 ml dry vermouth 18 %'), why: 'vermouth kept in the freezer', source: balance },
    ],
    twins: [
      { text: batch('600 ml gin 47 %', '40 ml water', 'freeze 24 h at -18 °C'), why: '44 % vol', source: balance },
      { text: batch('600 ml white rum 40 %', 'freeze 24 h at -18 °C'), why: '40 % vol', source: balance },
      { text: batch('600 ml dry vermouth 18 %', 'chill 24 h at 4 °C'), why: 'in the fridge', source: balance },
    ],
    edges: [{ text: batch('560 ml gin 40 %', '100 ml water', 'freeze 24 h at -18 °C'), why: '34 % vol pours here, and is slush in a colder freezer', source: balance }],
  });
  battery('bottle-may-burst', {
    // ice: the fridge; gas: no line mends it, the sentence says what to do
    remedies: [0, 1, 2, 3, 4],
    raises: [
      { text: batch('690 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'a full bottle of juice: ice takes 9 % more room', source: room },
      { text: batch('490 ml water', 'freeze 24 h at -18 °C in a 500 ml bottle'), why: 'a full bottle of water', source: room },
      { text: batch('120 ml white rum 40 %', '580 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'a weak drink to the brim', source: room },
      { text: kept('-18 °C', '690 ml pineapple juice', 'strain into a 700 ml bottle'), why: 'a full bottle of juice kept in the freezer', source: room },
      { text: batch('690 ml pineapple juice', 'strain into a 700 ml bottle', 'freeze 24 h at -18 °C'), why: 'filled, then frozen', source: room },
      { text: live('ferment 7 days at 24 °C in a closed 1 l bottle'), why: 'a week of ferment in a closed bottle: tens of grams of gas', source: gas },
      { text: live('ferment 48 h at 24 °C', 'bottle', 'rest 72 h at 24 °C'), why: 'bottled while it ferments, three warm days', source: gas },
      { text: ['A', 'Soda (carbonate):', '300 ml water', 'carbonate at 3 bar at 2 °C', 'bottle', 'rest 24 h at 25 °C', 'Build:', '60 ml soda'].join('\n'), why: 'carbonated cold, left in the warm', source: gas },
    ],
    twins: [
      { text: batch('690 ml gin 40 %', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'spirit makes no ice', source: room },
      { text: batch('400 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'room for it', source: room },
      { text: batch('690 ml pineapple juice', 'chill 24 h at 4 °C in a 700 ml bottle'), why: 'in the fridge', source: room },
      { text: batch('600 ml pineapple juice', 'freeze 24 h at -18 °C'), why: 'no bottle is named', source: room },
      { text: live('ferment 7 days at 24 °C under an airlock'), why: 'under an airlock the gas goes', source: gas },
      { text: live('ferment 48 h at 24 °C', 'hold 10 min at 75 °C', 'cool to 20 °C', 'strain through a fine sieve', 'bottle', 'rest 72 h at 24 °C'), why: 'too hot for yeast before it was bottled', source: gas },
      { text: live('ferment 120 days at 24 °C', '4 g sugar', 'bottle', 'rest 14 days at 20 °C').replace('A\n', 'A\nbottle bears: 5 bar\n'), why: 'dry, primed with four grams, in a bottle made for five bar', source: gas },
    ],
    edges: [{ text: batch('650 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'fifty millilitres of room', source: room }],
  });
  // What ferments on in a closed bottle is said of also where the written steps end in time: it warns, and its margin is beyond the limit.
  it.each([
    [live('ferment 48 h at 24 °C', 'bottle', 'chill 12 h at 4 °C'), 'later'], [live('ferment 120 days at 24 °C', '4 g sugar', 'bottle', 'rest 14 days at 20 °C'), 'gas'],
  ])('warns of a bottle that may burst: %s', (text, degree) => {
    const found = read(text).reading.findings.filter((f) => f.code === 'bottle-may-burst');
    expect(found.map((f) => f.severity)).toEqual(['warn']);
    expect(found[0]!.margin!.unit).toBe('bar');
    expect(found[0]!.margin!.value > 0).toBe(degree === 'later');
    expect(found[0]!.margin!.high).toBeGreaterThan(0);
    expect(found[0]!.message).toMatch(/maker's limit/);
  });
});
