import { plainWithin } from '../plain.ts';
import { say } from '../sentences.ts';
import type { World } from '../world.ts';
import { inkFor } from './ink.ts';
import { number } from './numbers.ts';
import { fit, wrap } from './text.ts';

export interface Verified {
  readonly groups: readonly {
    readonly group: string; readonly kind: 'nature' | 'rule' | 'code'; readonly source: string; readonly cases: number; readonly within: number;
    readonly worst: { readonly id: string; readonly value: unknown; readonly got: unknown; readonly off: number | null } | null; readonly rms: number | null;
  }[];
  readonly passed: number; readonly failed: number; readonly skipped: readonly { readonly id: string; readonly why: string }[];
}

/** Agreement by group, the three kinds apart: only measurements and printed tables of them count as agreement with print. */
export function printVerified(world: World, found: Verified, color: boolean): void {
  const result = plainWithin(found);
  const ink = inkFor(world, color);
  const lines: string[] = [];
  for (const kind of ['nature', 'rule', 'code'] as const) {
    const groups = result.groups.filter((group) => group.kind === kind);
    if (groups.length === 0) continue;
    const cases = groups.reduce((sum, group) => sum + group.cases, 0);
    const within = groups.reduce((sum, group) => sum + group.within, 0);
    lines.push(ink.bold(say(`verify.${kind}`, { within, cases })));
    for (const group of groups) {
      const rms = typeof group.rms === 'number' ? say('verify.rms', { rms: number(Number(group.rms.toPrecision(2))) }) : '';
      const row = `  ${fit(group.group, 34)} ${`${group.within}/${group.cases}`.padStart(9)}  ${fit(rms, 16)} ${fit(group.source, 15)}`;
      lines.push(group.within < group.cases ? ink.signal(row) : row);
      if (group.within < group.cases && group.worst) lines.push(...wrap(say('verify.worst', { id: group.worst.id, value: JSON.stringify(group.worst.value), got: JSON.stringify(group.worst.got) }), '    ', '    '));
    }
    lines.push('');
  }
  const why = new Map<string, number>();
  for (const skip of result.skipped) why.set(skip.why, (why.get(skip.why) ?? 0) + 1);
  for (const [reason, count] of why) lines.push(...wrap(say('verify.skipped', { count, reason }), '', '  '));
  lines.push(say('verify.total', { passed: result.passed, failed: result.failed, skipped: result.skipped.length }));
  world.stdout.write(`${lines.map((line) => line.trimEnd()).join('\n')}\n`);
}
