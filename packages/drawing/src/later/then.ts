import type { GlassReading } from '@washline/engine';
import type { Frame } from '../frame.ts';
import { blocks, isLoose } from '../glass/ice.ts';
import { radiusAt } from '../glass/profile.ts';
import { heightY } from '../glass/stand.ts';
import { SIZE, run } from '../pen/lettering.ts';
import { shown } from '../pen/numbers.ts';
import type { Pad } from '../pen/pad.ts';
import { rect } from '../pen/path.ts';
import type { Reading } from '../reading.ts';

/** What is told of a later moment; the drink's other figures are those of its pouring and are not shown then. */
const TOLD = ['strength', 'temperature', 'volume', 'co2'] as const;

/**
 * A reading as it is so many whole minutes after pouring: its glass and its figures then. Null where that minute is not told, or has no glass.
 * @param reading one that was asked for each minute
 */
export function thenOf(reading: Reading, minutes: number): Reading | null {
  const then = reading.later?.find((one) => one.minutes === minutes);
  if (then?.glass === undefined) return null;
  const figures = Object.fromEntries(TOLD.flatMap((name) => { const figure = then.figures[name]; return figure === undefined ? [] : [[name, figure]]; }));
  return { ...reading, figures, glass: then.glass };
}

/** Where level and ice stood as it was poured, as phantoms in the glass. */
export function drawPoured(pad: Pad, poured: GlassReading, now: GlassReading, frame: Frame): void {
  const { stand } = frame;
  pad.open({ id: 'poured', within: 'glass', role: 'rule' });
  for (const ice of poured.ice) {
    if (isLoose(ice)) continue;
    if (ice.kind === 'sphere') { pad.circle('phantom', stand.axis, heightY(stand, (ice.from_mm + ice.to_mm) / 2), ((ice.to_mm - ice.from_mm) / 2) * stand.scale); continue; }
    for (const { x, y, width, height, turn } of blocks(poured, ice, stand)) if (turn === 0) pad.path('phantom', rect(x, y, width, height));
  }
  const apart = Math.abs(poured.washline_mm - now.washline_mm) * stand.scale;
  if (apart < 3) return;
  const y = heightY(stand, poured.washline_mm), r = radiusAt(poured.profile, poured.washline_mm) * stand.scale;
  pad.line('phantom', stand.axis - r, y, stand.axis + r, y);
  if (apart >= 11) pad.text(stand.axis - r + 6, y - 4, [run(shown(poured.washline_mm, 1), SIZE.note, 'ink2')]);
}
