import type { Document } from '@washline/engine';
import { fold } from '../names/fold.ts';
import { edits } from '../names/nearest.ts';
import { words } from '../vocabulary/vocabulary.ts';

const glasses = words('glass');

/** What `glass:` was understood as: a key of group `glass`, or a brim volume in mL. */
export function glassOf(value: string): Document['glass'] {
  const size = SIZE.exec(value);
  const cold = /\b(frozen|gefroren\w*)\b/i.test(value) ? { cold: 'frozen' as const } : /\b(chilled|cold|iced|(?:vor)?gekühlt\w*)\b/i.test(value) ? { cold: 'chilled' as const } : {};
  const brim = size === null ? cold : { ...cold, brim_mL: Number((size[1] ?? '0').replace(',', '.')) * (ML[(size[2] ?? 'ml').toLowerCase()] ?? 1) };
  const plain = value.replace(/\([^()]*\)/g, ' ').replace(SIZE, ' ').replace(/^[\s,]+/, '').replace(/,.*$/, '').trim();
  const said = plain.split(/\s+/).map(fold).filter((word) => word !== '' && !/^(a|an|the|of|chilled|frozen|cold|large|small|gekuhltes?|ein|one)$/.test(word));
  const bare = said.filter((word) => word !== 'glass' && word !== 'glas');
  for (const list of [said, bare]) {
    // "rocks" is the rocks glass: the word glass may be left out
    const found = glasses.get(list.join('')) ?? (list.length > 0 ? glasses.get(`${list.join('')}glass`) : undefined);
    if (found !== undefined) return { key: found.key, ...brim };
  }
  for (let n = bare.length; n >= 1; n--) { const found = glasses.get(bare.slice(bare.length - n).join('')); if (found !== undefined) return { key: found.key, ...brim }; }
  return size === null ? undefined : (brim as { readonly brim_mL: number });
}
const SIZE = /(\d+(?:[.,]\d+)?)\s*(ml|cl|dl|l|oz)\b/i;
const ML: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000, oz: 29.5735295625 };
export function nearestGlass(value: string): string {
  const folded = fold(value);
  let best = 'coupe', least = Infinity;
  for (const [key, row] of glasses) { if (row.language !== 'en') continue; const distance = edits(folded, key, 20); if (distance < least) { least = distance; best = row.written; } }
  return best;
}
