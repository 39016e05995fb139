import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { faults, type Schema } from './faults.ts';

const root = new URL('../../', import.meta.url);
const schema = JSON.parse(readFileSync(new URL('schema/why.schema.json', root), 'utf8')) as Schema;
const NAMES = ['strength', 'ph', 'cost', 'dilution', 'washline_mm', 'temperature', 'glass-overfull'];

describe('why follows its schema', () => {
  it.each(readdirSync(new URL('demo/', root)).filter((f) => f.endsWith('.drink')))('%s', (file) => {
    const { reading } = readText(readFileSync(new URL(`demo/${file}`, root), 'utf8'), { tables, quick: true, why: NAMES });
    const several: unknown = JSON.parse(JSON.stringify(reading.why));
    expect(several).toHaveLength(NAMES.length);
    expect(faults(several, schema)).toEqual([]);
  });
  it('one figure is an object', () => {
    const { reading } = readText(readFileSync(new URL('demo/daiquiri.drink', root), 'utf8'), { tables, why: 'sugar' });
    expect(faults(JSON.parse(JSON.stringify(reading.why)), schema)).toEqual([]);
    expect(faults({ ...reading.why, inputs: [{}] }, schema)).not.toEqual([]);
  });
});
