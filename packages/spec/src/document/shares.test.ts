import { describe, expect, test } from 'vitest';
import { parse } from './parse.ts';

// Definitions of the text format: "2 g per kg of juice" names a line of its section by that line's last words.
const link = (...text: string[]) => {
  const document = parse(text.join('\n'));
  for (const { lines } of document.sections) for (const { actions } of lines) for (const action of actions) if (action.kind === 'measure' && action.share?.of) return action.share.of[0]!.link;
  throw new Error('no share');
};
const syrup = (...lines: string[]) => link('X', '', 'Clear (syrup):', ...lines);

describe('what a share is a share of', () => {
  test('a line by its last words', () => { expect(syrup('500 ml clarified pineapple juice', '2 g salt per kg of juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' }); });
  test('plural and singular are one', () => { expect(syrup('500 ml pineapple juice', '2 g salt per kg of pineapple juices')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' }); });
  test('words with a hyphen are as good', () => { expect(syrup('500 ml pineapple-juice', '2 g salt per kg of juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' }); });
  test('two lines of one thing are one thing', () => { expect(syrup('500 ml pineapple juice', '200 ml pineapple juice', '2 g salt per kg of juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' }); });
  test('two lines of different things leave it open', () => { expect(syrup('500 ml pineapple juice', '200 ml lime juice', '2 g salt per kg of juice')).toMatchObject({ kind: 'unknown' }); });
  test('more words than a line has name no line', () => { expect(syrup('500 ml juice', '2 g salt per kg of cold blue juice')).toMatchObject({ kind: 'unknown' }); });
  test('a prep stays that prep, whatever line ends alike', () => { expect(link('X', '', 'tea juice (infusion):', '500 ml water', '20 g black tea', '', 'Clear (syrup):', '500 ml pineapple tea juice', '2 g salt per kg of tea juice')).toMatchObject({ kind: 'prep', prep: 'tea juice' }); });
  test('a bottle of the shelf stays that bottle', () => { expect(link('X', '', 'Clear (syrup):', '500 ml white house rum', '2 g salt per kg of house rum', '', 'Shelf:', 'house rum: 40 %')).toMatchObject({ kind: 'shelf', shelf: 'house rum' }); });
});

describe('lines that were read before, at another place', () => {
  const odd = 'shake 12 s over 150 g cubes 7 9';
  test('have their problems where they stand now', () => {
    const [before] = parse(`X\nBuild:\n${odd}`).problems, [after] = parse(`X\nBuild:\n60 ml water\n  ${odd}`).problems;
    expect(before).toMatchObject({ line: 3, path: ['build', 0] });
    expect(after).toMatchObject({ code: before!.code, line: 4, path: ['build', 1], column: before!.column + 2 });
    expect(after!.span.from - before!.span.from).toBe('60 ml water\n  '.length);
  });
  test('have their actions where they stand now', () => {
    const at = (text: string) => parse(text).sections.flatMap((section) => section.lines).flatMap((one) => one.actions).at(-1);
    expect(at(`X\nBuild:\n60 ml water\nstir 20 s over 100 g cubes`)).toMatchObject({ path: ['build', 1] });
    expect(at(`X\nBuild:\nstir 20 s over 100 g cubes`)).toMatchObject({ path: ['build', 0], ice: { mass: { number: { from: 24, to: 27 } } } });
  });
});
