import type { Action, Document, Section } from '@washline/engine';
import { sectionsOf } from '@washline/drawing';
import { createSignal } from 'solid-js';

/** The line that is looked at in the sheet, from 1, and the part of the drawing: each makes the other stand out. */
export const [nearLine, setNearLine] = createSignal<number | null>(null);
export const [nearPart, setNearPart] = createSignal<string | null>(null);

const POURS = new Set(['strain', 'pour', 'serve', 'dirty-dump']);
const preps = (actions: readonly Action[]): string[] => actions.flatMap((action) => {
  const measure = action.kind === 'measure' ? action : action.kind === 'fill' || action.kind === 'step' ? action.measure ?? null : null;
  return [measure, measure?.carrier].flatMap((one) => (one?.thing.link.kind === 'prep' ? [one.thing.link.prep] : []));
});
const keyOf = (section: Section): string => (section.kind === 'build' ? 'build' : section.key);

/** The parts a line stands for, best first in each list: the first of a list that is drawn is meant. */
export function partsOfLine(document: Document, variant: string | null, line: number): readonly (readonly string[])[] {
  for (const section of sectionsOf(document, variant)) {
    const own = `prep:${keyOf(section)}`;
    if (section.headingLine === line) return [[own]];
    const found = section.lines.find((one) => one.line === line);
    if (found === undefined) continue;
    const from = preps(found.actions).filter((prep) => prep !== section.key);
    if (from.length > 0) return from.map((prep) => [`fall:${prep}>${keyOf(section)}`, ...(section.kind === 'build' ? [`fall:${prep}>glass`, `hose:${prep}`] : []), `prep:${prep}`]);
    return [section.kind === 'build' && found.actions.some((action) => action.kind === 'step' && POURS.has(action.verb)) ? ['fall:build>glass', own] : [own]];
  }
  return [];
}

/** The lines a part of the drawing stands for, from 1: a vessel's section, or what is poured from one vessel into another. */
export function linesOfPart(document: Document, variant: string | null, part: string): readonly number[] {
  const [, kind = '', rest = ''] = /^(prep|fall|hose):(.*)$/s.exec(part) ?? [], sections = sectionsOf(document, variant);
  if (kind === 'prep') return sections.filter((section) => keyOf(section) === rest).flatMap((section) => [...(section.headingLine === null ? [] : [section.headingLine]), ...section.lines.map((one) => one.line)]);
  const [from = '', to = 'build'] = kind === 'hose' ? [rest] : rest.split('>'), into = to === 'glass' ? 'build' : to;
  return sections.filter((section) => keyOf(section) === into).flatMap((section) => section.lines.filter((one) => (from === 'build' ? one.actions.some((action) => action.kind === 'step' && POURS.has(action.verb)) : preps(one.actions).includes(from))).map((one) => one.line));
}
