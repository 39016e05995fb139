import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const SOUR = 'Sour\nglass: coupe\n\nBuild:\n60 ml white rum\n1 barspoon simple syrup 1:1\n22 ml lime juice\n';
const toBench = (page: Page) => page.getByRole('link', { name: /^Bench/ }).click();
const VIEWS: readonly [string, BrowserContextOptions][] = [['wide', {}], ['dark', { colorScheme: 'dark' }], ['375 px', { viewport: { width: 375, height: 812 }, hasTouch: true }]];

describe('the bench of the page', () => {
  it('is read with every drink: a bottle and a bar spoon of one\'s own, kept through a reload, and none where it is emptied', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, SOUR);
    const strength = await value(page, 'strength'), volume = await value(page, 'volume');
    await toBench(page);
    await page.locator('[data-bench]').fill('Mine\n\nShelf:\nwhite rum: 63 %\n\nTools:\nbar spoon: 9 ml\n');
    await page.getByText(/takes \d numbers/).waitFor();
    await page.getByRole('link', { name: /^Glass/ }).click();
    await page.waitForSelector('[data-figure="strength"]');
    const own = await value(page, 'strength');
    // 60 ml of 63 % instead of 40 %, in a drink that is 9 ml less 4 ml of syrup longer: shares of volumes
    expect(own / strength).toBeGreaterThan(1.45);
    expect(own / strength).toBeLessThan(63 / 40);
    expect(await value(page, 'volume')).toBeGreaterThan(volume + 3);
    expect(await page.inputValue('[data-editor]')).toBe(SOUR);
    await page.waitForTimeout(400);
    await page.reload();
    await page.waitForSelector('[data-figure="strength"]');
    expect(await value(page, 'strength')).toBeCloseTo(own, 9);
    await toBench(page);
    await page.locator('[data-bench]').fill('');
    await page.getByText('the usual of the tables').waitFor();
    await page.getByRole('link', { name: /^Glass/ }).click();
    await page.waitForSelector('[data-figure="strength"]');
    await page.waitForFunction((was) => Math.abs(Number(document.querySelector('[data-figure="strength"]')?.getAttribute('data-value')) - was) < 1e-6, strength);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('says what it does not understand with the line of the bench, and leaves the sheet\'s margin alone', async () => {
    const { page } = await open(browser, site.address);
    await toBench(page);
    await page.locator('[data-bench]').fill('Mine\n\nTools:\nbar spoon: many\n');
    await page.locator('#bench-said li').waitFor();
    expect(await page.locator('#bench-said li').innerText()).toMatch(/^line 4:/);
    expect(await page.locator('[data-bench]').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.finding.problem').count()).toBe(0);
    expect(Number(await page.getAttribute('html', 'data-problems'))).toBe(0);
    await page.context().close();
  });

  it('offers the lines it may have: first what this drink would take, each with its number ready to be typed over', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, SOUR);
    await toBench(page);
    const offered = () => page.locator('[data-may]').allInnerTexts();
    await page.getByRole('heading', { name: 'This drink would take' }).waitFor();
    expect((await offered()).slice(0, 4)).toEqual(expect.arrayContaining(['room: 22 °C', 'bar spoon: 4.2 ml']));
    await page.getByRole('button', { name: 'bar spoon: 4.2 ml' }).click();
    await page.keyboard.type('9');
    expect(await page.inputValue('[data-bench]')).toBe('bar spoon: 9 ml\n');
    expect(await offered()).not.toContain('bar spoon: 4.2 ml');
    await page.getByText(/takes one number/).waitFor();
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('begins with an example that is understood whole', async () => {
    const { page } = await open(browser, site.address);
    await toBench(page);
    await page.getByRole('button', { name: 'begin with an example' }).click();
    await page.getByText(/takes \d+ numbers/).waitFor();
    expect(await page.locator('#bench-said li').count()).toBe(0);
    await page.context().close();
  });

  it.each(VIEWS)('scrolls nowhere sideways and leaves axe nothing to find: %s', async (_name, options) => {
    const { page, faults } = await open(browser, site.address, options);
    await toBench(page);
    await page.locator('[data-bench]').fill('Mine\n\nTools:\nbar spoon: many\n');
    await page.locator('#bench-said li').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
