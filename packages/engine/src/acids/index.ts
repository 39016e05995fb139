export { ACIDS, EQUIVALENT, MOLAR_MASS, STEPS, constantsAt, constantsOf, debyeHueckelA, ethanolShift, ethanolShiftBound, pK, pKByHeat, pKw, pkFromEnthalpy } from './constants.ts';
export type { AcidConstants } from './constants.ts';
export { bufferAt, chargeAt, daviesLog, pH, pHInto, protonsReleased } from './ph.ts';
export { acidToAdd, adjustDose, citricFromMonohydrate, END_POINT, equivalentMass, monohydrateFromCitric, sumAsCitric, titratableAcidity, titratableAcidityInto } from './titration.ts';
export { phthalatePH } from './buffers.ts';
