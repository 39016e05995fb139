import { readdirSync, readFileSync } from 'node:fs';
import { tables } from '@washline/tables';
import { describe, expect, it } from 'vitest';
import { parse } from '../document/parse.ts';
import { readText } from '../read.ts';
import { fromFree } from './free.ts';

/** The made spec, with the kinds of its lines and the lines that are marked as not understood. */
function made(text: string): { text: string; name: string; problems: string[]; lines: string[] } {
  const spec = fromFree(text);
  if (spec === null) throw new Error('left alone');
  const document = parse(spec), read = readText(spec, { tables });
  return { text: spec, name: document.name, problems: [...read.problems, ...read.reading.findings.filter((one) => one.code === 'ingredient-unknown')].map((one) => spec.split('\n')[(one.where.line ?? 0) - 1] ?? ''), lines: document.sections.flatMap((section) => section.lines.map((line) => `${line.kind}: ${line.text}`)) };
}

describe('a recipe as anybody writes it becomes a spec', () => {
  it('1: bullets under Ingredients, numbers under Method', () => {
    const { text, problems } = made('Harbour Sour\n\nIngredients:\n- 2 oz white rum\n- juice of 1 lime\n- 1/2 oz simple syrup\n- 1 1/2 tsp honey\n\nMethod:\n1. Add all ingredients to a shaker with ice.\n2. Shake hard for 15 seconds and strain into a chilled coupe.\n3. Garnish with a lime wheel.\n');
    expect(text).toBe('Harbour Sour\n\n2 oz white rum\njuice of 1 lime\n1/2 oz simple syrup\n1 1/2 tsp honey\n\n# Add all ingredients to a shaker with ice\nShake hard for 15 seconds and strain into a chilled coupe\nGarnish with a lime wheel\n');
    expect(problems).toEqual([]);
  });
  it('2: a title and one running text', () => {
    const { text, problems } = made('Harbour Sour\n2 oz white rum, juice of 1 lime, ½ oz simple syrup. Shake with ice and strain into a coupe. Garnish with a lime wheel.');
    expect(text).toBe('Harbour Sour\n\n2 oz white rum\njuice of 1 lime\n½ oz simple syrup\nShake with ice and strain into a coupe\nGarnish with a lime wheel\n');
    expect(problems).toEqual([]);
  });
  it('3: German, Zutaten and Zubereitung', () => {
    const { text, problems } = made('Hafen Sour\nZutaten:\n• 6 cl weißer Rum\n• Saft einer Limette\n• 2 cl Zuckersirup\nZubereitung:\nAlle Zutaten mit Eis in den Shaker geben. 15 Sekunden kräftig schütteln und in eine Coupe abseihen. Mit einer Limettenscheibe garnieren.');
    expect(text).toBe('Hafen Sour\n\n6 cl weißer Rum\nSaft einer Limette\n2 cl Zuckersirup\n# Alle Zutaten mit Eis in den Shaker geben\n15 Sekunden kräftig schütteln und in eine Coupe abseihen\nMit einer Limettenscheibe garnieren\n');
    expect(problems).toEqual([]);
  });
  it('4: headings without a colon, what it is for, glass and servings after it', () => {
    const { text, problems } = made('Pineapple Mule\n\nIngredients\n\n60 ml dark rum\n40 ml pineapple juice\n10 ml lime juice\n\nDirections\n\nBuild over ice and stir briefly.\nTop with 90 ml ginger beer.\n\nGlass: Highball\nServes 1\n');
    expect(text.startsWith('Pineapple Mule\nglass: Highball\nserves: 1\n\n60 ml dark rum\n')).toBe(true);
    expect(text).toContain('\nBuild over ice and stir briefly\nTop with 90 ml ginger beer\n');
    expect(problems).toEqual([]);
  });
  it('5: words before the first measure say what it is', () => {
    const { text } = made('Tea Harbour\nWe made this one on a rainy evening by the water. It is long and dry.\n\n* 50 ml gin\n* 100 ml black tea\n\nStir with ice. Strain into a rocks glass.');
    expect(text).toBe('Tea Harbour\nabout: We made this one on a rainy evening by the water. It is long and dry.\n\n50 ml gin\n100 ml black tea\n\nStir with ice\nStrain into a rocks glass\n');
  });
  it('6: the amount behind the name', () => {
    const { text, problems } = made('Lagoon\nWhite rum: 60 ml\nPineapple juice – 90 ml\nLime juice ... 15 ml\nShake and strain.');
    expect(text).toBe('Lagoon\n\nWhite rum: 60 ml\nPineapple juice – 90 ml\nLime juice ... 15 ml\nShake and strain\n');
    expect(parse(text).sections[0]?.lines.slice(0, 3).map((line) => line.actions[0]?.kind === 'measure' && line.actions[0].thing.link.kind === 'larder' ? line.actions[0].thing.link.id : '')).toEqual(['rum-white', 'pineapple-juice', 'lime-juice']);
    expect(problems).toEqual([]);
  });
  it('7: what is not understood is left in and is a problem at its line', () => {
    const { text, problems } = made('Harbour Fizz\nIngredients:\n- 45 ml gin\n- 1 splodge of zorbel\n- 20 ml lemon juice\nMethod:\nShake with ice. Strain. Enjoy with friends!');
    expect(text).toContain('\n1 splodge of zorbel\n');
    expect(text).toContain('\nEnjoy with friends\n');
    expect(problems).toContain('Enjoy with friends');
    expect(problems).toContain('1 splodge of zorbel');
    expect(problems).toHaveLength(2);
  });
  it('8: a part of its own: a syrup made first', () => {
    const { text, problems } = made('Ginger Swell\n\nFor the ginger syrup:\n- 200 g sugar\n- 200 ml water\n- 50 g fresh ginger\n1. Simmer for 10 minutes.\n2. Strain through a fine sieve.\n\nFor the drink:\n- 50 ml dark rum\n- 20 ml ginger syrup\n- 20 ml lime juice\n1. Shake with ice.\n2. Strain into a coupe.');
    expect(problems).toEqual([]);
    const sections = parse(text).sections;
    expect(sections.map((one) => `${one.kind} ${one.name}`)).toEqual(['prep ginger syrup', 'build ']);
    expect(sections[1]?.lines.some((line) => line.actions.some((action) => action.kind === 'measure' && action.thing.link.kind === 'prep'))).toBe(true);
  });
  it('9: marks of a text with headings and bold print, and where it is from', () => {
    const { text, problems } = made('# Harbour Highball\n\n**Prep time:** 5 minutes\n\n## Ingredients\n\n- **50 ml** whisky\n- 120 ml soda water\n\n## Method\n\n1. Pour the whisky over ice.\n2. Top with the soda water.\n\nhttps://example.org/harbour\n');
    expect(text.startsWith('Harbour Highball\nsource: https://example.org/harbour\n\n# Prep time: 5 minutes\n')).toBe(true);
    expect(text).toContain('50 ml whisky\n120 ml soda water\n');
    expect(problems.filter((line) => /ml/.test(line))).toEqual([]);
  });
  it('10: German, one line after another with portions', () => {
    const { text, problems } = made('Ananas-Welle\nFür 2 Personen\n\n120 ml weißer Rum\n180 ml Ananassaft\n30 ml Limettensaft\n\nAlles in einen Shaker geben und 12 Sekunden mit Eis schütteln. In ein Longdrinkglas abseihen.');
    expect(text.startsWith('Ananas-Welle\nserves: 2\n\n120 ml weißer Rum\n')).toBe(true);
    expect(text).toContain('# Alles in einen Shaker geben\n12 Sekunden mit Eis schütteln\nIn ein Longdrinkglas abseihen\n');
    expect(problems).toEqual([]);
  });
  it('11: German, die Menge hinter dem Namen, Schritte gezählt', () => {
    const { text, problems } = made('Teehafen\nGin: 5 cl\nSchwarzer Tee: 10 cl\nZuckersirup: 1 cl\n\n1) Auf Eis rühren.\n2) In einen Tumbler abseihen.\n3) Mit einer Zitronenzeste garnieren.');
    expect(text).toBe('Teehafen\n\nGin: 5 cl\nSchwarzer Tee: 10 cl\nZuckersirup: 1 cl\n\nAuf Eis rühren\nIn einen Tumbler abseihen\nMit einer Zitronenzeste garnieren\n');
    expect(problems).toEqual([]);
  });
  it('12: everything in one sentence with what follows it', () => {
    const { text } = made('Night Harbour\n45 ml rye whiskey\n20 ml sweet vermouth\n2 dashes orange bitters\nPlace everything in a mixing glass filled with ice, stir for 30 seconds; strain into a coupe. Express an orange peel over the top.');
    expect(text).toContain('# Place everything in a mixing glass filled with ice\nstir for 30 seconds\nstrain into a coupe\n');
  });
  it('13: no title: the measures are taken, the missing name stays a problem', () => {
    const spec = fromFree('Ingredients: 2 oz white rum, 1 oz lime juice, ½ oz simple syrup\nInstructions: Shake with ice; strain into a coupe.');
    expect(spec).toBe('2 oz white rum\n1 oz lime juice\n½ oz simple syrup\nShake with ice\nstrain into a coupe\n');
    expect(parse(spec!).problems.map((one) => one.code)).toEqual(['name-missing']);
  });
  it('14: line ends of another system, hard blanks and ticks', () => {
    const { text } = made('Harbour Cup\r\n\r\nIngredients:\r\n☐ 60\u00a0ml white rum\r\n☐ 30\u00a0ml lime juice\r\n\r\nMethod:\r\nShake. Strain.\r\n');
    expect(text).toBe('Harbour Cup\n\n60 ml white rum\n30 ml lime juice\n\nShake\nStrain\n');
  });
  it('among the lines of a spec its title is a heading', () => {
    expect(fromFree('Ginger Syrup\n\nIngredients:\n- 200 g sugar\n- 200 ml water\n\nMethod: Simmer for 10 minutes. Strain.', { whole: false })).toBe('\nGinger Syrup:\n200 g sugar\n200 ml water\n\nSimmer for 10 minutes\nStrain\n');
  });
  it('is made once: what was made is left alone', () => {
    for (const text of ['A\nIngredients:\n- 60 ml gin\n- 30 ml lime juice\nMethod:\nShake. Strain.', 'B\n60 ml gin, 30 ml lime juice. Shake with ice and strain.']) expect(fromFree(fromFree(text)!)).toBeNull();
  });
});

describe('what is left alone', () => {
  it.each([
    ['a spec of a name and lines', 'Daiquiri\n60 ml white rum 40 %\n30 ml lime juice\nshake 12 s\nstrain\n'],
    ['a spec with a prep', 'Harbour\n\nTea rum (infusion):\n100 ml white rum\n5 g black tea\nrest 2 h. Then strain.\n\nBuild:\n60 ml tea rum\n'],
    ['a spec with bullets', 'Harbour\n- 60 ml white rum\n- 30 ml lime juice\n'],
    ['one line', '60 ml white rum'], ['a word', 'rum'], ['nothing', '  \n '],
    ['what is no recipe', 'Dear all,\n\nthe meeting is on Monday. Please bring your notes.\n\nBest wishes'],
    ['a long text', 'x\n'.repeat(20_000)],
  ])('%s', (_, text) => { expect(fromFree(text)).toBeNull(); });
  it('every spec that comes along', () => {
    const folder = new URL('../../../../demo/', import.meta.url), files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.drink'));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect(fromFree(readFileSync(new URL(file, folder), 'utf8')), file).toBeNull();
  });
  it('never throws', () => { for (const text of ['-', '1.', ':', '# ', '**', '- - -', '1) 2) 3)', '\u0000', 'ml. oz. g.', 'a: 1\nb: 2\nc: 3']) expect(() => fromFree(text)).not.toThrow(); });
});
