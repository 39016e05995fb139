import { readdirSync, readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { inflate } from './inflate.ts';
import { LINK, LINK_MOST, linkOf, textOfLink } from './link.ts';

const demos = new URL('../../../../demo/', import.meta.url);
const packed = (bytes: Uint8Array, options: object = {}): string => LINK + deflateRawSync(bytes, options).toString('base64url');
/** Numbers that are the same at every run, 0 to below 1. */
function dice(seed: number): () => number {
  let state = seed;
  return () => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return state / 2 ** 32; };
}
const SIGNS = ['rum', 'lime', 'ml', ' ', '\n', '½', 'ä', '°C', '🍍', '60', '茶', ':', '#', '-', 'x'];
function textFrom(random: () => number): string { return Array.from({ length: Math.floor(random() * 600) }, () => SIGNS[Math.floor(random() * SIGNS.length)]).join(''); }

describe('a drink in a link', () => {
  it('comes back as it was: every demo drink and 500 random texts', async () => {
    const names = readdirSync(demos).filter((name) => name.endsWith('.drink'));
    expect(names.length).toBeGreaterThan(10);
    for (const name of names) {
      const text = readFileSync(new URL(name, demos), 'utf8'), link = await linkOf(text);
      expect(link!.length, name).toBeLessThan(2_000);
      expect(textOfLink(link!), name).toEqual({ text });
    }
    const random = dice(7);
    for (let i = 0; i < 500; i++) { const text = textFrom(random); expect(textOfLink((await linkOf(text))!)).toEqual({ text }); }
  });

  it('unpacks what any packer of raw deflate makes: stored, with fixed codes, at every level', () => {
    const random = dice(3);
    for (let i = 0; i < 200; i++) {
      const bytes = Buffer.from(textFrom(random).repeat(1 + (i % 9)));
      for (const options of [{ level: 0 }, { level: 1 }, { level: 9 }, { strategy: 4 }, { strategy: 2 }]) expect(Buffer.from(inflate(deflateRawSync(bytes, options), 1e6) as Uint8Array).equals(bytes)).toBe(true);
    }
  });

  it('is refused when it is cut at any place, or goes on after its end', async () => {
    const link = (await linkOf(readFileSync(new URL('clear-colada.drink', demos), 'utf8')))!;
    for (let to = LINK.length; to < link.length; to++) expect(textOfLink(link.slice(0, to)), `cut at ${to}`).toEqual({ fault: 'cut' });
    const bytes = deflateRawSync(Buffer.from('60 ml white rum'));
    for (const more of [[0], [3, 0], [65, 66, 67, 68]]) expect(textOfLink(LINK + Buffer.concat([bytes, Buffer.from(more)]).toString('base64url'))).toEqual({ fault: 'after' });
  });

  it('is refused when it is foreign, no text, or too long, before more than it may hold is made', () => {
    for (const letters of ['a b', 'a+b/', '%41', 'ä', 'AAA=', '<b>']) expect(textOfLink(LINK + letters), letters).toEqual({ fault: 'foreign' });
    expect(textOfLink(LINK)).toEqual({ fault: 'cut' });
    expect(textOfLink(LINK + Buffer.from([7, 1, 2]).toString('base64url'))).toEqual({ fault: 'foreign' });
    for (const bad of [[0xff, 0xfe], [0xc3], [0xed, 0xa0, 0x80], [0xc0, 0xaf]]) expect(textOfLink(packed(Buffer.from(bad)))).toEqual({ fault: 'text' });
    expect(textOfLink(LINK + 'A'.repeat(1e6))).toEqual({ fault: 'long' });
    const bomb = packed(Buffer.alloc(20_000_000, 'rum '), { level: 9 });
    expect(bomb.length).toBeLessThan(LINK_MOST);
    const from = performance.now();
    expect(textOfLink(bomb)).toEqual({ fault: 'long' });
    expect(performance.now() - from).toBeLessThan(200);
  });

  it('never throws on anything that is put into it', () => {
    const random = dice(11);
    for (let i = 0; i < 5_000; i++) {
      const bytes = Uint8Array.from({ length: Math.floor(random() * 80) }, () => Math.floor(random() * 256)), told = textOfLink(LINK + Buffer.from(bytes).toString('base64url'));
      expect(told !== null && ('text' in told || 'fault' in told)).toBe(true);
    }
  });

  it('brings no control or bidirectional character, and leaves what is no link alone', () => {
    expect(textOfLink(packed(Buffer.from('\ufeffRum\r\n\u202e60 ml\u0007 rum\u0000\n')))).toEqual({ text: 'Rum\n60 ml rum\n' });
    for (const other of ['', '#', '#hands', '#glass', '#d', 'd=abc']) expect(textOfLink(other)).toBeNull();
  });

  it('a text too long for a link makes none', async () => {
    const random = dice(5);
    expect(await linkOf('x'.repeat(300_000))).toBeNull();
    expect(await linkOf(Array.from({ length: 60_000 }, () => String.fromCharCode(33 + Math.floor(random() * 90))).join(''))).toBeNull();
  });
});
