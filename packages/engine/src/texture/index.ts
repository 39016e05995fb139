export { acidMargins, agentOf, AGENTS, doseMargins, DOUBTFUL, EASY, foamStrength, GENERAL_FOAM, hydrationMargins, MORE, strengthMargin, TOO_STRONG } from './agents.ts';
export type { Ability, Agent, Purpose } from './agents.ts';
export { byBloom, bySheet, driedWhite, gelatinSet, GRADES, gramsToSheets, POWDER_BLOOM, sheetsToGrams } from './gelatin.ts';
export type { SheetGrade } from './gelatin.ts';
export { decadesLost, enzymeOf, inactivationMargin, NEEDED_DECADES, proteaseLeft, reductionTime, treatedLeft } from './protease.ts';
