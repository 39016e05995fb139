import { CODES } from '@washline/engine';
import { describe, expect, it } from 'vitest';
import de from './heads.de.json' with { type: 'json' };
import en from './heads.en.json' with { type: 'json' };

describe('short heads of findings', () => {
  it.each([['English', en], ['German', de]] as const)('are there for every code: %s', (_, heads) => {
    expect(Object.keys(heads).sort()).toEqual(Object.keys(CODES).sort());
    for (const head of Object.values(heads)) { expect(head.trim()).toBe(head); expect(head.length).toBeGreaterThan(3); }
  });
});
