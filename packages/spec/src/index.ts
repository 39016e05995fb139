export { parse, printedName, type ParseOptions } from './document/parse.ts';
export { LIMITS } from './document/limits.ts';
export { PROBLEM_CODES, problem, type ProblemCode } from './problems/codes.ts';
export { fold, foldTyped } from './names/fold.ts';
export { lookup, lookupWhole, type Found, type Measured } from './names/lookup.ts';
export { nearest, edits, type Near } from './names/nearest.ts';
export { unitRow, systemsOf } from './vocabulary/units.ts';
export { METHODS, methodOf } from './sections/methods.ts';
export { lines, type LineReading } from './lines/lines.ts';
