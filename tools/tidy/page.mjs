import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

function* filesIn(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* filesIn(path); else yield path;
  }
}

const NODE = new RegExp(`(?:from|import|require)\\s*\\(?\\s*["'\`](?:node:[\\w/]+|${builtinModules.filter((name) => !name.startsWith('_')).map((name) => name.replaceAll('/', '\\/')).join('|')})["'\`]|__vite-browser-external`);

/** The built page runs in a browser: no Node built-in and no native module is in it, and no address that only one place can serve. */
export function page() {
  const dist = join(root, 'packages', 'web', 'dist');
  if (!existsSync(dist)) return { name: 'the built page is free of Node built-ins', problems: ['packages/web/dist is not built'] };
  const files = [...filesIn(dist)];
  const scripts = files.filter((path) => /\.m?js$/.test(path));
  const node = scripts.filter((path) => NODE.test(readFileSync(path, 'utf8'))).map((path) => `${path.slice(root.length + 1)} takes a Node built-in`);
  const native = files.filter((path) => path.endsWith('.node')).map((path) => path.slice(root.length + 1));
  const absolute = files.filter((path) => path.endsWith('.html')).flatMap((path) => [...readFileSync(path, 'utf8').matchAll(/(?:src|href)="(\/[^"]*)"/g)].map(([, target]) => `${path.slice(root.length + 1)}: ${target} is no relative address`));
  return [
    { name: 'the built page is free of Node built-ins', problems: [...node, ...native, ...(scripts.length === 0 ? ['no script was built'] : [])] },
    { name: 'the built page has relative addresses only', problems: absolute },
  ];
}
