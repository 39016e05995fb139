import { readFileSync, readdirSync, existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CODES, readDocument, spreads, type Why } from '@washline/engine';
import { MODELS, messagesIn, parse, readText } from '@washline/spec';
import { tables } from '@washline/tables';

const root = new URL('../../', import.meta.url);
const text = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const SPECS: readonly string[] = [...readdirSync(new URL('demo/', root)).filter((f) => f.endsWith('.drink') && !f.includes('.de.')).map((f) => text(`demo/${f}`)), ...(JSON.parse(text('tests/ranges/specs.json')) as string[])];

describe('what would narrow it most', () => {
  // tried again by hand: the program with that input exact, and with every other in turn
  it.each([['daiquiri', 'strength'], ['daiquiri', 'temperature'], ['clear-colada', 'sugar'], ['tea-milk-punch', 'acidity'], ['gin-and-tonic', 'volume']])('%s: %s', (drink, figure) => {
    const document = parse(text(`demo/${drink}.drink`));
    const { reading, compiled } = readDocument(document, tables, { why: figure });
    const why = reading.why as Why;
    const k = compiled.program.probes.findIndex((p) => p.of === 'drink' && p.name === figure);
    const width = (key: string | null): number => { const s = spreads(compiled.program, (i) => (i.key === key ? { kind: 'exact' } : i.spread)); return s.high[k]! - s.low[k]!; };
    const best = why.narrow[0]!;
    expect(best.high - best.low).toBeCloseTo(width(best.key), 9);
    expect(best.by).toBeCloseTo(1 - width(best.key) / width(null), 9);
    // no other of the most telling inputs leaves less, but for what a few hundred draws cannot tell apart
    for (const other of why.inputs.slice(0, 4)) expect(width(other.key)).toBeGreaterThan((best.high - best.low) * 0.95);
    if (best.role === 'model') expect(why.narrow[1]?.role).not.toBe('model');
  });
});

describe('the table of methods', () => {
  const sources = new Set(text('data/sources.tsv').split('\n').map((line) => line.split('\t')[0]));
  it('has every limit, and no method without a sentence, a page, its tables and its print', () => {
    const said = messagesIn('en').methods!;
    expect(Object.keys(CODES).filter((code) => !(code in MODELS))).toEqual([]);
    expect(Object.keys(MODELS).sort()).toEqual(Object.keys(said).sort());
    for (const [id, model] of Object.entries(MODELS)) {
      expect(model.sources.length, id).toBeGreaterThan(0);
      expect(model.sources.filter((key) => !sources.has(key)), id).toEqual([]);
      expect([model.page, ...model.data].filter((path) => !existsSync(new URL(path, root))), id).toEqual([]);
    }
  });
  it('has every method a probe of any spec names', () => {
    const named = new Set(SPECS.flatMap((spec) => readDocument(parse(spec), tables, { quick: true }).compiled.program.probes.map((p) => p.method)).filter((m) => m !== ''));
    expect([...named].filter((m) => !(m in MODELS))).toEqual([]);
    expect(named.size).toBeGreaterThan(25);
  });
});

describe('inputs in words', () => {
  it('every input of any spec has a sentence of its own, and something that tells more of it', () => {
    const bare: string[] = [];
    for (const spec of SPECS) {
      const { compiled } = readDocument(parse(spec), tables, { quick: true });
      const { reading } = readText(spec, { tables, quick: true, why: ['strength', 'volume', 'acidity', 'ph', 'temperature', 'washline_mm', ...[...compiled.ctx.preps.keys()].flatMap((key) => [`${key}/yield`, `${key}/sugar`, `${key}/ph`])] });
      for (const why of [reading.why ?? []].flat()) {
        for (const input of why.inputs) if (input.words === input.key || /[{}#]/.test(input.words)) bare.push(`${input.key}: ${input.words}`);
        for (const narrow of why.narrow) if (narrow.do === '' || narrow.do === messagesIn('en').inputs!.do['*']) bare.push(`${narrow.key}: ${narrow.do}`);
      }
    }
    expect([...new Set(bare)]).toEqual([]);
  });
});
