// Properties are tried with the number of cases WASHLINE_CASES says (100 where it says nothing) and a seed that can be given.
import fc from 'fast-check';

fc.configureGlobal({
  numRuns: Number(process.env.WASHLINE_CASES ?? 100),
  ...(process.env.WASHLINE_SEED ? { seed: Number(process.env.WASHLINE_SEED) } : {}),
});
