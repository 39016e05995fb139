import type { GlassReading } from '@washline/engine';
import { drawHandle, drawScale } from '../figures/handle.ts';
import type { Frame } from '../frame.ts';
import type { Pad } from '../pen/pad.ts';
import { radiusAt } from './profile.ts';
import { heightY } from './stand.ts';

/** How tall a level is to a pointer, and to a finger, px. */
const TALL = { wide: 24, phone: 45 };

/** Every level in the glass can be taken hold of between its walls; the triangle at the end of the washline takes the whole drink. */
export function drawHandles(pad: Pad, glass: GlassReading, frame: Frame): void {
  const { stand } = frame, tall = frame.phone ? TALL.phone : TALL.wide, perPx = 1 / stand.scale;
  for (const [i, layer] of glass.layers.entries()) {
    if (layer.to_mm <= layer.from_mm) continue;
    const r = radiusAt(glass.profile, layer.to_mm) * stand.scale;
    drawHandle(pad, { id: `layer:${i}`, within: 'glass', name: layer.name, value: layer.to_mm, unit: 'mm', perPx }, { y: heightY(stand, layer.to_mm), from: stand.axis - r, to: stand.axis + r, tall });
  }
  if (frame.washline !== null) drawScale(pad, glass.washline_mm, perPx, { x: frame.edge - 8, y: frame.washline - 6, tall: frame.phone ? TALL.phone : 30 });
}
