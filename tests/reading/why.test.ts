import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Z95, readDocument, type Why, type WhyInput } from '@washline/engine';
import { MODELS, parse, placeOfRow } from '@washline/spec';
import { tables } from '@washline/tables';

const root = new URL('../../', import.meta.url);
const text = (path: string): string => readFileSync(new URL(path, root), 'utf8');
type Row = Readonly<Record<string, string>>;
/** The sheets as they stand in data/, not as packed. */
function sheet(path: string): ReadonlyMap<string, Row> {
  const [head = '', ...lines] = text(path).trimEnd().split('\n');
  const columns = head.split('\t');
  return new Map(lines.map((line) => { const cells = line.split('\t'); return [cells[0]!, Object.fromEntries(columns.map((c, i) => [c, cells[i] ?? '']))] as const; }));
}
const sources = sheet('data/sources.tsv'), spreads = sheet('data/spreads.tsv'), assumptions = sheet('data/assumptions.tsv'), units = sheet('data/units.tsv'), larder = sheet('data/larder/ingredients.tsv'), craft = sheet('data/larder/craft.tsv');
/** Words that stand where a number is the text's own. */
const OWN = new Set(['written', 'none']);

const DRINKS = readdirSync(new URL('demo/', root)).filter((f) => f.endsWith('.drink'));
const near = (a: number, b: number, by = 1e-9): boolean => Math.abs(a - b) <= by * Math.max(1e-6, Math.abs(a), Math.abs(b));

/** The 95 % points that a row of the spreads gives about a value, as the head of docs/models/provenance.md defines them. */
function about(row: Row, v: number): readonly [number, number] {
  const a = Number(row['a']), b = Number(row['b']);
  switch (row['kind']) {
    case 'normal sd': return [v - Z95 * a, v + Z95 * a];
    case 'lognormal cv': { const f = Math.exp(Z95 * Math.sqrt(Math.log(1 + a * a))); return [v / f, v * f]; }
    case 'offset': return [v + a, v + b];
    case 'per cent': return [v * (1 + a / 100), v * (1 + b / 100)];
    default: return [Math.min(a, v), Math.max(b, v)];
  }
}

/** What is wrong with where an input says that it stands; nothing where all of it is there and agrees. */
function wrong(input: WhyInput, all: readonly WhyInput[]): string | null {
  const { key, value, low, high, unit, row, from, source, origin } = input;
  const no = (what: string): string => `${key} (${row}): ${what}`;
  if (!sources.has(source) && !OWN.has(source)) return no(`no source ${source}`);
  if (origin && !sources.has(origin.source)) return no(`no source ${origin.source} of ${from}`);
  const within = ([l, h]: readonly [number, number]): boolean => (near(low, l, 1e-6) || (l < low && [0, 1].includes(low))) && (near(high, h, 1e-6) || (h > high && [0, 100].includes(high)) || (unit === 'share' && h > high));
  if (from !== undefined && from !== 'written') {
    const [table, id = '', column = ''] = from.split(' ');
    if (table === 'ingredients' || table === 'craft') {
      const cell = (table === 'craft' ? craft : larder).get(id)?.[column];
      if (!column.includes('..') && (cell === undefined || cell === '')) return no(`no cell ${from}`);
      if (origin && Number(cell) !== origin.value) return no(`${from} holds ${cell}, not ${origin.value}`);
      if (unit !== 'share' && !column.includes('..') && Number(cell) !== value) return no(`${from} holds ${cell}, not ${value}`);
    } else if (!from.startsWith('assumptions ')) return no(`nothing called ${from}`);
  }
  if (row === 'written') return null;
  const place = placeOfRow(row);
  if (!place) return no('no file');
  if (row.startsWith('spreads ')) {
    const r = spreads.get(place.row);
    if (!r) return no('no such row');
    if (r['source'] !== source) return no(`its row is from ${r['source']}, not ${source}`);
    if (key.startsWith('ice/mass/') && place.row === 'ice/edge') {
      // counted pieces: by the cube of their edge
      const edge = all.find((i) => i.key === key.replace('ice/mass/', 'ice/size/'))?.value;
      const cv = Math.sqrt(Math.expm1((Math.log(high / value) / Z95) ** 2));
      return edge === undefined || near(cv, (3 * Number(r['a'])) / edge, 1e-6) ? null : no(`cv ${cv}`);
    }
    if (unit === 'share' && value === 1 && r['unit'] !== 'share' && r['kind'] !== 'lognormal cv' && r['kind'] !== 'per cent') {
      // a factor: the row is about what stands in the cell (acids and sugars summed, so to a fifth)
      const n = origin?.value;
      // 1:1 by volume instead of by weight
      if (key.startsWith('ratio/')) return high === 1 && near(low, Number(r['a']) / Number(r['b']), 1e-3) ? null : no(`${low}`);
      if (n === undefined) return low < 1 && high > 1 ? null : no('no width');
      const [l, h] = about(r, n);
      return near(low, Math.max(0, l / n), 0.2) && near(high, h / n, 0.2) ? null : no(`${low}..${high}, not ${l / n}..${h / n}`);
    }
    return within(about(r, value)) ? null : no(`${low}..${high} about ${value}, not ${about(r, value).join('..')}`);
  }
  if (row.startsWith('assumptions ')) {
    const r = assumptions.get(place.row);
    if (!r) return no('no such row');
    if (r['source'] !== source) return no(`its row is from ${r['source']}, not ${source}`);
    const k = unit === r['unit'] ? 1 : value / Number(r['value']);
    const [v, l, h] = [r['value'], r['low'], r['high']].map((x) => Number(x) * k) as [number, number, number];
    return near(value, v, 1e-6) && (r['low'] === '' ? low === high : near(low, l, 1e-6) && near(high, h, 1e-6)) ? null : no(`${value} (${low}..${high}), not ${v} (${l}..${h})`);
  }
  if (row.startsWith('units ')) return units.has(place.row) ? null : no('no such row');
  if (row.startsWith('ingredients ')) {
    const [id = '', columns = ''] = place.row.split(' '), [a, b] = columns.split('..').map((c) => Number(larder.get(id)?.[c] || NaN));
    return near(low, a!) && near(high, b ?? a!) && near(value, (a! + (b ?? a!)) / 2) ? null : no(`${low}..${high}, not ${a}..${b}`);
  }
  const cell = place.row.split('.').reduce<unknown>((at, name) => (at as Record<string, unknown> | undefined)?.[name], JSON.parse(text(place.file))) as { value: number; low: number; high: number } | undefined;
  return cell && near(cell.value, value) && near(cell.low, low) && near(cell.high, high) ? null : no('not what stands there');
}

describe.each(DRINKS)('%s', (file) => {
  const document = parse(text(`demo/${file}`), { language: file.includes('.de.') ? 'de' : 'en' });
  const names = readDocument(document, tables, { quick: true, why: ['no such figure'] }).notAsked[0]!.names;
  const { reading, compiled } = readDocument(document, tables, { quick: true, why: names });
  const whys = reading.why as readonly Why[];

  it('every figure and every limit can be asked, and has a number or says why not', () => {
    expect(whys.length).toBe(names.length);
    for (const why of whys) expect((why.value !== undefined) !== (why.absent !== undefined), why.figure).toBe(true);
    const shown = [
      ...Object.keys(reading.figures), ...Object.entries(reading.preps).flatMap(([key, p]) => [`${key}/yield`, ...Object.keys(p.figures).map((f) => `${key}/${f}`), ...p.stages.flatMap((s, n) => Object.keys(s.figures).map((f) => `${key}/stage ${n + 1}/${f}`))]),
      ...reading.stages.flatMap((s, n) => Object.keys(s.figures).map((f) => `stage ${n + 1}/${f}`)), 'washline_mm', 'liquid_mm', ...reading.findings.map((f) => f.code),
    ];
    expect(shown.filter((name) => !names.includes(name))).toEqual([]);
  });

  it('every input stands in a row of a table that holds its value and its width, from a source of the list', () => {
    const inputs = new Map(whys.flatMap((w) => w.inputs).map((i) => [i.key, i]));
    expect(inputs.size).toBeGreaterThan(5);
    expect([...inputs.values()].flatMap((i) => wrong(i, [...inputs.values()]) ?? [])).toEqual([]);
  });

  it('shares add up to one', () => {
    for (const why of whys) if (why.inputs.length > 0) expect(Math.abs(why.inputs.reduce((t, i) => t + i.share, why.rest) - 1), why.figure).toBeLessThan(1e-6);
  });

  it('slopes are those of a run with the input alone at its two ends', () => {
    const { program } = compiled, n = program.probes.length, w = program.workspace(), want = new Uint8Array(n).fill(1);
    const ends = new Map<string, readonly [Float64Array, Float64Array]>();
    const at = (key: string, low: number, high: number): readonly [Float64Array, Float64Array] => {
      const known = ends.get(key);
      if (known) return known;
      const i = program.inputs.findIndex((input) => input.key === key);
      const made = [low, high].map((v) => { const x = Float64Array.from(program.nominal), out = new Float64Array(n); x[i] = v; program.run(x, out, want, w); return out; }) as [Float64Array, Float64Array];
      ends.set(key, made);
      return made;
    };
    let compared = 0;
    for (const why of whys) {
      const k = program.probes.findIndex((p) => p.of === why.of && (p.name === (why.code ? `margin:${why.code}` : why.figure.split('/').at(-1)!)));
      if (why.through !== undefined || k < 0) continue;
      for (const input of why.inputs) {
        const [low, high] = at(input.key, input.low, input.high);
        if (Number.isNaN(low[k]! + high[k]!)) continue;
        expect(Math.abs((high[k]! - low[k]!) / (input.high - input.low) - input.slope), `${why.figure} ${input.key}`).toBeLessThanOrEqual(1e-6 * Math.abs(input.slope) + 1e-9);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(20);
  });

  it('every method is in the table of methods', () => {
    expect([...new Set(whys.map((w) => w.method).filter((m) => m !== '' && !(m in MODELS)))]).toEqual([]);
  });
});
