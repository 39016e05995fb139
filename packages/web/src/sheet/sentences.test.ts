import { describe, expect, it } from 'vitest';
import { firstSentence } from './sentences.ts';

describe('a finding in the margin', () => {
  it('leads with its first sentence', () => {
    expect(firstSentence('The foam never sets. Fresh pineapple eats the gelatin.')).toEqual({ head: 'The foam never sets.', rest: 'Fresh pineapple eats the gelatin.' });
  });
  it('does not break at a decimal point', () => {
    expect(firstSentence('The mix is 7.5 % vol. That is too strong.')).toEqual({ head: 'The mix is 7.5 % vol.', rest: 'That is too strong.' });
  });
  it('turns a colon into a stop and begins large', () => {
    expect(firstSentence('the sheets go in unsoaked: they clump.')).toEqual({ head: 'The sheets go in unsoaked.', rest: 'They clump.' });
  });
  it('is all head when there is one sentence', () => {
    expect(firstSentence('No glass is named')).toEqual({ head: 'No glass is named', rest: '' });
  });
});
