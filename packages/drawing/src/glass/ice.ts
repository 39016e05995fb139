import type { GlassIce, GlassReading } from '@washline/engine';
import type { Pad } from '../pen/pad.ts';
import { piece, polygon, type Point, type Step } from '../pen/path.ts';
import { iceTint, type Scheme } from '../pen/tint.ts';
import { shown } from '../pen/numbers.ts';
import { words } from '../words.ts';
import { radiusAt, slice } from './profile.ts';
import { heightY, type Stand } from './stand.ts';
import { iceWords } from './ice-words.ts';

interface Block { readonly x: number; readonly y: number; readonly width: number; readonly height: number; readonly turn: number }

export function drawIce(pad: Pad, glass: GlassReading, stand: Stand, scheme: Scheme): void {
  for (const [i, ice] of glass.ice.entries()) {
    if (ice.to_mm <= ice.from_mm) continue;
    pad.open({ id: `ice:${i}`, within: 'glass', role: 'ice', name: words('aloud.ice', { what: iceWords(ice), g: shown(ice.mass_g, 0), from: shown(ice.from_mm, 1), to: shown(ice.to_mm, 1) }) });
    const fill = iceTint(scheme, 'glass');
    if (isLoose(ice)) { drawLoose(pad, glass, ice, stand, fill); continue; }
    if (ice.kind === 'sphere') {
      const r = ((ice.to_mm - ice.from_mm) / 2) * stand.scale, y = heightY(stand, (ice.from_mm + ice.to_mm) / 2);
      pad.circle('ice', stand.axis, y, r, { fill, hatch: ice.clear ? 'ice-clear' : 'ice' });
      continue;
    }
    for (const block of blocks(glass, ice, stand)) drawBlock(pad, block, ice.clear, fill);
  }
}

export function isLoose(ice: Pick<GlassIce, 'kind'>): boolean { return ice.kind === 'crushed' || ice.kind === 'pebble' || ice.kind === 'shaved' || ice.kind === 'cracked'; }

/** Grains from the underside up to the top; over the level they stand as a heap. */
function drawLoose(pad: Pad, glass: GlassReading, ice: GlassIce, stand: Stand, fill: `#${string}`): void {
  const level = Math.min(ice.to_mm, Math.max(ice.from_mm, glass.liquid_mm));
  const side = slice(glass.profile, ice.from_mm, level).map(([h, r]) => [r * stand.scale, heightY(stand, h)] as const);
  const right: Point[] = side.map(([x, y]) => [stand.axis + x, y]), left: Point[] = [...side].reverse().map(([x, y]) => [stand.axis - x, y]);
  const body: Step[] = polygon([...right, ...left], false);
  const [ex, ey] = left[0] ?? [stand.axis, stand.floor];
  const top = heightY(stand, ice.to_mm);
  const rise = ey - top;
  const heap: Step[] = [['M', ex, ey], ['Q', ex + 4, ey - rise * 1.6, stand.axis, top], ['Q', 2 * stand.axis - ex - 4, ey - rise * 1.6, 2 * stand.axis - ex, ey], ['Z']];
  pad.path('fill', [...body, ['Z']], { hatch: 'crushed' });
  if (rise > 1) pad.path('fill', heap, { fill, hatch: 'crushed', stroke: 'ink3', width: 0.6 });
}

/** The pieces that the cut through the axis shows: whole pieces of true size, in level rows, none through a wall or another. */
export function blocks(glass: GlassReading, ice: GlassIce, stand: Stand): Block[] {
  const { scale, axis } = stand;
  const height = ice.to_mm - ice.from_mm;
  const single = ice.count <= 1 || ice.kind === 'spear' || ice.kind === 'block';
  const size = ice.size_mm ?? 30;
  if (single && ice.count <= 1) {
    const volume = ice.mass_g / 0.917;                                                     // mL; ice at its freezing point
    const across = ice.size_mm !== null && height <= size * 1.05 ? size : Math.sqrt((volume * 1000) / Math.max(height, 1));
    const width = Math.min(across, 2 * radiusAt(glass.profile, ice.from_mm));
    return [{ x: axis - (width * scale) / 2, y: heightY(stand, ice.to_mm), width: width * scale, height: height * scale, turn: 0 }];
  }
  const rows = Math.max(1, Math.round(height / size));
  const out: Block[] = [];
  let left = Math.max(1, Math.round(ice.count));
  for (let row = 0; row < rows && left > 0; row += 1) {
    const bottom = ice.from_mm + (row * height) / rows;
    const room = 2 * Math.min(radiusAt(glass.profile, Math.max(0, bottom)), radiusAt(glass.profile, bottom + size)) - 2;
    const edge = Math.min(size, height / rows, room);
    const fits = Math.max(1, Math.min(left, Math.floor(room / (edge * 1.06))));
    const pitch = (room - fits * edge) / (fits + 1);
    for (let i = 0; i < fits; i += 1) {
      const tilt = fits === 1 && rows === 1 ? 0 : ((((row * 7 + i * 5) % 9) - 4) / 4) * Math.min(7, pitch * 1.2 + 1);
      const shrink = 1 - Math.abs(tilt) / 90;
      const w = edge * shrink * scale;
      const x = axis - (room / 2) * scale + (pitch + i * (edge + pitch)) * scale + (edge * scale - w) / 2;
      out.push({ x, y: heightY(stand, bottom + edge) + (edge * scale - w) / 2, width: w, height: w, turn: tilt });
    }
    left -= fits;
  }
  return out;
}

export function drawBlock(pad: Pad, b: Block, clear: boolean, fill: `#${string}`, up = false): void {
  const steps = piece(b.x, b.y, b.width, b.height, Math.min(10, b.width * 0.1 + 1.5), b.turn);
  const big = Math.min(b.width, b.height) > 60;
  pad.path('ice', steps, { fill, hatch: clear && big ? 'ice-clear' : 'ice', ...(up ? { stroke: 'ink2', width: 0.8 } : {}) });
  if (clear || up) return;
  // Cloudy ice: dots gather in the middle, the outer eighth stays clear, for ice freezes from outside.
  const dots: Step[] = [];
  const n = Math.min(160, Math.round((b.width * b.height) / 50));
  for (let i = 0; i < n; i += 1) {
    const angle = i * 2.39996, reach = Math.sqrt((i + 0.5) / n) ** 1.5 * 0.38;
    const x = b.x + b.width / 2 + Math.cos(angle) * reach * b.width, y = b.y + b.height / 2 + Math.sin(angle) * reach * b.height;
    dots.push(['M', x, y], ['L', x + 0.01, y]);
  }
  pad.path('dot', dots, { fill: undefined, stroke: 'ink', width: 1.8, round: true });
}
