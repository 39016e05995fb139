import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { projectFiles, read, sources } from './files.mjs';

/** Folders of the engine that answer no question of their own, with the reason. */
const NO_PAGE = { document: 'types of what was written; the manual’s page of the text describes it' };

/** What every model page has (house rule); a heading may hold more words. */
const PARTS = ['definitions', 'units', 'equations', 'limits', 'ignored'];
const LONGEST = 400;
const FORBIDDEN = ['utils', 'util', 'common', 'helpers', 'helper', 'services', 'core', 'misc', 'shared'];

export function domains() {
  const folders = readdirSync(join(root, 'packages/engine/src'), { withFileTypes: true }).filter((entry) => entry.isDirectory() && !(entry.name in NO_PAGE)).map((entry) => entry.name);
  const missing = folders.filter((name) => !existsSync(join(root, `docs/models/${name}.md`))).map((name) => `docs/models/${name}.md is missing`);
  const thin = folders.filter((name) => existsSync(join(root, `docs/models/${name}.md`))).flatMap((name) => {
    const text = read(`docs/models/${name}.md`).toLowerCase();
    const absent = PARTS.filter((part) => !text.includes(part));
    return absent.length > 0 ? [`docs/models/${name}.md says nothing of: ${absent.join(', ')}`] : [];
  });
  const long = projectFiles((path) => /^(packages|tools|tests)\/.*\.(tsx?|mjs|js)$/.test(path)).flatMap((path) => {
    const count = read(path).split('\n').length - 1;
    return count > LONGEST ? [`${path} has ${count} lines`] : [];
  });
  const named = projectFiles((path) => path.split('/').some((part) => FORBIDDEN.includes(part.replace(/\.(tsx?|mjs|js)$/, ''))));
  return [
    { name: 'every engine domain has its page', problems: missing },
    { name: 'every model page has definitions, units, equations, limits and what is ignored', problems: thin },
    { name: `no source is longer than ${LONGEST} lines`, problems: long },
    { name: 'no file or folder is named for nothing (utils, common …)', problems: named },
    { name: 'the engine has no run-time dependency', problems: Object.keys(JSON.parse(read('packages/engine/package.json')).dependencies ?? {}).map((name) => `packages/engine depends on ${name}`) },
    { name: 'there are sources to look at', problems: sources().length > 50 ? [] : [`only ${sources().length} sources were found`] },
  ];
}
