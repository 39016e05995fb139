import { normalQuantile } from './normal.ts';

/** Murmur's last step: every bit of the input reaches every bit of the result. */
function stir(h: number): number {
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/**
 * A number for a key, to draw by.
 * @param key any text
 * @returns a whole number, 0..2^32 - 1; two keys may share one, so that whoever compiles a list of keys checks
 * @source fnv-1a over UTF-16 code units, then the last step of murmur3
 */
export function hashOf(key: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < key.length; i++) {
    const unit = key.charCodeAt(i);
    h = Math.imul(h ^ (unit & 0xff), 0x01000193);
    h = Math.imul(h ^ (unit >>> 8), 0x01000193);
  }
  return stir(h);
}

/**
 * A draw between 0 and 1 that is a pure function of who draws what in which world: the order of drawing never matters.
 * @param seed,keyHash,maker whole numbers; the low 32 bits of each count
 * @returns evenly spread, above 0 and below 1, in steps of 2^-52
 * @source none - definition
 */
export function draw(seed: number, keyHash: number, maker: number): number {
  return drawBy(keyOf(seed, keyHash), maker);
}

/**
 * What `drawBy` takes for a seed and a key.
 * @param seed,keyHash as in `draw`
 * @returns a whole number, 0..2^32 - 1
 * @source none - definition
 */
export function keyOf(seed: number, keyHash: number): number {
  return stir((stir((seed | 0) + 0x9e3779b9) ^ keyHash) + 0x7f4a7c15);
}

/**
 * `draw` for what `keyOf` gave: for many makers of one seed.
 * @param b,maker as `keyOf` gives it, as in `draw`
 * @returns as `draw`
 * @source none - definition
 */
export function drawBy(b: number, maker: number): number {
  const high = stir(b ^ Math.imul((maker | 0) + 1, 0x9e3779b1));
  const low = stir(high + Math.imul(b ^ maker, 0x85ebca77) + 0x165667b1);
  return ((high >>> 6) * 67108864 + (low >>> 6) + 0.5) / 4503599627370496;
}

/**
 * The same as a standard normal.
 * @param seed,keyHash,maker as in `draw`
 * @returns mean 0, deviation 1
 * @source wichura1988 algorithm AS 241 for the quantile
 */
export function drawNormal(seed: number, keyHash: number, maker: number): number {
  return normalQuantile(draw(seed, keyHash, maker));
}
