import type { Action, Garnish, Measure, Problem } from '@washline/engine';
import { Phrase, type Place } from '../phrase/phrase.ts';
import { approxAt, rangeAt, unitAt } from '../phrase/amount.ts';
import { timeAt } from '../phrase/facts.ts';
import { iceAt } from '../phrase/ice.ts';
import { larderId, nameEnd, thingAt } from '../phrase/thing.ts';
import { problem } from '../problems/codes.ts';
import { edits } from '../names/nearest.ts';
import { category, verbs } from '../vocabulary/vocabulary.ts';
import { clauses } from './clauses.ts';
import { brim, glassIn, isFill, readFill, vesselAt, vesselFull } from './fill.ts';
import { isDropped, isFinish, readGarnish } from './garnish.ts';
import { EMPTY, type Label } from './label.ts';
import type { Measured } from './build.ts';
import { endsInDoing, germanEnd, germanInside } from './german.ts';
import { leadPhrase, put } from './lead.ts';
import { putCold } from './cold.ts';
import { bareIce, wholeIce } from './ice-line.ts';
import { tryMeasure } from './measure.ts';
import { toTaste } from './measure.ts';
import { onTop } from './on-top.ts';
import { readStep } from './step.ts';
import { isImperative, verbAt, type VerbAt } from './verb.ts';

export interface LineRead { readonly kind: 'measure' | 'fill' | 'step' | 'garnish' | 'unread'; readonly actions: readonly Action[]; readonly label: Label; readonly problems: readonly Problem[] }
interface One { readonly actions: readonly Action[]; readonly label: Label }

/** Verbs whose only act may be to put one counted thing in. */
const PUTS = new Set(['add', 'squeeze', 'sink', 'pour', 'score', 'break-the-gel', 'dirty-dump', 'place', 'cut']);
const PUT_WORDS = /^(add|put|place|drop|break|squeeze|pour|crack|tip|dump|hinzugeben|zugeben|geben|dazugeben|gib|gebe|dazu)$/;
const LEADS = /^(then|now|next|finally|and|first|lastly|afterwards|dann|danach|nun|zuletzt|jetzt|meanwhile|also|please|und)$/;

/** Reads one line into its actions, with a problem for whatever is not understood and every number not used. */
export function readLine(text: string, place: Place): LineRead {
  const p = new Phrase(text, place);
  if (p.t.length === 0) return { kind: 'unread', actions: [], label: EMPTY, problems: [unread(place, text)] };
  let from = listMark(p);
  const bad = p.t.findIndex((token) => token.kind === 'bad');
  if (bad >= 0) { p.report('number-unclear', bad, bad + 1, { number: p.slice(bad, bad + 1) }); return { kind: 'unread', actions: [], label: EMPTY, problems: p.problems }; }
  const first = p.t[from];
  if (first !== undefined && first.kind === 'mark' && /^[-−–]$/.test(first.text) && p.t[from + 1]?.kind === 'number' && p.t[from + 1]?.gap === false) {
    p.report('amount-negative', from, from + 2, { number: p.slice(from, from + 2) });
    return { kind: 'unread', actions: [], label: EMPTY, problems: p.problems };
  }
  if (!place.listed && p.isNumber(0) && /^[.)]$/.test(p.t[1]?.text ?? '') && p.t[1]?.gap === false && p.t[2]?.gap === true) { p.report('list-number', 0, 2, { number: p.slice(0, 2) }); return { kind: 'unread', actions: [], label: EMPTY, problems: p.problems }; }
  const optional = optionalLead(p, from);
  from = optional.end;
  const actions: Action[] = [], labels: Label[] = [];
  for (const [start, end] of clauses(p, from)) {
    let i = start;
    while (i < end - 1 && LEADS.test(p.word(i))) { i++; if (p.isMark(i, ',')) i++; }
    p.path = actions.length === 0 ? place.path : [...place.path, actions.length];
    // "… and add:" only leads over to the next line
    if (labels.length > 0 && onlyVerb(p, i, end)) continue;
    const one = readClause(p, i, end, labels.length > 0);
    if (one === undefined) {
      if (labels.length === 0) { const missing = p.problems.length > 0 ? p.problems : [reason(p, i, end, text)]; return { kind: 'unread', actions: [], label: EMPTY, problems: missing }; }
      if (hasSubstance(p, i, end)) p.report('unread', i, end, { text: p.slice(i, end) });
      continue;
    }
    const before = actions.find((action) => action.kind === 'measure');
    for (const action of one.actions) {
      if (action.kind === 'measure' && before !== undefined && action.amount !== null && action.path.length > place.path.length && !p.problems.some((other) => other.code === 'second-measure')) p.problems.push(problem('second-measure', place.path, place.line, action.span.from - place.base + 1, action.span, { number: p.slice(i, i + 1) }));
      const path = actions.length === 0 ? place.path : [...place.path, actions.length];
      const placed = action.path.length === path.length && action.path[action.path.length - 1] === path[path.length - 1] ? action : { ...action, path };
      actions.push(optional.yes && placed.kind === 'measure' ? { ...placed, optional: true } : placed);
    }
    labels.push(one.label);
  }
  const head = labels[0];
  if (head === undefined) return { kind: 'unread', actions: [], label: EMPTY, problems: [unread(place, text)] };
  for (let k = 0; k < p.t.length; k++) if (p.t[k]?.kind === 'number' && p.used[k] === 0 && k >= from) p.report('number-unused', k, k + 1, { number: p.slice(k, k + 1) });
  const seconds = head.seconds ?? (head.kind === 'step' ? labels.find((label) => label.seconds !== null)?.seconds ?? null : null);
  const celsius = head.celsius ?? (head.kind === 'step' ? labels.find((label) => label.celsius !== null)?.celsius ?? null : null);
  return { kind: head.kind, actions, label: { ...head, seconds, celsius }, problems: p.problems };
}

/** Nothing but "add", "pour in" and a colon. */
function onlyVerb(p: Phrase, i: number, end: number): boolean {
  const verb = verbAt(p, i, end);
  if (verb === undefined || (verb.row.verb !== 'add' && verb.row.verb !== 'pour')) return false;
  for (let k = verb.end; k < end; k++) if (p.t[k]?.kind !== 'mark') return false;
  return true;
}
const unread = (place: Place, text: string): Problem => problem('unread', place.path, place.line, 1, { from: place.base, to: place.base + text.length }, { text });

/** Why nothing was read: an amount of nothing, a unit with no number, a word that looks like a step. */
function reason(p: Phrase, i: number, end: number, text: string): Problem {
  const place = p.place;
  const around = approxAt(p, i, end);
  const number = rangeAt(p, around?.end ?? i, end);
  const unit = unitAt(p, number?.end ?? i, end);
  const at = (code: 'no-thing' | 'no-amount' | 'step-unknown', from: number, to: number, words: Record<string, string>): Problem => { const span = p.span(from, to); return problem(code, place.path, place.line, span.from - place.base + 1, span, words); };
  if (number !== undefined && (number.digits || number.article === true && unit !== undefined)) return at('no-thing', i, unit?.end ?? number.end, { amount: p.slice(i, unit?.end ?? number.end) });
  if (unit !== undefined && p.t[i]?.kind === 'word' && !/^(in|single|top|fill|each|whole)$/.test(p.word(i))) return at('no-amount', i, unit.end, { unit: p.slice(i, unit.end) });
  const word = p.word(i);
  if (word.length > 3) {
    let best: string | undefined;
    for (const [key, rows] of verbs) if (rows.some((row) => row.language === 'en' && isImperative(row) && row.words === 1) && Math.abs(key.length - word.length) < 2 && edits(word, key, 1) <= 1) best ??= rows[0]?.verb;
    if (best !== undefined) return at('step-unknown', i, i + 1, { word: p.slice(i, i + 1), nearest: best });
  }
  return unread(place, text);
}
function hasSubstance(p: Phrase, i: number, end: number): boolean {
  for (let k = i; k < end; k++) if (p.t[k]?.kind === 'number') return true;
  return false;
}

/** A list dash with a blank, a bullet, or a number that a neighbouring line counts on. */
function listMark(p: Phrase): number {
  const first = p.t[0];
  if (first === undefined) return 0;
  if (first.kind === 'mark' && /^[-–—•*·▪◦☐+>]$/.test(first.text) && (p.t[1]?.gap ?? false)) return 1;
  if (first.kind === 'mark' && /^[•·▪◦☐*]$/.test(first.text)) return 1;
  if (first.text === '[' && first.partner >= 1 && first.partner <= 2) return first.partner + 1;
  if (first.kind === 'word' && first.text.length === 1 && p.isMark(1, ')') && p.t[1]?.gap === false && first.partner < 0) return 2;
  if (p.place.listed && first.kind === 'number' && p.t[1]?.kind === 'mark' && /^[.)]$/.test(p.t[1]?.text ?? '')) { p.use(0, 1); return 2; }
  return 0;
}
function optionalLead(p: Phrase, i: number): { readonly yes: boolean; readonly end: number } {
  if (p.word(i) === 'optional' || p.word(i) === 'optionally') return { yes: true, end: p.isMark(i + 1, ':') || p.isMark(i + 1, ',') || p.isMark(i + 1, '-') ? i + 2 : i + 1 };
  if (p.isMark(i, '(') && p.word(i + 1) === 'optional' && p.isMark(i + 2, ')')) return { yes: true, end: i + 3 };
  return { yes: false, end: i };
}

function fromMeasured(p: Phrase, i: number, end: number, read: Measured, before: boolean): One {
  const first = read.measures[0];
  const label = read.label;
  if (first !== undefined && (read.garnish || (first.amount === null && first.share === undefined && first.portion === undefined && isFinish(label.ingredient ?? '') && !before))) {
    const garnish: Garnish = { kind: 'garnish', path: p.path, span: p.span(i, end), thing: first.thing, amount: first.amount };
    return { actions: [garnish], label: { ...EMPTY, kind: 'garnish', low: label.low, high: label.high, unit: label.unit, ingredient: label.ingredient } };
  }
  if (first !== undefined && read.topUp) return { actions: [{ kind: 'fill', path: p.path, span: p.span(i, end), verb: 'top', measure: first }], label: { ...label, kind: 'fill' } };
  return { actions: read.measures, label };
}

/** Words of speech before what is meant ("so we need two ounces of gin"), skipped only where nothing can be read with them. */
const SPEECH = /^(so|ok|okay|alright|now|then|next|first|firstly|second|secondly|third|lastly|finally|and|i|ill|im|ive|we|well|were|weve|you|youll|youre|lets|going|gonna|to|need|needs|needed|want|will|just|simply|start|starting|begin|with|by|up|also|grab|go|goes|in|comes|followed|here|some|about|of|your|that|is|are|there|again|get|got|have|take|use|using|like|do|add|adding|bring|follow|plus|oh|right|dann|jetzt|wir|nehmen|ich|nehme|brauchen|noch|dazu|als|erstes|nachstes|kommt|kommen)$/;

function readClause(p: Phrase, i: number, end: number, later: boolean): One | undefined {
  const one = readSpoken(p, i, end, later), fill = one?.actions[0];
  if (one === undefined || fill?.kind !== 'fill' || fill.ice === undefined) return one;
  const into = glassIn(p, i, end);
  return into === undefined ? one : { ...one, actions: [{ ...fill, into }, ...one.actions.slice(1)] };
}

function readSpoken(p: Phrase, i0: number, end0: number, later: boolean): One | undefined {
  const first = readPlain(p, i0, end0, later);
  if (first !== undefined) return first;
  if (!SPEECH.test(p.word(i0)) && p.word(i0) !== 'give' && p.word(i0) !== 'gib') return undefined;
  const problems = p.problems.length;
  for (let k = i0 + 1; k < Math.min(end0, i0 + 9); k++) {
    const spoken = SPEECH.test(p.word(k - 1)) || p.isMark(k - 1, ',') || /^(give|it|that|everything|a|an|the|good|nice|quick|hard|long|really|gib|one|final|this)$/.test(p.word(k - 1));
    if (!spoken) return undefined;
    const amount = rangeAt(p, k, end0);
    const verb = verbAt(p, k, end0);
    const counted = amount !== undefined && amount.low !== null && unitAt(p, amount.end, end0) !== undefined;
    if (!counted && (verb === undefined || !verb.rows.some(isImperative) || /^(add|use|take)$/.test(p.word(k)))) continue;
    const read = counted || verb === undefined ? readPlain(p, k, end0, later) : acted(p, k, verb, end0);
    if (read !== undefined) return read;
    p.problems.length = problems;
  }
  return undefined;
}

const YIELDS = /^(serves|makes|yields?|ergibt|reicht|total|gesamt|step|schritt)$/;
function readPlain(p: Phrase, i0: number, end0: number, later: boolean): One | undefined {
  let i = i0, end = end0;
  while (end > i && (p.isMark(end - 1, '.') || p.isMark(end - 1, '!') || p.isMark(end - 1, ','))) end--;
  const taste = toTaste(p, i, end);
  if (taste !== undefined && (taste.measures[0]?.thing.link.kind !== 'unknown' || verbAt(p, i, end) === undefined)) return fromMeasured(p, i, end, taste, true);
  // a whole line in brackets: "(Use spoon to float the brandy)"
  if (p.isMark(i, '(') && p.t[i]?.partner === end - 1) { i++; end--; }
  if (i >= end) return undefined;
  // "Mixing glass 3/4 full shaved ice"
  if (!p.isNumber(i) && verbAt(p, i, end) === undefined && !pouredInto(p, i, end) || /^(mixing|large|small|medium|tall|bar)$/.test(p.word(i))) {
    const full = vesselFull(p, i, end);
    const read = full === undefined ? undefined : brim(p, i, 'fill', full, end);
    if (read !== undefined) return { actions: [read.fill], label: read.label };
  }
  // "half full fine ice", "fine ice in mixing glass": ice that is put in, in no amount of grams
  const bare = bareIce(p, i, end);
  if (bare !== undefined) return bare;
  // "Balance of glass, ginger ale"
  if (/^(balance|rest|remainder)$/.test(p.word(i)) && p.word(i + 1) === 'of' && /^(the )?glass/.test(p.slice(i + 2, i + 4).toLowerCase())) {
    const from = p.word(i + 2) === 'the' ? i + 4 : i + 3;
    return filled(readFill(p, i, 'fill', p.isMark(from, ',') ? from + 1 : from, end));
  }
  if (/^(balance|remainder)$/.test(p.word(i)) && /^(with|in)$/.test(p.word(i + 1))) return filled(readFill(p, i, 'fill', i + 2, end));
  // a yield names no matter: "Serves 4", "Makes about 500 ml"
  if (YIELDS.test(p.word(i)) && startsAmount(p, p.word(i + 1) === 'about' || p.word(i + 1) === 'ca' || p.isMark(i + 1, ':') ? i + 2 : i + 1, end)) return undefined;
  const finished = onTop(p, i, end);
  if (finished !== undefined) return garnished(finished);
  // "garnish: …", "Top: …", "Glass rim: salt"
  const colon = p.isMark(i + 1, ':') ? i + 2 : p.isDash(i + 1) ? i + 2 : -1;
  if (colon > 0 && /^(garnish|garnishes|garnitur|deko|dekoration|garnieren|decoration)$/.test(p.word(i))) return garnished(readGarnish(p, i, colon, end));
  if (colon > 0 && /^(top|topper|fill|float|crown|auffullen|filler)$/.test(p.word(i))) return filled(readFill(p, i, p.word(i) === 'float' || p.word(i) === 'crown' ? p.word(i) : 'top', colon, end));
  if (colon > 0 && /^(rim|rand)$/.test(p.word(i))) return garnished(readGarnish(p, i, colon, end));
  if (p.word(i) === 'expressed' && end > i + 1) return garnished(readGarnish(p, i, i + 1, end));
  const unbracketed = p.isMark(end - 1, ')') ? Math.max(p.t[end - 1]?.partner ?? end, i + 1) : end;
  if (/^(salt|sugar|half|chilli|tajin|salted|sugared|spiced|zucker|salz)$/.test(p.word(i)) && /^(rim|rand)/.test(p.word(unbracketed - 1)) && unbracketed - i <= 4) return garnished(readGarnish(p, i, p.word(i) === 'half' ? i + 1 : i, unbracketed));
  if (/^(zuckerrand|salzrand)$/.test(p.word(i))) return garnished(readGarnish(p, i, i, end));
  // "[1] absinthe rinse", "chilled glass"
  if (end - i <= 4 && /^(chilled|frozen|cold|gekuhltes)$/.test(p.word(i)) && vesselFullGlass(p, i + 1, end)) {
    return { actions: [{ kind: 'step', path: p.path, span: p.span(i, end), verb: 'chill', flags: ['chilled'] }], label: { ...EMPTY, kind: 'step', verb: 'chill' } };
  }
  // "zest of 2 lemons", "peel of an orange": parts of a fruit before the steps of the same word
  if (/^(zest|peel|juice|saft|schale)$/.test(p.word(i)) && (/^(of|von|einer|eines|from)$/.test(p.word(i + 1)) || p.isNumber(i + 1))) {
    const read = tryMeasure(p, i, end);
    if (read !== undefined) return fromMeasured(p, i, end, read, later);
  }
  // "lime shell garnish"
  if (end > i + 1 && /^(garnish|garnitur)$/.test(p.word(end - 1)) && !/^(for|as|to|zur|als|no|of)$/.test(p.word(end - 2)) && verbAt(p, i, end) === undefined) { const read = garnished(readGarnish(p, i, i, end - 1)); if (read !== undefined) return read; }
  // a time alone, a use-by: no step
  if (timeAt(p, i, end)?.end === end || (p.word(i) === 'use' && /^(within|by)$/.test(p.word(i + 1)))) return undefined;
  const numeric = startsAmount(p, i, end);
  const cold = putCold(p, i, end);
  if (cold !== undefined) return step(p, i, cold, end);
  if (!numeric) {
    // names that run to the end or to a number go before verbs ("Salt", "lime juice, 20 ml")
    const known = nameEnd(p, i, end);
    const found = verbAt(p, i, end), verb0 = found !== undefined && p.word(found.end) === 'of' && found.end === i + 1 ? undefined : found;
    const nameFirst = known > i && (verb0 === undefined || known > verb0.end || (known === verb0.end && !actsAfter(p, known, end)));
    if (nameFirst && endsInDoing(p, known, end) === undefined) {
      const read = tryMeasure(p, i, end);
      if (read !== undefined) return fromMeasured(p, i, end, read, later);
    }
    const lead = leadPhrase(p, i, end);
    const verb = /^(drop|break|crack)$/.test(p.word(i)) && !/^(the gel|up)/.test(p.slice(i + 1, i + 3)) ? put(i) : verb0 !== undefined && usable(p, verb0, end) ? verb0 : lead;
    if (verb !== undefined) {
      const one = acted(p, i, verb, end);
      if (one !== undefined) return one;
    }
    const last = germanEnd(p, i, end) ?? germanInside(p, i, end);
    if (last !== undefined) { const one = acted(p, i, last, end); if (one !== undefined) return one; }
  } else {
    const last = germanEnd(p, i, end);
    if (last !== undefined && last.row.form !== 'participle' && (last.row.verb === 'shake' || !nounVerb(p, last))) { const one = acted(p, i, last, end); if (one !== undefined) return one; }
    const verb0 = verbAt(p, i, end);
    if (verb0 !== undefined && usable(p, verb0, end) && !p.isNumber(i) && isImperative(verb0.row) && unitAt(p, i, end) === undefined) { const one = acted(p, i, verb0, end); if (one !== undefined) return one; }
  }
  const ice = wholeIce(p, i, end);
  if (ice !== undefined) return ice;
  const read = tryMeasure(p, i, end) ?? rinse(p, i, end);
  if (read !== undefined) return fromMeasured(p, i, end, read, later);
  return undefined;
}
/** "in ein Glas voll Eis abseihen": the vessel is where to. */
function pouredInto(p: Phrase, i: number, end: number): boolean { return /^(in|ins)$/.test(p.word(i)) && !isFill(germanEnd(p, i, end)?.row.verb ?? 'fill'); }
/** "absinthe rinse", "rum float": one of it. */
function rinse(p: Phrase, i: number, end: number): Measured | undefined {
  if (!/^(rinse|float|spray|mist)$/.test(p.word(end - 1)) || end - i < 2) return undefined;
  const what = thingAt(p, i, end - 1, 'volume');
  if (what === undefined || what.thing.link.kind === 'unknown' || what.end !== end - 1) return undefined;
  const unit = p.word(end - 1) === 'mist' ? 'spray' : p.word(end - 1);
  const at = p.span(end - 1, end);
  const measure: Measure = { kind: 'measure', path: p.path, span: p.span(i, end), amount: { low: 1, high: 1, unit, number: { from: at.from, to: at.from }, unitSpan: at }, thing: what.thing, treatments: [], optional: false };
  return { measures: [measure], label: { ...EMPTY, kind: 'measure', low: 1, high: 1, unit, ingredient: what.label }, garnish: false, topUp: false };
}
function vesselFullGlass(p: Phrase, i: number, end: number): boolean {
  return /(glass|coupe|highball|rocks|collins|flute|goblet|mug|glas|tumbler|cup)$/.test(p.word(end - 1)) && i <= end - 1;
}
function startsAmount(p: Phrase, i: number, end: number): boolean {
  return p.isNumber(i) || p.isMark(i, '~') || rangeAt(p, i, end) !== undefined;
}
/** What stands behind a word that is both a name and a step says which it is ("smoke 5 min", "salt the rim"). */
function actsAfter(p: Phrase, k: number, end: number): boolean {
  if (k >= end) return false;
  return p.isNumber(k) || /^(the|for|with|until|it|over|into|again|through|well)$/.test(p.word(k));
}
function usable(p: Phrase, verb: VerbAt, end: number): boolean {
  if (verb.rows.some(isImperative)) return true;
  const k = verb.end;
  if (k >= end) return true;
  return p.isNumber(k) || p.t[k]?.kind === 'mark' || /^(with|up|off|over|for|into|in|through|and|until|at|on|well|hard|twice|overnight|mit|auf|again|to|the|of|without|gently|out)$/.test(p.word(k));
}
const nounVerb = (p: Phrase, verb: VerbAt): boolean => verb.row.language === 'en' || thingAt(p, verb.from, verb.end, null)?.thing.link.kind === 'larder';

const garnished = (read: ReturnType<typeof readGarnish>): One | undefined => (read === undefined ? undefined : { actions: [read.garnish], label: read.label });
function filled(read: ReturnType<typeof readFill>): One | undefined {
  return read === undefined ? undefined : { actions: [read.fill], label: read.label };
}

/** An action by its verb. */
function acted(p: Phrase, i: number, verb: VerbAt, end: number): One | undefined {
  const key = verb.row.verb, word = p.word(verb.from);
  const german = verb.row.language === 'de' && verb.end === end && verb.from > i;
  const from = german ? i : verb.end, to = german ? verb.from : verb.apart === end && verb.apartFrom !== undefined ? verb.apartFrom : end;
  if (key === 'garnish') {
    const read = readGarnish(p, i, from, to);
    if (/^(garnish|garnished|garnishing|garnieren|garniert|garniere|finish|trim)$/.test(word)) return garnished(read) ?? step(p, i, verb, end);
    const done = step(p, i, verb, end);
    return { actions: done.actions, label: done.label };
  }
  if (key === 'grate' && !/^(grate)$/.test(word) && verb.row.form === 'participle') return undefined;
  // what thickens is strewn into a liquid, not onto a drink
  if (key === 'grate' && /^(sprinkle|bestreuen)$/.test(word)) {
    const number = rangeAt(p, from, to);
    const strewn = thingAt(p, number === undefined ? from : unitAt(p, number.end, to)?.end ?? number.end, to, 'weight');
    const id = strewn === undefined ? null : larderId(strewn.thing);
    if (id !== null && category(id) === 'texture') return step(p, i, { ...verb, row: { ...verb.row, verb: 'disperse', reading: 'stir' } }, end);
  }
  if (key === 'grate' || key === 'twist' || key === 'rim') {
    if (key === 'rim') { const thing = p.slice(from, to).match(/\bwith\b|\bmit\b/) === null ? undefined : behindWith(p, from, to); const read = readGarnish(p, i, thing ?? from, to); return garnished(read); }
    const read = readGarnish(p, i, from, to);
    if (read !== undefined) return garnished(read);
  }
  // a peel is squeezed for its oil, over what is in the glass
  if (key === 'squeeze' && /^(squeeze|squeezed)$/.test(word) && /\b(?:peel|rind|skin|twist|zest)\b/i.test(p.slice(from, to))) { const read = readGarnish(p, i, from, to); if (read !== undefined) return garnished(read); }
  if (key === 'top' && word === 'finish' && /\b(?:twist|sprig|wheel|wedge|slice|peel|zest|grat\w+|nutmeg|mint|leaf|leaves|cherry|olive|dust\w*)\b/i.test(p.slice(from, to))) { const read = garnished(readGarnish(p, i, from, to)); if (read !== undefined) return read; }
  if (isFill(key)) {
    const read = readFill(p, i, key, from, to);
    if (read !== undefined) {
      const step0 = key === 'float' || key === 'layer' || key === 'sink';
      return { actions: [read.fill], label: step0 ? { ...EMPTY, kind: 'step', verb: verb.row.reading, ...(read.label.low === null ? {} : { low: read.label.low, high: read.label.high, unit: read.label.unit, ingredient: read.label.ingredient }) } : read.label };
    }
    return step(p, i, verb, end);
  }
  const laid = key === 'add' ? onTop(p, from, to) : undefined;
  if (laid !== undefined) return garnished(laid);
  // "add enough claret to fill the glass"
  const filling = key === 'add' ? toFill(p, from, to) : -1;
  if (filling > from) { const read = readFill(p, i, 'fill', /^(enough|sufficient|some)$/.test(p.word(from)) ? from + 1 : from, filling); if (read !== undefined && read.label.low === null) return filled(read); }
  // "pour over ice": where to, not what
  if (key === 'pour' && /^(over|on)$/.test(p.word(verb.end - 1) === 'over' ? 'over' : p.word(from)) && iceAt(p, p.word(verb.end - 1) === 'over' ? from : from + 1, to) !== undefined) return step(p, i, verb, end);
  if (PUT_WORDS.test(word) || PUTS.has(key) && german) {
    let k = from;
    // "drop in", "pour into the glass", "put into a long thin glass": the place before the thing
    if (/^(in|into|to|ins|on)$/.test(p.word(k))) {
      k++;
    }
    // "pour into two 300 ml bottles": nothing but where to
    if (/^(in|into)$/.test(p.word(k - 1)) && /^(bottles?|jars?|glass|glasses|coupes|flaschen?|glas|glaser)$/.test(p.word(to - 1))) return step(p, i, verb, end);
    if (/^(in|into|to)$/.test(p.word(k - 1)) && /^(an?|the|your)$/.test(p.word(k))) {
      const vessel = vesselAt(p, k + 1, to);
      if (vessel !== undefined) k = vessel;
      // "add to a highball glass with ice": nothing but where to, and what is there
      if (k === to || vessel !== undefined && /^(with|over|filled|full|packed|mit|voll)$/.test(p.word(k))) return step(p, i, verb, end);
    }
    const ice = wholeIce(p, k, to) ?? bareIce(p, k, to);
    if (ice !== undefined) return ice;
    while (/^(the|glass|shaker|tin|bowl|ins|glas)$/.test(p.word(k)) && k < to) k++;
    if (p.word(k) === 'a' && /^(glass|shaker|tin|bowl|blender|pan|jar)$/.test(p.word(k + 1)) && k + 2 < to) k += 2;
    const number = rangeAt(p, k, to);
    const unitAfter = number === undefined ? undefined : unitAt(p, number.end, to);
    const counted = number !== undefined || /^(juice|white|whites|yolk|yolks|zest|saft|all|rest|the)$/.test(p.word(k)) || unitAt(p, k, to) !== undefined;
    if (counted || key === 'add') {
      const read = tryMeasure(p, k, to);
      const first = read?.measures[0];
      if (read !== undefined && first !== undefined && (read.label.low !== null || first.portion !== undefined) && !(unitAfter === undefined && number?.article === true && first.thing.link.kind === 'unknown' && key !== 'add' && !/^(break|crack|drop)$/.test(word))) {
        if (isDropped(read.label.ingredient ?? '') && read.label.unit === 'piece') {
          const garnish: Garnish = { kind: 'garnish', path: p.path, span: p.span(i, end), thing: first.thing, amount: first.amount };
          return { actions: [garnish], label: { ...EMPTY, kind: 'garnish', low: read.label.low, high: read.label.high, unit: 'piece', ingredient: read.label.ingredient } };
        }
        const spanned: Measure = { ...first, span: p.span(i, end) };
        return { actions: [spanned, ...read.measures.slice(1)], label: read.label };
      }
    }
    if (key === 'add' && p.place.poured !== true) {
      const what = thingAt(p, k, to, null);
      if (what !== undefined && what.thing.link.kind !== 'unknown' && to === end) {
        const measure: Measure = { kind: 'measure', path: p.path, span: p.span(i, end), amount: null, thing: what.thing, treatments: [], optional: false };
        return { actions: [measure], label: { ...EMPTY, kind: 'step', verb: 'other' } };
      }
    }
  }
  // "use 60 ml gin", "take 200 g sugar": a written amount of matter
  if (key === 'use') {
    const number = rangeAt(p, from, to);
    const unit = number === undefined ? undefined : unitAt(p, number.end, to);
    const read = unit !== undefined && (unit.form.of === 'ml' || unit.form.of === 'g') && unit.form.unit !== 'glass' ? tryMeasure(p, from, to) : undefined;
    if (read !== undefined) return { actions: read.measures, label: read.label };
  }
  // "Juice 2 limes": a count of fruit
  if (key === 'squeeze' && /^(juice)$/.test(word)) { const read = tryMeasure(p, i, end); if (read !== undefined) return { actions: read.measures, label: read.label }; }
  return step(p, i, verb, end);
}
/** Where "to fill …" or "to top …" begins at a clause's end; -1 where it does not. */
function toFill(p: Phrase, from: number, to: number): number {
  for (let k = Math.max(from, to - 5); k < to - 1; k++) if (p.word(k) === 'to' && /^(fill|top)$/.test(p.word(k + 1)) && (k + 2 === to || /^(the|up|glass|it|goblet)$/.test(p.word(k + 2)))) return k;
  return -1;
}
function behindWith(p: Phrase, from: number, to: number): number | undefined {
  for (let k = from; k < to; k++) if (/^(with|mit)$/.test(p.word(k))) return k + 1;
  return undefined;
}
function step(p: Phrase, i: number, verb: VerbAt, end: number): One {
  const made = readStep(p, i, verb, end);
  return { actions: [made.step], label: made.label };
}
