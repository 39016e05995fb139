import type { Ingredient } from '../larder/types.ts';
import table from '../../../../data/physics/infusion.json' with { type: 'json' };

/** J/(mol K), and kelvin at 0 °C. @source definition */
const R = 8.314462618, KELVIN = 273.15;
const SLOWER = table.slower as unknown as Readonly<Record<string, number>>;
const BROKEN = table.broken as unknown as Readonly<Record<string, number>>;
/** kJ/mol by which warmth speeds it up. @source jaganyi-price-1999 */
export const ACTIVATION = table.activation.kJ_mol;
/** Minutes in which tea leaf gives 63 % at 95 °C. @source tea-arizona */
export const LEAF_MIN = table.leaf.tau_min;
/** How many times as fast under a charger's gas. @source common-practice */
export const UNDER_PRESSURE = table.pressure.faster;

/** What takes half as long as is usual gives 2 to this power as much in the end. @source common-practice */
export const MORE = table.more.power;

/**
 * How fast tea leaf gives what it can give: contacts in a minute. One contact is the time in which 63 % come out.
 * @param celsius of the liquid, -30 to 120; the law goes on outside, nobody measured it there
 * @param activation kJ/mol, above 0
 * @source tea-arizona at 95 °C; jaganyi-price-1999 temperature
 */
export function contactRate(celsius: number, activation = ACTIVATION): number {
  return Math.exp(((-1000 * activation) / R) * (1 / (celsius + KELVIN) - 1 / (table.leaf.celsius + KELVIN))) / table.leaf.tau_min;
}

/** A cooling is followed for so many of its own time constants; from then on it is as its place. */
const COOLED = 6, STEPS = 24;

/**
 * Contact of tea leaf in a liquid that cools or warms to its place: the rate over a temperature that nears it exponentially, by Simpson's rule.
 * @param from °C at first
 * @param place °C of what is around it
 * @param minutes that it stands, 0 or more
 * @param cooling_min time constant of the cooling in minutes; 0 where it is as its place at once
 * @returns contacts, 0 or more
 * @source none - integral of contactRate
 */
export function contactCooling(from: number, place: number, minutes: number, cooling_min: number, activation = ACTIVATION): number {
  if (!(minutes > 0)) return 0;
  const there = contactRate(place, activation);
  if (!(cooling_min > 0) || Math.abs(from - place) < 0.01) return minutes * there;
  const until = Math.min(minutes, COOLED * cooling_min), step = until / STEPS;
  let sum = 0;
  for (let i = 0; i <= STEPS; i++) sum += (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) * contactRate(place + (from - place) * Math.exp((-i * step) / cooling_min), activation);
  return (sum * step) / 3 + (minutes - until) * there;
}

/**
 * How many times as long as tea leaf a solid takes, by its row or its category.
 * @returns 1 for tea leaf, more for what is thicker or whole; that of whole spice where the table has neither
 * @source common-practice
 */
export function slowness(ingredient: Pick<Ingredient, 'id' | 'category'>): number {
  return SLOWER[ingredient.id] ?? SLOWER[ingredient.category] ?? SLOWER['spice']!;
}

/** Contact that a verb gives at once by breaking what it works on, whatever that is; 0 for one that breaks nothing. @source common-practice */
export function brokenBy(verb: string): number { const n = BROKEN[verb]; return typeof n === 'number' ? n : 0; }

/** g of liquid that a gram of fruit or vegetable keeps in the sieve once a blender has opened it: a pulp, no pieces. @source common-practice */
export const PULP_HOLDS = table.pulp.held;
/** From so much contact at once on it is a pulp. @source none - definition */
export const PULPED = 1;

/** The share of what a solid can give that is out after so many contacts, 0 to 1. @source none - first order */
export function reached(contact: number): number { return 1 - Math.exp(-Math.max(0, contact)); }
