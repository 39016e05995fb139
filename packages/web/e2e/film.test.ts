import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, open, paste, ready, serve, type Site } from './browser.ts';

let browser: Browser, site: Site;
beforeAll(async () => { [browser, site] = await Promise.all([launch(), serve()]); });
afterAll(async () => { await browser.close(); await site.stop(); });

const PHONE: BrowserContextOptions = { viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true };
/** Of the clear colada, from 1. */
const STEP = { rum: 1, chill: 21, second: 23, stir: 26, top: 28, last: 29 };

const filmed = async (options: BrowserContextOptions = {}) => {
  const opened = await open(browser, site.address, options);
  await opened.page.evaluate(() => { location.hash = '#film'; });
  await opened.page.waitForSelector('[data-film="1"]');
  return opened;
};
const at = (page: Page): Promise<string | null> => page.getAttribute('[data-film]', 'data-film');
const to = async (page: Page, step: number): Promise<void> => {
  for (let i = 0; i < 60 && Number(await at(page)) !== step; i += 1) await page.keyboard.press(Number(await at(page)) < step ? 'PageDown' : 'PageUp');
  expect(await at(page)).toBe(String(step));
};
const left = async (page: Page): Promise<number> => Number(await page.getAttribute('[data-left]', 'data-left'));
/** Its height on the sheet: of a line of text, the letters' size. */
const size = (page: Page, selector: string): Promise<number> => page.locator(selector).evaluate((e) => Number.parseFloat(getComputedStyle(e).fontSize));

describe('one step, read across the room', () => {
  it('verb, what goes in and the time left are as large as two metres ask, the vessel at the engine’s level', async () => {
    const { page, faults } = await filmed();
    await to(page, STEP.stir);
    expect(await page.textContent('[data-verb]')).toBe('Stir');
    expect(await page.textContent('[data-what]')).toBe('200\u00a0g cubes at -5\u00a0°C');
    expect(await page.textContent('.film-left')).toBe('25s left');
    expect(await page.getAttribute('.film-stage [data-part="bench"]', 'aria-label')).toMatch(/^stirring glass with 145 millilitres and 180 grams of ice$/);
    for (const selector of ['[data-verb]', '[data-what]', '.film-left b', '.film-left span']) expect(await size(page, selector)).toBeGreaterThanOrEqual(68);
    // the level is the rule: one line from the left edge over the vessel to the right edge
    const y = await page.locator('.film-stage [data-pen="washline"]').evaluateAll((lines) => lines.map((l) => { const r = l.getBoundingClientRect(); return [Math.round(r.top), Math.round(r.left), Math.round(r.right)]; }));
    expect(new Set(y.map(([top]) => top)).size).toBe(1);
    expect([Math.min(...y.map((l) => l[1]!)), Math.max(...y.map((l) => l[2]!))]).toEqual([0, 1440]);
    const button = (await page.locator('.film-rule').boundingBox())!;
    expect(Math.abs(button.y + button.height / 2 - y[0]![0]!)).toBeLessThan(4);
    expect(await page.textContent('[data-of]')).toBe('26 of 29');
    expect(await page.textContent('[data-on]')).toBe('then strain over 1 clear cube 50 mm');
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('nothing overlaps and nothing is cut off at any step, wide and on a phone, in English and German', async () => {
    for (const options of [{}, PHONE, { ...PHONE, locale: 'de-DE' }, { locale: 'de-DE' }, { viewport: { width: 1024, height: 700 } }] as BrowserContextOptions[]) {
      const { page } = await filmed(options);
      for (let step = 1; step <= STEP.last; step += 1) {
        await to(page, step);
        await page.waitForTimeout(60);
        const boxes = await page.evaluate(() => ['.film-words', '.film-left', '.film-poured', '.film-cautions'].flatMap((s) => { const r = document.querySelector(s)?.getBoundingClientRect(); return r === undefined || r.height < 2 ? [] : [{ s, x: r.left, y: r.top, right: r.right, bottom: r.bottom }]; }));
        const stage = (await page.locator('.film-stage').boundingBox())!, line = await page.evaluate(() => Number.parseFloat(document.querySelector<HTMLElement>('.film')!.style.getPropertyValue('--film-y')));
        for (const [i, a] of boxes.entries()) {
          expect(a.x, `${step} ${a.s}`).toBeGreaterThanOrEqual(0);
          expect(a.right, `${step} ${a.s}`).toBeLessThanOrEqual(stage.width);
          expect(a.bottom, `${step} ${a.s}`).toBeLessThanOrEqual(stage.y + stage.height + 1);
          if (a.s === '.film-words') expect(a.bottom, `${step} words over the line`).toBeLessThanOrEqual(line + 1); else expect(a.y, `${step} ${a.s} under the line`).toBeGreaterThanOrEqual(line);
          for (const b of boxes.slice(i + 1)) expect(a.x < b.right && b.x < a.right && a.y + 1 < b.bottom && b.y + 1 < a.bottom, `${step}: ${a.s} on ${b.s}`).toBe(false);
        }
        expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      }
      await page.context().close();
    }
  }, 120_000);
  it('a siphon keeps its pressure and its caution in sight', async () => {
    const { page } = await filmed();
    await to(page, STEP.chill);
    expect(await page.textContent('.film-cautions')).toMatch(/bar at .+ Vent before opening; never inhale/);
    await page.context().close();
  });
});

describe('hands', () => {
  it('keys of a board and of a pedal move on and back, Escape leaves; a reload comes back to the step', async () => {
    const { page } = await filmed();
    for (const [key, step] of [[' ', 2], ['ArrowRight', 3], ['PageDown', 4], ['ArrowDown', 5], ['ArrowLeft', 4], ['PageUp', 3], ['ArrowUp', 2], ['Shift+ ', 1], ['PageUp', 1]] as const) { await page.keyboard.press(key); expect(await at(page)).toBe(String(step)); }
    await to(page, STEP.second);
    await page.reload();
    await ready(page);
    await page.waitForSelector(`[data-film="${STEP.second}"]`);
    expect(await page.textContent('[data-what]')).toBe('45\u00a0ml clear pineapple');
    await page.keyboard.press('Escape');
    await page.waitForSelector('.drawing');
    expect(await page.locator('.film').count()).toBe(0);
    expect(await page.textContent('.foot a[href="#film"]')).toBe('Film 29 steps');
    await page.context().close();
  });
  it('a touch on the right half moves on, on the left half back, on the rule starts the time', async () => {
    const { page, faults } = await filmed(PHONE);
    await page.touchscreen.tap(330, 160);
    expect(await at(page)).toBe('2');
    await page.touchscreen.tap(40, 160);
    expect(await at(page)).toBe('1');
    await to(page, STEP.stir);
    const rule = (await page.locator('.film-rule').boundingBox())!;
    expect(rule.height).toBeGreaterThanOrEqual(44);
    await page.touchscreen.tap(rule.x + rule.width / 2, rule.y + rule.height / 2);
    await page.waitForSelector('[data-timer="runs"]');
    expect(await at(page)).toBe(String(STEP.stir));
    await page.touchscreen.tap(rule.x + rule.width / 2, rule.y + rule.height / 2);
    await page.waitForSelector('[data-timer="stands"]');
    await to(page, STEP.rum);
    for (const button of await page.locator('.film button:visible').all()) { const box = (await button.boundingBox())!; expect(box.height, await button.innerText()).toBeGreaterThanOrEqual(44); expect(box.width).toBeGreaterThanOrEqual(44); }
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('the page under it is out of reach while it stands', async () => {
    const { page } = await filmed();
    for (let i = 0; i < 14; i += 1) { await page.keyboard.press('Tab'); expect(await page.evaluate(() => document.activeElement === document.body || document.activeElement?.closest('.film') !== null)).toBe(true); }
    await page.context().close();
  });
});

describe('the time', () => {
  const clocked = async (options: BrowserContextOptions = {}) => {
    const opened = await open(browser, site.address, options);
    await opened.page.clock.install();
    await opened.page.evaluate(() => { location.hash = '#film'; });
    await opened.page.waitForSelector('[data-film="1"]');
    return opened;
  };
  it('several run at once on the clock, through a reload and a sleep; run out unheard the sheet turns once', async () => {
    const { page, faults } = await clocked();
    await to(page, STEP.chill);
    await page.keyboard.press('Enter');
    await to(page, STEP.stir);
    await page.click('.film-rule');
    await page.clock.runFor(10_000);
    const stirring = await left(page);
    expect(stirring).toBeGreaterThan(12);
    expect(stirring).toBeLessThanOrEqual(15);
    const triangle = await page.locator('.film-stage [data-part="film-level"] [data-pen="hand"]').boundingBox(), rule = (await page.locator('.film-rule').boundingBox())!;
    expect((triangle!.x + triangle!.width / 2 - rule.x) / rule.width).toBeCloseTo((25 - stirring) / 25, 1);
    expect(await page.textContent('.film-also')).toMatch(/chill 4 h at 4 °C 3:5\d h|chill 4 h at 4 °C 4:00 h/);
    // stopped it stands, gone on it runs
    await page.keyboard.press('Enter');
    const stood = await left(page);
    await page.clock.runFor(5000);
    expect(await left(page)).toBe(stood);
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.documentElement.dataset['sheet'])).toBe('light');
    await page.clock.runFor((stood - 1) * 1000);
    await page.clock.runFor(1300);
    expect(await page.evaluate(() => document.documentElement.dataset['sheet'])).toBe('dark');
    expect(await left(page)).toBe(0);
    expect(await page.getAttribute('[data-timer]', 'data-timer')).toBe('over');
    await page.clock.runFor(2500);
    expect(await page.evaluate(() => document.documentElement.dataset['sheet'])).toBe('light');
    // asleep for an hour, left and opened again
    await page.clock.fastForward('01:00:00');
    await page.reload();
    await page.waitForSelector(`[data-film="${STEP.stir}"]`);
    expect(await page.textContent('.film-also')).toMatch(/chill 4 h at 4 °C 3:00 h/);
    await to(page, STEP.chill);
    const chilling = await left(page);
    expect(chilling).toBeGreaterThan(3 * 3600 - 120);
    expect(chilling).toBeLessThan(3 * 3600);
    await page.clock.fastForward('04:00:00');
    await page.clock.runFor(300);
    expect(await page.getAttribute('[data-timer]', 'data-timer')).toBe('over');
    expect(await page.textContent('.film-foot [role="status"]')).toBe('time is up: chill 4 h at 4 °C');
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('rings only when it is let, and then the sheet stays', async () => {
    const { page } = await clocked();
    await page.evaluate(() => { const start = OscillatorNode.prototype.start; (window as unknown as { rung: number }).rung = 0; OscillatorNode.prototype.start = function (...all) { (window as unknown as { rung: number }).rung += 1; start.apply(this, all); }; });
    const rung = (): Promise<number> => page.evaluate(() => (window as unknown as { rung: number }).rung);
    await to(page, STEP.stir);
    expect(await page.textContent('[data-rings]')).toMatch(/^silent/);
    await page.keyboard.press('Enter');
    await page.clock.runFor(26_000);
    expect(await rung()).toBe(0);
    await page.clock.runFor(3000);
    await page.click('[data-rings]');
    await page.keyboard.press('Enter');
    await page.clock.runFor(26_000);
    expect(await rung()).toBeGreaterThan(0);
    expect(await page.evaluate(() => document.documentElement.dataset['sheet'])).toBe('light');
    await page.context().close();
  });
});

describe('the screen', () => {
  const stub = async (page: Page, has: boolean): Promise<void> => {
    await page.addInitScript((with_) => {
      const w = window as unknown as { asked: number; locks: { released: boolean; release: () => Promise<void> }[] };
      w.asked = 0; w.locks = [];
      Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: with_ ? { request: () => { w.asked += 1; const lock = { released: false, release: () => { lock.released = true; return Promise.resolve(); } }; w.locks.push(lock); return Promise.resolve(lock); } } : undefined });
    }, has);
    await page.reload();
    await page.waitForSelector('[data-film]');
  };
  it('is kept awake, asked for again when the page is seen again, let go when the view is left', async () => {
    const { page } = await filmed();
    await stub(page, true);
    const asked = (): Promise<number> => page.evaluate(() => (window as unknown as { asked: number }).asked);
    await page.waitForFunction(() => (window as unknown as { asked: number }).asked === 1);
    await page.evaluate(() => { (window as unknown as { locks: { released: boolean }[] }).locks[0]!.released = true; document.dispatchEvent(new Event('visibilitychange')); });
    expect(await asked()).toBe(2);
    await page.keyboard.press('Escape');
    await page.waitForFunction(() => (window as unknown as { locks: { released: boolean }[] }).locks.every((l) => l.released));
    await page.context().close();
  });
  it('where it cannot be, it is said', async () => {
    const { page } = await filmed();
    await stub(page, false);
    expect(await page.textContent('[data-awake="no"]')).toBe('The screen may go dark: this browser cannot keep it awake.');
    await page.context().close();
  });
});

describe('as shot', () => {
  const TEXT = () => '[data-text]';
  it('what was poured is typed or stepped, kept, and taken only when asked: one undo', async () => {
    const { page, faults } = await filmed();
    const spec = (await page.textContent(TEXT()))!;
    await to(page, STEP.second);
    const field = page.getByRole('textbox', { name: 'really poured' });
    expect(await field.inputValue()).toBe('45');
    await field.fill('nonsense');
    await field.press('Enter');
    expect(await page.textContent('.film-poured [role="alert"]')).toBe('That is no amount. The line stays as it was.');
    await field.fill('47.5');
    await field.press('Enter');
    expect(await page.getAttribute('.film-poured', 'data-poured')).toBe('typed');
    await to(page, STEP.rum);
    await page.getByRole('button', { name: 'a step more' }).click();
    expect(await page.getByRole('textbox', { name: 'really poured' }).inputValue()).toBe('310');
    expect(await page.textContent(TEXT())).toBe(spec);
    const shot = spec.replace('45 ml clear pineapple', '47.5 ml clear pineapple').replace('300 ml white rum', '310 ml white rum');
    expect(await page.evaluate(() => (JSON.parse(localStorage.getItem('washline/film')!) as { texts: Record<string, string> }).texts['Clear colada'])).toBe(shot);
    await page.reload();
    await page.waitForSelector(`[data-film="${STEP.rum}"]`);
    expect(await page.getByRole('textbox', { name: 'really poured' }).inputValue()).toBe('310');
    await to(page, STEP.last);
    await page.keyboard.press('PageDown');
    expect(await at(page)).toBe('end');
    expect(await page.locator('.film-shot li').allTextContents()).toEqual(['300 ml white rum 40 % 310 ml white rum 40 %', '45 ml clear pineapple 47.5 ml clear pineapple']);
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.click('[data-copy]');
    await page.waitForFunction(() => document.querySelector('.film-shot [role="status"]')?.textContent === 'copied');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(shot);
    expect(await page.textContent(TEXT())).toBe(spec);
    await page.click('[data-take]');
    expect(await page.textContent(TEXT())).toBe(shot);
    await page.getByRole('button', { name: 'undo' }).click();
    expect(await page.textContent(TEXT())).toBe(spec);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});

describe('eyes', () => {
  it.each([['wide', {}], ['dark', { colorScheme: 'dark' }], ['375 px', PHONE], ['German', { locale: 'de-DE' }]] as [string, BrowserContextOptions][])('axe has nothing to find: %s', async (_, options) => {
    const { page, faults } = await filmed({ reducedMotion: 'reduce', ...options });
    for (const step of [STEP.rum, STEP.chill, STEP.stir, STEP.top]) {
      await to(page, step);
      expect((await new AxeBuilder({ page }).analyze()).violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
    }
    await page.keyboard.press('End');
    expect(faults).toEqual([]);
    await page.context().close();
  });
  it('an empty text says that there is nothing to do, and a new text its own steps', async () => {
    const { page, faults } = await open(browser, site.address);
    await paste(page, 'Nothing yet\n');
    await page.evaluate(() => { location.hash = '#film'; });
    await page.waitForSelector('.film');
    expect(await page.textContent('[data-what]')).toBe('There is nothing to do in this spec yet.');
    await page.keyboard.press('Escape');
    await page.waitForSelector('.drawing');
    await paste(page, 'Rickey\nglass: collins\n\nBuild:\n50 ml rum 40 %\n15 ml lime juice\n100 ml soda\n');
    expect(await page.textContent('.foot a[href="#film"]')).toBe('Film 3 steps');
    await page.click('.foot a[href="#film"]');
    await page.waitForSelector('[data-film="1"]');
    expect(await page.textContent('[data-what]')).toBe('50\u00a0ml rum 40\u00a0%');
    expect(await page.locator('.film-stage [data-drawing="glass"]').count()).toBe(1);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
