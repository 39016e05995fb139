/** The keywords of JSON Schema 2020-12 that the project's schemas use. */
export interface Schema { [key: string]: unknown; $ref?: string; $defs?: Record<string, Schema>; type?: string | string[]; properties?: Record<string, Schema>; required?: string[]; items?: Schema; enum?: unknown[]; const?: unknown; anyOf?: Schema[]; oneOf?: Schema[]; additionalProperties?: boolean | Schema; minimum?: number; maximum?: number }

/** What of a value does not fit a schema, named by its place. */
export function faults(value: unknown, by: Schema, whole: Schema = by, at = '$'): string[] {
  if (by.$ref !== undefined) return faults(value, whole.$defs?.[by.$ref.replace('#/$defs/', '')] ?? {}, whole, at);
  const out: string[] = [];
  const kind = value === null ? 'null' : Array.isArray(value) ? 'array' : typeof value;
  const types = by.type === undefined ? [] : [by.type].flat();
  if (types.length > 0 && !types.includes(kind) && !(types.includes('integer') && Number.isInteger(value))) out.push(`${at} is ${kind}`);
  if (by.const !== undefined && value !== by.const) out.push(`${at} is not ${JSON.stringify(by.const)}`);
  if (by.enum !== undefined && !by.enum.includes(value)) out.push(`${at} is ${String(value)}`);
  if (by.minimum !== undefined && typeof value === 'number' && value < by.minimum) out.push(`${at} too small`);
  if (by.maximum !== undefined && typeof value === 'number' && value > by.maximum) out.push(`${at} too large`);
  if (by.anyOf !== undefined && !by.anyOf.some((one) => faults(value, one, whole, at).length === 0)) out.push(`${at} fits none`);
  if (by.oneOf !== undefined && by.oneOf.filter((one) => faults(value, one, whole, at).length === 0).length !== 1) out.push(`${at} does not fit one`);
  if (kind === 'object') {
    const object = value as Record<string, unknown>;
    for (const key of by.required ?? []) if (!(key in object)) out.push(`${at} lacks ${key}`);
    for (const [key, one] of Object.entries(object)) {
      const sub = by.properties?.[key];
      if (sub !== undefined) out.push(...faults(one, sub, whole, `${at}.${key}`));
      else if (by.additionalProperties === false) out.push(`${at}.${key} is not known`);
      else if (typeof by.additionalProperties === 'object') out.push(...faults(one, by.additionalProperties, whole, `${at}.${key}`));
    }
  }
  if (kind === 'array' && by.items !== undefined) (value as unknown[]).forEach((one, index) => out.push(...faults(one, by.items ?? {}, whole, `${at}[${index}]`)));
  return out;
}
