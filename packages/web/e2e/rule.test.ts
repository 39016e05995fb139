import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const iceOf = (page: Page): Promise<string | null> => page.getAttribute('.part-ice', 'aria-label');
const level = async (page: Page): Promise<number> => Number(await page.getAttribute('[data-washline]', 'data-washline'));

describe('the rule of time', () => {
  it('by keys: ice, level, strength and temperature follow, the text does not, and Home brings the pouring back', async () => {
    const { page, faults } = await open(browser, site.address);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    const rule = page.getByRole('slider', { name: 'time after pouring' }), text = await page.textContent('[data-text]');
    expect(await rule.getAttribute('aria-valuetext')).toBe('poured');
    const poured = { level: await level(page), strength: await value(page, 'strength'), ice: await iceOf(page) };
    await rule.focus();
    await page.keyboard.press('PageUp');
    await page.keyboard.press('ArrowRight');
    expect(await rule.getAttribute('aria-valuetext')).toMatch(/^after 6 min, 7\d\.\d mm, 1\d\.\d % vol$/);
    const six = await level(page);
    await page.keyboard.press('End');
    expect(await rule.getAttribute('aria-valuenow')).toBe('30');
    expect(await level(page)).toBeLessThan(six);
    expect(six).toBeLessThan(poured.level);
    expect(await value(page, 'strength')).toBeLessThan(poured.strength - 2);
    expect(await iceOf(page)).not.toBe(poured.ice);
    // what is not told of that minute is not shown; where it began stays as a phantom
    expect(await page.locator('[data-figure="sugar"]').count()).toBe(0);
    expect(await page.locator('[data-part="poured"] path').count()).toBe(2);
    expect(await page.locator('[data-level="layer:0"]').count()).toBe(0);
    expect(await page.textContent('[data-text]')).toBe(text);
    // a figure pressed is that of the minute
    await page.click('[data-figure="strength"]');
    expect(await page.textContent('.slip')).toContain('30 min after pouring');
    await page.keyboard.press('Escape');
    await rule.focus();
    await page.keyboard.press('Home');
    expect([await level(page), await value(page, 'strength'), await iceOf(page)]).toEqual([poured.level, poured.strength, poured.ice]);
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('by pointer it snaps to whole minutes and stays; after an edit it follows a moment later', async () => {
    const { page } = await open(browser, site.address);
    const ticks = await page.locator('.rule .ticks').boundingBox();
    if (ticks === null) throw new Error('no rule');
    await page.mouse.move(ticks.x, ticks.y + 2);
    await page.mouse.down();
    await page.mouse.move(ticks.x + ticks.width * 0.34, ticks.y + 4, { steps: 4 });
    await page.mouse.up();
    expect(await page.getAttribute('.rule', 'data-minute')).toBe('10');
    const before = await value(page, 'strength');
    await paste(page, 'Sour\nglass: coupe\n\nBuild:\n60 ml white rum 40 %\n30 ml lime juice\n15 ml simple syrup\nshake 12 s over cubes\nstrain\n');
    await page.waitForFunction(() => /^after 10 min, \d/.test(document.querySelector('.rule')?.getAttribute('aria-valuetext') ?? ''));
    expect(await value(page, 'strength')).not.toBe(before);
    expect(await page.getAttribute('.rule', 'data-minute')).toBe('10');
    await page.context().close();
  });
  it.each([['light', 1440, 'light'], ['dark', 1440, 'dark'], ['375 px', 375, 'light']] as const)('is told to everyone, %s', async (_, width, colorScheme) => {
    const { page } = await open(browser, site.address, { viewport: { width, height: 812 }, colorScheme, hasTouch: width === 375 });
    const box = await page.locator('.rule').boundingBox();
    if (width === 375) expect(box!.height).toBeGreaterThanOrEqual(44);
    const ticks = await page.locator('.rule .ticks').boundingBox();
    if (width === 375) { await page.locator('.rule').scrollIntoViewIfNeeded(); const at = await page.locator('.rule .ticks').boundingBox(); await page.touchscreen.tap(at!.x + at!.width * (20 / 30), at!.y + 4); } else await page.mouse.click(ticks!.x + ticks!.width * (20 / 30), ticks!.y + 3);
    expect(await page.getAttribute('.rule', 'data-minute')).toBe('20');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.context().close();
  });
  it('goes through thirty minutes fluidly once they are told', async () => {
    const { page } = await open(browser, site.address);
    await page.focus('.rule');
    await page.keyboard.press('ArrowRight');
    await page.waitForFunction(() => /^after 1 min, \d/.test(document.querySelector('.rule')?.getAttribute('aria-valuetext') ?? ''));
    for (let i = 0; i < 29; i += 1) await page.keyboard.press('ArrowRight');
    expect(await page.getAttribute('.rule', 'data-minute')).toBe('30');
    expect(await level(page)).toBeGreaterThan(60);
    await page.context().close();
  });
});
