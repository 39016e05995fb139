import type { GlassReading } from '@washline/engine';
import { drawFilled } from '../glass/filled.ts';
import { brimHeight, outerSize, smooth } from '../glass/profile.ts';
import { standAt } from '../glass/stand.ts';
import { Pad } from '../pen/pad.ts';
import { polygon, type Step } from '../pen/path.ts';
import { tint, type Scheme } from '../pen/tint.ts';
import { shown } from '../pen/numbers.ts';
import { drawStirringIce, gasHatch } from '../prep/upstream.ts';
import { boxOf, drawVessel, levelOf, vesselFor, type VesselKind } from '../prep/vessel.ts';
import type { Drawing } from '../shapes.ts';
import { words } from '../words.ts';

/** A vessel of the bench and what is in it after a step. */
export interface FilmVessel {
  readonly vessel: VesselKind;
  /** the most it has to take through all steps, mL: it stays the same vessel */
  readonly room_mL: number;
  /** liquid at 20 °C, mL, and ice in it, g */
  readonly mL: number; readonly ice_g: number;
  readonly colour: string; readonly turbidity: number; readonly strength: number | null;
  /** gauge pressure of the gas over it, bar; null where there is none */
  readonly bar: number | null;
  readonly frozen: boolean; readonly set: boolean;
}
export type FilmStand = { readonly kind: 'glass'; readonly glass: GlassReading; readonly slush?: boolean } | ({ readonly kind: 'vessel' } & FilmVessel);

export interface FilmOptions {
  readonly width: number; readonly height: number; readonly scheme: Scheme;
  /** px: the vessel stands left of `split`, between `top` and `foot` */
  readonly split: number; readonly top: number; readonly foot: number;
  /** px: where the level may lie, so that there is room over and under it */
  readonly high: number; readonly low: number;
  /** the step's time and what is gone of it, s; null where it has none */
  readonly time: { readonly seconds: number; readonly gone: number } | null;
}

/** The rule of the time: where it lies, where its triangle stands, px. `level`: it is the level of what is drawn. */
export interface FilmRule { readonly y: number; readonly from: number; readonly to: number; readonly at: number; readonly level: boolean }

/** Marks of the rule by how long it is, s: up to, small, large. */
const MARKS: readonly (readonly [upTo: number, small: number, large: number])[] = [
  [40, 1, 5], [180, 5, 30], [360, 10, 60], [2400, 60, 300], [10_800, 300, 1800], [57_600, 1800, 7200], [172_800, 3600, 14_400], [1_209_600, 21_600, 86_400], [Infinity, 86_400, 604_800],
];

/** A vessel as large as its room allows, filled to its level; the level runs on to the right as the rule of the time. */
export function drawFilm(stand: FilmStand | null, options: FilmOptions): { readonly drawing: Drawing; readonly rule: FilmRule } {
  const pad = new Pad(), { width, height, split, scheme } = options;
  const put = stand === null ? null : placed(stand, options);
  const y = put?.y ?? (options.high + options.low) / 2, level = put !== null;
  if (put !== null && stand !== null) {
    if (scheme === 'light' && width >= 700) drawNet(pad, put, options);
    if (stand.kind === 'glass') drawGlass(pad, stand, put, scheme); else drawBench(pad, stand, put, scheme);
  }
  const narrow = width < 700, gap = narrow ? 8 : 72, edge = narrow ? 14 : 46;
  const from = split + gap, to = width - edge, time = options.time, share = time === null ? 0 : Math.min(1, Math.max(0, time.gone / time.seconds)), at = from + (to - from) * share;
  pad.open({ id: 'film-level', within: null, role: 'rule' });
  if (put !== null) {
    pad.line('washline', 0, y, put.left, y);
    pad.line('washline', put.inner[0], y, put.inner[1], y);
    pad.line('washline', put.right, y, width, y);
  } else if (time !== null) pad.line('level', from, y, to, y, { width: 2 });
  if (time !== null) drawTime(pad, { y, from, to, at, level }, time.seconds, narrow);
  return { drawing: pad.finish(width, height, put?.k ?? 1, level ? y : null, put?.axis ?? 0), rule: { y, from, to, at, level } };
}

interface Put { readonly k: number; readonly axis: number; readonly table: number; readonly y: number; readonly brim: number; /** outer edges and inner walls at the level, px */ readonly left: number; readonly right: number; readonly inner: readonly [number, number] }

/** The largest scale at which the vessel has room and its level lies where the words leave it. */
function placed(stand: FilmStand, { width, split, top, foot, high, low }: FilmOptions): Put {
  const body = stand.kind === 'glass' ? glassBody(stand.glass) : vesselBody(stand);
  const above = body.height - body.floor - body.level, under = body.floor + body.level;
  const margin = width < 700 ? 14 : 60, breadth = split - margin * 0.7;
  const k = Math.min(breadth / body.breadth, (foot - top) / body.height, (low - top) / Math.max(above, 0.1), (foot - high) / Math.max(under, 0.1));
  const y = Math.max(high, top + above * k, Math.min(low, foot - under * k)), axis = margin * 0.35 + body.left * k + Math.max(0, (breadth - body.breadth * k) / 2);
  return { k, axis, y, table: y + under * k, brim: y - (body.brim - body.level) * k, left: axis - (body.at + body.wall) * k, right: axis + (body.at + body.wall) * k, inner: [axis - body.at * k, axis + body.at * k] };
}

/** A body in mm: height over all, floor over the table, level and brim over the floor, breadth with handles and what of it lies left of the axis, radius at the level. */
interface Body { readonly height: number; readonly floor: number; readonly level: number; readonly brim: number; readonly breadth: number; readonly left: number; readonly at: number; readonly wall: number }

function glassBody(glass: GlassReading): Body {
  const outer = outerSize(glass), brim = brimHeight(glass.profile), rise = Math.max(glass.garnish.length > 0 ? 26 : 6, glass.top_mm - brim + 4, glass.washline_mm - brim + 4);
  return { height: outer.floor + brim + rise, floor: outer.floor, level: glass.washline_mm, brim, breadth: 2 * outer.radius + 8, left: outer.radius + 4, at: smooth(glass.profile, 0, Math.min(brim, glass.washline_mm)).at(-1)?.[1] ?? 0, wall: glass.wall_mm };
}

function vesselBody(one: FilmVessel): Body {
  const vessel = vesselFor(one.vessel, one.room_mL), brim = brimHeight(vessel.profile), level = levelOf(vessel, filledBy(one)), box = boxOf(vessel, 0, 0, 1);
  // a lever rises over the head
  return { height: box.height + (one.vessel === 'siphon' ? 20 : 4), floor: vessel.base, level, brim, breadth: box.width + 12, left: -box.x + 6, at: smooth(vessel.profile, 0, level, 4).at(-1)?.[1] ?? 0, wall: vessel.wall };
}

/** Ice and liquid as they stand together, mL. */
function filledBy({ mL, ice_g }: FilmVessel): number { return mL + ice_g / 0.917; }

function drawNet(pad: Pad, put: Put, { split, height }: FilmOptions): void {
  pad.open({ id: 'ground', within: null, role: 'ground' });
  const step = 5 * put.k, fine: Step[] = [], coarse: Step[] = [];
  if (step < 4) return;
  const to = (i: number, steps: Step[]): void => { (i % 2 === 0 ? coarse : fine).push(...steps); };
  for (let i = Math.ceil(-put.axis / step); put.axis + i * step < split; i += 1) to(i, [['M', put.axis + i * step, 0], ['L', put.axis + i * step, height]]);
  for (let i = Math.ceil(-put.table / step); put.table + i * step < height; i += 1) to(i, [['M', 0, put.table + i * step], ['L', split, put.table + i * step]]);
  pad.path('net', fine, { stroke: 'ground', width: 0.6 });
  pad.path('net', coarse, { stroke: 'ground2', width: 0.7 });
}

function drawGlass(pad: Pad, { glass, slush }: Extract<FilmStand, { kind: 'glass' }>, put: Put, scheme: Scheme): void {
  const at = standAt(glass, put.k, put.axis, put.table);
  pad.open({ id: 'glass', within: null, role: 'glass', name: words('aloud.drink', { drink: '', glass: glass.name }).replace(/^\W+/, ''), washline_mm: glass.washline_mm });
  drawFilled(pad, glass, at, scheme, slush);
}

function drawBench(pad: Pad, one: FilmVessel, put: Put, scheme: Scheme): void {
  const vessel = vesselFor(one.vessel, one.room_mL);
  pad.open({ id: 'bench', within: null, role: 'vessel', name: words(one.ice_g > 0 ? 'film.vessel.ice' : 'film.vessel', { vessel: words(`vessel.${one.vessel}`, {}), ml: shown(one.mL, 0), g: shown(one.ice_g, 0) }) });
  const fill = tint(one.colour, { at: 'glass', scheme, turbidity: one.turbidity, strength: one.strength });
  const drawn = drawVessel(pad, vessel, put.axis, put.table, put.k, { mL: filledBy(one), fill, hatch: one.set ? 'gel' : one.frozen ? 'ice' : one.turbidity >= 1 ? 'cloudy' : undefined, gas: one.bar === null ? undefined : gasHatch(one.bar) }, scheme, true);
  if (one.ice_g > 0) drawStirringIce(pad, { k: put.k, axis: put.axis, shelf: put.table, vessel }, drawn, scheme);
}

function drawTime(pad: Pad, rule: FilmRule, seconds: number, narrow: boolean): void {
  const { y, from, to, at } = rule, [, small, large] = MARKS.find(([upTo]) => seconds <= upTo) ?? [0, 1, 5], ticks: Step[] = [], long: Step[] = [];
  for (let i = 0; i * small <= seconds + 1e-6; i += 1) {
    const x = from + ((to - from) * i * small) / seconds, main = Math.round((i * small) / large) * large === i * small;
    (main ? long : ticks).push(['M', x, y], ['L', x, y + (main ? 22 : 12)]);
  }
  pad.path('bar', ticks, { width: 1 });
  pad.path('bar', long, { width: 1.5 });
  if (at > from) pad.path('fill', polygon([[from, y], [at, y], [at, y + 8], [from, y + 8]]), { fill: 'ink' });
  const w = narrow ? 10 : 17, h = narrow ? 18 : 28;
  pad.path('hand', polygon([[at, y - 2], [at - w, y - 2 - h], [at + w, y - 2 - h]]), { fill: 'ink' });
  pad.line('leader', at, y + 26, at, y + (narrow ? 38 : 48), { stroke: 'ink', width: 1.5 });
}
