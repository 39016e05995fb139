import type { Fill } from '@washline/engine';
import { rangeAt } from '../phrase/amount.ts';
import { iceAt } from '../phrase/ice.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { ownFrom } from '../phrase/thing.ts';
import { brim, vesselAt } from './fill.ts';
import { EMPTY, type Label } from './label.ts';
import { tryMeasure } from './measure.ts';

interface Put { readonly actions: readonly Fill[]; readonly label: Label }

/** "half full of fine ice", "fine ice in a mixing glass": the vessel holds ice before anything else does. */
export function bareIce(p: Phrase, i: number, end: number): Put | undefined {
  const share = rangeAt(p, i, end);
  const full = share === undefined ? i : p.isHyphen(share.end) ? share.end + 1 : share.end;
  if (share !== undefined && share.fraction && p.word(full) === 'full') { const read = brim(p, i, 'fill', { share, thing: p.word(full + 1) === 'of' ? full + 2 : full + 1, glass: i }, end); return read === undefined ? undefined : { actions: [read.fill], label: read.label }; }
  const found = share === undefined ? iceAt(p, i, end) : undefined;
  if (found === undefined || !/^(in(to)?|to)$/.test(p.word(found.end)) || !/\b(ice|ice cubes|eis|eiswürfel)$/.test(found.words)) return undefined;
  const vessel = vesselAt(p, found.end + 1, end);
  return vessel === end ? { actions: [{ kind: 'fill', path: p.path, span: p.span(i, end), verb: 'fill', measure: null, ice: found.ice }], label: { ...EMPTY, kind: 'fill', ingredient: found.words } } : undefined;
}
/** Ice as a measure ("200 g cubes", "1 clear cube 50 mm") is ice put in where it stands. */
export function wholeIce(p: Phrase, i: number, end: number): Put | undefined {
  if (!/\b(?:ice|cubes?|spheres?|blocks?|spears?|eis\p{L}*|\p{L}*eis|\p{L}*würfeln?|kugeln?)(?!\p{L})/iu.test(p.slice(i, end)) || thingOwn(p, i, end)) return undefined;
  const used = p.used.slice();
  const found = iceAt(p, i, end);
  if (found === undefined || (found.ice.mass === undefined && found.ice.count === undefined && (found.end < end || !/ice|eis/.test(found.words)))) { p.used.set(used); return undefined; }
  if (found.end < end && !p.isMark(found.end, '(') && !p.isMark(found.end, ',') && !/^(in|into|off|for)$/.test(p.word(found.end))) { p.used.set(used); return undefined; }
  const read = tryMeasure(p, i, end);
  if (read?.measures[0]?.thing.link.kind !== 'larder' && !/cube|sphere|block|spear|ice|eis|würfel|kugel/.test(found.words)) { p.used.set(used); return undefined; }
  const plain = found.ice.mass === undefined && /^(?:(?:large|big|clear) )*cubes?$/.test(found.words);
  const label: Label = !plain && read !== undefined && read.measures[0]?.thing.link.kind === 'larder' ? read.label : { ...EMPTY, kind: 'measure', low: found.ice.mass?.low ?? found.ice.count ?? null, high: found.ice.mass?.high ?? found.ice.count ?? null, unit: found.unit, ingredient: found.ice.mass === undefined && /würfel/.test(found.words) ? 'eis' : found.ice.mass === undefined ? `${found.words.replace(/\s*\b(?:cubes?)$/, '').replace(/\s*\bice$/, '')} ice`.trim() : found.words };
  return { actions: [{ kind: 'fill', path: p.path, span: p.span(i, end), verb: 'fill', measure: null, ice: found.ice }], label: { ...label, celsius: found.ice.temperature?.celsius ?? label.celsius } };
}
function thingOwn(p: Phrase, i: number, end: number): boolean {
  if (!p.place.own.empty) for (let k = i; k < Math.min(end, i + 4); k++) if (!p.isNumber(k) && ownFrom(p, k, end) !== undefined) return true;
  return false;
}
