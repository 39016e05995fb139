import type { Document } from '@washline/engine';
import { letterOf, sectionsOf } from '@washline/drawing';

/** A line of the text as the sheet sets it. */
export interface Row {
  readonly text: string;
  readonly kind: 'name' | 'blank' | 'key' | 'heading' | 'note' | 'line';
  /** of a heading: what is set heavier, and the letter it has on the drawing */
  readonly strong: string;
  readonly letter: string;
}

/** Lines of a text, each with what it is; line ends stay out. A line that is what it was in its place (`before`) is the same row, so that nothing is set anew. */
export function rowsOf(text: string, document: Document, variant: string | null, before: readonly Row[] = []): Row[] {
  const heads = new Map<number, string>();
  const sections = sectionsOf(document, variant);
  const preps = sections.filter((s) => s.kind === 'prep');
  for (const [i, s] of preps.entries()) if (s.headingLine !== null) heads.set(s.headingLine, letterOf(i));
  for (const s of sections) if (s.kind === 'build' && s.headingLine !== null) heads.set(s.headingLine, letterOf(preps.length));
  for (const s of document.sections) if (s.headingLine !== null && !heads.has(s.headingLine)) heads.set(s.headingLine, '');
  const keys = new Set(Object.values(document.head).map((h) => h?.line));
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  let first = true;
  return lines.map((line, i) => {
    const number = i + 1, letter = heads.get(number);
    const row = (kind: Row['kind'], strong = ''): Row => {
      const was = before[i];
      return was?.text === line && was.kind === kind && was.strong === strong && was.letter === (letter ?? '') ? was : { text: line, kind, strong, letter: letter ?? '' };
    };
    if (line.trim() === '') return row('blank');
    if (first && document.name !== '' && letter === undefined) { first = false; return row('name'); }
    first = false;
    if (letter !== undefined) return row('heading', /^(?:[^/(]*\/\s*)?([^(:]*)/.exec(line)?.[1]?.trimEnd() ?? '');
    if (keys.has(number)) return row('key');
    return row(/^\s*(#|notes?\b\s*:)/i.test(line) ? 'note' : 'line');
  });
}
