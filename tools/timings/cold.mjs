import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

function seconds(args) {
  const from = performance.now();
  spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' });
  return (performance.now() - from) / 1000;
}

/** A cold `read` of the demo drink as a multiple of starting `node` alone, the two in turns. */
export function coldTimes() {
  const read = [join('packages', 'cli', 'bin', 'washline.js'), 'read', '--json', join('demo', 'clear-colada.drink')];
  const bare = [];
  const cold = [];
  seconds(read);
  for (let round = 0; round < 15; round += 1) { bare.push(seconds(['-e', '0'])); cold.push(seconds(read)); }
  const middle = (list) => list.sort((a, b) => a - b)[7];
  return [{ what: `a cold read over bare node (${(middle(cold) * 1000).toFixed(0)} ms over ${(middle(bare) * 1000).toFixed(0)} ms)`, got: middle(cold) / middle(bare), goal: 4, unit: '×' }];
}
