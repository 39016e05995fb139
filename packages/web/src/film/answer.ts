import { say } from '../language/language.ts';
import type { State } from '../state.ts';
import { doingsOf } from './actions.ts';

/** What the foot says of the view: how many steps there are. */
export function stepsAnswer(state: State): string {
  const { document, reading } = state.now(), count = doingsOf(document, reading.variant).length;
  return count === 0 ? '' : count === 1 ? say('film.one') : say('film.steps', { count });
}
