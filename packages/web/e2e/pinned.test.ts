import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { draw, INKS, svgOf, type Scheme } from '@washline/drawing';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { describe, expect, it } from 'vitest';

/** The drawings of all demo drinks, of a drink of two lines and of one with fourteen preps as they stand; `npx vitest run -u` with this folder's config writes them anew, to be looked at. */
const DEMO = fileURLToPath(new URL('../../../demo/', import.meta.url)), PINNED = fileURLToPath(new URL('../../drawing/pinned/', import.meta.url));
const DRINKS = [
  ...readdirSync(DEMO).filter((file) => file.endsWith('.drink')).map((file) => [file.replace(/\.drink$/, ''), readFileSync(`${DEMO}${file}`, 'utf8')] as const),
  ['whole-shelf', readFileSync(new URL('../../drawing/test/whole-shelf.drink', import.meta.url), 'utf8')] as const,
  ['two-lines', 'Two lines\nglass: rocks\n\nBuild:\n60 ml white rum 40 %\n20 ml lime juice\n'] as const,
];

describe('the drawings of drinks', () => {
  it('are of twelve drinks at least', () => { expect(DRINKS.length).toBeGreaterThanOrEqual(12); });
  it.each(DRINKS)('%s is drawn as it was', async (name, text) => {
    const { reading, document, problems } = readText(text, { tables });
    expect(problems).toEqual([]);
    const findings = reading.findings.map((f) => ({ severity: f.severity, head: f.message.split('. ')[0] ?? '', path: f.where.path }));
    const dark: Scheme = name === 'tea-sour' ? 'dark' : 'light';
    const svg = svgOf(draw(reading, { width: 954, height: 832, scheme: dark, document, findings }), dark, reading.drink);
    expect(svg).toContain(`<title>${reading.drink}</title>`);
    await expect(svg).toMatchFileSnapshot(`${PINNED}${name}.svg`);
  });
});

describe('inks of a file', () => {
  // one table for the page and one for files: they must say the same
  it.each([['light', ':root {'], ['dark', ":root[data-sheet='dark'] {"]] as const)('%s are those of the page', (scheme, head) => {
    const css = readFileSync(new URL('../src/style/tokens.css', import.meta.url), 'utf8'), from = css.indexOf(head), rule = css.slice(from, css.indexOf('}', from));
    for (const [name, ink] of Object.entries(INKS[scheme])) {
      const said = new RegExp(`--${name}: ([^;]+);`).exec(rule)?.[1];
      if (said !== undefined) expect(said.replace('transparent', 'none'), name).toBe(ink);
    }
  });
});
