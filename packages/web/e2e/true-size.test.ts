import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, ready, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

/** CSS px that a millimetre of the glass is drawn as. */
const scale = (page: Page): Promise<number> => page.evaluate(() => { const svg = document.querySelector<SVGSVGElement>('.drawing svg'); return (svg?.getBoundingClientRect().width ?? 0) / (svg?.viewBox.baseVal.width ?? 1); });

describe('the glass at true size', () => {
  it('is drawn 1 : 1 once a card was laid on the screen, and is after a reload', async () => {
    const { page, faults } = await open(browser, site.address);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    const before = await scale(page);
    await page.getByRole('button', { name: 'true size' }).click();
    const edge = page.getByRole('slider', { name: 'right edge of the card' });
    expect(await edge.evaluate((node) => node === document.activeElement)).toBe(true);
    // a screen of 3.5 px per mm: 300 px along the card; keys go by half a px, a pointer freely
    const box = await edge.boundingBox(), card = await page.locator('.card').boundingBox();
    if (box === null || card === null) throw new Error('no card');
    await page.mouse.move(box.x + 24, box.y + 80);
    await page.mouse.down();
    await page.mouse.move(box.x + 24 + 300 - card.width, box.y + 90);
    await page.mouse.up();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowLeft');
    // height of an ID-1 card by its length: 53.98 / 85.60 (ISO/IEC 7810)
    const laid = await page.locator('.card').boundingBox();
    expect(laid!.height / laid!.width).toBeCloseTo(53.98 / 85.6, 2);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.getByRole('button', { name: 'the card fits' }).click();
    await page.waitForSelector('[data-drawing="glass"]');
    expect(await scale(page)).toBeCloseTo(laid!.width / 85.6, 1);
    expect(await scale(page)).not.toBeCloseTo(before, 1);
    await page.reload();
    await ready(page);
    expect(await scale(page)).toBeCloseTo(before, 3);
    await page.getByRole('button', { name: 'true size' }).click();
    expect(await scale(page)).toBeCloseTo(laid!.width / 85.6, 1);
    expect(await page.getByText('20 mm of the glass, 1 : 1').count()).toBe(1);
    await page.getByRole('button', { name: 'whole drawing' }).click();
    expect(await scale(page)).toBeCloseTo(before, 3);
    expect(faults).toEqual([]);
    await page.close();
  });
  it('says where a window is too small for it, and leaves the drawing as it was', async () => {
    const { page } = await open(browser, site.address, { viewport: { width: 1200, height: 560 } });
    await page.evaluate(() => localStorage.setItem('washline/screen', '6'));
    await page.reload();
    await ready(page);
    const before = await scale(page);
    await page.getByRole('button', { name: 'true size' }).click();
    expect(await page.getByText('too tall for this window at true size').count()).toBe(1);
    expect(await scale(page)).toBe(before);
    await page.close();
  });
  it('is left with Escape; a thing kept that is no number is as if nothing was', async () => {
    const { page } = await open(browser, site.address, { viewport: { width: 375, height: 812 } });
    await page.evaluate(() => localStorage.setItem('washline/screen', 'wide'));
    await page.reload();
    await ready(page);
    await page.getByRole('button', { name: 'true size' }).click();
    // the card's code comes over the line when it is first asked for, and takes the focus then
    await page.waitForFunction(() => document.activeElement?.getAttribute('role') === 'slider');
    await page.keyboard.press('Escape');
    await page.waitForSelector('[data-drawing="glass"]');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    await page.close();
  });
});
