import { readFileSync } from 'node:fs';

/** Lines that are tried together. */
const BLOCK = 12;

/** A number in [0, 1) from words, the same on every machine (FNV-1a, mixed). */
function draw(words) {
  let hash = 0x811c9dc5;
  for (const character of words) hash = Math.imul(hash ^ character.codePointAt(0), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return ((hash ^ (hash >>> 13)) >>> 0) / 4294967296;
}

/** Blocks of lines of the files, so that their share of all is about `share`: `path:from-to`. */
export function sampled(files, share, seed) {
  if (share >= 1) return files;
  return files.flatMap((file) => {
    const count = readFileSync(file, 'utf8').split('\n').length;
    return Array.from({ length: Math.ceil(count / BLOCK) }, (_, block) => block)
      .filter((block) => draw(`${seed} ${file} ${block}`) < share)
      .map((block) => `${file}:${block * BLOCK + 1}-${Math.min((block + 1) * BLOCK, count)}`);
  });
}
