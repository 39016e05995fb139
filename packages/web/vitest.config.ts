import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const packages = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  resolve: { alias: [{ find: /^@washline\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` }] },
  test: { name: 'page', include: ['src/**/*.test.ts'] },
});
