import type { Line, Share, Thing } from '@washline/engine';
import { fold } from '../names/fold.ts';
import { singular } from '../phrase/own-names.ts';

const parts = (words: string): string[] => words.split(/[\s\-,]+/).map(fold).filter((part) => part !== '').map(singular);

/** "2 g per kg of juice" names a line of the section by its last words: the share is linked to what that line is about. */
export function sharesOf(lines: readonly Line[]): Line[] {
  const things: Thing[] = [];
  for (const line of lines) for (const action of line.actions) if (action.kind === 'measure' && action.share === undefined) things.push(action.thing);
  const linked = (thing: Thing): Thing => {
    if (thing.link.kind === 'prep' || thing.link.kind === 'shelf') return thing;
    const own = parts(thing.words);
    const fits = things.filter((other) => { const all = parts(other.words); return own.length > 0 && own.length <= all.length && own.every((part, at) => all[all.length - own.length + at] === part); });
    const only = fits[0];
    return only !== undefined && fits.every((other) => JSON.stringify(other.link) === JSON.stringify(only.link)) ? { ...thing, link: only.link } : thing;
  };
  const of = (share: Share): Share => (share.of === undefined ? share : { ...share, of: share.of.map(linked) });
  return lines.map((line) => (line.actions.some((action) => action.kind === 'measure' && action.share?.of !== undefined)
    ? { ...line, actions: line.actions.map((action) => (action.kind === 'measure' && action.share !== undefined ? { ...(action), share: of(action.share) } : action)) }
    : line));
}
