import { normalShare, Z95 } from '../numeric/index.ts';
import type { Compiled } from '../program/compile.ts';
import { place } from '../reading/place.ts';
import type { Spreads } from '../reading/spread.ts';
import type { Finding, Severity } from '../reading/types.ts';
import { CODES } from './codes.ts';
import { judgeChoices } from './measures.ts';

/** A margin that is less is the rounding of a sum: a litre that was written as two halves is at its limit, not beyond. */
const ROUNDING = 1e-9;

/**
 * Judges every margin: beyond its limit at the nominal it stops, within its range it warns, else it is silent; no code goes beyond what
 * its row allows. `odds` here are read off the two sides of the range.
 * @source none - definition
 */
export function judge(c: Compiled, s: Spreads, at: (of: string, name: string) => number | undefined): Finding[] {
  const out: Finding[] = [], under: { readonly finding: Finding; readonly code: string }[] = [];
  c.ctx.margins.forEach((m, i) => {
    const k = at(`finding:${i}`, `margin:${m.code}`);
    const row = CODES[m.code];
    if (k === undefined || !row) return;
    const exact = s.value[k]!, low = s.low[k]!, high = s.high[k]!, value = Math.abs(exact) < ROUNDING ? 0 : exact;
    if (!Number.isFinite(value)) return;
    let severity: Severity | null = value > 0 ? 'stop' : high > 0 || (m.warnFrom !== undefined && value > m.warnFrom) ? 'warn' : null;
    if (severity === null) return;
    const most = m.cap ?? row.most;
    if (most === 'note') { if (value <= 0) return; severity = 'note'; } else if (most === 'warn' && severity === 'stop') severity = 'warn';
    const words: Record<string, string | number> = { ...m.words };
    for (const name of Object.keys(m.live ?? {})) { const w = at(`finding:${i}`, `word:${name}`); if (w !== undefined) words[name] = s.value[w]!; }
    const numbers = Object.fromEntries(Object.entries(words).filter((e): e is [string, number] => typeof e[1] === 'number'));
    const remedy = typeof m.remedy === 'function' ? m.remedy({ ...numbers, margin: value, high }) : m.remedy;
    const side = value > 0 ? value - low : high - value;
    const odds = side > 0 ? normalShare((value / side) * Z95) : value > 0 ? 1 : 0;
    const finding: Finding = {
      code: m.code, severity, where: place(c.ctx.document, m.at), margin: { value, low, high, unit: m.unit }, odds, words,
      ...(remedy ? { remedy } : {}), sources: m.sources,
    };
    if (m.under !== undefined) under.push({ finding, code: m.under });
    out.push(finding);
  });
  for (const { finding, code } of under) {
    // of two margins of one code the later is silent where the first says anything
    const same = (f: Finding) => f.code === code && f !== finding && (f.severity === 'stop' || f.code === finding.code) && f.where.path.join('/') === finding.where.path.join('/');
    if (out.some(same)) out.splice(out.indexOf(finding), 1);
  }
  out.push(...judgeChoices(c, s, at));
  const rank = { stop: 0, warn: 1, note: 2 };
  return out.sort((a, b) => rank[a.severity] - rank[b.severity] || (a.where.line ?? 0) - (b.where.line ?? 0));
}
