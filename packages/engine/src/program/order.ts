import type { Document, Section } from '../document/types.ts';
import { measuresOf } from '../preps/prep.ts';

export interface Ordered { readonly preps: readonly Section[]; readonly build: Section | null; readonly others: readonly Section[]; readonly rings: readonly Section[]; readonly unused: readonly Section[] }

/** The sections that hold for a variant: a variant's section takes the place of the one it restates. @source none - definition */
export function sectionsOf(document: Document, variant: string | null): Section[] {
  const chosen = new Map<string, Section>();
  for (const s of document.sections) {
    const key = `${s.kind}/${s.key}`;
    if (s.variant === null ? !chosen.has(key) : false) chosen.set(key, s);
  }
  if (variant !== null) for (const s of document.sections) if (s.variant?.toLowerCase() === variant.toLowerCase()) chosen.set(`${s.kind}/${s.key}`, s);
  return [...chosen.values()];
}

/** Preps in order of making; those in a ring are left out and named, those nobody takes from are named. @source none - definition */
export function order(sections: readonly Section[]): Ordered {
  const preps = new Map(sections.filter((s) => s.kind === 'prep').map((s) => [s.key, s]));
  const build = sections.find((s) => s.kind === 'build') ?? null;
  const needs = (s: Section) => measuresOf(s.lines).flatMap((m) => (m.thing.link.kind === 'prep' && m.thing.link.prep !== s.key && preps.has(m.thing.link.prep) ? [m.thing.link.prep] : []));
  const done: Section[] = [], rings: Section[] = [];
  const state = new Map<string, 'open' | 'done' | 'ring'>();
  const visit = (s: Section): boolean => {
    const now = state.get(s.key);
    if (now === 'done') return true;
    if (now === 'open') return false;
    if (now === 'ring') return false;
    state.set(s.key, 'open');
    let good = true;
    for (const n of needs(s)) if (!visit(preps.get(n)!)) good = false;
    state.set(s.key, good ? 'done' : 'ring');
    (good ? done : rings).push(s);
    return good;
  };
  for (const s of preps.values()) visit(s);
  const taken = new Set<string>();
  const reach = (s: Section) => { for (const n of needs(s)) if (!taken.has(n)) { taken.add(n); reach(preps.get(n)!); } };
  if (build) reach(build);
  return { preps: done, build, others: sections.filter((s) => s.kind === 'shelf' || s.kind === 'accept'), rings, unused: build ? [...preps.values()].filter((s) => !taken.has(s.key)) : [] };
}
