import { describe, expect, it } from 'vitest';
import { compile } from '@washline/engine';
import { parse, readText } from '@washline/spec';
import { tables } from '@washline/tables';

// Heat reckoned here by numbers of its own, held against what stages and minutes say. CRC Handbook: water 4.19 J/(g K) (4 to 80 °C within 0.4 %), ice 333.6 J/g at
// 0 °C; sugar syrup 1:1 by weight 2.85 J/(g K) at 20 to 60 °C (Bubnik's formula after Llano 2005: 4.187 - 0.5 (2.97 - 0.46 - 0.0075 t)).
const WATER = 4.19, FUSION = 333.6;
// pineapple flesh is 86 % water, the rest sugars and fibre: 3.7 J/(g K) by Siebel's rule of 1892 for food above freezing, 0.837 + 3.349 x share of water
// (as in Singh and Heldman, Introduction to Food Engineering; from memory)
const FRUIT = 0.837 + 3.349 * 0.86;
const syrup = (celsius: number): number => 4.184 + 0.5 * (-2.971 + 0.46 + 0.0075 * celsius);

const read = (lines: readonly string[], later = false) => readText(lines.join('\n'), { tables, quick: true, ...(later ? { later: 'alone' as const } : {}) }).reading;
const stages = (...lines: string[]) => read(['A', 'Mix (mix):', ...lines, 'Build:', '60 ml mix', 'serve']).preps['mix']!.stages.map((s) => s.figures);
const inputsOf = (lines: readonly string[], later: 'alone' | null = null) => { const { inputs } = compile(parse(lines.join('\n')), tables, null, [], later).program; return (key: string) => inputs.find((i) => i.key === key || i.key.startsWith(key))!.value; };
/** W/K of a jar: h in W/(m² K) over the surface of a cube of so many mL. */
const jar = (h: number, mL: number): number => h * 6 * (mL * 1e-6) ** (2 / 3);

describe('heat in preps', () => {
  it.each([[300, 80, 200, 10], [500, 20, 20, 95], [100, 60, 400, 4]])('%d g of water at %d °C and %d g at %d °C: what one gives the other takes, to 1 %', (a, hot, b, cold) => {
    const t = stages(`${a} g water at ${hot} °C`, `${b} g water at ${cold} °C`, 'weigh')[0]!['temperature']!.value;
    expect(Math.abs(a * WATER * (hot - t) - b * WATER * (t - cold))).toBeLessThan(0.01 * a * WATER * Math.abs(hot - t));
  });
  it('water on a cold syrup: the same, to 1 % of the heat', () => {
    const t = stages('300 g water at 70 °C', '300 g simple syrup 1:1 by weight at 10 °C', 'weigh')[0]!['temperature']!.value;
    const given = 300 * WATER * (70 - t), taken = 300 * syrup((10 + t) / 2) * (t - 10);
    expect(Math.abs(given - taken)).toBeLessThan(0.01 * given);
  });
  it.each([[400, 90, 200, 4], [200, 20, 300, 4], [300, 5, 100, 60]])('%d g of water at %d °C on %d g of pineapple at %d °C: what one gives the other takes, to 4 %', (water, a, fruit, b) => {
    for (const order of [[`${water} g water at ${a} °C`, `${fruit} g pineapple flesh at ${b} °C`], [`${fruit} g pineapple flesh at ${b} °C`, `${water} g water at ${a} °C`]]) {
      const t = stages(...order, 'weigh')[0]!['temperature']!.value;
      expect(Math.abs(water * WATER * (a - t) - fruit * FRUIT * (t - b))).toBeLessThan(0.04 * water * WATER * Math.abs(a - t));
    }
  });
  it('pieces come along with what they lie in: put in before it is warmed, they do not cool it again', () => {
    const t = stages('200 g water at 20 °C', '200 g pineapple flesh at 4 °C', 'hold 10 min at 80 °C', '100 g water at 80 °C', 'weigh').at(-1)!['temperature']!.value;
    expect(t).toBeCloseTo(80, 6);
  });
  it('frozen pieces take the heat of their ice as well, and below 0 °C some of it stays ice', () => {
    const of = (celsius: number) => stages('300 g water at 60 °C', `100 g pineapple flesh at ${celsius} °C`, 'weigh')[0]!['temperature']!.value, warm = of(0), cold = of(-18);
    // nearly all of 86 g of water is ice at -18 °C: 333.6 J/g, and the ice 2.1 J/(g K) to 0 °C
    const taken = (300 * WATER + 100 * FRUIT) * (warm - cold);
    expect(taken).toBeGreaterThan(0.75 * 86 * FUSION);
    expect(taken).toBeLessThan(86 * FUSION + 100 * 18 * 2.5);
    const deep = stages('100 g white rum 40 % at 5 °C', '300 g pineapple flesh at -18 °C', 'weigh')[0]!['temperature']!.value;
    expect(deep).toBeLessThan(-3);
    expect(deep).toBeGreaterThan(-18);
  });
  // Newton's law of cooling for the liquid and its jar, stepped here a second at a time
  it('an hour in the fridge takes what still air can take through the jar, to 1 %', () => {
    const lines = ['A', 'Mix (mix):', '500 g water at 60 °C', 'chill 1 h at 4 °C', 'Build:', '60 ml mix', 'serve'], of = inputsOf(lines);
    const area = jar(1, 500.9), outer = of('place/exchange/air') * area, inner = 100 * area, glass = 150, air = of('place/fridge/4');
    let drink = 60, vessel = 60;
    for (let i = 0; i < 36_000; i++) { const q = inner * (drink - vessel); vessel += (0.1 * (q - outer * (vessel - air))) / glass; drink -= (0.1 * q) / (500 * WATER); }
    const t = read(lines).preps['mix']!.stages.at(-1)!.figures['temperature']!.value;
    expect(Math.abs(t - drink)).toBeLessThan(0.01 * (60 - drink));
  });
  it('what a freezer takes of water is heat down to 0 °C and then ice: both out of the same air, to 1 %', () => {
    const lines = ['A', 'Mix (mix):', '600 g water at 20 °C', 'freeze 5 h at -18 °C', 'Build:', '60 ml mix', 'serve'], of = inputsOf(lines);
    const carries = jar(of('place/exchange/freezer'), 601), air = of('place/freezer/-18');
    const cooling = ((600 * WATER) / carries) * Math.log((20 - air) / -air), ice = ((5 * 3600 - cooling) * carries * -air) / FUSION;
    const { frozen, temperature } = read(lines).preps['mix']!.figures;
    expect(temperature!.value).toBeCloseTo(0, 6);
    expect(Math.abs(6 * frozen!.value - ice)).toBeLessThan(0.01 * ice);
  });
  it('a pan at the boil loses matter, and what goes in steam is in no other account: mass closes, the rest is at the boil', () => {
    const [before, after] = stages('500 g water at 20 °C', 'weigh', 'boil 10 min').slice(-2);
    expect(after!['temperature']!.value).toBeCloseTo(100, 0);
    expect(after!['mass']!.value).toBeLessThan(before!['mass']!.value);
    expect(after!['mass']!.value).toBeGreaterThan(0.9 * before!['mass']!.value);
  });
});

describe('heat of pieces in a shaker', () => {
  const drink = (fruit: string) => read(['A', '60 ml white rum 40 % at 20 °C', '30 ml lime juice at 4 °C', ...(fruit ? [fruit] : []), 'muddle', 'shake 12 s over 150 g cubes at -5 °C', 'strain']).stages.find((s) => s.figures['dilution'])!.figures;
  // 100 g put in 20 K warmer bring 100 x 3.7 x 20 J; they melt ice (333.6 J/g), and what is left of them keeps 180 g of drink at 3.9 J/(g K), 50 g of pulp and a tin of
  // 150 J/K warmer; the ice that stays, warmer by less than a kelvin, and the air are not reckoned here
  it('warm pieces melt as much more ice and leave all as much warmer as their own heat does, to a tenth', () => {
    const cold = drink('100 g pineapple flesh at 4 °C'), warm = drink('100 g pineapple flesh at 24 °C');
    const more = (name: string): number => warm[name]!.value - cold[name]!.value;
    const brought = 100 * FRUIT * 20, went = more('volume') * FUSION + more('temperature') * (180 * 3.9 + 50 * FRUIT + 150);
    expect(more('dilution')).toBeGreaterThan(5);
    expect(Math.abs(went - brought)).toBeLessThan(0.1 * brought);
  });
});

describe('heat in the glass, half an hour', () => {
  // drink, ice and glass stepped here a tenth of a second at a time; water on ice at 0 °C, which stays at 0 °C
  const lines = ['A', 'glass: highball', '200 ml water at 15 °C', 'build over 150 g cubes at 0 °C', 'serve'];
  it('what drink and glass give and the room lends is what melts the ice, to 1 %', () => {
    const compiled = compile(parse(lines.join('\n')), tables, null, [], 'alone'), of = inputsOf(lines, 'alone');
    const glassIce = compiled.build!.glassIce!, value = (i: number) => compiled.program.inputs[i]!.value;
    // clinging water is not laid on ice that stands in a glass
    const ice0 = value(glassIce.mass), area0 = (6 * ice0 * 1e-6) / (0.9167 * glassIce.size_mm * 1e-3), wetted = Math.min(1, 200 / ((0.4 / 0.6) * (ice0 / 0.917)));
    const filled = Math.min(1, 0.2 + (0.8 * (200 + ice0 / 0.917)) / compiled.build!.glass.brim_mL), glass = of('glass/mass/highball') * 0.84 * filled;
    const still = of('agitation/still'), inner = of('conductance/drink to still glass'), outer = of('conductance/vessel to air'), room = of('place/room');
    let heat = 199.6 * WATER * 15, water = 199.6, ice = ice0, vessel = of('start/serving glass'), lent = 0;
    const start = { heat, vessel }, later = read(lines, true).later!;
    for (let i = 1; i <= 18_000; i++) {
      const drink = heat / (water * WATER), q = still * area0 * wetted * (ice / ice0) ** (2 / 3) * drink, w = inner * (vessel - drink), a = outer * (room - vessel);
      heat += 0.1 * (w - q); vessel += (0.1 * (a - w)) / glass; lent += 0.1 * a;
      const melts = (0.1 * q) / FUSION;
      ice -= melts; water += melts;                                          // at 0 °C: it brings no heat
      const told = later.find((l) => l.minutes * 600 === i);
      if (!told) continue;
      const t = told.figures['temperature']!.value, melted = told.figures['melted']!.value;
      expect(Math.abs(melted - (ice0 - ice))).toBeLessThan(0.01 * (ice0 - ice));
      expect(Math.abs(t - heat / (water * WATER))).toBeLessThan(0.1);
      // the account, its drink and its melt as they are told
      const paid = start.heat - (199.6 + melted) * WATER * t + glass * (start.vessel - vessel) + lent;
      expect(Math.abs(paid - melted * FUSION)).toBeLessThan(0.01 * melted * FUSION);
    }
  });
});
