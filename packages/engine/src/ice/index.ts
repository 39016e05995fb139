export * from './solid.ts';
export * from './advance.ts';
