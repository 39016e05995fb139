import type { Amount } from '@washline/engine';
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from '../document/parse.ts';
import { fold } from '../names/fold.ts';
import { foldUnit, unitForms } from '../vocabulary/units.ts';

// What is read of a line says where it stands, and the words there say the same: a drag, a remedy and a swap write into these places.
// The lines are the labelled ones of cases/lines (printed lines of 1917 among them); nothing is compared but a line with itself.
const folder = new URL('../../../../cases/lines/', import.meta.url);
const START = 'X\nBuild:\n';

interface Found { readonly at: string; readonly text: string }
type Node = Readonly<Record<string, unknown>>;
const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;
const isSpan = (value: unknown): value is { from: number; to: number } => isNode(value) && typeof value['from'] === 'number' && typeof value['to'] === 'number';

/** Every object below a value with its place in it. */
function* nodes(value: unknown, at = ''): Generator<readonly [string, Node]> {
  if (!isNode(value)) return;
  yield [at, value];
  for (const [key, one] of Object.entries(value)) yield* nodes(one, `${at}.${key}`);
}
/** "Saft einer Zitrone" is put together to one word. */
const COMPOSED = /.(?:saft|abrieb|schale)$/i;
/** A twist and a strip are counted as pieces. */
const PIECES = /^(?:twist|strip)s?$/i;
const numbersIn = (text: string): number[] => (/^[\s\d.–-]+$/.test(text) ? (text.replace(/(?<=\d) (?=\d{3}\b)/, '').match(/\d*\.?\d+/g) ?? []).map(Number) : []);

/** What is wrong with the places of one line. */
function misplaced(line: string): Found[] {
  const text = `${START}${line}\n`, wrong: Found[] = [];
  const read = parse(text).sections.flatMap((one) => one.lines).find((one) => one.span.from >= START.length);
  const say = (at: string, what: string): void => { wrong.push({ at, text: `${line}: ${what}` }); };
  for (const [at, node] of nodes(read?.actions ?? [])) {
    const slice = (key: string): string | null => { const span = node[key]; return isSpan(span) ? text.slice(span.from, span.to) : null; };
    for (const [key, span] of Object.entries(node)) {
      if (!isSpan(span)) continue;
      if (!(span.from >= START.length && span.from <= span.to && span.to <= START.length + line.length)) say(`${at}.${key}`, `stands at ${span.from} to ${span.to}`);
      const words = text.slice(span.from, span.to);
      if (words !== words.trim()) say(`${at}.${key}`, `"${words}" begins or ends with a blank`);
    }
    if (isSpan(node['number']) && typeof node['low'] === 'number') {
      const amount = node as unknown as Amount, numbers = numbersIn(slice('number') ?? '');
      if (numbers.length === 1 && numbers[0] !== amount.low && numbers[0] !== amount.high) say(at, `${numbers[0]} is not ${amount.low} to ${amount.high}`);
      if (numbers.length === 2 && (numbers[0] !== amount.low || numbers[1] !== amount.high)) say(at, `${numbers.join(' to ')} is not ${amount.low} to ${amount.high}`);
      if (amount.low > amount.high) say(at, `${amount.low} is above ${amount.high}`);
      const unit = slice('unitSpan');
      if (unit !== null && unit !== '' && amount.unit !== null) {
        const forms = unitForms(unit === 'T' ? 'T' : foldUnit(unit)) ?? [];
        if (!forms.some((form) => form.unit === amount.unit) && amount.unit !== 'oz-weight' && !(amount.unit === 'piece' && PIECES.test(unit))) say(at, `"${unit}" is no ${amount.unit}`);
      }
    }
    if (typeof node['celsius'] === 'number' && isSpan(node['span']) && node['word'] === undefined) {
      const written = (slice('span') ?? '').match(/[−-]?\d+(?:[.,]\d+)?/g)?.at(-1), value = Number(written?.replace(',', '.').replace('−', '-')), celsius = node['celsius'];
      if (written !== undefined && ![value, (value - 32) / 1.8, value - 273.15].some((one) => Math.abs(Math.abs(one) - Math.abs(celsius)) < 0.6)) say(at, `"${slice('span')}" is not ${celsius} °C`);
    }
    const strength = node['strength'];
    if (isNode(strength) && typeof strength['value'] === 'number' && isSpan(strength['span'])) {
      const written = text.slice(strength['span'].from, strength['span'].to).match(/\d+(?:[.,]\d+)?/)?.[0];
      if (written !== undefined && ![1, 0.5, 0.571].some((share) => Math.abs(Number(written.replace(',', '.')) * share - (strength['value'] as number)) < 0.3)) say(at, `strength "${written}" is not ${strength['value']}`);
    }
    const words = node['words'];
    if (typeof words === 'string' && isSpan(node['span'])) {
      const there = fold(line);
      for (const word of words.split(/[\s-]+/)) if (!COMPOSED.test(word) && !there.includes(fold(word).replace(/(ies|y|s|n)$/, ''))) say(at, `"${word}" of "${words}" is not in the line`);
    }
  }
  return wrong;
}

describe.each(readdirSync(folder).filter((name) => name.endsWith('.json')))('%s', (file) => {
  const texts = (JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as { lines: { text: string }[] }).lines.map((line) => line.text).filter((text) => text.trim() !== '' && !/[\r\n]/.test(text) && text.length < 480);
  test('what is read stands where it says', () => { for (const text of texts) expect(misplaced(text)).toEqual([]); });
});
