import { describe, expect, test } from 'vitest';
import { fold, foldTyped } from './fold.ts';
import { lookup } from './lookup.ts';
import { edits, nearest } from './nearest.ts';
import { search } from './search.ts';

describe('fold', () => {
  test.each([['crème de cassis', 'creme-de-cassis'], ['Curaçao', 'curacao'], ['Süßwein', 'suesswein'.replace('ue', 'u')], ["baker's sugar", 'baker’s sugar'], ['low-acyl gellan', 'LOW ACYL GELLAN'], ['Cre\u0301me', 'crème']])('%s = %s', (a, b) => { expect(fold(a)).toBe(fold(b)); });
  test('ä ö ü as typed', () => { expect(foldTyped('Süß, öl, Äpfel')).toBe('suessoelaepfel'); });
});
describe('lookup', () => {
  test.each([
    ['simple', 'simple-syrup-1-1'], ['simple syrup 2:1', 'rich-syrup-2-1'], ['canned coconut cream', 'coconut-cream-canned'], ['cream of coconut', 'cream-of-coconut'], ['fresh coconut cream', 'coconut-cream'],
    ['virgin coconut oil', 'coconut-oil-virgin'], ['refined coconut oil', 'coconut-oil-refined'], ['lime acid 6 %', 'lime-acid-6'], ['lime acid', 'lime-acid-6'],
    ['gold gelatin sheet', 'gelatin-sheet-gold'], ['silver gelatine leaves', 'gelatin-sheet-silver'], ['platinum gelatin sheets', 'gelatin-sheet-platinum'], ['bronze gelatine leaf', 'gelatin-sheet-bronze'],
    ['flavored vodka', 'vodka-flavoured'], ['flavoured vodka', 'vodka-flavoured'], ['irish whisky', 'whisky-malt'], ['gelatine', 'gelatin'], ['lemons', 'lemon-flesh'], ['fresh pineapple juice', 'pineapple-juice'], ['raspberries', 'raspberry'],
    ['Ananassaft', 'pineapple-juice'], ['frisch gepresster Limettensaft', 'lime-juice'], ['Limettensaft', 'lime-juice'], ['hulled strawberries', 'strawberry'], ['freshly squeezed lemon juice', 'lemon-juice'],
  ] as const)('%s is %s', (words, id) => { expect(lookup(words, words === 'lemons' ? 'count' : null)?.id).toBe(id); });
  test('lime is juice by volume, fruit by count, and says so', () => {
    expect(lookup('lime', 'volume')).toMatchObject({ id: 'lime-juice', assumed: true, others: ['lime-flesh'] });
    expect(lookup('lime', 'count')).toMatchObject({ id: 'lime-flesh', assumed: true });
  });
  test.each(['rose water', 'lemon sorbet', 'pineapple foam', 'gin mare', 'olive brine'])('a part of a name is never a reading: %s', (words) => { expect(lookup(words)).toBeUndefined(); });
  test('three coconut creams are apart', () => { expect(new Set(['canned coconut cream', 'cream of coconut', 'fresh coconut cream'].map((words) => lookup(words)?.id)).size).toBe(3); });
});
describe('nearest', () => {
  test.each([['pinapple juice', 'pineapple-juice'], ['tequlia', 'tequila'], ['grenadien', 'grenadine'], ['xantan', 'xanthan-gum'], ['limoncelo', 'limoncello'], ['maraschno', 'maraschino-liqueur']])('%s', (words, id) => { expect(nearest(words, 3).map((one) => one.id)).toContain(id); });
  test('three at most, none twice', () => { const near = nearest('pineapple foam', 3); expect(near.length).toBeLessThanOrEqual(3); expect(new Set(near.map((one) => one.id)).size).toBe(near.length); });
  test('nothing comes near to nothing', () => { expect(nearest('zzzzqqq', 3)).toEqual([]); });
  test('two letters changed places are one edit', () => { expect(edits('rum', 'urm', 2)).toBe(1); expect(edits('gin', 'tonic', 2)).toBe(3); });
});
describe('search', () => {
  test.each([['pine', 'pineapple-juice'], ['lime ac', 'lime-acid-6'], ['coconut oil', 'coconut-oil'], ['gelatin gold', 'gelatin-sheet-gold'], ['bourbn', 'whiskey-bourbon'], ['soda', 'soda-water'], ['kokos', 'coconut-milk']])('%s', (words, id) => { expect(search(words, 8).map((one) => one.id)).toContain(id); });
  test('the whole name comes first', () => { expect(search('vodka')[0]?.id).toBe('vodka'); expect(search('gin')[0]?.id).toBe('gin'); expect(search('simple syrup')[0]?.id).toBe('simple-syrup-1-1'); });
  test('nothing asked, nothing found', () => { expect(search('')).toEqual([]); expect(search('xyzzyq')).toEqual([]); });
});
