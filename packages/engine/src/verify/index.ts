export { verify } from './verify.ts';
export { compare, type Verdict } from './compare.ts';
export { BINDINGS } from './bindings/index.ts';
export type { Answer, Binding, Bindings, Case, CaseFile, CaseKind, CaseValue, GroupResult, Inputs, VerifyResult, Worst } from './types.ts';
