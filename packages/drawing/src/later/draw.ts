import type { Figure } from '@washline/engine';
import type { Reading } from '../reading.ts';
import { SIZE, run, textWidth } from '../pen/lettering.ts';
import { decimalsFor, leastDecimals, shown, spreadShown, unitShown } from '../pen/numbers.ts';
import { Pad, type Box } from '../pen/pad.ts';
import { polygon, type Point } from '../pen/path.ts';
import { iceTint, tint, type Scheme } from '../pen/tint.ts';
import type { Drawing, Fill } from '../shapes.ts';
import { words } from '../words.ts';
import { coursesOf, reachOf, type Course } from './course.ts';
import { evenAt, evenCurve } from './even.ts';

export interface LaterOptions {
  /** room in CSS px of the layout, from 240 */
  readonly width: number;
  readonly scheme: Scheme;
  /** every curve, in as many rows as they need; else one row, and what finds no room in it is said in words */
  readonly all?: boolean;
}

/** Height of one curve with its lettering, and how wide one is at least, px. */
const HIGH = 138, WIDE = 286;
/** Narrower than this the curves stand under one another, and all of them are drawn. */
const PHONE = 500;
/** Between two curves, px. */
const GAP = 18;

/**
 * How the drink warms and waters while it is left alone: one small dimensioned curve for each figure, as many side by side as there is room for, the
 * median as a line in the band of its ranges. A unit of the drawing is a px of the layout. Null where the reading tells of no time after pouring.
 */
export function drawLater(reading: Reading, options: LaterOptions): Drawing | null {
  const all = coursesOf(reading);
  if (all.length === 0) return null;
  const phone = options.width < PHONE, fits = Math.max(1, Math.floor((options.width + GAP) / (WIDE + GAP)));
  const across = phone ? 1 : Math.min(fits, all.length), rows = options.all === true || phone ? Math.ceil(all.length / across) : 1;
  const list = all.slice(0, across * rows), pad = new Pad(), width = (options.width + GAP) / across - GAP;
  for (const [i, course] of list.entries()) {
    const room = { x: (i % across) * (width + GAP), y: Math.floor(i / across) * HIGH, width, height: HIGH };
    // under one another they stand at one line
    const same = rows > 1 ? list.filter((_, k) => k % across === i % across) : [course];
    drawCourse(pad, course, room, { left: Math.max(...same.map((c) => textWidth(startOf(c), SIZE.body, 500))) + 10, right: Math.max(...same.map((c) => Math.max(textWidth(endOf(c), SIZE.figure, 500), textWidth(spreadOf(c), SIZE.small)))) + 24 }, bandOf(course, reading, options.scheme));
  }
  // what found no room is said
  const rest = all.slice(list.length);
  for (const [i, course] of rest.entries()) {
    pad.open({ id: `course:${course.name}`, within: null, role: 'rule', name: aloud(course) });
    pad.text(0, rows * HIGH + 12 + 16 * i, [run(aloud(course), SIZE.small, 'ink2')]);
  }
  return pad.finish(options.width, rows * HIGH + 16 * rest.length, 1, null, 0);
}

function aloud(course: Course): string {
  const first = course.points[0]!, last = course.points.at(-1)!;
  return words(first.minutes === 0 ? 'aloud.course.poured' : 'aloud.course', { what: words(`course.${course.name}`, {}), start: startOf(course), from: first.minutes, end: endOf(course), low: shown(last.figure.low, digits(course)), high: shown(last.figure.high, digits(course)), minutes: last.minutes });
}

function bandOf(course: Course, reading: Reading, scheme: Scheme): Fill {
  if (course.name === 'ice_left') return iceTint(scheme, 'upstream');
  const drink = reading.glass?.layers.find((layer) => layer.kind === 'liquid');
  return drink === undefined ? 'sheet' : tint(drink.colour, { at: 'upstream', scheme, turbidity: drink.turbidity, strength: drink.strength });
}

const digits = (course: Course): number => Math.max(...course.points.map(({ figure: f }) => decimalsFor(f.low, f.high, leastDecimals(f.unit))));
const said = (course: Course, f: Figure): string => `${shown(f.value, digits(course))} ${unitShown(f.unit)}`;
const startOf = (course: Course): string => said(course, course.points[0]!.figure);
const endOf = (course: Course): string => said(course, course.points.at(-1)!.figure);
const spreadOf = (course: Course): string => spreadShown(course.points.at(-1)!.figure, digits(course));

function drawCourse(pad: Pad, course: Course, room: Box, margin: { readonly left: number; readonly right: number }, band: Fill): void {
  const { points } = course, first = points[0]!, last = points.at(-1)!;
  const x0 = room.x + margin.left, x1 = room.x + room.width - margin.right, top = room.y + 30, foot = room.y + room.height - 38;
  const [low, high] = reachOf(course), span = Math.max(high - low, 1e-6);
  const x = (minutes: number): number => x0 + ((x1 - x0) * minutes) / last.minutes, y = (value: number): number => foot - ((foot - top) * (value - low)) / span;
  const along = (of: 'low' | 'value' | 'high'): Point[] => points.map((p) => [x(p.minutes), y(p.figure[of])]);
  pad.open({ id: `course:${course.name}`, within: null, role: 'rule', name: aloud(course) });
  pad.text(room.x + margin.left - 2, room.y + 13, [run(words(`course.${course.name}`, {}), SIZE.body, 'ink', 600)]);

  // the band of the ranges, ruled upright: each stroke is the range at its time
  const floor = along('low'), roof = along('high'), under = evenAt(floor), over = evenAt(roof);
  pad.path('fill', [...evenCurve(roof), ...evenCurve(floor, true), ['Z']], { fill: band });
  for (let px = x(first.minutes) + 3; px < x1 - 1; px += 4) if (under(px) - over(px) > 2) pad.line('dimension', px, under(px) - 0.5, px, over(px) + 0.5, { width: 0.5 });
  for (const edge of [floor, roof]) pad.path('dimension', evenCurve(edge), { width: 0.8 });
  pad.path('level', evenCurve(along('value')), { width: 1.75, round: true });
  for (const p of [first, last]) pad.circle('dot', x(p.minutes), y(p.figure.value), 2.2);

  // what it is at both ends; the range at the end as a dimension
  const start = clamp(y(first.figure.value) + 4.4, top + 4, foot + 2);
  pad.text(x(first.minutes) - 8, start, [run(startOf(course), SIZE.body, 'ink', 500)], 'end');
  const a = y(last.figure.low), b = y(last.figure.high), dx = x1 + 9;
  for (const edge of [a, b]) pad.line('extension', x1 + 3, edge, dx + 4, edge);
  pad.line('dimension', dx, a, dx, b);
  if (a - b > 17) {
    pad.path('arrowhead', polygon([[dx, a], [dx - 1.4, a - 7], [dx + 1.4, a - 7]]));
    pad.path('arrowhead', polygon([[dx, b], [dx - 1.4, b + 7], [dx + 1.4, b + 7]]));
  }
  const end = clamp(y(last.figure.value) + 3, top + 10, foot - 9);
  pad.text(x1 + 20, end, [run(endOf(course), SIZE.figure, 'ink', 500)]);
  pad.text(x1 + 20, end + 15, [run(spreadOf(course), SIZE.small, 'ink2')]);
  drawTime(pad, points.map((p) => p.minutes), x, room.y + room.height - 26);
}

/** The rule of the time: a stroke at every time that is told. */
function drawTime(pad: Pad, told: readonly number[], x: (minutes: number) => number, y: number): void {
  const last = told.at(-1) ?? 30;
  pad.line('bar', x(0), y, x(last), y);
  for (const minutes of new Set([0, ...told])) pad.line('bar', x(minutes), y - 4, x(minutes), y + (minutes === 0 || minutes === last ? 4 : 0), { width: 1 });
  const end = words('minutes', { minutes: last }), free = (text: string, minutes: number, from: number): boolean => x(minutes) - textWidth(text, SIZE.note) / 2 > from;
  const start = words('poured', {});
  let taken = x(0) - 8 + textWidth(start, SIZE.note) + 5;
  pad.text(x(0) - 8, y + 16, [run(start, SIZE.note, 'ink3')]);
  for (const minutes of told.slice(0, -1)) {
    const text = String(minutes);
    if (minutes === 0 || !free(text, minutes, taken) || x(minutes) + textWidth(text, SIZE.note) / 2 + 6 > x(last) - textWidth(end, SIZE.note) / 2) continue;
    pad.text(x(minutes), y + 16, [run(text, SIZE.note, 'ink3')], 'middle');
    taken = x(minutes) + textWidth(text, SIZE.note) / 2 + 6;
  }
  pad.text(x(last), y + 16, [run(end, SIZE.note, 'ink3')], 'middle');
}

function clamp(value: number, low: number, high: number): number { return Math.min(Math.max(value, low), Math.max(low, high)); }
