import { readFileSync } from 'node:fs';
import { evidence, type Evidence } from '@washline/spec';
import { ROOT } from './root.ts';

let loaded: Evidence | undefined;

/** Titles of sources and reasons of rows, from the project's own tables; read when first wanted. */
export function tablesBehind(): Evidence {
  const text = (name: string): string => readFileSync(new URL(`data/${name}.tsv`, ROOT), 'utf8');
  return (loaded ??= evidence({ sources: text('sources'), spreads: text('spreads'), assumptions: text('assumptions') }));
}
