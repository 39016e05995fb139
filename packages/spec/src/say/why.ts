import type { Absent, Document, Narrow, Place, Why, WhyInput } from '@washline/engine';
import table from '../../../../data/methods.json' with { type: 'json' };
import { fill } from './fill.ts';
import { matched } from './key-words.ts';
import { ENGLISH, type Messages } from './messages.ts';

/** Where a method is described, the tables of its fixed coefficients, and where those are printed. */
export interface Model { readonly page: string; readonly data: readonly string[]; readonly sources: readonly string[] }
export interface SaidInput extends WhyInput { readonly words: string }
export interface SaidNarrow extends Narrow { readonly words: string; /** what would tell it */ readonly do: string }
/** Why a figure is what it is, with its sentences. */
export interface SaidWhy extends Omit<Why, 'inputs' | 'narrow' | 'absent'> {
  readonly says: string; readonly model: Model | null;
  readonly inputs: readonly SaidInput[]; readonly narrow: readonly SaidNarrow[]; readonly absent?: Absent & { readonly message: string };
}

/** How each method and limit is worked out, by its id. */
export const MODELS: Readonly<Record<string, Model>> = table.methods;

/** The key of an input as words: `bottle/white rum/strength` is "the strength of white rum". A key without a sentence of its own stands as it is. */
export function inputWords(input: { readonly key: string; readonly where: Place }, document: Document, messages: Messages): string {
  const said = messages.inputs ?? ENGLISH.inputs!;
  const [, key = '', n = '1'] = /^(.*?)(?:#(\d+))?$/.exec(input.key) ?? [];
  const found = matched(said.words, key);
  if (!found) return fill('{key}', { key: input.key }, messages);
  const words = fill(found.sentence, { ...partsOf(found.parts), thing: thingAt(document, input.where) ?? plain(key.split('/')[1] ?? key), line: lineAt(document, input.where) ?? plain(key) }, messages);
  return n === '1' ? words : fill(said.again, { words, n }, messages);
}

/** All of a figure's why as sentences. */
export function sayWhy(why: Why, document: Document, messages: Messages): SaidWhy {
  const { absent, ...rest } = why;
  const place = (key: string): Place => why.inputs.find((i) => i.key === key)?.where ?? { path: [] };
  const unit = (key: string): string => why.inputs.find((i) => i.key === key)?.unit ?? '';
  return {
    ...rest, says: messages.methods?.[why.method] ?? ENGLISH.methods![why.method] ?? why.method, model: MODELS[why.method] ?? null,
    inputs: why.inputs.map((i) => ({ ...i, words: inputWords(i, document, messages) })),
    narrow: why.narrow.map((x) => ({ ...x, words: inputWords({ key: x.key, where: place(x.key) }, document, messages), do: doOf(x.key, unit(x.key), messages) })),
    ...(absent ? { absent: { ...absent, message: fill(messages.absent?.[absent.code] ?? ENGLISH.absent![absent.code] ?? absent.code, { things: absent.things.join(', '), ...(absent.share === undefined ? {} : { share: absent.share * 100 }) }, messages) } } : {}),
  };
}

/** What somebody can do to know an input better. */
function doOf(key: string, unit: string, messages: Messages): string {
  const said = (messages.inputs ?? ENGLISH.inputs!).do, bare = key.replace(/#\d+$/, '');
  return (matched(said, `${bare}|${unit}`, true) ?? matched(said, bare))?.sentence ?? '';
}

const plain = (text: string): string => text.replace(/[-_/]+/g, ' ');
const partsOf = (parts: readonly string[]): Record<string, string> => Object.fromEntries(parts.map((part, i) => [String(i + 1), part.replace(/(\p{L})[-/](?=\p{L})/gu, '$1 ')]));

function actionsAt(document: Document, where: Place) {
  const path = where.path.join('/');
  return document.sections.flatMap((s) => s.lines.flatMap((l) => l.actions)).filter((a) => path !== '' && a.path.join('/') === path);
}

/** The thing a place in the text speaks of, as it is called there. */
function thingAt(document: Document, where: Place): string | undefined {
  for (const a of actionsAt(document, where)) {
    const measure = a.kind === 'measure' ? a : a.kind === 'fill' || a.kind === 'step' ? a.measure : undefined;
    if (measure) return measure.thing.words;
  }
  return undefined;
}

/** The words of a place in the text. */
function lineAt(document: Document, where: Place): string | undefined {
  return where.span && where.line !== undefined ? document.text.slice(where.span.from, where.span.to).trim().replace(/\s+/g, ' ') : undefined;
}
