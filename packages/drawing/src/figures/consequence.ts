import type { Reading } from '../reading.ts';
import type { Said } from '../draw.ts';
import { HEAD_WIDTH, type Frame } from '../frame.ts';
import { SIZE, broken, cut, run, runsWidth } from '../pen/lettering.ts';
import { textBox, type Pad } from '../pen/pad.ts';
import { polygon, rect } from '../pen/path.ts';
import type { Arrangement } from '../prep/arrange.ts';
import { saidHeight, type SaidAs } from '../prep/caption.ts';
import { heightY } from '../glass/stand.ts';
import { shown } from '../pen/numbers.ts';
import { words } from '../words.ts';

/** Stops and warnings where they bite: a solid upright block or an open triangle with the first words, at the vessel or in the glass. */
export function drawConsequence(pad: Pad, reading: Reading, frame: Frame, at: Arrangement, findings: readonly Said[]): void {
  const first = findings.find((f) => f.severity === 'stop');
  if (first !== undefined && frame.head !== null) drawHead(pad, frame, first);
  const told = new Set<string>();
  for (const [i, finding] of findings.entries()) {
    if (finding.severity === 'note') continue;
    const key = keyOf(finding), rank = `${finding.severity}:${key}`;
    if (told.has(rank) || (finding.severity === 'warn' && told.has(`stop:${key}`))) continue;
    told.add(rank);
    const placed = at.placed.find((p) => p.key === key);
    if (placed !== undefined && !frame.phone && placed.caption.said?.index !== i) continue;
    pad.open({ id: `finding:${i}`, within: null, role: 'finding', name: words('aloud.finding', { severity: finding.severity, what: finding.head }) });
    if (placed !== undefined && !frame.phone) {
      const { caption, captionAt } = placed, lines = caption.said?.lines ?? [];
      const y = captionAt.y + caption.height - saidHeight(caption.said);
      // Where vessels stand small there are no words: the mark alone, beside the name.
      if (lines.length === 0) mark(pad, finding.severity, captionAt.x + 30 + runsWidth(caption.name[0] ?? []), captionAt.y + 2);
      else mark(pad, finding.severity, captionAt.x + 2, y + 3);
      for (const [j, line] of lines.entries()) pad.text(captionAt.x + 14, y + 14 + j * 15, [run(line, SIZE.small, 'signal', 500)]);
    } else if (placed !== undefined) mark(pad, finding.severity, placed.captionAt.x + 22, placed.captionAt.y + 3);
    else if (frame.washline !== null && reading.glass !== null && finding.severity === 'stop' && frame.washline < frame.brim - 3) {
      // The block fills the gap between where the level stands and where it may stand.
      pad.path('stop', rect(frame.left - 12, frame.washline + 2, 5.5, frame.brim - frame.washline - 2));
    }
  }
}

function keyOf(finding: Said): string { return finding.path[0] === 'preps' ? String(finding.path[1] ?? '') : 'glass'; }

/** What is said at each prep: its first stop, else its first warning. */
export function saidAt(findings: readonly Said[]): Map<string, SaidAs> {
  const out = new Map<string, SaidAs>();
  for (const severity of ['stop', 'warn'] as const) for (const [index, finding] of findings.entries()) {
    const key = keyOf(finding);
    if (finding.severity === severity && !out.has(key)) out.set(key, { severity, index, head: finding.head });
  }
  return out;
}

/** A foam that did not set: where the level would stand, as a phantom, and the gap to where it does, filled. */
export function drawUnset(pad: Pad, reading: Reading, frame: Frame): void {
  const unset = reading.glass?.unset;
  if (unset === undefined || frame.washline === null) return;
  const y = heightY(frame.stand, unset.washline_mm), gap = frame.washline - y;
  if (gap < 8 || y < frame.brim - 60) return;
  pad.open({ id: 'unset', within: 'glass', role: 'finding', name: words('aloud.unset', { name: unset.name, mm: shown(unset.washline_mm, 1) }) });
  pad.line('phantom', frame.left + 6, y, frame.right + (frame.phone ? 6 : 34), y);
  // The block and its two words stand where nothing hides them: no fall, no garnish.
  const said = [run(words('unset', {}), SIZE.body, 'signal', 500)], wide = runsWidth(said), half = (frame.right - frame.left) / 2;
  const places = [0.02, 0.1, -0.06, -0.14, -0.22, 0.18, 0.26, -0.3, -0.4, -0.5].flatMap((u) => [-5, -19, 15].map((up) => ({ x: frame.stand.axis + half * u, base: y + up })));
  const free = places.find(({ x, base }) => pad.clear(textBox(x + 12, base, said, 'start'), 3) && pad.clear({ x, y: y + 2, width: 5.5, height: Math.max(1, gap - 6) }, 1, ['ice']));
  const x = free?.x ?? places.find((p) => pad.clear({ x: p.x, y: y + 1, width: 5.5, height: gap - 3 }, 1, ['ice', 'fall', 'garnish', 'fill']))?.x;
  if (x !== undefined) pad.path('stop', rect(x, y + 1, 5.5, gap - 3));
  if (free !== undefined) pad.text(free.x + 12, free.base, said);
  else {
    const over = [y - 5, y - 22, frame.brim - 14, frame.brim - 32].flatMap((base) => [frame.right - wide - 12, frame.right + 8, frame.left + 12, frame.left - wide - 60].map((at) => ({ at, base }))).find(({ at, base }) => at > 4 && at + wide < frame.width - 4 && pad.clear(textBox(at, base, said, 'start'), 2));
    if (over !== undefined) pad.text(over.at, over.base, said);
  }
  const level = [run(shown(unset.washline_mm, 1), SIZE.body, 'ink2')];
  const beside = [[frame.right + 8, y - 5], [frame.right + 8, y + 16], [frame.right + 38, y + 4]].find(([px, py]) => pad.clear(textBox(px ?? 0, py ?? 0, level, 'start'), 1));
  if (!frame.phone && beside !== undefined) pad.text(beside[0] ?? 0, beside[1] ?? 0, level);
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
  const under = y + size * 0.8 + (lines.length - 1) * pitch + 20, most = Math.max(1, Math.floor((y + frame.head.height - under) / 18) + 1);
  const rest = broken(stop.rest ?? '', width, SIZE.name);
  for (const [i, line] of rest.slice(0, most).entries()) pad.text(left, under + i * 18, [run(i === most - 1 && rest.length > most ? cut(`${line} …`, width, SIZE.name) : line, SIZE.name, 'ink2')]);
}

function mark(pad: Pad, severity: 'stop' | 'warn' | 'note', x: number, y: number): void {
  if (severity === 'stop') pad.path('stop', rect(x, y, 5.5, 14));
  else pad.path('warn', polygon([[x + 4, y + 2], [x + 8.6, y + 11], [x - 0.6, y + 11]]));
}
