import type { Document, Path, Problem, Section } from '../document/types.ts';
import { judge } from '../findings/judge.ts';
import { standardDrinks } from '../larder/index.ts';
import type { Tables } from '../larder/types.ts';
import { GRADES } from '../provenance/types.ts';
import type { Grade } from '../provenance/types.ts';
import { compile, type Compiled } from '../program/compile.ts';
import { diet } from './diet.ts';
import { heard } from './heard.ts';
import { glassReading } from './glass.ts';
import { colourOf } from './colour.ts';
import { place } from './place.ts';
import { reach } from '../numeric/index.ts';
import { spreads, type Spreads } from './spread.ts';
import type { Assumed, Balance, Figure, Finding, PrepReading, Reading, Stage, Why } from './types.ts';

export interface ReadOptions { readonly variant?: string | null; readonly why?: string | null; readonly shelf?: readonly Section[] }
/** A reading and what the text itself has wrong. */
export interface ReadResult { readonly reading: Reading; readonly problems: readonly Problem[]; readonly compiled: Compiled }

const INNER = /^(margin:|word:|tint_|turbid|takes\/|balance:)/;

/**
 * What will be in the glass: compiles the document, runs it at its nominal values and at every input's two points, and puts the
 * answers together with what was assumed, found and declared.
 * @source none - definition
 */
export function readDocument(document: Document, tables: Tables, options: ReadOptions = {}): ReadResult {
  const compiled = compile(document, tables, options.variant ?? null, options.shelf ?? []);
  const { program, ctx, build, ordered } = compiled;
  const w = program.workspace();
  const s = spreads(program, w);
  const index = new Map<string, number>();
  program.probes.forEach((p, i) => index.set(`${p.of}|${p.name}`, i));
  const at = (of: string, name: string) => index.get(`${of}|${name}`);
  const number = (of: string, name: string) => { const i = at(of, name); return i === undefined ? NaN : s.value[i]!; };
  const figure = (i: number) => makeFigure(compiled, s, i);
  const figuresOf = (of: string): Record<string, Figure> => {
    const out: Record<string, Figure> = {};
    program.probes.forEach((p, i) => { if (p.of === of && !INNER.test(p.name) && Number.isFinite(s.value[i]!)) out[p.name] = figure(i); });
    return out;
  };

  const problems: Problem[] = [...document.problems];
  for (const ring of ordered.rings) problems.push({ code: 'prep-ring', path: ['preps', ring.key], line: ring.headingLine ?? 1, column: 1, span: ring.heading ?? { from: 0, to: 0 }, words: { prep: ring.name } });

  const stageReadings = (list: readonly { text: string; path: Path; of: string; balance: boolean }[]): Stage[] => list.map((b) => {
    const balance = b.balance ? Object.fromEntries(['drink', 'melt', 'ice', 'vessel', 'air', 'mixing'].map((k) => [k, number(b.of, `balance:${k}`)])) as unknown as Balance : undefined;
    return { step: b.text, path: b.path, figures: figuresOf(b.of), ...(balance ? { balance_kJ: balance } : {}) };
  });

  const preps: Record<string, PrepReading> = Object.create(null) as Record<string, PrepReading>;
  for (const p of ctx.preps.values()) {
    const of = `prep:${p.section.key}`;
    const figures = figuresOf(of);
    const { yield: yields, ...rest } = figures;
    preps[p.section.key] = {
      name: p.name, method: p.section.method, figures: rest, yield: yields ?? figure(at(of, 'yield')!), ready_after: duration(p.seconds), stages: stageReadings(p.stages),
      colour: colourOf(number(of, 'tint_r'), number(of, 'tint_g'), number(of, 'tint_b'), 1), turbidity: Math.min(3, number(of, 'turbid')),
      vessel: p.vessel, takes: p.takes.map((t) => ({ prep: t.prep, mL: number(of, `takes/${t.prep}`) })),
    };
  }

  const figures = build ? figuresOf('drink') : {};
  const ethanol = number('drink', 'ethanol');
  const findings: Finding[] = judge(compiled, s, at);
  const declared = diet(ctx, build);
  const reading: Reading = {
    drink: document.name, variant: options.variant ?? null,
    partial: problems.length > 0 || document.cut,
    figures, stages: build ? stageReadings(build.stages) : [], preps,
    glass: build ? glassReading(compiled, number, (of, name) => figure(at(of, name)!)) : null,
    standard_drinks: Number.isFinite(ethanol) ? standardDrinks(ethanol) : {},
    allergens: declared.allergens, vegan: declared.vegan, vegetarian: declared.vegetarian, diet: declared.lines,
    assumed: assumedOf(compiled),
    ...accept(document, findings),
    ...(options.why ? { why: why(compiled, s, at, options.why) } : {}),
  };
  return { reading, problems, compiled };
}

function makeFigure(c: Compiled, s: Spreads, k: number): Figure {
  const probe = c.program.probes[k]!, n = c.program.probes.length, inputs = c.program.inputs;
  const sources = new Set<string>(probe.sources);
  let weakest = -1;
  const enough = 0.01 * s.variance[k]!;
  if (enough > 0) {
    for (let i = 0; i < inputs.length; i++) {
      if (s.part[i * n + k]! < enough) continue;
      weakest = Math.max(weakest, GRADES.indexOf(inputs[i]!.grade));
      sources.add(inputs[i]!.source);
    }
  }
  const grade: Grade = weakest < 0 ? 'compiled' : GRADES[weakest]!;
  const value = s.value[k]!, low = s.low[k]!, high = s.high[k]!;
  const a = value - low, b = high - value;
  return { value, unit: probe.unit, low, high, skewed: Math.max(a, b) > 1e-12 && Math.abs(a - b) > 0.2 * Math.max(a, b), grade, method: probe.method, sources: [...sources] };
}

/** ISO 8601, rounded up to five minutes. */
function duration(seconds: number): string {
  const minutes = Math.ceil(seconds / 300 - 1e-9) * 5;
  const h = Math.floor(minutes / 60), m = minutes % 60;
  return `PT${h > 0 ? `${h}H` : ''}${m > 0 || h === 0 ? `${m}M` : ''}`;
}

function assumedOf(c: Compiled): Assumed[] {
  const out: Assumed[] = [];
  for (const i of c.program.inputs) {
    if (!i.assumed || i.role === 'model') continue;
    const range = i.spread.kind === 'range' ? i.spread : null;
    out.push({ key: i.key, value: i.value, unit: i.unit, low: range?.low ?? null, high: range?.high ?? null, grade: i.grade, source: i.source, where: place(c.ctx.document, i.at ?? []), say: heard(i.key) ? i.assumed.say : '' });
  }
  for (const word of c.ctx.book.words) out.push({ key: word.key, value: word.value, unit: '', low: null, high: null, grade: word.grade, source: word.source, where: place(c.ctx.document, word.at), say: heard(word.key) ? word.say : '' });
  return out;
}

/** Findings knowingly accepted go aside; an acceptance whose line no longer reads so has lapsed. */
function accept(document: Document, findings: readonly Finding[]): { findings: Finding[]; accepted: Finding[] } {
  const entries = document.sections.flatMap((s) => s.accept ?? []);
  const accepted: Finding[] = [], open: Finding[] = [], used = new Set<(typeof entries)[number]>();
  const fold = (t: string) => t.trim().toLowerCase().replace(/\s+/g, ' ');
  for (const f of findings) {
    const line = lineText(document, f.where.path);
    const entry = entries.find((e) => e.code === f.code && (fold(e.at) === fold(line) || fold(e.at) === String(f.where.path[0] === 'preps' ? f.where.path[1] : f.where.path[0]).toLowerCase()));
    if (entry) used.add(entry);
    if (entry && f.severity !== 'stop') accepted.push(f); else open.push(f);
  }
  for (const e of entries) {
    if (used.has(e) || known(document, fold, e.at)) continue;
    open.push({ code: 'acceptance-lapsed', severity: 'note', where: { path: ['accept'], span: e.span, line: lineAt(document.text, e.span.from), column: 1 }, margin: { value: 1, low: 1, high: 1, unit: 'lines' }, odds: 1, words: { code: e.code, line: e.at }, sources: ['none'] });
  }
  return { findings: open, accepted };
}
/** Does any line, prep or section still read as an acceptance says? */
function known(document: Document, fold: (t: string) => string, at: string): boolean {
  return document.sections.some((s) => fold(s.kind === 'prep' ? s.key : s.kind) === fold(at) || s.lines.some((l) => fold(l.text) === fold(at)));
}
function lineAt(text: string, offset: number): number { return text.slice(0, offset).split('\n').length; }
function lineText(document: Document, path: Path): string {
  for (const s of document.sections) for (const l of s.lines) if (l.path.length <= path.length && l.path.every((p, i) => p === path[i])) return l.text;
  return '';
}

function why(c: Compiled, s: Spreads, at: (of: string, name: string) => number | undefined, name: string): Why {
  const [of, figure] = name.includes('/') ? [`prep:${name.slice(0, name.lastIndexOf('/'))}`, name.slice(name.lastIndexOf('/') + 1)] : ['drink', name];
  const k = at(of, figure) ?? at('glass', figure);
  if (k === undefined || !Number.isFinite(s.value[k]!)) return { figure: name, method: '', sources: [], inputs: [] };
  const n = c.program.probes.length, inputs = c.program.inputs;
  const all = s.variance[k]!;
  const fig = makeFigure(c, s, k);
  return {
    figure: name, method: fig.method, sources: fig.sources,
    inputs: inputs.map((input, i) => {
      const width = reach(input.spread, input.value);
      return {
        key: input.key, value: input.value, unit: input.unit, low: width.low, high: width.high, grade: input.grade, source: input.source,
        slope: width.high > width.low ? (s.up[i * n + k]! - s.down[i * n + k]!) / (width.high - width.low) : 0, share: all > 0 ? s.part[i * n + k]! / all : 0,
      };
    }).filter((i) => i.share > 0.0005).sort((a, b) => b.share - a.share),
  };
}
