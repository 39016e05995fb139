import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const MILK = 'Punch\nglass: double rocks\n\nTea punch (clarify with milk):\n250 ml whole milk\n150 ml lemon juice\n300 ml aged rum 40 %\n250 ml black tea\nrest 2 h at 4 °C\nstrain through cheesecloth\n\nBuild:\n90 ml tea punch\nstir 15 s over 150 g cubes at -5 °C\nstrain\n';
const VIEWS: readonly [string, BrowserContextOptions][] = [['wide', {}], ['dark', { colorScheme: 'dark' }], ['375 px', { viewport: { width: 375, height: 812 }, hasTouch: true }], ['320 px', { viewport: { width: 320, height: 700 } }]];

const told = (page: Page) => page.waitForSelector('[data-later="told"]');
const cells = (page: Page): Promise<string[][]> => page.locator('.numbers tbody tr').evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));

describe('half an hour in the glass', () => {
  it('is told when it is opened, from the keyboard, and not before', async () => {
    const { page, faults } = await open(browser, site.address);
    const word = page.getByRole('button', { name: 'Half an hour in the glass' });
    expect(await word.getAttribute('aria-expanded')).toBe('false');
    expect(await page.locator('.told svg path').count()).toBe(0);
    await word.focus();
    await page.keyboard.press('Enter');
    await told(page);
    expect(await word.getAttribute('aria-expanded')).toBe('true');
    // four figures of a drink on ice: some as curves, the rest in words, all of them in the table
    expect(await page.locator('.told [data-part^="course:"]').count()).toBe(4);
    for (const part of await page.locator('.told [data-part^="course:"]').all()) expect(await part.getAttribute('aria-label')).toMatch(/after 30 minutes|after 30,/);
    const rows = await cells(page);
    expect(rows.map(([time]) => time)).toEqual(['poured', 'after 2 min', 'after 5 min', 'after 10 min', 'after 20 min', 'after 30 min']);
    for (const row of rows.slice(1)) { expect(row[1]).toMatch(/°C \(.+ to .+\)/); expect(row[2]).toMatch(/% vol \(.+ to .+\)/); }
    await page.keyboard.press('Enter');
    expect(await page.locator('.told').isVisible()).toBe(false);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('follows the text after it has settled, never in the frame of the stroke', async () => {
    const { page } = await open(browser, site.address);
    await page.click('#later');
    await told(page);
    const before = await cells(page);
    await page.evaluate(() => {
      const editor = document.querySelector<HTMLTextAreaElement>('[data-editor]')!, at = editor.value.indexOf('60 ml coconut rum\n45') + 2;
      editor.focus();
      editor.setSelectionRange(at - 2, at);
    });
    await page.keyboard.type('9');
    expect(await page.getAttribute('.told', 'data-later')).toBe('asked');
    expect(await cells(page)).toEqual(before);
    await told(page);
    expect(await cells(page)).not.toEqual(before);
    await page.context().close();
  });

  it.each(VIEWS)('scrolls nowhere sideways and leaves axe nothing to find: %s', async (_, options) => {
    const { page, faults } = await open(browser, site.address, { reducedMotion: 'reduce', ...options });
    for (const text of [null, MILK]) {
      if (text !== null) await paste(page, text); else await page.click('#later');
      await told(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
      const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)).toEqual([]);
    }
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('is on paper where it is open, with its numbers, and else not', async () => {
    const { page } = await open(browser, site.address);
    await page.waitForSelector('.told', { state: 'attached' });
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.told svg').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('button', { name: 'Half an hour in the glass' }).click();
    await told(page);
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => { dispatchEvent(new Event('beforeprint')); });
    expect(await page.locator('.told svg').isVisible()).toBe(true);
    expect(await page.locator('.numbers').isVisible()).toBe(true);
    await page.context().close();
  });

  it('speaks German', async () => {
    const { page } = await open(browser, site.address, { locale: 'de-DE' });
    await page.getByRole('button', { name: 'Eine halbe Stunde im Glas' }).click();
    await told(page);
    expect((await cells(page))[1]?.[0]).toBe('nach 2 min');
    expect(await page.locator('.told').textContent()).toContain('Temperatur');
    await page.context().close();
  });
});

describe('pressure and cloth', () => {
  it('stand at their vessels, with the caution, and say why', async () => {
    const { page } = await open(browser, site.address);
    const siphon = page.locator('[data-reading="prep:pineapple cloud"]').first();
    expect(await siphon.getAttribute('aria-label')).toMatch(/bar at 5 °C.+chargers.+never inhale/);
    expect(await siphon.textContent()).toMatch(/322 ml of 750/);
    expect(await siphon.textContent()).toMatch(/bar at 5 °C/);
    await siphon.locator('[data-figure="pressure"]').click();
    await page.locator('[data-slip="pressure"] [data-row]').first().waitFor({ timeout: 5000 });
    expect(await page.locator('[data-slip="pressure"]').textContent()).toContain('Vent before opening; never inhale.');
    await page.keyboard.press('Escape');
    await page.locator('[data-reading="prep:coconut rum"] [data-figure="cloth mass"]').first().click();
    await page.locator('[data-slip="cloth mass"] [data-row]').first().waitFor({ timeout: 5000 });
    await page.context().close();
  });
  it('are a list on a phone: the clear liquid of a milk wash is still milk', async () => {
    const { page } = await open(browser, site.address, { viewport: { width: 375, height: 812 } });
    await paste(page, MILK);
    const list = page.locator('.facts');
    expect(await list.isVisible()).toBe(true);
    expect(await list.textContent()).toMatch(/casein.+fat.+whey.+lactose pass: still milk for an allergy/);
    await page.context().close();
  });
});
