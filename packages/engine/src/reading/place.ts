import type { Document, Path } from '../document/types.ts';
import type { Place } from './types.ts';

/** Where a path stands in the text: the action's span, else its line, else its heading. @source none - definition */
export function place(document: Document, path: Path): Place {
  const same = (p: Path) => p.length === path.length && p.every((x, i) => x === path[i]);
  const begins = (p: Path) => p.length < path.length && p.every((x, i) => x === path[i]);
  for (const s of document.sections) {
    for (const l of s.lines) {
      const action = l.actions.find((a) => same(a.path));
      if (action) return { path, span: action.span, line: l.line, column: action.span.from - l.span.from + 1 };
      if (same(l.path) || begins(l.path)) return { path, span: l.span, line: l.line, column: 1 };
    }
    const key = s.kind === 'prep' ? ['preps', s.key] : [s.kind];
    if (same(key)) return s.heading ? { path, span: s.heading, line: s.headingLine ?? 1, column: 1 } : { path };
  }
  const head = document.head[path[0] as 'glass'];
  return head ? { path, span: head.span, line: head.line, column: 1 } : { path };
}
