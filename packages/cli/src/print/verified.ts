import type { Case, VerifyResult, WineResult } from '@washline/engine';
import { plainWithin } from '../plain.ts';
import { say } from '../sentences.ts';
import type { World } from '../world.ts';
import { inkFor } from './ink.ts';
import { number } from './numbers.ts';
import { fit, wrap } from './text.ts';
import { winesShown } from './wines.ts';

/** Agreement by group, the three kinds apart: only measurements and printed tables of them count as agreement with print. */
export function printVerified(world: World, found: VerifyResult, cases: readonly Case[], color: boolean, wines?: WineResult): void {
  const result = plainWithin(found);
  const ink = inkFor(world, color);
  const lines: string[] = [];
  const leftOut = reasons(result, cases);
  for (const kind of ['nature', 'rule', 'code'] as const) {
    const groups = result.groups.filter((group) => group.kind === kind);
    if (groups.length === 0) continue;
    const count = groups.reduce((sum, group) => sum + group.cases, 0);
    const within = groups.reduce((sum, group) => sum + group.within, 0);
    lines.push(ink.bold(say(`verify.${kind}`, { within, cases: count })));
    for (const group of groups) {
      const rms = typeof group.rms === 'number' ? say('verify.rms', { rms: number(Number(group.rms.toPrecision(2))) }) : '';
      const row = `  ${fit(group.group, 34)} ${`${group.within}/${group.cases}`.padStart(9)}  ${fit(rms, 16)} ${fit(group.source, 15)}`;
      lines.push(group.within < group.cases ? ink.signal(row) : row);
      if (group.within < group.cases && group.worst) lines.push(...wrap(say('verify.worst', { id: group.worst.id, value: JSON.stringify(group.worst.value), got: JSON.stringify(group.worst.got) }), '    ', '    '));
      for (const [reason, count] of leftOut.get(`${group.group}\n${kind}`) ?? []) lines.push(...wrap(say('verify.skipped', { count, reason }), '    ', '    ').map(ink.dim));
    }
    lines.push('');
  }
  if (wines) lines.push(...winesShown(wines));
  if (!wines || cases.length > 0) lines.push(say('verify.total', { passed: result.passed, failed: result.failed, skipped: result.skipped.length }));
  world.stdout.write(`${lines.map((line) => line.trimEnd()).join('\n')}\n`);
}

/** How many cases of each group and kind were left out, by reason. */
function reasons(result: VerifyResult, cases: readonly Case[]): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const groupOf = new Map(cases.map((item) => [item.id, `${item.group}\n${item.kind}`]));
  const all = new Map<string, Map<string, number>>();
  for (const { id, why } of result.skipped) {
    const group = groupOf.get(id) ?? '';
    const counts = all.get(group) ?? new Map<string, number>();
    all.set(group, counts.set(why, (counts.get(why) ?? 0) + 1));
  }
  return all;
}
