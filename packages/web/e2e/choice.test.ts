import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const SPEC = 'Harbour fizz\nglass: highball\n\nCoconut rum (fat wash):\n300 ml white rum 40 %\n40 g virgin coconut oil\nstrain through cheesecloth\n\nBuild:\n60 ml coconut rum\n30 ml lime juice\n';
const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
/** A sheet with the caret at its end. */
async function sheet(page: Page, spec: string): Promise<void> {
  await paste(page, spec);
  expect(await page.locator('[data-drawing="glass"]').count()).toBe(1);
  await page.waitForFunction(() => document.querySelector('.rows [role="status"]') !== null);
}
const names = (page: Page): Promise<string[]> => page.locator('[role="option"] b').allTextContents();
/** The list lies wholly outside the line that is typed. */
async function clear(page: Page, line: number): Promise<void> {
  const list = await page.locator('#choice').boundingBox(), row = await page.locator('.mirror > .row').nth(line - 1).boundingBox();
  if (list === null || row === null) throw new Error('no list or no row');
  expect(list.y >= row.y + row.height || list.y + list.height <= row.y).toBe(true);
}

describe('what may be meant', () => {
  it('comes while one types, with what each thing is; what an arrow chose Enter takes as one thing done', async () => {
    const { page, faults } = await open(browser, site.address);
    await sheet(page, SPEC);
    await page.keyboard.type('20 ml co');
    await page.waitForSelector('#choice');
    expect((await names(page))[0]).toBe('coconut rum');
    expect(await page.locator('[role="option"]').first().textContent()).toContain('fat wash');
    await clear(page, 12);
    const editor = page.locator('[data-editor]');
    expect(await editor.getAttribute('aria-controls')).toBe('choice');
    expect(await editor.getAttribute('aria-activedescendant')).toBeNull();
    await page.keyboard.press('ArrowDown');
    expect(await editor.getAttribute('aria-activedescendant')).toBe('choice-0');
    expect(await page.locator('#choice-0').getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('ArrowDown');
    expect(await editor.getAttribute('aria-activedescendant')).toBe('choice-1');
    await page.keyboard.press('ArrowUp');
    const before = await text(page);
    await page.keyboard.press('Enter');
    expect(await text(page)).toBe(`${SPEC}20 ml coconut rum`);
    expect(await page.locator('#choice').count()).toBe(0);
    expect(await editor.getAttribute('aria-activedescendant')).toBeNull();
    // the caret stands behind what was taken
    await page.keyboard.type('\n');
    expect(await text(page)).toBe(`${SPEC}20 ml coconut rum\n`);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await text(page)).toBe(before);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('says how strong a spirit is; Tab takes, Escape closes, an arrow chooses', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    await page.keyboard.type('10 ml white r');
    await page.waitForSelector('#choice');
    expect(await page.locator('[role="option"]', { hasText: 'white rum' }).first().textContent()).toContain('40 % vol');
    await page.keyboard.press('Escape');
    expect(await page.locator('#choice').count()).toBe(0);
    expect(await text(page)).toBe(`${SPEC}10 ml white r`);
    await page.keyboard.type('u');
    await page.waitForSelector('#choice');
    await page.keyboard.press('Tab');
    expect(await text(page)).toBe(`${SPEC}10 ml white rum`);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('spec');
    await page.context().close();
  });

  it('Enter ends the line where nobody chose: every line stays as it was typed', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    const lines = ['10 ml lime juice', 'strain into a 300 ml bottle', 'stir 20 s', '20 ml co', ''];
    for (const line of lines) {
      await page.keyboard.type(line, { delay: 5 });
      if (line === 'strain into a 300 ml bottle' || line === '20 ml co') await page.waitForSelector('#choice');
      await page.keyboard.press('Enter');
    }
    expect(await text(page)).toBe(`${SPEC}${lines.join('\n')}\n`);
    await page.context().close();
  });

  it('a list that was asked for has its first row chosen', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    await page.keyboard.type('20 ml co');
    await page.keyboard.press('Control+Space');
    await page.waitForSelector('#choice-0[aria-selected="true"]');
    await page.keyboard.press('Enter');
    expect(await text(page)).toBe(`${SPEC}20 ml coconut rum`);
    await page.context().close();
  });

  it('closes where the caret goes elsewhere, and opens again when it is asked for', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    await page.keyboard.type('10 ml whi');
    await page.waitForSelector('#choice');
    await page.keyboard.press('ArrowLeft');
    await page.waitForFunction(() => document.querySelector('#choice') === null);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Control+Space');
    await page.waitForSelector('#choice');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+ArrowLeft');
    await page.keyboard.press('Control+Space');
    await page.context().close();
  });

  it('a pointer takes, and the text keeps the focus', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    await page.keyboard.type('strain through a p');
    await page.waitForSelector('#choice');
    await page.locator('[role="option"]').first().click();
    expect(await text(page)).toMatch(/strain through a p\w+/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('spec');
    await page.context().close();
  });

  it('keeps away while an input method composes', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    const devtools = await page.context().newCDPSession(page);
    await page.keyboard.type('10 ml ');
    await devtools.send('Input.imeSetComposition', { text: 'whi', selectionStart: 3, selectionEnd: 3 });
    await page.waitForTimeout(100);
    expect(await page.inputValue('[data-editor]')).toBe(`${SPEC}10 ml whi`);
    expect(await page.locator('#choice').count()).toBe(0);
    await devtools.send('Input.insertText', { text: 'whi' });
    await page.keyboard.type('t');
    await page.waitForSelector('#choice');
    expect(await text(page)).toBe(`${SPEC}10 ml whit`);
    await page.context().close();
  });

  it('over the line where there is no room under it', async () => {
    const { page } = await open(browser, site.address, { viewport: { width: 1440, height: 600 } });
    const long = SPEC + '5 ml lime juice\n'.repeat(30);
    await sheet(page, long);
    await page.keyboard.type('10 ml whi');
    await page.waitForSelector('#choice');
    await page.locator('.row.here').scrollIntoViewIfNeeded();
    await page.keyboard.type('t');
    await clear(page, long.split('\n').length);
    const box = await page.locator('#choice').boundingBox();
    expect(box!.y + box!.height).toBeLessThanOrEqual(600);
    await page.context().close();
  });

  it('German words in a German spec', async () => {
    const { page, faults } = await open(browser, site.address, { locale: 'de-DE' });
    await page.waitForSelector('html[lang="de"]');
    await sheet(page, 'Hafen\nGlas: Tumbler\n\nAufbau:\n30 ml Limettensaft\n15 s schütteln\n');
    await page.keyboard.type('60 ml wei');
    await page.waitForSelector('#choice');
    expect(await names(page)).toContain('weißer Rum');
    expect(await page.locator('[role="option"]', { hasText: 'weißer Rum' }).textContent()).toContain('Spirituose, 40 % vol');
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('on a phone: rows for a thumb, nothing to the side, axe finds nothing in light and dark', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page } = await open(browser, site.address, { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true, colorScheme });
      await sheet(page, SPEC);
      await page.keyboard.type('20 ml co');
      await page.waitForSelector('#choice');
      for (const one of await page.locator('[role="option"]').all()) expect((await one.boundingBox())!.height).toBeGreaterThanOrEqual(44);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
      await clear(page, 12);
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
      await page.locator('[role="option"]').first().tap();
      expect(await text(page)).toBe(`${SPEC}20 ml coconut rum`);
      await page.context().close();
    }
  });

  it('a letter with its list stands within a frame or two', async () => {
    const { page } = await open(browser, site.address);
    await sheet(page, SPEC);
    await page.keyboard.type('20 ml w');
    const times = await page.evaluate(async () => {
      const editor = document.querySelector<HTMLTextAreaElement>('[data-editor]')!, took: number[] = [];
      for (let n = 0; n < 20; n++) {
        const from = performance.now();
        document.execCommand('insertText', false, n % 2 === 0 ? 'h' : 'i');
        took.push(performance.now() - from);
        if (editor.value.length > 400) break;
        await new Promise((done) => { requestAnimationFrame(() => { setTimeout(done); }); });
        if (n % 2 === 1) { document.execCommand('delete'); document.execCommand('delete'); }
      }
      return took.sort((a, b) => a - b);
    });
    expect(times[Math.floor(times.length / 2)]).toBeLessThan(50);
    await page.context().close();
  });
});
