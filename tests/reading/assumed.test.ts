import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import heard from '../../data/heard.json' with { type: 'json' };

const keys = (text: string) => readText(text, { tables }).reading.assumed.map((a) => a.key);

describe('what was not written is said, with words that are understood', () => {
  it.each(heard.rows.map((r) => [r.key, r.from, r.to] as const))('%s', (key, from, to) => {
    expect(keys(from).some((k) => k.startsWith(key)), 'assumed without the words').toBe(true);
    const { problems, reading } = readText(to, { tables });
    expect(problems).toEqual([]);
    expect(reading.assumed.filter((a) => a.key.startsWith(key)).map((a) => a.key), 'gone with them').toEqual([]);
  });
  it('shows words only where they are read', () => {
    for (const a of readText('A\n60 ml white rum\nshake 12 s', { tables }).reading.assumed) {
      expect(a.say !== '').toBe(heard.rows.some((r) => a.key.startsWith(r.key)));
    }
  });
});
