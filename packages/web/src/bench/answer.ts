import { say } from '../language/language.ts';
import type { Read } from '../read.ts';
import type { State } from '../state.ts';

/** How many numbers of the drink are the bench's own. */
export function ownOf({ reading }: Read): number { return (reading.taken ?? []).filter((one) => one.from === 'bench').length; }

/** What the bench answers in the foot: how many numbers of the drink are its own; '' without one. */
export function benchAnswer(state: State): string {
  if (state.bench().trim() === '') return '';
  const { benchProblems = [] } = state.now(), own = ownOf(state.now());
  return benchProblems.length > 0 ? say('bench.wrong') : own === 0 ? '' : String(own);
}
