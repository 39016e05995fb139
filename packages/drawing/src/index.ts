export * from './shapes.ts';
export { draw, type DrawOptions, type Said } from './draw.ts';
export type { Reading as Drawable } from './reading.ts';
export { terminalGlass } from './terminal.ts';
export { letterOf, sectionsOf } from './prep/flow.ts';
export { figureShown, shown, spreadShown, decimalsFor, leastDecimals, unitShown } from './pen/numbers.ts';
export { speak } from './words.ts';
export { tint, type Scheme } from './pen/tint.ts';
export { hatches, type Hatch } from './pen/hatch.ts';
