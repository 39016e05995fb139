import type { Measure, Step, Temperature } from '@washline/engine';
import { approxAt, isCounted, makeAmount, rangeAt, unitAt, type NumberAt } from '../phrase/amount.ts';
import { pressureAt, temperatureAt, timeAt } from '../phrase/facts.ts';
import { iceAt, type IceAt } from '../phrase/ice.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt } from '../phrase/thing.ts';
import { words } from '../vocabulary/vocabulary.ts';
import { chilledGlass, plural } from './cold.ts';
import { EMPTY, shown, type Label } from './label.ts';
import { readMeasure } from './measure.ts';
import { measuredBy } from './measured.ts';
import { engineVerb, type VerbAt } from './verb.ts';

const sieves = words('sieve');
export const glasses = words('glass');
const TURNS = /^(strokes?|turns?|times?|passes|pass|shakes?|revolutions?|rotations?|x|stirs|pulses?|mal|layers?|papers|pumps?)$/;
const GAS = /^(n2o|co2|nitrous|lachgas)$/;
const VESSEL = /^(siphon|whipper|syphon|bottles?|jars?|flask|keg|espumasiphon|shaker|blender|mixer|tin|cream|soda|sahnesiphon|whipping|flasche|einmachglas|schraubglas)$/;
/** Of a glass that is cold before anything is in it. */
const COLD = /^(chilled|cold|frozen|frosted|iced|(vor)?gekuhlte[sn]?)$/, FROSTED = /^(frozen|frosted)$/;
/** A few seconds over ice, where no number says how many. */
const ICED = new Set(['stir', 'shake', 'swizzle']), BRIEFLY = /^(briefly|brief|short|quick|kurz|kurze[sn]?)$/;
/** "add to a highball": a glass behind "to" is where, for these; "reduce to a glass" says how much. */
const TAKEN_TO = new Set(['add', 'pour', 'strain', 'serve', 'place']);
const CLOSED = /^(sealed|closed|capped|corked|(ver|ge)schlossene?[nmrs]?)$/;
/** Steps whose amount of matter, where one is written, is what they work on. */
const TAKES = new Set(['float', 'layer', 'dilute', 'rinse', 'spray', 'muddle', 'season', 'return-over-the-curd', 'dissolve', 'disperse', 'whisk', 'fold', 'pour', 'add', 'squeeze', 'press', 'sink', 'wash', 'infuse', 'blend', 'stir', 'serve', 'lengthen', 'soak', 'strain', 'boil', 'heat', 'rest', 'shake', 'melt', 'build', 'discard', 'cover']);

interface Facts {
  seconds?: { low: number; high: number; span: { from: number; to: number }; word?: string };
  temperature?: Temperature;
  times?: number;
  ice?: IceAt;
  through?: Step['through'];
  into?: Step['into'];
  vessel?: Step['vessel_mL'];
  gas?: Step['gas'];
  pressure?: Step['pressure_kPa'];
  speed?: Step['speed'];
  to?: Step['to'];
  measure?: Measure;
  measureLabel?: Label;
  writtenCelsius?: number;
  flags: Set<Step['flags'][number]>;
}

/** Reads a step from its verb on; every number of it goes into a field or stays unused. */
export function readStep(p: Phrase, i: number, verb: VerbAt, end: number): { readonly step: Step; readonly label: Label } {
  const { verb: name, flags } = engineVerb(verb.row.verb);
  const facts: Facts = { flags: new Set(flags) };
  let before: string = '';
  if (/hard|kräftig/.test(p.slice(verb.from, verb.end).toLowerCase())) facts.flags.add('hard');
  if (verb.row.verb === 'freeze' && /overnight/.test(p.slice(verb.from, verb.end).toLowerCase())) facts.seconds = { low: 28800, high: 50400, span: p.span(verb.from, verb.end), word: 'overnight' };
  if (verb.row.verb === 'reduce' && /half|hälfte/i.test(p.slice(verb.from, verb.end))) facts.to = { share: 0.5, span: p.span(verb.from, verb.end) };
  if (/return ?the ?first/i.test(p.slice(verb.from, verb.end))) { facts.flags.add('first'); before = 'first'; }
  // "pour over ice", "pour into a highball": where to, though the word is the verb's own
  let where = verb.end - 1 > verb.from && /^(over|on|in|into)$/.test(p.word(verb.end - 1)) ? verb.end - 1 : verb.end;
  for (let k = verb.from; k < where; k++) if (/^(over|on|auf)$/.test(p.word(k)) && iceAt(p, k + 1, end) !== undefined) where = k;
  const scan = [[i, verb.from], [where, end]] as const;
  for (const [from, to] of scan) { before = from === i ? '' : before; readFacts(p, from, to, name, facts, before, verb); }
  const cold = name === 'chill' || name === 'freeze' ? chilledGlass(p, i, verb, end) : undefined;
  if (cold !== undefined) {
    facts.flags.add(name === 'freeze' || facts.temperature?.word === 'freezer' ? 'frozen' : 'chilled');
    if (cold.key !== undefined) facts.into = { key: cold.key, span: p.span(cold.from, cold.end) };
    for (let k = i; k < cold.end; k++) if (p.isNumber(k)) p.use(k, k + 1);
  }
  if (facts.through !== undefined && facts.times !== undefined && name === 'strain') { facts.through = { ...facts.through, times: facts.through.times * facts.times }; delete facts.times; }
  const step: Step = {
    kind: 'step', path: p.path, span: p.span(i, end), verb: facts.through !== undefined && name === 'add' ? 'strain' : name, flags: [...facts.flags],
    ...(facts.seconds !== undefined ? { seconds: facts.seconds } : {}), ...(facts.temperature !== undefined ? { temperature: facts.temperature } : {}),
    ...(facts.times !== undefined ? { times: facts.times } : {}), ...(facts.ice !== undefined ? { ice: facts.ice.ice } : {}),
    ...(facts.through !== undefined ? { through: facts.through } : {}), ...(facts.into !== undefined ? { into: facts.into } : {}),
    ...(facts.vessel !== undefined ? { vessel_mL: facts.vessel } : {}), ...(facts.gas !== undefined ? { gas: facts.gas } : {}),
    ...(facts.pressure !== undefined ? { pressure_kPa: facts.pressure } : {}), ...(facts.speed !== undefined ? { speed: facts.speed } : {}),
    ...(facts.to !== undefined ? { to: facts.to } : {}), ...(facts.measure !== undefined ? { measure: facts.measure } : {}),
  };
  const ice = facts.ice;
  const mass = ice?.ice.mass;
  const worked = mass !== undefined ? { low: mass.low, high: mass.high, unit: mass.unit, ingredient: ice?.words ?? null }
    : ice?.ice.count !== undefined && ice.digits ? { low: ice.ice.count, high: ice.ice.count, unit: 'cube', ingredient: ice.words }
    : facts.measureLabel !== undefined && facts.measureLabel.low !== null ? { low: facts.measureLabel.low, high: facts.measureLabel.high, unit: facts.measureLabel.unit, ingredient: facts.measureLabel.ingredient } : {};
  const time = facts.seconds;
  const label: Label = {
    ...EMPTY, kind: 'step', ...worked, verb: facts.through !== undefined && verb.row.verb === 'add' ? 'strain' : verb.row.reading,
    seconds: time === undefined || time.word !== undefined ? null : shown(time.low), celsius: shown(facts.writtenCelsius),
  };
  return { step, label };
}

function readFacts(p: Phrase, from: number, end: number, verb: string, facts: Facts, lead: string, at: VerbAt): void {
  let before = lead;
  for (let k = from; k < end;) {
    const token = p.t[k];
    if (token === undefined) break;
    const heat = temperatureAt(p, k, end, true);
    if (heat !== undefined) {
      const celsius = Math.round(heat.celsius * 1e6) / 1e6;
      facts.writtenCelsius ??= celsius;
      if (facts.temperature === undefined) facts.temperature = { celsius, span: p.span(k, heat.end) };
      p.use(k, heat.end); k = heat.end; before = ''; continue;
    }
    const time = token.kind === 'number' || token.kind === 'word' ? timeAt(p, k, end) : undefined;
    if (time !== undefined && !(time.word === undefined && before === 'into')) {
      if (facts.seconds === undefined || facts.seconds.word !== undefined) facts.seconds = { low: time.low, high: time.high, span: p.span(k, time.end), ...(time.word !== undefined ? { word: time.word } : {}) };
      else if (time.word === undefined) { k = time.end; continue; }
      p.use(k, time.end); k = time.end; before = ''; continue;
    }
    if (token.kind === 'number') {
      const pressure = pressureAt(p, k, end);
      if (pressure !== undefined) { facts.pressure = { value: pressure.value, absolute: pressure.absolute, span: p.span(k, pressure.end) }; p.use(k, pressure.end); k = pressure.end; before = ''; continue; }
    }
    const around = approxAt(p, k, end);
    const numberFrom = around !== undefined && around.key !== 'level' && around.key !== 'fat' ? around.end : k;
    const number = token.kind === 'number' || token.kind === 'word' || numberFrom > k ? rangeAt(p, numberFrom, end) : undefined;
    if (number !== undefined && number.low !== null && number.high !== null) {
      const done = readNumber(p, k, number, end, verb, facts, before, at, around);
      if (done > k) { k = done; before = ''; continue; }
    }
    if (token.kind === 'word') {
      const word = token.fold;
      if (word === 'abs') { k++; continue; }
      if ((/^(over|on|with|onto|auf|mit|uber)$/.test(word) || word === 'of' && /^(full|plenty)$/.test(p.word(k - 1))) && facts.ice === undefined && !(verb === 'serve' && /^(side|separately|extra)$/.test(p.word(p.isMark(end - 1, '.') ? end - 2 : end - 1)))) {
        const ice = iceAt(p, k + 1, end);
        if (ice !== undefined) {
          facts.ice = ice;
          if (ice.ice.temperature !== undefined) { facts.writtenCelsius ??= ice.ice.temperature.celsius; }
          k = ice.end; before = ''; continue;
        }
      }
      const place = facts.temperature === undefined ? placeAt(p, k) : undefined;
      if (place !== undefined) { facts.temperature = { celsius: place.celsius, word: place.word, span: p.span(k, place.end) }; k = place.end; before = ''; continue; }
      const hours = facts.seconds === undefined ? fewHours(p, k) : undefined;
      if (hours !== undefined) { facts.seconds = { low: hours.low, high: hours.high, span: p.span(k, hours.end), word: hours.word }; k = hours.end; before = ''; continue; }
      if (word === 'without' || word === 'no' || word === 'ohne') {
        if (/^(ice|eis)$/.test(p.word(k + 1))) { facts.flags.add('dry'); k += 2; continue; }
      }
      if (/^(through|thru|via|durch|in)$/.test(word) || (word === 'with' && verb === 'strain')) {
        let j = k + 1;
        while (/^(the|an?|clean|double|some|several|one|your|eine?n?|feines?|das|ein)$/.test(p.word(j)) && p.longest(j, end, 4, sieves) === undefined) j++;
        const layers = rangeAt(p, k + 1, end);
        const sieveFrom = layers !== undefined && layers.low !== null && p.longest(j, end, 4, sieves) === undefined ? skipLayers(p, layers.end) : j;
        const sieve = p.longest(sieveFrom, end, 4, sieves);
        if (sieve !== undefined && (word !== 'in')) {
          let times = sieveFrom !== j && layers !== undefined && layers.low !== null ? layers.low : 1, to = sieve.end;
          if (sieveFrom !== j && layers !== undefined) p.use(layers.first, layers.last);
          if (p.word(to) === 'twice') { times = 2; to++; }
          else if (p.word(to) === 'once') to++;
          else if (p.isNumber(to) && /^(times|x|mal)$/.test(p.word(to + 1))) { times = p.t[to]?.value ?? 1; p.use(to, to + 2); to += 2; }
          facts.through = { key: sieve.value.key, times, span: p.span(k, to) };
          k = to; before = ''; continue;
        }
      }
      if (/^(into|in|to|ins|im)$/.test(word)) {
        const filled = facts.ice === undefined ? filledWith(p, k + 1, end) : undefined;
        if (filled !== undefined) facts.ice = filled;
        const into = glassAt(p, k + 1, end);
        if (into !== undefined && (word !== 'to' || TAKEN_TO.has(verb))) { if (into.key !== undefined) facts.into ??= { key: into.key, span: p.span(k, into.end) }; if (into.chilled) facts.flags.add(into.frozen ? 'frozen' : 'chilled'); if (into.closed) facts.flags.add('closed'); for (let n = k; n < into.end; n++) if (p.isNumber(n)) p.use(n, n + 1); k = Math.max(k + 1, into.vessel); before = word === 'im' ? '' : 'into'; continue; }
      }
      if ((word === 'dry' || word === 'trocken') && verb === 'shake') facts.flags.add('dry');
      else if (/^(covered|zugedeckt|abgedeckt)$/.test(word)) facts.flags.add('covered');
      else if (CLOSED.test(word)) facts.flags.add('closed');
      else if (word === 'hard' || word === 'hart' || word === 'kraftig') facts.flags.add('hard');
      else if (word === 'first' || /^erste[nrsm]?$/.test(word)) facts.flags.add('first');
      else if ((word === 'fine' || word === 'fein') && verb === 'strain' && facts.through === undefined) facts.flags.add('fine');
      else if ((word === 'double' || word === 'doppelt') && verb === 'strain' && facts.through === undefined) facts.flags.add('double');
      else if (word === 'twice' || word === 'zweimal') facts.times ??= 2;
      else if (word === 'dreimal') facts.times ??= 3;
      else if (verb === 'stir' && (word === 'once' && p.word(k + 1) !== 'more' || word === 'einmal' && p.word(k - 1) !== 'noch')) facts.times ??= 1;
      else if (ICED.has(verb) && BRIEFLY.test(word) && !/^(glass|glas|tumbler|drink|one|tin)$/.test(p.word(k + 1))) facts.seconds ??= { low: 2, high: 10, span: p.span(k, k + 1), word: 'briefly' };
      else if (GAS.test(word) && facts.gas === undefined) facts.gas = { kind: word === 'co2' ? 'CO2' : 'N2O', span: p.span(k, k + 1) };
      else if (word === 'overnight' && facts.seconds === undefined) facts.seconds = { low: 28800, high: 50400, span: p.span(k, k + 1), word: 'overnight' };
      else if (/^(half|third|quarter|halfte)$/.test(word) && /^(by|a|to)$/.test(before) && facts.to === undefined) facts.to = { share: word === 'half' || word === 'halfte' ? 0.5 : word === 'third' ? 2 / 3 : 0.75, span: p.span(k, k + 1) };
      else if (MEASURED.has(verb) && facts.measure === undefined && /^(with|the|all|mit)$/.test(word)) {
        const start = word === 'all' ? k : k + 1;
        const read = /^(all|the)$/.test(word) || p.word(start) !== '' ? namedMeasure(p, word === 'with' || word === 'mit' ? start : k, end) : undefined;
        if (read !== undefined) { facts.measure = read.measure; k = read.end; before = ''; continue; }
      }
      if (verb === 'reduce' && /^(um|auf)$/.test(word)) { before = word === 'um' ? 'by' : 'to'; k++; continue; }
      if (/^(die|das)$/.test(word)) { k++; continue; }
      before = /^(to|by|into|first|over|with|at|auf|the|a)$/.test(word) ? (word === 'the' || word === 'a' ? before : word) : '';
    }
    k++;
  }
}
const MEASURED = new Set(['float', 'layer', 'dilute', 'lengthen', 'crown', 'sink', 'rinse', 'wash']);
/** "an ice-filled rocks glass", "a glass packed with crushed ice" from its first word on: the ice before "filled". */
function filledWith(p: Phrase, i: number, end: number): IceAt | undefined {
  const k = /^(an?|the|your|ein|eine?m?|das)$/.test(p.word(i)) ? i + 1 : i, ice = iceAt(p, k, end);
  if (ice === undefined) return undefined;
  return /^(filled|packed|gefullte[sn]?)$/.test(p.word(p.isHyphen(ice.end) ? ice.end + 1 : ice.end)) ? ice : undefined;
}
function skipLayers(p: Phrase, i: number): number {
  let k = i;
  while (/^(layers?|of|folds?|sheets?|lagen|x|thicknesses)$/.test(p.word(k))) k++;
  return k;
}

/** "in the fridge", "at room temperature": a place says how warm it is there, with that place's range. */
function placeAt(p: Phrase, k: number): { readonly celsius: number; readonly word: string; readonly end: number } | undefined {
  const word = p.word(k);
  if (/^(in|im)$/.test(word)) {
    const at = /^(the|a|your)$/.test(p.word(k + 1)) ? k + 2 : k + 1, place = p.word(at);
    if (/^(fridge|refrigerator|kuhlschrank)$/.test(place)) return { celsius: 5, word: 'fridge', end: at + 1 };
    if (/^(freezer|tiefkuhler|gefrierschrank|gefrierfach|tiefkuhlfach)$/.test(place)) return { celsius: -18, word: 'freezer', end: at + 1 };
  }
  if (/^(at|bei)$/.test(word)) {
    if (p.word(k + 1) === 'room' && /^(temperature|temp)$/.test(p.word(k + 2))) return { celsius: 20, word: 'room', end: k + 3 };
    if (/^(raumtemperatur|zimmertemperatur)$/.test(p.word(k + 1))) return { celsius: 20, word: 'room', end: k + 2 };
  }
  return undefined;
}

/** "a few hours", "several hours", "some hours". */
function fewHours(p: Phrase, k: number): { readonly low: number; readonly high: number; readonly word: string; readonly end: number } | undefined {
  const at = p.word(k) === 'a' || p.word(k) === 'for' ? k + 1 : k, first = p.word(at) === 'a' ? at + 1 : at;
  if (!/^(few|several|some|einige|mehrere|paar)$/.test(p.word(first)) || !/^(hours?|hrs|stunden)$/.test(p.word(first + 1))) return undefined;
  return { low: 7200, high: 18000, word: 'a few hours', end: first + 2 };
}

/** A measure without an amount behind "with" or "the": known things only. */
function namedMeasure(p: Phrase, i: number, end: number): { readonly measure: Measure; readonly end: number } | undefined {
  const what = thingAt(p, i, end, 'volume');
  if (what === undefined || what.thing.link.kind === 'unknown') return undefined;
  const all = p.word(i) === 'all';
  return { measure: { kind: 'measure', path: p.path, span: p.span(i, what.end), amount: null, thing: what.thing, treatments: [], optional: false, ...(all ? { portion: 'all' as const } : {}) }, end: what.end };
}

const VESSEL_NOUN = /^(shaker|tin|tins|glass|jar|bottle|bowl|pan|pot|flask|siphon|whipper|keg|jug|pitcher|beaker|becher|glas|schale|topf|flasche)$/;
const IN_ML: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000, oz: 29.5735295625, 'floz-uk': 28.4130625, pint: 473.176473, quart: 946.352946 };
/** A number of a step: vessel, target, gas, turns, ice or matter. Returns where reading goes on, or k when it is none of them. */
function readNumber(p: Phrase, k: number, number: NumberAt, end: number, verb: string, facts: Facts, before: string, at: VerbAt, around: ReturnType<typeof approxAt>): number {
  const low = number.low ?? 0, high = number.high ?? low;
  // "serve with a glass of water": beside the drink
  if (verb === 'serve' && before === 'with') return k;
  // "in a shaker of 300 g steel": what describes the vessel is no matter of the step
  if (/^(of|weighing|holding|aus|von)$/.test(p.word(k - 1)) && VESSEL_NOUN.test(p.word(k - 2))) {
    const size = unitAt(p, p.isHyphen(number.end) ? number.end + 1 : number.end, end);
    if (size === undefined || size.form.of !== 'ml' && size.form.of !== 'g') return k;
    const litres = IN_ML[size.form.unit];
    if (size.form.of === 'ml' && litres !== undefined && VESSEL.test(p.word(k - 2))) { facts.vessel = { value: low * litres, span: p.span(k, size.end) }; p.use(k, size.end); }
    return size.end;
  }
  const next = p.word(p.isHyphen(number.end) ? number.end + 1 : number.end);
  if (TURNS.test(next) && (number.digits || !number.article)) { facts.times ??= (low + high) / 2; const to = number.end + 1; p.use(k, to); return to; }
  if (next === 'g' && (verb === 'centrifuge')) { facts.speed = { value: (low + high) / 2, unit: 'g', span: p.span(k, number.end + 1) }; p.use(k, number.end + 1); return number.end + 1; }
  if (next === 'rpm' || next === 'upm') { facts.speed = { value: (low + high) / 2, unit: 'rpm', span: p.span(k, number.end + 1) }; p.use(k, number.end + 1); return number.end + 1; }
  if (next === 'x' && p.word(number.end + 1) === 'g') { facts.speed = { value: (low + high) / 2, unit: 'g', span: p.span(k, number.end + 2) }; p.use(k, number.end + 2); return number.end + 2; }
  // gas: "2 N2O", "2 chargers of N2O", "two cartridges"
  if (verb === 'charge' || verb === 'carbonate' || verb === 'top-up-pressure') {
    let j = number.end, kind: 'N2O' | 'CO2' | undefined, chargers = false;
    for (let n = 0; n < 4 && j < end; n++, j++) {
      const word = p.word(j);
      if (GAS.test(word)) kind = word === 'co2' ? 'CO2' : 'N2O';
      else if (/^(chargers?|cartridges?|capsules?|kapseln?|patronen?|bulbs?)$/.test(word)) chargers = true;
      else if (!/^(of|cream|8|g)$/.test(word)) break;
    }
    if ((kind !== undefined || chargers) && isCounted(number)) {
      facts.gas = { kind: kind ?? (verb === 'carbonate' ? 'CO2' : facts.gas?.kind ?? 'N2O'), chargers: low, span: p.span(k, j) };
      p.use(k, j);
      return j;
    }
  }
  let unitFrom = number.end;
  if (p.isHyphen(unitFrom)) unitFrom++;
  const unit = unitAt(p, unitFrom, end);
  // "into a glass full of ice": the glass it goes into, not one of something
  if (unit?.form.unit === 'glass' && number.article === true && before === 'into') return k;
  if (unit !== undefined && (unit.form.of === 'ml' || unit.form.of === 'g')) {
    let j = p.isHyphen(unit.end) ? unit.end + 1 : unit.end;
    while (/^(whipping|cream|soda|glass|plastic|large|small)$/.test(p.word(j))) j++;
    if (VESSEL.test(p.word(j)) && unit.form.of === 'ml') {
      facts.vessel = { value: low * (IN_ML[unit.form.unit] ?? 1), span: p.span(k, unit.end) };
      p.use(k, unit.end);
      return j + 1;
    }
    const ice = facts.ice === undefined ? iceAt(p, k, end) : undefined;
    if (ice !== undefined) { facts.ice = ice; if (ice.ice.temperature !== undefined) facts.writtenCelsius ??= ice.ice.temperature.celsius; return ice.end; }
    const amount = isCounted(number) ? makeAmount(p, number, unit, unitFrom, around) : null;
    if (amount !== null && (before === 'to' && (verb !== 'add' && verb !== 'cool') || (verb === 'reduce' && facts.to === undefined && p.word(unit.end) !== 'of' && before !== 'first'))) {
      facts.to = { amount };
      p.use(k, unit.end);
      return unit.end;
    }
    if (TAKES.has(verb) && facts.measure === undefined) {
      if (facts.flags.has('first') || verb === 'return-over-the-curd') {
        const inside = p.place.inside;
        const named = p.word(unit.end) === 'of' ? thingAt(p, unit.end + 1, end, measuredBy(unit.form.unit)) : undefined;
        const words = p.slice(at.from, unit.end);
        facts.measure = { kind: 'measure', path: p.path, span: p.span(k, unit.end), amount, thing: named?.thing ?? { words, span: p.span(k, unit.end), link: inside === null ? { kind: 'unknown', nearest: [] } : { kind: 'prep', prep: inside } }, treatments: [], optional: false };
        p.use(k, unit.end);
        return named?.end ?? unit.end;
      }
      const made = measureWithin(p, k, unit.end, end, /^(dissolve|disperse|whisk|melt|infuse|soak)$/.test(verb));
      if (made !== undefined) { facts.measure = made.measure; facts.measureLabel = made.label; return made.end; }
    }
    return k;
  }
  if (facts.ice === undefined && /^(over|on|with|auf|mit)$/.test(before) || facts.ice === undefined && number.digits && !TAKES.has(verb)) {
    const ice = iceAt(p, k, end);
    if (ice !== undefined) { facts.ice = ice; if (ice.ice.temperature !== undefined) facts.writtenCelsius ??= ice.ice.temperature.celsius; return ice.end; }
  }
  // "by a third", "to one half"
  if (number.fraction && (before === 'by' || before === 'to')) { facts.to = { share: before === 'by' ? 1 - low : low, span: p.span(k, number.end) }; p.use(k, number.end); return number.end; }
  if (before === 'by' && p.isMark(number.end, '%')) { facts.to = { share: 1 - low / 100, span: p.span(k, number.end + 1) }; p.use(k, number.end + 1); return number.end + 1; }
  // counted matter: "muddle 6 mint leaves", "3 sprays absinthe"
  if (number.digits && TAKES.has(verb) && facts.measure === undefined && !/^(other|the)$/.test(next)) {
    const made = measureWithin(p, k, number.end, end);
    if (made !== undefined && made.measure.thing.link.kind !== 'unknown') { facts.measure = made.measure; facts.measureLabel = made.label; return made.end; }
  }
  return k;
}

/** A measure inside a step: up to where the next "in", "into", "for", "over" begins. */
function measureWithin(p: Phrase, k: number, least: number, end: number, carried = false): { readonly measure: Measure; readonly label: Label; readonly end: number } | undefined {
  let to = least;
  while (to < end && !/^(in|into|for|over|on|at|until|through|and|then|onto|with|gently|slowly|around|to)$/.test(p.word(to)) && !p.isMark(to, ';')) to++;
  if (to === least) return undefined;
  // "dissolve 100 g sugar in 100 ml water": what carries it goes with it
  if (carried && /^(in|into)$/.test(p.word(to)) && rangeAt(p, to + 1, end)?.digits === true) { to += 2; while (to < end && !/^(for|over|on|at|until|through|and|then|onto|with|gently|slowly|around|to)$/.test(p.word(to)) && !p.isMark(to, ';') && !p.isMark(to, ',')) to++; }
  const before = p.used.slice(), problems = p.problems.length;
  const read = readMeasure(p, k, to);
  const measure = read?.measures[0];
  if (read === undefined || measure === undefined) { p.used.set(before); p.problems.length = problems; return undefined; }
  return { measure, label: read.label, end: to };
}

/** A glass or vessel behind "into": the longest of group `glass`, other words before it allowed; without a key a glass of no said kind that is chilled. */
export function glassAt(p: Phrase, i: number, end: number): { readonly key: string | undefined; readonly end: number; readonly vessel: number; readonly chilled: boolean; readonly frozen: boolean; readonly closed: boolean } | undefined {
  let chilled = false, frozen = false, closed = false;
  for (let k = i; k < Math.min(end, i + 6); k++) {
    const found = p.longest(k, end, 4, glasses) ?? plural(p, k);
    if (COLD.test(p.word(k))) { chilled = true; if (FROSTED.test(p.word(k))) frozen = true; continue; }
    if (CLOSED.test(p.word(k))) { closed = true; continue; }
    if (found !== undefined) {
      const to = p.word(found.end) === 'glass' || p.word(found.end) === 'glasses' ? found.end + 1 : found.end;
      let number = false;
      for (let n = i; n < k; n++) if (p.isNumber(n)) number = true;
      return { key: found.value.key, end: to, vessel: number ? i : to, chilled, frozen, closed };
    }
    if (COLD.test(p.word(k - 1)) && /^(glass|glas)$/.test(p.word(k))) return { key: undefined, end: k + 1, vessel: k + 1, chilled, frozen, closed };
    if (p.t[k]?.kind === 'mark' && !p.isMark(k, ',') && !p.isHyphen(k)) return undefined;
    if (/^(over|for|until|at|and|fridge|freezer|with)$/.test(p.word(k))) return undefined;
  }
  return undefined;
}
