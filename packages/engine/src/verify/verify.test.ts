import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { BINDINGS, compare, verify } from './index.ts';
import type { Case, CaseFile, CaseValue } from './index.ts';

const read = (name: string): unknown => JSON.parse(readFileSync(fileURLToPath(new URL(`../../../../cases/${name}`, import.meta.url)), 'utf8'));
const file = read('published.json') as CaseFile;
const explained = (read('explained.json') as { explained: { group: string; why: string }[] }).explained;
const all = verify(file);

describe('published cases', () => {
  test('every group that is bound is within its tolerances, or its reason is written down', () => {
    const over = all.groups.filter((g) => g.within < g.cases).map((g) => g.group);
    expect(over.filter((group) => !explained.some((e) => e.group === group))).toEqual([]);
    // a reason that is no longer needed goes
    expect(explained.filter((e) => !over.includes(e.group))).toEqual([]);
  });
  test('density, strength, gauging, sugar, solutes, freezing, heat, viscosity and measures are all bound', () => {
    const ids = new Set(all.skipped.map((s) => s.id));
    const mine = file.cases.filter((c) => /^s0[1-8]-|^s10-/.test(c.id) || ['2_us_fl_oz', 'imperial_pint', 'us_tsp', 'us_cup'].includes(c.group));
    expect(mine.length).toBeGreaterThan(500);
    expect(mine.filter((c) => ids.has(c.id)).map((c) => c.id)).toEqual([]);
  });
  test('counts add up', () => {
    expect(all.passed + all.failed + all.skipped.length).toBe(file.cases.length);
    expect(all.groups.reduce((n, g) => n + g.cases, 0)).toBe(all.passed + all.failed);
  });
  test('every binding names a group of the cases or a solute of the same tables', () => {
    const groups = new Set(file.cases.map((c) => c.group));
    const loose = Object.keys(BINDINGS).filter((g) => !groups.has(g) && !/_(density20|n20D|fpd_crc)$/.test(g));
    expect(loose).toEqual([]);
  });
});

/** The value moved out of its tolerance. */
function moved(item: Case): CaseValue {
  const { value, tol } = item;
  const shift = (v: CaseValue): CaseValue =>
    typeof v === 'number' ? v + 3 * (tol ?? 0) + 1e-6 * Math.max(1, Math.abs(v)) : typeof v === 'boolean' ? !v : typeof v === 'string' ? `not ${v}` : Array.isArray(v) ? v.map(shift) : v;
  if (item.within === true && Array.isArray(value)) return (value as number[]).map((v) => v + 1e6);
  return shift(value);
}

test('a changed expected value fails, in every case that is run', () => {
  const ran = new Set(all.skipped.map((s) => s.id));
  const changed = verify({ cases: file.cases.filter((c) => !ran.has(c.id)).map((c) => ({ ...c, value: moved(c) })) });
  expect(changed.passed).toBe(0);
  expect(changed.failed).toBe(all.passed + all.failed);
});

test('no case is known by its id: the same under any other', () => {
  const other = verify({ cases: file.cases.map((c, i) => ({ ...c, id: `x${i}` })) });
  expect(other.passed).toBe(all.passed);
  expect(other.failed).toBe(all.failed);
});

test('only runs the groups that are named', () => {
  const one = verify(file, ['lange_density']);
  expect(one.groups.map((g) => g.group)).toEqual(['lange_density']);
  expect(one.passed + one.failed).toBe(file.cases.filter((c) => c.group === 'lange_density').length);
});

test('what cannot be answered is skipped with its reason, never passed', () => {
  const item = (group: string, inputs: Record<string, unknown>): Case => ({ id: 'a', group, kind: 'nature', inputs, value: 1, tol: 1e9 });
  expect(verify({ cases: [item('no such group', {})] }).skipped).toEqual([{ id: 'a', why: 'not yet bound: unknown group' }]);
  expect(verify({ cases: [item('toString', {})] }).skipped).toHaveLength(1);
  expect(verify({ cases: [item('lange_density', null as unknown as Record<string, unknown>)] }).skipped[0]?.why).toBe('no inputs');
  expect(verify({ cases: [item('lange_density', { t_C: 20 })] }).skipped[0]?.why).toMatch(/^input missing: /);
  expect(verify({ cases: [item('lange_density', { mass_pct: 'many', t_C: 20 })] }).skipped).toHaveLength(1);
  expect(verify({ cases: [item('lange_density', { mass_pct: 200, t_C: 20 })] }).failed).toBe(1);
});

describe('comparing', () => {
  const yes = (item: Pick<Case, 'value' | 'tol' | 'within'>, got: Parameters<typeof compare>[1]): boolean => compare(item, got).agrees;
  test('numbers by an absolute tolerance, ends included', () => {
    expect(yes({ value: 10, tol: 0.1 }, 10.1)).toBe(true);
    expect(yes({ value: 10, tol: 0.1 }, 10.1001)).toBe(false);
    expect(yes({ value: 2, tol: 0 }, 2)).toBe(true);
    expect(yes({ value: 2, tol: null }, 2.001)).toBe(false);
    expect(yes({ value: 2, tol: 1 }, NaN)).toBe(false);
    expect(yes({ value: 2, tol: 1 }, '2')).toBe(false);
  });
  test('lists item by item', () => {
    expect(yes({ value: [1, 2], tol: 0.1 }, [1.05, 1.95])).toBe(true);
    expect(yes({ value: [1, 2], tol: 0.1 }, [1.05, 2.2])).toBe(false);
    expect(yes({ value: [1, 2], tol: 0.1 }, [1])).toBe(false);
  });
  test('inside a band', () => {
    expect(yes({ value: [0.5, 0.8], within: true, tol: 0 }, 0.8)).toBe(true);
    expect(yes({ value: [0.5, 0.8], within: true, tol: 0 }, 0.81)).toBe(false);
  });
  test('words, a remark aside', () => {
    expect(yes({ value: 'warn (limit 20)' }, 'warn')).toBe(true);
    expect(yes({ value: 'warn (limit 20)' }, 'warn (limit 15)')).toBe(false);
    expect(yes({ value: 'TCS' }, 'non-TCS')).toBe(false);
    expect(yes({ value: true }, true)).toBe(true);
    expect(yes({ value: true }, 'true')).toBe(false);
  });
});
