import type { Path, Splice, Step } from '../document/types.ts';
import type { Context } from './context.ts';
import { assumed } from './inputs.ts';
import { behindStep, insteadOf, plain } from './words.ts';

/** How long a step takes that says nothing of it, by method and verb, else by verb. */
const BY_METHOD: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'fat wash': { rest: 'time/fat wash contact', infuse: 'time/fat wash contact', freeze: 'time/fat wash freeze' },
  'milk wash': { rest: 'time/rest of a milk wash', settle: 'time/rest of a milk wash' },
  'clarify with milk': { rest: 'time/rest of a milk wash', settle: 'time/rest of a milk wash' },
  'siphon foam': { chill: 'time/rest of a foam', rest: 'time/rest of a foam' },
  gel: { chill: 'time/gelatin set', rest: 'time/gelatin set' },
  'clarify with agar': { chill: 'time/agar set', rest: 'time/agar set', boil: 'time/agar boil' },
  'clarify with gelatin': { chill: 'time/gelatin set', thaw: 'time/gelatin clarify thaw' },
};
const BY_VERB: Readonly<Record<string, string>> = {
  stir: 'time/stir', shake: 'time/shake', 'whip-shake': 'time/whip shake', 'dry-shake': 'time/dry shake', swizzle: 'time/swizzle', throw: 'time/throw', roll: 'time/roll', blend: 'time/blend', 'flash-blend': 'time/flash blend',
  muddle: 'time/muddle', soak: 'time/gelatin soak', infuse: 'time/steeping', rest: 'time/rest not said', settle: 'time/rest not said', chill: 'time/chill not said', store: 'time/chill not said',
  freeze: 'time/freeze not said', thaw: 'time/thaw not said', age: 'time/age not said', ferment: 'time/ferment not said', boil: 'time/boil not said', hold: 'time/hold not said', 'sous-vide': 'time/sous-vide not said',
};
/** A turn of throwing or rolling takes so long. @source common-practice two seconds, as spreads time/turns */
export const SECONDS_A_TURN = 2;
const SECONDS: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600, passes: SECONDS_A_TURN };

/** The row of the assumptions that has a step's usual time; undefined where none is needed. */
export function usualTime(ctx: Context, step: Step, method: string): string | undefined {
  const key = step.verb === 'infuse' && hasTea(ctx, step) ? 'time/tea steep' : BY_METHOD[method]?.[step.verb] ?? BY_VERB[step.verb];
  return key !== undefined && ctx.tables.assumption(key) ? key : undefined;
}

/** Is there tea in the section a step belongs to? */
function hasTea(ctx: Context, step: Step): boolean {
  const section = ctx.sections.find((s) => (step.path[0] === 'preps' ? s.kind === 'prep' && s.key === step.path[1] : s.kind === step.path[0]));
  return section?.lines.some((l) => l.actions.some((a) => a.kind === 'measure' && a.thing.link.kind === 'larder' && /^(tea-|matcha)/.test(a.thing.link.id))) ?? false;
}

/** Seconds of a row, in whatever it counts. */
export function secondsOf(ctx: Context, key: string): number {
  const row = ctx.tables.assumption(key)!;
  return Number(row.value) * (SECONDS[row.unit] ?? 1);
}

/** A step's usual time as an input in seconds, or so many times it, with the words that would say it. */
export function assumeTime(ctx: Context, step: Step, key: string, times?: number): number {
  const say = sayOf(ctx, key, times);
  return assumeSeconds(ctx, key, step.path, step.seconds ? insteadOf(step.seconds.span, say) : behindStep(step, say, ctx.document.text), times);
}
/** The words of a row, for so many times its value. */
function sayOf(ctx: Context, key: string, times: number | undefined): string {
  const { say, value, unit } = ctx.tables.assumption(key)!;
  return times === undefined ? say : `${plain(times * Number(value))} ${unit}`;
}

/** A row that is a time as an input in seconds, or so many times it. */
export function assumeSeconds(ctx: Context, key: string, at: Path, splices: readonly Splice[], times?: number): number {
  const row = ctx.tables.assumption(key)!, value = Number(row.value), k = (SECONDS[row.unit] ?? 1) * (times ?? 1);
  return ctx.book.add(assumed(times === undefined ? key : `${key}#${plain(times)}`, { ...row, value: value * k, low: (row.low ?? value) * k, high: (row.high ?? value) * k, unit: 's', say: sayOf(ctx, key, times) }, 'time', at, key, splices));
}

/** Rows that say how long it takes but not how far it comes: the step is done when it has the temperature of its place; a boil drives off by the minute, yeast eats by the day. */
export function untilDone(key: string): boolean { return key.endsWith(' not said') && !/(boil|ferment) not said$/.test(key); }
