import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { faults, type Schema } from './faults.ts';

const root = new URL('../../', import.meta.url);
const schema = JSON.parse(readFileSync(new URL('schema/prep.schema.json', root), 'utf8')) as Schema;
const read = (file: string) => readText(readFileSync(new URL(`demo/${file}`, root), 'utf8'), { tables, quick: true }).reading;
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a prep follows its schema', () => {
  it.each(readdirSync(new URL('demo/', root)).filter((f) => f.endsWith('.drink')))('%s', (file) => {
    for (const prep of Object.values(read(file).preps)) expect(faults(plain(prep), schema)).toEqual([]);
  });
  it('and the schema tells what does not', () => {
    const { cloth, ...prep } = read('tea-milk-punch.drink').preps['tea punch']!;
    expect(faults(plain({ ...prep, cloth: { ...cloth, mass: 3 } }), schema)).not.toEqual([]);
    expect(faults(plain({ ...prep, gas: { kind: 'air' } }), schema)).not.toEqual([]);
  });
});
