import type { GlassReading } from '@washline/engine';
import type { Frame } from '../frame.ts';
import { brimHeight, radiusAt } from '../glass/profile.ts';
import type { Stand } from '../glass/stand.ts';
import { SIZE, run, textWidth } from '../pen/lettering.ts';
import { counted, shown } from '../pen/numbers.ts';
import { overlap, type Box, type Pad } from '../pen/pad.ts';
import type { Step } from '../pen/path.ts';
import { words } from '../words.ts';
import { combOf, spreadOf, type Tide } from './comb.ts';

/** Height of a row, how far marks stand apart at most, how far off the wall, how long a row may be, and how far the first rows keep from the line, px. */
const ROW = 2.2, PITCH = 3.6, OFF = 5, LONGEST = 60, CLEAR = 3.1;
/** Marks that would stand closer than this are moved behind what is in their way, px. */
const LEAST = 1.2;
/** However little room there is. */
const CLOSEST = 0.5;
/** A dot's diameter, a dash's length and weight, px. */
const DOT = 1.7, DASH = 2.7, WEIGHT = 1.4;
/** Nothing is drawn higher, px. */
const TOP = 8;

interface Row { readonly y: number; readonly x: number; readonly holds: number; readonly fails: number }

/**
 * The levels of many hands as a comb along the outer right wall: in rows of 2.2 px, a mark for a hundred hands; dots that hold, then dashes that fail. Rows keep
 * clear of the washline; where others' words stand near, marks stand closer. Nothing where no level is known.
 */
export function drawTide(pad: Pad, tide: Tide, glass: GlassReading, stand: Stand, at: Pick<Frame, 'washline' | 'phone' | 'edge' | 'height'> & { readonly longest?: number }, link: boolean): void {
  const line = at.washline, said = spreadOf(tide);
  if (line === null || said.known === 0) return;
  const others = [...pad.boxes.map(({ box }) => box), ...garnishes(pad)], rows = clearOf(rowsOf(tide, glass, stand, line, at.height), others, at.edge);
  if (rows.length === 0) return;
  const pitch = pitchOf(rows, others, at.longest ?? LONGEST, at.edge);
  pad.open({ id: 'tide-link', within: null, role: 'wall', ...(link ? { href: '#hands' } : {}) });
  const box = hullOf(rows, pitch);
  if (link) pad.target(targetOf(pad, box, at.phone));
  pad.open({ id: 'tide', within: 'tide-link', role: 'tide', tide: said.hold, name: aloud(tide) });
  const dots: Step[] = [], dashes: Step[] = [], wide = Math.min(DASH, pitch * 0.75);
  for (const row of rows) {
    for (let k = 0; k < row.holds; k += 1) { const x = row.x + OFF + (k + 0.5) * pitch; dots.push(['M', x, row.y], ['L', x, row.y]); }
    for (let k = row.holds; k < row.holds + row.fails; k += 1) { const x = row.x + OFF + (k + 0.5) * pitch; dashes.push(['M', x - wide / 2, row.y], ['L', x + wide / 2, row.y]); }
  }
  pad.path('tide', dots, { width: Math.min(DOT, Math.max(0.6, pitch * 0.6)) });
  pad.path('tide-fails', dashes, { width: WEIGHT });
  readBefore(pad, ['tide-link', 'tide']);
  breakLeaders(pad, rows.map((row) => boxOf(row, pitch)));
  if (link && !at.phone) drawCount(pad, tide, rows.map((row) => boxOf(row, pitch)), line, at.edge);
}

/** "8 846 of 10 000 hold; nineteen of twenty from 70.1 to 78.1 millimetres", as it is read aloud. */
function aloud(tide: Tide): string {
  const { hold, low, high } = spreadOf(tide), count = { hold: counted(hold), of: counted(tide.levels.length) };
  return hold === 0 || !Number.isFinite(low) ? words('aloud.tide.none', count) : words('aloud.tide', { ...count, low: shown(low, 1), high: shown(high, 1) });
}

function rowsOf(tide: Tide, glass: GlassReading, stand: Stand, line: number, height: number): Row[] {
  const brim = brimHeight(glass.profile), wall = Math.max(glass.wall_mm * stand.scale, 2.4), level = (stand.floor - line) / stand.scale, rim = stand.floor - brim * stand.scale;
  // the wall ends at the brim: what would stand higher is marked there
  const highest = line > rim ? Math.max(TOP, rim) : TOP;
  const rows = combOf(tide, level, ROW / stand.scale).map(({ row, holds, fails }) => {
    const y = Math.min(height - 8, Math.max(highest, row >= 0 ? line - CLEAR - row * ROW : line + CLEAR - (row + 1) * ROW));
    const h = Math.min(brim, (stand.floor - y) / stand.scale);
    const x = stand.axis + radiusAt(glass.profile, Math.max(0, h)) * stand.scale + wall;
    return { y, x, holds, fails };
  });
  const merged: Row[] = [];
  for (const row of rows) { const same = merged.at(-1); if (same !== undefined && same.y === row.y) merged[merged.length - 1] = { ...same, holds: same.holds + row.holds, fails: same.fails + row.fails }; else merged.push(row); }
  return merged;
}

function boxOf(row: Row, pitch: number): Box { return { x: row.x + OFF - 1, y: row.y - ROW / 2, width: (row.holds + row.fails) * pitch + 2, height: ROW }; }

/** Off the wall; a row that would meet something close to it begins behind that, where there is room. */
function clearOf(rows: readonly Row[], others: readonly Box[], edge: number): Row[] {
  return rows.map((row) => {
    const long = (row.holds + row.fails) * LEAST;
    let { x } = row;
    for (let tries = 0; tries < 4; tries += 1) {
      const met = others.find((box) => beside(box, row) && box.x < x + OFF + long + 3 && box.x + box.width > x + 1);
      if (met === undefined) break;
      x = met.x + met.width - OFF + 4;
    }
    return x + OFF + long < edge ? { ...row, x } : row;
  });
}

const beside = (box: Box, row: Row): boolean => Math.abs(box.y + box.height / 2 - row.y) < box.height / 2 + 3;

/** One pitch for all rows, so that their lengths compare: the longest row 60 px, none into another's words. */
function pitchOf(rows: readonly Row[], others: readonly Box[], longest: number, edge: number): number {
  let pitch = PITCH;
  for (const row of rows) {
    const near = others.filter((box) => box.x + box.width > row.x + OFF && beside(box, row)), room = Math.min(longest, edge - 2 - row.x - OFF, ...near.map((box) => box.x - 5 - row.x - OFF));
    pitch = Math.min(pitch, room / (row.holds + row.fails));
  }
  return Math.max(CLOSEST, pitch);
}

function hullOf(rows: readonly Row[], pitch: number): Box {
  const boxes = rows.map((row) => boxOf(row, pitch)), x = Math.min(...boxes.map((b) => b.x)), y = Math.min(...boxes.map((b) => b.y));
  return { x, y, width: Math.max(...boxes.map((b) => b.x + b.width)) - x, height: Math.max(...boxes.map((b) => b.y + b.height)) - y };
}

/** As large as a pointer or a finger needs, and off what others can be pressed at. */
function targetOf(pad: Pad, hull: Box, phone: boolean): Box {
  const least = phone ? 44 : 24, width = Math.max(least, hull.width + 6), height = Math.max(least, hull.height + 6);
  const whole = { x: hull.x - 3, y: hull.y + hull.height / 2 - height / 2, width, height };
  const met = pad.shapes.flatMap((s) => (s.kind === 'target' && s.x > whole.x && overlap(s, whole) ? [s.x] : []));
  return { ...whole, width: Math.max(24, Math.min(width, ...met.map((x) => x - 1 - whole.x))) };
}

/** What hangs on the rim or leans over it. */
function garnishes(pad: Pad): Box[] {
  const roles = new Set(pad.parts.filter((p) => p.role === 'garnish').map((p) => p.id));
  return pad.shapes.flatMap((s) => {
    if (!roles.has(s.part)) return [];
    if (s.kind === 'circle') return [{ x: s.x - s.r, y: s.y - s.r, width: 2 * s.r, height: 2 * s.r }];
    if (s.kind !== 'path') return [];
    const xs: number[] = [], ys: number[] = [];
    for (const step of s.d as unknown as readonly Step[]) for (let i = 1; i + 1 < step.length; i += 2) { xs.push(step[i] as number); ys.push(step[i + 1] as number); }
    const x = Math.min(...xs), y = Math.min(...ys);
    return xs.length === 0 ? [] : [{ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }];
  });
}

/** Read aloud after the glass, before the vessels of the preps. */
function readBefore(pad: Pad, ids: readonly string[]): void {
  const first = pad.parts.findIndex((p) => p.role === 'vessel'), own = pad.parts.filter((p) => ids.includes(p.id));
  if (first < 0) return;
  for (const p of own) pad.parts.splice(pad.parts.indexOf(p), 1);
  pad.parts.splice(first, 0, ...own);
}

/** Where a leader or a phantom line passes behind the marks it is broken, as a line is for a figure. */
function breakLeaders(pad: Pad, rows: readonly Box[]): void {
  for (const [i, shape] of pad.shapes.entries()) {
    if (shape.kind !== 'path' || !(shape.pen === 'leader' && shape.part.startsWith('leader:')) && shape.pen !== 'phantom') continue;
    const [from, to, ...rest] = shape.d as unknown as readonly Step[];
    if (from?.[0] !== 'M' || to?.[0] !== 'L') continue;
    const at = (t: number): [number, number] => [from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
    const met = Array.from({ length: 401 }, (_, k) => k / 400).filter((t) => { const [x, y] = at(t); return rows.some((b) => x > b.x - 2 && x < b.x + b.width + 2 && y > b.y - 2 && y < b.y + b.height + 2); });
    if (met.length === 0) continue;
    const steps: Step[] = [from, ['L', ...at(met[0]!)], ['M', ...at(met.at(-1)!)], to, ...rest];
    pad.shapes[i] = { ...shape, d: steps as unknown as string };
  }
}

/** Over the level the count, with a leader to the comb; left out where something stands there. */
function drawCount(pad: Pad, tide: Tide, rows: readonly Box[], line: number, edge: number): void {
  const text = words('tide.count', { hold: counted(spreadOf(tide).hold), of: counted(tide.levels.length) }), width = textWidth(text, SIZE.small), y = line - 62;
  const box = { x: edge - width - 4, y: y - 12, width: width + 4, height: 18 };
  // it leads to the row over the line that it can reach without a turn
  const row = rows.filter((r) => r.y + r.height < line).reduce<Box | null>((best, r) => (best === null || Math.abs(r.y - y - 26) < Math.abs(best.y - y - 26) ? r : best), null);
  if (row === null || y < 20 || box.x < Math.max(...rows.map((r) => r.x + r.width)) + 14 || pad.boxes.some((b) => overlap(b.box, box, 2))) return;
  pad.open({ id: 'tide-count', within: null, role: 'leader' });
  pad.text(edge, y - 5, [run(text, SIZE.small)], 'end');
  pad.path('leader', [['M', edge, y], ['L', edge - width - 4, y], ['L', row.x + row.width + 3, row.y + row.height / 2]]);
}
