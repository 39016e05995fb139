import type { Action, Document, Measure, Section } from '@washline/engine';
import { describe, expect, test } from 'vitest';
import { lines } from '../lines/lines.ts';
import { inverse, splice, SpliceError } from '../text/splice.ts';
import { setAmount } from '../text/set-amount.ts';
import { decode } from '../text/decode.ts';
import { fromJson, textOfJson, toJson } from './json.ts';
import { parse } from './parse.ts';

// Texts that break a naive reader, each with the rule it must follow (definitions of the text format, section 1 of the contract).
const spec = (...rows: string[]): Document => parse(['A drink', ...rows].join('\n'));
const codes = (document: Document): string[] => document.problems.map((one) => one.code);
const keys = (document: Document): string[] => document.sections.map((one) => one.key);
const section = (document: Document, key: string): Section => { const one = document.sections.find((other) => other.key === key); if (one === undefined) throw new Error(`no ${key}: ${keys(document).join()}`); return one; };
const action = (document: Document, key: string, line: number, n = 0): Action => { const one = section(document, key).lines[line]?.actions[n]; if (one === undefined) throw new Error('no action'); return one; };
const measure = (document: Document, key: string, line: number): Measure => action(document, key, line) as Measure;

test('1: a line that leads over to the next is a step, a name that begins with a step word a heading', () => {
  const one = spec('Strain into another bowl and add:', '2 oz gin', 'Into a glass pour:', 'Cool mint syrup:', '60 ml water', 'Top foam:', '10 ml water', 'Spice mix:', '5 g salt', 'Whey wash:', '10 ml milk', 'Rum blend:', '10 ml rum');
  expect(keys(one)).toEqual(['build', 'cool mint syrup', 'top foam', 'spice mix', 'whey wash', 'rum blend']);
  expect(section(one, 'build').lines.map((line) => line.kind)).toEqual(['step', 'measure', 'step']);
  expect(keys(spec('60 ml gin', 'Garnish:', 'mint', 'Top:', 'soda'))).toEqual(['build']);
  expect(keys(spec('4 oz gin and add:', '10 ml water'))).toEqual(['build']);
});
test('2: "Ingredients:" and its like go on in the section above', () => {
  expect(keys(spec('Ingredients:', '60 ml gin', 'Method:', 'shake 10 s'))).toEqual(['build']);
  const german = spec('Zutaten:', '4 cl Rum', 'Zubereitung:', 'auf Eis rühren');
  expect(keys(german)).toEqual(['build']);
  expect(section(german, 'build').lines).toHaveLength(2);
  expect(section(spec('Rum (fat wash):', 'Ingredients:', '60 ml rum'), 'rum').lines).toHaveLength(1);
});
test('3: "For the …" goes, a name without METHOD is mixed', () => {
  const one = spec('For the coconut rum:', '300 ml white rum', 'Build:', '60 ml coconut rum');
  expect(section(one, 'coconut rum')).toMatchObject({ method: 'mix', methodWritten: false });
  expect(measure(one, 'build', 0).thing.link).toEqual({ kind: 'prep', prep: 'coconut rum' });
});
test('4: the spec\'s own names go before treatments and commas', () => {
  const one = spec('Clarified pineapple (clarify with agar):', '300 ml pineapple juice', 'Syrup, rich (syrup):', '100 g sugar', 'Build:', '60 ml clarified pineapple', '10 ml syrup, rich');
  expect(measure(one, 'build', 0).thing.link).toEqual({ kind: 'prep', prep: 'clarified pineapple' });
  expect(measure(one, 'build', 1).thing.link).toEqual({ kind: 'prep', prep: 'syrup, rich' });
});
test('5: inside a prep its own name means the larder; a ring is one only if the larder has none', () => {
  const one = spec('Pineapple juice (clarify with enzyme):', '300 ml pineapple juice', 'Build:', '60 ml pineapple juice');
  expect(codes(one)).toEqual([]);
  expect(measure(one, 'pineapple juice', 0).thing.link).toMatchObject({ kind: 'larder', id: 'pineapple-juice' });
  expect(measure(one, 'build', 0).thing.link).toEqual({ kind: 'prep', prep: 'pineapple juice' });
  expect(codes(spec('Z sauce (mix):', '10 ml z sauce'))).toEqual(['prep-ring']);
  expect(codes(spec('X one (mix):', '10 ml y two', 'Y two (mix):', '10 ml x one'))).toEqual(['prep-ring']);
});
test('6: after "the" the last words of one prep are enough, of two a problem', () => {
  const one = spec('Spiced pear syrup (syrup):', '100 g sugar', 'Build:', 'the rest of the syrup', '20 ml of the syrup', '10 ml syrup');
  expect(measure(one, 'build', 0)).toMatchObject({ portion: 'rest', thing: { link: { kind: 'prep', prep: 'spiced pear syrup' } } });
  expect(measure(one, 'build', 1).thing.link).toMatchObject({ kind: 'prep' });
  expect(measure(one, 'build', 2).thing.link).toMatchObject({ kind: 'larder' });
  expect(codes(spec('Pear syrup (syrup):', '100 g sugar', 'Mint syrup (syrup):', '100 g sugar', 'Build:', '20 ml of the syrup'))).toContain('prep-unclear');
});
test('7: article, plural, case, hyphen and accents fold; the same name twice is a problem at the second', () => {
  const one = spec('The pineapple cubes (freeze):', '100 ml pineapple juice', 'Cre\u0301me rum (mix):', '60 ml rum', 'Fat-wash (fat wash):', '60 ml rum', 'fat wash:', '10 ml gin', 'Build:', '3 Pineapple Cube', '20 ml the FAT WASH', '10 ml crème rum');
  expect(codes(one)).toEqual(['prep-twice']);
  expect(section(one, 'build').lines.map((line) => (line.actions[0] as Measure).thing.link.kind)).toEqual(['prep', 'prep', 'prep']);
  expect(section(one, 'fat-wash').lines).toHaveLength(1);
});
test('8: METHOD is the last bracket if it is one; a bracket with a number is the name\'s; any other is a problem', () => {
  const one = spec('Saline (20 %) (mix):', '20 g salt', 'Rum (fat wahs):', '60 ml rum', 'Sirup (Sirup):', '10 g sugar', 'Brine (3:1):', '10 g salt');
  expect(one.sections.map((other) => [other.name, other.method])).toEqual([['Saline (20 %)', 'mix'], ['Rum', 'mix'], ['Sirup', 'syrup'], ['Brine (3:1)', 'mix']]);
  expect(one.problems).toMatchObject([{ code: 'method-unknown', line: 4, column: 6, words: { method: 'fat wahs', nearest: 'fat wash' } }]);
});
test('9: a variant must restate a section; "50/50" is a name', () => {
  const one = spec('lemon / lime cordial:', '10 ml water', '50/50 syrup:', '10 ml water');
  expect(keys(one)).toEqual(['lemon / lime cordial', '50/50 syrup']);
  expect(codes(one)).toEqual(['variant-unclear']);
  expect(one.variants).toEqual([]);
});
test('10: a METHOD makes a prep of any word; after an amount the spec\'s names go before units and steps', () => {
  const one = spec('Build (mix):', '10 ml water', 'Dash (bitters):', '10 ml gin', 'Blitz (blend):', '10 ml gin', 'Build:', '10 ml dash', '5 ml blitz', 'blitz 5 s');
  expect(keys(one)).toEqual(['build', 'dash', 'blitz', 'build']);
  const build = one.sections[3];
  expect(build?.lines.map((line) => line.kind)).toEqual(['measure', 'measure', 'step']);
  expect((build?.lines[0]?.actions[0] as Measure).thing.link).toEqual({ kind: 'prep', prep: 'dash' });
});
test('11: keys stand before the first line or heading; later they are a problem', () => {
  expect(codes(spec('60 ml gin', 'glass: coupe'))).toEqual(['key-late']);
  expect(codes(spec('Build:', 'Glass: Rocks', '60 ml gin'))).toEqual(['key-late']);
  expect(spec('glass: coupe', '60 ml gin').glass).toEqual({ key: 'coupe' });
});
test('12: a key or note word with a colon is no heading, nor a bare name in Shelf or Accept', () => {
  expect(keys(spec('glass:', '60 ml gin', 'Shelf:', 'gin:', 'Accept:', 'egg-raw at egg white: we know'))).toEqual(['build', 'shelf', 'accept']);
  expect(section(spec('1 egg white', 'Accept:', 'egg-raw at 1 egg white: we know'), 'accept').accept).toMatchObject([{ code: 'egg-raw', at: '1 egg white', reason: 'we know' }]);
});
test('13: the first line is the name, unless it says otherwise', () => {
  const named = (text: string): [string, string[]] => { const one = parse(text); return [one.name, codes(one)]; };
  expect(named('60 ml gin\n30 ml lime juice')).toEqual(['', ['name-missing']]);
  expect(named('Clear colada:\n60 ml gin')).toEqual(['Clear colada', []]);
  expect(named('# Clear colada\n60 ml gin')).toEqual(['', ['name-missing']]);
  expect(named('Build:\n60 ml gin')).toEqual(['', ['name-missing']]);
  expect(named('glass: coupe\n60 ml gin')).toEqual(['', ['name-missing']]);
  expect(named('Coconut rum (fat wash):\n60 ml rum')).toEqual(['', ['name-missing']]);
  expect(named('3 dots and a dash\n60 ml gin')).toEqual(['3 dots and a dash', []]);
  expect(parse('60 ml gin\n30 ml lime juice').sections[0]?.lines).toHaveLength(2);
});
test('14: lines before any heading and "Build:" are one build; a second "Build:" is a problem', () => {
  const one = spec('60 ml gin', 'Build:', 'shake 10 s');
  expect(section(one, 'build').lines).toHaveLength(2);
  expect(codes(one)).toEqual([]);
  expect(codes(spec('Build:', '60 ml gin', 'Build:', 'shake 10 s'))).toEqual(['build-twice']);
});
test('15: preps alone are allowed, an empty heading is a problem at its line', () => {
  expect(codes(spec('Syrup (syrup):', '100 g sugar'))).toEqual([]);
  expect(spec('60 ml gin', 'Syrup (syrup):').problems).toMatchObject([{ code: 'section-empty', line: 3 }]);
});
test('16: notes begin with # or a note word and a colon, bare "note" also with a blank; nothing else', () => {
  const one = spec('60 ml gin', 'note that it is cold', 'Notes: fine', 'Hinweis: kalt', '# x', 'N.B.: cold', 'notebook gin');
  expect(section(one, 'build').lines.map((line) => line.kind)).toEqual(['measure', 'note', 'note', 'note', 'note', 'note', 'unread']);
  expect(section(one, 'build').lines.slice(1, 6).every((line) => line.path.join() === 'build,0')).toBe(true);
  expect(codes(one)).toEqual(['unread']);
});
test('17: remarks are left out of the name; a number not used is a problem', () => {
  const one = spec('60 ml gin # the good one 3', '60 ml gin (the good one)', '60 ml gin, no pith', '60 ml gin (batch 7)');
  for (let n = 0; n < 4; n++) expect(measure(one, 'build', n).thing.words).toBe('gin');
  expect(one.problems).toMatchObject([{ code: 'number-unused', line: 5, column: 18, words: { number: '7' } }]);
  expect(parse('A #1 drink\n60 ml gin').name).toBe('A #1 drink');
});
test('18: several actions in a line are read in order; a second measure is a problem', () => {
  const one = spec('25ml gin, 12.5ml dry vermouth', 'shake 12 s; strain; grate nutmeg', 'stir 20 s, then strain into a coupe and garnish with a lemon twist');
  expect(codes(one)).toEqual(['second-measure']);
  expect(section(one, 'build').lines[1]?.actions.map((other) => other.kind)).toEqual(['step', 'step', 'garnish']);
  expect(action(one, 'build', 2, 1).path).toEqual(['build', 2, 1]);
  expect(section(one, 'build').lines[2]?.actions.map((other) => one.text.slice(other.span.from, other.span.to))).toEqual(['stir 20 s', 'strain into a coupe', 'garnish with a lemon twist']);
});
test('19: a list number goes only if a neighbouring line counts on', () => {
  const one = spec('1. 5 oz gin', 'B (mix):', '1. Boil 200 ml water', '2. 50 g sugar', '3. stir');
  expect(one.problems).toMatchObject([{ code: 'list-number', line: 2 }]);
  expect(measure(one, 'b', 1).amount).toMatchObject({ low: 50, unit: 'g' });
});
test.each([['1,000 ml water', 1000, true], ['1 000 ml water', 1000, false], ["1'000 ml water", 1000, false], ['1.000 ml water', 1, true], ['0,750 l water', 0.75, false], ['1,500 g sugar', 1500, true], ['22,5 ml gin', 22.5, false], ['1.5 l water', 1.5, false], ['12,345,678 mg salt', 12345678, true]])('20: %s is %d', (text, value, other) => {
  const { amount } = measure(spec(text), 'build', 0);
  expect(amount?.low).toBe(value);
  expect(amount?.otherCustom ?? false).toBe(other);
});
test('21: an ounce of a solid is one of weight, assumed; the lines command still says oz', () => {
  const one = spec('8 oz strawberries', '4 oz sugar', '2 oz butter', '2 oz gin');
  expect(section(one, 'build').lines.map((line) => (line.actions[0] as Measure).amount?.unit)).toEqual(['oz-weight', 'oz-weight', 'oz-weight', 'oz']);
  expect(measure(one, 'build', 0).amount?.systemAssumed).toBe(true);
  expect(lines('8 oz strawberries')[0]?.unit).toBe('oz');
});
test('22: per cents are strength, share or concentration', () => {
  const one = spec('40 % rum, 30 ml', '0.8 % gelatin', '10 ml citric acid solution 6 %', '30 ml rum 60 %', '200 ml cream 35 %', '5 drops saline 20 %', '30 ml foo 20 %', '10 ml saline 5 % vol');
  expect(measure(one, 'build', 0)).toMatchObject({ strength: { value: 40 }, amount: { low: 30, unit: 'ml' } });
  expect(measure(one, 'build', 1)).toMatchObject({ amount: null, share: { value: 0.008, basis: 'mass' } });
  expect(measure(one, 'build', 2)).toMatchObject({ concentration: { value: 6 }, thing: { link: { id: 'lemon-acid-6' } } });
  expect(measure(one, 'build', 3).strength?.value).toBe(60);
  expect(measure(one, 'build', 4).strength).toBeUndefined();
  expect(measure(one, 'build', 5)).toMatchObject({ thing: { link: { id: 'saline-20' } } });
  expect(measure(one, 'build', 5).strength).toBeUndefined();
  expect(measure(one, 'build', 6).strength?.value).toBe(20);
  expect(measure(one, 'build', 7).strength?.value).toBe(5);
});
test('23: dry is said where it is written, in build and prep alike', () => {
  const one = spec('shake 12 s', 'dry shake 10 s', 'shake 5 s without ice', 'X (mix):', 'shake 30 s', 'shake 10 s with ice');
  expect(section(one, 'build').lines.map((line) => (line.actions[0] as unknown as { flags: string[] }).flags)).toEqual([[], ['dry'], ['dry']]);
  expect(action(one, 'x', 0)).not.toHaveProperty('ice');
  expect(action(one, 'x', 1)).toHaveProperty('ice');
});
test('24: the amount of a step is of matter, not a vessel, a target or a spin', () => {
  const one = spec('charge 2 N2O in a 500 ml siphon', 'reduce to 200 ml', 'spin at 4000 g for 10 min', 'reduce by a third', 'carbonate at 45 psi abs');
  expect(codes(one)).toEqual([]);
  for (let n = 0; n < 5; n++) expect(action(one, 'build', n)).not.toHaveProperty('measure');
  expect(action(one, 'build', 0)).toMatchObject({ vessel_mL: { value: 500 }, gas: { kind: 'N2O', chargers: 2 } });
  expect(action(one, 'build', 1)).toMatchObject({ to: { amount: { low: 200, unit: 'ml' } } });
  expect(action(one, 'build', 2)).toMatchObject({ speed: { value: 4000, unit: 'g' }, seconds: { low: 600 } });
  expect((action(one, 'build', 3) as { to?: { share: number } }).to?.share).toBeCloseTo(2 / 3, 12);
  // 1 psi = 6.894757293168 kPa (NIST SP 811, appendix B.8)
  expect((action(one, 'build', 4) as { pressure_kPa?: { value: number; absolute: boolean } }).pressure_kPa).toMatchObject({ value: 45 * 6.894757293168, absolute: true });
});
test('25: a line that is wholly a known name is a measure without an amount', () => {
  const one = spec('Salt', 'Ice', 'salt to taste', 'Syrup', 'Rubbish words');
  expect(section(one, 'build').lines.map((line) => line.kind)).toEqual(['measure', 'measure', 'measure', 'measure', 'unread']);
  for (let n = 0; n < 4; n++) expect(measure(one, 'build', n).amount).toBeNull();
});
test('26: an acceptance copies the line it is about, colons and all', () => {
  const one = spec('15 ml simple syrup 1:1', 'Accept:', 'ratio-unclear at 15 ml simple syrup 1:1: by weight, as ever: always', 'gas-lost at build: fine', 'nonsense here');
  expect(section(one, 'accept').accept).toMatchObject([{ code: 'ratio-unclear', at: '15 ml simple syrup 1:1', reason: 'by weight, as ever: always' }, { code: 'gas-lost', at: 'build', reason: 'fine' }]);
  expect(codes(one)).toEqual(['accept-unclear']);
});
test('27: serves', () => {
  expect(spec('serves: 4', '60 ml gin').serves).toBe(4);
  expect(spec('serves: many', '60 ml gin')).toMatchObject({ serves: 1, problems: [{ code: 'key-unclear' }] });
});
test('28: paths count lines from 0, notes and blanks not', () => {
  const one = spec('', '60 ml gin', '# note', '', '30 ml lime juice');
  expect(section(one, 'build').lines.map((line) => [line.kind, line.path.join()])).toEqual([['measure', 'build,0'], ['note', 'build,0'], ['measure', 'build,1']]);
});
test.each([['1 Dose Kokosmilch', 'can'], ['1 dose de cachaça', 'dose'], ['2 EL Zucker', 'tbsp'], ['2 c. à s. de sirop', 'tbsp'], ['1 cdta azúcar', 'tsp'], ['60 cc gin', 'ml'], ['1 quart water', 'quart'], ['2T sugar', 'tbsp'], ['1t salt', 'tsp']])('29: %s is in %s', (text, unit) => {
  expect(measure(spec(text), 'build', 0).amount?.unit).toBe(unit);
});
test('30: the lines command gives one reading a line that is not blank', () => {
  expect(lines('60 ml gin\n\n   \nglass: coupe').map((one) => one.text)).toEqual(['60 ml gin', 'glass: coupe']);
});
test('31: columns count code units from 1, a tab one, the byte order mark none', () => {
  const one = parse('\ufeffA\n\t60 ml gin 💧 9 foo\n');
  expect(one.problems).toMatchObject([{ code: 'number-unused', line: 2, column: 15 }]);
  expect(one.text.slice(one.problems[0]?.span.from, one.problems[0]?.span.to)).toBe('9');
});
test('32: invalid UTF-8 is one problem; control characters, lone CR and lone surrogates too; splices that split are refused', () => {
  expect(decode(new Uint8Array([0x41, 0xff]))).toMatchObject({ problem: { code: 'bytes-not-utf8', words: { byte: 1 } } });
  expect(decode(new Uint8Array([0xef, 0xbb, 0xbf, 0x41]))).toEqual({ text: '\ufeffA' });
  for (const odd of ['60 ml\rgin', '60 ml \u0085 gin', '60 ml \ud800 gin', '60 ml \u0000 gin']) expect(codes(spec(odd))).toEqual(['control-character']);
  expect(() => splice('a\r\nb', [{ from: 2, to: 2, insert: 'x' }])).toThrow(SpliceError);
  expect(() => splice('a💧b', [{ from: 2, to: 3, insert: '' }])).toThrow(SpliceError);
  expect(() => splice('abcd', [{ from: 0, to: 2, insert: '' }, { from: 1, to: 3, insert: '' }])).toThrow(SpliceError);
});
test('33: changing an amount rewrites its twin', () => {
  const one = spec('2 oz (60 ml) gin', '½-¾ oz lime juice', '22,5 ml lime juice');
  const text = splice(one.text, setAmount(one, ['build', 0], 1.5));
  expect(text).toContain('1.5 oz (45 ml) gin');
  expect(splice(text, inverse(one.text, setAmount(one, ['build', 0], 1.5)))).toBe(one.text);
  expect(splice(one.text, setAmount(one, ['build', 1], 0.5))).toContain('\n½ oz lime juice');
  expect(splice(one.text, setAmount(one, ['build', 2], 17.5))).toContain('17,5 ml lime juice');
});
test('34: text to JSON to text is lossless', () => {
  const text = '\ufeffA\r\n60 ml gin  \r\n\r\n# x\nBuild:\t\n\tshake 10 s';
  const json = JSON.parse(JSON.stringify(toJson(parse(text)))) as ReturnType<typeof toJson>;
  expect(textOfJson(json)).toBe(text);
  expect(fromJson(json)).toEqual(parse(text));
  const bare = { washline: 1 as const, lines: [{ text: 'A', eol: '\n' as const }, { actions: parse('A\n60 ml white rum 40 %, chilled\nshake 10 s over 200 g cubes at -5 °C').sections[0]?.lines[1]?.actions ?? [] }] };
  expect(textOfJson(bare)).toBe('A\nshake 10 s over 200 g cubes at -5 °C');
});
describe('35: over a limit the rest is not read', () => {
  test('lines', () => { const one = spec(...Array.from({ length: 400 }, () => '1 ml gin')); expect(one.cut).toBe(true); expect(codes(one)).toEqual(['too-many-lines']); expect(section(one, 'build').lines).toHaveLength(399); });
  test('sections', () => { const one = spec(...Array.from({ length: 65 }, (_, n) => `Prep ${n} x (mix):\n1 ml gin`)); expect(one.sections).toHaveLength(64); expect(codes(one)).toEqual(['too-many-sections']); expect(one.cut).toBe(true); });
  test('bytes', () => { const one = parse('é'.repeat(131073)); expect(codes(one)).toEqual(['text-too-large']); expect(one.sections).toEqual([]); });
  test('a line', () => { expect(codes(spec('x'.repeat(501)))).toEqual(['line-too-long']); expect(codes(spec(`60 ml gin${' '.repeat(491)}`))).toEqual([]); });
  test('depth', () => { const rows = Array.from({ length: 9 }, (_, n) => `Prep p${n}p (mix):\n10 ml ${n === 8 ? 'gin' : `prep p${n + 1}p`}`); expect(codes(spec(...rows))).toEqual(['preps-too-deep']); expect(codes(spec(...rows.slice(1)))).toEqual([]); });
});
test('36: the line and the shelf both keep their strength', () => {
  const one = spec('60 ml white rum 40 %', 'Shelf:', 'white rum: 37.5 %');
  expect(measure(one, 'build', 0)).toMatchObject({ strength: { value: 40 }, thing: { link: { kind: 'shelf', shelf: 'white rum' } } });
  expect(section(one, 'shelf').shelf).toMatchObject([{ strength: 37.5 }]);
});
test('37: a prep may be called __proto__', () => {
  const one = spec('__proto__ (mix):', '10 ml gin', 'constructor (mix):', '10 ml gin', 'Build:', '10 ml constructor');
  expect(keys(one)).toEqual(['__proto__', 'constructor', 'build']);
  expect(measure(one, 'build', 0).thing.link).toEqual({ kind: 'prep', prep: 'constructor' });
});
test('38: "chilled glass" is a step; ice as a line is ice where it stands', () => {
  const one = spec('chilled glass', '200 g cubes', '1 clear cube 50 mm');
  expect(action(one, 'build', 0)).toMatchObject({ kind: 'step', verb: 'chill', flags: ['chilled'] });
  expect(action(one, 'build', 1)).toMatchObject({ kind: 'fill', ice: { kind: 'cubes', mass: { low: 200 } } });
  expect(action(one, 'build', 2)).toMatchObject({ kind: 'fill', ice: { kind: 'large cube', count: 1, size_mm: 50, clear: true } });
});

describe('amounts that cannot be meant', () => {
  test.each([['-30 ml gin', 'amount-negative'], ['2000 l water', 'amount-too-large'], ['30 ml rum 140 %', 'share-too-large'], ['heat to -300 °C', 'temperature-too-low'], ['1/0 oz gin', 'number-unclear'], ['1e9 l water', 'number-unclear'], ['120 % gelatin', 'share-too-large']])('%s', (text, code) => { expect(codes(spec(text))).toEqual([code]); });
  test.each(['1000 l water', 'freeze 4 h at -196 °C', '100 % gelatin', '30 ml spirit 96 %'])('%s can', (text) => { expect(codes(spec(text))).toEqual([]); });
});
