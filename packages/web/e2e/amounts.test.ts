import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const text = (page: Page): Promise<string> => page.inputValue('[data-editor]');
const lineOf = async (page: Page, of: string): Promise<string> => (await text(page)).split('\n').filter((line) => line.includes(of)).at(-1) ?? '';
const amount = (page: Page, name: string) => page.locator(`[data-level^="amount:build"][aria-label="${name}"]`);
/** The demo drink with its amounts lettered beside the vessels. */
async function here(options = {}): Promise<{ page: Page; faults: readonly string[] }> {
  const { page, faults } = await open(browser, site.address, options);
  await page.waitForFunction(() => document.querySelectorAll('[data-level^="amount:build"]').length >= 4);
  return { page, faults };
}

describe('an amount in the drawing', () => {
  it('is drawn by a pointer: eight pixels are a step of its jigger, Escape leaves it as it was', async () => {
    const { page, faults } = await here();
    expect(await lineOf(page, 'lime acid')).toBe('10 ml lime acid 6 %');
    const box = (await amount(page, '10 ml lime acid').boundingBox())!, x = box.x + box.width / 2, y = box.y + box.height / 2;
    const strength = await page.getAttribute('[data-figure="acidity"]', 'data-value');
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 24, { steps: 3 });
    await page.waitForFunction(() => /17\.5 ml lime acid/.test((document.querySelector('[data-editor]') as HTMLTextAreaElement).value));
    await page.keyboard.press('Escape');
    expect(await lineOf(page, 'lime acid')).toBe('10 ml lime acid 6 %');
    await page.mouse.up();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 24, { steps: 3 });
    await page.mouse.up();
    expect(await lineOf(page, 'lime acid')).toBe('17.5 ml lime acid 6 %');
    expect(await page.getAttribute('[data-figure="acidity"]', 'data-value')).not.toBe(strength);
    // one thing done
    await page.getByRole('button', { name: /^undo/ }).click();
    expect(await lineOf(page, 'lime acid')).toBe('10 ml lime acid 6 %');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('turns by keys, and keeps the focus', async () => {
    const { page } = await here();
    await amount(page, '45 ml clear pineapple').focus();
    await page.keyboard.press('ArrowUp');
    expect(await lineOf(page, 'clear pineapple')).toBe('47.5 ml clear pineapple');
    await page.keyboard.press('Shift+ArrowDown');
    const fine = Number.parseFloat(await lineOf(page, 'clear pineapple'));
    expect(fine).toBeLessThan(47.5);
    expect(fine).toBeGreaterThanOrEqual(46.5);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-level'))).toBe('amount:build/1');
    await page.context().close();
  });

  it('is typed over: by a press, by Enter, by a figure; what is no amount is said and stays', async () => {
    const { page, faults } = await here();
    await amount(page, '60 ml coconut rum').click();
    await page.keyboard.type('37,5');
    await page.keyboard.press('Enter');
    expect(await lineOf(page, 'ml coconut rum')).toBe('60 ml coconut rum');                       // that of the variant is another line
    expect((await text(page)).split('Build:\n')[1]?.split('\n')[0]).toBe('37.5 ml coconut rum');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-level'))).toBe('amount:build/0');
    await page.keyboard.press('4');
    await page.keyboard.type('2 1/2');
    await page.keyboard.press('Enter');
    expect((await text(page)).split('Build:\n')[1]?.split('\n')[0]).toBe('42.5 ml coconut rum');
    await page.keyboard.press('Enter');
    await page.keyboard.type('some');
    await page.keyboard.press('Enter');
    expect(await page.locator('.typed input').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.typed [role="alert"]').textContent()).toContain('a number');
    const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await page.locator('.typed').count()).toBe(0);
    expect((await text(page)).split('Build:\n')[1]?.split('\n')[0]).toBe('42.5 ml coconut rum');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('is put by leaving it, and who leaves it is where they went', async () => {
    const { page, faults } = await here(), first = async (): Promise<string> => (await text(page)).split('Build:\n')[1]?.split('\n')[0] ?? '';
    const at = (): Promise<string | null> => page.evaluate(() => document.activeElement?.getAttribute('data-level') ?? document.activeElement?.localName ?? null);
    const open = async (typed: string): Promise<void> => { await amount(page, await first()).click(); await page.keyboard.type(typed); };
    await open('55');
    await page.locator('[data-editor]').click();
    expect([await first(), await at()]).toEqual(['55 ml coconut rum', 'textarea']);
    await open('50');
    await page.keyboard.press('Tab');
    expect(await first()).toBe('50 ml coconut rum');
    expect(await at()).toMatch(/^(amount|prep|layer|washline)/);
    expect(await at()).not.toBe('amount:build/0');
    await open('45');
    await page.locator('[data-level="amount:build/1"]').click();
    expect([await first(), await at(), await page.locator('.typed').count()]).toEqual(['45 ml coconut rum', 'input', 1]);
    await page.locator('[data-editor]').click();
    await open('nothing');
    await page.locator('[data-editor]').click();
    expect([await first(), await at(), await page.locator('.typed').count()]).toEqual(['45 ml coconut rum', 'textarea', 0]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('is typed over on a phone, with a box for a finger and a keyboard of figures', async () => {
    const { page } = await here({ viewport: { width: 375, height: 812 }, hasTouch: true });
    await amount(page, '10 ml lime acid').tap();
    const box = (await page.locator('.typed').boundingBox())!;
    expect(box.height).toBeGreaterThanOrEqual(44);
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(375);
    expect(await page.locator('.typed input').getAttribute('inputmode')).toBe('decimal');
    await page.locator('.typed input').fill('12');
    await page.locator('.typed input').press('Enter');
    expect(await lineOf(page, 'lime acid')).toBe('12 ml lime acid 6 %');
    await page.context().close();
  });
});
