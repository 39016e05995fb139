import fc from 'fast-check';

const SOLID = ['40 g sugar', '3 g black tea leaves', '10 g lemon peel', '2 gold gelatin sheets, soaked 10 min in cold water', '1 g agar', '20 g virgin coconut oil'];
const LIQUID = ['white rum 40 %', 'pineapple juice', 'lime juice', 'whole milk', 'water', 'simple syrup 1:1', 'tonic water', 'black tea', 'orange liqueur', 'egg white'];
const METHODS = ['mix', 'syrup', 'cordial', 'infusion', 'acid adjust', 'fat wash', 'milk wash', 'clarify with agar', 'clarify with milk', 'siphon foam', 'gel', 'carbonate',
  'pressure infusion', 'oleo saccharum', 'clarify with gelatin', 'clarify with enzyme', 'clarify with gravity', 'foam', 'ferment', 'bitters', 'blend', 'freeze', 'ice'];
const STEPS = ['boil 2 min', 'rest 4 h at 30 °C', 'chill 2 h at 4 °C', 'freeze 12 h', 'strain through cheesecloth', 'strain through a paper filter', 'heat to 70 °C', 'reduce to 100 ml', 'stir 10 s', 'blend 20 s',
  'ferment 48 h at 24 °C', 'ignite', 'simmer 20 min', 'charge with 1 N2O in a 500 ml siphon', 'carbonate at 2.8 bar, 2 °C', 'thaw 24 h at 4 °C', 'hold 5 min at 85 °C', 'muddle', 'sous-vide 2 h at 60 °C', 'settle 12 h'];
const ENDS = ['shake 12 s over 150 g cubes', 'stir 25 s over 200 g cubes at -5 °C', 'stir 20 s', 'shake 10 s', 'build over 120 g cubes', ''];

const line = fc.oneof(
  fc.tuple(fc.integer({ min: 5, max: 400 }), fc.constantFrom(...LIQUID)).map(([n, what]) => `${n} ml ${what}`),
  fc.constantFrom(...SOLID),
);
const prep = (name: string) => fc.tuple(fc.constantFrom(...METHODS), fc.array(line, { minLength: 1, maxLength: 4 }), fc.array(fc.constantFrom(...STEPS), { maxLength: 4 }))
  .map(([method, lines, steps]) => `${name} (${method}):\n${lines.join('\n')}\n${steps.join('\n')}`);
/** Specs of two preps, one in the other, and a build, through every method and step. */
export const spec = fc.tuple(prep('First wash'), prep('Second brew'), fc.array(line, { minLength: 1, maxLength: 4 }), fc.constantFrom(...ENDS), fc.integer({ min: 1, max: 60 }))
  .map(([a, b, lines, end, n]) => `Random\n\n${a}\n${n} ml water\n\n${b}\n${n} ml first wash\n\nBuild:\n${n} ml second brew\n${lines.join('\n')}\n${end}\n`);

/** So many runs of a slow property; where a proof asks for a hundred times the cases, ten times as many. */
export const runs = (usual: number): number => Math.round(usual * Math.sqrt(Number(process.env['WASHLINE_CASES'] ?? 100) / 100));
