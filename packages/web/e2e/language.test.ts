import type { Browser } from 'playwright-core';
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const COLD = 'Kalter Becher\nGlas: Tumbler\n\nBecher (Gelee):\n2 Blatt Gold-Gelatine\n200 ml Orangensaft, bei 70 °C\n4 h bei 4 °C kühlen\n\nAufbau:\n60 g Becher\n30 ml weißer Rum 40 %\n';
const RUM = 'Rum\n60 ml white rum 40 %\n30 ml lime juice\nshake 12 s over 150 g cubes\nfrobnicate\n';

describe('the language of the page', () => {
  it('follows the browser: German where it asks for German first', async () => {
    const { page, faults } = await open(browser, site.address, { locale: 'de-AT' });
    await page.waitForSelector('html[lang="de"]');
    expect(await page.locator('.foot button').allTextContents()).toEqual(expect.arrayContaining(['English', 'drucken']));
    expect(await page.getAttribute('[data-editor]', 'aria-label')).toBe('Die Angabe');
    await page.waitForFunction(() => document.querySelector('[data-drawing="glass"]')?.textContent?.includes('Schaum'));
    expect(await page.locator('[data-reading="drink"] [data-figure="strength"]').first().getAttribute('aria-label')).toMatch(/^Stärke, der Drink: \d+,\d % vol/);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('turns by its button, and the device keeps that', async () => {
    const { page, faults } = await open(browser, site.address, { locale: 'en-GB' });
    expect(await page.getAttribute('html', 'lang')).toBe('en');
    await paste(page, RUM);
    const strength = await value(page, 'strength');
    expect(await page.locator('[data-problem="unread"]').textContent()).toContain('not understood');
    await page.click('[data-language="de"]');
    await page.waitForSelector('html[lang="de"]');
    await page.waitForFunction(() => document.querySelector('[data-problem="unread"]')?.textContent?.includes('nicht zu verstehen'));
    expect(await value(page, 'strength')).toBe(strength);
    expect(await page.textContent('[data-text]')).toBe(RUM);
    await page.reload();
    await page.waitForSelector('html[lang="de"]');
    await page.click('[data-language="en"]');
    await page.waitForSelector('html[lang="en"]');
    await page.waitForFunction(() => document.querySelector('[data-problem="unread"]')?.textContent?.includes('not understood'));
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('a German spec on an English page is added to in German', async () => {
    const { page } = await open(browser, site.address, { locale: 'en-GB' });
    await paste(page, COLD);
    await page.waitForSelector('[data-finding="gel-not-soaked"]');
    expect(await page.locator('[data-finding="gel-not-soaked"]').textContent()).toContain('unsoaked');
    await page.waitForTimeout(300);
    await page.click('[data-remedy="gel-not-soaked"]');
    await page.waitForFunction(() => document.querySelector('[data-finding="gel-not-soaked"]') === null);
    expect(await page.textContent('[data-text]')).toContain('2 Blatt Gold-Gelatine, 10 min in kaltem Wasser eingeweicht');
    await page.context().close();
  });
  it('in English nothing of German comes over the line', async () => {
    const own = await serve();
    const context = await browser.newContext({ locale: 'en-US', serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(own.address);
    await page.waitForFunction(() => Number(document.documentElement.dataset['read'] ?? 0) >= 2);
    await page.waitForTimeout(300);
    expect([...own.sent.keys()].filter((name) => /german|de-|\.de/.test(name))).toEqual([]);
    await context.close();
    await own.stop();
  });
});
