import type { Action, Amount, Document, IceWritten, Measure, Path, Span, Splice, Step } from '../document/types.ts';

/** Words at one place, replacing what stands there if anything does. */
const put = (from: number, insert: string, to = from): Splice[] => [{ from, to, insert }];

/** Behind a measure and what is said of it: ` at 20 °C`. A line that carries its own liquid takes the words behind the thing. @source none - definition */
export function behindMeasure(m: Measure, words: string, text: string): Splice[] {
  if (m.carrier) return put(Math.max(m.thing.span.to, m.strength?.span.to ?? 0, m.ratio?.span.to ?? 0), ` ${words}`);
  const end = stop(text, m.span);
  return put(end, `${m.treatments.length > 0 ? ',' : ''} ${words}`);
}

/** Behind a thing and what is said of its strength. @source none - definition */
export function behindThing(m: Measure, words: string): Splice[] { return put(m.thing.span.to, ` ${words}`); }

/** Before a thing: `90 ml ` or `canned `. @source none - definition */
export function beforeThing(m: Measure, words: string): Splice[] { return put(m.thing.span.from, `${words} `); }

/** In place of a thing's name. @source none - definition */
export function insteadOf(span: Span, words: string): Splice[] { return put(span.from, words, span.to); }

/** In place of a number and its unit. @source none - definition */
export function insteadOfAmount(amount: Amount, words: string): Splice[] {
  const from = Math.min(amount.number.from, amount.unitSpan?.from ?? amount.number.from), to = Math.max(amount.number.to, amount.unitSpan?.to ?? amount.number.to);
  return put(from, words, to);
}

/** At the end of a step: ` 12 s`, ` over 150 g cubes`; where the verb stands last ("2 min kochen"), behind what it begins with. @source none - definition */
export function behindStep(step: { readonly span: Span } & Partial<Pick<Step, 'seconds' | 'ice' | 'temperature' | 'through'>>, words: string, text: string): Splice[] {
  const first = [step.seconds, step.ice, step.temperature, step.through].find((one) => one !== undefined && one.span.from >= step.span.from && text.slice(step.span.from, one.span.from).trim() === '');
  return put(first ? first.span.to : stop(text, step.span), ` ${words}`);
}

/** A point or comma that ends a span is left behind the words. */
function stop(text: string, span: Span): number {
  let end = span.to;
  while (end > span.from && /[\s.,;]/.test(text.charAt(end - 1))) end--;
  return end;
}

export type OfIce = 'kind' | 'mass' | 'size' | 'temperature';

/** What is said of ice, put where it stands in `200 g 32 mm cubes at -5 °C`, or behind the action when no ice is written. @source none - definition */
export function inIce(text: string, action: Action | undefined, ice: IceWritten | undefined, what: OfIce, words: string, kind = 'cubes'): Splice[] {
  if (!ice) return action ? behindStep(action, what === 'kind' ? `over ${words}` : what === 'temperature' ? `over ${kind} ${words}` : `over ${words} ${kind}`, text) : [];
  const named = ice.named ?? ice.span;
  if (what === 'mass') return put(ice.span.from, `${words} `);
  if (what === 'size') return ice.count !== undefined ? put(named.to, ` ${words}`) : put(named.from, `${words} `);
  return what === 'temperature' ? put(ice.span.to, ` ${words}`) : [];
}

/** The fill that brings this ice, if one does. @source none - definition */
export function fillOf(document: Document, ice: IceWritten): Action | undefined {
  return document.sections.flatMap((s) => s.lines).flatMap((l) => l.actions).find((a) => a.kind === 'fill' && a.ice?.span.from === ice.span.from);
}

/** The action at a path. @source none - definition */
export function actionAt(document: Document, path: Path): Action | undefined {
  for (const section of document.sections) for (const line of section.lines) for (const action of line.actions) {
    if (action.path.length === path.length && action.path.every((x, i) => x === path[i])) return action;
  }
  return undefined;
}

/** A line of the head, behind the name of the drink. @source none - definition */
export function inHead(document: Document, line: string): Splice[] {
  const { text } = document, eol = text.includes('\r\n') ? '\r\n' : '\n';
  const start = /^\uFEFF?(?:[ \t]*\r?\n)*/.exec(text)?.[0].length ?? 0;
  if (document.name === '') return put(start, `${line}${eol}`);
  const end = text.slice(start).search(/\r|\n|$/) + start;
  return put(end, `${eol}${line}`);
}

/** A number as it would be written: at most three figures. @source none - definition */
export function plain(value: number): string { return String(Number(value.toPrecision(3))); }
