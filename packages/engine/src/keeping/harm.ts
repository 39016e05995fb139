import table from '../../../../data/physics/keeping.json' with { type: 'json' };
import { sucroseSaturation } from '../liquids/index.ts';

/**
 * Most that a drink can hold of an agent if all of a plant's came out, mg/kg.
 * plant_g; agent_mg_g: agent in a gram of the plant; whole_g: mass of the whole, above 0; share: of the prep that is in it, 0 to 1.
 * @source none - definition, an upper bound
 */
export function agentBound(plant_g: number, agent_mg_g: number, whole_g: number, share = 1): number {
  return (1000 * plant_g * agent_mg_g * share) / whole_g;
}

/** mg/kg of a mixture from masses in g and mg/kg of two parts: quinine of tonic in a drink. @source none - definition */
export function agentMixed(a_g: number, a_mg_kg: number, b_g: number, b_mg_kg: number): number {
  return (a_g * a_mg_kg + b_g * b_mg_kg) / (a_g + b_g);
}

/** Distance from a limit in its unit: positive is beyond. @source none - definition */
export function limitMargin(value: number, limit: number): number {
  return value - limit;
}

/** Brix above saturation with sucrose at a temperature: positive crystallises in time. Other sugars, acid and ethanol are not counted. @source mohos table A2.3 */
export function crystalMargin(brix: number, celsius: number): number {
  return brix - sucroseSaturation(celsius);
}

/** Vapour catches fire from this temperature in °C on. pct: % vol, 10 to 96, straight between the points, held at the ends; Infinity below 10. @source memory closed cup flash points */
export function flashPoint(pct: number): number {
  const { pct: at, celsius } = table.flash;
  if (pct < at[0]!) return Infinity;
  let i = 1;
  while (i < at.length - 1 && pct > at[i]!) i++;
  const t = Math.min((pct - at[i - 1]!) / (at[i]! - at[i - 1]!), 1);
  return celsius[i - 1]! + (celsius[i]! - celsius[i - 1]!) * t;
}

/** From this strength on the vapour of a warm liquid lights, % vol. @source common-practice */
export const LIGHTS_PCT = table.lights.pct;

/** Below this pH bare copper and its alloys do not touch food. @source memory food code 4-101.14 */
export const COPPER_PH = table.copper_pH.value;
