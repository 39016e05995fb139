import { AxeBuilder } from '@axe-core/playwright';
import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const demo = (name: string): string => readFileSync(new URL(`../../../demo/${name}.drink`, import.meta.url), 'utf8');
const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
const packed = (bytes: Uint8Array): string => `#d=${deflateRawSync(bytes, { level: 9 }).toString('base64url')}`;
const said = (page: Page) => page.locator('.opened:visible');
const OWN = 'Mine\n\n50 ml white rum 40 %\n';
const faultsOf = async (page: Page): Promise<string[]> => (await new AxeBuilder({ page }).analyze()).violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 120)}`);

describe('a drink in a link', () => {
  it('made and copied by the word in the foot, opened elsewhere as a copy; undo brings the former text back', async () => {
    const { page, faults } = await open(browser, site.address, { permissions: ['clipboard-read', 'clipboard-write'] });
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    const spec = demo('daiquiri');
    await paste(page, spec);
    await page.locator('.foot button', { hasText: 'link' }).click();
    await page.locator('.foot [role=status]', { hasText: 'copied' }).waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    expect(link.startsWith(`${site.address}#d=`)).toBe(true);
    await page.context().close();

    const other = await open(browser, site.address, { colorScheme: 'dark' });
    await paste(other.page, OWN);
    await other.page.waitForTimeout(400);
    await other.page.goto('about:blank');
    await other.page.goto(link);
    await said(other.page).waitFor();
    expect(await said(other.page).textContent()).toMatch(/^Opened from a link, as your own copy\./);
    expect(await text(other.page)).toBe(spec);
    expect(other.page.url()).toBe(site.address);
    await other.page.waitForFunction(() => document.querySelector('[data-reading="drink"] [data-figure="strength"]') !== null);
    expect(await value(other.page, 'strength')).toBeGreaterThan(10);
    expect(await faultsOf(other.page)).toEqual([]);
    await other.page.locator('.foot button', { hasText: 'undo' }).click();
    expect(await text(other.page)).toBe(OWN);
    expect(await said(other.page).count()).toBe(0);
    await other.page.locator('.foot button', { hasText: 'redo' }).click();
    await other.page.waitForTimeout(400);
    await other.page.reload();
    await other.page.waitForSelector('[data-figure="strength"]');
    expect(await text(other.page)).toBe(spec);
    await other.page.locator('.foot button', { hasText: 'undo' }).click();
    expect(await text(other.page)).toBe(OWN);
    expect([...faults, ...other.faults]).toEqual([]);
    await other.page.context().close();
  });

  it('put into the address of the open page; the name of a view is no link', async () => {
    const { page, faults } = await open(browser, site.address);
    const before = await text(page);
    for (const hash of ['#hands', '#glass', '#d', '#']) { await page.evaluate((to) => { location.hash = to; }, hash); await page.waitForTimeout(50); }
    expect(await text(page)).toBe(before);
    expect(await said(page).count()).toBe(0);
    await page.evaluate((to) => { location.hash = to; }, packed(Buffer.from(demo('tea-sour'))));
    await said(page).waitFor();
    expect(await text(page)).toBe(demo('tea-sour'));
    await page.evaluate((to) => { location.hash = to; }, packed(Buffer.from(demo('tea-sour'))));
    await page.waitForFunction(() => document.querySelector('.opened')?.textContent === 'The drink of this link is the one that stands here.');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('cut, foreign, too long, no text, with something after its end: a sentence, and nothing is lost', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, OWN);
    const whole = packed(Buffer.from(demo('colada'))), end = Buffer.concat([deflateRawSync(Buffer.from('Rum')), Buffer.from([0, 0])]).toString('base64url');
    const bad: readonly (readonly [string, RegExp])[] = [
      [whole.slice(0, -9), /something of it is missing/], ['#d=a+b/', /no drink that can be read/], ['#d=<script>', /no drink that can be read/], [`#d=${end}`, /after the end/],
      [packed(Buffer.from([0xff, 0xfe, 0x41])), /is no text/], [`#d=${'A'.repeat(1_000_000)}`, /more than a drink may/], [packed(Buffer.alloc(20_000_000, 'rum ')), /more than a drink may/],
    ];
    for (const [hash, sentence] of bad) {
      await page.evaluate((to) => { location.hash = to; }, hash);
      await page.waitForFunction((source) => new RegExp(source).test(document.querySelector('.opened')?.textContent ?? ''), sentence.source);
      expect(await text(page)).toBe(OWN);
      expect(page.url()).toBe(site.address);
    }
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('the same links in the browser\'s own packing as in Node: every demo drink', async () => {
    const { page } = await open(browser, site.address, { permissions: ['clipboard-read', 'clipboard-write'] });
    for (const name of ['clear-colada.de', 'tea-milk-punch', 'pineapple-highball', 'three-floors', 'tonic-from-bark', 'freezer-martini', 'gin-and-tonic', 'orange-daiquiri']) {
      const spec = demo(name);
      await paste(page, spec);
      await page.locator('.foot button', { hasText: /^link/ }).click();
      await page.locator('.foot [role=status]', { hasText: 'copied' }).waitFor();
      const link = await page.evaluate(() => navigator.clipboard.readText());
      await paste(page, OWN);
      await page.evaluate((to) => { location.hash = to; }, link.slice(link.indexOf('#')));
      await page.waitForFunction((all) => document.querySelector('[data-text]')?.textContent === all, spec);
    }
    await page.context().close();
  });

  it('on a phone without a clipboard: the link stands there to be copied, and what was opened is said at the top', async () => {
    const { page, faults } = await open(browser, site.address, { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true });
    await page.evaluate(() => { Object.defineProperty(navigator, 'clipboard', { value: undefined, configurable: true }); });
    const word = page.locator('.foot button', { hasText: /^link/ }), box = (await word.boundingBox())!;
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    await word.tap();
    const field = page.locator('.link-field input');
    await field.waitFor();
    await page.waitForFunction(() => { const f = document.activeElement; return f instanceof HTMLInputElement && f.selectionEnd === f.value.length && f.selectionStart === 0; });
    expect(await field.inputValue()).toMatch(/#d=[\w-]+$/);
    expect((await field.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    expect(await faultsOf(page)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await field.count()).toBe(0);
    await page.evaluate((to) => { location.hash = to; }, packed(Buffer.from(demo('daiquiri'))));
    await said(page).waitFor();
    expect((await said(page).boundingBox())!.y).toBeLessThan(120);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    expect(await faultsOf(page)).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
