// Every limit of data/findings.json from its two sides: a spec whose number lies just under it and one just over it. The limits themselves are
// common practice or surveys, as their rows say; what the specs hold is arithmetic beside them. They keep a limit from moving unseen.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText, type SaidReading } from '@washline/spec';
import { tables } from '@washline/tables';

const GRADES = ['defined', 'measured', 'own', 'compiled', 'reviewed', 'predicted', 'trade', 'memory'];
interface Limit { readonly value: number; readonly unit: string; readonly source: string; readonly grade: string; readonly why: string }
const text = (name: string) => readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
const ROWS = (JSON.parse(text('data/findings.json')) as { codes: { code: string; limits?: Record<string, Limit> }[] }).codes;
const LIMITS = ROWS.flatMap(({ code, limits }) => Object.entries(limits ?? {}).map(([name, row]) => ({ code, name, row })));

type Read = (text: string) => SaidReading;
const plain: Read = (t) => readText(t, { tables }).reading;
/** A bench with a jigger of its own. */
const benched: Read = (t) => readText(t, { tables, bench: 'jigger: 50 ml' }).reading;
/** A larder in which one thing has another number in one column. */
const withCell = (id: string, column: string, value: number): Read => (t) => readText(t, { tables: { ...tables, ingredient: (key: string) => {
  const row = tables.ingredient(key);
  return row && row.id === id ? { ...row, cells: { ...row.cells, [column]: { ...row.cells[column]!, value } } } : row;
} } }).reading;

/** What is said of a code: how gravely, and on which side of its limit. */
const said = (r: SaidReading, code: string) => r.findings.filter((f) => f.code === code).map((f) => `${f.severity} ${f.margin!.value > 0 ? 'beyond' : 'within'}`).join(', ') || 'silent';
/** What the remedies of a code write. */
const remedy = (r: SaidReading, code: string) => r.findings.filter((f) => f.code === code).flatMap((f) => f.remedy?.splices.map((s) => s.insert.trim()) ?? ['none']).join(' | ');
/** Its margin to a tenth. */
const margin = (r: SaidReading, code: string) => r.findings.filter((f) => f.code === code).map((f) => f.margin!.value.toFixed(1)).join(', ');
const assumed = (r: SaidReading) => String(r.assumed.some((a) => a.key === 'vessel/shaker volume'));

type Side = readonly [text: string, says: string, read?: Read];
const done = new Set<string>();
/** A limit from both sides. */
function brink(code: string, name: string, why: string, under: Side, over: Side, shows: (r: SaidReading, code: string) => string = said): void {
  done.add(`${code} ${name}`);
  it(`${code} turns at its limit ${name}: ${why}`, () => {
    for (const [spec, says, read = plain] of [under, over]) expect(shows(read(spec), code), spec).toBe(says);
  });
}

const lines = (...l: string[]) => ['A', ...l].join('\n');
const prep = (head: string, taken: string, ...l: string[]) => lines(head, ...l, 'Build:', taken);
const jelly = (...l: string[]) => lines('Jelly (gel):', ...l, 'chill 6 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g jelly');
const foam = (size: number, chargers: number, ...l: string[]) => lines('Cloud (siphon foam):', ...l, `charge ${chargers} N2O in a ${size} ml siphon`, 'chill 4 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g cloud');
const air = (...l: string[]) => prep('Air (foam):', '10 g air', ...l);
const SHEETS = '4 gold gelatin sheets, soaked 10 min in cold water', COLD = ['strain through a fine sieve', 'cool to 20 °C'], ORANGE = '350 ml orange juice, at 60 °C';
const rested = (rest: string) => foam(500, 1, SHEETS, ORANGE, ...COLD).replace('4 h at 4 °C', rest);
const wash = (fat: string, ...l: string[]) => prep('Butter rum (fat wash):', '60 ml butter rum', '300 ml white rum 40 %', fat, ...l, 'strain through cheesecloth');
const BUTTER = '60 g butter, melted at 60 °C';
const punch = (...l: string[]) => prep('Punch (milk wash):', '60 ml punch', ...l, 'strain through cheesecloth');
const enzyme = (...l: string[]) => prep('Clear (clarify with enzyme):', '20 ml clear', ...l, '0.6 g pectinase', 'rest 1 h', 'strain through a paper filter');
const cleared = (...build: string[]) => lines('Clear pineapple (clarify with agar):', '0.8 g agar in 80 ml water', 'boil 2 min', '320 ml pineapple juice at 45 °C', 'chill 1 h at 4 °C', 'break the gel', 'strain through cheesecloth', 'Build:', ...build);
const batch = (water: number, celsius: number, spirit = '100 ml white rum 40 %') => prep('Batch (mix):', '60 ml batch', spirit, `${water} ml water`, `freeze 24 h at ${celsius} °C`);
const floated = (top: string, ...l: string[]) => lines('glass: rocks', ...l, `float ${top}`);
const rich = (sugar: string, ...l: string[]) => prep('Rich (syrup):', '20 ml rich', sugar, '100 g water', ...l);
const HOT = ['heat to 80 °C', 'cool to 20 °C'];

describe('measures', () => {
  brink('measure-vague', 'moves', 'up to a gram of nutmeg reaches its limit of a gram', [lines('2000 ml water', '2000 ml pineapple juice', 'salt to taste'), ''], [lines('60 ml water', '15 ml lime juice', 'nutmeg to taste'), '0.3 g'], remedy);
  brink('unit-two-meanings', 'moves', 'a tablespoon in ever more rum', [lines('1 tbsp lime juice', '640 ml white rum 40 %'), 'warn within'], [lines('1 tbsp lime juice', '600 ml white rum 40 %'), 'warn beyond']);
  brink('unit-two-meanings', 'sharp', 'a tenth below one it may still be, more than a tenth not', [lines('60 ml white rum 40 %', '20 ml simple syrup 1:1', '130 ml pineapple juice'), 'silent'], [lines('60 ml white rum 40 %', '20 ml simple syrup 1:1', '120 ml pineapple juice'), 'warn within'], (r) => said(r, 'ratio-unclear'));
  brink('ratio-unclear', 'moves', 'a syrup in ever more juice', [lines('60 ml white rum 40 %', '20 ml simple syrup 1:1', '110 ml pineapple juice'), 'warn within'], [lines('60 ml white rum 40 %', '20 ml simple syrup 1:1', '100 ml pineapple juice'), 'warn beyond']);
  brink('dose-below-scale', 'error', '1.96 x 0.6 g of 4.75 g are 24.8 %, of 4.6 g 25.6 %', [lines('scale reads: 1 g', 'Mix (mix):', '4.75 g agar in 75 ml water', '300 ml pineapple juice', 'Build:', '60 ml mix'), 'silent'], [lines('scale reads: 1 g', 'Mix (mix):', '4.6 g agar in 75 ml water', '300 ml pineapple juice', 'Build:', '60 ml mix'), 'warn beyond']);
  brink('jigger-too-coarse', 'moves', '37 ml of lime in a larger drink', [lines('60 ml gin 40 %', '37 ml lime juice', '15 ml water'), 'warn within'], [lines('60 ml gin 40 %', '37 ml lime juice', '10 ml water'), 'warn beyond']);
  brink('jigger-too-coarse', 'largest', '89 and 91 ml with a jigger of 50 ml', [lines('89 ml lime juice', '60 g water'), 'warn beyond', benched], [lines('91 ml lime juice', '60 g water'), 'silent', benched]);
  brink('jigger-too-coarse', 'near', '61.5 ml are 2.4 % from the line of 60, 62.5 ml are 4 %', [lines('60 ml water', '61.5 ml gin 40 %'), 'silent'], [lines('60 ml water', '62.5 ml gin 40 %'), 'warn within']);
  brink('jigger-too-coarse', 'rounded', '6.7 ml are 11.9 % from the line of 7.5, 6.65 ml are 12.8 %', [lines('60 ml water', '6.7 ml citric acid solution 50 %'), '7.5'], [lines('60 ml water', '6.65 ml citric acid solution 50 %'), '8.31 g'], remedy);
});

describe('foams and gels', () => {
  brink('foam-no-whipper', 'least', 'a quarter of 5 g/kg of gelatin is 1.25 g/kg', [foam(500, 1, '0.36 g gelatin', '300 g orange juice, strained, at 60 °C', ...COLD), 'stop beyond'], [foam(500, 1, '0.39 g gelatin', '300 g orange juice, strained, at 60 °C', ...COLD), 'warn within']);
  brink('foam-no-whipper', 'weak', 'a quarter of 7.5 g/kg, by 0.3, is 6.25 g/kg', [foam(500, 1, '1.86 g high-viscosity methylcellulose', '300 g orange juice, strained', ...COLD), 'stop beyond'], [foam(500, 1, '1.89 g high-viscosity methylcellulose', '300 g orange juice, strained', ...COLD), 'warn within']);
  brink('foam-no-whipper', 'usual', 'a quarter of 10 g/kg, by 0.3, is 8.3 g/kg', [air('2.46 g gum arabic', '300 g lime juice'), 'stop beyond'], [air('2.58 g gum arabic', '300 g lime juice'), 'silent']);
  brink('foam-drains', 'keeps', 'for 300 g of an air 0.9 g', [air('2 g soy lecithin', '298 g lime juice'), '0.9 g xanthan'], [air('2 g soy lecithin', '398 g lime juice'), '1.2 g xanthan'], remedy);
  brink('foam-short-rest', 'least', '29 and 31 min', [rested('29 min at 4 °C'), 'stop beyond'], [rested('31 min at 4 °C'), 'warn within']);
  brink('foam-short-rest', 'usual', '59 and 61 min', [rested('59 min at 4 °C'), 'warn within'], [rested('61 min at 4 °C'), 'silent']);
  brink('foam-short-rest', 'cold', 'at 9.5 and 10.5 °C', [rested('4 h at 9.5 °C'), 'silent'], [rested('4 h at 10.5 °C'), 'warn beyond']);
  brink('gel-dose-low', 'fails', '0.6 of 2 g/kg of agar', [jelly('0.345 g agar', '300 g apple juice', 'boil 2 min'), 'stop beyond'], [jelly('0.375 g agar', '300 g apple juice', 'boil 2 min'), 'warn within']);
  brink('gel-dose-low', 'short', '0.9 of 2 g/kg of agar', [jelly('0.525 g agar', '300 g apple juice', 'boil 2 min'), 'warn within'], [jelly('0.57 g agar', '300 g apple juice', 'boil 2 min'), 'silent']);
  brink('gel-dose-high', 'much', '1.25 of 15 g/kg of agar are 5.625 g in 300 g', [jelly('5.6 g agar', '294.4 g apple juice', 'boil 2 min'), 'warn within'], [jelly('5.65 g agar', '294.35 g apple juice', 'boil 2 min'), 'warn beyond']);
  brink('gel-not-set', 'sets', 'half of four hours', [jelly(SHEETS, '250 ml orange juice, at 60 °C').replace('6 h', '1.9 h'), 'stop beyond'], [jelly(SHEETS, '250 ml orange juice, at 60 °C').replace('6 h', '2.1 h'), 'warn within']);
  brink('gel-not-set', 'short', 'nine tenths of four hours', [jelly(SHEETS, '250 ml orange juice, at 60 °C').replace('6 h', '3.5 h'), 'warn within'], [jelly(SHEETS, '250 ml orange juice, at 60 °C').replace('6 h', '3.7 h'), 'silent']);
  brink('gel-too-acid', 'ample', '1.3 of 5 g/kg of gelatin', [jelly('1.6 g gelatin', '248.4 g orange juice, at 60 °C'), 'note beyond'], [jelly('1.65 g gelatin', '248.35 g orange juice, at 60 °C'), 'silent']);
  brink('gel-sets-early', 'hot', 'carrageenan heated to 59 and 60.5 °C', [jelly('2 g kappa carrageenan', '60 ml water', 'heat to 59 °C', '250 ml apple juice at 20 °C'), 'warn within'], [jelly('2 g kappa carrageenan', '60 ml water', 'heat to 60.5 °C', '250 ml apple juice at 20 °C'), 'stop beyond']);
  const ginger = (celsius: number) => jelly(SHEETS, '250 g ginger syrup', `rest 48 h at ${celsius} °C`, '100 ml water at 60 °C');
  brink('gel-digested', 'matters', 'two days at 44.5 and 45.5 °C', [ginger(44.5), 'stop beyond'], [ginger(45.5), 'silent']);
  brink('gel-digested', 'fresh', 'syrups of the first and second class of protease', [jelly(SHEETS, '250 g pineapple syrup', '100 ml water at 60 °C'), 'warn within'], [jelly(SHEETS, '250 g ginger syrup', '100 ml water at 60 °C'), 'stop beyond']);
  brink('gel-digested', 'sold', 'two decades are needed, 2.6 lost before it is bought; none of what is fresh', [jelly(SHEETS, '250 g fresh pineapple juice'), '2.0'], [jelly(SHEETS, '250 g pineapple juice'), '-0.6'], margin);
  brink('siphon-undercharged', 'for_one', '499.5 and 500.5 ml of cream', [foam(1000, 1, '499.5 ml heavy cream'), 'warn within'], [foam(1000, 1, '500.5 ml heavy cream'), 'stop beyond']);
  brink('siphon-undercharged', 'most', 'two chargers may go into half a litre, three may not', [foam(500, 1, SHEETS, '700 ml orange juice, at 60 °C', ...COLD), '2 N2O'], [foam(500, 1, SHEETS, '1200 ml orange juice, at 60 °C', ...COLD), 'none'], remedy);
  brink('siphon-blocks', 'pulp', 'the first and second class of turbidity', [foam(500, 1, '60 ml aquafaba', '240 ml apple juice'), 'silent'], [foam(500, 1, '60 ml aquafaba', '240 ml lime juice'), 'warn beyond']);
});

describe('washes and clearing', () => {
  brink('wash-order', 'before', '0.44 and 0.48 g of acid before the milk, 4 g behind it', [punch('0.44 g citric acid', '300 ml white rum 40 %', '150 ml whole milk', '4 g citric acid', 'rest 1 h'), 'silent'], [punch('0.48 g citric acid', '300 ml white rum 40 %', '150 ml whole milk', '4 g citric acid', 'rest 1 h'), 'stop beyond']);
  brink('wash-order', 'sour', 'coffee has 0.06 g in 100 g, ginger beer 0.2', [punch('1000 g brewed coffee', '150 ml whole milk', '4 g citric acid', 'rest 1 h'), 'silent'], [punch('300 g ginger beer', '150 ml whole milk', '4 g citric acid', 'rest 1 h'), 'stop beyond']);
  brink('wash-short-rest', 'least', '29 and 31 min', [punch('150 ml whole milk', '300 ml white rum 40 %', '100 ml lemon juice', 'rest 29 min'), 'warn beyond'], [punch('150 ml whole milk', '300 ml white rum 40 %', '100 ml lemon juice', 'rest 31 min'), 'warn within']);
  brink('fat-set-hard', 'setting', 'a rest at 7.5 °C is none, one at 8.5 °C is one in which the fat is hard', [wash(BUTTER, 'rest 1 h at 7.5 °C', 'freeze 12 h at -18 °C'), 'rest 4 h at 45 °C'], [wash(BUTTER, 'rest 1 h at 8.5 °C', 'freeze 12 h at -18 °C'), '45 °C'], remedy);
  brink('fat-not-frozen', 'freeze', '5.9 and 6.1 h', [wash(BUTTER, 'freeze 5.9 h at -18 °C'), 'stop beyond'], [wash(BUTTER, 'freeze 6.1 h at -18 °C'), 'warn within']);
  brink('fat-not-frozen', 'fridge', 'half of 11.9 and of 12.1 h', [wash(BUTTER, 'freeze 11.9 h at 4 °C'), 'stop beyond'], [wash(BUTTER, 'freeze 12.1 h at 4 °C'), 'warn within']);
  brink('fat-not-frozen', 'freezer', 'eight hours at -5.5 and -4.5 °C', [wash(BUTTER, 'freeze 8 h at -5.5 °C'), 'warn within'], [wash(BUTTER, 'freeze 8 h at -4.5 °C'), 'stop beyond']);
  brink('fat-not-frozen', 'cold', 'a day at 11.5 and 12.5 °C', [wash(BUTTER, 'freeze 24 h at 11.5 °C'), 'silent'], [wash(BUTTER, 'freeze 24 h at 12.5 °C'), 'stop beyond']);
  brink('fat-without-aroma', 'aroma', 'a butter of 0.145 and one of 0.155', [wash(BUTTER, 'freeze 12 h at -18 °C'), 'warn beyond', withCell('butter-unsalted', 'aroma', 0.145)], [wash(BUTTER, 'freeze 12 h at -18 °C'), 'silent', withCell('butter-unsalted', 'aroma', 0.155)]);
  brink('enzyme-too-acid', 'works', 'lemon juice with a little orange', [enzyme('250 ml lemon juice', '39 ml orange juice'), 'stop beyond'], [enzyme('250 ml lemon juice', '78 ml orange juice'), 'warn within']);
  brink('enzyme-too-acid', 'doubt', 'with much of it', [enzyme('250 ml lemon juice', '700 ml orange juice'), 'warn within'], [enzyme('250 ml lemon juice', '900 ml orange juice'), 'silent']);
  brink('clear-turns-cloudy', 'clear', 'a tenth of lime juice, of class 2', [cleared('90 ml clear pineapple', '9 ml lime juice'), 'warn within'], [cleared('90 ml clear pineapple', '11 ml lime juice'), 'warn beyond']);
  brink('clear-turns-cloudy', 'cloudy', 'limoncello is of class 1, lime juice of class 2', [cleared('30 ml clear pineapple', '10 ml limoncello'), 'silent'], [cleared('30 ml clear pineapple', '10 ml lime juice'), 'warn beyond']);
  brink('clear-turns-cloudy', 'louche', 'pastis brought to 34 and to 36 % vol', [cleared('20 ml clear pineapple', '60 ml pastis 45.3 %'), 'warn beyond'], [cleared('20 ml clear pineapple', '60 ml pastis 48 %'), 'silent']);
});

describe('infusions', () => {
  // tea leaf at 20 °C: 1.1 min x exp(40300 / 8.3145 x (1/293.15 - 1/368.15)) = 31.9 min; whole spice 40 times that, peel 20 times, fresh herb 4 times
  const steeped = (...l: string[]) => prep('Jar (infusion):', '50 ml jar', ...l, 'strain through a fine sieve');
  const rum = (thing: string, time: string) => steeped('500 ml white rum 40 % at 20 °C', thing, `steep ${time} at 20 °C`);
  const gin = (time: string) => rum('20 g black tea leaves', time), hot = (time: string) => steeped('1 l water at 95 °C', '10 g black tea leaves', `hold ${time} at 95 °C`);
  brink('infusion-short', 'least', '0.288 x 40 x 31.9 min are 6.1 h: clove for 6.0 and 6.3 h', [rum('10 g clove', '6 h'), 'note beyond'], [rum('10 g clove', '6.3 h'), 'silent']);
  brink('infusion-short', 'enough', '1.5 x 20 x 31.9 min are 15.96 h, of fresh herb 3.2 h, each to the next hour', [rum('20 g lemon peel at 20 °C', '1 h'), '16 h'], [rum('20 g mint at 20 °C', '20 min'), '4 h'], remedy);
  brink('infusion-bitter', 'most', '10 x 1.1 min are 11: tea for 10.9 and 11.1 min', [hot('10.9 min'), 'silent'], [hot('11.1 min'), 'note beyond']);
  brink('infusion-bitter', 'good', '5 x 31.9 min are 2.7 h, at 4 °C 5 x 83 min are 6.9 h, to the nearest', [gin('24 h'), '3 h'], [steeped('1 l water at 4 °C', '10 g black tea leaves', 'chill 24 h at 4 °C'), '7 h'], remedy);
  brink('infusion-bitter', 'cup', 'what is hot is told its minutes, what is cold its hours', [hot('20 min'), '4 min'], [gin('24 h'), '3 h'], remedy);
  const bitters = (pct: number) => prep('Jar (bitters):', '5 ml jar', `200 ml vodka ${pct} %`, '5 g gentian root', 'rest 7 days at 20 °C', 'strain through a paper filter');
  brink('bitters-weak', 'strong', 'vodka of 34.9 and 35.3 %', [bitters(34.9), 'warn beyond'], [bitters(35.3), 'warn within']);
});

describe('glass, ice, layers and gas', () => {
  brink('glass-overfull', 'room', 'a highball of 330.6 mL holds 1.22 times 270.9 mL: the next is taken beyond', [lines('glass: fizz', '270 ml orange juice'), 'highball'], [lines('glass: fizz', '272 ml orange juice'), 'can'], remedy);
  brink('glass-underfilled', 'full', 'a quarter of 330.6 mL is 82.7 mL', [lines('glass: highball', '82 ml white rum 40 %'), 'note beyond'], [lines('glass: highball', '84 ml white rum 40 %'), 'silent']);
  brink('vessel-overfull', 'near', '0.7 of 700 mL are 490 mL: below it the size of the shaker is not asked', [lines('100 ml white rum 40 %', '380 ml water', 'shake 12 s over 1 g cubes', 'strain'), 'false'], [lines('100 ml white rum 40 %', '400 ml water', 'shake 12 s over 1 g cubes', 'strain'), 'true'], assumed);
  brink('ice-does-not-fit', 'large', 'cubes of 39.5 and 40.5 mm over a flute', [lines('glass: flute', '60 ml white rum 40 %', 'stir 20 s over 200 g cubes', 'strain over 1 clear cube 39.5 mm'), 'silent'], [lines('glass: flute', '60 ml white rum 40 %', 'stir 20 s over 200 g cubes', 'strain over 1 clear cube 40.5 mm'), 'stop beyond']);
  brink('layer-weak', 'stays', 'gin of 45 and of 46 % vol on rum of 40', [floated('15 ml gin 45 %', '60 ml white rum 40 %'), 'warn beyond'], [floated('15 ml gin 46 %', '60 ml white rum 40 %'), 'warn within']);
  brink('layer-invisible', 'tells', 'rum over a syrup with half a millilitre of grenadine, and with a little more', [floated('15 ml white rum 40 %', '60 ml simple syrup 1:1', '0.5 ml grenadine'), 'note beyond'], [floated('15 ml white rum 40 %', '60 ml simple syrup 1:1', '0.6 ml grenadine'), 'silent']);
  brink('layer-invisible', 'clouds', 'rum over water with 0.32 of skim milk, of class 3, and with 0.34', [floated('15 ml white rum 40 %', '40.8 ml water', '19.2 ml skim milk'), 'note beyond'], [floated('15 ml white rum 40 %', '39.6 ml water', '20.4 ml skim milk'), 'silent']);
  brink('gas-lost', 'sparkles', 'stout has two volumes, water none', [lines('40 ml white rum 40 %', '90 ml water', 'shake 10 s over 150 g cubes', 'strain'), 'silent'], [lines('40 ml white rum 40 %', '90 ml stout', 'shake 10 s over 150 g cubes', 'strain'), 'warn beyond']);
  const fizz = (bar: number) => prep('Fizz (carbonate):', '100 ml fizz', '500 ml water', `carbonate at ${bar} bar at 10 °C`);
  brink('carbonation-low', 'flat', 'water at 0.65 and 0.75 bar and 10 °C', [fizz(0.65), 'warn beyond'], [fizz(0.75), 'warn within']);
});

describe('cold, sugar and keeping', () => {
  brink('freezes-solid', 'solid', 'rum with 170 and 175 ml of water at -18 °C', [batch(170, -18), 'warn within'], [batch(175, -18), 'stop beyond']);
  brink('freezes-slush', 'slush', 'overproof rum with 275 and 285 ml of water at -14 °C', [batch(275, -14, '200 ml overproof rum 63 %'), 'warn within'], [batch(285, -14, '200 ml overproof rum 63 %'), 'warn beyond']);
  const litre = batch(3000, -14, '2000 ml overproof rum 63 %');
  for (const name of ['colder', 'pours']) brink('freezes-solid', name, 'water that lets a batch pour at -19 °C, where ethanol of 28 to 29 % by mass begins to freeze (CRC, from memory)', [batch(240, -14, '200 ml overproof rum 63 %'), '175'], [litre, '1740'], (r) => remedy(r, 'freezes-slush'));
  brink('freezes-solid', 'leaves', 'with too little rum it would keep less than 0.15 of its 3 L of water', [batch(3000, -14, '570 ml overproof rum 63 %'), 'chill 4 h at 4 °C'], [batch(3000, -14, '620 ml overproof rum 63 %'), '480'], remedy);
  brink('syrup-crystallises', 'sugar', 'a sugar of 89 and one of 91 g of sucrose in 100 g', [rich('250 g sugar', ...HOT), 'silent', withCell('sugar-white', 'sucrose_g', 89)], [rich('250 g sugar', ...HOT), 'warn beyond', withCell('sugar-white', 'sucrose_g', 91)]);
  brink('syrup-crystallises', 'below', 'water that brings 220 and 250 g of sugar to three below what water holds at 0 °C', [rich('220 g sugar', ...HOT), '45 ml water'], [rich('250 g sugar', ...HOT), '60 ml water'], remedy);
  brink('will-not-dissolve', 'hot', 'heat is enough for 315 g of sugar in 100 g of water, for 320 g it is not', [rich('315 g sugar', 'rest 1 h'), 'heat to 80 °C'], [rich('320 g sugar', 'rest 1 h'), '85 ml water'], remedy);
  brink('egg-raw', 'cooked', 'yolk brought to 70.5 and 71.5 °C', [prep('Curd (mix):', '20 g curd', '100 g egg yolk', '100 g sugar', 'heat to 70.5 °C'), 'warn beyond'], [prep('Curd (mix):', '20 g curd', '100 g egg yolk', '100 g sugar', 'heat to 71.5 °C'), 'silent']);
  const milk = (rum: number, white: number, celsius: number) => prep('Rum milk (mix):', '60 ml rum milk', `${rum} ml white rum 40 %`, `${white} ml whole milk`, `rest 6 h at ${celsius} °C`);
  brink('cold-chain', 'spirited', 'milk with rum, 19.5 and 20.5 % vol', [milk(121.875, 128.125, 20), 'stop beyond'], [milk(128.125, 121.875, 20), 'silent']);
  brink('cold-chain', 'out', 'six hours at 7.5 and 8.5 °C', [milk(50, 250, 7.5), 'silent'], [milk(50, 250, 8.5), 'stop beyond']);
  const plant = (name: string, ...l: string[]) => lines(`120 ml ${name}`, ...l);
  brink('curdles-in-glass', 'hot', 'soy at 61 °C breaks at 6.4, at 59 at 5.7', [plant('soy drink at 59 °C', '0.25 g citric acid'), 'warn within'], [plant('soy drink at 61 °C', '0.25 g citric acid'), 'stop beyond']);
  brink('curdles-in-glass', 'spirit', 'almond with 4.9 and 5.1 % vol', [plant('almond drink', '16.6 ml white rum 40 %'), 'silent'], [plant('almond drink', '17.6 ml white rum 40 %'), 'note beyond']);
  brink('curdles-in-glass', 'sour', 'rice drink with 2.5 and 50 mg/L of citric acid, of which nothing is known', [plant('rice drink', '0.2 g citric acid in 80 l water'), 'silent'], [plant('rice drink', '4 g citric acid in 80 l water'), 'warn beyond']);
  const oil = (hours: number) => prep('Oil (mix):', '10 ml oil', '100 g olive oil', '20 g garlic', `rest ${hours} h at 5 °C`);
  brink('cold-chain', 'not_known', 'in oil pH 7 is taken: 2.4 above 4.6', [oil(47.5), '-4.6'], [oil(48.5), '2.4'], (r) => margin(r, 'botulism-risk'));
  brink('botulism-risk', 'airless', '47.5 and 48.5 h in the cold', [oil(47.5), 'warn within'], [oil(48.5), 'stop beyond']);
  const wet = (share: number) => prep('Oil (mix):', '10 ml oil', `${share} g olive oil`, '20 g garlic', `${100 - share} g water`, 'rest 5 h at 20 °C');
  brink('botulism-risk', 'oily', '19.5 and 20.5 g of oil in 100 g', [wet(19.5), 'silent'], [wet(20.5), 'stop beyond']);
  brink('keeps-short', 'frozen', 'a month at -5.5 and -4.5 °C', [prep('Cordial (syrup):', '20 ml cordial', '200 g pineapple juice', '200 g sugar', 'store 30 days at -5.5 °C'), 'silent'], [prep('Cordial (syrup):', '20 ml cordial', '200 g pineapple juice', '200 g sugar', 'store 30 days at -4.5 °C'), 'warn beyond']);
  brink('keeps-short', 'rich', 'a syrup of 64 and one of 66 °Bx after forty days', [prep('Sweet (syrup):', '20 ml sweet', '64 g sugar', '36 g water', 'heat to 80 °C', 'store 40 days at 4 °C'), 'warn beyond'], [prep('Sweet (syrup):', '20 ml sweet', '66 g sugar', '34 g water', 'heat to 80 °C', 'store 40 days at 4 °C'), 'silent']);
});

describe('the table of limits', () => {
  const sources = new Set(text('data/sources.tsv').split('\n').map((line) => line.split('\t')[0]));
  it.each(LIMITS.map((l) => [`${l.code} ${l.name}`, l.row] as const))('%s has its number, unit, source, grade and reason', (_name, row) => {
    expect(Object.keys(row)).toEqual(['value', 'unit', 'source', 'grade', 'why']);
    expect(Number.isFinite(row.value)).toBe(true);
    expect(row.unit).not.toBe('');
    expect(row.source === 'none' || sources.has(row.source), row.source).toBe(true);
    expect(GRADES).toContain(row.grade);
    expect(row.why.length).toBeGreaterThan(15);
  });
  it('every limit is shown from both sides, and none that is not there', () => { expect([...done].sort()).toEqual(LIMITS.map((l) => `${l.code} ${l.name}`).sort()); });
});

// what the manual says of a limit, in figures or in words, is the number of the table
const MANUAL: readonly (readonly [code: string, name: string, says: (n: number) => string])[] = [
  ['wash-order', 'before', (n) => `in per cent, less ${n}.`], ['dose-below-scale', 'error', (n) => `beyond ${n} %`], ['foam-short-rest', 'least', (n) => `The margin is ${n} minutes`],
  ['gel-dose-high', 'much', (n) => `less ${n}.`], ['gel-too-acid', 'ample', (n) => `from ${n} of its least dose`], ['wash-short-rest', 'least', (n) => `The margin is ${n} minutes`],
  ['infusion-short', 'least', (n) => `The margin is ${n} less`], ['infusion-bitter', 'most', (n) => `less ${n}.`], ['bitters-weak', 'strong', (n) => `The margin is ${n} % vol`],
  ['fat-without-aroma', 'aroma', (n) => `The margin is ${n} less`], ['enzyme-too-acid', 'works', (n) => `The margin is pH ${n} less`], ['clear-turns-cloudy', 'clear', (n) => `less ${n}.`],
  ['layer-weak', 'stays', (n) => `The margin is ${n} kg/m³`], ['layer-invisible', 'tells', (n) => `The margin is ${n} less`], ['glass-underfilled', 'full', (n) => `The margin is ${100 * n} %`],
  ['carbonation-low', 'flat', (n) => `The margin is ${n} g/L`], ['freezes-solid', 'solid', (n) => `in per cent, less ${n};`], ['freezes-slush', 'slush', (n) => `in per cent, less ${n}.`],
  ['keeps-short', 'frozen', (n) => `warmer than ${n} °C`], ['keeps-short', 'rich', (n) => `From ${n} °Bx on`], ['cold-chain', 'not_known', (n) => `counts as ${n}.`], ['botulism-risk', 'airless', (n) => (n === 48 ? 'two days in the cold' : `${n} h`)],
  ['foam-no-whipper', 'least', (n) => (n === 0.25 ? 'a quarter of the least' : `${n} of the least`)], ['gel-dose-low', 'fails', (n) => (n === 0.6 ? 'six tenths' : String(n))],
  ['gel-dose-low', 'short', (n) => (n === 0.9 ? 'nine tenths' : String(n))], ['gel-not-set', 'sets', (n) => (n === 0.5 ? 'half the time' : String(n))], ['fat-not-frozen', 'freeze', (n) => (n === 6 ? 'six hours' : `${n} hours`)],
];
it.each(MANUAL)('the manual says of %s its limit %s', (code, name, says) => {
  const own = text('docs/manual/findings.md').split(/^### /m).find((part) => part.startsWith(`\`${code}\``)) ?? '';
  expect(own.split('\n').find((line) => line.startsWith('**Limit.**'))).toContain(says(LIMITS.find((l) => l.code === code && l.name === name)!.row.value));
});

// The least of the table exactly met, whatever the sum of its parts rounds to.
it('what meets a limit to the last digit is not beyond it', () => {
  const cream = (mL: number) => ['A', 'Cloud (siphon foam):', `${mL} ml cream`, 'charge 1 N2O in a 1000 ml siphon', 'chill 4 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g cloud'].join('\n');
  const stops = (mL: number) => readText(cream(mL), { tables }).reading.findings.filter((f) => f.code === 'siphon-undercharged' && f.severity === 'stop').length;
  expect(stops(500)).toBe(0);
  expect(stops(520)).toBe(1);
});
