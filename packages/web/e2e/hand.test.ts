import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, serve, value, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const text = async (page: Page): Promise<string> => (await page.textContent('[data-text]')) ?? '';
const changed = (before: string, after: string): string[] => { const was = before.split('\n'); return after.split('\n').filter((line, i) => line !== was[i]); };
/** The middle of where a level can be taken hold of, left of its words. */
async function gripOf(page: Page, of: string): Promise<{ x: number; y: number }> {
  const box = await page.locator(`[data-level="${of}"] .target`).boundingBox();
  if (box === null) throw new Error(`no level ${of}`);
  return { x: box.x + box.width * 0.3, y: box.y + box.height / 2 };
}
async function drag(page: Page, of: string, by: number, end = true): Promise<void> {
  const { x, y } = await gripOf(page, of);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 6; i += 1) { await page.mouse.move(x, y + (by * i) / 6); await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => { requestAnimationFrame(done); }); })); }
  if (end) await page.mouse.up();
}

describe('levels under a hand', () => {
  it('dragged in the glass: its measure changes by steps, everything follows, and it is one thing done', async () => {
    const { page, faults } = await open(browser, site.address);
    expect(await page.locator('[data-drawing="glass"] [data-layer]').count()).toBe(2);
    const before = await text(page), level = await value(page, 'washline'), strength = await value(page, 'strength');
    await drag(page, 'layer:0', -20, false);
    // under the hand already, before it lets go
    expect(await page.inputValue('[data-editor]')).not.toBe(before);
    expect(await page.textContent('.at-hand')).toMatch(/^\d+(\.\d+)? ml simple syrup 1:1$/);
    expect(await page.locator('.row.here').count()).toBe(1);
    await page.mouse.up();
    const after = await text(page), lines = changed(before, after);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^\d+(\.\d+)? ml simple syrup 1:1$/);
    expect(Number.parseFloat(lines[0]!) % 2.5).toBe(0);
    expect(await value(page, 'washline')).toBeGreaterThan(level + 2);
    expect(await value(page, 'strength')).toBeLessThan(strength);
    expect(await page.locator('.foot .again').first().textContent()).toBe('10 ml simple syrup 1:1');
    await page.locator('.foot button', { hasText: 'undo' }).click();
    expect(await text(page)).toBe(before);
    await page.locator('.foot button', { hasText: 'redo' }).click();
    expect(await text(page)).toBe(after);
    // also when the page comes again
    await page.waitForTimeout(400);
    await page.reload();
    await page.waitForSelector('[data-level="layer:0"]');
    expect(await text(page)).toBe(after);
    await page.locator('.foot button', { hasText: 'undo' }).click();
    expect(await text(page)).toBe(before);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('let go with Escape it was never touched', async () => {
    const { page } = await open(browser, site.address);
    const before = await text(page);
    await drag(page, 'prep:coconut rum', -24, false);
    expect(changed(before, await text(page)).join()).toMatch(/ml white rum 40 %$/);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await text(page)).toBe(before);
    expect(await page.locator('.foot .again').count()).toBe(0);
    await page.context().close();
  });

  it('the washline scales the whole drink to the brim and no further', async () => {
    const { page } = await open(browser, site.address);
    const before = await text(page);
    await drag(page, 'washline', -16, false);
    expect(await page.textContent('.at-hand')).toMatch(/^× 1\.\d+$/);
    await page.mouse.up();
    expect(changed(before, await text(page)).length).toBe(5);
    await drag(page, 'washline', -300);
    const free = await page.evaluate(() => document.querySelector('[data-washline]')?.getAttribute('aria-label'));
    const [level, brim] = (free?.match(/\d+(\.\d+)?/g) ?? []).map(Number);
    expect(level).toBeLessThanOrEqual(brim!);
    expect(level).toBeGreaterThan(brim! - 4);
    await page.context().close();
  });

  it('from the keyboard: a step, five, a fine one; focus stays and the value is told', async () => {
    const { page } = await open(browser, site.address);
    const before = await text(page), handle = page.locator('[data-level="layer:0"]');
    expect(await handle.getAttribute('role')).toBe('slider');
    await handle.focus();
    const said = await handle.getAttribute('aria-valuetext');
    await page.keyboard.press('ArrowUp');
    expect(changed(before, await text(page))).toEqual(['12.5 ml simple syrup 1:1']);
    expect(await handle.getAttribute('aria-valuetext')).not.toBe(said);
    await page.keyboard.press('Shift+ArrowDown');
    expect(changed(before, await text(page))).toEqual(['12 ml simple syrup 1:1']);
    await page.keyboard.press('PageUp');
    expect(changed(before, await text(page))).toEqual(['22.5 ml simple syrup 1:1']);
    await page.keyboard.press('Home');
    expect(changed(before, await text(page))).toEqual(['0.5 ml simple syrup 1:1']);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-level'))).toBe('layer:0');
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('Control+z');
    await page.context().close();
  });

  it('in the sheet: Alt and an arrow turn the amount of the caret\'s line; a vessel pressed brings the caret to its lines', async () => {
    const { page } = await open(browser, site.address);
    const before = await text(page), vessel = (await page.locator('[data-section="clear pineapple"] .part-wall').first().boundingBox())!;
    await page.mouse.click(vessel.x + 6, vessel.y + vessel.height - 8);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('spec');
    expect(await page.textContent('.row.here')).toBe('0.75 g agar in 75 ml water');
    await page.keyboard.press('Alt+ArrowUp');
    expect(changed(before, await text(page))).toEqual(['0.8 g agar in 75 ml water']);
    await page.keyboard.press('Alt+Shift+ArrowDown');
    expect(changed(before, await text(page))).toEqual(['0.79 g agar in 75 ml water']);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await text(page)).toBe(before);
    await page.context().close();
  });

  it('by touch on a phone, at the washline\'s own triangle', async () => {
    const { page, faults } = await open(browser, site.address, { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true });
    const before = await text(page), box = (await page.locator('[data-level="washline"] .target').boundingBox())!;
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    const touch = await page.context().newCDPSession(page), x = box.x + box.width / 2, y = box.y + box.height / 2;
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    for (let i = 1; i <= 6; i += 1) { await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x, y: y - 3 * i }] }); await page.waitForTimeout(30); }
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await page.waitForTimeout(100);
    expect(changed(before, await text(page)).length).toBe(5);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('has no fault of access while a level is held by the keyboard', async () => {
    const { page } = await open(browser, site.address);
    await page.locator('[data-level="layer:1"]').focus();
    await page.keyboard.press('ArrowUp');
    expect((await new AxeBuilder({ page }).analyze()).violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 120)}`)).toEqual([]);
    await page.context().close();
  });
});
