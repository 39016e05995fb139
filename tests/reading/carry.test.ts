import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const folder = new URL('../../demo/', import.meta.url);
const FILES = readdirSync(folder).filter((f) => f.endsWith('.drink'));
const text = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
/** The first measure of a spec a little larger, as a hand types it. */
const larger = (spec: string): string => spec.replace(/^(\d+)(?= (?:ml|g) )/m, (n) => String(Number(n) + 1));

describe('values with the ranges of the reading before', () => {
  it.each(FILES)('%s: the same text has the same reading', (file) => {
    const spec = text(file), first = readText(spec, { tables, before: null });
    const { ranged, ...again } = readText(spec, { tables, before: first.ranged! });
    expect(ranged).toBeNull();
    // a sum of differences may lose its last digits
    const plain = (x: unknown): unknown => JSON.parse(JSON.stringify(x, (_, v: unknown) => (typeof v === 'number' ? Number(v.toPrecision(9)) : v)));
    expect(plain(again.reading)).toEqual(plain(first.reading));
  });

  it.each(FILES)('%s: a measure changed has its own values at once', (file) => {
    const spec = larger(text(file)), { ranged } = readText(text(file), { tables, before: null });
    const at = readText(spec, { tables, before: ranged! }).reading, own = readText(spec, { tables }).reading;
    // a pH is solved from where the program's own nominal stands, and ends within a step's square of the same
    const values = (of: typeof at): unknown => Object.entries(of.figures).map(([name, f]) => [name, Number(f.value.toPrecision(9))]);
    expect(values(at)).toEqual(values(own));
    expect(at.findings.filter((f) => f.severity === 'stop').map((f) => f.code)).toEqual(own.findings.filter((f) => f.severity === 'stop').map((f) => f.code));
  });

  it('makes ranges anew where the figures are others', () => {
    const { ranged } = readText(text('daiquiri.drink'), { tables, before: null }), spec = `${text('daiquiri.drink')}\n`.replace('ml', 'ml dark rum 40 %\n10 ml');
    const other = readText(spec, { tables, before: ranged! });
    expect(other.ranged).not.toBeNull();
    expect(other.reading).toEqual(readText(spec, { tables }).reading);
  });

  it('keeps a warning that was near its limit until its range is known', () => {
    const near: string[] = [];
    for (const spec of JSON.parse(readFileSync(new URL('../ranges/specs.json', import.meta.url), 'utf8')) as string[]) {
      const first = readText(spec, { tables, before: null }), then = readText(larger(spec), { tables, before: first.ranged! });
      if (then.ranged !== null) continue;
      const codes = first.reading.findings.filter((f) => f.margin !== undefined && f.margin.value <= 0).map((f) => f.code);
      near.push(...codes);
      // beyond its limit now, or still near
      expect(then.reading.findings.map((f) => f.code)).toEqual(expect.arrayContaining(codes));
    }
    expect(near.length).toBeGreaterThan(0);
  });
});
