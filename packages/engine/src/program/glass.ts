import type { IceWritten, Path, Step } from '../document/types.ts';
import { brim, cutOf, ICE_FROM, ICE_TO, LEVEL, LIQUID, pieceMass, solidShare, standInto, STANDING, WASHLINE, withBrim, type Profile } from '../glass/index.ts';
import type { GlassShape } from '../larder/types.ts';
import type { Context } from './context.ts';
import { actionAt, fillOf, inHead, inIce, insteadOf, plain, type OfIce } from './words.ts';

/** The glass a drink is served in, and the ice it holds. */
export interface GlassBuilt { readonly shape: GlassShape; readonly profile: Profile; readonly assumed: boolean; readonly levels: number; /** index of what it holds to the brim, mL */ readonly holding: number; readonly brim_mL: number }

/** Ice as written or assumed: inputs and fixed words. */
export interface IceBuilt { readonly kind: string; readonly size: number; readonly mass: number; readonly celsius: number; readonly count: number; readonly size_mm: number; readonly clear: boolean; /** said to have no water on it */ readonly dry: boolean }

/** What is drunk from is none of these: in them a drink is mixed, kept or brought. */
const NOT_DRUNK_FROM = new Set(['shaker', 'mixing-vessel', 'bar-glass', 'siphon', 'jar', 'carafe', 'clay', 'punch-bowl']);

/** Is it a glass that a drink is served in, where ice put into it stays? @source none - definition */
export function drunkFrom(into: Step['into']): boolean { return into !== undefined && !NOT_DRUNK_FROM.has(into.key); }

/** The key of the glass that is named: in the head, else by the last line of the build that names one ("strain into a coupe"); undefined where none is. @source none - definition */
export function glassNamed({ document, sections }: Pick<Context, 'document' | 'sections'>): string | undefined {
  if (document.glass && 'key' in document.glass) return document.glass.key;
  const named = sections.filter((s) => s.kind === 'build').flatMap((s) => s.lines).flatMap((l) => l.actions).map((a) => (a.kind === 'step' || a.kind === 'fill' ? a.into : undefined)).filter(drunkFrom);
  return named.at(-1)?.key;
}

/** The glass as named, or the usual one for what the build does. @source none - definition */
export function glassOf(ctx: Context, kindOfDrink: string): GlassBuilt {
  const { document, tables } = ctx, written = document.glass, head = document.head.glass;
  const at: Path = ['glass'];
  let key = glassNamed(ctx);
  const assumed = key === undefined, inStep = !assumed && !(written && 'key' in written);
  const use = tables.assumption(`glass/${kindOfDrink}`) ? kindOfDrink : 'not said';
  if (!key) {
    const row = tables.assumption(`glass/${use}`)!;
    key = String(row.value);
    const size = written?.brim_mL === undefined ? '' : `, ${plain(written.brim_mL)} ml`;
    ctx.book.word({ key: `glass/${use}`, value: key, grade: row.grade, source: row.source, at, say: row.say, splices: head ? insteadOf(head.span, `${row.say.slice(row.say.indexOf(':') + 2)}${size}`) : inHead(document, row.say) });
  }
  const shape = tables.glass(key) ?? tables.glass('double-rocks')!;
  const stated = written?.brim_mL;
  const profile = stated === undefined ? shape.profile : withBrim(shape.profile, stated);
  const holds = brim(profile), name = inStep ? key : head && !assumed ? head.value : undefined, say = `${name === undefined ? '' : `${name}, `}${plain(holds)} ml`;
  // a glass of one name differs in what it holds; one that is only assumed, as its row has it
  const row = assumed && stated === undefined ? tables.assumption(`glass/brim/${use}`) : undefined;
  const more = { at, bounds: { min: 1 }, ...(stated === undefined ? { assumed: { say: `glass: ${say}`, splices: head && !inStep ? insteadOf({ from: head.span.to, to: head.span.to }, `, ${plain(holds)} ml`) : inHead(document, `glass: ${say}`) } } : {}) };
  const holding = row && row.low !== null && row.high !== null
    ? ctx.about(`glass/brim/${use}`, holds, holds * (row.low / Number(row.value)), holds * (row.high / Number(row.value)), 'mL', 'tool', { ...more, grade: row.grade, source: row.source, row: `assumptions glass/brim/${use}` })
    : ctx.spread(`glass/brim/${key}`, stated !== undefined ? 'glass/brim stated' : 'glass/brim named', holds, 'mL', 'tool', more);
  return { shape, profile, assumed, levels: ctx.layout.take(STANDING), holding, brim_mL: holds };
}

/** The row that has the weight of the glass: by what is named, a rocks glass else. @source none - definition */
export function glassMass(ctx: Context): string {
  const key = glassNamed(ctx) ?? '', shape = ctx.tables.glass(key);
  return shape && shape.stem_mm > 0 ? 'glass/mass/stemmed' : /^(highball|collins|fizz|pint|beer|hurricane|tiki|can-glass)$/.test(key) ? 'glass/mass/highball' : 'glass/mass/rocks';
}

/** True of a step that chills a glass: what is drunk from it stays as it is. @source none - definition */
export function chillsGlass(step: Step): boolean { return (step.verb === 'chill' || step.verb === 'freeze') && (step.flags.includes('chilled') || step.flags.includes('frozen')); }

/** The row for a glass or tin that is said to be chilled or frozen; undefined for one that is not. @source none - definition */
export function coldGlass(ctx: Context, step: Step, inGlass: boolean): string | undefined {
  const { glass, sections } = ctx.document, said = glass && 'cold' in glass ? glass.cold : undefined;
  const flags = [...step.flags, ...(inGlass ? sections.filter((s) => s.kind === 'build').flatMap((s) => s.lines.flatMap((l) => l.actions.flatMap((a) => (a.kind === 'step' && (a.into === undefined || drunkFrom(a.into)) ? a.flags : [])))) : [])];
  return (inGlass && said === 'frozen') || flags.includes('frozen') ? 'start/frozen glass' : (inGlass && said === 'chilled') || flags.includes('chilled') ? 'start/chilled glass' : undefined;
}

const SIZES: Readonly<Record<string, string>> = { crushed: 'ice/size/crushed', shaved: 'ice/size/crushed', pebble: 'ice/size/pebble', 'large cube': 'ice/size/large cube', sphere: 'ice/size/large cube' };

/** Grams in the units ice is weighed in; a glass "three quarters full" is no mass and is assumed. @source none - definitions */
const GRAMS: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, 'oz-weight': 28.349523125, lb: 453.59237 };

/** Where ice is kept, by the word for it. */
const KEPT: Readonly<Record<string, string>> = { freezer: 'ice/temperature/freezer', 'bar well': 'ice/temperature/bar well' };

/** Ice of a step: its mass, size and temperature as inputs, from what was written or the usual. @source common-practice */
export function iceOf(ctx: Context, ice: IceWritten | undefined, use: string, at: Path): IceBuilt {
  const { document, tables } = ctx, action = actionAt(document, at);
  const usual = /crushed|swizzle|blend/.test(use) ? 'crushed' : 'cubes', kind = ice?.kind ?? usual;
  const words = kind === 'large cube' ? 'large cubes' : kind;
  const said = (what: OfIce, text: string) => inIce(document.text, action, ice, what, text, words);
  const large = kind === 'large cube' || kind === 'sphere' || kind === 'spear' || (ice?.count === 1 && ice.size_mm !== undefined && ice.size_mm >= 40);
  if (!ice) ctx.book.word({ key: 'ice/kind', value: kind, grade: 'trade', source: 'common-practice', at, say: `over ${kind}`, splices: said('kind', kind) });
  const sizeKey = SIZES[kind] ?? (use === 'shake' || use === 'hard shake' ? 'ice/size/shake' : use === 'stir' ? 'ice/size/stir' : /highball|collins/.test(use) ? 'ice/size/highball' : 'ice/size/rocks');
  const edge = tables.spread('ice/edge')!;
  const size_mm = ice?.size_mm ?? Number(tables.assumption(sizeKey)!.value);
  const size = ice?.size_mm !== undefined
    ? ctx.spread(`ice/size/${at.join('/')}`, 'ice/edge', size_mm, 'mm', 'tool', { at, bounds: { min: 1 } })
    : ctx.assume(sizeKey, at, 'tool', sizeKey, said('size', `${plain(size_mm)} mm`));
  const cut = cutOf(kind);
  const bed = cut === 3;
  let mass: number, count = 0;
  const written = ice?.mass;
  const per_g = written ? GRAMS[written.unit ?? ''] : undefined;
  if (written && per_g !== undefined) {
    const value = ((written.low + written.high) / 2) * per_g;
    mass = written.low === written.high ? ctx.spread(`ice/mass/${at.join('/')}`, 'ice/mass weighed', value, 'g', 'measure', { at }) : ctx.range(`ice/mass/${at.join('/')}`, written.low * per_g, written.high * per_g, 'g', 'measure', { at });
    if (!bed) count = Math.max(1, Math.round(value / pieceMass(cut, size_mm)));
  } else if (ice?.count !== undefined || large) {
    count = ice?.count ?? 1;
    const value = count * pieceMass(cut, size_mm);
    // counted pieces: their mass goes by the cube of the edge
    mass = ctx.book.add({ key: `ice/mass/${at.join('/')}`, value, unit: 'g', spread: { kind: 'lognormal', cv: (3 * edge.a) / size_mm }, grade: edge.grade, source: edge.source, role: 'measure', row: 'spreads ice/edge', at });
  } else {
    const key = tables.assumption(`ice/mass/${use}`) ? `ice/mass/${use}` : bed ? 'ice/mass/crushed cup' : 'ice/mass/build rocks', row = tables.assumption(key)!;
    const words = `${plain(Number(row.value))} g`;
    // "three quarters full" is no mass: it gives way to one
    mass = ctx.assume(key, at, 'measure', key, written && ice?.named ? insteadOf({ from: written.number.from, to: ice.named.from }, `${fillOf(document, ice) ? 'with ' : ''}${words} `) : said('mass', words));
    if (!bed) count = Math.max(1, Math.round(Number(row.value) / pieceMass(cut, size_mm)));
  }
  const t = ice?.temperature, clear = ice?.clear ?? large;
  const cold = t?.word ? KEPT[t.word] ?? 'ice/temperature/not said' : kind === 'crushed' ? 'ice/temperature/crushed' : clear ? 'ice/temperature/tempered clear' : 'ice/temperature/not said';
  const number = `at ${plain(Number(tables.assumption(cold)!.value))} °C`;
  const celsius = t && !t.word
    ? ctx.spread(`ice/temperature/${t.celsius}`, t.celsius > -0.5 ? 'ice/temperature melting' : 'ice/temperature written', t.celsius, '°C', 'place', { at, bounds: { max: 0 } })
    : ctx.assume(cold, at, 'place', cold, t ? insteadOf(t.span, number) : said('temperature', number));
  return { kind, size, mass, celsius, count, size_mm, clear, dry: ice?.wet === false };
}

/** The levels of a glass by their names, mm from the floor. */
export const LEVEL_NAMES = [['liquid_mm', LIQUID], ['washline_mm', LEVEL], ['top_mm', WASHLINE], ['ice_from_mm', ICE_FROM], ['ice_to_mm', ICE_TO]] as const;

/** Names the levels that stand from `levels` on. @source none - geometry */
export function tellLevels(ctx: Context, of: string, levels: number): void {
  for (const [name, k] of LEVEL_NAMES) ctx.probe(name, of, 'mm', 'stacked-frusta', ['definition'], ({ s }, out, i) => { out[i] = s[levels + k]!; });
}

/** Offsets of what stands in one glass: mL and g/mL of liquid and foam at their temperature, mL that are firm at the floor. */
export interface Contents { readonly liquid_mL: number; readonly density: number; readonly foam_mL: number; readonly foam_density: number; readonly base_mL: number }

/** Puts levels of liquid, foam and ice into the glass's slots, or from `levels` on. @source none - geometry */
export function level(ctx: Context, glass: GlassBuilt, contents: Contents, ice: IceBuilt | null, iceMass: number, levels = glass.levels): void {
  const { profile, holding, brim_mL } = glass;
  const cut = ice ? cutOf(ice.kind) : 0, solid = ice ? solidShare(ice.kind) : 1, count = ice ? Math.max(ice.count, 1) : 0, size = ice?.size_mm ?? 0;
  // a glass that holds more is wider all the way up
  const wider: [number, number][] = profile.map(([h, r]) => [h, r]);
  ctx.ops.push(({ s, x }) => {
    const f = Math.sqrt(x[holding]! / brim_mL);
    for (let i = 0; i < wider.length; i++) wider[i]![1] = profile[i]![1] * f;
    const m = iceMass >= 0 ? s[iceMass]! : 0;
    standInto(s, levels, wider, s[contents.base_mL]!, s[contents.liquid_mL]!, s[contents.density]!, s[contents.foam_mL]!, s[contents.foam_density]!, cut, m > 0 ? count : 0, m > 0 ? m / count : 0, cut === 2 ? size : 0, solid);
  });
}
