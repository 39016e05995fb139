import type { GlassReading } from '@washline/engine';
import { outerSize } from './profile.ts';

/** Where the glass stands on the layout, and how large: px. */
export interface Stand {
  /** px per mm */
  readonly scale: number;
  readonly axis: number;
  /** y of the inner floor */
  readonly floor: number;
  /** y of the table */
  readonly table: number;
}

export interface Room { readonly width: number; readonly height: number }

/** The largest tenth of a px per mm at which the glass keeps within half the height and 42 % of the width. */
export function scaleFor(glass: Shaped, room: Room, share = { height: 0.5, width: 0.42 }): number {
  const outer = outerSize(glass);
  const most = Math.min((room.height * share.height) / outer.height, (room.width * share.width) / (2 * outer.radius));
  return Math.max(0.5, Math.floor(most * 10) / 10);
}

export type Shaped = Pick<GlassReading, 'profile' | 'base_mm' | 'wall_mm' | 'stem_mm' | 'foot_mm'>;

export function standAt(glass: Shaped, scale: number, axis: number, table: number): Stand {
  return { scale, axis, table, floor: table - outerSize(glass).floor * scale };
}

export function heightY(stand: Stand, height_mm: number): number { return stand.floor - height_mm * stand.scale; }

/** Does a glass drawn so many px per mm keep within its room? As much over it and beside it stays free as the words at the washline take. */
export function fitsAt(glass: Shaped, room: Room, pxPerMm: number): boolean {
  const outer = outerSize(glass);
  return outer.height * pxPerMm <= room.height - 160 && 2 * outer.radius * pxPerMm <= room.width - (room.width < 560 ? 150 : 270);
}
