import { fileURLToPath } from 'node:url';
import { readFileSync } from 'node:fs';
import { runnerImport, type Plugin } from 'vite';
import type { Read } from './src/read.ts';

const NAME = 'virtual:first-reading', PLACE = '<!-- first drawing -->';

/**
 * The reading of the demo drink, made by the engine when the page is built, so that the drawing stands before the engine and its tables
 * have come over the line; and the picture of it as a phone shows it, in the page itself, so that something stands before any script has. The engine then reads the same text again.
 */
export function firstReading(packages: string): Plugin {
  const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url)), file = at('../../demo/clear-colada.drink');
  const run = async <T>(path: string): Promise<T> => (await runnerImport<T>(at(path), {
    configFile: false, logLevel: 'error',
    resolve: { alias: [{ find: /^@washline\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` }] },
  })).module;
  let made: Promise<Read> | undefined;
  const read = (): Promise<Read> => (made ??= run<typeof import('./src/read.ts')>('./src/read.ts').then((engine) => engine.read(readFileSync(file, 'utf8'))));
  return {
    name: 'first-reading',
    buildStart() { made = undefined; },
    resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
    async load(id) {
      if (id !== `\0${NAME}`) return null;
      this.addWatchFile(file);
      return `export default JSON.parse(${JSON.stringify(JSON.stringify(await read()))})`;
    },
    async transformIndexHtml(html) {
      const { firstDrawing } = await run<typeof import('./src/first-drawing.ts')>('./src/first-drawing.ts');
      return html.replace(PLACE, firstDrawing(await read()));
    },
  };
}
