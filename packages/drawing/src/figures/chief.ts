import type { Figure, GlassReading } from '@washline/engine';
import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { smooth } from '../glass/profile.ts';
import { SIZE, run, textWidth } from '../pen/lettering.ts';
import { decimalsFor, shown, spreadShown, unitShown } from '../pen/numbers.ts';
import type { Pad } from '../pen/pad.ts';
import { polygon } from '../pen/path.ts';
import { words } from '../words.ts';
import { figureName, markOf } from './mark.ts';

/** The washline with its level above and the strength of the whole drink below: the spine of the page. */
export function drawWashline(pad: Pad, glass: GlassReading, frame: Frame, level_mm: number): void {
  const y = frame.washline;
  if (y === null) return;
  const { stand } = frame;
  pad.open({ id: 'washline', within: 'glass', role: 'washline', washline_mm: level_mm, name: words('aloud.washline', { mm: shown(level_mm, 1), brim: shown(glass.profile.at(-1)?.[0] ?? 0, 0) }) });
  // Through the glass it lies between the walls; outside it stops at them.
  const r = (smooth(glass.profile, 0, glass.washline_mm).at(-1)?.[1] ?? 0) * stand.scale, wall = Math.max(glass.wall_mm * stand.scale, 2.4);
  if (y < frame.brim - 1) pad.line('washline', 0, y, frame.width, y);
  else {
    pad.line('washline', 0, y, stand.axis - r - wall, y);
    pad.line('washline', stand.axis - r, y, stand.axis + r, y);
    pad.line('washline', stand.axis + r + wall, y, frame.width, y);
  }
  const x = frame.edge - 8;
  pad.path('hand', polygon([[x, y - 1.7], [x - (frame.phone ? 7.4 : 9.3), y - (frame.phone ? 14 : 16.7)], [x + (frame.phone ? 7.4 : 9.3), y - (frame.phone ? 14 : 16.7)]]));
  pad.line('level', x - 8, y + 3.6, x + 8, y + 3.6);
  pad.line('level', x - 4, y + 7.2, x + 4, y + 7.2);
}

/** `minutes`: how long after pouring the reading is of; 0 as poured. */
export function drawChief(pad: Pad, reading: Reading, frame: Frame, minutes = 0): void {
  const y = frame.washline ?? frame.brim + 80;
  const chief = frame.phone ? 30 : SIZE.chief, unit = frame.phone ? 14 : SIZE.unit;
  if (reading.glass !== null && frame.washline !== null) {
    figure(pad, 'washline', reading.glass.washline, frame.edge - (frame.phone ? 24 : 26), y - (frame.phone ? 9 : 12), chief, unit, 1);
  }
  const strength = reading.figures['strength'];
  if (strength !== undefined) {
    const base = y + (frame.phone ? 37 : 46);
    figure(pad, 'strength', strength, frame.edge, base, chief, unit, 1);
    const decimals = Math.max(1, decimalsFor(strength.low, strength.high));
    const spread = spreadShown(strength, decimals);
    const what = minutes > 0 ? words('then', { minutes }) : words('whole', {});
    const text = spread === '' ? what : frame.phone ? spread : `${spread}, ${what}`;
    pad.text(frame.edge, base + (frame.phone ? 15 : 18), [run(text, SIZE.small, 'ink2')], 'end');
  }
}

function figure(pad: Pad, name: string, value: Figure, x: number, y: number, size: number, unitSize: number, least: number): void {
  const unit = unitShown(value.unit);
  const text = shown(value.value, Math.max(least, decimalsFor(value.low, value.high)));
  pad.open({ id: `figure:${name}`, within: 'drink', role: 'figure', name: figureName('drink', name, value), figure: markOf('drink', name, value) });
  const width = textWidth(text, size, 500) + 6 + textWidth(unit, unitSize, 500);
  const tall = Math.max(size * 0.98, 44);
  pad.target({ x: x - width - 4, y: y - size * 0.8 - (tall - size * 0.98) * (name === 'washline' ? 1 : 0.4), width: width + 8, height: tall });
  pad.text(x, y, [run(text, size, 'ink', 500), run(unit, unitSize, 'ink', 500, 6)], 'end');
}
