import { sentenceIn, type Said } from '@washline/drawing';
import type { Read } from '../read.ts';
import { firstSentence } from '../sheet/sentences.ts';

/** What was found, as a drawing says it at its parts. */
export const saidOf = (findings: Read['findings']): Said[] => findings.map((f) => ({ severity: f.severity, ...firstSentence(sentenceIn(f.message)), path: f.where.path }));
