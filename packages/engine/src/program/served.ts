import type { Put } from './context.ts';

/** Kinds of drinks a glass is chosen by, as `drinkKind` tells them apart. @source none - definition */
export const drinkKinds = ['hot', 'mule or julep', 'tropical', 'spritz', 'collins', 'highball', 'sour on ice', 'rocks', 'sparkling', 'up, sour', 'up, spirit-forward', 'freezer martini type', 'neat', 'not said'] as const;

/** What a build does, as far as the choice of a glass hangs on it. */
export interface Served {
  readonly strained: boolean; readonly shaken: boolean; readonly iced: boolean; readonly hot: boolean;
  /** kind of the ice in the glass */
  readonly ice: string | null;
  /** what it is topped up with */
  readonly top: readonly Put[];
  readonly puts: readonly Put[];
}

const sparkles = (p: Put): boolean => /sparkling|champagne|prosecco|cava|cremant/.test(p.source.ingredient?.id ?? '');
const sour = (p: Put): boolean => p.source.ingredient?.category === 'juice-citrus' || p.source.ingredient?.category === 'acid';
const gingery = (p: Put): boolean => /ginger-(beer|ale)/.test(p.source.ingredient?.id ?? '');

/**
 * Which row `glass/…` of the assumptions a drink falls under, by what is done to it and how it is served.
 * @source common-practice
 */
export function drinkKind(d: Served): (typeof drinkKinds)[number] {
  if (d.hot) return 'hot';
  if (d.ice !== null) {
    if (d.top.some(gingery)) return 'mule or julep';
    if (d.ice === 'crushed' || d.ice === 'pebble' || d.ice === 'shaved') return d.shaken || d.strained ? 'tropical' : 'mule or julep';
    if (d.top.some(sparkles)) return 'spritz';
    if (d.top.length > 0) return d.puts.some(sour) ? 'collins' : 'highball';
    return d.strained && d.puts.some(sour) ? 'sour on ice' : 'rocks';
  }
  if (d.top.some(sparkles)) return 'sparkling';
  if (d.strained) return d.shaken ? 'up, sour' : d.iced ? 'up, spirit-forward' : 'freezer martini type';
  if (d.top.length > 0 || d.puts.length === 0) return 'not said';
  return d.puts.length === 1 ? 'neat' : 'not said';
}
