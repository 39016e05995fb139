import { sentenceIn } from '@washline/drawing';
import type { Read } from '../read.ts';
import type { Entry } from './Margin.tsx';

const WEIGHT = { problem: 0, stop: 0, warn: 1, note: 2 } as const;

/** Everything found, in the order of the sheet; what is of no line comes first. */
export function entriesOf(now: Read): Entry[] {
  const list: Entry[] = [];
  for (const [i, p] of now.problems.entries()) list.push({ key: `p${i}${p.code}`, code: p.code, severity: 'problem', message: p.message, line: p.where.line, column: null, odds: null, fix: null });
  for (const [i, f] of now.findings.entries()) {
    const line = f.where.line ?? null, splice = f.remedy?.splices[0];
    const at = splice === undefined ? null : placeOf(now.document.text, splice.from);
    list.push({ key: `f${i}${f.code}`, code: f.code, severity: f.severity, message: sentenceIn(f.message), line, column: at !== null && at.line === line ? at.column : null, odds: f.odds ?? null, fix: f.remedy ?? null });
  }
  return list.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || WEIGHT[a.severity] - WEIGHT[b.severity]);
}

/** Entries that say what they said before are the same objects: what is shown of them stays, with its focus. */
export function same(before: readonly Entry[], next: readonly Entry[]): readonly Entry[] {
  const kept = new Map(before.map((e) => [JSON.stringify(e), e]));
  return next.map((e) => kept.get(JSON.stringify(e)) ?? e);
}

function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset), start = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - start + 1 };
}
