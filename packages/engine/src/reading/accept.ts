import type { AcceptEntry, Document, Path, Section } from '../document/types.ts';
import { CODES } from '../findings/codes.ts';
import { sectionsOf } from '../program/order.ts';
import type { Finding } from './types.ts';

/**
 * Which findings are knowingly accepted? A finding whose line, or whose section's name, an acceptance gives goes aside, whatever its
 * severity, and keeps the reason. A stop about harm stays where it is, with the reason. An acceptance whose line no longer stands has lapsed.
 * @param document its `Accept:` sections; a variant's takes the place of the base one
 * @param variant the variant that is read, or null
 * @param findings as judged
 * @returns `findings` that stay, lapses behind them, and those `accepted`
 * @source none - definition
 */
export function accept(document: Document, variant: string | null, findings: readonly Finding[]): { findings: Finding[]; accepted: Finding[] } {
  const sections = sectionsOf(document, variant);
  const entries = sections.flatMap((s) => s.accept ?? []);
  if (entries.length === 0) return { findings: [...findings], accepted: [] };
  const accepted: Finding[] = [], open: Finding[] = [];
  for (const f of findings) {
    const entry = entries.find((e) => e.code === f.code && names(document, sections, f.where.path).includes(fold(e.at)));
    if (!entry) { open.push(f); continue; }
    (f.severity === 'stop' && CODES[f.code]?.harm === true ? open : accepted).push({ ...f, reason: entry.reason });
  }
  const standing = new Set(document.sections.flatMap((s) => s.kind === 'accept' ? [] : [...sectionNames(document, s), ...s.lines.map((l) => fold(l.text))]).concat(headLines(document), ['build']));
  for (const e of entries) if (!standing.has(fold(e.at))) open.push(lapsed(document, e));
  return { findings: open, accepted };
}

/** As compared: case, blanks and a remark do not matter. */
const fold = (text: string): string => text.replace(/\s#.*$/, '').trim().toLowerCase().replace(/\s+/g, ' ');

/** What an acceptance may call the place of a finding: its line as it stands, or its section. */
function names(document: Document, sections: readonly Section[], path: Path): string[] {
  const head = document.head[path[0] as 'glass'];
  const out = head ? [lineOf(document, head.span.from)] : [];
  for (const s of sections) {
    const key = s.kind === 'prep' ? ['preps', s.key] : [s.kind];
    if (!key.every((part, i) => part === path[i])) continue;
    out.push(...sectionNames(document, s), ...s.lines.filter((l) => l.kind !== 'note' && l.path.length <= path.length && l.path.every((part, i) => part === path[i])).map((l) => fold(l.text)));
  }
  // a glass that is not named is a place all the same
  return path[0] === 'glass' && !head ? [...out, 'glass'] : out;
}
const sectionNames = (document: Document, s: Section): string[] => [
  fold(s.kind === 'prep' ? s.key : s.kind), ...(s.heading ? [fold(document.text.slice(s.heading.from, s.heading.to).trim().replace(/:$/, ''))] : []),
];
const headLines = (document: Document): string[] => [...Object.values(document.head).map((h) => lineOf(document, h.span.from)), ...(document.head.glass ? [] : ['glass'])];
/** The whole line an offset stands in. */
function lineOf(document: Document, offset: number): string {
  const from = document.text.lastIndexOf('\n', offset - 1) + 1, to = document.text.indexOf('\n', offset);
  return fold(document.text.slice(from, to < 0 ? undefined : to).replace(/^\ufeff/, ''));
}

function lapsed(document: Document, e: AcceptEntry): Finding {
  const before = document.text.slice(0, e.span.from);
  return {
    code: 'acceptance-lapsed', severity: 'note', where: { path: ['accept'], span: e.span, line: before.split('\n').length, column: e.span.from - before.lastIndexOf('\n') },
    margin: { value: 1, low: 1, high: 1, unit: 'lines' }, odds: 1, words: { code: e.code, line: e.at }, sources: ['none'],
  };
}
