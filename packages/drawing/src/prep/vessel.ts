import type { Box, Pad } from '../pen/pad.ts';
import { line, polygon, rect, type Point, type Step } from '../pen/path.ts';
import { brimHeight, radiusAt, smooth, volumeBetween, type Profile } from '../glass/profile.ts';
import type { Scheme } from '../pen/tint.ts';
import type { HatchKey } from '../shapes.ts';
import vessels from './vessels.json' with { type: 'json' };

export type VesselKind = 'jar' | 'bottle' | 'pan' | 'siphon' | 'tray' | 'freezer box' | 'stirring glass' | 'shaker';
export interface Vessel { readonly kind: VesselKind; readonly mL: number; readonly profile: Profile; readonly wall: number; readonly base: number; readonly steel: boolean }

interface Row { readonly mL: number; readonly profile: number[][]; readonly wall: number; readonly base: number; readonly steel?: boolean }

/** The smallest vessel of a kind that takes a volume with a little room. */
export function vesselFor(kind: VesselKind, mL: number): Vessel {
  const rows: readonly Row[] = vessels[kind];
  const row = rows.find((r) => r.mL * 0.88 >= mL) ?? rows.at(-1);
  if (row === undefined) throw new Error(`no vessel of kind ${kind}`);
  return { kind, mL: row.mL, profile: row.profile as unknown as Profile, wall: row.wall, base: row.base, steel: row.steel === true };
}

/** Height at which a volume stands, mm from the inner floor; a tray and a freezer box are as deep as 1.5 times their half width. */
export function levelOf(vessel: Vessel, mL: number): number {
  const brim = brimHeight(vessel.profile);
  if (vessel.kind === 'tray' || vessel.kind === 'freezer box') return Math.min(brim, (mL / vessel.mL) * brim);
  let low = 0, high = brim;
  for (let i = 0; i < 24; i += 1) { const middle = (low + high) / 2; if (volumeBetween(vessel.profile, 0, middle) < mL) low = middle; else high = middle; }
  return high;
}

/** What a profile reaches in mm: asked again and again while a place is looked for. */
const reaches = new WeakMap<Vessel['profile'], readonly [radius: number, height: number]>();
function reachOf({ profile }: Vessel): readonly [number, number] {
  let reach = reaches.get(profile);
  if (reach === undefined) reaches.set(profile, reach = [profile.reduce((most, [, r]) => Math.max(most, r), 0), brimHeight(profile)]);
  return reach;
}

/** Size over all in px at a scale: breadth without handle, height with head. */
export function vesselSize(vessel: Vessel, k: number): { readonly width: number; readonly height: number; readonly above: number } {
  const [widest, brim] = reachOf(vessel);
  const above = vessel.kind === 'siphon' ? 40 * k : vessel.kind === 'bottle' ? 10 * k : 0;
  return { width: 2 * (widest + vessel.wall) * k, height: (brim + vessel.base) * k + above, above };
}

/** What a vessel takes up, with its handle, its lever and its bail. */
export function boxOf(vessel: Vessel, axis: number, shelf: number, k: number): Box {
  const size = vesselSize(vessel, k), handle = vessel.kind === 'pan' ? 64 * k : 0, rise = vessel.kind === 'pan' ? 14 * k : 0, lever = vessel.kind === 'siphon' ? 12 * k : 0;
  return { x: axis - size.width / 2 - lever, y: shelf - size.height - rise, width: size.width + handle + lever, height: size.height + rise };
}

export interface Filled { readonly mL: number | null; readonly fill: `#${string}`; readonly hatch?: HatchKey | undefined; readonly gas?: HatchKey | undefined }
export interface Drawn { readonly lipY: number; readonly lipLeft: number; readonly lipRight: number; readonly levelY: number; /** mL that a px of its level is; 0 where it is empty */ readonly mLPerPx: number; readonly wall: number; readonly nozzle: Point }

/** A vessel in section on its shelf, filled to its level. `shelf` is the y it stands on. */
export function drawVessel(pad: Pad, vessel: Vessel, axis: number, shelf: number, k: number, filled: Filled, scheme: Scheme, strong = false): Drawn {
  const floor = shelf - vessel.base * k, brim = brimHeight(vessel.profile), y = (h: number): number => floor - h * k;
  const wall = Math.max(vessel.wall * k, vessel.steel ? 2.4 : 2);
  const level = filled.mL === null ? 0 : levelOf(vessel, filled.mL);
  const stroke = strong ? 'ink' : 'ink2';
  const inside = (from: number, to: number): Step[] => {
    const side = smooth(vessel.profile, from, to, 4).map(([h, r]) => [r * k, y(h)] as const);
    return polygon([...side.map(([x, v]) => [axis + x, v] as Point), ...[...side].reverse().map(([x, v]) => [axis - x, v] as Point)]);
  };
  if (filled.gas !== undefined) pad.path('fill', inside(level, brim), { fill: scheme === 'dark' ? '#26332f' : '#e4ebe8', hatch: filled.gas });
  if (level > 0) {
    pad.path('fill', inside(0, level), { fill: filled.fill, hatch: filled.hatch });
    const r = radiusAt(vessel.profile, level) * k;
    pad.line('level', axis - r, y(level), axis + r, y(level), { stroke, width: 1 });
    if (r > 14) { pad.line('level', axis + r * 0.42 - 6, y(level) + 3.3, axis + r * 0.42 + 6, y(level) + 3.3, { stroke: 'ink2', width: 0.8 }); pad.line('level', axis + r * 0.42 - 3, y(level) + 6.1, axis + r * 0.42 + 3, y(level) + 6.1, { stroke: 'ink2', width: 0.8 }); }
  }
  const inner = smooth(vessel.profile, 0, brim, 4).map(([h, r]) => [r * k, y(h)] as const);
  if (vessel.steel) {
    const side = inner.map(([x, v]) => [x + wall / 2, v] as const), foot = floor + wall / 2 - 0.4;
    const points = [...side].reverse().map(([x, v]) => [axis - x, v] as Point);
    points[points.length - 1] = [axis - (side[0]?.[0] ?? 0), foot];
    const right: Point[] = side.map(([x, v]) => [axis + x, v] as Point);
    right[0] = [axis + (side[0]?.[0] ?? 0), foot];
    pad.path('wall', polygon([...points, ...right], false), { stroke, width: wall });
  } else {
    const outer = inner.map(([x, v]) => [x + wall, v] as const);
    const base: Point = [outer[0]?.[0] ?? 0, shelf];
    const right: Point[] = [base, ...outer.slice(1)].map(([x, v]) => [axis + x, v]), left: Point[] = [base, ...outer.slice(1)].map(([x, v]) => [axis - x, v]);
    const steps = polygon([...left.reverse(), ...right, ...[...inner].reverse().map(([x, v]) => [axis + x, v] as Point), ...inner.map(([x, v]) => [axis - x, v] as Point)]);
    pad.path('fill', steps, { fill: 'wall-up', hatch: 'glass' });
    pad.path('wall', steps, scheme === 'dark' ? { stroke: 'ink3', width: 0.8 } : { stroke, width: 1 });
  }
  const lipR = radiusAt(vessel.profile, brim) * k + wall;
  const nozzle = vessel.kind === 'siphon' ? drawHead(pad, axis, y(brim), lipR, k, stroke, filled.gas !== undefined) : [axis + lipR, y(brim)] as Point;
  if (vessel.kind === 'pan') {
    const hy = y(brim) + 5 * k;
    pad.path('wall', line(axis + lipR - wall / 2, hy, axis + lipR + 62 * k, hy - 14 * k), { stroke, width: 6.4 });
    pad.path('wall', line(axis + lipR + 3, hy - 0.6, axis + lipR + 61 * k, hy - 13.8 * k), { stroke: 'paper', width: 4.2 });
  }
  if (vessel.kind === 'bottle') {
    const cap = Math.max(6, 13 * k), w = lipR * 2 + 3;
    pad.path('fill', rect(axis - w / 2, y(brim) - cap + 3, w, cap), { fill: 'paper', hatch: 'steel', stroke, width: 1 });
  }
  if (vessel.kind === 'tray') for (const side of [-1, 1]) pad.path('wall', line(axis + side * (lipR - wall / 2), y(brim), axis + side * (lipR + 4), y(brim)), { stroke, width: wall });
  const half = vesselSize(vessel, k).width / 2 + 5;
  pad.line('shelf', axis - half, shelf + 0.6, axis + half, shelf + 0.6, { stroke: 'ink2', width: 1 });
  return { lipY: y(brim), lipLeft: axis - lipR, lipRight: axis + lipR, levelY: y(level), mLPerPx: level > 0 ? (Math.PI * radiusAt(vessel.profile, level) ** 2) / k / 1000 : 0, wall, nozzle };
}

/** The head of a siphon, closed: steel cut, lever, nozzle to the right. */
function drawHead(pad: Pad, axis: number, top: number, neck: number, k: number, stroke: 'ink' | 'ink2', charged: boolean): Point {
  const m = k / 0.84;
  const block = (x: number, y: number, w: number, h: number): void => pad.path('fill', rect(axis + x * m, top + y * m, w * m, h * m), { fill: 'paper', hatch: 'steel', stroke, width: 1 });
  if (charged) pad.path('fill', [['M', axis - 10 * m, top - 26 * m], ['L', axis - 21 * m, top - 26 * m], ['Q', axis - 25 * m, top - 26 * m, axis - 25 * m, top - 20 * m], ['Q', axis - 25 * m, top - 14 * m, axis - 21 * m, top - 14 * m], ['L', axis - 10 * m, top - 14 * m], ['Z']], { fill: 'paper', stroke, width: 1 });
  const w = Math.max(neck / m + 3, 17);
  block(-w, -12, 2 * w, 13);
  block(-10, -32, 20, 20.5);
  block(4, -38, 6, 6.5);
  pad.path('fill', rect(axis - 2.2 * m, top - 36 * m, 4.4 * m, 37 * m), { fill: 'paper', stroke: 'ink2', width: 0.8 });
  const lever: Step[] = [['M', axis + 7 * m, top - 38 * m], ['C', axis - 4 * m, top - 41 * m, axis - 15 * m, top - 44 * m, axis - 25 * m, top - 40 * m], ['C', axis - 34 * m, top - 36 * m, axis - 36 * m, top - 27 * m, axis - 37.4 * m, top - 10 * m], ['C', axis - 38 * m, top - 3 * m, axis - 40 * m, top + 1 * m, axis - 43 * m, top + 4 * m]];
  pad.path('hose', lever, { stroke, width: Math.max(3, 5.9 * m), round: true });
  pad.path('hose', lever, { stroke: 'paper', width: Math.max(1.4, 3.5 * m), round: true });
  pad.path('fill', rect(axis + 10 * m, top - 29 * m, 9 * m, 11 * m), { fill: 'wall', stroke, width: 1 });
  return [axis + 19 * m, top - 23.5 * m];
}
