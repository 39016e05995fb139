export { coolingFails, DATE_MARK_DAYS, HOLDING, HOLDING_UK, lastDay, needsAssessment, STANDS_H } from './code.ts';
export { eggMinutesMissing, SHELL_EGG } from './eggs.ts';
export type { EggPart } from './eggs.ts';
export { BOTULISM, botulismMargin, canGrow, keepsDays, ORGANISMS } from './growth.ts';
export { agentBound, agentMixed, COPPER_PH, crystalMargin, flashPoint, LIGHTS_PCT, limitMargin } from './harm.ts';
