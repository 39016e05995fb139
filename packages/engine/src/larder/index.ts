export { alcoholic, lawOfStrength, standardDrinks, type Alcoholic, type LawOfStrength } from './alcohol.ts';
export { composition, type Composition } from './composition.ts';
export { allergensOf, allergensUsOf, dietOf, type Diet } from './diet.ts';
export { energyOf, energyOf_kJ } from './energy.ts';
export { agentOf, form, labelStrengthOf, startOf, steeping, type Form } from './form.ts';
export { acidsUnknown, statesAcids, strongIons } from './ions.ts';
export { spreadOf } from './spread.ts';
export { toolFor } from './tool.ts';
