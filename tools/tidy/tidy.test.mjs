// A check that cannot fail is a defect: each is given something wrong, and something right beside it.
import { describe, expect, it } from 'vitest';
import { brokenLinks } from './docs.mjs';
import { leftoverIn, placeIn } from './leftovers.mjs';
import { sentencesIn } from './words.mjs';

describe('sentences in the engine', () => {
  it.each(["const a = 'the foam is too strong';", 'const a = `more than ${n} drops fall into it`;', 'f({ say: "nothing here will ever whip" });'])('%s is one', (code) => { expect(sentencesIn('x.ts', code)).toHaveLength(1); });
  it.each(["const a = 'foam-too-strong';", "const a = 'place/room/temperature';", "throw new Error('the table has no such row');", "const a = 'fat wash';", '// the foam is too strong\nconst a = 1;'])('%s is none', (code) => { expect(sentencesIn('x.ts', code)).toEqual([]); });
});

describe('what is left behind', () => {
  it.each([`// ${'TO'}DO later`, `it.${'only'}('x', f)`, `describe.${'skip'}('x', f)`, `test.${'todo'}('x')`])('%s is seen', (line) => { expect(leftoverIn(line)).toBe(true); });
  it.each(['const only = 1;', `list.${'skip'}(2)`, 'it(\'skips nothing\', f)'])('%s is nothing', (line) => { expect(leftoverIn(line)).toBe(false); });
  it.each([['', 'home', 'maker', 'x'].join('/'), ['', 'work', 'main'].join('/'), ['', 'Users', 'maker'].join('/')])('%s is a machine’s path', (line) => { expect(placeIn(line)).toBe(true); });
  it.each(['/usr/bin/chromium', 'packages/home/x', '/api/read'])('%s is none', (line) => { expect(placeIn(line)).toBe(false); });
});

describe('links', () => {
  it.each(['[a](nowhere.md)', '[a](ARCHITECTURE.md#no-such-heading)', '![a](docs/pictures/none.png)'])('%s leads nowhere', (text) => { expect(brokenLinks('README.md', text)).toHaveLength(1); });
  it.each(['[a](ARCHITECTURE.md)', '[a](ARCHITECTURE.md#packages)', '[a](https://example.org/x)', '`[a](nowhere.md)`', '```\n[a](nowhere.md)\n```'])('%s is sound', (text) => { expect(brokenLinks('README.md', text)).toEqual([]); });
});
