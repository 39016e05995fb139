import type { Cloth, Figure, Frozen, PrepGas } from '@washline/engine';
import { say } from '../sentences.ts';
import { number, withSpread } from './numbers.ts';
import { wrap } from './text.ts';

const told = (figure: Figure): string => `${withSpread(figure)} ${figure.unit}`;
/** A volume of a vessel: whole mL, both ends. */
const whole = ({ value, low, high, unit }: Figure): string => `${number(Math.round(value))} (${number(Math.round(low))} ${say('read.to')} ${number(Math.round(high))}) ${unit}`;
const rounded = (g: number): string => number(Number(g.toFixed(g < 9.95 ? 1 : 0)));

/** What stands on the gauge of a prep, how full its siphon is, and the caution that goes with it. */
export function printGas(gas: PrepGas | undefined): string[] {
  if (gas === undefined) return [];
  const { siphon } = gas, where = { pressure: told(gas.pressure), temperature: told(gas.temperature) };
  return [
    ...(siphon === undefined ? wrap(say(gas.closed ? 'read.gas.closed' : 'read.gas.CO2', where), '  ', '    ')
      : wrap(say('read.gas.N2O', { ...where, fill: whole(siphon.fill), gross: whole(siphon.gross), headspace: whole(siphon.headspace), chargers: number(siphon.chargers.value), gas: told(siphon.gas), charged: told(siphon.charged), charged_at: told(siphon.charged_at) }), '  ', '    ')),
    ...wrap(say(`read.caution.${gas.closed ? 'closed' : gas.kind}`), '    ', '    '),
  ];
}

/** How far a prep is frozen as it is taken. */
export function printFrozen(frozen: Frozen | undefined, temperature: Figure | undefined): string[] {
  return frozen === undefined || temperature === undefined ? [] : wrap(say(`read.frozen.${frozen.state}`, { ice: told(frozen.ice), temperature: told(temperature) }), '  ', '    ');
}

/** Less than this of solids is a liquid that wets the cloth, g. */
const TRACE = 0.05;

/** What the cloths of a prep hold, what of a milk passed them, and where all went that was put in. */
export function printCloth(cloth: Cloth | undefined): string[] {
  if (cloth === undefined) return [];
  const { casein, fat, passed, balance_g: b } = cloth, of = [...(casein === undefined ? [] : [say('read.cloth.casein', { g: told(casein) })]), ...(fat === undefined ? [] : [say('read.cloth.fat', { g: told(fat) })])];
  return [
    ...wrap(say(cloth.solids.value < TRACE ? 'read.cloth.liquid' : of.length === 0 ? 'read.cloth' : 'read.cloth.of', { mass: told(cloth.mass), solids: told(cloth.solids), of: of.join(', '), liquid: told(cloth.liquid) }), '  ', '    '),
    ...(passed === undefined ? [] : wrap(say('read.cloth.passed', { whey: told(passed.whey), lactose: told(passed.lactose) }), '    ', '    ')),
    ...wrap(say('read.cloth.balance', { in: rounded(b.in), kept: rounded(b.kept), cloth: rounded(b.cloth), boiled: b.boiled_off > 0.05 ? say('read.cloth.boiled', { g: rounded(b.boiled_off) }) : '', left: b.left_in > 0.05 ? say('read.cloth.left', { g: rounded(b.left_in) }) : '' }), '    ', '    '),
  ];
}
