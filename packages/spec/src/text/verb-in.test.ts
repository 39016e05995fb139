import { expect, test } from 'vitest';
import { verbIn } from './verb-in.ts';

test.each([
  ['stir 25 s over 200 g cubes', 'stir', 'stir'], ['25 s auf 200 g Würfeln rühren', 'stir', 'rühren'], ['double strain into a coupe', 'strain', 'double strain'],
  ['das Gel aufbrechen', 'break-the-gel', 'Gel aufbrechen'], ['durch ein Käsetuch abseihen', 'strain', 'abseihen'], ['4 h bei 30 °C ruhen lassen', 'rest', 'ruhen lassen'],
])('the verb of "%s"', (text, verb, written) => {
  const span = verbIn(text, verb);
  expect(span === null ? null : text.slice(span.from, span.to)).toBe(written);
});
test('is null where it is not written', () => { expect(verbIn('60 ml rum', 'stir')).toBeNull(); expect(verbIn('', 'stir')).toBeNull(); });
