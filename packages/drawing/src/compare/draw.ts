import type { GlassReading } from '@washline/engine';
import type { Reading } from '../reading.ts';
import { drawFilled } from '../glass/filled.ts';
import { holdsIce } from '../glass/slush.ts';
import { outerSize } from '../glass/profile.ts';
import { heightY, standAt, type Stand } from '../glass/stand.ts';
import { SIZE, run, runsWidth } from '../pen/lettering.ts';
import { decimalsFor, figureShown, shown, unitShown } from '../pen/numbers.ts';
import { Pad } from '../pen/pad.ts';
import type { Scheme } from '../pen/tint.ts';
import type { Drawing } from '../shapes.ts';
import { words } from '../words.ts';

export interface CompareOptions { readonly width: number; readonly height: number; readonly scheme: Scheme }

/** Room over the glasses and under their table, px; and of the width for the numbers between them. */
const OVER = { wide: 56, phone: 40 }, UNDER = { wide: 40, phone: 92 };
const BETWEEN = { wide: 330, phone: 12 };

/**
 * Two drinks on one shelf at one scale, each with its own washline: heavy on its own side with level and strength on it, as a phantom on the other. Null where one of
 * them has no glass.
 */
export function drawCompare(a: Reading, b: Reading, options: CompareOptions): Drawing | null {
  if (a.glass === null || b.glass === null) return null;
  const { width, height, scheme } = options, phone = width < 560, side = phone ? 'phone' : 'wide';
  const sizes = [outerSize(a.glass), outerSize(b.glass)] as const, each = (width - BETWEEN[side]) / 2;
  const scale = Math.max(0.3, Math.min((height - OVER[side] - UNDER[side]) / Math.max(sizes[0].height, sizes[1].height), (each - 28) / (2 * Math.max(sizes[0].radius, sizes[1].radius))));
  const table = height - UNDER[side];
  const drawn = [[a, a.glass, each / 2], [b, b.glass, width - each / 2]] as const;
  const stands = drawn.map(([, glass, axis]) => standAt(glass, scale, axis, table)) as [Stand, Stand];
  const lines = drawn.map(([, glass], i) => (glass.washline_mm > 0 ? heightY(stands[i] as Stand, glass.washline_mm) : null)) as [number | null, number | null];
  const [left, right] = drawn.map(([reading, glass, axis], i) => {
    const pad = new Pad(), stand = stands[i] as Stand;
    drawSide(pad, reading, glass, lines[1 - i] ?? null, stand, { width, phone, left: i === 0, scheme, edge: i === 0 ? each : width - each });
    if (i === 0 && !phone) { pad.open({ id: 'bars', within: null, role: 'rule' }); pad.line('bar', 14, height - 16, 14 + 20 * scale, height - 16); pad.line('bar', 14, height - 20, 14, height - 12); pad.line('bar', 14 + 20 * scale, height - 20, 14 + 20 * scale, height - 12); pad.text(22 + 20 * scale, height - 12, [run(words('bar-both', { mm: 20 }), SIZE.small, 'ink2')]); }
    return prefixed(pad.finish(width, height, scale, null, axis), i === 0 ? 'a:' : 'b:');
  }) as [Drawing, Drawing];
  return { ...left, parts: [...left.parts, ...right.parts], shapes: [...left.shapes, ...right.shapes] };
}

interface Place { readonly width: number; readonly phone: boolean; readonly left: boolean; readonly scheme: Scheme; /** where its side ends */ readonly edge: number }

function drawSide(pad: Pad, reading: Reading, glass: GlassReading, theirs: number | null, stand: Stand, { width, phone, left, scheme, edge }: Place): void {
  const half = outerSize(glass).radius * stand.scale;
  pad.open({ id: 'shelf', within: null, role: 'rule' });
  pad.line('shelf', stand.axis - half - 16, stand.table + 0.6, stand.axis + half + 16, stand.table + 0.6, { stroke: 'ink2', width: 1 });
  pad.open({ id: 'glass', within: null, role: 'vessel', name: words('aloud.drink', { drink: reading.drink, glass: glass.name }) });
  drawFilled(pad, glass, stand, scheme, holdsIce(reading));
  // its own level, heavy to where its numbers end; the other's as a phantom through its own glass
  const y = heightY(stand, glass.washline_mm), level = [run(shown(glass.washline_mm, 1), phone ? 22 : SIZE.chief - 8, 'ink', 500), run('mm', phone ? 13 : 18, 'ink', 500, 6)], strength = reading.figures['strength'];
  const said = strength === undefined ? [] : [run(shown(strength.value, Math.max(1, decimalsFor(strength.low, strength.high))), phone ? 22 : SIZE.chief - 8, 'ink', 500), run(unitShown(strength.unit), phone ? 13 : 18, 'ink', 500, 6)];
  pad.open({ id: 'line', within: null, role: 'washline', washline_mm: glass.washline_mm, name: words('aloud.washline', { mm: shown(glass.washline_mm, 1), brim: shown(glass.profile.at(-1)?.[0] ?? 0, 0) }) });
  if (glass.washline_mm > 0) {
    if (phone) pad.line('washline', stand.axis - half - 14, y, stand.axis + half + 14, y);
    else {
      const reach = edge + (left ? 1 : -1) * (Math.max(runsWidth(level), runsWidth(said)) + 14);
      pad.line('washline', left ? 0 : reach, y, left ? reach : width, y);
    }
    // the other's line goes on through this side, as a phantom
    if (theirs !== null && Math.abs(theirs - y) > 3) pad.line('phantom', left ? 0 : edge + 8, theirs, left ? edge - 8 : width, theirs);
  }
  pad.open({ id: 'numbers', within: null, role: 'reading', reading: left ? 'side:a' : 'side:b' });
  const name = (text: string): void => { pad.text(phone ? stand.axis : left ? edge + 4 : edge - 4, phone ? stand.table + 22 : y + 62, [run(text, SIZE.small, 'ink2')], phone ? 'middle' : left ? 'start' : 'end'); };
  if (phone) {
    if (glass.washline_mm > 0) pad.text(stand.axis, stand.table + 48, level, 'middle');
    if (said.length > 0) pad.text(stand.axis, stand.table + 76, said, 'middle');
  } else {
    if (glass.washline_mm > 0) pad.text(left ? edge + 4 : edge - 4, y - 11, level, left ? 'start' : 'end');
    if (said.length > 0) pad.text(left ? edge + 4 : edge - 4, y + 40, said, left ? 'start' : 'end');
  }
  name(reading.variant === null ? reading.drink : `${reading.drink}, ${reading.variant}`);
}

/** Two drawings in one: their parts keep apart by a prefix. */
function prefixed(drawing: Drawing, by: string): Drawing {
  return {
    ...drawing,
    parts: drawing.parts.map((part) => ({ ...part, id: by + part.id, within: part.within === null ? null : by + part.within })),
    shapes: drawing.shapes.map((shape) => ({ ...shape, id: by + shape.id, part: by + shape.part })),
  };
}

/** A difference as it is said: with its sign, and its unit. */
export function differenceShown(difference: { readonly value: number; readonly low: number; readonly high: number; readonly unit: string }): string {
  const { value, low, high, unit } = difference;
  return `${value < 0 ? '−' : '+'} ${figureShown({ value: Math.abs(value), low: Math.abs(value) - (value - low), high: Math.abs(value) + (high - value), unit })}`;
}
