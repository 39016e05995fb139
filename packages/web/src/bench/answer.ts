import { say } from '../language/language.ts';
import type { State } from '../state.ts';

/** What the bench answers in the foot: how many numbers of the drink are its own; '' without one. */
export function benchAnswer(state: State): string {
  if (state.bench().trim() === '') return '';
  const { benchProblems = [], reading } = state.now(), own = (reading.taken ?? []).filter((one) => one.from === 'bench').length;
  return benchProblems.length > 0 ? say('bench.wrong') : own === 0 ? '' : String(own);
}
