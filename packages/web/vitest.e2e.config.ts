import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Against the built page in a real browser; `CHROMIUM` names it. The page is built before.
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  test: { name: 'browser', include: ['e2e/**/*.test.ts'], testTimeout: 30_000, hookTimeout: 60_000, fileParallelism: false },
});
