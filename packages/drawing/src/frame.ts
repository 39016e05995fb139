import type { GlassReading } from '@washline/engine';
import type { Box } from './pen/pad.ts';
import { brimHeight, outerSize } from './glass/profile.ts';
import { heightY, scaleFor, standAt, type Stand } from './glass/stand.ts';

/** How the room of a drawing is shared out, px. */
export interface Frame {
  readonly width: number; readonly height: number;
  readonly phone: boolean;
  readonly stand: Stand;
  /** outer edges of the glass */
  readonly left: number; readonly right: number;
  readonly brim: number;
  /** y of the washline; null where the glass holds nothing that could be read */
  readonly washline: number | null;
  /** x at which shelves of figures end, and how long they are */
  readonly edge: number; readonly shelf: number;
  /** x of the column of dimensions */
  readonly dims: number;
  /** room kept for the words of a stop */
  readonly head: Box | null;
}

export interface FrameWish { readonly width: number; readonly height: number; readonly pxPerMm?: number | undefined; readonly upstream: boolean; readonly stopped: boolean; readonly foot?: number }

/** The highest a level is drawn, px from the upper edge: its number stands over it, on a phone the list of pours too. */
const HIGHEST = { wide: 66, phone: 186 };

/** How wide the words of a stop may run, px. */
export const HEAD_WIDTH = 286;

/** A glass is drawn even of a spec that holds nothing yet. */
export const EMPTY_GLASS: Pick<GlassReading, 'profile' | 'base_mm' | 'wall_mm' | 'stem_mm' | 'foot_mm'> = { profile: [[0, 31], [75, 36]], base_mm: 10, wall_mm: 2.6, stem_mm: 0, foot_mm: 0 };

export function frameOf(glass: GlassReading | null, wish: FrameWish): Frame {
  const shape = glass ?? EMPTY_GLASS;
  const outer = outerSize(shape);
  const phone = wish.width < 560;
  const column = phone ? 132 : 230;
  const scale = wish.pxPerMm ?? scaleFor(shape, wish, phone ? { height: 0.46, width: 0.6 } : { height: 0.5, width: 0.42 });
  const half = outer.radius * scale;
  const under = wish.foot ?? (phone ? 64 : 96);
  const table = wish.height - under;
  const axis = phone ? Math.max(half + 24, Math.min(wish.width * 0.345, wish.width - column - half + 8)) : Math.min(wish.width * (wish.upstream ? 0.6 : 0.56), wish.width - column - half);
  const stand = standAt(shape, scale, axis, table);
  // A level beyond the sheet is drawn at its upper edge; its figure says how high it is.
  const washline = glass !== null && glass.washline_mm > 0 ? Math.max(phone ? HIGHEST.phone : HIGHEST.wide, heightY(stand, glass.washline_mm)) : null;
  return {
    width: wish.width, height: wish.height, phone, stand, left: axis - half, right: axis + half, brim: heightY(stand, brimHeight(shape.profile)), washline,
    edge: wish.width - (phone ? 10 : 18), shelf: phone ? 100 : 182, dims: axis - half - 37,
    head: wish.stopped && !phone ? { x: wish.width - 18 - HEAD_WIDTH, y: 14, width: HEAD_WIDTH, height: 92 } : null,
  };
}

/** What the glass takes up, and the column of its dimensions: nothing else stands there, px. */
export function glassRoom({ left, right, brim, dims, height }: Frame): readonly [glass: Box, dimensions: Box] {
  return [{ x: left - 4, y: brim - 8, width: right - left + 8, height: height - brim + 8 }, { x: dims - 22, y: brim - 8, width: 60, height: height - brim }];
}

/** y of the line that vessels stand by: the washline, or where one would be. */
export function lineOf({ washline, brim }: Frame): number { return washline ?? brim + 60; }

/** The same by steps, never below it: while the line moves less, vessels upstream stay where they are. */
export function steadyLine(frame: Frame): number { return Math.floor(lineOf(frame) / STEP) * STEP; }
const STEP = 8;

/** The glass as far as it is on the sheet: what stands higher is cut off at the drawn washline. */
export function cutOff(glass: GlassReading, frame: Frame): GlassReading {
  const top = (frame.stand.floor - (frame.washline ?? 0)) / frame.stand.scale;
  if (glass.washline_mm <= top + 0.01) return glass;
  const low = <T extends { readonly from_mm: number; readonly to_mm: number }>(things: readonly T[]): T[] => things.map((t) => ({ ...t, from_mm: Math.min(t.from_mm, top), to_mm: Math.min(t.to_mm, top) }));
  return { ...glass, washline_mm: top, top_mm: top, liquid_mm: Math.min(glass.liquid_mm, top), layers: low(glass.layers), ice: low(glass.ice) };
}
