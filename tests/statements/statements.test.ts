import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import stated from '../../cases/print/statements.json' with { type: 'json' };

// What print says of times, temperatures, yields and strengths, as specs. Each row has its source, and says how it was had; the slack is argued in the row.

const SOURCES = new Set(readFileSync(new URL('../../data/sources.tsv', import.meta.url), 'utf8').split('\n').map((line) => line.split('\t')[0]));
const read = (prep: readonly string[], build: readonly string[]) => {
  const { reading, problems } = readText(['Stated', '', ...prep, '', 'Build:', ...build, ''].join('\n'), { tables });
  expect(problems).toEqual([]);
  return reading;
};

/** A number of a prep, with its range. */
function numberOf(prep: readonly string[], of: string, figure: string) {
  const one = read(prep, [`10 g ${of}`]).preps[of]!;
  const found = figure === 'yield' ? one.yield : figure === 'cloth' ? one.cloth!.mass : figure === 'gas' ? one.gas!.siphon!.gas : one.figures[figure];
  if (found === undefined) throw new Error(`${of} has no ${figure}`);
  return found;
}

it('each statement has its source, how it was had, and a reason for its slack', () => {
  for (const row of [...stated.figures, ...stated.findings]) {
    expect(SOURCES.has(row.source), row.source).toBe(true);
    expect(row.how).toMatch(/^(read|worked|memory|trade)$/);
    expect(row.how === 'trade', `${row.says}: ${row.source}`).toBe(row.source === 'common-practice');
  }
  for (const row of stated.figures) if (row.slack > 0.01) expect(row.why, row.says).not.toBe('');
});

describe('figures', () => {
  it.each(stated.figures.map((row) => [`${row.about}: ${row.says} (${row.source}, ${row.how})`, row] as const))('%s', (_, row) => {
    const { value, low, high } = numberOf(row.spec, row.of, row.figure);
    const per = row.against ? numberOf(row.against, row.of, row.figure).value : row.per ?? 1;
    const [least, most] = [(row.band[0]! - row.slack) * per, (row.band[1]! + row.slack) * per];
    if (row.reaches) {
      expect(low).toBeLessThanOrEqual(least);
      expect(high).toBeGreaterThanOrEqual(most);
    } else {
      expect(value).toBeGreaterThanOrEqual(least);
      expect(value).toBeLessThanOrEqual(most);
    }
  });
});

describe('findings', () => {
  it.each(stated.findings.map((row) => [`${row.about}: ${row.says}: ${row.code} ${row.is ? row.is[0] ?? 'silent' : `no ${row.never}`} (${row.source}, ${row.how})`, row] as const))('%s', (_, row) => {
    const { findings } = read(row.spec, row.build ?? [`10 g ${row.use ?? ''}`]);
    const found = findings.filter((f) => f.code === row.code), said: readonly string[] = [...new Set(found.map((f) => f.severity))];
    if (row.is) expect(said).toEqual(row.is);
    else if (row.never === 'sure') expect(found.filter((f) => f.severity === 'stop' && f.odds! > 0.95)).toEqual([]);
    else expect(said).not.toContain(row.never);
  });
});
