import type { Measured } from '../names/lookup.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt } from '../phrase/thing.ts';
import { unitForms } from '../vocabulary/units.ts';

const COUNTED = new Set(['piece', 'leaf', 'sheet', 'sprig', 'slice', 'wedge', 'cube', 'charger', 'pod', 'stick', 'strip', 'fruit', 'head', 'block', 'sphere', 'knob', 'handful', 'bunch', 'dozen', 'bag', 'packet', 'cm', 'inch', 'scoop']);
const WEIGHED = new Set(['g', 'kg', 'mg', 'lb', 'oz-weight', 'grain', 'pfund', 'pinch', 'messerspitze']);

/** How a thing is measured by a unit, which settles names with two meanings. */
export function measuredBy(unit: string | null): Measured {
  if (unit === null) return 'count';
  if (COUNTED.has(unit)) return 'count';
  return WEIGHED.has(unit) ? 'weight' : 'volume';
}

/** A known thing stands at i. */
export function isNamed(p: Phrase, i: number, end: number): boolean {
  const found = thingAt(p, i, end, null);
  return found !== undefined && found.thing.link.kind !== 'unknown';
}

/** The units that stand behind the noun ("lime wedges", "mint leaves"); all others stay in the name. */
const BEHIND = new Set(['leaf', 'sheet', 'sprig', 'slice', 'wedge', 'cube', 'charger']);
const NOT_BEHIND = /^(wheel|wheels|quarters|eighths|round|rounds|ring|rings|tops|segment|segments|spear|dice|bouquet|leave|rad|rader|ecke|achtel|viertel|half.*)$/;
export function trailingUnit(word: string): string | undefined {
  if (NOT_BEHIND.test(word)) return undefined;
  return unitForms(word)?.find((form) => BEHIND.has(form.unit) && form.of === 'piece')?.unit;
}
