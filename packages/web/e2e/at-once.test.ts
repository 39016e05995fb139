import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, ready, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const PHONE = { viewport: { width: 375, height: 812 }, isMobile: true, hasTouch: true, locale: 'en-GB' };
interface Held { readonly page: Page; release(): void }

/** A page whose scripts, save the one that looks what the device keeps, have not come yet. */
async function held(options: BrowserContextOptions, kept: Readonly<Record<string, string>> = {}, hash = ''): Promise<Held> {
  const context = await browser.newContext({ ...options, serviceWorkers: 'block' }), page = await context.newPage();
  let release: () => void = () => undefined;
  const gate = new Promise<void>((go) => { release = go; });
  await page.route(/assets\/.*\.js$/, async (route) => { await gate; await route.continue(); });
  await page.addInitScript((all) => { for (const [key, value] of Object.entries(all)) localStorage.setItem(`washline/${key}`, value); }, kept);
  await page.goto(`${site.address}${hash}`, { waitUntil: 'commit' });
  await page.waitForSelector('.at-once', { state: 'attached' });
  await page.waitForFunction(() => getComputedStyle(document.body).margin === '0px');
  return { page, release };
}
/** What is written in the picture, and in the page's own drawing. */
const texts = (page: Page, within: string): Promise<string[]> => page.locator(`${within} text`).evaluateAll((all) => all.filter((e) => (e as SVGElement).checkVisibility()).map((e) => e.textContent));

describe('before any script has come', () => {
  it.each([['light', 'dark'], ['dark', 'light']] as const)('a phone shows the demo drink, %s; the page then draws the same in its place, and nothing moves', async (colorScheme, other) => {
    const { page, release } = await held({ ...PHONE, colorScheme });
    expect(await page.locator('.at-once svg').isVisible()).toBe(true);
    // liquids are drawn in the tints of this sheet alone
    expect(await page.locator(`.at-once .on-${colorScheme}:visible`).count()).toBeGreaterThan(4);
    expect(await page.locator(`.at-once .on-${other}:visible`).count()).toBe(0);
    const before = await texts(page, '.at-once'), box = await page.locator('.at-once .drawing').boundingBox();
    expect(before.length).toBeGreaterThan(15);
    release();
    await ready(page);
    expect(await page.locator('.at-once').count()).toBe(0);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    expect(await page.locator('figure.drawing').boundingBox()).toEqual(box);
    expect((await texts(page, 'figure.drawing')).toSorted()).toEqual(before.toSorted());
    await page.context().close();
  });
  it.each<[string, BrowserContextOptions, Record<string, string>, string]>([
    ['has a drink of its own', PHONE, { draft: JSON.stringify({ text: 'Mine\n60 ml white rum 40 %', history: { undo: [], redo: [] } }) }, ''],
    ['has a bench of its own', PHONE, { bench: 'units: cl' }, ''],
    ['measures in units of its own', PHONE, { units: JSON.stringify({ volume: 'oz', degree: '°F' }) }, ''],
    ['was sent a drink', PHONE, {}, '#d=x'],
    ['speaks German', { ...PHONE, locale: 'de-DE' }, {}, ''],
    ['chose German', PHONE, { language: 'de' }, ''],
    ['is no phone', { viewport: { width: 1280, height: 800 } }, {}, ''],
  ])('a device that %s is shown no picture of another', async (_, options, kept, hash) => {
    const { page, release } = await held(options, kept, hash);
    expect(await page.locator('.at-once svg:visible').count()).toBe(0);
    release();
    await page.context().close();
  });
  it('the picture holds nothing to press, and a screen reader is not told of it', async () => {
    const { page, release } = await held(PHONE);
    expect(await page.locator('.at-once[aria-hidden="true"]').count()).toBe(1);
    expect(await page.locator('.at-once a, .at-once button, .at-once [tabindex], .at-once [data-figure]').count()).toBe(0);
    release();
    await page.context().close();
  });
});
