// The tests of one domain, named in WASHLINE_MUTATION, with packages taken from their sources.
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { DOMAINS } from './domains.mjs';

const { tests } = DOMAINS[process.env.WASHLINE_MUTATION ?? 'units'];
const at = (path) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

export default defineConfig({
  root: at(''),
  resolve: { alias: [{ find: /^@washline\/([a-z]+)$/, replacement: at('packages/$1/src/index.ts') }] },
  test: { include: tests, exclude: ['**/node_modules/**', '**/dist/**'], setupFiles: [at('tools/vitest/properties.mjs')], testTimeout: 90_000 },
});
