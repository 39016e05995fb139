import type { Action, Document, Path, Problem } from '@washline/engine';
import { rows } from '../text/rows.ts';
import { parse } from './parse.ts';
import { printAction } from './print.ts';

/** One physical line of the JSON form. `text` and `eol` are what is written back; the other fields are for reading. */
export interface JsonLine { readonly text?: string; readonly eol?: '' | '\n' | '\r\n'; readonly path?: Path; readonly kind?: string; readonly actions?: readonly Action[] }
export interface JsonDocument {
  readonly washline: 1;
  readonly name?: string;
  readonly bom?: boolean;
  readonly serves?: number;
  readonly variants?: readonly string[];
  readonly sections?: readonly { readonly kind: string; readonly name: string; readonly variant: string | null; readonly method: string }[];
  readonly lines: readonly JsonLine[];
  readonly problems?: readonly Problem[];
}

/** The JSON form of a document: lossless, every line as it stood and as it was read. */
export function toJson(document: Document): JsonDocument {
  const read = new Map<number, { path: Path; kind: string; actions: readonly Action[] }>();
  for (const section of document.sections) for (const line of section.lines) read.set(line.line, { path: line.path, kind: line.kind, actions: line.actions });
  return {
    washline: 1, name: document.name, ...(document.text.charCodeAt(0) === 0xfeff ? { bom: true } : {}), serves: document.serves, variants: document.variants,
    sections: document.sections.map(({ kind, name, variant, method }) => ({ kind, name, variant, method })),
    lines: rows(document.text).map((row, at) => ({ text: row.text, eol: row.eol, ...read.get(at + 1) })),
    problems: document.problems,
  };
}

/** The text of a JSON form: lines as they stood; a line without `text` is printed from its actions. */
export function textOfJson(json: JsonDocument): string {
  const eol = json.lines.find((line) => line.eol === '\n' || line.eol === '\r\n')?.eol ?? '\n';
  const last = json.lines.length - 1;
  return (json.bom === true ? '\ufeff' : '') + json.lines.map((line, at) => (line.text ?? (line.actions ?? []).map(printAction).join('; ')) + (line.eol ?? (at === last ? '' : eol))).join('');
}

/** The document of a JSON form. */
export const fromJson = (json: JsonDocument): Document => parse(textOfJson(json));
