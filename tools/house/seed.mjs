/** The seed of the short proof is fixed, so that a tree that passed passes again; the long one draws anew. `WASHLINE_SEED` sets either. */
export const seedFor = ({ short }) => Number(process.env.WASHLINE_SEED ?? (short ? 20261126 : Date.now() % 1_000_000_007));
