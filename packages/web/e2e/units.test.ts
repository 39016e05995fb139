import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const drawn = async (page: Page): Promise<string> => (await page.locator('.drawing svg').textContent()) ?? '';
const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
const SOUR = 'Sour\n\n60 ml white rum 40 %\n22.5 ml lime juice\n15 ml simple syrup 1:1\nshake 12 s over 150 g cubes\nstrain into a coupe\n';
const faultsOf = async (page: Page): Promise<string[]> => (await new AxeBuilder({ page }).analyze()).violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 120)}`);

describe('units of the drawing', () => {
  it('volumes, amounts and degrees follow the words in the foot; text and marks stay, and the device keeps the choice', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, SOUR);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(1);
    const volume = await value(page, 'volume');
    expect(await drawn(page)).toContain('60 ml white rum');
    expect(await drawn(page)).toMatch(/\d °C/);
    await page.selectOption('[data-units]', 'oz');
    await page.selectOption('[data-degrees]', '°F');
    const now = await drawn(page);
    for (const said of ['2 oz white rum', '3/4 oz lime juice', '1/2 oz simple syrup', '°F']) expect(now).toContain(said);
    expect(now).not.toMatch(/\d ml|°C/);
    expect(await text(page)).toBe(SOUR);
    expect(await value(page, 'volume')).toBe(volume);
    expect(await page.getAttribute('[data-figure="volume"]', 'data-unit')).toBe('mL');
    await page.locator('[data-figure="volume"]').first().focus();
    await page.keyboard.press('Enter');
    expect(await page.textContent('.slip .value')).toMatch(new RegExp(`^${(volume / 29.5735).toFixed(1)} oz`));
    await page.keyboard.press('Escape');
    await page.reload();
    await page.waitForFunction(() => document.querySelector('.drawing svg')?.textContent?.includes('2 oz white rum') === true);
    expect(await page.inputValue('[data-units]')).toBe('oz');
    await page.selectOption('[data-units]', 'cl');
    expect(await drawn(page)).toContain('6 cl white rum');
    await page.selectOption('[data-units]', 'ml');
    expect(await drawn(page)).toContain('60 ml white rum');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a spec with US measures is read in ounces where nothing was chosen', async () => {
    const { page } = await open(browser, site.address);
    await paste(page, SOUR.replace('Sour\n', 'Sour\nmeasures: us\n'));
    expect(await page.inputValue('[data-units]')).toBe('oz');
    expect(await drawn(page)).toContain('2 oz white rum');
    await page.selectOption('[data-units]', 'ml');
    expect(await drawn(page)).toContain('60 ml white rum');
    await page.context().close();
  });

  it('on a phone, dark and in German: reached by finger and keyboard, nothing scrolls sideways', async () => {
    const { page, faults } = await open(browser, site.address, { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true, colorScheme: 'dark', locale: 'de-DE' });
    await page.locator('[data-units]').focus();
    await page.selectOption('[data-units]', 'oz');
    await page.selectOption('[data-degrees]', '°F');
    for (const of of ['[data-units]', '[data-degrees]']) { const box = (await page.locator(of).boundingBox())!; expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44); }
    expect(await page.textContent('.phone-head')).toMatch(/\d,\d oz/);
    expect(await drawn(page)).toMatch(/\d oz/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    expect(await faultsOf(page)).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('amounts are told as they are weighed: a rum of 40 % by the alcoholometric tables, a syrup by its own density', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, SOUR);
    await page.selectOption('[data-units]', 'g');
    // OIML R 22: 948.05 kg/m3 at 40 % vol, 20 °C; ICUMSA SPS-4: 1229.6 kg/m3 at 50 % sucrose
    await page.waitForFunction(() => document.querySelector('.drawing svg')?.textContent?.includes('g white rum') === true);
    const now = await drawn(page), grams = (of: string): number => Number(new RegExp(`(\\d+(?:\\.\\d)?) g ${of}`).exec(now)?.[1]);
    expect(grams('white rum')).toBe(Math.round(60 * 0.94805));
    expect(grams('simple syrup')).toBeCloseTo(15 * 1.2296, 1);
    expect(grams('lime juice')).toBeGreaterThan(22.5);
    expect(await page.textContent('[data-figure="volume"]')).toMatch(/ml/);
    expect(await text(page)).toBe(SOUR);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('what was found is told in them too', async () => {
    const { page } = await open(browser, site.address);
    await paste(page, 'Set fat\n\nRum (fat wash):\n300 ml white rum 40 %\n40 g virgin coconut oil, melted at 40 °C\nrest 4 h at 20 °C\nfreeze 12 h at -18 °C\nstrain through cheesecloth\n\nBuild:\n60 ml rum\n');
    await page.waitForSelector('.finding');
    expect(await page.locator('.margin').innerText()).toMatch(/\d °C/);
    await page.selectOption('[data-degrees]', '°F');
    expect(await page.locator('.finding .head, .finding p').allInnerTexts().then((all) => all.join(' '))).toMatch(/68 °F/);
    await page.context().close();
  });
});
