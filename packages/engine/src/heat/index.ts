export * from './retention.ts';
export * from './boil-off.ts';
