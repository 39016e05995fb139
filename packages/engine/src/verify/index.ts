export { verify } from './verify.ts';
export { compare, type Verdict } from './compare.ts';
export { BINDINGS } from './bindings/index.ts';
export type { Answer, Binding, Bindings, Case, CaseFile, CaseKind, CaseValue, GroupResult, Inputs, VerifyResult, Worst } from './types.ts';
export { winesOf, type WineProblem } from './wine-rows.ts';
export { verifyWines, WINE_SHARE, type WineGroup, type WineResult } from './wine-bands.ts';
export { wineDensity, winePH, type Colour, type Wine } from './wines.ts';
