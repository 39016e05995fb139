/**
 * What a drawing is made of: a flat list of shapes, each of one part. Lengths are millimetres of the serving glass, y downwards from the
 * upper edge. Whoever renders it (page, terminal, file) needs nothing else.
 */

/** Inks and papers by name; their colours belong to whoever renders. */
export type Tone = 'ink' | 'ink2' | 'ink3' | 'ink4' | 'paper' | 'sheet' | 'wall' | 'wall-up' | 'signal' | 'ground' | 'ground2';
export type Fill = Tone | `#${string}`;

export type HatchKey =
  | 'glass' | 'steel' | 'ice-clear' | 'ice' | 'crushed' | 'foam' | 'gel' | 'curd' | 'fat' | 'cloth'
  | 'gas-low' | 'gas-middle' | 'gas-high' | 'fizz' | 'cloudy' | 'sugar';

export interface Run { readonly text: string; readonly size: number; readonly weight: 400 | 500 | 600; readonly tone: Tone; readonly gap?: number }

interface Drawn { readonly id: string; readonly part: string }
export interface Line { readonly stroke?: Fill | undefined; readonly width?: number | undefined; readonly dash?: readonly number[] | undefined; readonly round?: boolean | undefined }

export interface PathShape extends Drawn, Line {
  readonly kind: 'path';
  /** path data in the grammar of SVG: absolute M L H V C Q A Z */
  readonly d: string;
  readonly fill?: Fill | undefined;
  readonly hatch?: HatchKey | undefined;
  /** stands for a finding or a level; a renderer without colour keeps it */
  readonly pen: Pen;
}
export interface CircleShape extends Drawn, Line { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly r: number; readonly fill?: Fill | undefined; readonly hatch?: HatchKey | undefined; readonly pen: Pen }
export interface TextShape extends Drawn { readonly kind: 'text'; readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end'; readonly runs: readonly Run[] }
/** Where a press counts, and the box of the keyboard's focus. */
export interface TargetShape extends Drawn { readonly kind: 'target'; readonly x: number; readonly y: number; readonly width: number; readonly height: number }
export type Shape = PathShape | CircleShape | TextShape | TargetShape;

/** The class of a line: what it means, not how it looks. */
export type Pen =
  | 'wall' | 'washline' | 'level' | 'leader' | 'dimension' | 'extension' | 'arrowhead' | 'centre' | 'hidden' | 'phantom' | 'fall' | 'hose'
  | 'carry' | 'net' | 'fill' | 'garnish' | 'ice' | 'letter' | 'stop' | 'warn' | 'shelf' | 'dot' | 'hand' | 'bar' | 'tide' | 'tide-fails';

/** A figure as a check reads it: its name in a reading, unrounded. */
export interface FigureMark { readonly reading: string; readonly name: string; readonly value: number; readonly unit: string; readonly low: number; readonly high: number }

/**
 * A level or an amount that can be taken hold of. `of`: `washline` (the whole drink), `layer:<its number from the floor>`, `prep:<its key>` or `amount:<path of
 * its line>`; it stands at `value`. A px of the layout upwards is `perPx` more: mm in the glass, mL in a vessel; an amount turns by the steps of its jigger.
 */
export interface LevelMark { readonly of: string; readonly value: number; readonly unit: string; readonly perPx: number }

/** A part groups shapes that mean one thing; parts come in the order in which they are drawn and read aloud. */
export interface Part {
  readonly id: string;
  readonly within: string | null;
  readonly role: 'ground' | 'reading' | 'glass' | 'layer' | 'ice' | 'wall' | 'garnish' | 'washline' | 'figure' | 'leader' | 'dimension' | 'vessel' | 'fall' | 'finding' | 'rule' | 'handle' | 'amount' | 'tide';
  /** said aloud; absent where the part is only ink */
  readonly name?: string;
  readonly reading?: string;
  readonly figure?: FigureMark;
  readonly layer?: string;
  readonly washline_mm?: number;
  /** of the levels of many hands: how many hold */
  readonly tide?: number;
  /** pressed, it leads there */
  readonly href?: string;
  readonly level?: LevelMark;
  /** path of the section or line it stands for, as a key */
  readonly prep?: string;
}

/** How vessels were arranged: how much their captions tell, the glass's scale over theirs (0 where there are none), whether some stand folded in a row, and what that cost in things that found no room. */
export interface Arranged { readonly detail: 'all' | 'figures' | 'none'; readonly over: number; readonly folded: boolean; readonly cost: number;
  /** the preps that were arranged: others are arranged anew */
  readonly of: string }

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** millimetres of the glass that one CSS pixel of the layout covers */
  readonly mmPerPx: number;
  readonly parts: readonly Part[];
  readonly shapes: readonly Shape[];
  /** where the washline stands, and the glass's axis, in the drawing's millimetres */
  readonly washline_y: number | null;
  readonly axis_x: number;
  /** how the vessels upstream stand, for a drawing that is to look like this one */
  readonly arranged?: Arranged;
}
