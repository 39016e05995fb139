import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

// Every row of the larder can stand in a drink: by its own name, weighed, beside a spirit, shaken. Nothing outside the project is compared; that each
// value has a width and each name leads to its row is what the tables promise.
const names = readFileSync(new URL('../../data/vocabulary/names.tsv', import.meta.url), 'utf8').split('\n').map((line) => line.split('\t')).filter(([, language, , kind]) => language === 'en' && kind === 'preferred');

it('every ingredient has one English name that is printed', () => {
  expect(new Set(names.map(([id]) => id)).size).toBe(names.length);
  expect(names.length).toBeGreaterThan(600);
});
const TOGETHER = 10;
const groups = Array.from({ length: Math.ceil(names.length / TOGETHER) }, (_, i) => names.slice(i * TOGETHER, (i + 1) * TOGETHER));
it.each(groups.map((group) => [group.map(([id]) => id).join(' '), group] as const))('go into a drink by their names: %s', (_, group) => {
  const { reading, problems, document } = readText(['Ten of them', ...group.map(([, , name]) => `5 g ${name}`), '60 ml white rum 40 %', 'shake 12 s over 150 g cubes', ''].join('\n'), { tables });
  expect(problems).toEqual([]);
  group.forEach(([id], i) => {
    const first = document.sections[0]!.lines[i]!.actions[0]!;
    expect(first.kind, id).toMatch(/measure|fill/);
    if (first.kind === 'measure' && first.thing.link.kind === 'larder') expect([first.thing.link.id, ...first.thing.link.others]).toContain(id);
  });
  for (const [figure, { value, low, high }] of Object.entries(reading.figures)) {
    for (const n of [value, low, high]) expect(Number.isFinite(n), figure).toBe(true);
    expect(low, figure).toBeLessThanOrEqual(value);
    expect(high, figure).toBeGreaterThanOrEqual(value);
  }
});
