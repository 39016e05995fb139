export type * from './provenance/types.ts';
export type * from './document/types.ts';
export type * from './reading/types.ts';
export type * from './larder/types.ts';
export * from './matter/constituents.ts';
export * from './liquids/index.ts';
export * from './numeric/index.ts';
export * from './units/index.ts';
