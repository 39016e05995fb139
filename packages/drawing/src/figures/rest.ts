import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { SIZE, run, textWidth } from '../pen/lettering.ts';
import { figureShown } from '../pen/numbers.ts';
import type { Pad } from '../pen/pad.ts';
import { words } from '../words.ts';
import { holdsIce } from '../glass/slush.ts';
import { volumeOnLeader } from './beside.ts';
import { figureName, markOf } from './mark.ts';

const ORDER = ['volume', 'sugar', 'acidity', 'ph', 'brix', 'density', 'dilution', 'frozen', 'co2', 'temperature', 'ethanol', 'energy', 'cost'] as const;
const PHONE = ['volume', 'sugar', 'acidity', 'dilution', 'frozen', 'temperature'] as const;

/** The other figures of the whole drink, in one row under the glass: value above, its word below. */
export function drawRest(pad: Pad, reading: Reading, frame: Frame, minutes = 0): void {
  const names: readonly string[] = (frame.phone ? PHONE : ORDER).filter((name) => (name !== 'volume' || !volumeOnLeader(reading)) && (name !== 'frozen' || holdsIce(reading)));
  const there = names.flatMap((name) => { const figure = reading.figures[name]; return figure === undefined ? [] : [{ name, figure, value: figureShown(figure), word: words(minutes > 0 && name === 'temperature' ? 'short.temperature.then' : `short.${name}`, {}) }]; });
  if (there.length === 0) return;
  const size = frame.phone ? 14 : SIZE.body;
  const gap = frame.phone ? 12 : 24, room = frame.phone ? frame.width - 24 : frame.width - 18 - Math.max(frame.dims - 40, 150);
  const wide = (t: { value: string; word: string }): number => Math.max(textWidth(t.value, size, 500), textWidth(t.word, SIZE.note), 24);
  const list = [...there];
  while (list.length > 1 && list.reduce((sum, t) => sum + wide(t) + gap, -gap) > room) list.splice(list.findIndex((t) => DROP.find((d) => list.some((l) => l.name === d)) === t.name) ?? list.length - 1, 1);
  const total = list.reduce((sum, t) => sum + wide(t), 0);
  const between = list.length === 1 ? 0 : Math.min(gap * 1.7, (room - total) / (list.length - 1));
  let x = frame.phone ? 12 : frame.edge - total - between * (list.length - 1);
  const y = frame.height - (frame.phone ? 28 : 33);
  for (const t of list) {
    const width = wide(t);
    pad.open({ id: `figure:${t.name}`, within: 'drink', role: 'figure', name: figureName('drink', t.name, t.figure), figure: markOf('drink', t.name, t.figure) });
    pad.target({ x: x - 5, y: y - (frame.phone ? 18 : 15), width: Math.max(width + 10, frame.phone ? 44 : 24), height: frame.phone ? 44 : 36 });
    const at = frame.phone ? x : x + width, anchor = frame.phone ? 'start' as const : 'end' as const;
    pad.text(at, y, [run(t.value, size, 'ink', 500)], anchor);
    pad.text(at, y + 16, [run(t.word, SIZE.note, 'ink3')], anchor);
    x += width + between;
  }
}

/** What goes first where the row is too long. */
const DROP = ['cost', 'density', 'brix', 'ethanol', 'energy', 'ph', 'acidity', 'co2', 'dilution', 'temperature', 'sugar', 'frozen', 'volume'];
