import { say } from '../sentences.ts';
import type { Ink } from './ink.ts';

/** A heading of a part of the reading, a blank line before it. */
export function heading(key: string, ink: Ink): string[] {
  return ['', ink.bold(say(`heading.${key}`))];
}
