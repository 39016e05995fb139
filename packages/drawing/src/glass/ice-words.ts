import type { GlassIce } from '@washline/engine';
import { words } from '../words.ts';

/** "clear ice", "7 cubes", "crushed ice". */
export function iceWords(ice: GlassIce): string {
  if (ice.kind === 'crushed' || ice.kind === 'pebble' || ice.kind === 'shaved' || ice.kind === 'cracked') return words(`ice.${ice.kind}`, {});
  const count = Math.round(ice.count);
  if (count > 1) return words('ice.many', { count, clear: ice.clear ? `${words('ice.clear-word', {})} ` : '' });
  return ice.clear ? words('ice.clear', {}) : words('ice.one', {});
}
