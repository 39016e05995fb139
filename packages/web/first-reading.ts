import { fileURLToPath } from 'node:url';
import { readFileSync } from 'node:fs';
import { runnerImport, type Plugin } from 'vite';

const NAME = 'virtual:first-reading';

/**
 * The reading of the demo drink, made by the engine when the page is built, so that the drawing stands before the engine and its tables
 * have come over the line. The engine then reads the same text again.
 */
export function firstReading(packages: string): Plugin {
  return {
    name: 'first-reading',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
    async load(id) {
      if (id !== `\0${NAME}`) return null;
      const file = fileURLToPath(new URL('../../demo/clear-colada.drink', import.meta.url));
      this.addWatchFile(file);
      const { module } = await runnerImport<typeof import('./src/read.ts')>(fileURLToPath(new URL('./src/read.ts', import.meta.url)), {
        configFile: false, logLevel: 'error',
        resolve: { alias: [{ find: /^@washline\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` }] },
      });
      return `export default JSON.parse(${JSON.stringify(JSON.stringify(module.read(readFileSync(file, 'utf8'))))})`;
    },
  };
}
