/** Numbers in [0, 1) from a seed, the same on every machine (mulberry32), with what is made of them. */
export function draws(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const upTo = (n) => Math.floor(next() * n);
  return {
    next, upTo,
    pick: (list) => list[upTo(list.length)],
    often: (share) => next() < share,
    times: (n, make) => Array.from({ length: n }, (_, i) => make(i)),
  };
}

/** The seed of one round of a run: any round can be made again without those before it. */
export const seedOf = (seed, round) => (Math.imul(seed, 0x9e3779b1) ^ Math.imul(round + 1, 0x85ebca6b)) >>> 0;
