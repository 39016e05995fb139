import { heightOf, stand } from '../glass/index.ts';
import type { Compiled } from '../program/compile.ts';
import { colourOf } from './colour.ts';
import type { Figure, GlassIce, GlassReading, Layer } from './types.ts';

type Look = (of: string, name: string) => number;

/** The serving glass with its layers and ice, in millimetres from the floor. @source none - geometry */
export function glassReading(c: Compiled, number: Look, figure: (of: string, name: string) => Figure): GlassReading {
  const b = c.build!, { shape, profile } = b.glass;
  const liquid = number('glass', 'liquid_mm'), level = number('glass', 'washline_mm');
  const layers: Layer[] = [];
  const parts = b.layers.map((l, k) => ({ of: `layer:${k}`, name: l.name, kind: l.kind }));
  // one thing alone is called by its name, a mix by the drink's
  const poured = b.puts.filter((p) => !b.layers.some((l) => l.at === p.measure.path) && p.source.form !== 'ice');
  const base = { of: 'layer:base', name: (poured.length === 1 ? poured[0]!.measure.thing.words : c.ctx.document.name) || 'drink', kind: 'liquid' as const };
  const unset = parts.filter((p) => p.kind === 'foam' && !(number(p.of, 'stands') > 0)).reduce((t, p) => t + number(p.of, 'mL'), 0);
  const look = (p: { of: string; name: string; kind: Layer['kind'] }, from_mm: number, to_mm: number): Layer => ({
    name: p.name, kind: p.kind, from_mm, to_mm, mL: number(p.of, 'mL') + (p.of === 'layer:base' ? unset : 0),
    colour: colourOf(number(p.of, 'tint_r'), number(p.of, 'tint_g'), number(p.of, 'tint_b'), 2), turbidity: Math.min(3, number(p.of, 'turbid')),
    strength: Number.isFinite(number(p.of, 'strength')) ? number(p.of, 'strength') : null,
  });
  // gels at the floor, then the drink, then what was floated in order, then foam
  // (a foam that did not set has run into the drink)
  const gels = parts.filter((p) => p.kind === 'gel'), floats = parts.filter((p) => p.kind === 'liquid'), foams = parts.filter((p) => p.kind === 'foam' && number(p.of, 'stands') > 0);
  let mL = 0, from = 0;
  for (const p of gels) { mL += number(p.of, 'mL'); const to = heightOf(profile, mL); layers.push(look(p, from, to)); from = to; }
  const wet = [base, ...floats].filter((p) => number(p.of, 'mL') > 0);
  const all = wet.reduce((t, p) => t + number(p.of, 'mL'), 0);
  let below = 0;
  for (const p of wet) {
    below += number(p.of, 'mL');
    // with ice among them the layers share the height of the liquid as they share its volume
    const to = p === wet[wet.length - 1] ? liquid : b.glassIce ? from + (liquid - from) * (number(p.of, 'mL') / (all - below + number(p.of, 'mL'))) : heightOf(profile, mL + below);
    layers.push(look(p, from, to));
    from = to;
  }
  const foamAll = foams.reduce((t, p) => t + number(p.of, 'mL'), 0);
  from = liquid;
  for (const p of foams) { const to = from + (level - liquid) * (number(p.of, 'mL') / foamAll); if (to > from) layers.push(look(p, from, to)); from = to; }
  const ice: GlassIce[] = b.glassIce && number('glass', 'ice_g') > 0
    ? [{ kind: b.glassIce.kind, count: Math.max(1, b.glassIce.count), mass_g: number('glass', 'ice_g'), size_mm: b.glassIce.size_mm, clear: b.glassIce.clear, from_mm: number('glass', 'ice_from_mm'), to_mm: number('glass', 'ice_to_mm') }] : [];
  const washline = figure('glass', 'washline_mm');
  return {
    name: c.ctx.document.head.glass?.value ?? shape.name.toLowerCase(), brim_mL: b.glass.brim_mL, washline_mm: washline.value, liquid_mm: liquid, top_mm: number('glass', 'top_mm'), profile,
    base_mm: shape.base_mm, wall_mm: shape.wall_mm, stem_mm: shape.stem_mm, foot_mm: shape.foot_mm,
    layers, ice, garnish: b.garnish.map((g) => g.thing.words), washline, ...wouldStand(c, parts, number),
  };
}

type Part = { readonly of: string; readonly name: string; readonly kind: Layer['kind'] };

/** Where the washline would be had the foam set: the same glass and ice, the foam at its usual overrun. */
function wouldStand(c: Compiled, parts: readonly Part[], number: Look): Pick<GlassReading, 'unset'> {
  const failed = parts.find((p) => p.kind === 'foam' && !(number(p.of, 'stands') > 0));
  const ice = c.build!.glassIce;
  if (!failed) return {};
  const mL = number(failed.of, 'mL'), liquid = number('layer:base', 'mL'), swells = 1 + USUAL_OVERRUN / 100;
  const { level_mm } = stand(c.build!.glass.profile, {
    liquid_mL: liquid, liquid_density: number('layer:base', 'density') / 1000, foam_mL: mL * swells, foam_density: number(failed.of, 'density') / 1000 / swells,
    ...(ice && number('glass', 'ice_g') > 0 ? { ice: { kind: ice.kind, count: Math.max(1, ice.count), mass_g: number('glass', 'ice_g') / Math.max(1, ice.count), ...(ice.size_mm > 0 ? { size_mm: ice.size_mm } : {}) } } : {}),
  });
  return { unset: { name: failed.name, washline_mm: level_mm } };
}
/** A gelatin foam's usual overrun, per cent. @source common-practice */
const USUAL_OVERRUN = 300;

/**
 * The glass at a later moment: levels, ice and foam as they are then. What is liquid is told as one, by its strength then, where it was one when poured; where it was
 * poured in layers their heights shrink and grow together and no strength is told of them, since the later drink is stirred together in thought.
 * @source none - geometry
 */
export function glassThen(poured: GlassReading, of: string, number: Look, figure: (of: string, name: string) => Figure): GlassReading {
  const liquid = number(of, 'liquid_mm'), level = number(of, 'washline_mm'), washline = figure(of, 'washline_mm');
  const wet = poured.layers.filter((l) => l.kind === 'liquid'), floor = wet[0]?.from_mm ?? 0, was = poured.liquid_mm - floor, grows = was > 0 ? (liquid - floor) / was : 1;
  const strength = number(of, 'strength'), mL = number(of, 'volume'), drained = number(of, 'drained'), foam = number(of, 'foam_volume'), foamWas = poured.layers.reduce((t, l) => t + (l.kind === 'foam' ? l.mL : 0), 0);
  const layers = poured.layers.flatMap((l): Layer[] => {
    if (l.kind === 'gel') return [l];
    if (l.kind === 'foam') {
      const share = foamWas > 0 && foam > 0 ? foam / foamWas : 0, tall = poured.washline_mm - poured.liquid_mm;
      const from = liquid + (tall > 0 ? ((l.from_mm - poured.liquid_mm) / tall) * (level - liquid) : 0), to = liquid + (tall > 0 ? ((l.to_mm - poured.liquid_mm) / tall) * (level - liquid) : 0);
      return share > 0 && to - from > THIN_MM ? [{ ...l, from_mm: from, to_mm: to, mL: l.mL * share }] : [];
    }
    const alone = wet.length === 1;
    return [{ ...l, from_mm: floor + (l.from_mm - floor) * grows, to_mm: floor + (l.to_mm - floor) * grows, mL: alone ? mL + (drained > 0 ? drained : 0) : l.mL * grows, strength: alone && Number.isFinite(strength) ? strength : null }];
  });
  const left = number(of, 'ice_left');
  const ice = left > 0.05 ? poured.ice.map((i) => ({ ...i, mass_g: left, from_mm: number(of, 'ice_from_mm'), to_mm: number(of, 'ice_to_mm'), size_mm: i.size_mm === null ? null : i.size_mm * Math.cbrt(left / i.mass_g) })) : [];
  return { ...poured, washline_mm: washline.value, liquid_mm: liquid, top_mm: number(of, 'top_mm'), layers, ice, washline };
}
/** A foam this thin is not drawn, mm. */
const THIN_MM = 0.2;
