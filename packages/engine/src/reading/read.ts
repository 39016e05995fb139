import type { Document, Path, Problem, Section } from '../document/types.ts';
import { judge } from '../findings/judge.ts';
import { standardDrinks } from '../larder/index.ts';
import type { Tables } from '../larder/types.ts';
import { compile, type Compiled } from '../program/compile.ts';
import { accept } from './accept.ts';
import { askables, askedOf, type NotAsked } from './asked.ts';
import { costOf } from './cost.ts';
import { diet } from './diet.ts';
import { assumedOf } from './assumed.ts';
import { carry, type Ranged } from './carry.ts';
import { glassReading, glassThen } from './glass.ts';
import { colourOf } from './colour.ts';
import { figureOf } from './figure.ts';
import { LEVEL_NAMES } from '../program/glass.ts';
import { EACH_MIN, LATER_MIN, laterName, type Left } from '../program/later.ts';
import { clothOf, frozenOf, gasOf } from './preps.ts';
import { spreads, type Spreads } from './spread.ts';
import { takenOf } from './taken.ts';
import type { Balance, Cost, Figure, Finding, PrepReading, Reading, Stage } from './types.ts';
import { movedTo } from './moved.ts';
import { weightsOf } from './weights.ts';
import { whyOf } from './why.ts';

export interface ReadOptions { readonly variant?: string | null; readonly why?: string | readonly string[] | null; readonly shelf?: readonly Section[];
  /** ranges by differences alone: for a picture that must keep up with a hand */
  readonly quick?: boolean;
  /** with what the drink is in its glass for half an hour */
  readonly later?: Left | null;
  /** with `later`: every whole minute, and the glass as it stands then */
  readonly each?: boolean;
  /** an earlier reading whose ranges are carried along, where it has the same figures and inputs; else ranges are made anew */
  readonly before?: Ranged | null }
/** A reading and what the text itself has wrong. */
export interface ReadResult { readonly reading: Reading; readonly problems: readonly Problem[]; readonly compiled: Compiled; readonly spreads: Spreads; /** true where the ranges are those of the reading before */ readonly carried: boolean; /** names whose why was asked and that nothing here has */ readonly notAsked: readonly NotAsked[];
  /** g of what each line puts in, by its path */
  readonly weights: () => Readonly<Record<string, number>> }

/** Levels of a glass at a moment: they stand in its drawing, not in the list of figures. */
const LEVELS: ReadonlySet<string> = new Set(LEVEL_NAMES.map(([name]) => name));
const INNER = /^(margin:|word:|tint_|turbid|takes\/|balance:)/;

/**
 * What will be in the glass: compiles the document, runs it at its nominal values and at every input's two points, and puts the
 * answers together with what was assumed, found and declared.
 * @source none - definition
 */
export function readDocument(document: Document, tables: Tables, options: ReadOptions = {}): ReadResult {
  const turned = turnedOnly(document, tables, options);
  const compiled = turned?.compiled ?? compile(document, tables, options.variant ?? null, options.shelf ?? [], options.later ?? null, options.each ?? false);
  const { program, ctx, build, ordered } = compiled;
  const old = turned?.spreads ?? (options.before ? carry(program, options.before) : null);
  const s = old ?? spreads(program, undefined, !options.quick);
  const index = new Map<string, Map<string, number>>();
  program.probes.forEach((p, i) => {
    let names = index.get(p.of);
    if (names === undefined) { names = new Map(); index.set(p.of, names); }
    names.set(p.name, i);
  });
  const at = (of: string, name: string) => index.get(of)?.get(name);
  const number = (of: string, name: string) => { const i = at(of, name); return i === undefined ? NaN : s.value[i]!; };
  const figure = (i: number) => figureOf(compiled, s, i);
  const figuresOf = (of: string): Record<string, Figure> => {
    const out: Record<string, Figure> = {};
    for (const [name, i] of index.get(of) ?? []) if (!INNER.test(name) && Number.isFinite(s.value[i]!)) out[name] = figure(i);
    return out;
  };

  const problems: Problem[] = [...document.problems];
  for (const ring of ordered.rings) problems.push({ code: 'prep-ring', path: ['preps', ring.key], line: ring.headingLine ?? 1, column: 1, span: ring.heading ?? { from: 0, to: 0 }, words: { prep: ring.name } });

  const stageReadings = (list: readonly { text: string; path: Path; of: string; balance: boolean }[]): Stage[] => list.map((b) => {
    const balance = b.balance ? Object.fromEntries(['drink', 'melt', 'ice', 'vessel', 'air', 'mixing'].map((k) => [k, number(b.of, `balance:${k}`)])) as unknown as Balance : undefined;
    // where a part cannot be known the account does not close, and is not given
    const known = balance && Object.values(balance).every(Number.isFinite);
    return { step: b.text, path: b.path, figures: figuresOf(b.of), ...(known ? { balance_kJ: balance } : {}) };
  });

  const told = { number, figure: (of: string, name: string) => figure(at(of, name)!) };
  const preps: Record<string, PrepReading> = Object.create(null) as Record<string, PrepReading>;
  for (const p of ctx.preps.values()) {
    const of = `prep:${p.section.key}`;
    const figures = figuresOf(of);
    const { yield: yields, ...rest } = figures;
    preps[p.section.key] = {
      name: p.name, method: p.section.method, figures: rest, yield: yields ?? figure(at(of, 'yield')!), ready_after: duration(p.seconds), stages: stageReadings(p.stages),
      colour: colourOf(number(of, 'tint_r'), number(of, 'tint_g'), number(of, 'tint_b'), 1), turbidity: Math.min(3, number(of, 'turbid')),
      vessel: p.vessel, takes: p.takes.map((t) => ({ prep: t.prep, mL: number(of, `takes/${t.prep}`) })),
      ...gasOf(p.section.key, told), ...clothOf(p.section.key, told), ...frozenOf(p.section.key, told),
    };
  }

  const figures = build ? figuresOf('drink') : {};
  const laterReading = (minutes: number): NonNullable<Reading['later']>[number] => {
    const of = laterName(minutes), then = figuresOf(of);
    if (!options.each) return { minutes, figures: then };
    return { minutes, figures: Object.fromEntries(Object.entries(then).filter(([name]) => !LEVELS.has(name))), glass: glassThen(glassReading(compiled, number, told.figure), of, number, told.figure) };
  };
  const ethanol = number('drink', 'ethanol');
  const findings: Finding[] = judge(compiled, s, at);
  const declared = diet(ctx, build);
  const asked = options.why ? askedOf(askables(compiled, s, findings), options.why) : { meant: [], not: [] };
  const explained = asked.meant.map((a) => whyOf(compiled, s, a, !options.quick));
  const whys = explained.length === 1 && asked.not.length === 0 ? explained[0] : explained.length > 0 ? explained : undefined;
  const reading: Reading = {
    drink: document.name, variant: options.variant ?? null,
    partial: problems.length > 0 || document.cut,
    figures, stages: build ? stageReadings(build.stages) : [], preps,
    glass: build ? glassReading(compiled, number, (of, name) => figure(at(of, name)!)) : null,
    standard_drinks: Number.isFinite(ethanol) ? drinksFirst(standardDrinks(ethanol), tables.bench?.country ?? null) : {},
    allergens: declared.allergens, vegan: declared.vegan, vegetarian: declared.vegetarian, diet: declared.lines,
    assumed: assumedOf(compiled), taken: takenOf(compiled), ...costPart(compiled, figures), ...(tables.bench?.shows ? { shows: tables.bench.shows } : {}),
    ...accept(document, compiled.variant, findings),
    ...(options.later && build ? { later: (options.each ? EACH_MIN : LATER_MIN).map((minutes) => laterReading(minutes)) } : {}),
    ...(whys ? { why: whys } : {}),
  };
  return { reading, problems, compiled, spreads: s, carried: old !== null, notAsked: asked.not, weights: () => weightsOf(compiled, turned?.s) };
}

/** A reading of which one amount alone is another number than in the one before: the program is there, and only run. */
function turnedOnly(document: Document, tables: Tables, { before, variant, shelf, later, why }: ReadOptions): { readonly compiled: Compiled; readonly spreads: Spreads; readonly s: Float64Array } | null {
  if (!before || later || why || before.compiled.ctx.tables !== tables || before.compiled.variant !== (variant ?? null) || (shelf?.length ?? 0) > 0) return null;
  const { compiled } = before, { program } = compiled, moved = movedTo(compiled, document);
  if (moved === null) return null;
  const x = Float64Array.from(program.nominal), w = program.workspace(), value = new Float64Array(program.probes.length);
  x[moved.input] = moved.value;
  program.run(x, value, new Uint8Array(value.length).fill(1), w);
  const spreads = carry(program, before, value);
  return spreads === null ? null : { compiled, spreads, s: w.s };
}

/** ISO 8601, rounded up to five minutes. */
function duration(seconds: number): string {
  const minutes = Math.ceil(seconds / 300 - 1e-9) * 5;
  const h = Math.floor(minutes / 60), m = minutes % 60;
  return `PT${h > 0 ? `${h}H` : ''}${m > 0 || h === 0 ? `${m}M` : ''}`;
}

function costPart(c: Compiled, figures: Readonly<Record<string, Figure>>): { cost?: Cost } {
  const cost = costOf(c.ctx, c.build, figures['cost']);
  return cost ? { cost } : {};
}

/** Standard drinks, those of the bench's own country first. */
function drinksFirst(drinks: Readonly<Record<'US' | 'UK' | 'AU', number>>, country: string | null): Partial<Record<'US' | 'UK' | 'AU', number>> {
  const own = country === 'GB' ? 'UK' : country;
  return own === 'US' || own === 'UK' || own === 'AU' ? { [own]: drinks[own], ...drinks } : drinks;
}
