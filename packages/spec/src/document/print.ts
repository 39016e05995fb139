import type { Action, Amount, Document, IceWritten, Measure, Step, Temperature, Thing } from '@washline/engine';
import { compact } from '../vocabulary/vocabulary.ts';

/** The text of a document: print ∘ parse is the identity, for the document keeps what was written. */
export const print = (document: Document): string => document.text;

const SIGN: Readonly<Record<string, string>> = { piece: '', 'oz-weight': 'oz', 'floz-uk': 'UK fl oz', 'pint-uk': 'imperial pint', barspoon: 'barspoon' };
const unitWord = (unit: string | null): string => (unit === null ? '' : SIGN[unit] ?? compact.units.find((row) => row[0] === unit)?.[8]['en']?.[0] ?? unit);
const number = (value: number): string => String(Math.round(value * 1e6) / 1e6);
const range = (low: number, high: number): string => (low === high ? number(low) : `${number(low)}-${number(high)}`);
const join = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(' ');
const amountText = (amount: Amount | null): string => (amount === null ? '' : join(range(amount.low, amount.high), unitWord(amount.unit), amount.twin === undefined ? '' : `(${join(range(amount.twin.low, amount.twin.high), unitWord(amount.twin.unit))})`, ...(amount.plus ?? []).map((more) => `+ ${join(range(more.low, more.high), unitWord(more.unit))}`)));
const heat = (temperature: Temperature | undefined): string => (temperature === undefined || temperature.word !== undefined ? '' : `at ${number(temperature.celsius)} °C`);
const time = (seconds: { readonly low: number; readonly high: number; readonly word?: string } | undefined): string => {
  if (seconds === undefined) return '';
  if (seconds.word !== undefined) return seconds.word;
  const [factor, sign] = seconds.low >= 3600 && seconds.low % 3600 === 0 && seconds.high % 3600 === 0 ? [3600, 'h'] : seconds.low >= 60 && seconds.low % 60 === 0 && seconds.high % 60 === 0 ? [60, 'min'] : [1, 's'];
  return `${range(seconds.low / (factor), seconds.high / (factor))} ${sign}`;
};
const name = (thing: Thing): string => thing.words;
const iceText = (ice: IceWritten): string => join(ice.mass === undefined ? ice.count === undefined ? '' : number(ice.count) : amountText(ice.mass), ice.size_mm === undefined ? '' : `${number(ice.size_mm)} mm`, ice.clear === true ? 'clear' : '', ice.kind === 'large cube' ? (ice.clear === true ? 'cube' : 'large cube') : ice.kind === 'cubes' || ice.kind === 'sphere' ? ice.kind : `${ice.kind} ice`, heat(ice.temperature));

function measureText(measure: Measure): string {
  const share = measure.share;
  const of = share?.of === undefined ? '' : `of ${share.of.map(name).join(' and ')}`;
  const shared = share === undefined ? '' : share.basis === 'g per L' ? `${number(share.value)} g/L` : share.basis === 'volume' ? `${number(share.value * 1000)} ml per l` : `${number(share.value * 100)} %`;
  const portion = measure.portion === 'all' ? 'all of the' : measure.portion === 'rest' ? 'the rest of the' : measure.portion === undefined ? '' : `${number(measure.portion)} of the`;
  const held = measure.held === undefined ? '' : `, held ${time({ low: measure.held.seconds, high: measure.held.seconds })} at ${number(measure.held.celsius)} °C`;
  const treated = measure.treatments.map((treatment) => `, ${join(treatment.key, treatment.seconds === undefined ? '' : time({ low: treatment.seconds, high: treatment.seconds }), treatment.celsius === undefined ? '' : `at ${number(treatment.celsius)} °C`)}`).join('');
  const warm = measure.treatments.some((treatment) => treatment.celsius !== undefined) ? '' : heat(measure.temperature);
  return `${join(measure.optional ? 'optional:' : '', portion, amountText(measure.amount), shared, name(measure.thing), measure.ratio === undefined ? '' : `${number(measure.ratio.a)}:${number(measure.ratio.b)}${measure.ratio.byWritten ? ` by ${measure.ratio.by}` : ''}`, measure.strength === undefined ? '' : `${number(measure.strength.value)} % vol`, measure.concentration === undefined ? '' : `${number(measure.concentration.value)} % by weight`, of, measure.carrier === undefined ? '' : `in ${measureText(measure.carrier)}`, warm)}${held}${treated}`;
}

const VERBS: Readonly<Record<string, string>> = { top: 'top with', fill: 'fill with', lengthen: 'lengthen with', crown: 'crown with', float: 'float', sink: 'sink', 'break-the-gel': 'break the gel', 'return-over-the-curd': 'return', 'top-up-pressure': 'top up the pressure', 'sous-vide': 'sous vide', 'whip-shake': 'whip shake', 'flash-blend': 'flash blend', 'dirty-dump': 'dirty dump' };
const row = (group: string, key: string): string => compact.words.find((cells) => cells[0] === group && cells[1] === key)?.[5]['en']?.[0] ?? key;
function stepText(step: Step): string {
  const verb = VERBS[step.verb] ?? step.verb;
  const lead = step.flags.filter((flag) => flag === 'dry' || flag === 'fine' || flag === 'double').join(' ');
  return join(lead, verb, step.flags.includes('first') ? 'the first' : '', step.measure === undefined ? '' : measureText(step.measure), step.gas === undefined ? '' : join(step.gas.chargers === undefined ? '' : number(step.gas.chargers), step.gas.kind), time(step.seconds), step.times === undefined ? '' : `${number(step.times)} times`, step.pressure_kPa === undefined ? '' : `at ${number(step.pressure_kPa.value)} kPa${step.pressure_kPa.absolute ? ' abs' : ''}`, step.speed === undefined ? '' : `at ${number(step.speed.value)} ${step.speed.unit}`, step.ice === undefined ? '' : `over ${iceText(step.ice)}`, step.through === undefined ? '' : join('through', row('sieve', step.through.key), step.through.times > 1 ? `${number(step.through.times)} times` : ''), step.to === undefined ? '' : 'amount' in step.to ? `to ${amountText(step.to.amount)}` : `by ${number((1 - step.to.share) * 100)} %`, step.vessel_mL !== undefined ? `in a ${number(step.vessel_mL.value)} ml ${step.into === undefined ? 'siphon' : row('glass', step.into.key)}` : step.into === undefined ? '' : `into ${row('glass', step.into.key)}`, heat(step.temperature));
}

/** One action written out from its fields, for a document that another program made. */
export function printAction(action: Action): string {
  switch (action.kind) {
    case 'measure': return measureText(action);
    case 'fill': return join(VERBS[action.verb] ?? action.verb, action.into === undefined ? '' : `${row('glass', action.into.key)} with`, action.measure === null ? '' : measureText(action.measure), action.ice === undefined ? '' : iceText(action.ice));
    case 'garnish': return join('garnish with', amountText(action.amount), name(action.thing));
    case 'step': return stepText(action);
  }
}
