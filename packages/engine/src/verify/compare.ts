import type { Answer, Case, CaseValue } from './types.ts';

export interface Verdict { readonly agrees: boolean; readonly off: number | null }

/** Room for binary fractions at the edge of a decimal tolerance. */
const EDGE = 1e-9;

/**
 * Does an answer agree with the printed value?
 * @param item the case: numbers agree within `tol` (absolute; null: equal), lists item by item, with `within` when inside [low, high]; words when they
 * are the same, a remark in parentheses left aside where the answer has none
 * @param got what the engine answered
 * @returns whether, and by how much a number is off (outside the band, with `within`)
 * @source none - definition
 */
export function compare(item: Pick<Case, 'value' | 'tol' | 'within'>, got: Answer): Verdict {
  if (item.within === true) return inside(item.value, got, item.tol ?? 0);
  return same(item.value, got, item.tol ?? null);
}

function inside(band: CaseValue, got: Answer, tol: number): Verdict {
  if (!Array.isArray(band) || typeof got !== 'number' || Number.isNaN(got)) return { agrees: false, off: null };
  const [low, high] = band as [unknown, unknown];
  if (typeof low !== 'number' || typeof high !== 'number') return { agrees: false, off: null };
  const off = got < low ? got - low : got > high ? got - high : 0;
  return { agrees: Math.abs(off) <= tol + EDGE * Math.max(1, Math.abs(got)), off };
}

function same(value: CaseValue, got: Answer, tol: number | null): Verdict {
  if (Array.isArray(value)) {
    if (!Array.isArray(got) || got.length !== value.length) return { agrees: false, off: null };
    let agrees = true, off: number | null = null;
    for (let i = 0; i < value.length; i++) {
      const one = same(value[i] as CaseValue, got[i] as Answer, tol);
      agrees &&= one.agrees;
      if (one.off !== null && (off === null || Math.abs(one.off) > Math.abs(off))) off = one.off;
    }
    return { agrees, off };
  }
  if (typeof value === 'number') {
    if (typeof got !== 'number' || Number.isNaN(got)) return { agrees: false, off: null };
    const off = got - value;
    return { agrees: Math.abs(off) <= (tol ?? 0) + EDGE * Math.max(1e-3, Math.abs(value)), off };
  }
  if (typeof value === 'string') {
    if (typeof got !== 'string') return { agrees: false, off: null };
    return { agrees: words(value) === words(got) || (!got.includes('(') && words(value.replace(/\s*\([^)]*\)\s*$/, '')) === words(got)), off: null };
  }
  return { agrees: value === got, off: null };
}

function words(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/g, ' ');
}
