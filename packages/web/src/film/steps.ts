import type { Action, Measure } from '@washline/engine';
import { measureOf, verbIn, writtenIn, type Read } from '../read.ts';
import { doingsOf, type Doing } from './actions.ts';

/** A warning or stop that is seen while the step is done. */
export interface Caution { readonly code: string; readonly severity: 'stop' | 'warn' | 'note'; readonly message: string }

/** One step as it is filmed. */
export interface FilmStep extends Doing {
  /** the same for the same words at the same place: what is kept of it is found again by this */
  readonly id: string;
  /** the verb in the language of its line, beginning large */
  readonly verb: string;
  /** what goes in or what it is done with, as written, without verb and time */
  readonly what: string;
  /** the whole action as written */
  readonly words: string;
  /** its own time, s, above 0: of a range the middle; null where none is written in numbers */
  readonly seconds: number | null;
  /** what is poured, where a number can be typed for it */
  readonly pours: Measure | null;
  readonly cautions: readonly Caution[];
}

/** What nobody should miss at the hob, the siphon or the shaker, however mild the finding is. */
const HARM = new Set(['egg-raw', 'botulism-risk', 'bottle-may-burst', 'spirit-near-flame', 'hazard-dose', 'hazard-plant', 'acid-in-metal', 'allergen-hidden', 'cold-chain', 'siphon-overfull', 'siphon-charged-warm', 'siphon-blocks']);
/** The verb of a line that has none. */
const PLAIN = { en: { measure: 'Add', fill: 'Top', garnish: 'Garnish', step: '' }, de: { measure: 'Zugeben', fill: 'Auffüllen', garnish: 'Garnieren', step: '' } };

/** The steps of a text as it was read. */
export function stepsOf(now: Pick<Read, 'document' | 'reading' | 'findings'>): FilmStep[] {
  const spoken = writtenIn(now.document), text = now.document.text;
  const doings = doingsOf(now.document, now.reading.variant), seen = new Map<string, number>();
  return doings.map((doing, i) => {
    const { action, line, section } = doing;
    // A verb behind its object lies outside the span of what it takes: an action that has its line to itself is the whole line.
    const alone = line.actions.length === 1, words = alone ? line.text.trim() : text.slice(action.span.from, action.span.to).trim();
    const offset = alone ? text.indexOf(words, line.span.from) : action.span.from;
    const cut = { ...spoken === 'de' ? PLAIN.de : PLAIN.en }, verb = wordOf(action), found = verb === null ? null : verbIn(words, verb);
    const seconds = secondsOf(action), out = [found, ...(seconds === null || action.kind !== 'step' || action.seconds === undefined ? [] : [{ from: action.seconds.span.from - offset, to: action.seconds.span.to - offset }])];
    const what = found === null && action.kind === 'step' ? without(words, out.slice(1)) : without(words, out);
    const key = `${now.reading.drink}/${section.key}/${words}`, nth = (seen.get(key) ?? 0) + 1;
    seen.set(key, nth);
    const first = doings[i - 1]?.section !== section;
    return {
      ...doing, words, seconds, id: `${key}/${nth}`,
      verb: large(found === null ? cut[action.kind] : words.slice(found.from, found.to)),
      what: lead(what, action),
      pours: poursOf(action),
      cautions: [...now.findings, ...now.reading.accepted].filter((f) => (f.severity !== 'note' || HARM.has(f.code)) && (f.where.line === line.line || (first && f.where.line !== undefined && f.where.line === section.headingLine)))
        .filter((f, k, all) => all.findIndex((g) => g.message === f.message) === k).map(({ code, severity, message }) => ({ code, severity, message })),
    };
  });
}

function wordOf(action: Action): string | null { return action.kind === 'measure' ? 'add' : action.kind === 'garnish' ? 'garnish' : action.verb; }

function poursOf(action: Action): Measure | null {
  const measure = measureOf(action);
  return measure === null || measure.amount === null || (measure.amount.plus?.length ?? 0) > 0 ? null : measure;
}

/** The time a step takes; of a measure, how long it is held or treated before it goes in. A time told in words ("until cold") is not counted. */
function secondsOf(action: Action): number | null {
  if (action.kind === 'step') return action.seconds === undefined || action.seconds.word !== undefined ? null : positive((action.seconds.low + action.seconds.high) / 2);
  const measure = measureOf(action);
  return positive(measure?.held?.seconds ?? measure?.treatments.find((t) => t.seconds !== undefined)?.seconds ?? 0);
}
const positive = (seconds: number): number | null => (seconds > 0 && Number.isFinite(seconds) ? seconds : null);

/** Words without some of their spans, and without the small words that led to them. */
function without(words: string, spans: readonly ({ readonly from: number; readonly to: number } | null)[]): string {
  let out = '', at = 0;
  for (const span of spans.filter((one) => one !== null).sort((a, b) => a.from - b.from)) {
    if (span.from < at || span.to > words.length) continue;
    out += `${words.slice(at, span.from).replace(/(?:^|\s)(?:for|für)\s+$/i, ' ')} `;
    at = span.to;
  }
  return `${out}${words.slice(at).replace(/^\s*lang(?=\s|$)/i, '')}`.replace(/\s+/g, ' ').replace(/^[\s,;:]+|[\s,;:]+$/g, '').replace(/^(?:the|a|an|der|die|das|den|ein|eine|einen)$/i, '');
}

/** "with", "over" before what is topped, hung on the rim or stirred with says nothing the verb does not. */
function lead(what: string, action: Action): string {
  if (action.kind === 'fill' || action.kind === 'garnish') return what.replace(/^(?:with|mit)\s+/i, '');
  return action.kind === 'step' && action.ice !== undefined && action.verb !== 'strain' ? what.replace(/^(?:over|with|on|auf|mit|über)\s+/i, '') : what;
}

function large(text: string): string { return text.charAt(0).toUpperCase() + text.slice(1); }
