export * from './ethanol-water-density.ts';
export * from './strength.ts';
export * from './sucrose-density.ts';
export * from './volume.ts';
export * from './enthalpy.ts';
export * from './freezing.ts';
export * from './ice.ts';
