import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { dataFiles, numbersOf } from './numbers.mjs';

const PAGE = 'docs/models/sabotage.md';
const count = (list, of) => list.reduce((counts, one) => counts.set(of(one), (counts.get(of(one)) ?? 0) + 1), new Map());
const shown = (value) => String(Number(value.toPrecision(3)));

/** One survivor in a line. */
export const survivor = ({ number, by, rule }) => `${number.file} ${number.place} = ${number.written} + ${shown(by)} (${rule.why})`;

const SINCE = /^Since that run: .*$/m;

/** What the page has to say of numbers that came or went since it was written. */
function since(text) {
  const then = new Map([...text.matchAll(/^\| ([a-z0-9/.-]+\.(?:json|tsv)) \| (\d+) \|/gm)].map(([, file, many]) => [file, Number(many)]));
  const now = new Map(dataFiles().map((file) => [file.slice(5), numbersOf(file).length]));
  const moved = [...new Set([...then.keys(), ...now.keys()])].filter((file) => then.get(file) !== now.get(file));
  return `Since that run: ${moved.length === 0 ? 'no number came or went.' : `${moved.map((file) => `${file} ${then.get(file) ?? 0} then, ${now.get(file) ?? 0} now`).join('; ')}.`}`;
}

/** Writes that line of the page anew. */
export function recount() {
  const text = readFileSync(join(root, PAGE), 'utf8');
  writeFileSync(join(root, PAGE), text.replace(SINCE, since(text)));
}

/** What is wrong with the page's account of how many numbers there are. */
export function miscounted() {
  if (!existsSync(join(root, PAGE))) return [`${PAGE} is not there: npm run sabotage`];
  const text = readFileSync(join(root, PAGE), 'utf8');
  const right = since(text);
  return SINCE.exec(text)?.[0] === right ? [] : [`${PAGE} should say "${right}": npm run sabotage -- --count, or the whole of it anew`];
}

function page(results) {
  const files = [...new Set(results.map(({ number }) => number.file))];
  const table = files.map((file) => {
    const here = results.filter(({ number }) => number.file === file);
    const most = [...count(here.filter(({ noticed }) => noticed), ({ noticed }) => noticed.file)].sort((a, b) => b[1] - a[1]).slice(0, 3);
    return `| ${file.slice(5)} | ${here.length} | ${here.filter(({ noticed }) => noticed).length} | ${here.filter(({ explained }) => explained).length} | ${most.map(([name]) => name.split('/').slice(-2).join('/')).join(', ')} |`;
  });
  const classes = [...count(results.filter(({ explained }) => explained), ({ explained }) => explained)].sort((a, b) => b[1] - a[1]);
  const list = classes.map(([one, many]) => {
    const all = results.filter(({ explained }) => explained === one);
    const places = all.slice(0, 12).map(({ number }) => `\`${number.place.replaceAll('|', ' ')}\``).join(', ');
    return `- **${many}** of \`${one.file.replaceAll('|', ' ')}\`${one.grade ? `, ${one.grade.join(' or ')}` : ''}: ${one.why}\n  ${places}${many > 12 ? ` and ${many - 12} more` : ''}`;
  });
  const caught = results.filter(({ noticed }) => noticed).length;
  return `# Sabotage

Written by \`npm run sabotage\`. A coefficient with a wrong digit gives figures that look right; this page says which numbers of \`data/\` a test would miss, and why the others are not held.

Each number is shifted upwards by three of its residuals, and tests are run until one fails. What the residual of a number is says \`tools/sabotage/residuals.json\`: what the source or the fit states, else the spread of
its row, else half a unit of its last printed digit; a definition is shifted by one unit of its last digit or a millionth.

**Caught** is a number for which a test failed with nothing else shifted. **Explained** is one that no test noticed and that a class of \`tools/sabotage/explained.json\` gives a reason for; such numbers are shifted many
together, so that a few which a test would notice alone may be among them. **Unexplained** must be none: a check is missing, or a reason. Limits of law, of safety and of keeping may not be explained, only caught.

Cells of the sheets are first held row by row against print and against what cannot be (\`tests/print\`). What that leaves is shown to the tests of engine and tables, words and measures to those of
lines, what speaks of harm, of preps and of measures to those of findings too. Whole readings of the demo book, the old books, the manual and the pages of residuals are not asked: they are written or judged with the engine's own answer.

Not every catch is print's: the rows of \`cases/print/limits.json\` were recalled, and the rows of \`cases/print/cells.tsv\` marked common practice are second copies, with no print behind them. They hold a number against a slip of the hand, not against the world; they count as caught all the same.

${results.length} shifted, ${caught} caught, ${results.filter(({ explained }) => explained).length} explained, ${results.filter(({ noticed, explained }) => !noticed && !explained).length} unexplained.

Since that run: no number came or went.

| file | numbers | caught | explained | noticed most by |
| --- | ---: | ---: | ---: | --- |
${table.join('\n')}

## Survivors and why

${list.join('\n')}
`;
}

/** Prints what was found, writes the page after a whole run, and gives the exit status. */
export function report({ results, broken, seconds }, { whole, verbose, say }) {
  for (const one of broken) say(`fails as it is: ${one}`);
  for (const file of new Set(results.map(({ number }) => number.file))) {
    const here = results.filter(({ number }) => number.file === file);
    say(`  ${file}: ${here.length} shifted, ${here.filter(({ noticed }) => noticed).length} caught, ${here.filter(({ explained }) => explained).length} explained`);
  }
  const unexplained = results.filter(({ noticed, explained }) => !noticed && !explained);
  const caught = results.filter(({ noticed }) => noticed);
  for (const one of verbose ? unexplained : unexplained.slice(0, 60)) say(`survived: ${survivor(one)}`);
  if (!verbose && unexplained.length > 60) say(`and ${unexplained.length - 60} more; --verbose prints them`);
  if (verbose) for (const { number, explained } of results.filter((one) => one.explained)) say(`explained: ${number.file} ${number.place} = ${number.written}: ${explained.why}`);
  if (whole) writeFileSync(join(root, PAGE), page(results));
  say(`${seconds.toFixed(0)} s`);
  say(`${results.length} shifted, ${caught.length} caught, ${results.length - caught.length - unexplained.length} explained, ${unexplained.length} unexplained`);
  return unexplained.length > 0 || broken.length > 0 ? 1 : 0;
}
