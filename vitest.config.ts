import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
/** Packages are taken from their sources, so that a test needs no build. */
const alias = [{ find: /^@washline\/([a-z]+)$/, replacement: at('./packages/$1/src/index.ts') }];
const web = at('./packages/web/vitest.config.ts');

export default defineConfig({
  test: {
    reporters: [at('./tools/vitest/reporter.mjs')],
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'node',
          include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts', 'tools/**/*.test.mjs'],
          exclude: ['packages/web/**', '**/node_modules/**', '**/dist/**'],
          setupFiles: [at('./tools/vitest/properties.mjs')],
          testTimeout: 20_000,
        },
      },
      ...(existsSync(web) ? [web] : []),
    ],
  },
});
