import { limit } from '../program/limits.ts';
import type { Cloth, Figure, Frozen, PrepGas } from './types.ts';

/** What a reading has by name: a number, NaN where it has none, and the figure. */
interface Told { readonly number: (of: string, name: string) => number; readonly figure: (of: string, name: string) => Figure }

/** What stands on a prep's gauge, and in a siphon how full it is; nothing where it is not under pressure or its pressure cannot be known. */
export function gasOf(key: string, { number, figure }: Told): { gas?: PrepGas } {
  const of = `gas:${key}`, prep = `prep:${key}`;
  if (Number.isFinite(number(of, 'gross'))) {
    if (![number(prep, 'pressure'), number(prep, 'temperature'), number(of, 'charged'), number(of, 'charged_at')].every(Number.isFinite)) return {};
    return { gas: { kind: 'N2O', pressure: figure(prep, 'pressure'), temperature: figure(prep, 'temperature'), siphon: { chargers: figure(of, 'chargers'), gas: figure(of, 'gas'), gross: figure(of, 'gross'), fill: figure(of, 'fill'), headspace: figure(of, 'headspace'), charged: figure(of, 'charged'), charged_at: figure(of, 'charged_at') } } };
  }
  return Number.isFinite(number(of, 'pressure')) ? { gas: { kind: 'CO2', pressure: figure(of, 'pressure'), temperature: figure(of, 'at'), ...(number(of, 'closed') > 0 ? { closed: true } : {}) } } : {};
}

/** Less than this is none, g. */
const TRACE = 0.005;

/** What stays in a prep's cloths; nothing where it was not strained. */
export function clothOf(key: string, { number, figure }: Told): { cloth?: Cloth } {
  const of = `cloth:${key}`;
  if (!Number.isFinite(number(of, 'mass'))) return {};
  const there = (name: string): boolean => number(of, name) >= TRACE;
  return { cloth: {
    mass: figure(of, 'mass'), solids: figure(of, 'solids'), liquid: figure(of, 'liquid'),
    ...(there('casein') ? { casein: figure(of, 'casein') } : {}), ...(there('fat') ? { fat: figure(of, 'fat') } : {}),
    ...(there('whey_passed') || there('lactose_passed') ? { passed: { whey: figure(of, 'whey_passed'), lactose: figure(of, 'lactose_passed') } } : {}),
    balance_g: { in: number(of, 'in'), kept: number(of, 'kept'), cloth: number(of, 'mass'), boiled_off: number(of, 'boiled_off'), left_in: number(of, 'left_in') },
  } };
}

/** Of its water as ice, %: from SLUSH on it no longer pours freely, from SOLID on not at all. @source common-practice */
const SLUSH = limit('freezes-slush', 'slush'), SOLID = limit('freezes-solid', 'solid');

/** How far a prep is frozen as it is taken; nothing where even at the worst none of it is. */
export function frozenOf(key: string, { number, figure }: Told): { frozen?: Frozen } {
  if (!Number.isFinite(number(`prep:${key}`, 'frozen'))) return {};
  const ice = figure(`prep:${key}`, 'frozen');
  return ice.high > 0 ? { frozen: { ice, state: ice.value > SOLID ? 'solid' : ice.value > SLUSH ? 'slush' : 'pours' } } : {};
}
