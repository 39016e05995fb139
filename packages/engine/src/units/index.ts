export * from './exact.ts';
export * from './money.ts';
