export * from './root.ts';
export * from './normal.ts';
export * from './draw.ts';
export * from './even.ts';
export * from './spread.ts';
export * from './quantile.ts';
