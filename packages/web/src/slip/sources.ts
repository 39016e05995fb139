import { evidence } from '@washline/spec';
import assumptions from '../../../../data/assumptions.tsv?raw';
import sources from '../../../../data/sources.tsv?raw';
import spreads from '../../../../data/spreads.tsv?raw';

export { placeOfRow } from '@washline/spec';
/** Titles of sources and reasons of rows, from the project's own tables. */
export const tables = evidence({ sources, spreads, assumptions });
