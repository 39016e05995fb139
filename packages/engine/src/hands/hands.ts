import { CODES } from '../findings/codes.ts';
import type { Path } from '../document/types.ts';
import type { Tables } from '../larder/types.ts';
import type { Compiled } from '../program/compile.ts';
import { quantiles } from '../numeric/index.ts';
import { drawsOf, runMakers, wanted, type Draws } from '../program/draws.ts';
import type { Program } from '../program/program.ts';
import { accept } from '../reading/accept.ts';
import { PLAIN, partAt, spreads } from '../reading/spread.ts';
import { inKitchen, kitchenOf, type Kitchen } from './kitchen.ts';
import { anyBeyond, beyond, shareOf, type Chance } from './odds.ts';

/** What is asked of many kitchens. */
export interface HandsAsked { readonly makers: number; readonly seed: number; readonly profile: string }
/** 2.5, 50 and 97.5 % points of a figure over the makers. */
export interface Band { readonly p2_5: number; readonly p50: number; readonly p97_5: number; readonly unit: string }
/** How often a margin lies beyond its limit, with the sampling error of that share (one standard deviation), and the line it is about. */
export interface Odds extends Chance {
  readonly code: string; readonly path: Path;
  /** it stops the drink where it is so */
  readonly stops: boolean;
  /** it is enough that the thing is there: no kitchen changes it */
  readonly presence?: true;
  /** knowingly accepted, so that it stops nothing */
  readonly accepted?: true;
}
/** Which input matters for a figure or a code: its share of the variance, and the line it stands in. */
export interface Matter { readonly figure?: string; readonly code?: string; readonly path?: Path; readonly input: string; readonly share: number; readonly at?: Path }
/** What a kitchen without one of its doubts would get: that input held, everything else drawn as before. */
export interface Held extends Chance { readonly code: string; readonly path: Path; readonly input: string }
/** What many kitchens make of a spec. */
export interface Hands {
  readonly makers: number; readonly seed: number; readonly profile: string;
  readonly figures: Readonly<Record<string, Band>>;
  /** those that are so in any kitchen, stops first, the most frequent first */
  readonly findings: readonly Odds[];
  /** share of makers for whom anything that stops the drink is so */
  readonly fails: Chance;
  readonly matters: readonly Matter[];
  readonly fix: readonly Held[];
}

/**
 * The same, with every maker kept apart: `levels` how high the drink stands, mm, NaN where that cannot be known or there is no glass; `holds` 1 where nothing
 * stops it; `moves` what moves the level, the weightiest first, its shares of the variance.
 */
export interface EachHand { readonly hands: Hands; readonly levels: Float64Array; readonly holds: Uint8Array; readonly moves: readonly Matter[] }

/** Everything a run of makers needs, made once; a worker makes its own from the same text. */
export interface Crowd { readonly program: Program; readonly draws: Draws; readonly want: Uint8Array }

/** Figures that are shown as bands: the drink's, the glass's, the preps'. */
const SHOWN = /^(drink$|glass$|prep:)/;
const HIDDEN = /^(ice_from_mm|ice_to_mm|over_mL|ice_g)$/;

const shown = (p: Program['probes'][number]): boolean => SHOWN.test(p.of) && !PLAIN.test(p.name) && !HIDDEN.test(p.name);
const margin = (p: Program['probes'][number]): boolean => p.name.startsWith('margin:');

/**
 * Prepares a compiled spec for a kitchen.
 * @source none - definition
 */
export function crowdOf(c: Compiled, kitchen: Kitchen): Crowd {
  const program = inKitchen(c.program, kitchen);
  return { program, draws: drawsOf(program, (input) => input.spread), want: Uint8Array.from(program.probes, (p) => (shown(p) || margin(p) ? 1 : 0)) };
}

/** Makers that are tried with one input held, for what to do. */
const TRIED = 1000;
/** Inputs that are tried so, the weightiest first. */
const TRIES = 3;
/** A finding rarer than this is not tried. */
const RARE = 0.02;
/** An input with this share of the variance is all there is. */
const ALONE = 1 - 1e-6;
/** A share of the variance below this is not told. */
const TOLD = 0.01;

/**
 * What many kitchens make of a spec: bands of its figures, odds of its findings with their sampling error, what matters for each.
 * The same at the same seed, whatever the order of the inputs and however the makers are shared out: `record` are their rows in order
 * (`runMakers`), made here when it is not given.
 * @source none - definition
 */
export function hands(c: Compiled, tables: Tables, asked: HandsAsked, record?: Float64Array): Hands {
  const steps = handsInSteps(c, tables, asked, Math.max(1, asked.makers), record);
  for (;;) { const step = steps.next(); if (step.done) return step.value.hands; }
}

/**
 * The same in steps, so that whoever runs it can do other things between them, or leave off; every maker is kept.
 * @param aStep makers run between two steps, 1 or more
 * @source none - definition
 */
export function* handsInSteps(c: Compiled, tables: Tables, asked: HandsAsked, aStep: number, record?: Float64Array): Generator<undefined, EachHand> {
  const crowd = crowdOf(c, kitchenOf(asked.profile, tables)), { program, want } = crowd;
  const rows = record ?? (yield* inSteps(crowd, asked, aStep));
  const columns = wanted(want), width = columns.length;
  const figures: Record<string, Band> = {};
  let found: Found[] = [];
  columns.forEach((probe, column) => {
    const p = program.probes[probe]!;
    if (shown(p)) {
      const [p2_5, p50, p97_5] = quantiles(rows, width, column, [0.025, 0.5, 0.975]) as [number, number, number];
      if (Number.isFinite(p50)) figures[nameOf(p)] = { p2_5, p50, p97_5, unit: p.unit };
      return;
    }
    const seed = c.ctx.margins[Number(p.of.slice('finding:'.length))]!, row = CODES[seed.code], share = beyond(rows, width, column);
    if (share.odds > 0) found.push({ probe, column, is: { code: seed.code, path: seed.at, ...share, stops: row?.most === 'stop' && seed.cap === undefined, ...(row?.presence ? { presence: true } : {}) } });
  });
  found = settled(c, found).sort((a, b) => Number(b.is.stops) - Number(a.is.stops) || b.is.odds - a.is.odds);
  const stopping = found.filter((f) => f.is.stops).map((f) => f.column), fails = anyBeyond(rows, width, asked.makers, stopping);
  yield;

  // what matters: each input moved to its own two points in this kitchen
  const seen = spreads(program, undefined, false), n = program.inputs.length;
  const weigh = (k: number, what: Pick<Matter, 'figure' | 'code' | 'path'>): Matter[] => {
    const all = seen.variance[k]!;
    if (!(all > 0)) return [];
    return program.inputs.map((input, i) => ({ ...what, input: input.key, share: partAt(seen, k * n + i) / all, ...(input.at ? { at: input.at } : {}) })).filter((m) => m.share >= TOLD).sort((a, b) => b.share - a.share);
  };
  const weighed: Weighed[] = found.map((f) => ({ ...f, by: weigh(f.probe, { code: f.is.code, path: f.is.path }) }));
  const matters = [...weighed.flatMap((f) => f.by), ...program.probes.flatMap((p, k) => (p.of === 'drink' && shown(p) && figures[nameOf(p)] ? weigh(k, { figure: nameOf(p) }) : []))];

  const level = program.probes.findIndex((p) => p.of === 'glass' && p.name === 'washline_mm');
  yield;
  const fix = yield* fixes(crowd, weighed, seen.value, asked);
  return {
    hands: { makers: asked.makers, seed: asked.seed, profile: asked.profile, figures, findings: found.map((f) => f.is), fails, matters, fix },
    ...eachOf(rows, width, asked.makers, columns.indexOf(level), stopping), moves: level < 0 ? [] : weigh(level, { figure: 'washline_mm' }),
  };
}

function* inSteps({ program, draws, want }: Crowd, { seed, makers }: HandsAsked, aStep: number): Generator<undefined, Float64Array> {
  if (aStep >= makers) return runMakers(program, draws, want, seed, 0, makers);
  const width = wanted(want).length, rows = new Float64Array(makers * width);
  for (let from = 0; from < makers; from += aStep) {
    rows.set(runMakers(program, draws, want, seed, from, Math.min(makers, from + aStep)), from * width);
    yield;
  }
  return rows;
}

/** Where each maker's level stands, and whether anything stops that maker. `level` -1: nobody's is known. */
function eachOf(rows: Float64Array, width: number, makers: number, level: number, stopping: readonly number[]): Pick<EachHand, 'levels' | 'holds'> {
  const levels = new Float64Array(makers).fill(NaN), holds = new Uint8Array(makers);
  for (let r = 0; r < makers; r++) {
    if (level >= 0) levels[r] = rows[r * width + level]!;
    holds[r] = stopping.some((i) => rows[r * width + i]! > 0) ? 0 : 1;
  }
  return { levels, holds };
}

/** What is left of each stop with one of its inputs held. One that a single input moves needs no draws: it is gone, or there for good. */
function* fixes({ program, want }: Crowd, weighed: readonly Weighed[], nominal: Float64Array, { seed, makers }: HandsAsked): Generator<undefined, Held[]> {
  const tried = Math.min(TRIED, makers), out: Held[] = [], runs = new Map<string, Float64Array>();
  const asked = weighed.filter(({ is }) => is.stops && is.odds < 1 && is.odds >= RARE);
  const several = asked.filter(({ by }) => by.length > 0 && by[0]!.share < ALONE), only = new Uint8Array(want.length);
  for (const { probe } of several) only[probe] = 1;
  const columns = wanted(only);
  const rowsWithout = (input: string): Float64Array => {
    const known = runs.get(input) ?? runMakers(program, drawsOf(program, (i) => (i.key === input ? { kind: 'exact' } : i.spread)), only, seed, 0, tried);
    runs.set(input, known);
    return known;
  };
  for (const { probe, is, by } of asked) {
    for (const { input, share } of by.slice(0, TRIES)) {
      const left = share >= ALONE ? shareOf(nominal[probe]! > 0 ? tried : 0, tried) : beyond(rowsWithout(input), columns.length, columns.indexOf(probe));
      out.push({ code: is.code, path: is.path, input, ...left });
      yield;
      if (share >= ALONE) break;
    }
  }
  return out;
}

interface Found { readonly probe: number; readonly column: number; readonly is: Odds }
interface Weighed extends Found { readonly by: readonly Matter[] }

/** Of two margins of one code at one place the one that is beyond its limit more often; what was knowingly accepted stops nothing, unless it is about harm. */
function settled(c: Compiled, found: readonly Found[]): Found[] {
  const { document } = c.ctx;
  const most = found.filter((f) => !found.some((g) => g !== f && g.is.code === f.is.code && g.is.path.join('/') === f.is.path.join('/') && (g.is.odds > f.is.odds || (g.is.odds === f.is.odds && g.probe < f.probe))));
  const { accepted } = accept(document, c.variant, most.map(({ is }) => ({ code: is.code, severity: is.stops ? 'stop' : 'warn', where: { path: is.path }, words: {}, sources: [] })));
  return most.map((f) => (accepted.some((a) => a.code === f.is.code && a.where.path === f.is.path) ? { ...f, is: { ...f.is, stops: false, accepted: true } } : f));
}

/** A drink's figure by its name, a prep's behind the prep's name, a level of the glass by its own. */
function nameOf(p: Program['probes'][number]): string { return p.of.startsWith('prep:') ? `${p.of.slice(5)}/${p.name}` : p.name; }
