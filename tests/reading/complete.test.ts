import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile, drinkKinds, type Compiled } from '@washline/engine';
import { parse } from '@washline/spec';
import { keys, tables } from '@washline/tables';

const sheet = (name: string) => {
  const [head = '', ...lines] = readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8').trimEnd().split('\n'), columns = head.split('\t');
  return lines.map((line) => Object.fromEntries(line.split('\t').map((cell, i) => [columns[i] ?? '', cell] as const)) as Record<string, string | undefined>);
};
const read = (text: string): Compiled => compile(parse(text), tables);

/** Rows of the spreads that only a written number asks for, and how fast a place cools what stands in it, which is a law's number. */
const OF_WRITTEN = /^spreads (tool|label|given|time|place\/(room|fridge|freezer|exchange)|ice\/(edge|mass weighed|temperature (written|melting))|glass\/brim stated)/;

/** Inputs of places, times, tools and sizes that a card could give but did not, and that nothing lists. */
function unsaid(c: Compiled): string[] {
  return c.ctx.book.list.filter((i) => /^(place|time|tool|measure)$/.test(i.role) && !i.assumed && i.row !== 'written' && !OF_WRITTEN.test(i.row)).map((i) => `${i.key}: ${i.row}`);
}

describe('a number that was not written and could be is listed as assumed', () => {
  const verbs = [...new Map(sheet('vocabulary/verbs.tsv').filter((r) => r['language'] === 'en' && r['form'] === 'imperative').map((r) => [r['verb'], r['written']] as const)).entries()] as [string, string][];
  it.each(verbs)('verb %s', (_verb, written) => {
    for (const text of [`Verb\n60 ml white rum 40 %\n30 ml lime juice\n${written}`, `Verb\nP (mix):\n200 ml white rum 40 %\n30 ml lime juice\n${written}\nBuild:\n60 ml p`]) expect(unsaid(read(text))).toEqual([]);
  });

  const kinds = [...new Map(sheet('vocabulary/kinds.tsv').map((r) => [r['category'], r['id']] as const)).entries()] as [string, string][];
  const preferred = new Map(sheet('vocabulary/names.tsv').filter((r) => r['language'] === 'en' && r['kind'] === 'preferred').map((r) => [r['id'], r['name']] as const));
  it.each(kinds)('ingredient class %s', (category, id) => {
    const c = read(`Class\n60 ml white rum 40 %\n20 g ${preferred.get(id)}`), start = c.ctx.book.list.filter((i) => i.assumed && /^(start|place)\//.test(i.key));
    expect(unsaid(c)).toEqual([]);
    if (category !== 'gas') expect(start.length, 'its temperature is assumed').toBeGreaterThan(0);
  });

  const glasses = sheet('glasses.tsv').map((r) => [r['key'], r['name']] as [string, string]);
  it.each(glasses)('vessel %s', (key) => {
    const written = sheet('vocabulary/words.tsv').find((r) => r['group'] === 'glass' && r['key'] === key && r['language'] === 'en')?.['written'] ?? '';
    const c = read(`Vessel\nglass: ${written}\n60 ml white rum 40 %`);
    expect(c.ctx.document.problems).toEqual([]);
    expect(unsaid(c)).toEqual([]);
    expect(c.ctx.book.list.some((i) => i.key === `glass/brim/${key}` && i.assumed), 'what it holds is assumed').toBe(true);
  });

  it.each(drinkKinds.map((kind) => [kind]))('family of drinks %s has a glass and what it holds', (kind) => {
    expect(tables.glass(String(tables.assumption(`glass/${kind}`)?.value))).toBeDefined();
    expect(tables.assumption(`glass/brim/${kind}`)).toBeDefined();
  });

  const words: [string, string, string][] = [
    ['chilled', '60 ml chilled gin', 'word/chilled'], ['cold', '60 ml cold water', 'word/chilled'], ['hot', '60 ml hot water', 'word/hot'], ['boiling', '60 ml boiling water', 'word/boiling'], ['warm', '60 ml warm water', 'word/warm'],
    ['lukewarm', '60 ml lukewarm water', 'word/lukewarm'], ['from the freezer', '60 ml gin from the freezer', 'word/frozen'], ['room temperature', '60 ml gin at room temperature', 'word/room temperature'], ['melted', '40 g coconut oil, melted', 'word/melted'],
    ['overnight', 'P (mix):\n100 ml gin 40 %\nchill overnight\nBuild:\n60 ml p', 'time/overnight'], ['a few hours', 'P (mix):\n100 ml gin 40 %\nchill a few hours\nBuild:\n60 ml p', 'time/a few hours'],
    ['briefly', '60 ml gin\nstir briefly over 200 g cubes', 'time/briefly'], ['a quick stir', '60 ml gin\nquick stir over 200 g cubes', 'time/briefly'], ['kurz', 'Sprache: Deutsch\n60 ml Gin\nkurz rühren auf 200 g Würfeln', 'time/briefly'],
    ['in the fridge', 'P (mix):\n100 ml gin 40 %\nrest 4 h in the fridge\nBuild:\n60 ml p', 'place/fridge'], ['in the freezer', 'P (mix):\n100 ml gin 40 %\nrest 4 h in the freezer\nBuild:\n60 ml p', 'place/freezer'],
    ['ice from the freezer', '60 ml gin\nstir 20 s over 200 g cubes from the freezer', 'ice/temperature/freezer'], ['ice from the well', '60 ml gin\nstir 20 s over 200 g cubes from the well', 'ice/temperature/bar well'],
  ];
  it.each(words)('the word "%s" is as wide as its row', (_word, lines, key) => {
    const input = read(`Words\n${lines}`).ctx.book.list.find((i) => i.row === `assumptions ${key}`);
    const row = tables.assumption(key), k = row?.unit === 'min' ? 60 : 1;
    expect(input?.assumed).toBeDefined();
    expect(input?.value).toBe(Number(row?.value) * k);
    expect(input?.spread).toMatchObject({ kind: 'range', low: (row?.low ?? 0) * k, high: (row?.high ?? 0) * k });
  });

  it('every row with words to say has ends about its value', () => {
    const off = keys.assumptions.filter((key) => {
      const row = tables.assumption(key)!;
      return typeof row.value === 'number' && row.low !== null && row.high !== null && !(row.low <= row.value && row.value <= row.high);
    });
    expect(off).toEqual([]);
  });
});

describe('what a word means by itself', () => {
  const words = keys.assumptions.filter((key) => key.startsWith('larder/word/')).map((key) => [key.slice('larder/word/'.length), String(tables.assumption(key)?.value)] as const);
  it.each(words)('"%s" is what its row says, and is listed unless it can mean nothing else', (word, id) => {
    const { document, book } = read(`Word\n60 ml white rum 40 %\n30 ml ${word}`).ctx, line = document.sections[0]?.lines[1]?.actions[0];
    const link = line?.kind === 'measure' ? line.thing.link : undefined;
    expect(link).toMatchObject({ kind: 'larder', id });
    expect(book.words.some((w) => w.key === `larder/word/${word}`)).toBe(link?.kind === 'larder' && link.assumed);
  });
});
