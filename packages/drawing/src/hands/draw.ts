import type { GlassReading } from '@washline/engine';
import type { Reading } from '../reading.ts';
import { frameOf } from '../frame.ts';
import { drawFilled } from '../glass/filled.ts';
import { holdsIce } from '../glass/slush.ts';
import { brimHeight, outerSize, radiusAt } from '../glass/profile.ts';
import { heightY, standAt, type Stand } from '../glass/stand.ts';
import { SIZE, run, textWidth } from '../pen/lettering.ts';
import { counted, shown } from '../pen/numbers.ts';
import { Pad } from '../pen/pad.ts';
import { polygon, rect } from '../pen/path.ts';
import type { Scheme } from '../pen/tint.ts';
import type { Drawing } from '../shapes.ts';
import { words } from '../words.ts';
import { spreadOf, type Tide } from './comb.ts';
import { pieceOf, type Piece } from './piece.ts';
import { drawTide } from './tide.ts';

export interface HandsOptions {
  /** room in CSS px of the layout */
  readonly width: number; readonly height: number;
  /** height of the drawing of the glass, px: the washline stands where it stands there */
  readonly whole: number;
  /** px at the top kept for the head */
  readonly head: number;
  readonly scheme: Scheme;
  /** vessels of preps stand beside the glass where it is drawn alone */
  readonly upstream: boolean;
}

/** The marks, one a hand, for whoever paints them: px of the layout. */
export interface Marks {
  /** where the sheet they stand on lies */
  readonly x: number; readonly y: number; readonly width: number; readonly height: number;
  /** where a row begins, how far marks stand apart, and how high a row is */
  readonly from: number; readonly pitch: number; readonly row: number;
  readonly rows: readonly { readonly y: number; readonly holds: number; readonly fails: number }[];
}
export interface DrawnHands { readonly drawing: Drawing; readonly marks: Marks }

/** Marks stand no farther apart, px. */
const PITCH = 4.4;

/**
 * The tide marks opened: the glass with the washline where it always stands, the piece of its wall around it drawn out by two leaders to a larger scale, and
 * between which levels nineteen of twenty of those that hold lie. A unit of the drawing is a px of the layout. Null where no level is known.
 */
export function drawHands(reading: Reading, tide: Tide, options: HandsOptions): DrawnHands | null {
  const { glass } = reading, { width, height, scheme } = options;
  if (glass === null || !(glass.washline_mm > 0)) return null;
  const phone = width < 560, whole = frameOf(glass, { width, height: options.whole, upstream: options.upstream, stopped: false });
  const y = Math.min(whole.washline ?? height * 0.45, height - 120), edge = whole.edge, level = glass.washline_mm;
  const top = phone ? options.head + 34 : Math.min(60, y - 100), bottom = height - 28;
  const piece = pieceOf(tide, level, y - top, bottom - y);
  if (piece === null) return null;
  const pad = new Pad(), stand = standOf(glass, whole.stand.scale, y, { width, height, phone, head: options.head });
  pad.open({ id: 'glass', within: null, role: 'wall' });
  drawFilled(pad, glass, stand, scheme, holdsIce(reading));
  const x = phone ? Math.max(146, stand.axis + outerSize(glass).radius * stand.scale + 72) : Math.round(width * 0.5);
  drawTide(pad, tide, glass, stand, { washline: y, phone, edge, height, longest: Math.min(60, Math.max(12, x - (phone ? 60 : 80) - stand.axis - outerSize(glass).radius * stand.scale)) }, false);
  // parts that drew themselves are ink here: the view's own words say them
  for (const [i, part] of pad.parts.entries()) if (part.role !== 'tide') pad.parts[i] = { id: part.id, within: part.within, role: 'wall' };
  const number = shown(level, 1), size = phone ? 30 : SIZE.chief, unit = phone ? 14 : SIZE.unit;
  const chief = edge - (phone ? 24 : 26) - textWidth(number, size, 500) - 6 - textWidth('mm', unit, 500);
  drawPiece(pad, piece, glass, stand, { x, y, level, edge, phone });
  drawNineteen(pad, tide, piece, { y, level, edge, phone });
  drawLine(pad, { y, width, edge, phone, number, size, unit, level, brim: brimHeight(glass.profile) });
  const from = x + (phone ? 4 : 6), room = chief - (phone ? 8 : 18) - from, most = Math.max(1, ...piece.rows.map((r) => r.holds + r.fails)), row = piece.step * piece.scale;
  return {
    drawing: pad.finish(width, height, 1, y, stand.axis),
    marks: {
      x, y: y - (piece.to - level) * piece.scale, width: edge - x, height: (piece.to - piece.from) * piece.scale, from, pitch: Math.min(PITCH, room / most), row,
      rows: piece.rows.map((r) => ({ y: y - (r.row + 0.5) * row, holds: r.holds, fails: r.fails })),
    },
  };
}

/** The glass at the left, as large as alone or smaller where it would not fit between the head and the foot; its washline at `y`. */
function standOf(glass: GlassReading, scale: number, y: number, at: { readonly width: number; readonly height: number; readonly phone: boolean; readonly head: number }): Stand {
  const outer = outerSize(glass), left = at.phone ? 8 : 62, room = at.phone ? 84 : Math.min(at.width * 0.36, at.width * 0.5 - 180), over = brimHeight(glass.profile) - glass.washline_mm;
  const least = Math.min(scale, room / (2 * outer.radius), (at.height - 10 - y) / (glass.washline_mm + outer.floor), over > 0 ? Math.max(0.4, (y - at.head - 8) / over) : Infinity);
  const fits = Math.max(0.4, least), stand = standAt(glass, fits, left + outer.radius * fits + (at.phone ? 0 : Math.max(0, room - 2 * outer.radius * fits) * 0.5), 0);
  const floor = y + glass.washline_mm * fits;
  return { ...stand, floor, table: floor + outer.floor * fits };
}

/** The wall drawn out, its scale, and the two leaders that lead to it. */
function drawPiece(pad: Pad, piece: Piece, glass: GlassReading, stand: Stand, at: { readonly x: number; readonly y: number; readonly level: number; readonly edge: number; readonly phone: boolean }): void {
  const { x, y, level, edge, phone } = at, up = (h: number): number => y - (h - level) * piece.scale, top = up(piece.to), foot = up(piece.from), wall = phone ? 7 : 10, left = x - wall - (phone ? 30 : 38);
  pad.open({ id: 'piece', within: null, role: 'dimension' });
  const from = (h: number): [number, number] => [stand.axis + (radiusAt(glass.profile, Math.min(h, brimHeight(glass.profile))) + glass.wall_mm) * stand.scale + (phone ? 4 : 8), heightY(stand, h)];
  for (const [h, end] of [[piece.to, top], [piece.from, foot]] as const) { const [sx, sy] = from(h); pad.path('leader', [['M', sx, sy], ['L', left, end], ['L', x - wall, end]]); }
  pad.path('fill', rect(x - wall, top, wall, foot - top), { fill: 'wall', hatch: 'glass' });
  pad.line('wall', x, top, x, foot, { width: 2 });
  pad.line('level', x - wall, top, x - wall, foot, { width: 1 });
  const each = [1, 2, 5, 10, 20, 50].find((mm) => mm * piece.scale >= (phone ? 30 : 26)) ?? 100;
  for (let h = Math.ceil(piece.from / (each / 2)) * (each / 2); h <= piece.to; h += each / 2) {
    const main = Math.abs(h / each - Math.round(h / each)) < 1e-6, ty = up(h);
    pad.line('dimension', x - wall - (main ? 7 : 4), ty, x - wall, ty);
    if (main && Math.abs(ty - y) > 13 && ty - top > 7 && foot - ty > 7) pad.text(x - wall - 11, ty + 4.2, [run(shown(h, 0), SIZE.small)], 'end');
  }
  if (!phone) pad.text(x - wall - 3, top - 6, [run(words('hands.mm', {}), SIZE.note, 'ink3')], 'end');
  const ratio = piece.scale / stand.scale, said = words('hands.piece', { from: shown(piece.from, 0), to: shown(piece.to, 0), times: shown(ratio, 1) }), rows = words('hands.rows', { mm: shown(piece.step, piece.step < 1 ? 1 : 0) });
  const note = phone ? SIZE.note : SIZE.small;
  pad.text(edge, top - 22, [run(said, note, 'ink2')], 'end');
  pad.text(edge, top - 7, [run(rows, note, 'ink2')], 'end');
  if (piece.beyond > 0) pad.text(edge, foot + 16, [run(words('hands.beyond', { count: counted(piece.beyond) }), note, 'ink2')], 'end');
}

/** Between which levels nineteen of twenty of those that hold lie: a dimension, broken where the line has its number. */
function drawNineteen(pad: Pad, tide: Tide, piece: Piece, at: { readonly y: number; readonly level: number; readonly edge: number; readonly phone: boolean }): void {
  const { low, high } = spreadOf(tide), { y, level, edge, phone } = at;
  if (!(high > low)) return;
  const up = (h: number): number => y - (h - level) * piece.scale, x = edge - (phone ? 44 : 76), a = up(low), b = up(high), taken = [y - (phone ? 46 : 60), y + (phone ? 28 : 34)] as const;
  pad.open({ id: 'nineteen', within: null, role: 'dimension' });
  for (const [end, value] of [[b, high], [a, low]] as const) {
    pad.line('extension', x - (phone ? 16 : 60), end, x + 6, end);
    // a number keeps off the line's own
    const ty = end > taken[0] - 4 && end < taken[1] + 10 ? (value === high ? taken[0] : taken[1] + 12) : end + 6;
    pad.text(x + 10, ty, [run(shown(value, 1), phone ? SIZE.body : SIZE.figure, 'ink', 500)]);
  }
  const pieces = [[b, Math.min(a, taken[0])], [Math.max(b, taken[1]), a]].filter(([from, to]) => to! - from! > 2) as [number, number][];
  for (const [from, to] of pieces) pad.line('dimension', x, from, x, to);
  const arrow = (end: number, way: 1 | -1): void => { if (pieces.some(([from, to]) => (way > 0 ? from === end : to === end) && to - from > 12)) pad.path('arrowhead', polygon([[x, end], [x - 1.4, end + 7 * way], [x + 1.4, end + 7 * way]])); };
  arrow(b, 1); arrow(a, -1);
  const lowest = pieces.find(([from]) => from >= taken[1]);
  if (lowest !== undefined && lowest[1] - lowest[0] > 40) {
    const ty = (lowest[0] + lowest[1]) / 2;
    pad.text(x - 8, ty - 2, [run(words('hands.nineteen', {}), SIZE.small)], 'end');
    pad.text(x - 8, ty + 13, [run(words('hands.that-hold', {}), SIZE.small)], 'end');
  }
}

/** The washline through all of it, its level over it at its end. */
function drawLine(pad: Pad, at: { readonly y: number; readonly width: number; readonly edge: number; readonly phone: boolean; readonly number: string; readonly size: number; readonly unit: number; readonly level: number; readonly brim: number }): void {
  const { y, width, edge, phone, number, size, unit } = at, x = edge - 8, half = phone ? 7.4 : 9.3;
  pad.open({ id: 'washline', within: null, role: 'washline', washline_mm: at.level, name: words('aloud.washline', { mm: number, brim: shown(at.brim, 0) }) });
  pad.line('washline', 0, y, width, y);
  pad.path('hand', polygon([[x, y - 1.7], [x - half, y - (phone ? 14 : 16.7)], [x + half, y - (phone ? 14 : 16.7)]]));
  pad.line('level', x - 8, y + 3.6, x + 8, y + 3.6);
  pad.line('level', x - 4, y + 7.2, x + 4, y + 7.2);
  pad.text(edge - (phone ? 24 : 26), y - (phone ? 9 : 12), [run(number, size, 'ink', 500), run('mm', unit, 'ink', 500, 6)], 'end');
  pad.text(edge, y + 23, [run(words('hands.written', {}), SIZE.small, 'ink2')], 'end');
}
