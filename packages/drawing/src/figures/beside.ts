import type { Figure, Grade } from '@washline/engine';
import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { isLoose } from '../glass/ice.ts';
import { iceWords } from '../glass/ice-words.ts';
import { radiusAt } from '../glass/profile.ts';
import { heightY } from '../glass/stand.ts';
import { SIZE, cut, run, textWidth } from '../pen/lettering.ts';
import { decimalsFor, degreesShown, shown, unitShown, volumeShown } from '../pen/numbers.ts';
import { inUnits } from '../pen/units.ts';
import type { Pad } from '../pen/pad.ts';
import type { FigureMark } from '../shapes.ts';
import { words } from '../words.ts';
import { shelves } from './column.ts';
import { figureName, markOf } from './mark.ts';

interface Item { readonly id: string; readonly x: number; readonly y: number; readonly figure: string; readonly under: string; readonly grade: Grade | null; readonly mark: FigureMark | null; readonly aloud: string | null; readonly reading: string | null }

/** Does the glass hold one layer alone, whose volume is the drink's? Then it stands on its leader and not in the row. */
export function volumeOnLeader(reading: Reading): boolean {
  return reading.figures['volume'] !== undefined && reading.glass?.layers.filter((l) => l.to_mm - l.from_mm > 0.05).length === 1;
}

/** Figures of what stands in the glass, each on its shelf, under the strength. */
export function drawBeside(pad: Pad, reading: Reading, frame: Frame): void {
  const items = itemsOf(reading, frame);
  if (items.length === 0) return;
  const shelfX = frame.edge - frame.shelf;
  const room = roomFor(items.length, frame);
  const places = shelves(items.slice(0, room.most), shelfX, room.pitch, room.top, room.bottom);
  for (const { index, y } of places) {
    const item = items[index] as Item;
    const within = item.reading !== null ? `beside:${item.id}` : item.mark !== null ? 'drink' : 'glass';
    pad.open({ id: `leader:${item.id}`, within: 'glass', role: 'leader' });
    pad.path('leader', [['M', item.x, item.y], ['L', shelfX, y], ['L', frame.edge, y]], dashOf(item.grade));
    pad.circle('dot', item.x, item.y, 2.2);
    if (item.reading !== null) pad.open({ id: `beside:${item.id}`, within: null, role: 'reading', reading: item.reading });
    const size = frame.phone ? 16 : SIZE.figure;
    pad.open({ id: `value:${item.id}`, within, role: 'figure', ...(item.aloud === null ? {} : { name: item.aloud }), ...(item.mark === null ? {} : { figure: item.mark }) });
    if (item.mark !== null) pad.target({ x: frame.edge - textWidth(item.figure, size, 500) - 5, y: y - (frame.phone ? 34 : 25), width: Math.max(frame.phone ? 44 : 24, textWidth(item.figure, size, 500) + 10), height: frame.phone ? 44 : 25 });
    pad.text(frame.edge, y - 6, [run(item.figure, size, 'ink', 500)], 'end');
    if (room.pitch >= 40) pad.text(frame.edge, y + 15, [run(cut(item.under, frame.shelf + 10, SIZE.small), SIZE.small, 'ink2')], 'end');
  }
}

/** Under the strength, or over the level where the line stands too low; closer where there are many, and then without second lines. */
function roomFor(n: number, frame: Frame): { readonly top: number; readonly bottom: number; readonly pitch: number; readonly most: number } {
  const line = frame.washline ?? frame.brim, wish = frame.phone ? 52 : 62;
  const under = { top: line + (frame.phone ? 88 : 112), bottom: frame.height - (frame.phone ? 66 : 72) };
  const over = { top: frame.phone ? 166 : 170, bottom: line - (frame.phone ? 62 : 84) };
  const fits = (r: { top: number; bottom: number }): number => (r.bottom - r.top) / Math.max(1, n - 1);
  const range = fits(under) >= 40 || fits(under) >= fits(over) ? under : over;
  const span = Math.max(0, range.bottom - range.top), pitch = n <= 1 ? wish : Math.min(wish, Math.max(26, span / (n - 1)));
  return { ...range, pitch, most: span <= 0 ? 1 : Math.floor(span / pitch + 1e-6) + 1 };
}

function itemsOf(reading: Reading, frame: Frame): Item[] {
  const { glass } = reading;
  if (glass === null) return [];
  const { stand } = frame;
  const layers = glass.layers.filter((l) => l.to_mm - l.from_mm > 0.05);
  const items: Item[] = [];
  for (const [i, layer] of layers.entries()) {
    const y = heightY(stand, layer.from_mm + (layer.to_mm - layer.from_mm) * (layer.kind === 'foam' ? 0.55 : 0.66));
    const h = layer.from_mm + (layer.to_mm - layer.from_mm) * 0.6;
    const x = stand.axis + radiusAt(glass.profile, h) * stand.scale * (layer.kind === 'foam' ? 0.8 : 0.9);
    const volume = words(layer.kind === 'foam' ? 'layer.foam' : layer.kind === 'gel' ? 'layer.gel' : layers.filter((l) => l.kind === 'liquid').length > 1 ? 'layer.named' : 'layer.drink', { ml: volumeShown(layer.mL), name: layer.name });
    const own = reading.preps[layer.name]?.figures['strength'];
    const temperature = reading.figures['temperature'];
    const degrees = !frame.phone && temperature !== undefined && layer.kind === 'liquid' ? `, ${degreesShown(temperature.value)}` : '';
    if (reading.figures['volume'] !== undefined && volumeOnLeader(reading)) {
      items.push(of(`layer-${i}`, x, y, 'drink', 'volume', reading.figures['volume'], words('layer.one', {}) + degrees));
    } else if (own !== undefined && layer.kind !== 'liquid') {
      items.push(of(`layer-${i}`, x, y, `prep:${layer.name}`, 'strength', own, volume));
    } else if (layer.strength !== null) {
      items.push({ id: `layer-${i}`, x, y, figure: `${shown(layer.strength, 1)} % vol`, under: volume + (i === layers.findIndex((l) => l.kind === 'liquid') ? degrees : ''), grade: null, mark: null, aloud: null, reading: null });
    } else items.push({ id: `layer-${i}`, x, y, figure: volumeShown(layer.mL), under: layer.name, grade: null, mark: null, aloud: null, reading: null });
  }
  const ice = glass.ice.filter((p) => p.to_mm > p.from_mm);
  for (const [i, p] of ice.entries()) {
    const across = p.count > 1 || isLoose(p) ? radiusAt(glass.profile, p.from_mm) * stand.scale * 0.5 : (Math.min(p.size_mm ?? 30, 2 * radiusAt(glass.profile, p.from_mm)) / 2) * stand.scale * 0.68;
    items.push({
      id: `ice-${i}`, x: stand.axis + across, y: heightY(stand, p.from_mm + (p.to_mm - p.from_mm) * 0.18), figure: `${shown(p.mass_g, 0)} g`, grade: null, mark: null, aloud: null, reading: null,
      under: frame.phone ? iceWords(p) : words((p.from_mm > 1 ? 'floats' : 'stands') + (p.count > 1 && !isLoose(p) ? '.many' : ''), { what: iceWords(p) }),
    });
  }
  return items;
}

function of(id: string, x: number, y: number, reading: string, name: string, told: Figure, under: string): Item {
  const figure = inUnits(told), decimals = decimalsFor(figure.low, figure.high, name === 'strength' ? 1 : 0);
  return { id, x, y, under, grade: figure.grade, reading: reading === 'drink' ? null : reading, mark: markOf(reading, name, told), aloud: figureName(reading.replace(/^prep:/, ''), name, figure), figure: `${shown(figure.value, decimals)} ${unitShown(figure.unit)}`.trim() };
}

/** A leader's dash tells the grade before anything is pressed. */
export function dashOf(grade: Grade | null): { readonly dash?: readonly number[]; readonly round?: boolean; readonly width?: number } {
  if (grade === 'predicted') return { dash: [5, 3] };
  if (grade === 'trade' || grade === 'memory') return { dash: [0.1, 3], round: true, width: 1.1 };
  return {};
}
