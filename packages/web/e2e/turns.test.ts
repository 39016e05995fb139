import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const PHONE = { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true };
const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
const changed = (before: string, after: string): string[] => { const was = before.split('\n'); return after.split('\n').filter((line, i) => line !== was[i]); };
const choose = (page: Page, line: string): Promise<void> => page.evaluate((wanted) => { const e = document.querySelector<HTMLTextAreaElement>('[data-editor]')!; e.focus(); const at = e.value.indexOf(wanted); e.setSelectionRange(at, at); }, line);

describe('minus and plus under the chosen line', () => {
  it('turn its amount by one step each, each one thing done; the caret stays in its line', async () => {
    const { page, faults } = await open(browser, site.address, PHONE);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    expect(await page.locator('.turns').count()).toBe(0);
    const before = await text(page);
    await choose(page, '45 ml clear pineapple');
    const [less, more] = [page.locator('.turns button').nth(0), page.locator('.turns button').nth(1)];
    await more.waitFor();
    for (const one of [less, more]) { const box = (await one.boundingBox())!; expect([Math.round(box.width), Math.round(box.height)]).toEqual([52, 44]); }
    const row = (await page.locator('.row.here').boundingBox())!, own = (await less.boundingBox())!;
    expect(own.y).toBeGreaterThanOrEqual(row.y + row.height - 1);
    await more.tap();
    expect(changed(before, await text(page))).toEqual(['47.5 ml clear pineapple']);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('spec');
    await less.tap();
    expect(await text(page)).toBe(before);
    await less.tap();
    expect(changed(before, await text(page))).toEqual(['42.5 ml clear pineapple']);
    expect(await less.getAttribute('aria-label')).toBe('One step less: 42.5 ml clear pineapple');
    await page.keyboard.press('Control+z');
    expect(await text(page)).toBe(before);
    // by the keyboard of a small window too
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^One step less/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(changed(before, await text(page))).toEqual(['47.5 ml clear pineapple']);
    expect((await new AxeBuilder({ page }).analyze()).violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 120)}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a line without an amount has none, and a wide page has none', async () => {
    const { page } = await open(browser, site.address, { ...PHONE, colorScheme: 'dark', locale: 'de-DE' });
    await choose(page, 'break the gel');
    await page.waitForTimeout(100);
    expect(await page.locator('.turns').count()).toBe(0);
    await choose(page, '60 ml coconut rum');
    await page.locator('.turns button').first().waitFor();
    expect(await page.locator('.turns button').first().getAttribute('aria-label')).toBe('Einen Schritt weniger: 60 ml coconut rum');
    expect((await new AxeBuilder({ page }).analyze()).violations.map((v) => v.id)).toEqual([]);
    await page.context().close();
    const wide = await open(browser, site.address);
    await choose(wide.page, '60 ml coconut rum');
    await wide.page.waitForTimeout(100);
    expect(await wide.page.locator('.turns button:visible').count()).toBe(0);
    await wide.page.context().close();
  });
});
