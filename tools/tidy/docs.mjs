import { existsSync, readdirSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { root } from '../house/root.mjs';
import { projectFiles, read } from './files.mjs';

/** The anchor a heading gets on common readers of Markdown. */
const anchor = (heading) => heading.trim().toLowerCase().replaceAll(/[`*_]/g, '').replaceAll(/[^\p{L}\p{N} -]/gu, '').replaceAll(' ', '-');
const anchorsOf = (path) => new Set([...read(path).matchAll(/^#+ (.+)$/gm)].map(([, heading]) => anchor(heading)));

/** Links of a page that lead nowhere. */
export function brokenLinks(path, page) {
  const text = page.replaceAll(/```[\s\S]*?```/g, '').replaceAll(/`[^`\n]*`/g, '');
  return [...text.matchAll(/\]\(([^)\s]+)(?: "[^"]*")?\)/g)].flatMap(([, target]) => {
    if (/^[a-z]+:/i.test(target)) return [];
    const [file, fragment] = target.split('#');
    const place = file === '' ? path : normalize(join(dirname(path), decodeURIComponent(file)));
    if (!existsSync(join(root, place))) return [`${path}: ${target} leads nowhere`];
    if (fragment && place.endsWith('.md') && !anchorsOf(place).has(fragment)) return [`${path}: ${target} names no heading`];
    return [];
  });
}

/** Every dependency has a decision page that says why it is there. */
function undecided() {
  const pages = projectFiles((path) => /^docs\/decisions\/.*\.md$/.test(path)).map(read).join('\n');
  const names = new Set();
  for (const path of projectFiles((file) => /^(packages\/[^/]+\/)?package\.json$/.test(file))) {
    const { dependencies = {}, devDependencies = {} } = JSON.parse(read(path));
    for (const name of [...Object.keys(dependencies), ...Object.keys(devDependencies)]) if (!name.startsWith('@washline/')) names.add(name);
  }
  return [...names].filter((name) => !pages.includes(`\`${name}\``)).sort().map((name) => `no page of docs/decisions names \`${name}\``);
}

/** Versions are exact, so that a clone of next year is the one of today. */
function loosePins() {
  return projectFiles((file) => /^(packages\/[^/]+\/)?package\.json$/.test(file)).flatMap((path) => {
    const { dependencies = {}, devDependencies = {} } = JSON.parse(read(path));
    return Object.entries({ ...dependencies, ...devDependencies }).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version)).map(([name, version]) => `${path}: ${name} ${version}`);
  });
}

export function docs() {
  const pages = projectFiles((path) => path.endsWith('.md'));
  const commands = existsSync(join(root, 'packages/cli/src/commands')) ? readdirSync(join(root, 'packages/cli/src/commands')).filter((name) => !/(\.test|-worker)\.ts$/.test(name)).map((name) => name.replace(/\.ts$/, '')) : [];
  const manual = pages.filter((path) => path.startsWith('docs/manual/')).map(read).join('\n');
  return [
    { name: 'links of README, manual and pages lead somewhere', problems: pages.flatMap((path) => brokenLinks(path, read(path))) },
    { name: 'there are README, ARCHITECTURE, NOTICE, LICENSE and docs/data.md', problems: ['README.md', 'ARCHITECTURE.md', 'NOTICE', 'LICENSE', 'docs/data.md'].filter((path) => !existsSync(join(root, path))).map((path) => `${path} is missing`) },
    { name: 'every command has its page in the manual', problems: commands.filter((name) => !manual.includes(`washline ${name}`)).map((name) => `docs/manual says nothing of washline ${name}`) },
    { name: 'every dependency has its decision', problems: undecided() },
    { name: 'every dependency is pinned', problems: loosePins() },
  ];
}
