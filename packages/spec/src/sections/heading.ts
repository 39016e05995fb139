import { fold } from '../names/fold.ts';
import { words } from '../vocabulary/vocabulary.ts';
import { methodOf, nearestMethod } from './methods.ts';

/** What a line that may be a heading says; offsets are of the line. */
export interface Heading {
  readonly kind: 'build' | 'prep' | 'shelf' | 'accept' | 'same';
  readonly name: string;
  readonly method: string;
  readonly methodWritten: boolean;
  /** words before the first " / " */
  readonly variant: string | null;
  /** name with the variant's words left on, where it turns out to be none */
  readonly whole: string;
  readonly unknownMethod: { readonly text: string; readonly at: number; readonly nearest: string } | null;
}

const sections = words('section');
const KEYS = new Set(['about', 'glass', 'source', 'serves', 'measures', 'one-part', 'language', 'note']);
const STEP_END = /(?:^|[\s,;])(?:add|pour|pour\s+in|pour\s+over|put\s+in|zugeben|hinzugeben|hinzufügen|dazugeben|geben|eingießen|hineingießen)$/i;
const ALONE = new Set(['garnish', 'garnishes', 'top', 'deko', 'dekoration', 'garnitur', 'auffullen']);

/** Which key or note word a line begins with before its colon; null where it begins with none. */
export function keyOf(text: string): { readonly key: string; readonly word: string; readonly value: string; readonly valueFrom: number } | null {
  const colon = text.indexOf(':');
  if (colon <= 0 || colon > 24) return null;
  const word = text.slice(0, colon).trim();
  const folded = fold(word);
  const key = folded === 'language' || folded === 'sprache' ? 'language' : sections.get(folded)?.key;
  if (key === undefined || !KEYS.has(key)) return null;
  let at = colon + 1;
  while (/[\s]/.test(text.charAt(at))) at++;
  return { key, word, value: text.slice(at).trimEnd(), valueFrom: at };
}

/** A note: "#…", a note word with a colon, or bare "note" and a blank. */
export function isNote(text: string): boolean {
  if (text.startsWith('#')) return true;
  if (/^note\s/i.test(text)) return true;
  return keyOf(text)?.key === 'note';
}

const sectionOf = (text: string): 'build' | 'shelf' | 'accept' | 'same' | undefined => {
  const key = sections.get(fold(text))?.key;
  return key === 'build' || key === 'shelf' || key === 'accept' || key === 'same' ? key : undefined;
};

/** The bracket at the end of a name: from its opening to its closing, matched once from the right. */
function lastBracket(text: string): { readonly open: number; readonly inner: string } | null {
  if (!text.endsWith(')')) return null;
  let depth = 0;
  for (let i = text.length - 1; i >= 0; i--) {
    const c = text.charCodeAt(i);
    if (c === 41) depth++;
    else if (c === 40 && --depth === 0) return { open: i, inner: text.slice(i + 1, -1).trim() };
  }
  return null;
}

/**
 * Reads a trimmed line as a heading; null where it is none.
 * In `Shelf:` and `Accept:` (`strict`) only section words, "for the …", variants and names with a METHOD are headings.
 */
export function headingOf(line: string, strict: boolean): Heading | null {
  if (!line.endsWith(':') || line.length < 2) return null;
  const body = line.slice(0, -1).trimEnd();
  if (body === '' || body.endsWith(':')) return null;
  const slash = body.search(/\s\/\s/);
  const variant = slash > 0 ? body.slice(0, slash).trim() : null;
  const rest = slash > 0 ? body.slice(slash).replace(/^\s\/\s+/, '') : body;
  const word = sectionOf(rest);
  const bracket = lastBracket(rest);
  const method = bracket === null || bracket.open === 0 ? undefined : methodOf(bracket.inner);
  if (method === undefined && word !== undefined) {
    return { kind: word, name: '', method: 'mix', methodWritten: false, variant, whole: body, unknownMethod: null };
  }
  const numbered = bracket !== null && /\d/.test(bracket.inner);
  if (method === undefined) {
    if (keyOf(line) !== null && slash < 0 && line.indexOf(':') === line.length - 1) return null;
    if (slash < 0 && (/^[\d½⅓⅔¼¾⅛⅜⅝⅞.]/.test(body) && !/^\d+\s*[/]\s*\d+\s+\p{L}/u.test(body) || STEP_END.test(body) || ALONE.has(fold(body)))) return null;
  }
  const forThe = /^(?:for\s+the|for|to\s+make(?:\s+the)?|für\s+(?:den|die|das)|für)\s+/i.exec(rest);
  if (strict && method === undefined && forThe === null && variant === null && !(bracket !== null && bracket.open > 0 && !numbered)) return null;
  const unknown = method === undefined && bracket !== null && bracket.open > 0 && !numbered;
  let name = method !== undefined || unknown ? rest.slice(0, bracket?.open ?? 0).trim() : rest.trim();
  if (forThe !== null) { const cut = name.slice(forThe[0].length).trim(); if (cut !== '') name = cut; }
  if (forThe !== null && method === undefined) { const inner = sectionOf(name); if (inner === 'build') return { kind: 'build', name: '', method: 'mix', methodWritten: false, variant, whole: body, unknownMethod: null }; }
  return {
    kind: 'prep', name, method: method ?? 'mix', methodWritten: method !== undefined, variant,
    whole: method !== undefined || unknown ? body.slice(0, body.length - rest.length + (bracket?.open ?? 0)).trim() : body,
    unknownMethod: unknown ? { text: bracket?.inner ?? '', at: body.length - rest.length + (bracket?.open ?? 0) + 1, nearest: nearestMethod(bracket?.inner ?? '') } : null,
  };
}
