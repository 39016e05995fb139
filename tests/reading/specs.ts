import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { Document } from '@washline/engine';

const SOLID = ['40 g sugar', '3 g black tea leaves', '10 g lemon peel', '2 gold gelatin sheets, soaked 10 min in cold water', '1 g agar', '20 g virgin coconut oil'];
const LIQUID = ['white rum 40 %', 'pineapple juice', 'lime juice', 'whole milk', 'water', 'simple syrup 1:1', 'tonic water', 'black tea', 'orange liqueur', 'egg white'];
const METHODS = ['mix', 'syrup', 'cordial', 'infusion', 'acid adjust', 'fat wash', 'milk wash', 'clarify with agar', 'clarify with milk', 'siphon foam', 'gel', 'carbonate',
  'pressure infusion', 'oleo saccharum', 'clarify with gelatin', 'clarify with enzyme', 'clarify with gravity', 'foam', 'ferment', 'bitters', 'blend', 'freeze', 'ice'];
const STEPS = ['boil 2 min', 'rest 4 h at 30 °C', 'chill 2 h at 4 °C', 'freeze 12 h', 'strain through cheesecloth', 'strain through a paper filter', 'heat to 70 °C', 'reduce to 100 ml', 'stir 10 s', 'blend 20 s',
  'ferment 48 h at 24 °C', 'ignite', 'simmer 20 min', 'charge with 1 N2O in a 500 ml siphon', 'carbonate at 2.8 bar, 2 °C', 'thaw 24 h at 4 °C', 'hold 5 min at 85 °C', 'muddle', 'sous-vide 2 h at 60 °C', 'settle 12 h'];
const ENDS = ['shake 12 s over 150 g cubes', 'stir 25 s over 200 g cubes at -5 °C', 'stir 20 s', 'shake 10 s', 'build over 120 g cubes', ''];

/** How each verb of the grammar is commanded, in both languages. */
const COMMANDED = new Map<string, { readonly written: string; readonly last: boolean }[]>();
for (const row of readFileSync(new URL('../../data/vocabulary/verbs.tsv', import.meta.url), 'utf8').trimEnd().split('\n').slice(1)) {
  const [verb = '', language, written = '', form] = row.split('\t');
  if (form === 'imperative' || (language === 'de' && form === 'infinitive')) COMMANDED.set(verb, [...(COMMANDED.get(verb) ?? []), { written, last: form === 'infinitive' }]);
}
/** Every verb of the grammar. */
export const VERBS: readonly string[] = [...COMMANDED.keys()];
/** What may be said with a verb, whether it fits or not. */
const WITH = ['', '10 s', '20 min', '12 h at 4 °C', '8 h at -18 °C', '2 h at -3 °C', '90 °C', '30 ml water', '10 ml lime juice', '15 g sugar', '12 times', '150 g cubes', 'over 100 g crushed ice at -10 °C', 'through cheesecloth', 'through a fine sieve', 'to 100 ml', 'by half', 'at 3 bar, 4 °C',
  '1 N2O in a 500 ml siphon', '1 CO2', 'a lemon peel', 'with tonic water', 'the first 50 ml', 'overnight', 'covered 1 h', '10 min at 3000 g'];
const action = fc.tuple(fc.constantFrom(...VERBS), fc.nat(), fc.constantFrom(...WITH)).map(([verb, n, said]) => {
  const { written, last } = COMMANDED.get(verb)![n % COMMANDED.get(verb)!.length]!;
  return written.includes('…') ? written.replace('…', said) : last ? `${said} ${written}`.trim() : `${written} ${said}`.trim();
});
const step = fc.oneof({ weight: 1, arbitrary: fc.constantFrom(...STEPS) }, { weight: 2, arbitrary: action });

const AS = ['', '', '', '', '', '', ' at 60 °C', ' at -18 °C', ' at -3 °C'];
const line = fc.oneof(
  fc.tuple(fc.integer({ min: 5, max: 400 }), fc.constantFrom(...LIQUID), fc.constantFrom(...AS)).map(([n, what, as]) => `${n} ml ${what}${as}`),
  fc.constantFrom(...SOLID),
);
const prep = (name: string) => fc.tuple(fc.constantFrom(...METHODS), fc.array(line, { minLength: 1, maxLength: 4 }), fc.array(step, { maxLength: 5 }))
  .map(([method, lines, steps]) => `${name} (${method}):\n${lines.join('\n')}\n${steps.join('\n')}`);
/** Specs of two preps, one in the other, and a build, through every method and verb. */
export const spec = fc.tuple(prep('First wash'), prep('Second brew'), fc.array(line, { minLength: 1, maxLength: 4 }), fc.array(step, { maxLength: 2 }), fc.constantFrom(...ENDS), fc.integer({ min: 1, max: 60 }))
  .map(([a, b, lines, steps, end, n]) => `Random\n\n${a}\n${n} ml water\n\n${b}\n${n} ml first wash\n\nBuild:\n${n} ml second brew\n${[...lines, ...steps].join('\n')}\n${end}\n`);

/** What is done with a flag has a verb of its own in the grammar; what dresses a drink is read as what it is dressed with. */
const FLAGGED = new Map([['strain fine', 'fine-strain'], ['strain double', 'double-strain'], ['shake dry', 'dry-shake']]);
const DRESSES = VERBS.filter((verb) => /^(garnish|grate|twist|rim)$/.test(verb));
/** The verbs a document was read to hold. */
export function* verbsIn(document: Document): Generator<string> {
  for (const { lines } of document.sections) for (const { actions, text } of lines) for (const one of actions) {
    if (one.kind === 'step' || one.kind === 'fill') yield one.verb;
    if (one.kind === 'step') for (const flag of one.flags) yield FLAGGED.get(`${one.verb} ${flag}`) ?? one.verb;
    if (one.kind === 'garnish') yield* DRESSES.filter((verb) => COMMANDED.get(verb)!.some(({ written }) => text.toLowerCase().includes(written.toLowerCase())));
  }
}

/** So many runs of a slow property; where a proof asks for a hundred times the cases, ten times as many. */
export const runs = (usual: number): number => Math.round(usual * Math.sqrt(Number(process.env['WASHLINE_CASES'] ?? 100) / 100));
