import table from '../../../../data/sources.tsv?raw';

/** Titles by source key, from the project's own list. */
export const titles: ReadonlyMap<string, string> = new Map(table.split('\n').slice(1).flatMap((row) => {
  const [key, title, author, year] = row.split('\t');
  return key === undefined || key === '' || title === undefined ? [] : [[key, [author, title, year].filter((t) => t !== undefined && t !== '' && t !== '-').join(', ')] as const];
}));
