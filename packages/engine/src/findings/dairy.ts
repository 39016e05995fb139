import { ETHANOL_G_ML } from '../liquids/index.ts';
import type { Measure } from '../document/types.ts';
import { CLEAN_PH, CURDLING, FRESH, MARGIN, MIX_PH, ULTRA, curdleInto, curdleKnown, CASEIN_IN_SERUM } from '../clarity/index.ts';
import { ACIDS, MOLAR_MASS } from '../acids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { Workspace } from '../program/program.ts';
import type { Facts } from './facts.ts';
import { leaveOut, lineAfter, lineOf, written } from '../program/edit.ts';

const FAT_G_ML = 0.93;
/** g of acid in 100 g of what is sour, and the share of all acid that may stand before the milk, %. @source common-practice */
const SOUR = limit('wash-order', 'sour'), BEFORE = limit('wash-order', 'before');

export const isDairy = (p: Put) => p.source.ingredient?.category === 'dairy' && (p.source.ingredient.cells['casein_g']?.value ?? 0) > 0;

/** Milk and acid: does a wash curdle, was the milk there first, does a drink curdle in the glass. @source davies-white-1958 */
export function dairy({ ctx, build }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const method = prep.section.method;
    if (method !== 'milk wash' && method !== 'clarify with milk') continue;
    const milk = prep.puts.filter(isDairy), rest = prep.puts.filter((p) => !isDairy(p));
    const last = rest[rest.length - 1] ?? milk[0];
    // a plant drink has a finding of its own: it is no milk, and what it does is another thing
    if (!last || (milk.length === 0 && prep.puts.some((p) => /^plant-/.test(p.source.ingredient?.category ?? '')))) continue;
    const { warmest } = prep.noted, balance = curdleOf(ctx, milk, rest, warmest);
    ctx.margins.push({
      code: 'wash-will-not-curdle', at: milk[0]?.measure.path ?? ['preps', prep.section.key], unit: 'pH', sources: ['davies-white-1958', 'milk-buffer-peak', 'ricotta-recipes'],
      op: (w, out, i) => { out[i] = milk.length === 0 ? 1 : -balance(w, MARGIN); }, words: milk.length === 0 ? { prep: prep.name, degree: 'no-milk' } : {},
      live: { pH: (w, out, i) => { out[i] = balance(w, MIX_PH); }, lemon: (w, out, i) => { out[i] = lemonNeeded(w, milk, rest, warmest); } },
      remedy: (n) => (milk.length > 0 && Number.isFinite(n['lemon']) ? { key: 'add-acid', words: { lemon: n['lemon']! }, splices: lineAfter(ctx.sections, last.measure, { literal: `${written(Math.ceil(n['lemon']! / 5) * 5)} ml lemon juice` }) } : undefined),
    });
    const firstMilk = prep.puts.findIndex(isDairy);
    const sour = prep.puts.filter((p, i) => i < firstMilk && acidOf(p) > SOUR);
    if (firstMilk > 0) {
      const total = prep.puts.filter((p) => acidOf(p) > SOUR);
      ctx.margins.push({
        code: 'wash-order', at: prep.puts[firstMilk]!.measure.path, unit: '%', sources: ['common-practice'],
        op: ({ s }, out, i) => { let before = 0, all = 0; for (const p of sour) before += s[p.g]! * acidOf(p); for (const p of total) all += s[p.g]! * acidOf(p); out[i] = all > 0 ? (100 * before) / all - BEFORE : -BEFORE; },
        words: {}, remedy: sour[0] ? moveBefore(ctx, prep.puts[firstMilk]!.measure, sour[0].measure) : undefined,
      } as Parameters<typeof ctx.margins.push>[0]);
    }
  }
  if (!build) return;
  const milk = build.puts.filter(isDairy), rest = build.puts.filter((p) => !isDairy(p));
  if (milk.length === 0) return;
  const balance = curdleOf(ctx, milk, rest);
  const sour = rest.filter((p) => acidOf(p) > SOUR || p.source.prep);
  ctx.margins.push({
    code: 'curdles-in-glass', at: milk[0]!.measure.path, unit: 'pH', sources: ['davies-white-1958', 'milk-buffer-peak'],
    op: (w, out, i) => { out[i] = balance(w, MARGIN); }, words: {}, live: { pH: (w, out, i) => { out[i] = balance(w, MIX_PH); } },
    ...(sour[0] ? { remedy: { key: 'leave-out', words: { thing: sour.map((p) => p.measure.thing.words).join(', ') }, splices: sour.flatMap((p) => leaveOut(ctx.sections, p.measure)) } } : {}),
  });
}

/** g of acid in 100 g of a larder thing; what preps bring is counted in the run. */
function acidOf(p: Put): number {
  const row = p.source.ingredient;
  return row ? ['citric_g', 'malic_g', 'tartaric_g', 'lactic_g', 'acetic_g'].reduce((t, c) => t + (row.cells[c]?.value ?? 0), 0) : 0;
}

/** The milk's line moved to stand before the first that is sour. */
function moveBefore(ctx: Context, milk: Measure, sour: Measure) {
  const from = lineOf(ctx.sections, milk), to = lineOf(ctx.sections, sour);
  if (!from || !to) return undefined;
  const text = ctx.document.text;
  const end = text.startsWith('\r\n', from.line.span.to) ? from.line.span.to + 2 : Math.min(text.length, from.line.span.to + 1);
  return { key: 'milk-first', words: {}, splices: [{ from: to.line.span.from, to: to.line.span.from, literal: `${text.slice(from.line.span.from, from.line.span.to)}\n` }, { from: from.line.span.from, to: end, literal: '' }] };
}

type Balance = (w: Workspace, which: number) => number;

/** What dairy and all else bring to the balance of protons: mL, g of casein, mol of acids and strong ions. */
interface Brought { readonly acids: Float64Array; serum: number; casein: number; ethanol: number; other: number; strong: number }
export const nothing = (): Brought => ({ acids: new Float64Array(ACIDS), serum: 0, casein: 0, ethanol: 0, other: 0, strong: 0 });

/**
 * Sums what is put together. Cations of a thing that is no salt count only as far as acids of it are known: the rest stands against those no
 * table lists (tea), and makes nothing alkaline.
 */
export function gather(o: Brought, s: Float64Array, milk: readonly Put[], rest: readonly Put[]): void {
  o.acids.fill(0);
  o.serum = 0; o.casein = 0; o.ethanol = 0; o.other = 0; o.strong = 0;
  for (const p of milk) {
    const g = s[p.g]!;
    o.serum += g * (s[p.source.mL]! - s[p.source.block + at.fat]! / FAT_G_ML);
    o.casein += g * s[p.source.block + at.casein]!;
  }
  for (const p of rest) {
    const g = s[p.g]!, b = p.source.block;
    let sour = 0;
    for (let k = 0; k < ACIDS; k++) { const mol = (g * s[b + at.citric + k]!) / MOLAR_MASS[k]!; o.acids[k]! += mol; sour += mol; }
    const strong = g * s[b + slot.charge_mol]!;
    o.strong += salts(p) ? strong : Math.min(strong, sour);
    o.other += g * s[p.source.mL]!;
    o.ethanol += (g * s[b + at.ethanol]!) / ETHANOL_G_ML;
  }
}
const salts = (p: Put): boolean => p.source.ingredient?.category === 'mineral' || (p.source.prep?.puts.some(salts) ?? false);
export const caseinShare = (o: Brought) => (1000 * o.casein) / o.serum / CASEIN_IN_SERUM;
const heated = (milk: readonly Put[]) => (milk.some((p) => /uht|ultra/.test(p.source.ingredient?.text['heat_treatment'] ?? '')) ? ULTRA : FRESH);

/** °C: a room, and what a wash that was warmer was at, where anything is known of that. `warmest`: offset, negative where it is not looked at. */
const ROOM_C = 20;
function warmth(o: Brought, s: Float64Array, warmest: number): number {
  const celsius = warmest >= 0 ? s[warmest]! : ROOM_C;
  return celsius > ROOM_C && curdleKnown((100 * o.ethanol) / (o.serum + o.other), celsius) ? celsius : ROOM_C;
}

/** The balance of protons of some dairy with what is put to it, before any cloth. */
function curdleOf(ctx: Context, milk: readonly Put[], rest: readonly Put[], warmest = -1): Balance {
  const o = nothing(), out = new Float64Array(CURDLING), heat = heated(milk);
  const buffer = ctx.spread('model/milk buffer', 'model/milk buffer', 1, 'share', 'model');
  const shift = ctx.spread('model/curdle ph', 'model/curdle ph', 0, 'pH', 'model', { bounds: { min: -14, max: 14 } });
  return ({ s, x }, which) => {
    gather(o, s, milk, rest);
    if (o.serum <= 0) return NaN;
    curdleInto(out, 0, o.serum, caseinShare(o) * x[buffer]!, 6.7, o.acids, 0, o.strong, o.other, o.ethanol, warmth(o, s, warmest), heat, 0, 0);
    return out[which]! + (which === MARGIN ? x[shift]! : 0);
  };
}

/** mL of lemon juice (47 g/L citric, 33 mM of strong cations left aside) that bring the mix half a pH beyond curdling; NaN where 2 L do not. */
function lemonNeeded(w: Workspace, milk: readonly Put[], rest: readonly Put[], warmest: number): number {
  const o = nothing(), out = new Float64Array(CURDLING), heat = heated(milk);
  gather(o, w.s, milk, rest);
  if (o.serum <= 0) return NaN;
  const citric0 = o.acids[0]!;
  for (let mL = 5; mL <= 2000; mL += 5) {
    o.acids[0] = citric0 + (mL * 0.047) / MOLAR_MASS[0]!;
    curdleInto(out, 0, o.serum, caseinShare(o), 6.7, o.acids, 0, o.strong + mL * 33e-6, o.other + mL, o.ethanol, warmth(o, w.s, warmest), heat, 0, 0);
    if (out[MARGIN]! > 0.5 && out[MIX_PH]! < CLEAN_PH + 0.3) return mL;
  }
  return NaN;
}
