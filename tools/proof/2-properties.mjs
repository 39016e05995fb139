import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { seedFor } from '../house/seed.mjs';
import { vitest } from '../house/vitest.mjs';

export const title = 'Properties, with many more cases';

/** Test files that try properties on drawn cases. */
function* propertyTests(folder) {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) { if (entry.name !== 'node_modules' && entry.name !== 'dist') yield* propertyTests(path); }
    else if (entry.name.endsWith('.test.ts') && readFileSync(join(root, path), 'utf8').includes("from 'fast-check'")) yield path;
  }
}

export function prove({ short, total }) {
  const files = [...propertyTests('packages'), ...propertyTests('tests')];
  total.check('there are properties to try', files.length > 0 ? [] : ['no test file imports fast-check']);
  if (files.length === 0) return;
  const seed = seedFor({ short });
  console.log(`  seed ${seed}; WASHLINE_SEED repeats it`);
  total.add(vitest([...files, '--testTimeout', short ? '60000' : '600000'], { env: { WASHLINE_CASES: short ? '1000' : '20000', WASHLINE_SEED: String(seed) } }));
}
