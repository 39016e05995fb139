import type { Action, Line, Path, Thing } from '@washline/engine';

const idOf = ({ link }: Thing): string | undefined => (link.kind === 'larder' ? link.id : link.kind === 'prep' ? link.prep : undefined);

/** "rum" names a "white rum", and any two names that mean one thing name each other. */
function names(thing: Thing, other: Thing): boolean {
  const id = idOf(thing);
  return (id !== undefined && id === idOf(other)) || other.words.toLowerCase().endsWith(` ${thing.words.toLowerCase()}`);
}

/** Between an amount and what it is of: "100 ml of the juice", "100 ml vom Saft". */
const OF_THE = /(?<!\p{L})(of (the|that|this|your)|vom|von (dem|der)|des|der)(?!\p{L})/iu;

/**
 * The measure that "add the rum", "top with the tonic" and "heat 100 ml of the juice" mean, where one line above has measured it: it is not another in an unknown amount, and it is poured there; of
 * what is named with an amount that much is meant of it.
 * @param step the label of its line is a step's
 * @param text the whole
 * @param above the lines of its section before it
 * @returns the path of that measure; undefined where the action has an amount of its own, where no line above or more than one has what it names, and where another line has poured it
 */
export function measuredAbove(action: Action, step: boolean, text: string, above: readonly Line[]): Path | undefined {
  const part = action.kind === 'step' && action.measure !== undefined && OF_THE.test(text.slice(action.measure.span.from, action.measure.thing.span.from));
  const measure = action.kind === 'fill' ? action.measure : part ? action.measure : action.kind === 'measure' && step ? action : null;
  if (measure === null || (measure.amount !== null && !part) || measure.share !== undefined || measure.portion !== undefined) return undefined;
  const actions = above.flatMap((line) => line.actions);
  const meant = actions.filter((other) => other.kind === 'measure' && other.amount !== null && names(measure.thing, other.thing)), [one] = meant;
  if (one === undefined || meant.length > 1 || !part && actions.some((other) => (other.kind === 'fill' || other.kind === 'step') && other.again?.join('/') === one.path.join('/'))) return undefined;
  return one.path;
}
