import type { Action, Thing } from '@washline/engine';
import { nearest } from '../names/nearest.ts';
import type { Language } from '../vocabulary/vocabulary.ts';

/** The nearest rows to every unknown thing of an action but a garnish; looked up last, for what is left unknown only. */
export function withNearest<T extends Action>(action: T, language: Language): T {
  return action.kind === 'garnish' ? action : near(action, language) as T;
}
function near(value: unknown, language: Language): unknown {
  if (Array.isArray(value)) return value.some((one) => typeof one === 'object') ? value.map((one: unknown) => near(one, language)) : value;
  if (typeof value !== 'object' || value === null) return value;
  const object = value as Record<string, unknown>;
  const link = object['link'] as Thing['link'] | undefined;
  if (link !== undefined) return link.kind === 'unknown' ? { ...object, link: { kind: 'unknown', nearest: nearest(String(object['words']), 3, language) } } : value;
  let out: Record<string, unknown> | undefined;
  for (const key in object) {
    if (key === 'path' || key === 'span' || key === 'number' || key === 'unitSpan') continue;
    const one = object[key];
    if (typeof one !== 'object') continue;
    const made = near(one, language);
    if (made !== one) { out ??= { ...object }; out[key] = made; }
  }
  return out ?? value;
}
