import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const SPEC = 'Harbour fizz\nglass: highball\n\nCoconut rum (fat wash):\n300 ml white rum 40 %\n40 g virgin coconut oil\nstrain through cheesecloth\n\nBuild:\n60 ml coconut rum\n1 oz lime juice\nshake\nstrain\n';
const LIME = SPEC.slice(0, SPEC.indexOf('1 oz')).split('\n').length;
const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
const note = (page: Page) => page.locator('#spec-line');
/** The caret goes to a line as by keys, and the line stands still for a while. */
async function toLine(page: Page, line: number): Promise<void> {
  await page.focus('[data-editor]');
  await page.keyboard.press('Control+Home');
  for (let n = 1; n < line; n++) await page.keyboard.press('ArrowDown');
}
const boxOf = async (page: Page, of: string): Promise<{ x: number; y: number; width: number; height: number }> => { const box = await page.locator(of).boundingBox(); if (box === null) throw new Error(`no ${of}`); return box; };
const row = (line: number): string => `.mirror > .row:nth-child(${line})`;

describe('what a line was understood as', () => {
  it('stands in the margin at the caret’s line, with what was assumed; pressed, the words are written', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, SPEC);
    expect(await page.locator('[data-drawing="glass"]').count()).toBe(1);
    await toLine(page, LIME);
    await page.waitForFunction(() => document.querySelector('#spec-line')?.textContent?.includes('lime juice'));
    expect((await note(page).textContent())?.replace(/\u00a0/g, ' ')).toMatch(/read as 1 oz = 29\.6 ml lime juice.*the citrus juice goes in at 12 °C \(4 to 22\)/);
    // what is found at its lines stays in sight, and so does the line
    const at = await boxOf(page, '#spec-line'), own = await boxOf(page, row(LIME));
    expect(at.x).toBeGreaterThan(own.x + own.width);
    for (const one of await page.locator('.finding').all()) { const box = (await one.boundingBox())!; expect(box.y + box.height <= at.y || box.y >= at.y + at.height).toBe(true); }
    // said with the field
    expect(await page.getAttribute('[data-editor]', 'aria-describedby')).toContain('spec-line');
    // Tab goes from the text to the words
    await page.keyboard.press('Tab');
    // also when the ranges have settled meanwhile
    await page.waitForTimeout(500);
    expect(await page.evaluate(() => document.activeElement?.closest('#spec-line') !== null)).toBe(true);
    expect((await note(page).textContent())).toContain('lime juice');
    await page.keyboard.press('Enter');
    expect(await text(page)).toContain('1 oz lime juice at 12 °C\n');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('spec');
    await page.keyboard.press('Control+z');
    expect(await text(page)).toBe(SPEC);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('says nothing of a line while it is typed', async () => {
    const { page } = await open(browser, site.address);
    await paste(page, SPEC);
    await toLine(page, LIME);
    await page.waitForFunction(() => document.querySelector('#spec-line')?.textContent?.includes('lime juice'));
    await page.keyboard.press('End');
    await page.keyboard.type(' at 8');
    expect(await note(page).textContent()).toBe('');
    await page.keyboard.press('Escape');
    await page.waitForFunction(() => document.querySelector('#spec-line')?.textContent?.includes('lime juice'), null, { timeout: 4000 });
    await page.context().close();
  });

  it('is told of the line under a pointer too, and moves nothing', async () => {
    const { page } = await open(browser, site.address);
    await paste(page, SPEC);
    const before = await page.locator('.finding').evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top));
    expect(before.length).toBeGreaterThan(1);
    const { x, y } = await boxOf(page, row(5));
    await page.mouse.move(x + 60, y + 10);
    await page.waitForFunction(() => document.querySelector('.told-of.over')?.textContent?.includes('white rum'));
    expect(await page.locator('.finding').evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top))).toEqual(before);
    await page.mouse.move(900, 300);
    expect(await page.locator('.told-of.over').textContent()).toBe('');
    await page.context().close();
  });

  it('what is of no line is told of the name; more is asked for', async () => {
    const { page } = await open(browser, site.address);
    await paste(page, 'Harbour\n60 ml white rum 40 %\n30 ml lime juice\nshake\nstrain\n');
    await toLine(page, 4);
    await page.waitForFunction(() => document.querySelector('#spec-line .more') !== null);
    const few = await page.locator('#spec-line li').count();
    await page.click('#spec-line .more');
    expect(await page.locator('#spec-line li').count()).toBeGreaterThan(few);
    expect((await note(page).textContent())).toContain('over 150 g cubes');
    await toLine(page, 1);
    await page.waitForFunction(() => document.querySelector('#spec-line')?.textContent?.includes('glass: coupe'));
    await page.context().close();
  });

  it('in German, and axe finds nothing, light and dark', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page } = await open(browser, site.address, { locale: 'de-DE', colorScheme });
      await page.waitForSelector('html[lang="de"]');
      await paste(page, 'Hafen\nGlas: Tumbler\n\nAufbau:\n60 ml weißer Rum\n3 cl Limettensaft\n15 s schütteln\n');
      await toLine(page, 6);
      await page.waitForFunction(() => document.querySelector('#spec-line')?.textContent?.includes('Limettensaft'));
      expect((await note(page).textContent())?.replace(/\u00a0/g, ' ')).toMatch(/gelesen als 3 cl = 30 ml Limettensaft.*der Zitrussaft kommt mit 12 °C/);
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
      await page.context().close();
    }
  });

  it('on a phone under the line, which stays in sight; its words are for a thumb', async () => {
    const { page } = await open(browser, site.address, { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true });
    await paste(page, SPEC);
    await page.locator(row(LIME)).scrollIntoViewIfNeeded();
    const { x, y } = await boxOf(page, row(LIME));
    await page.touchscreen.tap(x + 80, y + 12);
    await page.waitForFunction(() => document.querySelector('#spec-line')?.textContent?.includes('lime juice'));
    const own = await boxOf(page, row(LIME)), at = await boxOf(page, '#spec-line');
    expect(at.y).toBeGreaterThanOrEqual(own.y + own.height - 1);
    expect(at.y - own.y - own.height).toBeLessThan(12);
    for (const one of await page.locator('#spec-line button').all()) expect((await one.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.locator('#spec-line .fix').first().tap();
    expect(await text(page)).toContain('1 oz lime juice at 12 °C\n');
    await page.context().close();
  });
});
