import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const near = (page: Page): Promise<(string | undefined)[]> => page.locator('.drawing .near').evaluateAll((all) => all.map((one) => (one as SVGElement).dataset['part']));
const lineOf = async (page: Page, text: string, nth = 0): Promise<number> => { const lines = ((await page.textContent('[data-text]')) ?? '').split('\n'), all = lines.flatMap((line, i) => (line === text ? [i + 1] : [])); const found = all[nth]; if (found === undefined) throw new Error(text); return found; };
const widest = (page: Page, part: string): Promise<number> => page.locator(`[data-part="${part}"] [data-pen="wall"]`).evaluateAll((all) => Math.max(...all.map((one) => Number.parseFloat(getComputedStyle(one).strokeWidth))));

describe('a line and what it stands for in the drawing', () => {
  it('a line under the pointer makes its vessel or its fall stand out, the caret’s line too', async () => {
    const { page, faults } = await open(browser, site.address);
    for (const part of ['prep:coconut rum', 'fall:coconut rum>build', 'fall:build>glass', 'hose']) expect(await page.locator(`[data-part="${part}"]`).count(), part).toBe(1);
    const hover = async (text: string, nth = 0): Promise<(string | undefined)[]> => {
      const box = (await page.locator('.mirror > .row').nth((await lineOf(page, text, nth)) - 1).boundingBox())!;
      await page.mouse.move(box.x + 60, box.y + 8);
      return near(page);
    };
    const thin = await widest(page, 'prep:coconut rum');
    expect(await hover('300 ml white rum 40 %')).toEqual(['prep:coconut rum']);
    expect(await widest(page, 'prep:coconut rum')).toBeGreaterThan(thin * 1.2);
    expect(await hover('60 ml coconut rum', 1)).toEqual(['fall:coconut rum>build']);
    expect(await hover('strain over 1 clear cube 50 mm')).toEqual(['fall:build>glass']);
    expect(await hover('top with 15 g pineapple cloud')).toEqual(['hose']);
    await page.mouse.move(1000, 20);
    expect(await near(page)).toEqual([]);
    await page.focus('[data-editor]');
    await page.evaluate((at) => { const e = document.querySelector<HTMLTextAreaElement>('[data-editor]')!; e.setSelectionRange(at, at); }, ((await page.textContent('[data-text]')) ?? '').indexOf('45 ml clear'));
    await page.waitForFunction(() => document.querySelector('.drawing .near') !== null);
    expect(await near(page)).toEqual(['fall:clear pineapple>build']);
    // it stays when the drawing is drawn again
    await page.keyboard.press('Alt+ArrowUp');
    expect(await near(page)).toEqual(['fall:clear pineapple>build']);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a vessel under the pointer or with the focus has its lines between two rules', async () => {
    const { page } = await open(browser, site.address);
    const from = await lineOf(page, 'Coconut rum (fat wash):'), to = await lineOf(page, 'strain through a paper filter at -18 °C');
    const lines = (edge: string): Promise<number[]> => page.locator('.mirror > .row').evaluateAll((all, name) => all.flatMap((row, i) => (row.classList.contains(name) ? [i + 1] : [])), edge);
    await page.locator('[data-section="coconut rum"] [data-pen="letter"]').first().hover({ force: true });
    expect([await lines('of-first'), await lines('of-last')]).toEqual([[from], [to]]);
    await page.mouse.move(200, 400);
    expect(await lines('of-first')).toEqual([]);
    await page.locator('[data-level="prep:coconut rum"]').focus();
    expect([await lines('of-first'), await lines('of-last')]).toEqual([[from], [to]]);
    await page.context().close();
  });
});
