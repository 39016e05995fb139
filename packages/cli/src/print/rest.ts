import type { Assumed, Path } from '@washline/engine';
import type { LineAt, Reading } from '../reader.ts';
import { named, pointed, say } from '../sentences.ts';
import { sayAssumed } from './assumed.ts';
import { heading } from './heading.ts';
import type { Ink } from './ink.ts';
import { wrap } from './text.ts';

/** What was not written but needed, with the words that would replace it. */
export function printAssumed(list: readonly Assumed[], ink: Ink): string[] {
  if (list.length === 0) return [];
  const rows = list.flatMap((assumed) => {
    const what = sayAssumed(assumed);
    return wrap(assumed.say === '' ? what : say('read.assumed', { what, words: assumed.say }), '  ', '    ');
  });
  return [...heading('assumed', ink), ...rows];
}

/** For whom it is: standard drinks, allergens and diet with the lines they come from, and what to mind. */
export function printPeople(reading: Reading, ink: Ink, lineAt: LineAt = () => undefined): string[] {
  const drinks = Object.entries(reading.standard_drinks).map(([country, count]) => `${country} ${pointed(count.toFixed(1))}`).join(' · ');
  const from = (path: Path): string => { const line = lineAt(path); return line ? say('read.from', { line: line.line, text: line.text }) : path.join(' / '); };
  const allergens = reading.allergens.map(({ group, certain, hidden, from: path }) => say(`allergen.${certain ? 'certain' : 'possible'}${hidden ? '.hidden' : ''}`, { group: named(group), from: from(path) }));
  return [
    ...heading('people', ink),
    ...(drinks === '' ? [] : wrap(say('read.drinks', { drinks }), '  ', '  ')),
    ...(allergens.length === 0 ? wrap(say('read.allergens.none'), '  ', '  ') : [...wrap(say('read.allergens'), '  ', '  '), ...allergens.flatMap((text) => wrap(text, '    ', '      '))]),
    ...dietOf(reading, from),
    ...wrap(say('read.cautions'), '  ', '  ').map(ink.dim),
  ];
}

/** Vegan, vegetarian or neither, and the lines that keep it from being so. */
function dietOf(reading: Reading, from: (path: Path) => string): string[] {
  const diet = reading.vegan ? 'vegan' : reading.vegetarian ? 'vegetarian' : reading.diet.some((row) => row.vegetarian === 'no') ? 'neither' : 'unknown';
  const reasons = reading.diet.map((row) => say(row.vegan === 'check' ? 'diet.check' : row.vegetarian === 'no' ? 'diet.no' : 'diet.animal', { from: from(row.path) }));
  return [...wrap(say(`diet.${diet}`), '  ', '  '), ...reasons.flatMap((text) => wrap(text, '    ', '      '))];
}
