import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { run } from '../house/tally.mjs';
import { DOMAINS } from '../directions/rules.mjs';

/** Imports go one way and never in a ring; a run that cruised nothing proves nothing. */
export function directions() {
  const sources = readdirSync(join(root, 'packages')).map((name) => `packages/${name}/src`).filter((path) => existsSync(join(root, path)));
  const done = run(process.execPath, ['node_modules/dependency-cruiser/bin/dependency-cruise.mjs', '--config', 'tools/directions/rules.mjs', '--output-type', 'json', ...sources]);
  let summary;
  try { summary = JSON.parse(done.out).summary; } catch { return { name: 'imports go one way', problems: [`dependency-cruiser did not answer: ${done.all.slice(0, 2000)}`] }; }
  const reasons = new Map((summary.ruleSetUsed?.forbidden ?? []).map((rule) => [rule.name, rule.comment]));
  const unlisted = readdirSync(join(root, 'packages/engine/src'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !DOMAINS.includes(entry.name)).map((entry) => `packages/engine/src/${entry.name} is not in the list of tools/directions/rules.mjs`);
  return [
    { name: 'import directions were looked at', problems: summary.totalCruised > 20 ? [] : [`only ${summary.totalCruised} modules were cruised`] },
    { name: 'every engine domain has its place in the order', problems: unlisted },
    { name: 'imports go one way and never in a ring', problems: summary.violations.map((v) => `${v.from} → ${v.to}: ${v.rule.name} (${reasons.get(v.rule.name) ?? ''})`) },
  ];
}
