import tiles from './hatches.json' with { type: 'json' };
import type { HatchKey, Tone } from '../shapes.ts';

/** One tile of a hatch, px of the layout; tiles lie in user space, so that they do not move when a level does. */
export interface Hatch {
  readonly width: number; readonly height: number;
  /** degrees */
  readonly turn: number;
  readonly tone: Tone;
  readonly stroke?: number;
  readonly filled?: boolean;
  /** grains are filled with the tint of ice */
  readonly grain?: boolean;
  readonly rounds?: readonly (readonly number[])[];
  readonly paths?: readonly string[];
}
export const hatches = tiles as unknown as Readonly<Record<HatchKey, Hatch>>;
