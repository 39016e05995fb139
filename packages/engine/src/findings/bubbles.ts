import type { Section, Step } from '../document/types.ts';
import type { Context, PrepBuilt, Put, RemedySeed } from '../program/context.ts';
import { insteadOfNumber, lineOf } from '../program/edit.ts';
import { colderHeld } from '../preps/gas.ts';
import { limit } from '../program/limits.ts';
import type { Facts } from './facts.ts';
import { coarseBefore, strainFine } from './siphon.ts';
import { gramsOf } from './steps.ts';

const ROUGH = /shake|blend|throw|roll|whisk|muddle/;

/** Bubbles that are shaken out, and those that come all at once. @source common-practice */
export function bubbles({ ctx, build, ordered }: Facts): void {
  if (build && ordered.build) lost(ctx, build.puts, build.steps, ordered.build);
  for (const prep of ctx.preps.values()) {
    lost(ctx, prep.puts, prep.steps, prep.section);
    gushes(ctx, prep);
    flat(ctx, prep);
  }
}

/** Volumes of gas above which a thing sparkles. */
const SPARKLES = limit('gas-lost', 'sparkles');
/** Does it sparkle as it is poured? */
const sparkles = (p: Put): boolean => (p.source.ingredient?.cells['gas_volumes']?.value ?? 0) > SPARKLES || p.source.prep?.section.method === 'carbonate';

function lost(ctx: Context, puts: readonly Put[], steps: readonly Step[], section: Section): void {
  for (const p of puts.filter(sparkles)) {
    const step = steps.find((x) => ROUGH.test(x.verb) && x.span.from > p.from);
    if (!step) continue;
    ctx.margins.push({
      code: 'gas-lost', at: p.measure.path, unit: 'g', sources: ['common-practice'], words: { thing: p.measure.thing.words },
      op: ({ s }, out, i) => { out[i] = s[p.g]!; }, remedy: () => toTheEnd(ctx, p, section),
    });
  }
}

/** The line taken out and poured on top at the end. */
function toTheEnd(ctx: Context, p: Put, section: Section): RemedySeed | undefined {
  const at = lineOf(ctx.sections, p.measure), last = section.lines[section.lines.length - 1];
  if (!at || !last || at.line.actions.length !== 1 || at.line === last || section.kind !== 'build') return undefined;
  const text = ctx.document.text, next = text.startsWith('\r\n', at.line.span.to) ? at.line.span.to + 2 : at.line.span.to + 1;
  return { key: 'top-last', words: {}, splices: [
    { from: at.line.span.from, to: next, literal: '' },
    { from: last.span.to, to: last.span.to, literal: '\n' }, { from: last.span.to, to: last.span.to, key: 'top' }, { from: last.span.to, to: last.span.to, literal: text.slice(p.measure.span.from, p.measure.span.to) },
  ] };
}

/** g of CO2 in a litre below which a drink tastes flat. @source common-practice */
const FLAT = limit('carbonation-low', 'flat');

/** Too warm, or at too little pressure, for the gas that is wanted. */
function flat(ctx: Context, prep: PrepBuilt): void {
  const step = [...prep.steps].reverse().find((x) => x.verb === 'carbonate'), held = ctx.probed(`prep:${prep.section.key}`, 'co2');
  if (!step || !held) return;
  const { pressure_kPa: pressure, temperature } = step, { text } = ctx.document;
  ctx.margins.push({
    code: 'carbonation-low', at: step.path, unit: 'g/L', sources: ['common-practice', 'carroll-1991'], words: { least: FLAT }, live: { co2: held, cold: ({ s }, out, i) => { out[i] = colderHeld(s, prep.content.phase('liquid')); } }, op: (w, out, i) => { held(w, out, i); out[i] = FLAT - out[i]!; },
    remedy: (n) => (pressure && temperature && !temperature.word && pressure.span.to <= temperature.span.from && (n['cold'] ?? 0) > 1.15 * FLAT ? { key: 'colder', words: {}, splices: [insteadOfNumber(text, pressure.span, '3.5 bar'), insteadOfNumber(text, temperature.span, '2 °C')] } : undefined),
  });
}

/** Pulp and pieces are where bubbles start: what is carbonated with them foams over when it is opened. */
function gushes(ctx: Context, prep: PrepBuilt): void {
  const step = prep.steps.find((x) => x.verb === 'carbonate' || x.gas?.kind === 'CO2');
  const coarse = step ? coarseBefore(prep, step) : [], worst = coarse[0];
  if (!step || !worst) return;
  ctx.margins.push({
    code: 'gushes', at: worst.measure.path, unit: 'g', sources: ['common-practice'], words: { thing: worst.measure.thing.words },
    op: ({ s }, out, i) => { out[i] = gramsOf(coarse, s); }, remedy: strainFine(ctx, step),
  });
}
