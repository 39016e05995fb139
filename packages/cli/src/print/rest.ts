import type { Assumed, Path, Why } from '@washline/engine';
import type { LineAt, Reading } from '../reader.ts';
import { say } from '../sentences.ts';
import { sayAssumed } from './assumed.ts';
import { heading } from './heading.ts';
import type { Ink } from './ink.ts';
import { withSpread } from './numbers.ts';
import { fit, wrap } from './text.ts';

/** What was not written but needed, with the words that would replace it. */
export function printAssumed(list: readonly Assumed[], ink: Ink): string[] {
  if (list.length === 0) return [];
  const rows = list.flatMap((assumed) => {
    const what = sayAssumed(assumed);
    return wrap(assumed.say === '' ? what : say('read.assumed', { what, words: assumed.say }), '  ', '    ');
  });
  return [...heading('assumed', ink), ...rows];
}

/** What one figure hangs on, the most telling input first. */
export function printWhy(why: Why | undefined, ink: Ink): string[] {
  if (!why) return [];
  const inputs = [...why.inputs].sort((a, b) => b.share - a.share).slice(0, 12).map((input) =>
    `  ${fit(input.key, 38)} ${fit(`${withSpread({ ...input, skewed: false })} ${input.unit}`, 24)} ${String(Math.round(input.share * 100)).padStart(3)} % ${input.grade}`);
  return [...heading('why', ink), ...wrap(say('read.why', { figure: why.figure, method: why.method, sources: why.sources.join(', ') }), '  ', '  '), ...inputs];
}

/** For whom it is: standard drinks, allergens and diet with the lines they come from, and what to mind. */
export function printPeople(reading: Reading, ink: Ink, lineAt: LineAt = () => undefined): string[] {
  const drinks = Object.entries(reading.standard_drinks).map(([country, count]) => `${country} ${count.toFixed(1)}`).join(' · ');
  const from = (path: Path): string => { const line = lineAt(path); return line ? say('read.from', { line: line.line, text: line.text }) : path.join(' / '); };
  const allergens = reading.allergens.map(({ group, certain, hidden, from: path }) => say(`allergen.${certain ? 'certain' : 'possible'}${hidden ? '.hidden' : ''}`, { group, from: from(path) }));
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
