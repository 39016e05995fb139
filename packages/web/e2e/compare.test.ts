import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const told = (page: Page) => page.waitForSelector('.compare[aria-busy="false"] .held');
const VIEWS: readonly [string, BrowserContextOptions][] = [['wide', {}], ['dark', { colorScheme: 'dark' }], ['375 px', { viewport: { width: 375, height: 812 }, hasTouch: true }], ['between', { viewport: { width: 900, height: 800 } }]];

describe('two sides', () => {
  it('opens from the foot against the classic the drink is named after: two glasses at one scale, what differs with its difference', async () => {
    const { page, faults } = await open(browser, site.address);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    const strength = await value(page, 'strength');
    await page.getByRole('link', { name: /^Compare/ }).click();
    await told(page);
    expect(await page.inputValue('.against select')).toBe('classic:Colada');
    expect(await page.locator('.compare [data-washline]').count()).toBe(2);
    const row = page.locator('[data-difference="strength"]');
    const difference = Number(await row.getAttribute('data-value'));
    expect(Number(await row.getAttribute('data-low'))).toBeGreaterThan(0);
    expect(difference).toBeGreaterThan(0);
    expect(Number.parseFloat((await row.locator('td').last().textContent()) ?? '')).toBeCloseTo(strength, 0);
    expect(Number.parseFloat((await row.locator('td').first().textContent()) ?? '')).toBeCloseTo(strength - difference, 0);
    // the answer in the foot is the difference in strength
    expect(await page.getByRole('link', { name: /^Compare/ }).textContent()).toMatch(/\+ \d+(\.\d)? % vol/);
    expect(await page.locator('.changed tr').count()).toBeGreaterThan(3);
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('holds the text against itself as it was kept: only what was changed since stands there', async () => {
    const { page } = await open(browser, `${site.address}#compare`);
    await paste(page, 'Sour\nglass: coupe\n\nBuild:\n60 ml white rum 40 %\n30 ml lime juice\n15 ml simple syrup\nshake 12 s over cubes\nstrain\n');
    await page.getByRole('button', { name: 'keep this text as the other side' }).click();
    await told(page);
    await page.waitForSelector('[data-compare="kept"]');
    await page.waitForFunction(() => document.querySelectorAll('[data-difference]').length === 0);
    expect(await page.locator('.alike').textContent()).toContain('Strength');
    await paste(page, 'Sour\nglass: coupe\n\nBuild:\n45 ml white rum 40 %\n30 ml lime juice\n15 ml simple syrup\nshake 12 s over cubes\nstrain\n');
    await page.waitForSelector('[data-difference="strength"]');
    expect(await page.locator('.changed tbody tr').allTextContents()).toEqual(['60 ml white rum 40 %45 ml white rum 40 %']);
    expect(Number(await page.getAttribute('[data-difference="strength"]', 'data-high'))).toBeLessThan(0);
    // it is there after the page was left and opened again
    await page.reload();
    await told(page);
    expect(await page.inputValue('.against select')).toBe('kept');
    await page.context().close();
  });
  it('holds a variant of the spec against it', async () => {
    const { page } = await open(browser, `${site.address}#compare`);
    await told(page);
    await page.selectOption('.against select', 'variant:vegan');
    await page.waitForSelector('[data-compare="variant:vegan"]');
    await page.waitForFunction(() => [...document.querySelectorAll('.compare svg text')].some((one) => one.textContent === 'Clear colada, vegan'));
    expect(await page.locator('.compare [data-washline]').count()).toBe(2);
    expect(await page.locator('.changed').count()).toBe(0);
    await page.context().close();
  });
  it('says so where there is nothing to draw', async () => {
    const { page, faults } = await open(browser, `${site.address}#compare`);
    await told(page);
    await paste(page, 'Nothing yet\n');
    await page.waitForFunction(() => document.querySelector('.held')?.textContent?.includes('no level yet'));
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it.each(VIEWS)('scrolls nowhere sideways and leaves axe nothing to find: %s', async (_, options) => {
    const { page } = await open(browser, `${site.address}#compare`, options);
    await told(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(options.viewport?.width ?? 1440);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.context().close();
  });
  it('speaks German', async () => {
    const { page } = await open(browser, `${site.address}#compare`, { locale: 'de-DE' });
    await told(page);
    expect(await page.textContent('.against')).toContain('gegen');
    expect(await page.textContent('.alike, .held')).toContain('Stärke');
    await page.context().close();
  });
});
