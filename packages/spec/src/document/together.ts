import { MIXERS, STRAINS, type Action, type Line, type Step } from '@washline/engine';

/** Words that put things together, which may or may not mean that they are stirred. */
const TOGETHER = /(?<!\p{L})(combine|mix|misch\p{L}*|vermisch\p{L}*|vermeng\p{L}*)(?!\p{L})/iu;
/** What holds what is put together, and no ice. */
const KEPT_IN = /(?<!\p{L})(bottle|jar|jug|pitcher|bowl|container|carafe|saucepan|pot|flasche|krug|karaffe|schüssel|topf)(?!\p{L})/iu;
const mixes = (verb: string): boolean => MIXERS.has(verb) || verb === 'swizzle' || verb === 'build';

/** "combine in a shaker with ice" before a shake, "combine in a bottle": only put together; where nothing else mixes it, it is stirred. */
export function together(lines: readonly Line[], text: string): Line[] {
  const steps = lines.flatMap((line) => line.actions).filter((action): action is Step => action.kind === 'step');
  const isPut = (action: Action): action is Step => {
    if (action.kind !== 'step' || action.verb !== 'stir' || action.seconds !== undefined || action.times !== undefined) return false;
    const words = text.slice(action.span.from, action.span.to);
    if (!TOGETHER.test(words)) return false;
    const next = steps.slice(steps.indexOf(action) + 1).find(({ verb }) => mixes(verb) || STRAINS.has(verb));
    return next !== undefined && mixes(next.verb) || action.ice === undefined && KEPT_IN.test(words);
  };
  return lines.map((line) => (line.actions.some(isPut) ? { ...line, actions: line.actions.map((action) => (isPut(action) ? { ...action, verb: 'add' } : action)) } : line));
}
