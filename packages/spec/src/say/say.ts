import type { Finding, Problem, Reading, Splice } from '@washline/engine';
import findings from '../../../../messages/en/findings.json' with { type: 'json' };
import problems from '../../../../messages/en/problems.json' with { type: 'json' };
import remedies from '../../../../messages/en/remedies.json' with { type: 'json' };
import { fill } from './fill.ts';

/** A finding with its sentence, as the contract prints it. */
export interface SaidFinding extends Omit<Finding, 'remedy' | 'words'> { readonly message: string; readonly remedy?: { readonly say: string; readonly splices: readonly Splice[] } }
export type SaidReading = Omit<Reading, 'findings' | 'accepted'> & { readonly findings: readonly SaidFinding[]; readonly accepted: readonly SaidFinding[] };
export interface SaidProblem { readonly code: string; readonly where: { readonly path: readonly (string | number)[] | null; readonly line: number; readonly column: number; readonly span: { readonly from: number; readonly to: number }; readonly file?: string }; readonly message: string }

const SENTENCES = findings as Readonly<Record<string, Readonly<Record<string, string>>>>;
const REMEDIES = remedies as unknown as Readonly<Record<string, { say: string; insert?: Readonly<Record<string, string>> }>>;
const PROBLEMS = problems as Readonly<Record<string, string>>;

/** The sentence of a finding and of its remedy. */
export function sayFinding(f: Finding, file?: string): SaidFinding {
  const { remedy, words, ...rest } = f;
  const sentences = SENTENCES[f.code] ?? {};
  const degree = words['degree'];
  const sentence = (degree === undefined ? undefined : sentences[`${f.severity}.${degree}`]) ?? sentences[f.severity] ?? sentences['stop'] ?? sentences['warn'] ?? sentences['note'] ?? f.code;
  const all = { ...words, ...(f.margin ? { margin: f.margin.value } : {}) };
  const said = remedy ? REMEDIES[remedy.key] : undefined;
  return {
    ...rest, where: file ? { ...f.where, file } : f.where, message: fill(sentence, all),
    ...(remedy && said ? {
      remedy: { say: fill(said.say, { ...all, ...remedy.words }), splices: join(remedy.splices.map((s) => ({ from: s.from, to: s.to, insert: s.literal ?? fill(said.insert?.[s.key ?? ''] ?? '', { ...all, ...remedy.words }) }))) },
    } : {}),
  };
}

/** Splices at one place become one, in order. */
function join(splices: readonly Splice[]): Splice[] {
  const out: Splice[] = [];
  for (const s of splices) {
    const last = out[out.length - 1];
    if (last && last.from === s.from && last.to === s.to) out[out.length - 1] = { ...last, insert: last.insert + s.insert };
    else out.push(s);
  }
  return out;
}

/** The sentence of a problem with its place. */
export function sayProblem(p: Problem, file?: string): SaidProblem {
  return { code: p.code, where: { path: p.path, line: p.line, column: p.column, span: p.span, ...(file ? { file } : {}) }, message: fill(PROBLEMS[p.code] ?? p.code, p.words) };
}

/** A reading with all its sentences. */
export function sayReading(r: Reading, file?: string): SaidReading {
  return { ...r, findings: r.findings.map((f) => sayFinding(f, file)), accepted: r.accepted.map((f) => sayFinding(f, file)) };
}
