import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { loadLanguage, readText, type SaidFinding, type SaidReading } from '@washline/spec';
import { tables } from '@washline/tables';

/** One spec of a case: why it is as it is, and who says so. */
export interface Spec {
  readonly text: string;
  readonly why: string;
  /** whose rule it is; "common practice, no source" where it is the trade's */
  readonly source: string;
  /** which finding of several with this code: the words its line begins with */
  readonly line?: string;
}
export interface Battery {
  readonly raises: readonly Spec[];
  readonly twins: readonly Spec[];
  /** where the code can warn below its limit */
  readonly edges?: readonly Spec[];
  /** whether each raising spec comes with a remedy: all, none, or those named by their place in the list */
  readonly remedies: 'all' | 'none' | readonly number[];
}
interface Row { readonly code: string; readonly most: 'stop' | 'warn' | 'note'; readonly unit: string; readonly source: string; readonly harm: boolean }

const path = (name: string) => new URL(`../../${name}`, import.meta.url);
export const ROWS = (JSON.parse(readFileSync(path('data/findings.json'), 'utf8')) as { codes: Row[] }).codes;
const SOURCES = new Set(readFileSync(path('data/sources.tsv'), 'utf8').split('\n').map((line) => line.split('\t')[0]));

await loadLanguage('de');
export const read = (text: string) => readText(text, { tables });
const readGerman = (text: string) => readText(text, { tables, language: 'de' });
/** The same spec, its head saying that it is German: what is put into it must then be German too. */
const inGerman = (text: string): string => text.replace('\n', '\nlanguage: de\n');
const of = (reading: SaidReading, code: string) => reading.findings.filter((f) => f.code === code);
const stops = (reading: SaidReading) => reading.findings.filter((f) => f.severity === 'stop').map((f) => f.code);

/** Applies splices from the last to the first. */
export function spliced(text: string, splices: readonly { readonly from: number; readonly to: number; readonly insert: string }[]): string {
  let out = text;
  for (const s of [...splices].sort((a, b) => b.from - a.from)) out = out.slice(0, s.from) + s.insert + out.slice(s.to);
  return out;
}

/** A finding as every finding must be: its margin's unit and order, its place, its words filled, its sources known. */
function wellFormed(text: string, f: SaidFinding, row: Row): void {
  const m = f.margin!;
  expect(m.unit === row.unit || row.code === 'hazard-dose' && m.unit === 'mg' || row.code === 'bottle-may-burst' && m.unit === 'bar', `unit ${m.unit}`).toBe(true);
  for (const n of [m.value, m.low, m.high]) expect(Number.isFinite(n)).toBe(true);
  expect(m.low).toBeLessThanOrEqual(m.value + 1e-9);
  expect(m.high).toBeGreaterThanOrEqual(m.value - 1e-9);
  expect(f.odds!).toBeGreaterThanOrEqual(0);
  expect(f.odds!).toBeLessThanOrEqual(1);
  expect(f.message).not.toMatch(/[{}]|undefined|NaN| \?[ ,.]/);
  expect(f.message.length).toBeGreaterThan(20);
  expect(f.where.line!).toBeGreaterThan(0);
  expect(text.slice(f.where.span!.from, f.where.span!.to).trim()).not.toBe('');
  expect(f.sources.length).toBeGreaterThan(0);
  for (const s of f.sources) expect(SOURCES.has(s) || s === 'none', `source ${s}`).toBe(true);
}

/** Applying it clears the finding, brings no problem and no new stop, and leaves every line it does not speak of as it was. */
export function remedied(text: string, f: SaidFinding, read_: typeof read = read): void {
  const { splices, say } = f.remedy!;
  expect(say).not.toMatch(/[{}]|undefined|NaN/);
  const sorted = [...splices].sort((a, b) => a.from - b.from);
  sorted.forEach((s, i) => {
    expect(s.from).toBeGreaterThanOrEqual(i === 0 ? 0 : sorted[i - 1]!.to);
    expect(s.to).toBeGreaterThanOrEqual(s.from);
    expect(s.to).toBeLessThanOrEqual(text.length);
  });
  const after = spliced(text, splices);
  expect(after).not.toBe(text);
  let at = 0, k = 0;
  const lines = after.split('\n');
  for (const line of text.split('\n')) {
    const touched = splices.some((s) => s.from < at + line.length + 1 && s.to > at || s.from === s.to && s.from >= at && s.from <= at + line.length && !s.insert.startsWith('\n') && !s.insert.endsWith('\n'));
    if (!touched) { const found = lines.indexOf(line, k); expect(found, `kept: ${line}`).toBeGreaterThanOrEqual(k); k = found + 1; }
    at += line.length + 1;
  }
  const again = read_(after);
  expect(again.problems, after).toEqual(read_(text).problems);
  const left = of(again.reading, f.code).filter((g) => g.margin!.unit === f.margin!.unit && again.document.text.slice(g.where.span!.from, g.where.span!.to) === text.slice(f.where.span!.from, f.where.span!.to) || g.where.path.join('/') === f.where.path.join('/'));
  expect(left.map((g) => `${g.severity} ${g.margin!.value}`), after).toEqual([]);
  const before = stops(read_(text).reading);
  expect(stops(again.reading).filter((c) => !before.includes(c)), after).toEqual([]);
}

/** Registers the tests of one code: at least three specs that raise it, three near twins that do not, and the edge where it may be either. */
export function battery(code: string, b: Battery): void {
  const row = ROWS.find((r) => r.code === code)!;
  expect(b.raises.length).toBeGreaterThanOrEqual(3);
  expect(b.twins.length).toBeGreaterThanOrEqual(3);
  b.raises.forEach((spec, i) => it(`raises ${code}: ${spec.why} (${spec.source})`, () => {
    const { reading } = read(spec.text);
    const found = of(reading, code).filter((f) => !spec.line || spec.text.split('\n')[f.where.line! - 1]!.startsWith(spec.line));
    expect(found.map((f) => f.severity)).toContain(row.most);
    for (const f of found) {
      expect(f.margin!.value).toBeGreaterThan(0);
      wellFormed(spec.text, f, row);
      const wanted = b.remedies === 'all' || b.remedies !== 'none' && b.remedies.includes(i);
      expect(f.remedy !== undefined, 'has a remedy').toBe(wanted);
      if (f.remedy) remedied(spec.text, f);
    }
  }));
  for (const spec of b.raises) it(`says ${code} in German, and what its remedy writes is German and clears it: ${spec.why}`, () => {
    const text = inGerman(spec.text);
    const { reading } = readGerman(text);
    const found = of(reading, code).filter((f) => !spec.line || text.split('\n')[f.where.line! - 1]!.startsWith(spec.line));
    const english = of(read(text).reading, code);
    expect(found.length).toBeGreaterThan(0);
    for (const f of found) {
      wellFormed(text, f, row);
      expect(english.map((g) => g.message)).not.toContain(f.message);
      if (f.remedy) remedied(text, f, readGerman);
    }
  });
  for (const spec of b.twins) it(`stays silent on a twin of ${code}: ${spec.why} (${spec.source})`, () => {
    const { reading, problems } = read(spec.text);
    expect(problems).toEqual([]);
    expect(of(reading, code)).toEqual([]);
  });
  for (const spec of b.edges ?? []) it(`warns on the edge of ${code}: ${spec.why} (${spec.source})`, () => {
    const { reading } = read(spec.text);
    const found = of(reading, code);
    expect(found.map((f) => f.severity)).toEqual(['warn']);
    const f = found[0]!;
    wellFormed(spec.text, f, row);
    expect(f.margin!.value).toBeLessThanOrEqual(1e-9);
    if (f.remedy) remedied(spec.text, f);
  });
}
