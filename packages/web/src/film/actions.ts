import { sectionsOf } from '@washline/drawing';
// of the engine itself, not of read.ts: how many steps there are is said before that has come
import { actionsOf, type Action, type Document, type Line, type Section } from '@washline/engine';

/** One thing someone does, with the line and the section it stands in. */
export interface Doing { readonly section: Section; readonly line: Line; readonly action: Action; /** how many things its section holds before it */ readonly at: number }

/** Sections in order of doing: a prep after the preps it takes from, the build last. */
function inOrder(sections: readonly Section[]): Section[] {
  const preps = new Map(sections.filter((s) => s.kind === 'prep').map((s) => [s.key, s])), out: Section[] = [], seen = new Set<string>();
  const visit = (section: Section): void => {
    if (seen.has(section.key)) return;
    seen.add(section.key);
    for (const key of takenBy(section)) { const other = preps.get(key); if (other !== undefined) visit(other); }
    out.push(section);
  };
  for (const section of preps.values()) visit(section);
  return [...out, ...sections.filter((s) => s.kind === 'build')];
}

function takenBy(section: Section): string[] {
  return section.lines.flatMap((line) => line.actions).flatMap((action) => {
    const measure = action.kind === 'measure' ? action : action.kind === 'garnish' ? null : action.measure ?? null;
    return measure?.thing.link.kind === 'prep' && measure.thing.link.prep !== section.key ? [measure.thing.link.prep] : [];
  });
}

/** What someone does for a spec, one after another: the preps in their order of doing, then the build; a line of several actions is several, and what is listed and poured by a later line is done there. */
export function doingsOf(document: Document, variant: string | null): Doing[] {
  return inOrder(sectionsOf(document, variant)).flatMap((section) =>
    actionsOf(section.lines).map((action, at) => ({ section, line: section.lines.find((line) => line.actions.some((one) => one.path.join('/') === action.path.join('/')))!, action, at })));
}
