import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { run } from '../house/tally.mjs';

let listed;

/** Files of the project: those git follows and new ones it does not ignore, as paths from the root. */
export function projectFiles(test = () => true) {
  listed ??= run('git', ['ls-files', '--cached', '--others', '--exclude-standard', '-z']).out.split('\0').filter((path) => path !== '' && existsSync(join(root, path)));
  return listed.filter(test);
}

export const read = (path) => readFileSync(join(root, path), 'utf8');

/** Sources of the packages, without tests. */
export const sources = () => projectFiles((path) => /^packages\/[^/]+\/src\/.*\.tsx?$/.test(path) && !/\.test\.tsx?$/.test(path));

/** Rows of a tab-separated table by the names of its first row. */
export function table(path) {
  const [head, ...rows] = read(path).trimEnd().split('\n').map((line) => line.split('\t'));
  return rows.map((cells) => Object.fromEntries(head.map((name, at) => [name, cells[at] ?? ''])));
}
