export { daviesLog } from './activity.ts';
export { phthalatePH } from './buffers.ts';
export { ACIDS, EQUIVALENT, MOLAR_MASS, STEPS, constantsAt, constantsOf, debyeHueckelA, ethanolShift, pK, pKByHeat, pKw, pkFromEnthalpy } from './constants.ts';
export type { AcidConstants } from './constants.ts';
export { constantsInto, ETHANOL_SHIFT, ETHANOL_SHIFT_LIMIT, ETHANOL_SHIFT_READ, ethanolShiftBound } from './ethanol.ts';
export { molarInto } from './molar.ts';
export { bufferAt, chargeAt, chargeInto, near, pH, pHInto, protonsReleased, type Near } from './ph.ts';
export { acidToAdd, adjustDose, doseOf, doseToAcidity, doseToTrade, type AcidDose, type SourFruit } from './adjust.ts';
export { citricFromMonohydrate, END_POINT, equivalentMass, monohydrateFromCitric, sumAsCitric, titratableAcidity, titratableAcidityInto } from './titration.ts';
