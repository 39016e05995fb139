export * from './exact.ts';
