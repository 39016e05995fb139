export { CASEIN_IN_SERUM, citricForMilk, citricForProtons, milkBuffer, milkMixPH } from './milk.ts';
export { CLEAN_PH, CRITICAL_PH, criticalEthanol, criticalPH, curdle, curdleInto, curdleKnown, CURDLING, curdleOdds, curdleSeverity, CURDS, FEATHERS, FRESH, HAZE, MARGIN, MIX_PH, ODDS, OVER_ACID_PH, SERUM_ETHANOL, STORAGE_PH, ULTRA } from './curdle.ts';
export type { Curdling } from './curdle.ts';
export { plantBand, plantBuffer, plantCriticalPH, plantMixPH, plantVerdict } from './plant.ts';
export type { PlantMilk, PlantMix } from './plant.ts';
export { fatLiquid, fatNotMelted, fatNotSet, strengthAfterFat } from './fat.ts';
export { clearingDose, curdMass, juiceShare, milkForPunch, milkWashYield, through, wholePieces } from './yields.ts';
