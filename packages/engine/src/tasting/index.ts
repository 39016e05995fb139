export * from './difference.ts';
export * from './ranking.ts';
