import type { Measure } from '../document/types.ts';
import type { Ingredient } from '../larder/types.ts';
import { composition, form, startOf, type Composition } from '../larder/index.ts';
import { volumeAt20 } from '../liquids/index.ts';
import { BLOCK, CONSTITUENTS, at, slot } from '../matter/constituents.ts';
import { scaleMatter, wholeMass } from '../matter/block.ts';
import { countedAs } from './amounts.ts';
import { drawnOf, saltsOf, strengthSaid, SUGARS, type Basis } from './drawn.ts';
import type { Context, Source } from './context.ts';
import type { AssumedWord } from './inputs.ts';
import { insteadOf } from './words.ts';
import { molarOf, volumesOf } from './sparkle.ts';
import { moneyOf, priceIn, settled, type Priced } from './shelf.ts';

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
  if (link.kind === 'larder' && link.assumed && link.name && !m.ratio) ctx.book.word({ key: `larder/word/${m.thing.words.toLowerCase()}`, value: link.name, grade: 'trade', source: 'common-practice', at: m.path, say: link.name, splices: insteadOf(m.thing.span, link.name) });
  const named = settled(ctx, m, null);
  const id = link.kind === 'larder' ? link.id : link.kind === 'shelf' ? link.larder ?? named.first?.entry.larder ?? null : named.first?.entry.larder ?? null;
  const ingredient = id ? ctx.tables.ingredient(m.amount ? countedAs(id, m.amount.unit) : id) : undefined;
  const held = ingredient ? settled(ctx, m, ingredient.id) : named;
  const strength = m.strength?.value ?? held.strength?.entry.strength, price = held.price && priceIn(moneyOf(ctx), held.price.entry);
  const name = ingredient || !held.strength ? m.thing.words.toLowerCase() : held.strength.entry.name;
  if (!ingredient && strength === undefined) {
    ctx.unknown.push({ measure: m, why: 'ingredient-unknown' });
    return unknownSource(ctx, m);
  }
  return bottle(ctx, m, ingredient, name, strength, price ?? undefined);
}

/** A source that an earlier part may have made. */
function read(ctx: Context, source: Source): Source {
  ctx.parts.reads(source.block, BLOCK);
  ctx.parts.reads(source.mL);
  return source;
}

function prepSource(ctx: Context, prep: NonNullable<Source['prep']>): Source {
  const key = `prep ${prep.name}`;
  const known = ctx.sources.get(key);
  if (known) return read(ctx, known);
  const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1), from = prep.content.phase('liquid');
  // all of it but its heat
  ctx.parts.reads(from, slot.enthalpy_J);
  ctx.parts.reads(from + slot.enthalpy_J + 1, BLOCK - slot.enthalpy_J - 1);
  ctx.parts.reads(prep.yield_g);
  ctx.parts.reads(prep.mL);
  ctx.ops.push(({ s }) => {
    const m = s[prep.yield_g]!;
    scaleMatter(s, block, from, m > 0 ? 1 / m : 0);
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
  if (known) return read(ctx, known);
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

function bottle(ctx: Context, m: Measure, row: Ingredient | undefined, name: string, strength: number | undefined, price: Priced | undefined): Source {
  const key = [row?.id ?? name, strength ?? '', m.ratio ? `${m.ratio.a}:${m.ratio.b} ${m.ratio.by} ${m.ratio.byWritten}` : '', m.concentration?.value ?? '', m.quinine?.value ?? '', price ? `${price.perMl} ${price.perG}` : ''].join('|');
  const known = ctx.sources.get(key), asRatio = m.ratio !== undefined && (!row || row.category === 'syrup' || row.category === 'sugar');
  if (asRatio && !m.ratio.byWritten) ctx.book.word(ratioSaid(m));
  if (known) {
    const drawn = ctx.book.at(`bottle/${name}/strength`);
    if (drawn >= 0) ctx.book.say(drawn, strengthSaid(m, name, ctx.book.list[drawn]!.value));
    return read(ctx, known);
  }

  const grams = new Float64Array(BLOCK);
  const made = row ? makeUp(row) : undefined;
  if (made) {
    grams.set(made.grams);
    grams[slot.unknown_g] = made.unknown_g;
    grams[slot.acids_unknown_g] = made.acids_unknown_g;
  } else { grams[at.water] = 60; grams[at.ethanol] = 40; }
  const basis = asRatio ? ratioSyrup(ctx, grams, m, name) : null;
  const stretch = m.concentration ? concentrate(grams, m.concentration.value) : 1;
  if (m.quinine) grams[at.quinine] = m.quinine.value / 10_000;               // mg per kg to g per 100 g

  const drawn = drawnOf(ctx, m, row, name, grams, strength, basis);
  const salts = saltsOf(ctx, m, row, grams, stretch);
  const [r, g, b] = tint(row);
  const turbid = row?.cells['turbidity_class']?.value ?? 0;
  const { perMl, perG } = price ?? { perMl: 0, perG: 0 };
  const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1), volumes = volumesOf(ctx, row, name);
  const make = (s: Float64Array, x: Float64Array, block: number): number => {
    s.set(grams, block);
    drawn.make(s, x, block);
    const total = wholeMass(s, block);
    scaleMatter(s, block, block, 1 / total);
    const v = volumeAt20(s, block);
    s[block + slot.enthalpy_J] = 0;
    s[block + slot.charge_mol] = salts.charge(s, x, block, v, total);
    s[block + slot.price_minor] = perMl * v + perG;
    s[block + slot.tint_r] = r * v; s[block + slot.tint_g] = g * v; s[block + slot.tint_b] = b * v;
    s[block + slot.turbid] = turbid * v;
    s[block + slot.co2_mol] = volumes >= 0 ? molarOf(x[volumes]!) * v : 0;
    return v;
  };
  // most runs leave a bottle as it stands: its make-up at the nominal values is kept
  const inputs = [...drawn.inputs, ...salts.inputs, ...(volumes >= 0 ? [volumes] : [])], usual = new Float64Array(BLOCK), { list } = ctx.book;
  const nominal = inputs.map((i) => list[i]!.value), at_nominal = new Float64Array(list.length);
  for (const i of inputs) at_nominal[i] = list[i]!.value;
  const usual_mL = make(usual, at_nominal, 0);
  ctx.ops.push(({ s, x }) => {
    let same = true;
    for (let i = 0; i < inputs.length; i++) if (x[inputs[i]!] !== nominal[i]) { same = false; break; }
    if (!same) { s[mL] = make(s, x, block); return; }
    s.set(usual, block);
    s[mL] = usual_mL;
  });
  const source: Source = { block, mL, form: row ? form(row) : 'liquid', start: row ? startOf(row) : 'start/spirit', known: true, ...(row ? { ingredient: row } : {}) };
  ctx.sources.set(key, source);
  return source;
}

const madeUp = new WeakMap<Ingredient, Composition>();
/** `composition` of a row, worked out once; not to be written to. */
function makeUp(row: Ingredient): Composition {
  let made = madeUp.get(row);
  if (made === undefined) { made = composition(row); madeUp.set(row, made); }
  return made;
}

/** What a ratio is taken for, and the words that say so. */
function ratioSaid(m: Measure): AssumedWord {
  const { a, b, span } = m.ratio!;
  return { key: `ratio/${a}:${b}`, value: 'by weight', grade: 'trade', source: 'common-practice', at: m.path, say: `${a}:${b} by weight`, splices: insteadOf({ from: span.to, to: span.to }, ' by weight') };
}

/**
 * Sugar and water in a written ratio, by weight unless by volume was written (sugar then by its bulk density). Where neither was written the other
 * reading is an input of its own: grams of sugar for a mL of it, 1 by weight.
 */
function ratioSyrup(ctx: Context, grams: Float64Array, m: Measure, name: string): Basis | null {
  const ratio = m.ratio!;
  const bulk = ratio.by === 'volume' ? BULK_G_ML : 1;
  let basis: Basis | null = null;
  if (!ratio.byWritten) {
    const dry = (by: number) => (ratio.a > 0 ? (ratio.a * by) / (ratio.a * by + ratio.b) : 0), usual = dry(1);
    basis = { input: ctx.spread(`ratio/${name} ${ratio.a}:${ratio.b}`, 'syrup/by weight or volume', 1, 'g/mL', 'nature', { at: m.path }), sugar: (by) => (usual > 0 ? dry(by) / usual : 1) };
  }
  const sugar = ratio.a * bulk, share = sugar > 0 ? sugar / (sugar + ratio.b) : 0;
  const before = SUGARS.reduce((t, i) => t + grams[i]!, 0);
  const pattern = SUGARS.map((i) => (before > 0 ? grams[i]! / before : i === at.sucrose ? 1 : 0));
  for (let i = 0; i < CONSTITUENTS.length; i++) if (!SUGARS.includes(i)) grams[i] = 0;
  SUGARS.forEach((i, k) => { grams[i] = 100 * share * pattern[k]!; });
  grams[at.water] = 100 * (1 - share);
  grams[slot.unknown_g] = 0; grams[slot.acids_unknown_g] = 0;
  return basis;
}
/** Grams of sugar in a mL of the cup it is measured in. @source usda-sr28 200 g a cup of 236.6 mL */
const BULK_G_ML = 0.845;

/** Scales what is dissolved so that it is `percent` by weight; by how much. */
function concentrate(grams: Float64Array, percent: number): number {
  let solids = 0;
  for (let i = 0; i < CONSTITUENTS.length; i++) if (i !== at.water && i !== at.ethanol) solids += grams[i]!;
  if (solids <= 0) return 1;
  const f = percent / solids;
  for (let i = 0; i < CONSTITUENTS.length; i++) if (i !== at.water && i !== at.ethanol) grams[i]! *= f;
  grams[at.water] = 0;
  let sum = 0;
  for (let i = 0; i < CONSTITUENTS.length; i++) sum += grams[i]!;
  grams[at.water] = Math.max(0, 100 - sum);
  return f;
}
