import type { GlassReading } from '@washline/engine';
import type { Pad } from '../pen/pad.ts';
import { SIZE, run } from '../pen/lettering.ts';
import type { Step } from '../pen/path.ts';
import { tint, type Scheme } from '../pen/tint.ts';
import { words } from '../words.ts';
import { brimHeight, radiusAt } from './profile.ts';
import { heightY, type Stand } from './stand.ts';

type Form = 'blade' | 'leaf' | 'twist' | 'slice' | 'cherry' | 'grated' | 'rim' | 'other';

/** What a garnish is drawn as, by the words of the trade. */
export function formOf(garnish: string): Form {
  const text = garnish.toLowerCase();
  if (/\brim\b|\bsalt\b/.test(text)) return 'rim';
  if (/nutmeg|grated|ground|dust|zested/.test(text)) return 'grated';
  if (/pineapple (leaf|leaves|frond)/.test(text)) return 'blade';
  if (/twist|peel|zest|spiral/.test(text)) return 'twist';
  if (/cherr|olive|berr|onion/.test(text)) return 'cherry';
  if (/slice|wheel|wedge|half.moon/.test(text)) return 'slice';
  if (/lea(f|ves)|mint|sprig|basil|shiso|sage|frond/.test(text)) return 'leaf';
  return 'other';
}

/** Garnishes are seen, not cut: behind the wall, down to where they stand. */
export function drawGarnish(pad: Pad, glass: GlassReading, stand: Stand, scheme: Scheme): void {
  const brim = heightY(stand, brimHeight(glass.profile));
  const top = heightY(stand, Math.max(glass.washline_mm, 0));
  const rim = stand.axis + radiusAt(glass.profile, brimHeight(glass.profile)) * stand.scale;
  for (const [i, what] of glass.garnish.slice(0, 3).entries()) {
    pad.open({ id: `garnish:${i}`, within: 'glass', role: 'garnish', name: words('aloud.garnish', { what }) });
    const x = rim - 56 - i * 46;
    const k = Math.min(1, stand.scale / 3.4);
    switch (formOf(what)) {
      case 'blade': blades(pad, x, top, brim, k); break;
      case 'leaf': leaf(pad, x + 14, Math.max(top, brim), k); break;
      case 'twist': twist(pad, x + 8, Math.max(top, brim) - 8, k, tint('#f2dc8a', { at: 'upstream', scheme })); break;
      case 'slice': slice(pad, rim - i * 46, brim + 2, k, tint('#f2dc8a', { at: 'upstream', scheme })); break;
      case 'cherry': cherry(pad, x + 10, top, k, tint('#c8545a', { at: 'upstream', scheme })); break;
      case 'grated': flecks(pad, stand, glass, top); break;
      case 'rim': break;
      case 'other': pad.text(stand.axis, Math.min(brim, top) - 14 - i * 15, [run(what, SIZE.small, 'ink2')], 'middle');
    }
  }
}

/** Salt on the outer side of the rim is drawn over the wall. */
export function drawRim(pad: Pad, glass: GlassReading, stand: Stand): void {
  if (!glass.garnish.some((g) => formOf(g) === 'rim')) return;
  const brim = heightY(stand, brimHeight(glass.profile)), r = radiusAt(glass.profile, brimHeight(glass.profile)) * stand.scale + Math.max(glass.wall_mm * stand.scale, 2.4);
  pad.open({ id: 'rim', within: 'glass', role: 'garnish' });
  for (const side of [-1, 1]) for (let i = 0; i < 14; i += 1) {
    const size = 2 + ((i * 5) % 8) / 5, y = brim - 3 + (i % 7) * 1.5 * stand.scale, x = stand.axis + side * (r + 2 + ((i * 3) % 4) * 1.3);
    pad.path('garnish', [['M', x, y], ['L', x + size, y + 0.6], ['L', x + size - 0.5, y + size], ['L', x - 0.5, y + size - 0.5], ['Z']], { fill: 'sheet', stroke: 'ink2', width: 0.6 });
  }
}

function blades(pad: Pad, x: number, top: number, brim: number, k: number): void {
  const small = top - (top - brim) * 0.72 - 22 * k, tall = brim - 82 * k;
  const blade = (left: number, right: number, tip: [number, number], lean: number): Step[] => [
    ['M', left, top + 2], ['C', left - 8 * k, top - (top - tip[1]) * 0.45, left + lean * 0.1, top - (top - tip[1]) * 0.8, tip[0], tip[1]],
    ['C', tip[0] + 2 * k, top - (top - tip[1]) * 0.7, right + 6 * k, top - (top - tip[1]) * 0.35, right, top + 2], ['Z'],
  ];
  pad.path('garnish', blade(x - 6 * k, x + 10 * k, [x - 13 * k, small], 0), { fill: 'sheet' });
  pad.path('garnish', [['M', x, top], ['C', x - 1, top - (top - small) * 0.5, x - 6 * k, top - (top - small) * 0.8, x - 12 * k, small + 10]], { stroke: 'ink3', width: 0.6 });
  pad.path('garnish', blade(x + 6 * k, x + 28 * k, [x + 36 * k, tall], 30 * k), { fill: 'sheet' });
  pad.path('garnish', [['M', x + 13 * k, top], ['C', x + 12 * k, top - (top - tall) * 0.4, x + 22 * k, top - (top - tall) * 0.75, x + 35 * k, tall + 10], ['M', x + 20 * k, top], ['C', x + 22 * k, top - (top - tall) * 0.35, x + 27 * k, top - (top - tall) * 0.6, x + 31 * k, tall + 46 * k]], { stroke: 'ink3', width: 0.6 });
  const thorns: Step[] = [];
  for (let i = 1; i < 7; i += 1) {
    const y = top - ((top - tall) * i) / 8;
    const bow = Math.sin((i / 8) * Math.PI);
    thorns.push(['M', x + 3 * k + (i / 8) ** 2 * 20 * k - bow * 2 * k + 1, y], ['L', x + (i / 8) ** 2 * 20 * k - bow * 2 * k - 1, y - 4]);
    thorns.push(['M', x + 30 * k + (i / 8) * 5 * k + bow * 1.5 * k, y], ['L', x + 33 * k + (i / 8) * 5 * k + bow * 1.5 * k, y - 4]);
  }
  pad.path('garnish', thorns, { stroke: 'ink2', width: 0.8 });
}

function leaf(pad: Pad, x: number, top: number, k: number): void {
  const tip = top - 96 * k;
  pad.path('garnish', [['M', x, top + 8], ['L', x, top - 12 * k], ['C', x - 34 * k, top - 34 * k, x - 26 * k, tip + 30 * k, x, tip], ['C', x + 26 * k, tip + 30 * k, x + 34 * k, top - 34 * k, x, top - 12 * k]], { fill: 'sheet' });
  const veins: Step[] = [['M', x, top - 12 * k], ['L', x, tip + 8]];
  for (let i = 0; i < 5; i += 1) {
    const y = top - (22 + i * 13) * k, reach = (19 - Math.abs(i - 1.6) * 3.4) * k;
    veins.push(['M', x, y], ['L', x - reach, y - 11 * k], ['M', x, y], ['L', x + reach, y - 11 * k]);
  }
  pad.path('garnish', veins, { stroke: 'ink3', width: 0.7 });
}

function twist(pad: Pad, x: number, y: number, k: number, peel: `#${string}`): void {
  const ribbon: Step[] = [
    ['M', x - 26 * k, y - 62 * k], ['C', x + 6 * k, y - 74 * k, x + 34 * k, y - 56 * k, x + 8 * k, y - 36 * k], ['C', x - 8 * k, y - 24 * k, x + 30 * k, y - 22 * k, x + 20 * k, y + 4 * k],
    ['L', x + 6 * k, y + 4 * k], ['C', x + 14 * k, y - 14 * k, x - 26 * k, y - 20 * k, x - 6 * k, y - 38 * k], ['C', x + 12 * k, y - 52 * k, x - 2 * k, y - 60 * k, x - 24 * k, y - 50 * k], ['Z'],
  ];
  pad.path('garnish', ribbon, { fill: peel });
  const pores: Step[] = [];
  for (const [dx, dy] of [[-14, -59], [-2, -61], [9, -56], [14, -49], [6, -41], [16, -14], [14, -4]] as const) pores.push(['M', x + dx * k, y + dy * k], ['L', x + dx * k + 0.01, y + dy * k]);
  pad.path('dot', pores, { fill: undefined, stroke: 'ink3', width: 1.5, round: true });
}

function slice(pad: Pad, x: number, y: number, k: number, flesh: `#${string}`): void {
  const r = 34 * k;
  pad.circle('garnish', x, y, r, { fill: 'sheet' });
  pad.circle('garnish', x, y, r - 3.5, { fill: flesh, stroke: 'ink2', width: 0.8 });
  const spokes: Step[] = [];
  for (let i = 0; i < 9; i += 1) { const a = (i * 2 * Math.PI) / 9 - Math.PI / 2; spokes.push(['M', x, y], ['L', x + Math.cos(a) * (r - 4), y + Math.sin(a) * (r - 4)]); }
  pad.path('garnish', spokes, { stroke: 'ink2', width: 0.8 });
}

function cherry(pad: Pad, x: number, top: number, k: number, flesh: `#${string}`): void {
  const y = top - 12 * k;
  pad.path('garnish', [['M', x, y - 12 * k], ['C', x + 4 * k, y - 40 * k, x + 18 * k, y - 56 * k, x + 34 * k, y - 64 * k]], {});
  pad.line('garnish', x - 44 * k, y + 4 * k, x + 44 * k, y - 5 * k, { width: 1 });
  pad.circle('garnish', x, y, 15 * k, { fill: flesh });
}

function flecks(pad: Pad, stand: Stand, glass: GlassReading, top: number): void {
  const r = radiusAt(glass.profile, glass.washline_mm) * stand.scale * 0.5;
  const marks: Step[] = [];
  for (let i = 0; i < 46; i += 1) {
    const u = ((i * 0.618) % 1) * 2 - 1, x = stand.axis + u * r, y = top - 1.5 - ((i * 0.377) % 1) * 5 * (1 - u * u);
    marks.push(['M', x, y], ['L', x + 1.6, y - ((i % 3) - 1)]);
  }
  pad.path('garnish', marks, { stroke: 'ink', width: 0.9 });
}
