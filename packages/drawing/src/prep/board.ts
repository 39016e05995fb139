import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { overlap, type Box } from '../pen/pad.ts';
import { SIZE, textWidth } from '../pen/lettering.ts';
import { captionKept, type Caption } from './caption.ts';
import { tellsOf } from './facts.ts';
import { clears, streamWidth, type Fall } from './fall.ts';
import type { Bought, Flow, FlowPrep, Grip, Pour } from './flow.ts';
import type { Arranged } from '../shapes.ts';
import { Taken } from './taken.ts';
import { boxOf, vesselFor, vesselSize, type Vessel } from './vessel.ts';

export interface Placed { readonly key: string; readonly prep: FlowPrep | null; readonly vessel: Vessel; readonly axis: number; readonly shelf: number; readonly k: number; readonly box: Box; readonly caption: Caption; readonly captionAt: Box; readonly mL: number | null }
export interface Stream { readonly from: string; readonly to: string; readonly amount: string; readonly grip?: Grip | undefined; readonly fall: Fall; readonly label: Box; readonly into: boolean }
export interface WrittenLine { readonly giver: string | null; readonly text: string; readonly grip?: Grip | undefined }
export interface Written { readonly box: Box; readonly lines: readonly WrittenLine[]; readonly anchor: 'start' | 'end';
  /** in how many columns, one beside the other; one where it is not said */
  readonly columns?: number;
  /** from the words to the vessel they go into, where they stand away from it */
  readonly leader?: readonly [from: readonly [number, number], to: readonly [number, number]] }
export interface Hose { readonly from: string; readonly amount: string; readonly grip?: Grip | undefined }
export interface Arrangement {
  readonly k: number;
  /** scale of the preps that stand folded in a row, px per mm; null where none does */
  readonly rowK: number | null;
  readonly placed: readonly Placed[];
  readonly streams: readonly Stream[];
  readonly hose: Hose | null;
  readonly written: readonly Written[];
  /** raw measures that fall from above where there is no prep and no vessel before the glass */
  readonly raw: readonly Bought[];
  readonly overlaps: number;
  /** falls that were wished for and found no way */
  readonly missed: number;
  readonly as: Arranged;
}

/** How much captions tell where there is room: all of it, the figures of pressure and cloth alone, neither. */
export type Detail = Arranged['detail'];
/** A jar that a cloth hangs in has room for what lies in it as well. */
export function vesselOf(prep: FlowPrep): { vessel: Vessel; mL: number | null } {
  const mL = prep.reading?.yield.value ?? null, cloth = prep.reading?.cloth;
  return { vessel: vesselFor(prep.reading?.vessel ?? 'jar', (mL ?? 200) + (cloth !== undefined && tellsOf(cloth) ? 2 * cloth.mass.value : 0)), mL };
}

/** Where words may stand at their vessel, and how near to anything else, px. */
export type Where = 'under' | 'right' | 'left' | 'under-left';
export const WORDS_GAP = 4;
/** What is drawn keeps so far from the edge of the sheet, px. */
const EDGE = 6;

/** Sets words of a width and height where they stand at a vessel of this size. */
export function setWords(words: { x: number; y: number; readonly width: number }, where: Where, axis: number, shelf: number, size: { readonly width: number; readonly height: number }): void {
  words.x = where === 'under' ? axis - size.width / 2 - 3 : where === 'under-left' ? axis + size.width / 2 - words.width : where === 'right' ? axis + size.width / 2 + 14 : axis - size.width / 2 - 14 - words.width;
  words.y = where === 'right' ? shelf - size.height + 6 : where === 'left' ? shelf - size.height + 22 : shelf + 8;
}

/** What stands already, and whether something more finds room. */
export class Board {
  readonly placed: Placed[] = [];
  readonly streams: Stream[] = [];
  readonly written: Written[] = [];
  readonly poured = new Set<string>();
  readonly taken: Taken;
  hose: Hose | null = null;
  /** preps that take no other stand in a row */
  folded = false;
  overlaps = 0;
  missed = 0;
  constructor(readonly flow: Flow, readonly reading: Reading, readonly frame: Frame, readonly k: number, taken: readonly Box[], readonly detail: Detail = 'all') { this.taken = new Taken(taken); }

  /** What stands beside a prep's vessel, with as much as this arrangement tells. */
  caption(prep: FlowPrep): Caption {
    let caption = captionKept(prep, this.flow, this.poured);
    if (this.detail !== 'all') while (caption.less !== undefined && (this.detail === 'none' || caption.less.less !== undefined)) caption = caption.less;
    return caption;
  }

  /** Free of everything placed so far, and inside the drawing. */
  free(box: Box, gap = 5): boolean {
    return box.x >= EDGE && box.y >= EDGE && box.x + box.width <= this.frame.width - EDGE && box.y + box.height <= this.frame.height - 4 && !this.taken.hits(box, gap);
  }

  put(prep: FlowPrep | null, key: string, vessel: Vessel, mL: number | null, axis: number, shelf: number, caption: Caption, where: readonly Where[], k = this.k): Placed | null {
    const size = vesselSize(vessel, k), box = boxOf(vessel, axis, shelf, k);
    if (!this.free(box)) return null;
    const spotOf = ({ width, height }: Caption): Box | undefined => {
      const spot = { x: 0, y: 0, width, height };
      return where.some((w) => { setWords(spot, w, axis, shelf, size); return this.free(spot, WORDS_GAP); }) ? spot : undefined;
    };
    // where the fewest lines find no room, more do not either
    let least = caption;
    while (least.less !== undefined) least = least.less;
    if (least !== caption && spotOf(least) === undefined) return null;
    for (let tried: Caption | undefined = caption; tried !== undefined; tried = tried.less) {
      const spot = spotOf(tried);
      if (spot === undefined) continue;
      const placed: Placed = { key, prep, vessel, axis, shelf, k, box, caption: tried, captionAt: spot, mL };
      this.placed.push(placed);
      this.taken.add(box, spot);
      return placed;
    }
    return null;
  }

  /** A stream between two vessels, if its curve passes the near lip and its label finds room. */
  pour(from: Placed, to: { readonly key: string; readonly near: number; readonly lip: number; readonly land: number; readonly level: number }, pour: Pour, side: 1 | -1, into: boolean): boolean {
    const half = Math.max(...from.vessel.profile.slice(-1).map(([, r]) => r)) * from.k;
    const wall = Math.max(from.vessel.wall * from.k, 2);
    const fall: Fall = { lip: [from.axis + side * (half + wall), from.shelf - vesselSize(from.vessel, from.k).height + vesselSize(from.vessel, from.k).above], wall, side, land: [to.land, to.level], width: streamWidth(pour.mL, into) };
    // it goes up over its lip by its own breadth: that too is on the sheet
    if (fall.lip[1] - fall.width < EDGE || (to.land - fall.lip[0]) * side < 8 || fall.lip[1] > to.level - 12 || !clears(fall, [to.near, to.lip], into ? 8 : 6)) return false;
    const width = textWidth(pour.amount, SIZE.body, 500) + 4;
    // The amount stands 8 px clear of the stream on its outer side, or inside of it where that is taken.
    const spot = (u: number, outer: boolean): Box => {
      const x = fall.lip[0] + (to.land - fall.lip[0]) * u, y = fall.lip[1] - fall.width / 2 + (to.level - fall.lip[1]) * u * u, right = outer === (side === 1);
      return { x: right ? x + fall.width * 0.5 + 9 : x - fall.width * 0.5 - 9 - width, y: outer ? y - 17 : y + 2, width, height: 15 };
    };
    const label = [spot(0.5, true), spot(0.4, true), spot(0.3, true), spot(0.65, true), spot(0.5, false), spot(0.35, false)].find((box) => this.free(box, 5));
    const along = Array.from({ length: 9 }, (_, i): Box => { const v = (i + 1) / 10; return { x: fall.lip[0] + (to.land - fall.lip[0]) * v - 3, y: fall.lip[1] - fall.width / 2 + (to.level - fall.lip[1]) * v * v - 3, width: 6, height: 6 }; });
    if (label === undefined || [...this.streams.map((s) => s.label), ...this.placed.map((p) => p.captionAt)].some((words) => along.some((box) => overlap(box, words, -5)))) return false;
    this.streams.push({ from: from.key, to: to.key, amount: pour.amount, grip: pour.grip, fall, label, into });
    this.poured.add(`${from.key}>${to.key}`);
    this.taken.add(label);
    this.taken.add(...along);
    return true;
  }
}
