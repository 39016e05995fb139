import type { GlassReading } from '@washline/engine';
import type { Pad } from '../pen/pad.ts';
import type { Scheme } from '../pen/tint.ts';
import { drawGarnish, drawRim } from './garnish.ts';
import { drawIce } from './ice.ts';
import { drawLayers, drawLevels } from './layers.ts';
import type { Stand } from './stand.ts';
import { drawWall } from './wall.ts';

/** A glass with what stands in it, from the back to the front, within the part `glass` that was opened for it; `slush` as in `drawLayers`. */
export function drawFilled(pad: Pad, glass: GlassReading, stand: Stand, scheme: Scheme, slush = false): void {
  drawGarnish(pad, glass, stand, scheme);
  drawLayers(pad, glass, stand, scheme, slush);
  pad.open({ id: 'levels', within: 'glass', role: 'wall' });
  drawLevels(pad, glass, stand);
  drawIce(pad, glass, stand, scheme);
  pad.open({ id: 'wall', within: 'glass', role: 'wall' });
  drawWall(pad, glass, stand, scheme);
  drawRim(pad, glass, stand);
}
