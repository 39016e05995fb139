import type { Document, Section } from '@washline/engine';
import { sectionsOf } from '@washline/drawing';

/** The section of a prep, by its key, as it holds for a variant; of the build for an empty key. */
export function sectionOf(document: Document, variant: string | null, prep: string): Section | undefined {
  return sectionsOf(document, variant).find((s) => (prep === '' ? s.kind === 'build' : s.kind === 'prep' && s.key === prep));
}
