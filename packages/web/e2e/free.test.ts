import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const RECIPE = 'Harbour Sour\n\nIngredients:\n- 2 oz white rum\n- juice of 1 lime\n- 1/2 oz simple syrup\n\nMethod:\n1. Add all ingredients to a shaker with ice.\n2. Shake hard for 15 seconds and strain into a chilled coupe.\n3. Garnish with a lime wheel. Enjoy with friends!\n';
const SPEC = 'Harbour Sour\n\n2 oz white rum\njuice of 1 lime\n1/2 oz simple syrup\n\n# Add all ingredients to a shaker with ice\nShake hard for 15 seconds and strain into a chilled coupe\nGarnish with a lime wheel\nEnjoy with friends\n';
const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
/** A real paste: the text comes by the clipboard and the keys. */
async function pasteKeys(page: Page, what: string, keys = 'Control+v', all = true): Promise<void> {
  await page.evaluate((said) => navigator.clipboard.writeText(said), what);
  await page.focus('[data-editor]');
  if (all) await page.keyboard.press('Control+a');
  await page.keyboard.press(keys);
}
const clipboard = { permissions: ['clipboard-read', 'clipboard-write'] };

describe('a recipe pasted from anywhere', () => {
  it('becomes a spec; what is not understood is marked at its line; it is one thing done', async () => {
    const { page, faults } = await open(browser, site.address, clipboard);
    expect(await page.locator('[data-drawing="glass"]').count()).toBe(1);
    const before = await text(page);
    await pasteKeys(page, RECIPE);
    await page.waitForFunction((spec) => document.querySelector('[data-text]')?.textContent === spec, SPEC);
    expect(await page.inputValue('[data-editor]')).toBe(SPEC);
    await page.waitForSelector('[data-problem="unread"]');
    expect(await page.locator('[data-problem]').count()).toBe(1);
    expect(await page.locator('.mirror > .row.stop').allTextContents()).toEqual(['Enjoy with friends']);
    expect(await value(page, 'strength')).toBeGreaterThan(10);
    expect(await page.textContent('[data-pasted]')).toContain('line by line');
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.keyboard.press('Control+z');
    expect(await text(page)).toBe(before);
    await page.keyboard.press('Control+y');
    expect(await text(page)).toBe(SPEC);
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('a spec stays byte for byte, and so does what is pasted with Shift held', async () => {
    const { page } = await open(browser, site.address, clipboard);
    await pasteKeys(page, SPEC);
    await page.waitForFunction((spec) => document.querySelector('[data-text]')?.textContent === spec, SPEC);
    const own = 'Tea\n\nTea rum (infusion):\n- 100 ml white rum\n- 5 g black tea\nrest 2 h. strain.\n\nBuild:\n60 ml tea rum\n';
    await pasteKeys(page, own);
    await page.waitForFunction((spec) => document.querySelector('[data-text]')?.textContent === spec, own);
    expect(await page.textContent('[data-pasted]')).toBe('');
    await pasteKeys(page, RECIPE, 'Control+Shift+v');
    await page.waitForFunction((spec) => document.querySelector('[data-text]')?.textContent === spec, RECIPE);
    await page.context().close();
  });
  it('among the lines of a spec it goes in where the caret stands', async () => {
    const { page } = await open(browser, site.address, { ...clipboard, viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true });
    await pasteKeys(page, SPEC);
    await page.keyboard.press('Control+End');
    await pasteKeys(page, 'Ginger Syrup\n\nIngredients:\n- 200 g sugar\n- 200 ml water\n\nMethod: Simmer for 10 minutes. Strain.', 'Control+v', false);
    await page.waitForFunction((spec) => document.querySelector('[data-text]')?.textContent === spec, `${SPEC}\nGinger Syrup:\n200 g sugar\n200 ml water\n\nSimmer for 10 minutes\nStrain\n`);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    await page.context().close();
  });
});
