import { BINDINGS, DOMAINS } from './bindings/index.ts';
import { compare } from './compare.ts';
import { InputMissing, inputsOf } from './inputs.ts';
import type { Answer, Bindings, Case, CaseFile, CaseKind, CaseValue, GroupResult, VerifyResult, Worst } from './types.ts';

interface Tally { group: string; kind: CaseKind; sources: Set<string>; cases: number; within: number; worst: Worst | null; worstRank: number; squares: number; numbers: number }

/**
 * How does the engine stand against published cases?
 * @param file cases by group; expected values are taken as they are
 * @param only groups to run; all when absent or empty
 * @param bindings group to engine function, the project's own unless given
 * @returns a row per group and kind in order of appearance (0 cases where all of it was skipped), counts, and what was skipped and why
 * @source none - definition
 */
export function verify(file: CaseFile, only?: readonly string[], bindings: Bindings = BINDINGS): VerifyResult {
  const tallies = new Map<string, Tally>();
  const skipped: { id: string; why: string }[] = [];
  let passed = 0, failed = 0;
  for (const item of file.cases) {
    if (only && only.length > 0 && !only.includes(item.group)) continue;
    const tally = tallyOf(tallies, item);
    const answer = answerTo(item, bindings);
    if ('why' in answer) { skipped.push({ id: item.id, why: answer.why }); continue; }
    const verdict = compare(item, answer.got);
    tally.cases++;
    if (verdict.agrees) { passed++; tally.within++; } else failed++;
    if (verdict.off !== null) { tally.squares += verdict.off * verdict.off; tally.numbers++; }
    // what fails outranks what agrees; among equals the share of the tolerance decides
    const rank = (verdict.agrees ? 0 : 1e9) + (verdict.off === null ? (verdict.agrees ? 0 : 1e9) : Math.min(1e8, Math.abs(verdict.off) / (item.tol || 1e-6)));
    if (rank > tally.worstRank) {
      tally.worstRank = rank;
      tally.worst = { id: item.id, value: item.value, got: plain(answer.got), off: verdict.off };
    }
  }
  return { groups: [...tallies.values()].map(row), passed, failed, skipped };
}

function tallyOf(tallies: Map<string, Tally>, item: Case): Tally {
  const key = `${item.group}\n${item.kind}`;
  let tally = tallies.get(key);
  if (!tally) {
    tally = { group: item.group, kind: item.kind, sources: new Set(), cases: 0, within: 0, worst: null, worstRank: -1, squares: 0, numbers: 0 };
    tallies.set(key, tally);
  }
  if (item.source !== undefined) tally.sources.add(item.source);
  return tally;
}

function row(t: Tally): GroupResult {
  return {
    group: t.group, kind: t.kind, source: [...t.sources].join(', '), cases: t.cases, within: t.within, worst: t.worst,
    rms: t.numbers > 0 ? Math.sqrt(t.squares / t.numbers) : null,
  };
}

function answerTo(item: Case, bindings: Bindings): { readonly got: Answer } | { readonly why: string } {
  const binding = Object.hasOwn(bindings, item.group) ? bindings[item.group] : undefined;
  if (typeof item.inputs !== 'object' || item.inputs === null) return { why: 'no inputs' };
  if (!binding) return { why: `not yet bound: ${domainOf(item.group)}` };
  try {
    const got = binding(inputsOf(item.inputs, item.note), item.unit ?? '');
    return got === undefined ? { why: `inputs not taken: ${Object.keys(item.inputs).join(', ')}` } : { got };
  } catch (error) {
    if (error instanceof InputMissing) return { why: `input missing: ${error.message}` };
    throw error;
  }
}

function domainOf(group: string): string {
  for (const [domain, pattern] of DOMAINS) if (pattern.test(group)) return domain;
  return 'unknown group';
}

function plain(got: Answer): CaseValue {
  if (got === undefined) return null;
  if (typeof got === 'number') return Number.isFinite(got) ? got : null;
  return got;
}
