import type { Reading as Whole } from '@washline/engine';

/** What is drawn of a reading; its findings come with their sentences by another way. */
export type Reading = Omit<Whole, 'findings' | 'accepted'>;
