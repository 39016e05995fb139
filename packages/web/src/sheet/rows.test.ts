import { parse } from '@washline/spec';
import { describe, expect, it } from 'vitest';
import { rowsOf } from './rows.ts';

const TEXT = `Harbour fizz
about: cold
glass: highball

Plum syrup (syrup):
200 g sugar
200 g plum juice
# from the late ones

Build:
20 ml plum syrup
40 ml white rum 40 %

vegan / Plum syrup (syrup):
200 g sugar
200 g plum juice
`;

describe('the sheet', () => {
  const rows = rowsOf(TEXT, parse(TEXT), null);
  const of = (text: string) => rows.find((r) => r.text === text);
  it('keeps every line as it is written', () => {
    expect(rows.map((r) => r.text).join('\n')).toBe(TEXT);
  });
  it('tells name, keys, headings, notes and lines apart', () => {
    expect(of('Harbour fizz')?.kind).toBe('name');
    expect(of('glass: highball')?.kind).toBe('key');
    expect(of('# from the late ones')?.kind).toBe('note');
    expect(of('40 ml white rum 40 %')?.kind).toBe('line');
    expect(rows.filter((r) => r.kind === 'blank')).toHaveLength(4);
  });
  it('gives preps and the build the letters they have on the drawing, and a variant none', () => {
    expect(of('Plum syrup (syrup):')).toMatchObject({ kind: 'heading', strong: 'Plum syrup', letter: 'A' });
    expect(of('Build:')).toMatchObject({ kind: 'heading', strong: 'Build', letter: 'B' });
    expect(of('vegan / Plum syrup (syrup):')).toMatchObject({ kind: 'heading', strong: 'Plum syrup', letter: '' });
  });
  it('has no name where the first line is a measure', () => {
    const bare = '60 ml white rum 40 %\n30 ml lime juice\n';
    expect(rowsOf(bare, parse(bare), null).map((r) => r.kind)).toEqual(['line', 'line', 'blank']);
  });
});
