import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { projectFiles, read } from './files.mjs';

/** Codes of the table of findings. */
function codes() {
  return existsSync(join(root, 'data/findings.json')) ? JSON.parse(read('data/findings.json')).codes.map((row) => row.code) : [];
}

/** Each finding has its sentence and its entry in the manual. */
export function findings() {
  const all = codes();
  const sentences = existsSync(join(root, 'messages/en/findings.json')) ? JSON.parse(read('messages/en/findings.json')) : {};
  const manual = projectFiles((path) => /^docs\/manual\/.*\.md$/.test(path)).map(read).join('\n');
  const lacking = (test, what) => all.filter((code) => !test(code)).map((code) => `${code} ${what}`);
  return [
    { name: 'there is a table of findings', problems: all.length > 0 ? [] : ['data/findings.json holds no code'] },
    { name: 'every finding has its sentence', problems: lacking((code) => Object.values(sentences[code] ?? {}).some((sentence) => sentence !== ''), 'has no sentence in messages/en/findings.json') },
    { name: 'every finding has its entry in the manual', problems: lacking((code) => manual.includes(`\`${code}\``), 'has no entry in docs/manual') },
  ];
}

/** Each finding has a test that raises it and a near twin that stays silent, by the names of the tests that passed. */
export function findingTests(names) {
  const passed = names.join('\n');
  const lacking = (words) => codes().filter((code) => !new RegExp(`${words} ${code}(?![\\w-])`).test(passed)).map((code) => `no test that passed is named "${words} ${code}"`);
  return [
    { name: 'every finding has a test that raises it', problems: lacking('raises') },
    { name: 'every finding has a near twin that stays silent', problems: lacking('stays silent on a twin of') },
  ];
}
