import { parse } from '../document/parse.ts';
import { lines, type LineReading } from '../lines/lines.ts';
import { fold } from '../names/fold.ts';
import { headingOf, keyOf } from '../sections/heading.ts';
import { givenOf } from '../sections/given.ts';
import { words } from '../vocabulary/vocabulary.ts';
import { leadOver, measuresOf, sentencesOf } from './sentences.ts';

/** Where a text is pasted: in place of a whole spec, or among the lines of one. */
export interface FreeOptions { readonly whole?: boolean }

const MARK = /^(?:[-–—•*·▪◦‣☐☑✓✔+>]|\p{So})\s*(?=\S)/u, NUMBERED = /^(?:(?:step|schritt)\s*)?(\d{1,2})\s*[.):]\s+(?=\S)/i;
const SERVES = /^(?:serves|makes|yields?|servings|ergibt|reicht für|portionen|für)\s*:?\s*(?:about |ca\.? |etwa )?(\d{1,3}|one|two|an?|eine?n?|zwei)(?:\s+(?:drinks?|cocktails?|people|persons?|servings?|glass(?:es)?|portion(?:en)?|person(?:en)?|gl(?:as|äser)|stück))?\.?$/i;
const COUNT: Readonly<Record<string, string>> = { one: '1', a: '1', an: '1', ein: '1', eine: '1', einen: '1', two: '2', zwei: '2' };
/** What a page says of a recipe and no drink has in it: it stays as a note. */
const ASIDE = /^(?:(?:prep(?:aration)?|total|active|cook(?:ing)?) ?time|time|difficulty|level|author|by|category|cuisine|course|rating|zubereitungszeit|arbeitszeit|gesamtzeit|dauer|zeit|schwierigkeit(?:sgrad)?|autor|kategorie)\s*:\s*\S/i;
const LINK = /^(?:https?:\/\/|www\.)\S+$/i;

const sections = words('section');
/** "Ingredients", "Zubereitung": a word that only goes on. */
const isSame = (text: string): boolean => sections.get(fold(text.replace(/:$/, '')))?.key === 'same';
const readOf = (text: string): LineReading | undefined => lines(text)[0];
const understood = (text: string): boolean => { const read = readOf(text); return read !== undefined && read.kind !== 'unread'; };

/**
 * A recipe as anybody writes it - a title, bullets, numbers, "Ingredients:" and "Method:", sentences of several steps, English or German - as the text of a spec.
 * What is not understood stays as a line of its own, where reading the spec finds the problem.
 *
 * @param text what was pasted
 * @param options `whole` (true where nothing is said): it becomes a whole spec; else lines of one, its title a heading
 * @returns the spec; null for a text that is a spec already, is no recipe, or would not change
 * @source none - definition
 */
export function fromFree(text: string, options: FreeOptions = {}): string | null {
  if (text.length > 20_000 || text.trim() === '') return null;
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n').replace(/[\u00a0\u2000-\u200a\u202f]/g, ' ').replace(/[\u200b-\u200d\u2060]/g, '');
  const raw = plain.split('\n').map((line) => line.trim());
  if (raw.some((line) => { const heading = headingOf(line, false); return heading !== null && (heading.methodWritten || heading.kind === 'build' || heading.kind === 'shelf' || heading.kind === 'accept') && !isSame(line) && /^(?:build|aufbau|shelf|regal|accept|angenommen)\b|\(/i.test(line); })) return null;
  const made = convert(raw, options.whole ?? true);
  if (made === null || made.text.trim() === plain.trim()) return null;
  // a spec that only has bullets is one already
  return !made.parted && parse(text).problems.length === 0 ? null : made.text;
}

interface Made { readonly text: string; readonly parted: boolean }

function convert(raw: readonly string[], whole: boolean): Made | null {
  const marked = raw.some((line) => /^#{2,6}\s/.test(line)) || raw.some((line) => /^\*\*.+\*\*$/.test(line));
  const head = new Map<string, string>(), body: string[] = [], about: string[] = [];
  let name: string | null = null, begun = false, read = 0, parted = false;
  const put = (key: string, value: string): void => { parted = true; if (head.has(key)) body.push(`# ${key}: ${value}`); else head.set(key, value); };
  const add = (line: string): void => { if (understood(line)) read += 1; body.push(line); };
  for (const [at, whole_] of raw.entries()) {
    if (whole_ === '') { if (begun && body.at(-1) !== '') body.push(''); continue; }
    const bare = marked ? whole_.replace(/^#{1,6}\s+/, '').replace(/(\*\*|__)(.+?)\1/g, '$2') : whole_;
    if (bare.startsWith('#')) { body.push(bare); continue; }
    const { line, listed } = unlisted(raw, at, bare);
    const opened = /^([\p{L} ]{3,24}):\s+(?=\S)/u.exec(line), goesOn = opened !== null && isSame(opened[1] ?? '');
    if (name === null && !begun && !listed && !goesOn && isTitle(line, whole)) { name = line.replace(/:$/, ''); continue; }
    if (isSame(line)) { parted = true; begun = true; continue; }
    const content = opened !== null && goesOn ? line.slice(opened[0].length) : line;
    if (content !== line) { parted = true; begun = true; }
    const serves = SERVES.exec(content);
    if (serves !== null) { put('serves', COUNT[(serves[1] ?? '').toLowerCase()] ?? serves[1] ?? '1'); continue; }
    if (LINK.test(content)) { put('source', content); continue; }
    if (ASIDE.test(content)) { parted = true; body.push(`# ${content}`); continue; }
    const key = keyOf(content);
    if (key !== null && key.key !== 'note' && key.value !== '') { put(key.word.toLowerCase() === 'from' || key.word.toLowerCase() === 'by' ? 'source' : key.word.toLowerCase(), key.value); if (!begun) parted = parted && head.size > 1; continue; }
    if (givenOf(content) !== null && !begun) { head.set(content.slice(0, content.indexOf(':')).trim(), content.slice(content.indexOf(':') + 1).trim()); continue; }
    if (headingOf(content, false) !== null) { begun = true; body.push(content); continue; }
    const pieces = piecesOf(content);
    if (pieces.length > 1 || pieces[0] !== content) parted = true;
    // words before the first thing that is understood say what the drink is
    if (!begun && !listed && !pieces.some(understood)) { about.push(content); continue; }
    begun = true;
    for (const piece of pieces) add(piece);
  }
  if (read < 2) return null;
  if (about.length > 0) { parted = true; if (whole && !head.has('about') && about.join(' ').length < 480) head.set('about', about.join(' ')); else body.unshift(...about.map((line) => `# ${line}`)); }
  while (body.at(-1) === '') body.pop();
  while (body[0] === '') body.shift();
  const keys = [...head].map(([key, value]) => `${key}: ${value}`);
  if (whole) return { text: `${[...(name === null ? [] : [name]), ...keys, ...(name === null && keys.length === 0 ? [] : ['']), ...body].join('\n')}\n`, parted };
  return { text: `${[...(name === null ? [] : ['', `${name}:`]), ...keys.map((line) => `# ${line}`), ...body].join('\n')}\n`, parted: true };
}

/** A first line that is no line of a drink: a name. A few words that read as a step may be the name of a whole spec, those of a thing without an amount that of any. */
function isTitle(line: string, whole: boolean): boolean {
  if (isSame(line) || SERVES.test(line) || LINK.test(line) || keyOf(line) !== null || givenOf(line) !== null || line.length > 80 || measuresOf(line).length > 1) return false;
  const read = readOf(line);
  return read === undefined || read.kind === 'unread' || ((whole || (read.kind === 'measure' && read.low === null)) && !/\d|[½⅓⅔¼¾⅛]/.test(line) && !/[.!]$/.test(line) && line.split(/\s+/).length < 5 && read.kind !== 'garnish');
}

/** A line without its bullet or its number, where the number counts on or stands before a word. */
function unlisted(raw: readonly string[], at: number, bare: string): { readonly line: string; readonly listed: boolean } {
  const numbered = NUMBERED.exec(bare);
  if (numbered !== null) {
    const own = Number(numbered[1]), near = raw.slice(Math.max(0, at - 2), at + 3).some((line) => { const other = NUMBERED.exec(line); return other !== null && Math.abs(Number(other[1]) - own) === 1; });
    if (near || /^\p{L}/u.test(bare.slice(numbered[0].length))) return { line: bare.slice(numbered[0].length), listed: true };
  }
  const mark = MARK.exec(bare);
  return mark === null || /^[-–—+]\d/.test(bare) ? { line: bare, listed: false } : { line: bare.slice(mark[0].length).replace(MARK, ''), listed: true };
}

/** A written line as lines of a spec: one for each sentence, one for each measure; what only leads over is a note. */
function piecesOf(line: string): string[] {
  const out: string[] = [];
  for (const sentence of sentencesOf(line)) {
    const lead = leadOver(sentence);
    if (lead !== null) { out.push(`# ${lead.lead}`, ...(lead.rest === '' ? [] : piecesOf(lead.rest))); continue; }
    out.push(...measuresOf(sentence));
  }
  return out;
}
