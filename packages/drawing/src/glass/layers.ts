import type { GlassReading, Layer } from '@washline/engine';
import type { Pad } from '../pen/pad.ts';
import { polygon, type Point, type Step } from '../pen/path.ts';
import { tint, type Scheme } from '../pen/tint.ts';
import { shown, volumeShown } from '../pen/numbers.ts';
import { words } from '../words.ts';
import { radiusAt, smooth } from './profile.ts';
import { heightY, type Stand } from './stand.ts';
import type { HatchKey } from '../shapes.ts';

/** The liquid between two heights, as the glass gives it room. */
export function slab(glass: Pick<GlassReading, 'profile'>, stand: Stand, from_mm: number, to_mm: number): Step[] {
  const side = smooth(glass.profile, from_mm, to_mm).map(([h, r]) => [r * stand.scale, heightY(stand, h)] as const);
  const right: Point[] = side.map(([x, y]) => [stand.axis + x, y]), left: Point[] = [...side].reverse().map(([x, y]) => [stand.axis - x, y]);
  return polygon([...right, ...left]);
}

export function hatchOf(layer: Pick<Layer, 'kind' | 'turbidity'>): HatchKey | undefined {
  if (layer.kind === 'foam') return 'foam';
  if (layer.kind === 'gel') return 'gel';
  return layer.turbidity >= 1 ? 'cloudy' : undefined;
}

/** `slush`: the drink has ice of its own, so that the liquid that was poured first is drawn as one full of it. */
export function drawLayers(pad: Pad, glass: GlassReading, stand: Stand, scheme: Scheme, slush = false): void {
  const full = slush ? glass.layers.findIndex((layer) => layer.kind === 'liquid') : -1;
  for (const [i, layer] of glass.layers.entries()) {
    if (layer.to_mm <= layer.from_mm) continue;
    const from = i === 0 ? Math.min(layer.from_mm, 0) : layer.from_mm;
    pad.open({ id: `layer:${i}`, within: 'glass', role: 'layer', layer: layer.name, name: words('aloud.layer', { name: layer.name, kind: layer.kind, from: shown(layer.from_mm, 1), to: shown(layer.to_mm, 1), ml: volumeShown(layer.mL) }) });
    const fill = tint(layer.colour, { at: 'glass', scheme, foam: layer.kind === 'foam', turbidity: layer.turbidity, strength: layer.strength });
    pad.path('fill', slab(glass, stand, from, layer.to_mm), { fill, hatch: i === full ? 'ice' : hatchOf(layer) });
  }
}

/** Level lines inside the glass, under the ice; the washline itself is drawn last. */
export function drawLevels(pad: Pad, glass: GlassReading, stand: Stand): void {
  for (const layer of glass.layers) {
    if (layer.to_mm <= layer.from_mm || Math.abs(layer.to_mm - glass.washline_mm) < 0.05) continue;
    const r = (smooth(glass.profile, 0, layer.to_mm).at(-1)?.[1] ?? radiusAt(glass.profile, layer.to_mm)) * stand.scale, y = heightY(stand, layer.to_mm);
    pad.line('level', stand.axis - r, y, stand.axis + r, y);
  }
}
