import type { Action, Fill, Line, Measure, Step } from './types.ts';

/** Is it done to a part of what is there ("heat 100 ml of the juice")? @source none - definition */
export const ofPart = (step: Step): boolean => step.again !== undefined && step.measure !== undefined;

/** All actions of a section in the order in which they are done: what is listed above and poured by a later line stands there. @source none - definition */
export function actionsOf(lines: readonly Line[]): Action[] {
  const all = lines.flatMap((l) => l.actions), meant = (a: Action): Measure | undefined => (a.kind === 'fill' || (a.kind === 'step' && !ofPart(a)) ? listedIn(all, a) : undefined);
  const later = new Set(all.flatMap((a) => meant(a) ?? []));
  if (later.size === 0) return all;
  return all.flatMap((a): Action[] => {
    const listed = meant(a);
    if (listed === undefined) return a.kind === 'measure' && later.has(a) ? [] : [a];
    return a.kind === 'fill' ? [{ ...a, measure: listed }] : [listed, a];
  });
}
/** The measure above that a step or a fill means, if it means one. @source none - definition */
export function listedIn(all: readonly Action[], { again }: Step | Fill): Measure | undefined {
  const path = again?.join('/');
  return path === undefined ? undefined : all.find((m): m is Measure => m.kind === 'measure' && m.path.join('/') === path);
}
