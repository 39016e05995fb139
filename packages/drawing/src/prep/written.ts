import { SIZE, textWidth } from '../pen/lettering.ts';
import { overlap, type Box } from '../pen/pad.ts';
import type { Board, Placed, Written, WrittenLine } from './board.ts';
import type { Pour } from './flow.ts';

/** What is bought stands in words at the vessel that takes it; letters there for what could not fall. */
export function writeAtReceivers(board: Board, takes: readonly Pour[]): void {
  const { flow, frame } = board;
  const letter = (key: string): string | null => flow.preps.find((p) => p.key === key)?.letter ?? null;
  const build = board.placed.find((p) => p.key === 'build');
  if (build !== undefined) {
    const lines = [...takes.filter((t) => !board.poured.has(`${t.from}>build`)).map((t) => ({ giver: letter(t.from), text: t.amount, grip: t.grip })), ...flow.build.bought.map((one) => ({ giver: null, ...one }))];
    if (lines.length > 0) write(board, lines, [{ right: build.box.x - 9, bottom: build.shelf }, { right: build.box.x - 9, bottom: build.shelf - 20 }, { right: build.box.x - 9, bottom: build.box.y + lines.length * 16 }], board.folded ? build : null);
  }
  // A mixing vessel that found no room: what goes into it is said at the glass.
  const mixed = build === undefined ? { takes: flow.build.takes, bought: flow.build.bought } : { takes: [], bought: [] };
  const rest = [...mixed.takes, ...flow.glass.takes].filter((t) => !board.poured.has(`${t.from}>glass`)).map((t) => ({ giver: letter(t.from), text: t.amount, grip: t.grip }));
  const bought = flow.preps.length === 0 && flow.build.vessel === null ? flow.glass.bought.slice(4) : flow.glass.bought;
  const lines = [...rest, ...[...mixed.bought, ...bought].map((one) => ({ giver: null, ...one }))];
  // a wheel or a slice on the rim reaches beyond it
  const aside = (board.reading.glass?.garnish.length ?? 0) > 0 ? 34 : 14;
  if (lines.length > 0) write(board, lines, [{ left: frame.right + aside, bottom: Math.min(frame.brim, (frame.washline ?? frame.brim) - 84) - 6 }, { left: frame.right + aside, bottom: Math.min(frame.brim, (frame.washline ?? frame.brim) - 84) - 60 }]);
}

function write(board: Board, lines: readonly WrittenLine[], spots: readonly { right?: number; left?: number; bottom: number }[], into: Placed | null = null): void {
  const width = Math.max(...lines.map((l) => textWidth(l.text, SIZE.small) + (l.giver === null ? 0 : 48)));
  const height = lines.reduce((sum, l) => sum + (l.giver === null ? 15 : 24), 0);
  for (const spot of spots) {
    const box: Box = { x: spot.left ?? (spot.right ?? 0) - width, y: spot.bottom - height, width, height };
    if (!board.free(box, 3)) continue;
    board.written.push({ box, lines, anchor: spot.left === undefined ? 'end' : 'start' });
    board.taken.add(box);
    return;
  }
  if (into !== null && writeAway(board, lines, into, width)) return;
  board.overlaps += 1;
}

/** Away from the vessel, in two columns or one, as near to its mouth as there is room; a leader says where it goes. */
function writeAway(board: Board, lines: readonly WrittenLine[], into: Placed, column: number): boolean {
  const mouth = [into.axis - into.box.width * 0.08, into.box.y + into.box.height * 0.35] as const;
  let best: { readonly written: Written; readonly far: number } | null = null;
  for (const columns of lines.length > 2 ? [2, 1] : [1]) {
    const rows = Math.ceil(lines.length / columns), width = column * columns + 14 * (columns - 1), height = rows * 24;
    // no nearer than the grid's next place to where the leader would be too long
    const top = onGrid(mouth[1] - height - 2 - FAR, 8), left = onGrid(mouth[0] - width - FAR, 12), right = Math.min(board.frame.width - 10 - width, mouth[0] + FAR);
    for (let y = top; y + height <= into.box.y - 4; y += 8) for (let x = left; x < right; x += 12) {
      const begins = Math.min(Math.max(mouth[0], x + 8), x + width - 8), far = Math.hypot(begins - mouth[0], y + height + 2 - mouth[1]);
      if (far > FAR || (best !== null && far >= best.far)) continue;
      tried.x = x; tried.y = y; tried.width = width; tried.height = height;
      if (!board.free(tried, 10)) continue;
      const from = [begins, y + height + 2] as const;
      if (crosses(board, from, mouth, into)) continue;
      best = { written: { box: { ...tried }, lines, anchor: 'start', columns, leader: [from, mouth] }, far };
    }
  }
  if (best === null) return false;
  board.written.push(best.written);
  board.taken.add(best.written.box);
  return true;
}

/** A place that is tried; one box, so that each is not one more on the heap. */
const tried = { x: 0, y: 0, width: 0, height: 0 };
/** Words stand no further than this from the vessel they go into, px. */
const FAR = 170;
/** The first place of a grid from 10 px on that is not before this. */
const onGrid = (from: number, step: number): number => 10 + Math.max(0, Math.ceil((from - 10) / step)) * step;

/** Does a straight line to a vessel pass through anything else? Falls may be passed. */
function crosses(board: Board, from: readonly [number, number], to: readonly [number, number], into: Placed): boolean {
  const words = [...board.placed.flatMap((p) => (p === into ? [p.captionAt] : [p.box, p.captionAt])), ...board.streams.map((s) => s.label)];
  return Array.from({ length: 12 }, (_, i) => ({ x: from[0] + ((to[0] - from[0]) * i) / 12 - 1, y: from[1] + ((to[1] - from[1]) * i) / 12 - 1, width: 2, height: 2 })).some((dot) => words.some((w) => overlap(w, dot, 2)));
}
