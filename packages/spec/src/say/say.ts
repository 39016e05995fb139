import type { Assumed, Finding, Problem, Reading, Splice } from '@washline/engine';
import { fill } from './fill.ts';
import { ENGLISH, messagesIn, type MessageLanguage, type Messages } from './messages.ts';
import { rewritten } from './written.ts';

/** A finding with its sentence, as the contract prints it. */
export interface SaidFinding extends Omit<Finding, 'remedy' | 'words'> { readonly message: string; readonly remedy?: { readonly say: string; readonly splices: readonly Splice[] } }
export type SaidReading = Omit<Reading, 'findings' | 'accepted'> & { readonly findings: readonly SaidFinding[]; readonly accepted: readonly SaidFinding[] };
export interface SaidProblem { readonly code: string; readonly where: { readonly path: readonly (string | number)[] | null; readonly line: number; readonly column: number; readonly span: { readonly from: number; readonly to: number }; readonly file?: string }; readonly message: string }

/** How it is said: in which language, and in which the spec is written, so that what is put into it fits. */
export interface Saying { readonly language?: MessageLanguage; readonly written?: MessageLanguage }

/** The sentence of a finding and of its remedy. */
export function sayFinding(f: Finding, file?: string, saying: Saying = {}): SaidFinding {
  const { remedy, words, ...rest } = f;
  const said = messagesIn(saying.language ?? 'en'), own = messagesIn(saying.written ?? 'en');
  const sentences = said.findings[f.code] ?? ENGLISH.findings[f.code] ?? {};
  const degree = words['degree'];
  const sentence = (degree === undefined ? undefined : sentences[`${f.severity}.${degree}`]) ?? sentences[f.severity] ?? sentences['stop'] ?? sentences['warn'] ?? sentences['note'] ?? f.code;
  const all = { ...words, ...(f.margin ? { margin: f.margin.value } : {}) };
  return {
    ...rest, where: file ? { ...f.where, file } : f.where, message: fill(sentence, all, said),
    ...(remedy ? remedyOf(remedy, { ...all, ...remedy.words }, said, own) : {}),
  };
}

function remedyOf(remedy: NonNullable<Finding['remedy']>, words: Readonly<Record<string, string | number>>, said: Messages, own: Messages): { readonly remedy?: { readonly say: string; readonly splices: readonly Splice[] } } {
  const say = said.remedies[remedy.key]?.say ?? ENGLISH.remedies[remedy.key]?.say;
  if (say === undefined) return {};
  const put = own.remedies[remedy.key]?.insert ?? ENGLISH.remedies[remedy.key]?.insert;
  const spoken = Object.fromEntries(Object.entries(words).map(([key, value]) => [key, typeof value === 'string' ? rewritten(value, said) : value]));
  const written = Object.fromEntries(Object.entries(words).map(([key, value]) => [key, typeof value === 'string' ? rewritten(value, own) : value]));
  return { remedy: { say: fill(say, spoken, said), splices: join(remedy.splices.map((s) => ({ from: s.from, to: s.to, insert: s.literal === undefined ? fill(put?.[s.key ?? ''] ?? '', written, own) : rewritten(s.literal, own) }))) } };
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
export function sayProblem(p: Problem, file?: string, language: MessageLanguage = 'en'): SaidProblem {
  const messages = messagesIn(language);
  return { code: p.code, where: { path: p.path, line: p.line, column: p.column, span: p.span, ...(file ? { file } : {}) }, message: fill(messages.problems[p.code] ?? ENGLISH.problems[p.code] ?? p.code, p.words, messages) };
}

/** A reading with all its sentences. */
export function sayReading(r: Reading, file?: string, saying: Saying = {}): SaidReading {
  return {
    ...r, findings: r.findings.map((f) => sayFinding(f, file, saying)), accepted: r.accepted.map((f) => sayFinding(f, file, saying)),
    ...(saying.written === 'de' ? { assumed: r.assumed.map((one) => rewrittenIn(one, messagesIn('de'))) } : {}),
  };
}
/** The words that would replace an assumption, as the spec's language writes them. */
function rewrittenIn(assumed: Assumed, own: Messages): Assumed {
  return { ...assumed, say: rewritten(assumed.say, own), splices: assumed.splices.map((s) => ({ ...s, insert: rewritten(s.insert, own) })) };
}
