export * from './retention.ts';
export * from './boil-off.ts';
export * from './boiling.ts';
