import type { Document, GlassReading } from '@washline/engine';
import type { Reading } from './reading.ts';
import { drawBeside } from './figures/beside.ts';
import { drawChief, drawWashline } from './figures/chief.ts';
import { drawDimensions } from './figures/dimensions.ts';
import { drawRest } from './figures/rest.ts';
import { drawHandles } from './glass/handles.ts';
import { drawConsequence, drawUnset } from './figures/consequence.ts';
import { cutOff, EMPTY_GLASS, frameOf } from './frame.ts';
import { drawGarnish, drawRim } from './glass/garnish.ts';
import { drawGround } from './glass/ground.ts';
import { drawIce } from './glass/ice.ts';
import { drawLayers, drawLevels } from './glass/layers.ts';
import { holdsIce } from './glass/slush.ts';
import { drawWall } from './glass/wall.ts';
import { drawPoured } from './later/then.ts';
import type { Tide } from './hands/comb.ts';
import { drawTide } from './hands/tide.ts';
import { SIZE, run } from './pen/lettering.ts';
import { Pad } from './pen/pad.ts';
import type { Scheme } from './pen/tint.ts';
import { arrange } from './prep/arrange.ts';
import { flowOf } from './prep/flow.ts';
import { drawUpstream } from './prep/upstream.ts';
import type { Arranged, Drawing } from './shapes.ts';
import { words } from './words.ts';

/** What a finding says on the drawing: words of the sentence table, kept by whoever holds the language. */
export interface Said { readonly severity: 'stop' | 'warn' | 'note'; readonly head: string; readonly rest?: string | undefined; readonly path: readonly (string | number)[] }

export interface DrawOptions {
  /** room in CSS px of the layout */
  readonly width: number;
  readonly height: number;
  readonly scheme: Scheme;
  /** millimetres of the glass that one px covers: 25.4 / 96 draws it at true size on paper; absent: the largest that fits */
  readonly mmPerPx?: number | undefined;
  /** the glass as it was poured, where the reading is of a later moment, and how many minutes later that is */
  readonly poured?: { readonly glass: GlassReading; readonly minutes: number } | undefined;
  readonly document?: Document | null | undefined;
  readonly findings?: readonly Said[] | undefined;
  /** g of what each line puts in, by its path: amounts are lettered so where grams were chosen */
  readonly weights?: Readonly<Record<string, number>> | undefined;
  /** how vessels stood a moment ago: they stand so again where no more is lost by it, which spares the search for their places while a hand changes the text */
  readonly like?: Arranged | undefined;
  /** with `like`: for one frame, so that it is drawn in time; vessels may then lie over each other where they no longer have room */
  readonly hasty?: boolean;
  /** the levels of many hands, where they were run for this very text */
  readonly tide?: Tide | undefined;
}

/**
 * The whole drawing of a reading: ground, glass in section to scale with what stands in it, the washline and its numbers, dimensions,
 * and the vessels upstream. Levels are the reading's; what the reading does not say is not drawn.
 */
export function draw(whole: Reading, options: DrawOptions): Drawing {
  const pad = new Pad();
  const { scheme } = options;
  const flow = flowOf(whole, options.document ?? null, options.weights);
  const upstream = flow.preps.length > 0 || flow.build.vessel !== null;
  const frame = frameOf(whole.glass, { width: options.width, height: options.height, upstream, stopped: (options.findings ?? []).some((f) => f.severity === 'stop'), pxPerMm: options.mmPerPx === undefined ? undefined : 1 / options.mmPerPx });
  const shape = whole.glass ?? EMPTY_GLASS;
  const reading: Reading = whole.glass === null ? whole : { ...whole, glass: cutOff(whole.glass, frame) };
  drawGround(pad, frame, scheme);
  pad.open({ id: 'drink', within: null, role: 'reading', reading: 'drink' });
  drawChief(pad, reading, frame, options.poured?.minutes ?? 0);
  if (!frame.phone || options.height > 430) drawRest(pad, reading, frame, options.poured?.minutes ?? 0);
  pad.open({ id: 'glass', within: null, role: 'glass', name: words('aloud.drink', { drink: reading.drink, glass: reading.glass?.name ?? '' }) });
  if (reading.glass !== null) {
    drawGarnish(pad, reading.glass, frame.stand, scheme);
    drawLayers(pad, reading.glass, frame.stand, scheme, holdsIce(reading));
    pad.open({ id: 'levels', within: 'glass', role: 'wall' });
    drawLevels(pad, reading.glass, frame.stand);
    drawIce(pad, reading.glass, frame.stand, scheme);
  }
  pad.open({ id: 'wall', within: 'glass', role: 'wall' });
  drawWall(pad, shape, frame.stand, scheme);
  if (reading.glass !== null) {
    drawRim(pad, reading.glass, frame.stand);
    drawWashline(pad, reading.glass, frame, whole.glass?.washline_mm ?? reading.glass.washline_mm);
    if (options.poured !== undefined) drawPoured(pad, options.poured.glass, reading.glass, frame);
    else if (reading.glass === whole.glass) drawHandles(pad, reading.glass, frame);
    if (reading.glass === whole.glass) drawDimensions(pad, reading.glass, frame, Object.values(reading.preps).some((prep) => prep.vessel === 'siphon'));
    drawBeside(pad, reading, frame);
  }
  const bars = options.mmPerPx === undefined ? [] : [{ x: 0, y: frame.height - 70, width: 240, height: 70 }];
  const places = arrange(flow, reading, frame, [...pad.boxes.map(({ box }) => box), ...bars], options.like, options.hasty);
  drawUpstream(pad, flow, reading, frame, places, scheme);
  drawUnset(pad, reading, frame);
  drawConsequence(pad, reading, frame, places, options.findings ?? []);
  if (options.tide !== undefined && options.poured === undefined && reading.glass !== null) drawTide(pad, options.tide, reading.glass, frame.stand, frame, true);
  drawBars(pad, frame.height, frame.stand.scale, upstream ? places.k : null, places.rowK, frame.phone, options.mmPerPx !== undefined);
  return { ...pad.finish(options.width, options.height, frame.stand.scale, frame.washline, frame.stand.axis), arranged: places.as };
}

/** Lengths at the foot tell both scales. */
function drawBars(pad: Pad, height: number, scale: number, k: number | null, row: number | null, phone: boolean, one: boolean): void {
  if (phone && !one) return;
  pad.open({ id: 'bars', within: null, role: 'rule' });
  const bar = (x: number, px: number, text: string, y = height - 16): void => {
    pad.line('bar', x, y, x + px, y);
    pad.line('bar', x, y - 4, x, y + 4);
    pad.line('bar', x + px, y - 4, x + px, y + 4);
    pad.text(x + px + 8, y + 4, [run(text, SIZE.small, 'ink2')]);
  };
  if (one) bar(14, 20 * scale, words('bar-true', { mm: 20 }), height - (phone ? 74 : 58));
  if (phone) return;
  if (k === null && one) return;
  if (k === null) bar(14, 20 * scale, words('bar-glass', { mm: 20 }));
  else bar(14, 50 * k, words('bar', {}));
  if (k !== null && row !== null) bar(14, 50 * row, words('bar-row', {}), height - 34);
}
