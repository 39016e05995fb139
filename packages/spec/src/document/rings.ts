import type { Problem, Section, Thing } from '@washline/engine';
import { lookup } from '../names/lookup.ts';
import { foldOwn } from '../phrase/own-names.ts';
import { problem } from '../problems/codes.ts';
import { LIMITS } from './limits.ts';
import { measuresOf } from './check.ts';

interface Use { readonly to: string; readonly thing: Thing; readonly line: number; readonly path: Problem['path']; readonly column: number }

/** Preps that need themselves, and chains of preps deeper than eight; in the base and in each variant. */
export function rings(sections: readonly Section[], problems: Problem[]): void {
  const variants = [null, ...new Set(sections.map((section) => section.variant).filter((variant) => variant !== null))];
  const said = new Set<string>();
  for (const variant of variants) {
    const preps = new Map<string, Section>();
    for (const section of sections) if (section.kind === 'prep' && (section.variant === null || section.variant === variant) && (section.variant !== null || !preps.has(section.key))) preps.set(section.key, section);
    const uses = new Map([...preps].map(([key, section]) => [key, usesOf(section)]));
    const depth = new Map<string, number>(), open = new Set<string>();
    const visit = (key: string): number => {
      const known = depth.get(key);
      if (known !== undefined) return known;
      open.add(key);
      let deepest = 1;
      for (const use of uses.get(key) ?? []) {
        if (open.has(use.to)) {
          const id = `${use.thing.span.from}`;
          if (!said.has(id)) { said.add(id); problems.push(problem('prep-ring', use.path, use.line, use.column, use.thing.span, { prep: use.to })); }
          continue;
        }
        if (preps.has(use.to)) deepest = Math.max(deepest, 1 + visit(use.to));
      }
      open.delete(key);
      depth.set(key, deepest);
      return deepest;
    };
    for (const [key, section] of preps) {
      const deep = visit(key);
      if (deep > LIMITS.prepDepth && section.heading !== null && !said.has(`deep${key}`)) { said.add(`deep${key}`); problems.push(problem('preps-too-deep', ['preps', key], section.headingLine ?? 1, 1, section.heading, { prep: section.name, limit: LIMITS.prepDepth })); }
      // its own name inside it means the larder; where the larder has none it needs itself
      for (const line of section.lines) for (const action of line.actions) for (const measure of measuresOf(action)) {
        if (measure.thing.link.kind === 'unknown' && sameName(measure.thing.words, section.name) && lookup(section.name) === undefined && !said.has(`${measure.thing.span.from}`)) {
          said.add(`${measure.thing.span.from}`);
          problems.push(problem('prep-ring', action.path, line.line, measure.thing.span.from - line.span.from + 1, measure.thing.span, { prep: section.key }));
        }
      }
    }
  }
}
const sameName = (a: string, b: string): boolean => foldOwn(a) === foldOwn(b);

function usesOf(section: Section): Use[] {
  const out: Use[] = [];
  for (const line of section.lines) for (const action of line.actions) for (const measure of measuresOf(action)) {
    const things = [measure.thing, ...(measure.share?.of ?? [])];
    for (const thing of things.slice(0, 1)) if (thing.link.kind === 'prep' && thing.link.prep !== section.key) out.push({ to: thing.link.prep, thing, line: line.line, path: action.path, column: thing.span.from - line.span.from + 1 });
  }
  return out;
}
