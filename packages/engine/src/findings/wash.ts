import type { Step } from '../document/types.ts';
import type { Context, PrepBuilt, Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import { lineBefore } from '../program/edit.ts';
import { plantCriticalPH, plantVerdict } from '../clarity/index.ts';
import type { Facts } from './facts.ts';
import { isPlant, kindOf } from './plant.ts';
import { lasting, standsAt, timeOf, usualAt } from './steps.ts';

/** Hours in a freezer that part a fat from its spirit. @source fat-wash-survey at least 6 h at -18 °C */
const FREEZE_H = limit('fat-not-frozen', 'freeze');
/** An hour in the fridge counts for so much of one in a freezer. @source common-practice overnight for six hours */
const FRIDGE = limit('fat-not-frozen', 'fridge');
/** A place colder than FREEZER is a freezer; one not below COLD is not there to set a fat. °C @source common-practice */
const FREEZER = limit('fat-not-frozen', 'freezer'), COLD = limit('fat-not-frozen', 'cold');
/** Fats with less aroma than this, of 1 for the strongest, give a spirit nothing that is tasted. @source common-practice */
const AROMA = limit('fat-without-aroma', 'aroma');
/** Minutes that curd takes to gather before it is poured on a cloth. @source milk-punch-survey half an hour to a day */
const CURD_MIN = limit('wash-short-rest', 'least');
/** Below this pH an ordinary pectinase does not work; printed windows begin three quarters higher. @source agar-spin lime juice; common-practice */
const ENZYME_PH = limit('enzyme-too-acid', 'works'), ENZYME_DOUBT = limit('enzyme-too-acid', 'doubt');

/** Washes and clearings that take their time, their cold, or a thing that has something to give. @source fat-wash-survey; milk-punch-survey; agar-spin */
export function wash({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const { method } = prep.section;
    if (method === 'fat wash') { frozen(ctx, prep); aroma(ctx, prep); }
    if (method === 'milk wash' || method === 'clarify with milk') { curdRests(ctx, prep); stabilised(ctx, prep); plant(ctx, prep); }
    if (method === 'clarify with enzyme') enzyme(ctx, prep);
  }
}

const isFat = (p: Put): boolean => p.source.form === 'fat';
const strainOf = (prep: PrepBuilt): Step | undefined => prep.steps.find((x) => /strain$/.test(x.verb));

/** Long enough in the cold before the cloth, if this fat sets there at all. */
function frozen(ctx: Context, prep: PrepBuilt): void {
  const strain = strainOf(prep), fats = prep.puts.filter(isFat);
  const fat = fats.find((p) => p.source.ingredient?.cells['fat_melt_high_c']);
  if (!strain || !fat) return;
  const row = fat.source.ingredient!.cells, sets = (row['fat_melt_low_c'] ?? row['fat_melt_high_c'])!.value;
  const stands = prep.steps.filter((x) => x.span.to <= strain.span.from && x.span.from > fat.measure.span.from && /^(freeze|chill|store|rest|settle)$/.test(x.verb) && standsAt(ctx, x) < COLD);
  const setting = stands.filter((x) => standsAt(ctx, x) < sets), never = stands.length > 0 && setting.length === 0;
  const written = setting.find((x) => x.seconds), time = timeOf(ctx, prep, setting, 3600, (x) => (standsAt(ctx, x) < FREEZER ? 1 : FRIDGE));
  if (!time) return;
  const cold = (written ? standsAt(ctx, written) : usualAt(ctx, 'freezer')) < FREEZER;
  ctx.margins.push({
    code: 'fat-not-frozen', at: setting[0]?.path ?? (never ? stands[0]!.path : strain.path), unit: 'h', sources: ['fat-wash-survey'], words: { fat: fat.measure.thing.words, sets, hours: FREEZE_H, ...(never ? { degree: 'never' } : setting.length === 0 ? { degree: 'not-cold' } : {}) },
    op: (w, out, i) => { time(w, out, i); out[i] = FREEZE_H - out[i]!; }, live: { time }, ...(never ? { cap: 'warn' as const } : {}),
    // a fat that sets in no freezer is parted with a funnel: no words make it set
    ...(never ? {} : { remedy: { key: 'freeze-long', words: {}, splices: lasting(setting, cold ? '12 h' : '24 h', lineBefore(ctx.sections, strain, { key: 'freeze' })) } }),
  });
}

/** A fat with nothing to give: refined oils. */
function aroma(ctx: Context, prep: PrepBuilt): void {
  for (const p of prep.puts.filter(isFat)) {
    const cell = p.source.ingredient?.cells['aroma'];
    if (!cell) continue;
    const refined = p.source.ingredient?.id === 'coconut-oil-refined';
    ctx.margins.push({
      code: 'fat-without-aroma', at: p.measure.path, unit: 'share', sources: ['common-practice'], words: { fat: p.measure.thing.words }, op: (_, out, i) => { out[i] = AROMA - cell.value; },
      ...(refined ? { remedy: { key: 'use-virgin', words: {}, splices: [{ from: p.measure.thing.span.from, to: p.measure.thing.span.to, key: 'oil' }] } } : {}),
    });
  }
}

/** Curd needs time to gather. */
function curdRests(ctx: Context, prep: PrepBuilt): void {
  const strain = strainOf(prep), last = prep.puts[prep.puts.length - 1];
  if (!strain || !last) return;
  const rests = prep.steps.filter((x) => x.span.to <= strain.span.from && x.span.from > last.measure.span.from && /^(rest|settle|chill|store|age)$/.test(x.verb));
  const time = timeOf(ctx, prep, rests, 60);
  if (!time) return;
  ctx.margins.push({
    code: 'wash-short-rest', at: rests[0]?.path ?? strain.path, unit: 'min', sources: ['milk-punch-survey'], words: { minutes: CURD_MIN, ...(rests.length === 0 ? { degree: 'none' } : {}) },
    op: (w, out, i) => { time(w, out, i); out[i] = CURD_MIN - out[i]!; }, live: { time },
    remedy: { key: 'rest-curd', words: {}, splices: lasting(rests, '1 h', lineBefore(ctx.sections, strain, { key: 'rest' })) },
  });
}

/** Cream and milk with something in it that keeps the curd fine: carrageenan and phosphates of long-life cream, often of others. */
function stabilised(ctx: Context, prep: PrepBuilt): void {
  for (const p of prep.puts) {
    const said = p.source.ingredient?.category === 'dairy' ? p.source.ingredient.text['stabilised'] : undefined;
    if (said !== 'yes' && said !== 'often') continue;
    ctx.margins.push({
      code: 'wash-stabilised', at: p.measure.path, unit: 'g', sources: ['uht-cream-stabiliser', 'common-practice'], words: { thing: p.measure.thing.words, ...(said === 'often' ? { degree: 'often' } : {}) }, ...(said === 'often' ? { cap: 'note' as const } : {}),
      op: ({ s }, out, i) => { out[i] = s[p.g]!; },
    });
  }
}

/** Plant drinks: each comes apart in its own way, fortified ones hold salts that take up the acid, and nothing is known with spirit. */
function plant(ctx: Context, prep: PrepBuilt): void {
  for (const p of prep.puts) {
    const row = p.source.ingredient;
    if (!row || !isPlant(p)) continue;
    const kind = kindOf(row), verdict = kind ? plantVerdict(kind) : 'unknown';
    ctx.margins.push({
      code: 'wash-buffered', at: p.measure.path, unit: 'g', sources: ['plant-drink-survey', 'soy-curdling'], words: { thing: p.measure.thing.words, degree: verdict, ...(kind ? { pH: plantCriticalPH(kind) } : {}) },
      op: ({ s }, out, i) => { out[i] = s[p.g]!; },
    });
  }
}

/** A juice too sour for pectinase. */
function enzyme(ctx: Context, prep: PrepBuilt): void {
  const ph = ctx.probed(`prep:${prep.section.key}`, 'ph'), at = prep.puts[0]?.measure.path;
  if (!ph || !at) return;
  ctx.margins.push({
    code: 'enzyme-too-acid', at, unit: 'pH', sources: ['agar-spin', 'common-practice'], words: { prep: prep.name }, live: { pH: ph }, warnFrom: -ENZYME_DOUBT,
    op: (w, out, i) => { ph(w, out, i); out[i] = ENZYME_PH - out[i]!; },
  });
}
