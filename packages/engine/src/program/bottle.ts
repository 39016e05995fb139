import type { Measure } from '../document/types.ts';
import type { Ingredient } from '../larder/types.ts';
import { alcoholic, composition, form, labelStrengthOf, startOf } from '../larder/index.ts';
import { volumeAt20 } from '../liquids/index.ts';
import { BLOCK, CONSTITUENTS, at, slot } from '../matter/constituents.ts';
import { wholeMass } from '../matter/block.ts';
import { countedAs } from './amounts.ts';
import type { Context, Source } from './context.ts';

const ETHANOL_G_ML = 0.789239;
const SUGARS = [at.sucrose, at.glucose, at.fructose, at.lactose, at.maltose, at.other_sugars];
const ACIDS = [at.citric, at.malic, at.tartaric, at.lactic, at.acetic, at.phosphoric, at.ascorbic, at.quinic, at.succinic, at.other_acid];

/**
 * What one gram of the thing a line names is made of, as inputs make it: a bottle of the written or usual strength, a fruit of its
 * class's sugar and acid. One source per thing and reading of it, so that a bottle used twice is one bottle.
 */
export function sourceOf(ctx: Context, m: Measure, section: string): Source {
  const link = m.thing.link;
  if (link.kind === 'prep' && link.prep !== section) {
    const prep = ctx.preps.get(link.prep);
    if (prep) return prepSource(ctx, prep);
    ctx.unknown.push({ measure: m, why: 'prep-missing' });
    return unknownSource(ctx, m);
  }
  const shelf = link.kind === 'shelf' ? shelfEntry(ctx, link.shelf) : undefined;
  const id = link.kind === 'larder' ? link.id : link.kind === 'shelf' ? (link.larder ?? shelf?.larder ?? null) : null;
  const ingredient = id ? ctx.tables.ingredient(m.amount ? countedAs(id, m.amount.unit) : id) : undefined;
  if (!ingredient) {
    if (shelf?.strength !== undefined) return bottle(ctx, m, undefined, shelf.name, shelf.strength, shelf.price);
    if (m.strength) return bottle(ctx, m, undefined, m.thing.words.toLowerCase(), m.strength.value, undefined);
    ctx.unknown.push({ measure: m, why: 'ingredient-unknown' });
    return unknownSource(ctx, m);
  }
  const fitting = shelf ?? shelfEntry(ctx, m.thing.words.toLowerCase()) ?? shelfOf(ctx, ingredient.id);
  return bottle(ctx, m, ingredient, m.thing.words.toLowerCase(), m.strength?.value ?? fitting?.strength, fitting?.price);
}

function shelfEntry(ctx: Context, name: string) {
  for (const section of ctx.sections) for (const e of section.shelf ?? []) if (e.name.toLowerCase() === name.toLowerCase()) return e;
  return undefined;
}
function shelfOf(ctx: Context, id: string) {
  for (const section of ctx.sections) for (const e of section.shelf ?? []) if (e.larder === id) return e;
  return undefined;
}

function prepSource(ctx: Context, prep: NonNullable<Source['prep']>): Source {
  const key = `prep ${prep.name}`;
  const known = ctx.sources.get(key);
  if (known) return known;
  const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1), from = prep.content.phase('liquid');
  ctx.ops.push(({ s }) => {
    const m = s[prep.yield_g]!;
    for (let i = 0; i < BLOCK; i++) s[block + i] = m > 0 ? s[from + i]! / m : 0;
    s[block + slot.enthalpy_J] = 0;
    s[mL] = m > 0 ? s[prep.mL]! / m : 1;
  });
  const source: Source = { block, mL, prep, form: 'liquid', start: 'start/prep from the fridge', known: true };
  ctx.sources.set(key, source);
  return source;
}

/** Matter nothing is known of but its mass: carried and diluted, never counted as water. */
export function unknownSource(ctx: Context, m: Measure): Source {
  const key = `unknown ${m.thing.words.toLowerCase()}`;
  const known = ctx.sources.get(key);
  if (known) return known;
  const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1);
  ctx.ops.push(({ s }) => { s[block + slot.unknown_g] = 1; s[mL] = 1; });
  const source: Source = { block, mL, form: 'liquid', start: 'start/water', known: false };
  ctx.sources.set(key, source);
  return source;
}

function tint(ingredient: Ingredient | undefined): readonly [number, number, number] {
  const hex = ingredient?.text['tint'];
  if (!hex || !/^#[0-9a-f]{6}$/i.test(hex)) return [0, 0, 0];
  return [1, 3, 5].map((i) => {
    const c = parseInt(hex.slice(i, i + 2), 16) / 255;
    const linear = c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    return -Math.log(Math.max(linear, 0.003));
  }) as unknown as readonly [number, number, number];
}

function bottle(ctx: Context, m: Measure, row: Ingredient | undefined, name: string, strength: number | undefined, price: { minor: number; per_mL?: number; per_g?: number } | undefined): Source {
  const key = [row?.id ?? name, strength ?? '', m.ratio ? `${m.ratio.a}:${m.ratio.b} ${m.ratio.by}` : '', m.concentration?.value ?? '', m.quinine?.value ?? ''].join('|');
  const known = ctx.sources.get(key);
  if (known) return known;

  const grams = new Float64Array(BLOCK);
  const made = row ? composition(row) : undefined;
  if (made) {
    grams.set(made.grams);
    grams[slot.charge_mol] = made.charge_mol;
    grams[slot.unknown_g] = made.unknown_g;
    grams[slot.acids_unknown_g] = made.acids_unknown_g;
  } else { grams[at.water] = 60; grams[at.ethanol] = 40; }
  if (m.ratio && (!row || row.category === 'syrup' || row.category === 'sugar')) ratioSyrup(ctx, grams, m);
  if (m.concentration) concentrate(grams, m.concentration.value);
  if (m.quinine) grams[at.quinine] = m.quinine.value / 10_000;               // mg per kg to g per 100 g

  // how it may differ from its row
  const label = row ? alcoholic(row) : { strength: strength ?? 40 };
  const q0 = strength ?? label?.strength;
  let iStrength = -1, iSugar = -1, iAcid = -1;
  if (label && q0 !== undefined) {
    const written = strength !== undefined;
    iStrength = ctx.spread(`bottle/${name}/strength`, (row ? labelStrengthOf(row) : null) ?? 'label/strength/spirits', q0, '% vol', 'label', { at: m.path, ...(written ? { grade: 'compiled' as const } : {}), bounds: { min: 0, max: 100 } });
    if (!written) ctx.book.word({ key: `strength/${name}`, value: `${q0} % vol`, grade: 'trade', source: 'common-practice', at: m.path, say: `${name} ${q0} %` });
  } else if (row && /^(spirit|liqueur|fortified|wine|beer|bitters)$/.test(row.category) && !row.cells['alcohol_g']) {
    ctx.unknown.push({ measure: m, why: 'strength-unknown' });
  }
  const sugars = SUGARS.reduce((t, i) => t + grams[i]!, 0), acids = ACIDS.reduce((t, i) => t + grams[i]!, 0);
  if (row && sugars > 0.2) {
    const own = m.ratio || row.category === 'syrup' ? undefined : ctx.tables.spread(`larder/${row.category}/sugars_g`);
    const rel = own?.kind === 'lognormal cv' ? own : undefined;
    if (row.category === 'syrup' || m.ratio) iSugar = ctx.book.add({ key: `syrup/${name}/sugar`, value: 1, unit: 'share', spread: { kind: 'normal', sd: 1 / sugars, min: 0, max: 100 / sugars }, grade: 'trade', source: 'common-practice', role: 'nature', at: m.path });
    else if (rel && sugars < 95) iSugar = ctx.book.add({ key: `larder/${row.id}/sugars`, value: 1, unit: 'share', spread: { kind: 'lognormal', cv: rel.a, max: 95 / sugars }, grade: rel.grade, source: rel.source, role: 'nature', at: m.path });
  }
  if (row && acids > 0.1 && acids < 60 && row.category !== 'acid') {
    const fruit = /^(lime|lemon|orange)/.exec(row.id)?.[1];
    const rel = ctx.tables.spread(fruit ? `fruit/${fruit}/citric` : 'fruit/citrus/acid') ?? ctx.tables.spread('fruit/citrus/acid');
    if (rel?.kind === 'lognormal cv') iAcid = ctx.book.add({ key: fruit ? `fruit/${fruit}/citric` : `larder/${row.id}/acids`, value: 1, unit: 'share', spread: { kind: 'lognormal', cv: rel.a }, grade: rel.grade, source: rel.source, role: 'nature', at: m.path });
  }

  const volume0 = volumeAt20(grams, 0);
  const [r, g, b] = tint(row);
  const turbid = row?.cells['turbidity_class']?.value ?? 0;
  const perMl = price?.per_mL ? price.minor / price.per_mL : 0, perG = price?.per_g ? price.minor / price.per_g : 0;
  const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1);
  ctx.ops.push(({ s, x }) => {
    for (let i = 0; i < BLOCK; i++) s[block + i] = grams[i]!;
    if (iSugar >= 0) for (let i = 0; i < SUGARS.length; i++) s[block + SUGARS[i]!]! *= x[iSugar]!;
    if (iAcid >= 0) for (let i = 0; i < ACIDS.length; i++) s[block + ACIDS[i]!]! *= x[iAcid]!;
    if (iStrength >= 0) {
      // the label speaks of a volume: solutes per litre stay, ethanol follows the label, water fills up to the litre
      for (let i = 0; i < BLOCK; i++) s[block + i]! /= volume0;
      s[block + at.ethanol] = (x[iStrength]! / 100) * ETHANOL_G_ML;
      for (let i = 0; i < 6; i++) {
        const off = 1 - volumeAt20(s, block);
        s[block + at.water] = Math.max(0, s[block + at.water]! + off * 0.98);
        if (Math.abs(off) < 1e-9) break;
      }
    } else {
      let others = 0;
      for (let i = 0; i < CONSTITUENTS.length; i++) others += i === at.water ? 0 : s[block + i]!;
      s[block + at.water] = Math.max(0, 100 - others - s[block + slot.unknown_g]!);
    }
    const total = wholeMass(s, block);
    for (let i = 0; i < BLOCK; i++) s[block + i]! /= total;
    const v = volumeAt20(s, block);
    s[mL] = v;
    s[block + slot.enthalpy_J] = 0;
    s[block + slot.price_minor] = perMl * v + perG;
    s[block + slot.tint_r] = r * v; s[block + slot.tint_g] = g * v; s[block + slot.tint_b] = b * v;
    s[block + slot.turbid] = turbid * v;
  });
  const source: Source = { block, mL, form: row ? form(row) : 'liquid', start: row ? startOf(row) : 'start/spirit', known: true, ...(row ? { ingredient: row } : {}) };
  ctx.sources.set(key, source);
  return source;
}

/** Sugar and water in a written ratio, by weight unless by volume was written (sugar then by its bulk density). */
function ratioSyrup(ctx: Context, grams: Float64Array, m: Measure): void {
  const ratio = m.ratio!;
  const bulk = ratio.by === 'volume' ? 0.85 : 1;
  if (!ratio.byWritten) ctx.book.word({ key: `ratio/${ratio.a}:${ratio.b}`, value: 'by weight', grade: 'trade', source: 'common-practice', at: m.path, say: `${ratio.a}:${ratio.b} by volume` });
  const sugar = ratio.a * bulk, share = sugar / (sugar + ratio.b);
  const before = SUGARS.reduce((t, i) => t + grams[i]!, 0);
  const pattern = SUGARS.map((i) => (before > 0 ? grams[i]! / before : i === at.sucrose ? 1 : 0));
  for (let i = 0; i < CONSTITUENTS.length; i++) if (!SUGARS.includes(i)) grams[i] = 0;
  SUGARS.forEach((i, k) => { grams[i] = 100 * share * pattern[k]!; });
  grams[at.water] = 100 * (1 - share);
  grams[slot.unknown_g] = 0; grams[slot.acids_unknown_g] = 0; grams[slot.charge_mol] = 0;
}

/** Scales what is dissolved so that it is `percent` by weight. */
function concentrate(grams: Float64Array, percent: number): void {
  let solids = 0;
  for (let i = 0; i < CONSTITUENTS.length; i++) if (i !== at.water && i !== at.ethanol) solids += grams[i]!;
  if (solids <= 0) return;
  const f = percent / solids;
  for (let i = 0; i < CONSTITUENTS.length; i++) if (i !== at.water && i !== at.ethanol) grams[i]! *= f;
  grams[slot.charge_mol]! *= f;
  grams[at.water] = 0;
  let sum = 0;
  for (let i = 0; i < CONSTITUENTS.length; i++) sum += grams[i]!;
  grams[at.water] = Math.max(0, 100 - sum);
}
