import type { PrepReading } from '@washline/engine';
import type { Pad } from '../pen/pad.ts';
import { tint, type Scheme } from '../pen/tint.ts';
import type { HatchKey } from '../shapes.ts';
import type { Placed } from './board.ts';
import type { Drawn } from './vessel.ts';

/** Less room than this over the liquid, and a narrower mouth, show no cloth, px. */
const ROOM = 20, MOUTH = 13;

/** What lies in the cloth, as it is hatched: curd of a milk, set fat, broken gel, or something else that is wet. */
function lyingIn({ method, colour, cloth }: PrepReading): { readonly hatch: HatchKey; readonly colour: string } {
  if (cloth?.casein !== undefined) return { hatch: 'curd', colour: '#f3f0e2' };
  if (method === 'fat wash') return { hatch: 'fat', colour: '#f4eedb' };
  return /agar|gelatin/.test(method) ? { hatch: 'gel', colour } : { hatch: 'cloudy', colour };
}

/** A cloth hung into the mouth of its jar, with what stays in it to scale: a bowl of revolution, V = π r² h² / 2 d. */
export function drawCloth(pad: Pad, placed: Placed, drawn: Drawn, prep: PrepReading, scheme: Scheme): void {
  const { axis, k, vessel } = placed, { lipY: rim, levelY } = drawn;
  const r = (drawn.lipRight - drawn.lipLeft) / 2 - drawn.wall - 2, room = levelY - rim;
  if (vessel.kind !== 'jar' || room < ROOM || r < MOUTH) return;
  const depth = Math.min(room * 0.66, r * 1.15), bottom = rim + depth, thick = 3.4;
  const { hatch, colour } = lyingIn(prep), mm3 = (prep.cloth?.mass.value ?? 0) * 1000;
  const h = Math.min(depth - 2, Math.sqrt((2 * mm3 * (depth / k)) / (Math.PI * (r / k) ** 2)) * k), half = r * Math.sqrt(h / depth);
  pad.path('fill', [['M', axis - r, rim], ['Q', axis, bottom + depth, axis + r, rim], ['L', axis + r - thick, rim], ['Q', axis, bottom + depth - 2 * thick, axis - r + thick, rim], ['Z']], { fill: 'sheet', hatch: 'cloth' });
  if (h > 1.5) {
    const y = bottom - thick;
    pad.path('fill', [['M', axis - half, y - h], ['Q', axis, y + h, axis + half, y - h], ['Z']], { fill: tint(colour, { at: 'upstream', scheme, turbidity: 2 }), hatch, stroke: 'ink2', width: 0.8 });
  }
  for (const side of [-1, 1]) pad.line('level', axis + side * (r - thick), rim - 0.5, axis + side * (r + drawn.wall + 5), rim - 0.5, { stroke: 'ink2', width: 2.4 });
}

/** The sign of a cloth before its line: a small bag, as a jigger stands before what is carried. */
export function drawClothSign(pad: Pad, x: number, y: number, scheme: Scheme): void {
  const top = y - 11;
  pad.path('fill', [['M', x + 3.4, top + 4], ['Q', x + 8.5, top + 16, x + 13.6, top + 4], ['Z']], { fill: tint('#f3f0e2', { at: 'upstream', scheme, turbidity: 2 }) });
  pad.path('level', [['M', x, top], ['Q', x + 8.5, top + 25, x + 17, top]], { stroke: 'ink2', width: 1.6, dash: [2.2, 1.4] });
  pad.line('level', x - 1, top, x + 18, top, { stroke: 'ink2', width: 0.8 });
}
