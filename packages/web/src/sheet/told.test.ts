import { describe, expect, it } from 'vitest';
import { read } from '../read.ts';
import assumed from '../../../../messages/en/assumed.json';
import { spliced } from '../history.ts';
import { toldOf } from './told.ts';

const TEXT = 'Harbour\n60 ml white rum 40 %\n2 oz lime juice\nshake\nstrain\n';
const into = { language: 'en', sentences: assumed as Readonly<Record<string, string>>, named: (word: string) => word } as const;

describe('what is told of a line', () => {
  it('is what it was understood as, and what was assumed for it', () => {
    const told = toldOf(read(TEXT), 3, into)!;
    expect(told.read).toEqual(['2\u00a0oz = 59.1\u00a0ml lime juice']);
    expect(told.assumed.map((one) => one.what)).toContain('the citrus juice goes in at 12\u00a0°C (4 to 22)');
    expect(told.assumed.find((one) => one.words === 'at 12 °C')).toBeDefined();
  });
  it('with words that, put in, take the assumption away', () => {
    const one = toldOf(read(TEXT), 3, into)!.assumed.find((other) => other.words === 'at 12 °C')!;
    const next = spliced(TEXT, one.splices);
    expect(next).toContain('2 oz lime juice at 12 °C\n');
    expect(toldOf(read(next), 3, into)!.assumed.map((other) => other.words)).not.toContain('at 12 °C');
  });
  it('what is of no line is told of the name', () => {
    expect(toldOf(read(TEXT), 1, into)!.assumed.map((one) => one.words)).toContain('glass: coupe');
    expect(toldOf(read(TEXT), 1, into)!.read).toEqual([]);
  });
  it('nothing is told of a blank line', () => { expect(toldOf(read(TEXT), 6, into)).toBeNull(); });
  it('every assumption stands at some line', () => {
    const now = read(TEXT);
    expect([1, 2, 3, 4, 5].flatMap((line) => toldOf(now, line, into)?.assumed ?? [])).toHaveLength(now.reading.assumed.length);
  });
});
