import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

/** So long after a change its ranges are whole and what it did has been said. */
const SETTLED_MS = 1200;

const figures = (page: Page): Promise<string[]> => page.locator('[data-figure]').evaluateAll((all) => all.map((f) => ['of', 'figure', 'value', 'low', 'high'].map((key) => f.getAttribute(`data-${key}`)).join(' ')));

/** Puts the caret after the first number of the sheet, and writes down what every frame shows from then on and all that is said. */
async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const editor = document.querySelector<HTMLTextAreaElement>('[data-editor]')!, at = /\n\d+/.exec(editor.value)!;
    editor.focus();
    editor.setSelectionRange(at.index + at[0].length, at.index + at[0].length);
    const kept = { frames: [] as string[][], said: [] as string[], values: [] as string[] };
    Object.assign(globalThis, { kept });
    const frame = (): void => {
      kept.frames.push([...document.querySelectorAll('[data-finding]')].map((f) => f.getAttribute('data-finding') ?? ''));
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    const live = document.querySelector('[data-live]')!;
    new MutationObserver(() => { kept.said.push(live.textContent ?? ''); }).observe(live, { childList: true, characterData: true, subtree: true });
    // after the page's own listeners, before the frame
    addEventListener('input', () => { kept.values.push([...document.querySelectorAll('[data-figure]')].map((f) => f.getAttribute('data-value')).join(' ')); });
  });
}
const kept = (page: Page): Promise<{ frames: string[][]; said: string[]; values: string[] }> => page.evaluate(() => (globalThis as unknown as { kept: { frames: string[][]; said: string[]; values: string[] } }).kept);

describe('values in the frame, ranges in the next', () => {
  it('ends with the ranges of a whole reading', async () => {
    const { page, faults } = await open(browser, site.address);
    await watch(page);
    const before = await figures(page);
    await page.keyboard.type('1');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    await page.keyboard.type('3');
    await page.waitForTimeout(SETTLED_MS);
    const typed = await figures(page);
    expect(typed.length).toBeGreaterThanOrEqual(5);
    expect(typed).not.toEqual(before);
    // opened anew, the text kept on the device is read whole at once
    await page.reload();
    await page.waitForFunction(() => document.documentElement.dataset['read'] === '1');
    expect(await figures(page)).toEqual(typed);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('shows new values before the frame of the stroke, says once what it did, and no finding goes and comes back', async () => {
    const { page } = await open(browser, site.address);
    await watch(page);
    const values = (): Promise<string> => page.locator('[data-figure]').evaluateAll((all) => all.map((f) => f.getAttribute('data-value')).join(' '));
    const before = await values();
    await page.keyboard.type('1');
    await page.waitForTimeout(SETTLED_MS);
    const { frames, said, values: inFrame } = await kept(page);
    // a pH is solved from where its own program's nominal stands: nine digits of it are the same
    const near = (all: string): string => all.split(' ').map((value) => Number(value).toPrecision(9)).join(' ');
    expect(inFrame.map(near)).toEqual([near(await values())]);
    expect(inFrame).not.toEqual([before]);
    expect(said).toHaveLength(1);
    const states = frames.map((f) => [...new Set(f)].sort());
    for (const code of new Set(states.flat())) {
      const turns = states.filter((s, i) => i > 0 && s.includes(code) !== states[i - 1]!.includes(code)).length;
      expect(turns, code).toBeLessThanOrEqual(1);
    }
    await page.context().close();
  });
});
