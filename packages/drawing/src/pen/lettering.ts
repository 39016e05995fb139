import widths from './letter-widths.json' with { type: 'json' };
import type { Run, Tone } from '../shapes.ts';

/** Sizes in px of the layout, by what they are for. */
export const SIZE = { note: 11.5, small: 12, body: 13, name: 14, figure: 19, head: 24, chief: 44, unit: 24 } as const;

type Weight = 400 | 500 | 600;
const table = widths as unknown as Record<string, Record<string, number>>;

/** How wide a text is set, in the unit of `size`; a letter the table does not have counts as the widest of its weight. */
export function textWidth(text: string, size: number, weight: Weight = 400): number {
  const key = `${weight}${text}`;
  let em = known.get(key);
  if (em === undefined) {
    const row = table[String(weight)] ?? {};
    em = 0;
    for (const letter of text) em += row[letter] ?? 1;
    if (known.size > 4000) known.clear();
    known.set(key, em);
  }
  return em * size;
}
const known = new Map<string, number>();

export function runsWidth(runs: readonly Run[]): number {
  let sum = 0;
  for (const run of runs) sum += (run.gap ?? 0) + textWidth(run.text, run.size, run.weight);
  return sum;
}

export function run(text: string, size: number, tone: Tone = 'ink', weight: Weight = 400, gap = 0): Run {
  return gap === 0 ? { text, size, weight, tone } : { text, size, weight, tone, gap };
}

/** The words of a text broken into lines no wider than `width`; a single word may be wider. */
export function broken(text: string, width: number, size: number, weight: Weight = 400): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, weight) > width) { lines.push(line); line = word; } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** A text cut to `width`, with an ellipsis when it does not fit. */
export function cut(text: string, width: number, size: number, weight: Weight = 400): string {
  if (textWidth(text, size, weight) <= width) return text;
  let short = text;
  while (short.length > 1 && textWidth(`${short}…`, size, weight) > width) short = short.slice(0, -1).trimEnd();
  return `${short}…`;
}
