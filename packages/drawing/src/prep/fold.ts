import { SIZE, cut, run, runsWidth } from '../pen/lettering.ts';
import { overlap, type Box } from '../pen/pad.ts';
import { lettered } from '../words.ts';
import { vesselOf, type Board } from './board.ts';
import type { Flow, FlowPrep } from './flow.ts';
import { vesselSize } from './vessel.ts';

/** From so many preps on those that take no other stand in the row; from `MAY` on where the drawing would not fit. @source none - definition */
export const FOLDS = 9, MAY = 5;
/** The scale of the row, px per mm, and the room between two of it and over its vessels, px. */
const ROW_K = 0.42, GAP = 18, TOP = 12;
/** A mark may stand beside the name. */
const MARK = 14;

/** A vessel and its words where they are tried; one box of each, so that a try is not one more on the heap. */
const own = { x: 0, y: 0, width: 0, height: 0 }, words = { ...own };

/** Preps that take no other prep and are poured nowhere by themselves: in the row they are a letter with a name; where they go it stands with its amount. */
export function foldedIn(flow: Flow): FlowPrep[] {
  const pressed = new Set(flow.glass.takes.map((t) => t.from));
  return flow.preps.filter((prep) => prep.takes.length === 0 && !pressed.has(prep.key));
}

/**
 * Stands the folded preps in rows at the upper edge, in the order of the sheet, all at one small scale. Returns the scale, and y of the lower edge.
 * A row ends where the words of a stop begin; nothing of it stands in `crest`, over which a hose is laid later.
 */
export function standRow(board: Board, preps: readonly FlowPrep[], crest: Box | null): { readonly k: number; readonly bottom: number } {
  const k = Math.min(ROW_K, board.k), { frame } = board;
  const right = frame.head === null ? frame.width - 18 : frame.head.x - 16;
  const all = preps.map((prep) => {
    const { vessel, mL } = vesselOf(prep), size = vesselSize(vessel, k), name = [run(cut(lettered(prep.name), 120, SIZE.body, 600), SIZE.body, 'ink', 600)];
    const wide = 24 + runsWidth(name);
    return { prep, vessel, mL, size, caption: { letter: prep.letter, name, lines: [], width: wide, height: 20 }, width: Math.max(size.width + 12, wide + MARK) };
  });
  const tallest = Math.max(0, ...all.map(({ size }) => size.height));
  let x = 14, shelf = TOP + tallest, bottom = 0;
  for (const { prep, vessel, mL, size, caption, width } of all) {
    for (let tries = 0; tries < 80; tries += 1) {
      if (x > 14 && x + width > right) { x = 14; shelf += tallest + 38; }
      const axis = x + Math.max(size.width / 2 + 5, 8.5);
      own.x = axis - size.width / 2; own.y = shelf - size.height; own.width = size.width; own.height = size.height;
      words.x = x; words.y = shelf + 8; words.width = width; words.height = caption.height;
      if (!board.free(own, 3) || !board.free(words, 3) || (crest !== null && (overlap(own, crest) || overlap(words, crest)))) { x += 20; continue; }
      const captionAt = { ...words, width: caption.width };
      board.placed.push({ key: prep.key, prep, vessel, axis, shelf, k, box: { ...own }, caption, captionAt, mL });
      board.taken.add(own, words);
      bottom = captionAt.y + captionAt.height;
      x += width + GAP;
      break;
    }
    if (board.placed.at(-1)?.prep !== prep) board.overlaps += 1;
  }
  return { k, bottom };
}
