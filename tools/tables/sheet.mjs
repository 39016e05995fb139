import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

/** Rows of a tab-separated file of `data/`; a row of the wrong length stops the build with its place. */
export function sheet(name) {
  const lines = readFileSync(join(root, 'data', name), 'utf8').split('\n');
  if (lines.at(-1) === '') lines.pop();
  const head = lines[0].split('\t');
  const rows = lines.slice(1).map((line, i) => {
    const cells = line.split('\t');
    if (cells.length !== head.length) throw new Error(`data/${name}:${i + 2} has ${cells.length} cells, not ${head.length}.`);
    return Object.fromEntries(head.map((column, at) => [column, cells[at]]));
  });
  return { head, rows };
}

/** A list of "grade source" pairs, each written once; rows hold its index in base 36. */
export function provenances() {
  const list = [];
  const index = new Map();
  return {
    list,
    of(grade, source) {
      const pair = `${grade} ${source}`;
      if (!index.has(pair)) { index.set(pair, list.length); list.push(pair); }
      return index.get(pair).toString(36);
    },
  };
}

/** The value of a factor written as a product and quotient of numbers: `231*16.387064/128`. */
export function factor(text, place) {
  if (!/^[\d.e+-]+([*/][\d.]+)*$/.test(text)) throw new Error(`${place}: the factor "${text}" is not a product of numbers.`);
  const [first, ...rest] = text.split(/(?=[*/])/);
  return rest.reduce((value, part) => (part[0] === '*' ? value * Number(part.slice(1)) : value / Number(part.slice(1))), Number(first));
}
