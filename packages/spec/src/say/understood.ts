import type { Action, Amount, Fill, IceWritten, Measure, Step, Temperature, Thing } from '@washline/engine';
import { unitRow } from '../vocabulary/units.ts';
import { names } from '../vocabulary/names.ts';
import { compact } from '../vocabulary/vocabulary.ts';
import { number } from './fill.ts';

type Tongue = 'en' | 'de';
interface Said { readonly over: string; readonly through: string; readonly into: string; readonly at: string; readonly in: string; readonly held: string; readonly from: string; readonly byWeight: string; readonly byVolume: string; readonly garnish: string; readonly optional: string; readonly all: string; readonly rest: string; readonly prep: string; readonly shelf: string; readonly unknown: string; readonly one: string; readonly abs: string; readonly times: string; readonly to: string; readonly chargers: string; readonly clear: string; readonly above: string }
const WORDS: Readonly<Record<Tongue, Said>> = {
  en: { over: 'over', through: 'through', into: 'into', at: 'at', in: 'in', held: 'held', from: 'of', byWeight: 'by weight', byVolume: 'by volume', garnish: 'garnish', optional: 'optional', all: 'all of', rest: 'the rest of', prep: 'prep', shelf: 'own bottle', unknown: 'not known', one: 'amount not written', abs: 'absolute', times: 'times', to: 'to', chargers: 'chargers', clear: 'clear', above: 'as measured above' },
  de: { over: 'auf', through: 'durch', into: 'in', at: 'bei', in: 'in', held: 'gehalten', from: 'von', byWeight: 'nach Gewicht', byVolume: 'nach Volumen', garnish: 'Garnitur', optional: 'wahlweise', all: 'alles von', rest: 'der Rest von', prep: 'Vorbereitetes', shelf: 'eigene Flasche', unknown: 'nicht bekannt', one: 'Menge nicht geschrieben', abs: 'absolut', times: 'mal', to: 'auf', chargers: 'Kapseln', clear: 'klar', above: 'wie oben abgemessen' },
};
const join = (...parts: readonly (string | false | undefined)[]): string => parts.filter((part) => part !== false && part !== undefined && part !== '').join(' ');

/**
 * What one action of a line was understood as, in plain words: amount, thing and what was written of it, or what is done, with what, for how long.
 *
 * @param action an action of a line
 * @param tongue the language of the words; what the text itself calls a thing stays where nothing else names it
 * @returns the words, without a full stop
 * @source none - definition
 */
export function understood(action: Action, tongue: Tongue): string {
  const say = sayer(tongue);
  switch (action.kind) {
    case 'measure': return say.measure(action);
    case 'fill': return say.fill(action);
    case 'garnish': return `${WORDS[tongue].garnish}: ${join(say.amount(action.amount), say.thing(action.thing))}`;
    case 'step': return say.step(action);
  }
}

interface Sayer { amount(amount: Amount | null): string; thing(thing: Thing): string; measure(measure: Measure): string; ice(ice: IceWritten): string; step(step: Step): string; fill(fill: Fill): string }
const sayers = new Map<Tongue, Sayer>();
function sayer(tongue: Tongue): Sayer {
  const known = sayers.get(tongue);
  if (known !== undefined) return known;
  const w = WORDS[tongue], decimal = tongue === 'de' ? ',' : '.';
  const digits = (value: number): string => number(Math.round(value * 1e4) / 1e4, undefined, decimal);
  const span = (low: number, high: number): string => (low === high ? digits(low) : `${digits(low)}–${digits(high)}`);
  const word = (group: string, key: string): string => compact.words.find((cells) => cells[0] === group && cells[1] === key)?.[5][tongue]?.[0] ?? key;
  const unit = (key: string | null): string => { const written = compact.units.find((cells) => cells[0] === key)?.[8][tongue]?.[0] ?? key ?? ''; return key === 'piece' ? '' : key === 'oz-weight' || key === 'oz' ? 'oz' : tongue === 'de' && /^\p{L}{4,}$/u.test(written) ? written.charAt(0).toUpperCase() + written.slice(1) : written; };
  const verb = (key: string): string => { const forms = compact.verbs.find((cells) => cells[0] === key)?.[3][tongue]; return (tongue === 'de' ? forms?.['infinitive'] ?? forms?.['imperative'] : forms?.['imperative'])?.[0] ?? forms?.['phrase']?.[0] ?? key; };
  const heat = (t: Temperature | undefined): string => (t === undefined ? '' : t.word !== undefined ? t.word : `${w.at} ${digits(t.celsius)} °C`);
  const time = (low: number, high: number): string => { const [by, sign] = low >= 3600 ? [3600, 'h'] : low >= 60 && low % 60 === 0 ? [60, 'min'] : [1, 's']; return `${span(low / by, high / by)} ${sign}`; };
  /** an ounce, a spoon or a dash with how much it was taken to be */
  const amount = (a: Amount | null): string => {
    if (a === null) return '';
    const row = a.unit === null ? undefined : unitRow(a.unit, a.system ?? null), plain = a.unit === 'ml' || a.unit === 'g' || a.unit === null;
    const worth = !plain && row !== undefined && (row.of === 'ml' || row.of === 'g') ? ` = ${span(a.low * row.factor, a.high * row.factor)} ${row.of}` : '';
    return join(span(a.low, a.high), unit(a.unit)) + worth + (a.plus ?? []).map((more) => ` + ${amount(more)}`).join('');
  };
  const thing = (t: Thing): string => {
    if (t.link.kind === 'prep') return `${t.words} (${w.prep})`;
    if (t.link.kind === 'shelf') return `${t.words} (${w.shelf})`;
    if (t.link.kind === 'unknown') return `${t.words} (${w.unknown})`;
    const id = t.link.id, found = names(tongue).rows.find((row) => row.id === id && row.kind === 'preferred');
    return found?.printed ?? found?.name ?? t.words;
  };
  const measure = (m: Measure): string => {
    const share = m.share === undefined ? '' : m.share.basis === 'g per L' ? `${digits(m.share.value)} g/L` : `${digits(m.share.value * 100)} %`;
    const portion = m.portion === 'all' ? w.all : m.portion === 'rest' ? w.rest : m.portion === undefined ? '' : `${digits(m.portion)} ${w.from}`;
    const of = m.share?.of === undefined ? '' : `${w.from} ${m.share.of.map(thing).join(', ')}`;
    const more = [
      m.strength !== undefined && `${digits(m.strength.value)} % vol`, m.concentration !== undefined && `${digits(m.concentration.value)} % ${w.byWeight}`, m.ratio !== undefined && join(`${digits(m.ratio.a)}:${digits(m.ratio.b)}`, m.ratio.byWritten && (m.ratio.by === 'weight' ? w.byWeight : w.byVolume)),
      ...m.treatments.map((one) => join(word('treatment', one.key), one.seconds !== undefined && time(one.seconds, one.seconds), one.celsius !== undefined && `${w.at} ${digits(one.celsius)} °C`)),
      m.held !== undefined && `${w.held} ${time(m.held.seconds, m.held.seconds)} ${w.at} ${digits(m.held.celsius)} °C`, !m.treatments.some((one) => one.celsius !== undefined) && heat(m.temperature), m.optional && w.optional, m.amount === null && share === '' && portion === '' && w.one,
    ].filter((one) => one !== false && one !== '');
    return [join(portion, amount(m.amount), share, thing(m.thing), of, m.carrier !== undefined && `${w.in} ${measure(m.carrier)}`), ...more].join(', ');
  };
  const ice = (i: IceWritten): string => join(i.mass !== undefined ? amount(i.mass) : i.count !== undefined && digits(i.count), i.size_mm !== undefined && `${digits(i.size_mm)} mm`, i.clear === true && w.clear, word('ice', i.kind === 'large cube' ? 'large-cube' : i.kind), heat(i.temperature));
  const step = (s: Step): string => join(
    s.flags.includes('dry') && (tongue === 'de' ? 'ohne Eis' : 'without ice'), s.flags.includes('double') && (tongue === 'de' ? 'doppelt' : 'twice'), s.flags.includes('fine') && (tongue === 'de' ? 'fein' : 'finely'), verb(s.verb), s.measure !== undefined && measure(s.measure),
    s.gas !== undefined && join(s.gas.chargers !== undefined && `${digits(s.gas.chargers)} ${w.chargers}`, s.gas.kind), s.seconds !== undefined && (s.seconds.word !== undefined ? s.seconds.word : time(s.seconds.low, s.seconds.high)), s.times !== undefined && `${digits(s.times)} ${w.times}`,
    s.pressure_kPa !== undefined && join(w.at, `${digits(s.pressure_kPa.value / 100)} bar`, s.pressure_kPa.absolute && w.abs), s.speed !== undefined && `${w.at} ${digits(s.speed.value)} ${s.speed.unit}`, s.ice !== undefined && `${w.over} ${ice(s.ice)}`, s.through !== undefined && join(w.through, word('sieve', s.through.key), s.through.times > 1 && `${digits(s.through.times)} ${w.times}`),
    s.to !== undefined && ('amount' in s.to ? `${w.to} ${amount(s.to.amount)}` : `${w.to} ${digits(s.to.share * 100)} %`), s.vessel_mL !== undefined && `${w.in} ${digits(s.vessel_mL.value)} ml`, s.into !== undefined && `${w.into} ${word('glass', s.into.key)}`, heat(s.temperature),
  );
  const fill = (f: Fill): string => join(verb(f.verb), f.measure !== null && (f.again === undefined ? measure(f.measure) : `${thing(f.measure.thing)}, ${w.above}`), f.ice !== undefined && ice(f.ice), f.into !== undefined && `${w.into} ${word('glass', f.into.key)}`);
  const made: Sayer = { amount, thing, measure, ice, step: (s) => (s.again === undefined || s.measure !== undefined ? step(s) : `${step(s)}, ${w.above}`), fill };
  sayers.set(tongue, made);
  return made;
}
