import type { Cloth, Figure, PrepGas, PrepReading } from '@washline/engine';
import { TOLD_FROM } from '../glass/slush.ts';
import { decimalsFor, degreesShown, figureShown, shown, spreadShown, unitShown } from '../pen/numbers.ts';
import { inUnits } from '../pen/units.ts';
import { words } from '../words.ts';

/** What is told of a prep beside its yield and strength: what presses in it with the caution that goes with it, how far it is frozen, and what stays in its cloth. */
export interface Facts { readonly pressure: string | null; readonly charged: string | null; readonly caution: string | null; readonly frozen: string | null; readonly stays: string | null; readonly held: readonly string[] }

/** A cloth that keeps less than this share of what was put in is not worth a word, but for milk. */
const WORTH = 0.02;

export function factsOf(prep: Pick<PrepReading, 'gas' | 'cloth' | 'frozen' | 'figures'>): Facts {
  const { gas, cloth } = prep, tells = cloth !== undefined && tellsOf(cloth);
  return {
    pressure: gas === undefined ? null : words('pressure', { bar: figureShown(gas.pressure, 1), celsius: degrees(gas.temperature), spread: spreadShown(gas.pressure, 1) }),
    charged: gas?.siphon === undefined ? null : chargedOf(gas.siphon),
    caution: gas === undefined ? null : words(`caution.${gas.closed ? 'closed' : gas.kind}`, {}),
    frozen: prep.frozen === undefined || !showsIce(prep.frozen) ? null : words(`frozen.${prep.frozen.state}`, { ice: figureShown(prep.frozen.ice, 0), celsius: prep.figures['temperature'] === undefined ? '' : degrees(prep.figures['temperature']) }),
    stays: tells ? words('cloth.mass', { g: figureShown(cloth.mass), spread: spreadShown(cloth.mass, decimalsFor(cloth.mass.low, cloth.mass.high)) }) : null,
    held: tells ? heldOf(cloth) : [],
  };
}

/** Is there enough in the cloth to be drawn? */
export const tellsOf = (cloth: Cloth): boolean => cloth.passed !== undefined || cloth.mass.value > WORTH * cloth.balance_g.in;

/** Is there ice of its own in it that one would see? */
export const showsIce = (frozen: NonNullable<PrepReading['frozen']>): boolean => frozen.ice.value >= TOLD_FROM;

function chargedOf(siphon: NonNullable<PrepGas['siphon']>): string {
  const { value } = siphon.chargers, gap = { n: shown(value, value % 1 === 0 ? 0 : 1), bar: figureShown(siphon.charged, 1), celsius: degrees(siphon.charged_at) };
  return words(value === 1 ? 'charged.one' : 'charged', gap);
}

function heldOf(cloth: Cloth): string[] {
  const { casein, fat, passed } = cloth, liquid = few(cloth.liquid);
  const kind = casein !== undefined && fat !== undefined ? words('cloth.curd', { casein: few(casein), fat: few(fat), liquid })
    : fat !== undefined && fat.value > 0.8 * cloth.solids.value ? words('cloth.fat', { fat: few(fat), liquid }) : words('cloth.solids', { solids: few(cloth.solids), liquid });
  return passed === undefined ? [kind] : [kind, words('cloth.passed', { whey: few(passed.whey), lactose: few(passed.lactose) }), words('cloth.milk', {})];
}

/** Degrees as one says them: to the whole one. */
function degrees(figure: Figure): string { return degreesShown(figure.value, 0); }
/** Two digits of a small amount. */
function few(of: Figure): string { const figure = inUnits(of); return `${shown(figure.value, figure.value < 9.95 ? 1 : 0)} ${unitShown(figure.unit)}`; }
