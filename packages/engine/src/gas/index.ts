export { bunsen, bunsenInEthanol, carbonDioxide, carbonDioxideMolar, carbonDioxideOver, gasVolume, henry, molarMass, ostwald } from './dissolved.ts';
export * from './losses.ts';
export type { Gas } from './dissolved.ts';
export { beerPressure, beerVolumes, bottlePressure, carbonationFactor, carbonDioxideFromSugar, carbonDioxideHeld, carbonDioxidePressure, gramsPerLitre, ONE_VOLUME, volumes, wineGrams, wineLitres } from './carbonation.ts';
export { CHARGER, CLASS_BOUND, classMargin, COOL_BEFORE_CHARGING, foamDensity, foamVolume, nitrousDissolved, nitrousFactor, OVERRUN, overrunBound, overrunByWeight, overrunOf, siphonOf, siphonPressure, TOO_HOT_TO_CHARGE } from './siphon.ts';
