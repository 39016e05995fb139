// Properties are tried with the number of cases WASHLINE_CASES says (100 where it says nothing). The seed is fixed, so that a run can be trusted
// to be the same twice; `npm run proof` draws another each time and says which.
import fc from 'fast-check';

fc.configureGlobal({ numRuns: Number(process.env.WASHLINE_CASES ?? 100), seed: Number(process.env.WASHLINE_SEED ?? 1862) });
