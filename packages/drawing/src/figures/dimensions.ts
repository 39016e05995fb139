import type { GlassReading } from '@washline/engine';
import type { Frame } from '../frame.ts';
import { brimHeight, radiusAt } from '../glass/profile.ts';
import { heightY } from '../glass/stand.ts';
import { SIZE, run } from '../pen/lettering.ts';
import { shown } from '../pen/numbers.ts';
import type { Pad } from '../pen/pad.ts';
import { polygon } from '../pen/path.ts';
import { words } from '../words.ts';
import { spread } from './column.ts';

interface Stretch { readonly from: number; readonly to: number; readonly what: string }

/** Millimetres in one column left of the glass: each layer, what the ice lifts over it, and what is free to the brim. */
export function stretches(glass: GlassReading): Stretch[] {
  const brim = brimHeight(glass.profile);
  const out: Stretch[] = glass.layers.filter((l) => l.to_mm - l.from_mm > 0.05).map((l) => ({ from: l.from_mm, to: l.to_mm, what: l.name }));
  if (out[0] !== undefined) out[0] = { ...out[0], from: Math.min(out[0].from, 0) };
  const top = Math.max(out.at(-1)?.to ?? 0, glass.washline_mm);
  const under = out.at(-1)?.to ?? 0;
  if (top - under > 0.5 && out.length > 0) out.push({ from: under, to: top, what: words('ice.one', {}) });
  if (brim - top > 0.5) out.push({ from: top, to: brim, what: words('free', {}) });
  return out;
}

/** `hose`: a siphon's hose comes in at the left, and small numbers keep out of its way. */
export function drawDimensions(pad: Pad, glass: GlassReading, frame: Frame, hose: boolean): void {
  const list = stretches(glass);
  if (list.length === 0 || frame.phone) return;
  const { stand, dims: x } = frame;
  pad.open({ id: 'dimensions', within: 'glass', role: 'dimension' });
  for (const h of new Set(list.flatMap((s) => [s.from, s.to]))) {
    const edge = stand.axis - radiusAt(glass.profile, h) * stand.scale - glass.wall_mm * stand.scale - 4;
    if (Math.abs(h - glass.washline_mm) > 0.05) pad.line('extension', x - 6, heightY(stand, h), edge, heightY(stand, h));
  }
  const small = list.filter((s) => (s.to - s.from) * stand.scale < 34);
  // the washline runs through the column: small numbers keep to their own side of it
  const line = frame.washline ?? 0, over = small.filter((s) => s.from > glass.washline_mm - 0.05);
  const ysOf = (part: readonly Stretch[], top: number, bottom: number): number[] => spread(part.map((s) => heightY(stand, (s.from + s.to) / 2)).reverse(), 15, top, bottom).reverse();
  const ys = [...ysOf(small.slice(0, small.length - over.length), line + 11, frame.height - 10), ...ysOf(over, 14, line - 9)];
  for (const s of list) {
    const y0 = heightY(stand, s.from), y1 = heightY(stand, s.to), middle = (y0 + y1) / 2, text = shown(s.to - s.from, 1);
    const tight = small.indexOf(s);
    if (tight < 0) {
      pad.line('dimension', x, y0, x, middle + 9);
      pad.line('dimension', x, middle - 9, x, y1);
      pad.text(x, middle + 4.2, [run(text, SIZE.small)], 'middle');
    } else {
      const y = ys[tight] ?? middle;
      if (y0 - y1 > 4) pad.line('dimension', x, y0, x, y1);
      if (Math.abs(y - middle) > 5) pad.line('dimension', x - 2, middle, x - 9, y);
      if (hose && Math.abs(y - middle) <= 5 && y0 - y1 > 15) pad.text(x + 8, y + 4.2, [run(text, SIZE.small)]);
      else pad.text(x - 11, y + 4.2, [run(text, SIZE.small)], 'end');
    }
    if (y0 - y1 > 16) {
      pad.path('arrowhead', polygon([[x, y0], [x - 1.4, y0 - 7], [x + 1.4, y0 - 7]]));
      pad.path('arrowhead', polygon([[x, y1], [x - 1.4, y1 + 7], [x + 1.4, y1 + 7]]));
    }
  }
}
