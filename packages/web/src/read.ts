import type { Document } from '@washline/engine';
import { readText, type Answer } from '@washline/spec';
import { tables } from '@washline/tables';

export type Reading = Answer['reading'];
export type Told = Reading['findings'][number];
export type Trouble = Answer['problems'][number];
export interface Read { readonly reading: Reading; readonly document: Document; readonly findings: readonly Told[]; readonly problems: readonly Trouble[] }

/** A text read in this browser: the same engine and tables as the command line. `why` names one figure of the drink to be taken apart. */
export function read(text: string, why?: string): Read {
  const { reading, problems, document } = readText(text, why === undefined ? { tables } : { tables, why });
  return { reading, document, findings: reading.findings, problems };
}
