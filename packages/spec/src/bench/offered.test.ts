// Lines that a bench may have: those of data/bench.json, read by the reader of benches itself.
import { describe, expect, it, test } from 'vitest';
import { parseBench } from './bench.ts';
import { BENCH_ROWS } from './draft.ts';
import { benchLines, withBenchLine } from './offered.ts';

describe('lines that a bench may have', () => {
  const [english, german] = [benchLines('', 'en'), benchLines('', 'de')];
  test.each(BENCH_ROWS.map((row, i) => [row.example, i] as const))('%s: is understood in both languages, and answers the same', (_, i) => {
    for (const { text } of [english[i]!, german[i]!]) expect(parseBench(text).problems, text).toEqual([]);
    expect(german[i]!.rows).toEqual(english[i]!.rows);
    expect(english[i]!.rows.length).toBeGreaterThan(0);
  });
  it('what is said already is not offered again, by whichever of its words', () => {
    const left = (text: string) => benchLines(text, 'en').map((line) => line.text);
    expect(left('My bench\nTools:\nKühlschrank: 3 °C\nbarspoon: 4 ml')).toEqual(left('').filter((line) => !/^(fridge|bar spoon):/.test(line)));
  });
  it('nor what another line has answered: at a height the air presses as it does', () => {
    expect(benchLines('altitude: 520 m', 'en').map((line) => line.text)).toEqual(benchLines('', 'en').map((line) => line.text).filter((line) => !/^(altitude|pressure):/.test(line)));
  });
  it.each([
    ['', 'room: 22 °C\n'], ['My bench\n', 'My bench\nroom: 22 °C\n'], ['My bench\n\nTools:\nscale: reads 1 g\n\n', 'My bench\n\nTools:\nscale: reads 1 g\nroom: 22 °C\n'],
    ['My bench\n\nShelf:\nwhite rum: 40 %\n', 'My bench\nroom: 22 °C\n\nShelf:\nwhite rum: 40 %\n'], ['Regal:\nrum: 40 %\nOrte:\nHöhe: 300 m', 'Regal:\nrum: 40 %\nOrte:\nHöhe: 300 m\nroom: 22 °C\n'],
  ])('%j with a line more is %j, its number marked', (before, after) => {
    const { text, from, to } = withBenchLine(before, 'room: 22 °C');
    expect(text).toBe(after);
    expect(text.slice(from, to)).toBe('22');
    expect(parseBench(text).problems).toEqual([]);
  });
});
