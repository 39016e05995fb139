import type { Reading } from '../reading.ts';
import type { Said } from '../draw.ts';
import { HEAD_WIDTH, glassRoom, type Frame } from '../frame.ts';
import { SIZE, broken, cut, run, runsWidth, textWidth } from '../pen/lettering.ts';
import { overlap, type Box, type Pad } from '../pen/pad.ts';
import { polygon, rect } from '../pen/path.ts';
import type { Arrangement, Placed } from '../prep/board.ts';
import { heightY } from '../glass/stand.ts';
import { shown } from '../pen/numbers.ts';
import { words } from '../words.ts';

/** How many lines of a finding stand at a vessel, and their pitch, px. */
const MOST = 3, LINE = 15;

/** Stops and warnings where they bite: a solid upright block or an open triangle with the first words, at the vessel or in the glass. */
export function drawConsequence(pad: Pad, reading: Reading, frame: Frame, at: Arrangement, findings: readonly Said[]): void {
  const first = findings.find((f) => f.severity === 'stop');
  if (first !== undefined && frame.head !== null) drawHead(pad, frame, first);
  const shown = new Set<string>(), said: Box[] = [];
  const room = glassRoom(frame);
  for (const [i, finding] of findings.entries()) {
    if (finding.severity === 'note') continue;
    const key = finding.path[0] === 'preps' ? String(finding.path[1] ?? '') : 'glass';
    const rank = `${finding.severity}:${key}`;
    if (shown.has(rank) || (finding.severity === 'warn' && shown.has(`stop:${key}`))) continue;
    shown.add(rank);
    pad.open({ id: `finding:${i}`, within: null, role: 'finding', name: words('aloud.finding', { severity: finding.severity, what: finding.head }) });
    const placed = at.placed.find((p) => p.key === key);
    if (placed !== undefined && !frame.phone) {
      const x = placed.captionAt.x, y = placed.captionAt.y + placed.captionAt.height;
      const others = [...room, ...at.placed.flatMap((p) => (p === placed ? [] : [p.box, p.captionAt])), ...at.written.map((w) => w.box), ...at.streams.map((s) => s.label), ...said];
      const wide = widthBeside(placed, room[1]), lines = broken(finding.head, wide, SIZE.small, 500);
      const most = [MOST, 2, 1].find((n) => y + 4 + n * LINE <= frame.height && !others.some((box) => overlap(box, wordsAt(placed, lines.slice(0, n)))));
      if (most === undefined) {
        // No room under the caption: the mark alone, beside the name.
        mark(pad, finding.severity, x + 30 + runsWidth(placed.caption.name), placed.captionAt.y + 2);
        continue;
      }
      said.push(wordsAt(placed, lines.slice(0, most)));
      mark(pad, finding.severity, x + 2, y + 3);
      for (const [j, line] of lines.slice(0, most).entries()) pad.text(x + 14, y + 14 + j * LINE, [run(cut(j === most - 1 && lines.length > most ? `${line} …` : line, wide, SIZE.small, 500), SIZE.small, 'signal', 500)]);
    } else if (placed !== undefined) mark(pad, finding.severity, placed.captionAt.x + 22, placed.captionAt.y + 3);
    else if (frame.washline !== null && reading.glass !== null && finding.severity === 'stop' && frame.washline < frame.brim - 3) {
      // The block fills the gap between where the level stands and where it may stand.
      pad.path('stop', rect(frame.left - 12, frame.washline + 2, 5.5, frame.brim - frame.washline - 2));
    }
  }
}

/** A foam that did not set: where the level would stand, as a phantom, and the gap to where it does, filled. */
export function drawUnset(pad: Pad, reading: Reading, frame: Frame): void {
  const unset = reading.glass?.unset;
  if (unset === undefined || frame.washline === null) return;
  const y = heightY(frame.stand, unset.washline_mm), gap = frame.washline - y;
  if (gap < 8 || y < frame.brim - 60) return;
  pad.open({ id: 'unset', within: 'glass', role: 'finding', name: words('aloud.unset', { name: unset.name, mm: shown(unset.washline_mm, 1) }) });
  pad.line('phantom', frame.left + 6, y, frame.right + 34, y);
  const x = frame.stand.axis + (frame.right - frame.left) * 0.02;
  pad.path('stop', rect(x, y + 1, 5.5, gap - 3));
  pad.text(x + 12, y - 6, [run(words('unset', {}), SIZE.body, 'signal', 500), ...(frame.phone ? [] : [run(shown(unset.washline_mm, 1), SIZE.small, 'ink2', 400, 8)])]);
}

/** How wide the words of a finding may run: beside its vessel they keep to the caption's side of it, left of the glass out of its dimensions. */
function widthBeside({ captionAt, box }: Placed, dimensions: Box): number {
  const { x, y, width, height } = captionAt, beside = x + width <= box.x + 1, left = x < dimensions.x && y + height + 4 + MOST * LINE > dimensions.y;
  const most = beside ? box.x - x - 20 : left ? Math.min(150, dimensions.x - x - 14) : 150;
  return Math.max(84, most);
}

/** What lines of a finding take up under the caption of a vessel. */
function wordsAt(placed: Placed, lines: readonly string[]): Box {
  const { x, y, height } = placed.captionAt;
  return { x, y: y + height, width: 14 + Math.max(...lines.map((line) => textWidth(line, SIZE.small, 500))), height: 4 + lines.length * LINE };
}

/** What stops the drink, in the size of a second head, and why under it. */
function drawHead(pad: Pad, frame: Frame, stop: Said): void {
  if (frame.head === null) return;
  const { x, y } = frame.head, left = x + 16, width = HEAD_WIDTH - 16;
  pad.open({ id: 'stop', within: null, role: 'finding', name: words('aloud.finding', { severity: 'stop', what: `${stop.head} ${stop.rest ?? ''}`.trim() }) });
  const size = broken(stop.head, width, SIZE.head, 500).length > 2 ? SIZE.figure : SIZE.head, pitch = size * 1.18;
  const lines = broken(stop.head, width, size, 500).slice(0, 2);
  for (const [i, line] of lines.entries()) pad.text(left, y + size * 0.8 + i * pitch, [run(i === 1 && lines.length === 2 ? cut(line, width, size, 500) : line, size, 'signal', 500)]);
  pad.path('stop', rect(x, y, 5.5, size * 0.86 + (lines.length - 1) * pitch));
  const under = y + size * 0.8 + (lines.length - 1) * pitch + 20;
  for (const [i, line] of broken(stop.rest ?? '', width, SIZE.name).slice(0, 2).entries()) pad.text(left, under + i * 18, [run(line, SIZE.name, 'ink2')]);
}

function mark(pad: Pad, severity: 'stop' | 'warn' | 'note', x: number, y: number): void {
  if (severity === 'stop') pad.path('stop', rect(x, y, 5.5, 14));
  else pad.path('warn', polygon([[x + 4, y + 2], [x + 8.6, y + 11], [x - 0.6, y + 11]]));
}
