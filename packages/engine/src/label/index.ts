export * from './declared.ts';
