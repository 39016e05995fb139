import type { Path } from '../document/types.ts';
import type { BuildResult } from '../program/build.ts';
import type { Context } from '../program/context.ts';
import { reached } from './reached.ts';
import type { Allergen } from './types.ts';

interface Declared { readonly allergens: Allergen[]; readonly vegan: boolean; readonly vegetarian: boolean; readonly lines: { path: Path; vegan: 'no' | 'check'; vegetarian: 'yes' | 'no' | 'check' }[] }

/** Words that give an allergen away to whoever reads the line. */
const PLAIN: Readonly<Record<string, RegExp>> = {
  milk: /milk|cream|butter|yog|cheese|whey|ghee/i, egg: /egg/i, nuts: /almond|hazel|walnut|cashew|pecan|pistachio|macadamia|nut|orgeat/i, peanut: /peanut/i, soy: /soy/i,
  gluten: /wheat|barley|rye|oat|beer|malt/i, fish: /fish|isinglass/i, sesame: /sesame|tahini/i, celery: /celery/i, mustard: /mustard/i, sulphites: /sulphite|sulfite|wine/i, mollusc: /oyster|clam/i, crustacean: /shrimp|prawn|crab/i, lupin: /lupin/i,
};

/**
 * Allergens and diet of everything that goes into the drink, through every prep: what was washed with milk is still milk for an allergy.
 * Hidden: inside a prep that the build names without the word. A prep nobody pours from declares nothing.
 * @source eu-1169-2011-annex2 groups
 */
export function diet(ctx: Context, build: BuildResult | null): Declared {
  const allergens: Allergen[] = [], lines: Declared['lines'] = [];
  let unknown = false;                                                     // of what is not known nothing is promised
  for (const { put: { measure: { path, thing }, source }, within } of reached(ctx, build)) {
    const row = source.ingredient;
    if (!row) { if (!source.known) lines.push({ path, vegan: 'check', vegetarian: 'check' }); unknown ||= !source.known; continue; }
    for (const a of row.allergens) {
      if (allergens.some((b) => b.group === a.group && b.from.join('/') === path.join('/'))) continue;
      allergens.push({ group: a.group, from: path, certain: a.certain, hidden: !(PLAIN[a.group] ?? /$^/).test(within ?? thing.words) });
    }
    if (row.vegan !== 'yes') lines.push({ path, vegan: row.vegan, vegetarian: row.vegetarian });
  }
  return { allergens, vegan: !unknown && !lines.some((l) => l.vegan === 'no'), vegetarian: !unknown && !lines.some((l) => l.vegetarian === 'no'), lines };
}
