/** What stands in the tables behind a reading: titles of sources and the reasons of rows. */
export interface Evidence {
  /** author, year, title and place of a source; undefined for a key that is none */
  readonly cite: (source: string) => string | undefined;
  /** the title alone */
  readonly title: (source: string) => string | undefined;
  /** the sentence that says why a row is as wide as it is: `spreads label/strength/spirits` */
  readonly because: (row: string) => string | undefined;
}

/** The texts of `data/sources.tsv`, `spreads.tsv` and `assumptions.tsv`, taken apart when first asked. */
export function evidence(texts: { readonly sources: string; readonly spreads: string; readonly assumptions: string }): Evidence {
  const sheets = new Map<keyof typeof texts, ReadonlyMap<string, Readonly<Record<string, string>>>>();
  const row = (sheet: keyof typeof texts, key: string): Readonly<Record<string, string>> | undefined => {
    let rows = sheets.get(sheet);
    if (!rows) { rows = rowsOf(texts[sheet]); sheets.set(sheet, rows); }
    return rows.get(key);
  };
  const said = (text: string | undefined): text is string => text !== undefined && text !== '' && text !== '-';
  return {
    title: (source) => row('sources', source)?.['title'],
    cite: (source) => {
      const r = row('sources', source);
      if (!r) return undefined;
      const who = [r['author'], r['year']].filter(said).join(', '), what = [r['title'], r['where']].filter(said).join('; ');
      return who === '' ? what : `${who}: ${what}`;
    },
    because: (name) => {
      const [, sheet = '', key = ''] = /^(spreads|assumptions) (.+)$/.exec(name) ?? [];
      const why = sheet === '' ? undefined : row(sheet as 'spreads' | 'assumptions', key)?.['why'];
      return said(why) ? why : undefined;
    },
  };
}

function rowsOf(text: string): ReadonlyMap<string, Readonly<Record<string, string>>> {
  const [head = '', ...lines] = text.split('\n');
  const columns = head.split('\t');
  return new Map(lines.map((line) => { const cells = line.split('\t'); return [cells[0] ?? '', Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? '']))] as const; }));
}

const SHEETS: Readonly<Record<string, string>> = { spreads: 'data/spreads.tsv', assumptions: 'data/assumptions.tsv', units: 'data/units.tsv', ingredients: 'data/larder/ingredients.tsv', craft: 'data/larder/craft.tsv' };

/** The file a row stands in and its name there: `spreads time/shake` is `time/shake` of `data/spreads.tsv`; null for what stands in the text itself. */
export function placeOfRow(row: string): { readonly file: string; readonly row: string } | null {
  const at = row.indexOf(' '), sheet = at < 0 ? row : row.slice(0, at), name = at < 0 ? '' : row.slice(at + 1);
  if (sheet in SHEETS) return { file: SHEETS[sheet]!, row: name };
  return sheet.includes('/') ? { file: `data/${sheet}`, row: name } : null;
}
