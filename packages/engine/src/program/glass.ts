import type { IceWritten, Path } from '../document/types.ts';
import { brim, cutOf, pieceMass, solidShare, standInto, withBrim, STANDING, OVER, type Profile } from '../glass/index.ts';
import type { GlassShape } from '../larder/types.ts';
import { spreadAbout } from './inputs.ts';
import type { Context } from './context.ts';

/** The glass a drink is served in, and the ice it holds. */
export interface GlassBuilt { readonly shape: GlassShape; readonly profile: Profile; readonly assumed: boolean; readonly levels: number; readonly brimFactor: number; readonly brim_mL: number }

/** Ice as written or assumed: inputs and fixed words. */
export interface IceBuilt { readonly kind: string; readonly size: number; readonly mass: number; readonly celsius: number; readonly count: number; readonly size_mm: number; readonly clear: boolean }

/** The glass as named, or the usual one for what the build does. @source none - definition */
export function glassOf(ctx: Context, kindOfDrink: string): GlassBuilt {
  const written = ctx.document.glass;
  const at: Path = ['glass'];
  let key = written && 'key' in written ? written.key : null;
  const assumed = key === null;
  if (!key) {
    const row = ctx.tables.assumption(`glass/${kindOfDrink}`) ?? ctx.tables.assumption('glass/not said');
    key = String(row?.value ?? 'double-rocks');
    ctx.book.word({ key: `glass/${kindOfDrink}`, value: key, grade: 'trade', source: 'common-practice', at, say: row?.say ?? 'glass: double rocks' });
  }
  const shape = ctx.tables.glass(key) ?? ctx.tables.glass('double-rocks')!;
  const stated = written?.brim_mL;
  const profile = stated === undefined ? shape.profile : withBrim(shape.profile, stated);
  const spread = stated !== undefined ? spreadAbout({ kind: 'per cent', a: -3, b: 3, unit: 'share', grade: 'trade', source: 'common-practice' }, 1) : { kind: 'range' as const, low: 0.85, high: 1.15, min: 0.3 };
  const brimFactor = ctx.book.add({ key: `glass/brim/${key}`, value: 1, unit: 'share', spread, grade: 'trade', source: 'common-practice', role: 'tool', at });
  return { shape, profile, assumed, levels: ctx.layout.take(STANDING), brimFactor, brim_mL: brim(profile) };
}

const SIZES: Readonly<Record<string, string>> = { crushed: 'ice/size/crushed', shaved: 'ice/size/crushed', pebble: 'ice/size/pebble', 'large cube': 'ice/size/large cube', sphere: 'ice/size/large cube' };

/** Grams in the units ice is weighed in; a glass "three quarters full" is no mass and is assumed. @source none - definitions */
const GRAMS: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, 'oz-weight': 28.349523125, lb: 453.59237 };

/** Ice of a step: its mass, size and temperature as inputs, from what was written or the usual. @source common-practice */
export function iceOf(ctx: Context, ice: IceWritten | undefined, use: string, at: Path): IceBuilt {
  const kind = ice?.kind ?? 'cubes';
  const large = kind === 'large cube' || kind === 'sphere' || kind === 'spear' || (ice?.count === 1 && ice.size_mm !== undefined && ice.size_mm >= 40);
  if (!ice) ctx.book.word({ key: 'ice/kind', value: 'cubes', grade: 'trade', source: 'common-practice', at, say: 'over 200 g crushed' });
  const sizeKey = SIZES[kind] ?? (use === 'shake' ? 'ice/size/shake' : use === 'stir' ? 'ice/size/stir' : 'ice/size/rocks');
  const edge = ctx.tables.spread('ice/edge')!;
  const size_mm = ice?.size_mm ?? Number(ctx.tables.assumption(sizeKey)?.value ?? 30);
  const size = ice?.size_mm !== undefined
    ? ctx.book.add({ key: `ice/size/${at.join('/')}`, value: size_mm, unit: 'mm', spread: { ...spreadAbout(edge, size_mm), min: 1 }, grade: edge.grade, source: edge.source, role: 'tool', at })
    : ctx.assume(sizeKey, at, 'tool');
  const cut = cutOf(kind);
  const bed = cut === 3;
  let mass: number, count = 0;
  const written = ice?.mass;
  const per_g = written ? GRAMS[written.unit ?? ''] : undefined;
  if (written && per_g !== undefined) {
    const value = ((written.low + written.high) / 2) * per_g;
    mass = ctx.spread(`ice/mass/${at.join('/')}`, 'ice/mass', value, 'g', 'measure', { at });
    if (!bed) count = Math.max(1, Math.round(value / pieceMass(cut, size_mm)));
  } else if (ice?.count !== undefined || large) {
    count = ice?.count ?? 1;
    const value = count * pieceMass(cut, size_mm);
    mass = ctx.book.add({ key: `ice/mass/${at.join('/')}`, value, unit: 'g', spread: { kind: 'lognormal', cv: (3 * edge.a) / size_mm }, grade: 'trade', source: 'common-practice', role: 'measure', at });
  } else {
    const key = ctx.tables.assumption(`ice/mass/${use}`) ? `ice/mass/${use}` : bed ? 'ice/mass/crushed cup' : 'ice/mass/build rocks';
    mass = ctx.assume(key, at, 'measure');
    if (!bed) count = Math.max(1, Math.round(Number(ctx.tables.assumption(key)!.value) / pieceMass(cut, size_mm)));
  }
  const t = ice?.temperature;
  const celsius = t
    ? ctx.book.add({ key: `ice/temperature/${t.celsius}`, value: t.celsius, unit: '°C', spread: { kind: 'normal', sd: 3, max: 0 }, grade: 'trade', source: 'common-practice', role: 'place', at })
    : ctx.assume(kind === 'crushed' ? 'ice/temperature/crushed' : ice?.clear || large ? 'ice/temperature/tempered clear' : 'ice/temperature/not said', at, 'place');
  return { kind, size, mass, celsius, count, size_mm, clear: ice?.clear ?? large };
}

/** Puts levels of liquid, foam and ice into the glass's slots. @source none - geometry */
export function level(ctx: Context, glass: GlassBuilt, contents: { liquid_mL: number; density: number; foam_mL: number; foam_density: number; base_mL: number }, ice: IceBuilt | null, iceMass: number): void {
  const { profile, levels, brimFactor } = glass;
  const cut = ice ? cutOf(ice.kind) : 0, solid = ice ? solidShare(ice.kind) : 1, count = ice ? Math.max(ice.count, 1) : 0, size = ice?.size_mm ?? 0;
  // a glass that holds more is wider all the way up: the same as less in the glass it was taken for
  ctx.ops.push(({ s, x }) => {
    const f = x[brimFactor]!;
    const m = iceMass >= 0 ? s[iceMass]! : 0;
    standInto(s, levels, profile, s[contents.base_mL]! / f, s[contents.liquid_mL]! / f, s[contents.density]!, s[contents.foam_mL]! / f, s[contents.foam_density]!, cut, m > 0 ? count : 0, m > 0 ? m / f / count : 0, cut === 2 ? size : 0, solid);
    s[levels + OVER]! *= f;
  });
}
