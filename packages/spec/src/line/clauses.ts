import { lookupWhole } from '../names/lookup.ts';
import { rangeAt, unitAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { germanClauses } from './german.ts';
import { vesselFull } from './fill.ts';
import { isImperative, verbAt } from './verb.ts';

const ABBREVIATED = /^(dr|st|mr|mrs|fl|oz|no|ca|approx|vol|tsp|tbsp|tbs|bsp|min|sec|hr|pt|qt|lb|gal|doz|c|t|el|tl|bl|msp|n|b|ds|lbs|abv|appr|std|stk|tr|spr|sir|arom|o|g|s|e|i|max|sek|stdn|ca|mind|evtl|ggf|ungef|gr)$/;
/** What can be measured out. */
const MATTER: ReadonlySet<string> = new Set(['ml', 'g', 'piece']);
/** Verbs that are as well nouns or treatments: an action begins with them only behind a step. */
const NOUNS = new Set(['salt', 'juice', 'zest', 'smoke', 'mist', 'float', 'split', 'dust', 'wash', 'mash', 'cut', 'slice', 'light', 'brown', 'bottle', 'label', 'measure', 'score', 'age', 'store', 'bloom', 'spray', 'twist', 'rim', 'ice', 'plate', 'present', 'gas', 'press', 'top', 'draw', 'spin', 'load', 'seal', 'stand', 'oven', 'date', 'cover', 'trim', 'roll', 'beat', 'buzz', 'puree', 'peel', 'cold brew', 'present', 'rest', 'shake', 'use', 'take', 'crown', 'pass', 'season', 'chill', 'sink', 'layer', 'cap', 'dump', 'toast', 'keep', 'blend', 'mix', 'portion', 'vac', 'date', 'flame', 'pare', 'frost', 'milkshake', 'fold']);

/** The clauses of a line, each one action: parted at ";", at a full stop, and where "and", "then" or a comma brings in a step word. */
export function clauses(p: Phrase, from: number): readonly (readonly [number, number])[] {
  const out: [number, number][] = [];
  let start = from, step = startsStep(p, from), led = leads(p, from);
  const cut = (end: number, next: number): void => {
    if (end > start) out.push([start, end]);
    start = next;
    step = startsStep(p, next);
    led = leads(p, next);
  };
  for (let k = from; k < p.t.length; k++) {
    const token = p.t[k];
    if (token === undefined) break;
    if (token.kind === 'mark') {
      if ((token.text === '(' || token.text === '[') && token.partner > k) { k = token.partner; continue; }
      if (token.text === ';') { cut(k, k + 1); continue; }
      if (token.text === '.' && (k === p.t.length - 1 || endsSentence(p, k))) { cut(k, k + 1); continue; }
      if (token.text === ':' && step && k > start + 1 && beginsStep(p, k + 1, true)) { cut(k, k + 1); continue; }
      if (token.text === ',' && k > start) {
        const next = /^(then|and|dann|danach|und)$/.test(p.word(k + 1)) ? k + 2 : k + 1;
        const then = /^(then|dann|danach)$/.test(p.word(k + 1)) || (next === k + 2 && /^(then|dann)$/.test(p.word(k + 2)));
        const at = then && /^(then|dann)$/.test(p.word(k + 2)) ? k + 3 : next;
        if (germanClauses(p, start, k, at)) { cut(k, at); k = at - 1; continue; }
        if (led && beginsStep(p, at, true, false)) { led = false; step = true; }
        else if (beginsStep(p, at, step || then, !step && !then && next === k + 1)) { cut(k, at); k = at - 1; }
      }
      continue;
    }
    if (/^in(to)?$/.test(token.fold) && k > start && !mixes(p, start) && partFull(p, k + 1)) { cut(k, k + 1); continue; }
    if (token.fold === 'and' && k > start && !led && secondAmount(p, start, k)) { cut(k, k + 1); continue; }
    if (/^(and|then|und|dann|danach|before)$/.test(token.fold) && k > start) {
      let at = k + 1;
      if (/^(then|dann)$/.test(p.word(at))) at++;
      if (germanClauses(p, start, k, at)) { cut(k, at); k = at - 1; continue; }
      if (beginsStep(p, at, step || token.fold === 'then' || at > k + 1, false) && !isNumberJoin(p, k)) { cut(k, at); k = at - 1; }
    }
  }
  if (start < p.t.length) out.push([start, p.t.length]);
  return out;
}
/** "In a mixing glass, stir …": the first step word behind such a beginning is the clause's own. */
function leads(p: Phrase, i: number): boolean {
  return /^(in|into|using|with|for|after|once|when|while|to|in|im|mit)$/.test(p.word(i));
}
/** "one jigger brandy and a bottle of ginger ale": an amount with its unit and thing on both sides of "and". */
function secondAmount(p: Phrase, start: number, and: number): boolean {
  const next = rangeAt(p, and + 1, p.t.length);
  let k = next?.end ?? and + 1;
  while (/^(small|large|good|cold|heaping|heaped|level|fresh)$/.test(p.word(k))) k++;
  const unit = next === undefined || next.low === null ? undefined : unitAt(p, k, p.t.length, MATTER);
  if (unit === undefined || unit.end >= p.t.length || unitAt(p, and - 1, and, MATTER) !== undefined) return false;
  for (let n = start; n < and; n++) {
    const first = rangeAt(p, n, and), of = first === undefined ? undefined : unitAt(p, first.end, and, MATTER);
    if (of !== undefined) return of.end < and;
  }
  return false;
}
/** Steps that work with the ice of the glass they are done in. */
const mixes = (p: Phrase, i: number): boolean => /^(stir|shake|dry-shake|blend|muddle|roll|swizzle|build|fill|top)$/.test(verbAt(p, i, p.t.length)?.row.verb ?? '') || /^(mix|pour)$/.test(p.word(i));
/** "[in] a hot-drink glass half full of boiling water": what the vessel holds is an action of its own. */
function partFull(p: Phrase, i: number): boolean {
  const full = vesselFull(p, /^(an?|the)$/.test(p.word(i)) ? i + 1 : i, p.t.length);
  return full?.share?.fraction === true && full.thing < p.t.length && p.t[full.thing]?.kind === 'word';
}
const isNumberJoin = (p: Phrase, k: number): boolean => p.isNumber(k - 1) && p.isNumber(k + 1);

function endsSentence(p: Phrase, k: number): boolean {
  const next = p.t[k + 1], last = p.t[k - 1];
  if (next === undefined || last === undefined || !next.gap || p.isMark(k - 1, '.')) return false;
  if (last.kind === 'word' && ABBREVIATED.test(last.fold) && !(next.kind === 'word' && /^[A-Z]/.test(next.text) && last.text.length > 3)) return false;
  return next.kind === 'number' || (next.kind === 'word' && (/^\p{Lu}/u.test(next.text) || verbAt(p, k + 1, p.t.length) !== undefined));
}

function startsStep(p: Phrase, i: number): boolean {
  let k = i;
  while (/^(then|now|next|and|finally)$/.test(p.word(k))) k++;
  return verbAt(p, k, p.t.length) !== undefined && !(NOUNS.has(p.word(k)) && lookupWhole(p.word(k)) !== undefined);
}

/** A step word begins at i: an imperative, no name and no treatment; nouns only behind a step. */
function beginsStep(p: Phrase, i: number, step: boolean, afterComma = false): boolean {
  const verb = verbAt(p, i, p.t.length);
  if (verb === undefined || !verb.rows.some(isImperative)) return false;
  const word = p.word(i);
  if (p.isHyphen(verb.end)) return false;
  if (lookupWhole(word) !== undefined && verb.end === i + 1) return false;
  if (/^(of|ed)$/.test(p.word(verb.end))) return false;
  if (step) {
    if (!NOUNS.has(word) || verb.end > i + 1) return true;
    const next = p.word(verb.end);
    return verb.end >= p.t.length || p.t[verb.end]?.kind === 'mark' || p.isNumber(verb.end) || /^(the|a|an|it|with|into|in|for|on|over|at|again|through|until|up|off|hard|well|aside|to|overnight|all|briefly|gently)$/.test(next);
  }
  if (verb.rows.some((row) => row.form === 'participle') || p.isTreatment(i)) return false;
  // "1 dash absinthe and shake": the last word of a line is what to do
  if (/^(shake|stir|mix|blend|chill|muddle|roll|rest)$/.test(word) && /^(and|then)$/.test(p.word(i - 1)) && p.t.slice(verb.end).every((token) => token.kind === 'mark' || /^(well|hard|again|briskly|gently)$/.test(token.fold))) return true;
  return verb.end > i + 1 ? !afterComma || !p.isTreatment(i) : !NOUNS.has(word);
}
