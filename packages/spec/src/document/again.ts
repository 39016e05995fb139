import type { Action, Line, Path, Thing } from '@washline/engine';

const idOf = ({ link }: Thing): string | undefined => (link.kind === 'larder' ? link.id : link.kind === 'prep' ? link.prep : undefined);

/** "rum" names a "white rum", and any two names that mean one thing name each other. */
function names(thing: Thing, other: Thing): boolean {
  const id = idOf(thing);
  return (id !== undefined && id === idOf(other)) || other.words.toLowerCase().endsWith(` ${thing.words.toLowerCase()}`);
}

/**
 * The measure that "add the rum" and "top with the tonic" mean, where one line above has measured it: it is not another in an unknown amount, and it is poured there.
 * @param step the label of its line is a step's
 * @param above the lines of its section before it
 * @returns the path of that measure; undefined where the action has an amount of its own, where no line above or more than one has what it names, and where another line has poured it
 */
export function measuredAbove(action: Action, step: boolean, above: readonly Line[]): Path | undefined {
  const measure = action.kind === 'fill' ? action.measure : action.kind === 'measure' && step ? action : null;
  if (measure === null || measure.amount !== null || measure.share !== undefined || measure.portion !== undefined) return undefined;
  const actions = above.flatMap((line) => line.actions);
  const meant = actions.filter((other) => other.kind === 'measure' && other.amount !== null && names(measure.thing, other.thing)), [one] = meant;
  if (one === undefined || meant.length > 1 || actions.some((other) => (other.kind === 'fill' || other.kind === 'step') && other.again?.join('/') === one.path.join('/'))) return undefined;
  return one.path;
}
