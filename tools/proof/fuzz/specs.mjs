import { draws } from './draws.mjs';
import { vocabulary } from './words.mjs';

const v = vocabulary();
const NUMBERS = ['0', '00', '1', '2', '3', '5', '7.5', '12', '30', '45', '60', '100', '250', '999', '1000', '1e3', '1e400', '-1', '−5', '0.0001', '.5', '5.', '1,5', '1.000', '1,000.5', '½', '1 ½', '3/4', '1/0', '0/0', '10/3', '１２', '٣', '1-2', '2–3', '45-60', '60-45', '99999999999999999999', '0.1e-5', 'NaN', 'Infinity', '0x10', '½½', '1/2/3', '1 1 1', '²', 'Ⅳ', '1e', '+3', '1_000'];
const ODD = ['\u202e', '\u202d', '\u2066', '\u2069', '\u200f', '\u200b', '\ufeff', '\u00ad', '\u0301', '\u0000', '\u0007', '\u001b[31m', '\u2028', '\u2029', '\u0085', '\ud800', '\udc00', '🍍', '👩🏽‍🍳', 'ﬁ', 'İ', 'ß', 'ſ', '\t', '\r', '\v', '：', '％', '⁄', '℃', 'º', '‰', 'x', '×', '\u00a0', '\u3000'];
const MARKS = [':', ';', ',', '.', '(', ')', '[', ']', '/', '-', '–', '+', '*', '#', '%', '°', '"', '\'', '&', '@', '|', '<', '{', '~', '=', '!', '…'];
const TIMES = ['s', 'min', 'h', 'days', 'd', 'seconds', 'Stunden', 'Minuten', 'weeks', 'years'];
const KEYS = ['about', 'glass', 'source', 'serves', 'measures', 'language', 'one part', 'accept', 'glas', 'über', 'für'];
const VALUES = ['us', 'uk', 'au', 'metric', 'us-1910', 'de', 'en', 'coupe', '300 ml', '0', '-4', '1e9', 'double rocks', '30 ml', 'of the coupe', 'none'];

/** A draw's own language of specs: each part made of real words, now and then of what nobody writes. */
function grammar(d) {
  const number = () => (d.often(0.6) ? String(d.upTo(200) / d.pick([1, 2, 4, 10])) : d.often(0.5) ? d.pick(NUMBERS) : d.pick(v.numerals));
  const odd = (text) => (d.often(0.04) ? text.slice(0, d.upTo(text.length + 1)) + d.pick(ODD) + text.slice(d.upTo(text.length + 1)) : text);
  const amount = () => `${number()}${d.often(0.85) ? ' ' : ''}${d.pick(d.often(0.5) ? ['ml', 'g', 'oz', 'cl', 'dash', 'tsp', '%', '°C', 'parts', 'kg', 'l'] : v.units)}`;
  const celsius = () => `${d.pick(['at', 'to', 'bei', 'auf', '@', 'held 5 min at', ''])} ${number()} ${d.pick(['°C', '°F', '° C', 'C', 'K', '℃', 'degrees'])}`;
  const time = () => `${number()} ${d.pick(TIMES)}`;
  const ice = () => `${d.often(0.7) ? amount() : number()} ${d.pick(v.ices)}${d.often(0.4) ? ` ${celsius()}` : ''}`;
  const thing = (own) => (own.length > 0 && d.often(0.3) ? d.pick(own) : d.pick(v.names));
  const tail = (own) => d.pick([
    () => '', () => `, ${d.pick(v.treatments)}`, () => ` ${number()} %`, () => ` ${celsius()}`, () => ` ${number()}:${number()}`, () => ` (${amount()})`, () => ` in ${amount()} ${thing(own)}`, () => ` or ${thing(own)}`,
    () => ` of the ${thing(own)}`, () => ` per ${amount()} of ${thing(own)}`, () => ` and ${amount()} ${thing(own)}`, () => ` # ${d.pick(v.small)}`, () => ` ${d.pick(MARKS)}${d.pick(MARKS)}`,
  ])();
  const step = (own) => [d.pick(v.verbs), ...d.times(d.upTo(4), () => d.pick([time, celsius, () => `over ${ice()}`, () => `through ${d.pick(v.sieves)}`, () => `into ${d.pick(v.glasses)}`, () => d.pick(v.small), amount, () => `with ${thing(own)}`, () => `${number()} N2O in a ${amount()} siphon`, () => `at ${number()} bar`, () => `to ${amount()}`])())].join(' ');
  const line = (own) => odd(d.pick([
    () => `${amount()} ${thing(own)}${tail(own)}`, () => `${amount()} ${thing(own)}${tail(own)}${tail(own)}`, () => `${thing(own)} ${amount()}`, () => `${thing(own)}, ${amount()} per ${amount()}`, () => `${number()} % ${thing(own)}`,
    () => step(own), () => step(own), () => `${step(own)}; ${step(own)} ${d.pick(['and', 'then', 'und', 'dann'])} ${step(own)}`, () => `${d.pick(['top with', 'fill up with', 'float', 'auffüllen mit', 'the rest of the', 'all of the'])} ${d.often(0.5) ? amount() : ''} ${thing(own)}`,
    () => `garnish ${d.pick(v.garnishes)}`, ice, () => d.pick(v.lines), () => d.pick(v.lines), () => d.times(d.upTo(12) + 1, () => d.pick([() => d.pick(v.names), () => d.pick(v.units), () => d.pick(v.verbs), () => d.pick(v.small), number, () => d.pick(MARKS)])()).join(d.pick([' ', ' ', '', ', '])),
    () => `# ${d.pick(v.lines)}`, () => '', () => d.pick([...v.sections, ...KEYS]) + d.pick([':', '', ': ']) + d.pick(VALUES),
  ])());
  return { line, thing, number, amount };
}

/** A whole spec: head, preps that use each other, a build, a variant, a shelf, acceptances; in an order nobody promises. */
function whole(d) {
  const g = grammar(d), own = [];
  const head = d.times(d.upTo(4), () => `${d.pick(KEYS)}: ${d.pick(VALUES)}`);
  const sections = d.times(d.upTo(5), () => {
    const name = d.often(0.8) ? d.pick(v.names) : d.pick(own.length > 0 ? own : ['x']);
    own.push(name);
    const heading = `${d.often(0.1) ? 'vegan / ' : ''}${name}${d.often(0.85) ? ` (${d.pick(v.methods)})` : ''}${d.often(0.95) ? ':' : ''}`;
    return [d.often(0.05) ? heading.repeat(3) : heading, ...d.times(d.upTo(7), () => g.line(own))];
  });
  const build = [d.pick(['Build:', 'Build:', 'Im Glas:', 'Aufbau:', 'Method:', 'Ingredients:', '']), ...d.times(d.upTo(7) + 1, () => g.line(own))];
  const shelf = d.often(0.2) ? ['Shelf:', ...d.times(d.upTo(3), () => `${d.pick(v.names)}: ${g.number()} %, ${g.number()} per ${g.amount()}`)] : [];
  const accept = d.often(0.15) ? ['Accept:', ...d.times(d.upTo(3), () => `${d.pick(['glass-overfull', 'egg-raw', 'x', 'hazard-plant'])} at ${d.pick(['build', g.line(own)])}: so`)] : [];
  const parts = [...sections, build, shelf, accept];
  if (d.often(0.1)) parts.sort(() => d.next() - 0.5);
  return [d.pick(v.names), ...head, ...parts.flatMap((part) => ['', ...part])].join(d.often(0.95) ? '\n' : d.pick(['\r\n', '\r', '\n\n\n', '\u2028']));
}

/** Damage to a text that was whole. */
function damaged(d, text) {
  return d.pick([
    (t) => t.slice(0, d.upTo(t.length)), (t) => t.slice(d.upTo(t.length)), (t) => t.replace(/[\d.]+/g, (n) => (d.often(0.3) ? d.pick(NUMBERS) : n)),
    (t) => Array.from(t, (c) => (d.often(0.02) ? d.pick(ODD) : c)).join(''), (t) => t.split('\n').sort(() => d.next() - 0.5).join('\n'), (t) => t.split('\n').map((line) => (d.often(0.1) ? line.repeat(d.upTo(20)) : line)).join('\n'),
    (t) => t.replace(/\b(?:ml|g|min|s|°C|%)\b/g, (unit) => (d.often(0.3) ? d.pick(v.units) : unit)), (t) => t.replaceAll(':', () => (d.often(0.3) ? '' : ':')), (t) => t.replace(/\b[a-z]{4,}\b/g, (word) => (d.often(0.1) ? d.pick(v.names) : word)),
    (t) => t.split('\n').map((line) => (d.often(0.15) ? d.pick(v.lines) : line)).join('\n'), (t) => t.replaceAll('\n', () => (d.often(0.1) ? ' ' : '\n')),
  ])(text);
}

/** What no person writes: lines without end, brackets in brackets, headings in headings, one word a thousand times. */
function monstrous(d) {
  const word = d.pick([...v.names, ...v.units, ...v.verbs]), mark = d.pick(MARKS), size = d.pick([50, 480, 499, 500, 501, 5_000, 60_000]);
  const filled = (part) => part.repeat(Math.ceil(size / Math.max(part.length, 1))).slice(0, size);
  return d.pick([
    () => filled(`${word} `), () => filled(mark), () => filled('('), () => filled(`(${word}`), () => filled(`${d.pick(NUMBERS)} `), () => filled(`60 ml ${word}, `), () => filled(`${word} and `), () => filled(d.pick(ODD)),
    () => `X\n${filled(`P (${d.pick(v.methods)}):\n10 ml ${word}\n`)}`, () => `X\n${filled(`A / B / ${word} (mix):\n`)}`, () => `X\nBuild:\n${filled(`${d.pick(v.lines)}\n`)}`, () => d.times(60, (i) => `P${i} (mix):\n10 ml p${i + 1}\n`).join('\n'),
    () => d.times(12, (i) => `P${i} (mix):\n1 ml p${i + 1}\n99 % p${i + 2}\n`).join('\n'), () => `X\n1 ml ${word}\n${filled(`shake 1 s over 1 g cubes\n`)}`, () => `X\n${d.times(380, () => `${d.upTo(9)} ${d.pick(v.units)} ${d.pick(v.names)}`).join('\n')}`,
  ])();
}

/** The text of one round. */
export function textOf(seed) {
  const d = draws(seed), g = grammar(d), kind = d.next();
  if (kind < 0.4) return whole(d);
  if (kind < 0.5) return damaged(d, whole(d));
  if (kind < 0.62) return damaged(d, damaged(d, d.pick(v.demo)));
  if (kind < 0.7) { const book = d.pick(v.books); return damaged(d, [book.name, 'measures: us-1910', ...book.lines].join('\n')); }
  if (kind < 0.92) return [d.pick(v.names), ...d.times(d.upTo(8) + 1, () => g.line([]))].join('\n');
  return monstrous(d);
}
