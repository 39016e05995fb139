import type { Measure, Path } from '../document/types.ts';
import { enthalpy, freezingPoint, strengthIn, temperatureOf, volumeAt20 } from '../liquids/index.ts';
import { advance } from '../ice/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { addBlock, wholeMass } from '../matter/block.ts';
import { pour } from './amounts.ts';
import { sourceOf, unknownSource } from './bottle.ts';
import type { Context, Put, StageBuilt, Vat } from './context.ts';
import { choose } from './meanings.ts';
import { advanceFrozen, broughtHeat, frozenShare, mayHoldIce, restFrozen, tellFrozen } from './frozen.ts';
import { poured } from './sparkle.ts';
import { followed, lendPieces, piecesIn, settleWithPieces } from './lying.ts';
import { startTemperature } from './temperature.ts';
import { beforeThing, insteadOfAmount } from './words.ts';
import places from '../../../../data/physics/places.json' with { type: 'json' };

/** Counts occurrences of a thing in a section, for keys that outlive an inserted line. */
export class Occurrences {
  private readonly seen = new Map<string, number>();
  private readonly section: string;
  constructor(section: string) { this.section = section; }
  of(words: string): string {
    const key = words.toLowerCase();
    const n = (this.seen.get(key) ?? 0) + 1;
    this.seen.set(key, n);
    return `${this.section}/${key}#${n}`;
  }
}

/** Turns a measure into grams, except a share, which waits for the others. */
export function put(ctx: Context, m: Measure, section: string, names: Occurrences, fallback?: { key: string }): Put {
  const source = sourceOf(ctx, m, section), from = (ctx.poured.size > 0 ? ctx.poured.get(m.path.join('/')) : undefined) ?? m.span.from;
  const occurrence = names.of(m.thing.words);
  const g = ctx.layout.take(1);
  const start = startTemperature(ctx, m, source, occurrence);
  const mL = source.mL;
  if (m.share && !m.amount) return { measure: m, from, source, g, start, occurrence, share: true };
  if (m.portion !== undefined && source.prep) {
    const prep = source.prep;
    const part = typeof m.portion === 'number' ? m.portion : 1;
    ctx.parts.reads(prep.yield_g);
    ctx.parts.adds(prep.used_g);
    ctx.ops.push(({ s }) => { s[g] = m.portion === 'rest' ? Math.max(0, s[prep.yield_g]! - s[prep.used_g]!) : part * s[prep.yield_g]!; s[prep.used_g]! += s[g]; });
    return { measure: m, from, source, g, start, occurrence, share: false };
  }
  const foam = source.prep?.foam && section === 'build' ? source.prep.foam : null;
  if (source.prep?.foam) ctx.parts.reads(source.prep.foam.overrun);
  // ice is put in by the hand that builds, not by its make-up
  if (source.form === 'ice') return { measure: m, from, source, g, start, occurrence, share: false };
  const poured = m.amount ? pour(ctx, m, m.amount, source, occurrence) : null;
  if (poured) {
    ctx.ops.push(({ s, x }) => {
      let sum = 0;
      for (let i = 0; i < poured.length; i++) {
        const { input, shares, of, factor } = poured[i]!;
        let amount = x[input]! * factor;
        for (let k = 0; k < shares.length; k++) amount *= x[shares[k]!]!;
        if (of === 'ml') { amount /= s[mL]!; if (foam) amount /= 1 + s[foam.overrun]! / 100; }
        sum += amount;
      }
      s[g] = sum;
    });
  } else {
    const taste = fallback === undefined && m.amount === null && /^(spice|mineral)$/.test(source.ingredient?.category ?? '') && source.form !== 'liquid';
    const key = fallback?.key;
    if (key) {
      const input = ctx.assume(key, m.path, 'measure', `${key}#${occurrence}`, beforeThing(m, ctx.tables.assumption(key)!.say));
      ctx.ops.push(({ s, x }) => { s[g] = x[input]! / s[mL]! / (foam ? 1 + s[foam.overrun]! / 100 : 1); });
    } else if (taste) {
      const input = ctx.assume('measure/to taste', m.path, 'measure', `measure/to taste#${occurrence}`, beforeThing(m, ctx.tables.assumption('measure/to taste')!.say));
      ctx.ops.push(({ s, x }) => { s[g] = x[input]!; });
      const thing = m.thing.span.from;
      choose(ctx, { code: 'measure-vague', at: m.path, input, sources: ['none'], words: { thing: m.thing.words, degree: 'taste' }, remedy: { key: 'write-plain', words: { amount: '0.3 g' }, splices: [{ from: thing, to: thing, literal: '0.3 g ' }] } });
    } else {
      // no amount, or one that cannot be turned into grams: carried as unknown matter, never as nothing
      const solid = source.form !== 'liquid' && source.form !== 'egg' && source.form !== 'puree';
      ctx.unknown.push({ measure: m, why: 'measure-vague' });
      const vague = { ...unknownSource(ctx, m), form: 'liquid', ...(source.ingredient ? { ingredient: source.ingredient } : {}) };
      const little = solid ? 'measure/vague solid' : 'measure/vague liquid', { say } = ctx.tables.assumption(little)!;
      const input = ctx.assume(little, m.path, 'measure', `${little}#${occurrence}`, m.amount ? insteadOfAmount(m.amount, say) : beforeThing(m, say));
      ctx.ops.push(({ s, x }) => { s[g] = x[input]!; });
      return { measure: m, from, source: vague, g, start, occurrence, share: false };
    }
  }
  if (source.prep) { const prep = source.prep; ctx.parts.adds(prep.used_g); ctx.ops.push(({ s }) => { s[prep.used_g]! += s[g]!; }); }
  const nominal = poured?.reduce((sum, q) => q.shares.reduce((part, k) => part * ctx.book.list[k]!.value, ctx.book.list[q.input]!.value * q.factor) + sum, 0);
  return { measure: m, from, source, g, start, occurrence, share: false, ...(nominal === undefined ? {} : { nominal }) };
}

/** Solves the shares of a section together: each a share of the others, or of the lines it names. */
export function solveShares(ctx: Context, puts: readonly Put[]): void {
  const shares = puts.filter((p) => p.share);
  if (shares.length === 0) return;
  const plain = puts.filter((p) => !p.share);
  const named = shares.map((p) => p.measure.share!.of ? plain.filter((q) => p.measure.share!.of!.some((t) => t.words.toLowerCase() === q.measure.thing.words.toLowerCase())) : null);
  const free = shares.map((p, i) => (named[i] === null || named[i]!.length === 0 ? p.measure.share! : null));
  ctx.ops.push(({ s }) => {
    let fixed = 0, fixedL = 0;
    for (let i = 0; i < plain.length; i++) { const p = plain[i]!; fixed += s[p.g]!; fixedL += s[p.g]! * s[p.source.mL]! / 1000; }
    for (let i = 0; i < shares.length; i++) {
      const list = named[i], share = shares[i]!.measure.share!;
      if (!list || list.length === 0) continue;
      let g = 0, litres = 0;
      for (let k = 0; k < list.length; k++) { g += s[list[k]!.g]!; litres += s[list[k]!.g]! * s[list[k]!.source.mL]! / 1000; }
      s[shares[i]!.g] = share.basis === 'g per L' ? share.value * litres : share.basis === 'volume' ? (share.value * litres * 1000) / s[shares[i]!.source.mL]! : share.value * g;
      fixed += s[shares[i]!.g]!;
    }
    // g = s M for a share of the whole, g = s/(1+s) M for a share of the others, M the sum of all
    let coefficient = 0;
    for (let i = 0; i < free.length; i++) {
      const f = free[i];
      if (!f) continue;
      if (f.basis === 'g per L') { s[shares[i]!.g] = f.value * fixedL; fixed += s[shares[i]!.g]!; } else coefficient += f.basis === 'mass of whole' ? f.value : f.value / (1 + f.value);
    }
    const all = fixed / Math.max(1e-6, 1 - coefficient);
    for (let i = 0; i < free.length; i++) {
      const f = free[i];
      if (f && f.basis !== 'g per L') s[shares[i]!.g] = (f.basis === 'mass of whole' ? f.value : f.value / (1 + f.value)) * all;
    }
  });
  for (const p of shares) if (p.source.prep) { const prep = p.source.prep; ctx.parts.adds(prep.used_g); ctx.ops.push(({ s }) => { s[prep.used_g]! += s[p.g]!; }); }
}

export function vat(ctx: Context, name: string): Vat {
  const content = ctx.layout.content(name);
  const liquid = content.phase('liquid');
  const celsius = ctx.layout.take(1), hottest = ctx.layout.take(1), ownIce = ctx.layout.take(1);
  ctx.ops.push(({ s }) => { s[celsius] = 20; s[hottest] = -273; });
  return { content, liquid, celsius, hottest, ownIce };
}

/** Names what an operation reads of what was put in, where that is of an earlier part. */
export function readsPut(ctx: Context, { g, source, start }: Put): void {
  ctx.parts.reads(g);
  ctx.parts.reads(source.block, BLOCK);
  ctx.parts.reads(source.mL);
  if (start.input >= 0) ctx.parts.uses(start.input, ctx.ops.length); else ctx.parts.reads(start.offset);
  if (start.ice !== undefined) ctx.parts.reads(start.ice);
}

/** Adds what was put in to the phase it belongs to, at its own temperature. */
export function add(ctx: Context, v: Vat, p: Put, phase: 'liquid' | 'solids' | 'fat' = 'liquid'): void {
  const to = phase === 'fat' ? v.liquid : v.content.phase(phase);
  const fat = phase === 'fat' ? v.content.phase('fat') : -1;
  const { block } = p.source, { g, start } = p;
  readsPut(ctx, p);
  if (!ctx.unsettled.has(v.liquid)) followed(ctx, v);
  ctx.ops.push(({ s, x }) => {
    const grams = s[g]!;
    const celsius = start.input >= 0 ? x[start.input]! : s[start.offset]!;
    addBlock(s, to, block, grams);
    if (fat >= 0) {
      // the water and solids of a butter go with the liquid, its fat floats
      s[fat + at.fat]! += s[to + at.fat]!;
      s[to + at.fat] = 0;
      s[to + slot.enthalpy_J]! += grams * (enthalpy(s, block, celsius) - s[block + at.fat]! * 2 * (celsius - 25));
      s[fat + slot.enthalpy_J]! += grams * s[block + at.fat]! * 2 * (celsius - 25);
    } else s[to + slot.enthalpy_J]! += grams * (start.ice === undefined ? enthalpy(s, block, celsius) : broughtHeat(s, p, celsius));
    if (to === v.liquid && celsius > s[v.hottest]!) s[v.hottest] = celsius;
  });
  // ice in pieces chills what they lie in as well
  if (start.ice !== undefined) ctx.frozen.add(v.liquid);
  if (phase === 'liquid') poured(ctx, p, to);
  ctx.unsettled.add(v.liquid);
}

/** What was added comes to one temperature; done once before the next thing that asks for it. */
export function settle(ctx: Context, v: Vat): void {
  if (!ctx.unsettled.delete(v.liquid)) return;
  const pieces = piecesIn(v);
  if (pieces >= 0) { settleWithPieces(ctx, v, pieces); return; }
  if (mayHoldIce(ctx, v)) { restFrozen(ctx, v); return; }
  ctx.ops.push(({ s }) => {
    const t = temperatureOf(s, v.liquid, s[v.liquid + slot.enthalpy_J]!, s[v.celsius]);
    if (!Number.isNaN(t)) s[v.celsius] = t;                              // an empty vessel keeps its own
  });
}

/** Brings a liquid to a temperature, and the vessel it stands in. */
export function setTemperature(ctx: Context, v: Vat, input: number): void {
  ctx.frozen.delete(v.liquid);
  ctx.ops.push(({ s, x }) => {
    s[v.ownIce] = 0;
    s[v.celsius] = x[input]!;
    s[v.liquid + slot.enthalpy_J] = enthalpy(s, v.liquid, x[input]!);
    if (s[v.content.vessel + 1]! > 0) s[v.content.vessel] = x[input]!;
    if (x[input]! > s[v.hottest]!) s[v.hottest] = x[input]!;
  });
}

/** Brings a part of a liquid to a temperature and puts it back: so much of what `p` put in. @source none - energy balance */
export function warmPart(ctx: Context, v: Vat, p: Put, part: number, input: number): void {
  const heat = v.liquid + slot.enthalpy_J;
  ctx.ops.push(({ s, x }) => {
    const mass = wholeMass(s, v.liquid), t = x[input]!;
    if (mass > 0) s[heat]! += Math.min(1, (part * s[p.g]!) / mass) * (enthalpy(s, v.liquid, t) - s[heat]!);
    if (t > s[v.hottest]!) s[v.hottest] = t;
  });
  ctx.unsettled.add(v.liquid);
  settle(ctx, v);
}

/** Lets a prep rest in a place: a jar with the surface of its own volume. */
export function rest(ctx: Context, v: Vat, temperature: number, seconds: number, medium: 'air' | 'bath' | 'freezer'): void {
  const around = ctx.layout.take(4), account = ctx.layout.take(3), noIce = ctx.layout.take(4);
  const h = ctx.spread(`place/exchange/${medium}`, `place/exchange/${medium}`, places[medium].value, 'W/m2K', 'place');
  const bodies = { liquid: v.liquid, enthalpy: v.liquid + slot.enthalpy_J, celsius: v.celsius, vessel: v.content.vessel, ice: noIce };
  const frozen = mayHoldIce(ctx, v), pieces = piecesIn(v);
  ctx.ops.push(({ s, x }) => {
    const mL = volumeAt20(s, v.liquid);
    if (!(mL > 0)) return;
    if (s[v.content.vessel + 1] === 0) { s[v.content.vessel + 1] = places.jar.value; s[v.content.vessel] = s[v.celsius]!; }
    const area = 6 * Math.cbrt((mL * 1e-6) ** 2);
    s[around] = x[temperature]!; s[around + 1] = 0; s[around + 2] = 100 * area; s[around + 3] = x[h]! * area;
    const lent = pieces < 0 ? 0 : lendPieces(s, v, pieces);
    if (frozen) advanceFrozen(s, bodies, v.ownIce, around, x[seconds]!, account); else advance(s, bodies, around, x[seconds]!, account);
    s[v.content.vessel + 1]! -= lent;
  });
  if (frozen) restFrozen(ctx, v);
}

/** Offsets of what a stage keeps of its moment. */
export interface Captured { readonly celsius: number; readonly mL: number; readonly g: number; readonly ethanol: number; readonly freezing: number; readonly ice: number; readonly dilution: number; readonly frozen: number }

/** Writes down what a liquid is at this moment of the run. */
export function capture(ctx: Context, v: Vat, ice: number, dilution: number): Captured {
  settle(ctx, v);
  const base = ctx.layout.take(8);
  ctx.ofStages.add(ctx.ops.length);
  ctx.ops.push(({ s }) => {
    const mL = volumeAt20(s, v.liquid);
    s[base] = s[v.celsius]!;
    s[base + 1] = mL;
    s[base + 2] = wholeMass(s, v.liquid);
    s[base + 3] = s[v.liquid + at.ethanol]!;
    s[base + 4] = ice >= 0 ? freezingPoint(s, v.liquid) : NaN;
    s[base + 5] = ice >= 0 ? s[ice]! : 0;
    s[base + 6] = dilution >= 0 ? s[dilution]! : NaN;
    s[base + 7] = frozenShare(s, v.liquid, s[v.ownIce]!);
  });
  return { celsius: base, mL: base + 1, g: base + 2, ethanol: base + 3, freezing: base + 4, ice: base + 5, dilution: base + 6, frozen: base + 7 };
}

/** Registers the figures of a stage. */
export function stage(ctx: Context, stages: StageBuilt[], of: string, step: { text: string; path: Path }, v: Vat, ice = -1, dilution = -1, balance = false): void {
  const c = capture(ctx, v, ice, dilution);
  const name = `${of}stage:${stages.length}`;
  stages.push({ text: step.text, path: step.path, of: name, balance });
  ctx.probe('temperature', name, '°C', 'heat-balance', ['melinder2010'], ({ s }, out, i) => { out[i] = s[c.g]! > 0 ? s[c.celsius]! : NaN; });
  ctx.probe('volume', name, 'mL', 'additive-solutes', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[c.mL]!; });
  ctx.probe('mass', name, 'g', 'sum', [], ({ s }, out, i) => { out[i] = s[c.g]!; });
  ctx.probe('strength', name, '% vol', 'ethanol-over-volume', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[c.mL]! > 0 ? strengthIn(s[c.ethanol]!, s[c.mL]!) : NaN; });
  if (mayHoldIce(ctx, v)) tellFrozen(ctx, name, c.frozen);
  if (ice >= 0) {
    ctx.probe('ice_left', name, 'g', 'heat-balance', ['crc-ice'], ({ s }, out, i) => { out[i] = s[c.ice]!; });
    ctx.probe('freezing_point', name, '°C', 'water-activity-product', ['ross1975'], ({ s }, out, i) => { out[i] = s[c.freezing]!; });
    ctx.probe('dilution', name, '%', 'ice-water-over-measures', ['crc-ice'], ({ s }, out, i) => { out[i] = s[c.dilution]!; });
  }
}

/** The text of a step as it stands in the spec. */
export function textOf(ctx: Context, step: { span: { from: number; to: number } }): string {
  return ctx.document.text.slice(step.span.from, step.span.to).trim();
}
