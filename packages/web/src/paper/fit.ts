import { broken } from '@washline/drawing';
import type { Row } from '../sheet/rows.ts';

/** What stands below the drawing on paper: a line of the spec, or one of what is told of it. */
export interface Said { readonly text: string; readonly kind: Row['kind'] | 'head' | 'told' }
/** How it is set: letters and leading in pt, and in how many columns; `whole` where all of it stands on the sheet. */
export interface Setting { readonly size: number; readonly leading: number; readonly columns: number; readonly whole: boolean }

/** The sheet between its margins, its title, and what keeps the text off the drawing, mm. */
export const SHEET = { width: 190, height: 276, title: 10, gap: 3 } as const;
/** Between columns, mm. */
const GUTTER = 5;
/** From the largest that is wanted to the smallest that can be read at an arm's length, pt. */
const SIZES = [8.5, 8, 7.5, 7, 6.5, 6, 5.5] as const;
const LEADING = 1.28;
/** An empty line is so much of a line; a heading has so much more above it. */
const BLANK = 0.5, HEADED = 0.3;
/** A px of a page is a 96th of an inch (CSS Values and Units 3, 6.2). */
export const PX_PER_MM = 96 / 25.4;
const PX_PER_PT = 96 / 72, MM_PER_PT = 25.4 / 72;

/**
 * The largest letters at which everything stands on the rest of the sheet, in three or four columns; the smallest, running on to the next sheet, where it
 * cannot.
 * @param room mm below the drawing
 */
export function settingOf(said: readonly Said[], room: number): Setting {
  for (const size of SIZES) {
    for (const columns of [3, 4]) {
      const leading = size * LEADING, a_column = Math.floor(room / (leading * MM_PER_PT));
      // a line of a column is kept free for what does not break
      if (linesOf(said, size, columns) <= columns * (a_column - 1)) return { size, leading, columns, whole: true };
    }
  }
  const size = SIZES.at(-1)!;
  return { size, leading: size * LEADING, columns: 4, whole: false };
}

function linesOf(said: readonly Said[], size: number, columns: number): number {
  const width = ((SHEET.width - GUTTER * (columns - 1)) / columns - 1) * PX_PER_MM;
  let lines = 0;
  for (const { text, kind } of said) {
    if (kind === 'blank') { lines += BLANK; continue; }
    const heavy = kind === 'heading' || kind === 'head';
    lines += broken(text, width - (kind === 'heading' ? 18 : kind === 'told' ? 8 : 0), size * PX_PER_PT, heavy ? 600 : 400).length + (heavy ? HEADED : 0);
  }
  return lines;
}
