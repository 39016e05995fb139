import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const demo = (name: string): string => readFileSync(new URL(`../../../demo/${name}.drink`, import.meta.url), 'utf8');
const pdfOf = async (page: Page): Promise<string> => (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString('latin1');
/** Sizes of the pages of a PDF, pt. */
const pagesOf = (pdf: string): number[][] => [...pdf.matchAll(/\/MediaBox\s*\[([^\]]+)\]/g)].map(([, box = '']) => box.trim().split(/\s+/).slice(2).map(Number));
const onPaper = async (page: Page): Promise<void> => {
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => { dispatchEvent(new Event('beforeprint')); });
};

describe('on paper', () => {
  it.each(['clear-colada', 'colada-with-faults', 'daiquiri', 'gin-and-tonic', 'tea-milk-punch.de', 'three-floors', 'freezer-martini'])('%s is one sheet of A4, upright', async (name) => {
    const { page } = await open(browser, site.address);
    if (name !== 'clear-colada') await paste(page, demo(name));
    await page.waitForFunction(() => document.querySelector('[data-drawing="glass"] [data-layer]') !== null);
    const pages = pagesOf(await pdfOf(page));
    expect(pages.length).toBe(1);
    // ISO 216: A4 is 210 x 297 mm
    expect(pages[0]![0]).toBeCloseTo((210 / 25.4) * 72, 0);
    expect(pages[0]![1]).toBeCloseTo((297 / 25.4) * 72, 0);
    await page.context().close();
  });

  it('has every line of the spec under the drawing, what was found with its line, and what presses', async () => {
    const { page, faults } = await open(browser, site.address);
    const text = demo('colada-with-faults');
    await paste(page, text);
    await page.waitForSelector('.finding.stop');
    expect(await page.locator('.on-paper').count()).toBe(0);
    await onPaper(page);
    const card = (await page.locator('.on-paper').innerText()).replace(/\s+/g, ' ');
    for (const line of text.split('\n').slice(1)) if (line.trim() !== '') expect(card).toContain(line.trim().replace(/\s+/g, ' '));
    const heads = await page.locator('.finding .head').evaluateAll((all) => all.map((one) => (one.lastChild?.textContent ?? '').trim()));
    expect(heads.length).toBeGreaterThan(2);
    for (const head of heads) expect(card).toContain(head);
    expect(card).toContain('never inhale');
    const { drawing, below } = await page.evaluate(() => ({ drawing: document.querySelector('.drawing svg')!.getBoundingClientRect().bottom, below: document.querySelector('.on-paper')!.getBoundingClientRect().top }));
    expect(below).toBeGreaterThanOrEqual(drawing);
    await page.evaluate(() => { dispatchEvent(new Event('afterprint')); });
    expect(await page.locator('.on-paper').count()).toBe(0);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('with fourteen preps lays no hose over words', async () => {
    const { page } = await open(browser, site.address);
    await paste(page, readFileSync(new URL('../../drawing/test/whole-shelf.drink', import.meta.url), 'utf8'));
    await page.waitForFunction(() => document.querySelectorAll('[data-section]').length > 8);
    await onPaper(page);
    const over = await page.evaluate(() => {
      const texts = [...document.querySelectorAll<SVGTextElement>('figure.drawing svg text')].map((text) => ({ said: text.textContent, box: text.getBBox() })), out: string[] = [];
      const hoses = [...document.querySelectorAll<SVGPathElement>('[data-part="hose"] path[data-pen="hose"]')];
      for (const hose of hoses) for (let at = 0; at < hose.getTotalLength(); at += 1) {
        const { x, y } = hose.getPointAtLength(at);
        for (const { said, box } of texts) if (x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height) out.push(said);
      }
      return { hoses: hoses.length, over: [...new Set(out)] };
    });
    expect(over.hoses).toBeGreaterThan(0);
    expect(over.over).toEqual([]);
    await page.context().close();
  });

  it('takes a second sheet for half an hour in the glass, where that is open', async () => {
    const { page } = await open(browser, site.address);
    expect(pagesOf(await pdfOf(page)).length).toBe(1);
    await page.getByRole('button', { name: 'Half an hour in the glass' }).click();
    await page.waitForSelector('[data-later="told"]');
    expect(pagesOf(await pdfOf(page)).length).toBe(2);
    await page.context().close();
  });
});
