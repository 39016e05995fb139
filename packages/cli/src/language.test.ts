// The language of what is said: by --language, else by LC_ALL, LC_MESSAGES, LANG in that order (POSIX.1-2017, base definitions, chapter 8.2).
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { main } from './index.ts';

async function washline(args: readonly string[], env: Record<string, string> = {}, typed = '') {
  let out = '';
  let err = '';
  const status = await main(args, { stdin: (async function* () { yield Buffer.from(typed); })(), stdout: { write: (text) => { out += text; } }, stderr: { write: (text) => { err += text; } }, env });
  return { status, out, err };
}
const COLADA = fileURLToPath(new URL('../../../demo/clear-colada.de.drink', import.meta.url));
const json = (text: string) => JSON.parse(text) as Record<string, any>;

describe('the language', () => {
  it.each([
    [['--language', 'de'], {}, 'Stärke'], [['--language=en'], { LANG: 'de_DE.UTF-8' }, 'strength'], [[], { LANG: 'de_DE.UTF-8' }, 'Stärke'], [[], { LC_ALL: 'de_AT.UTF-8', LANG: 'en_US.UTF-8' }, 'Stärke'],
    [[], { LC_ALL: '', LC_MESSAGES: 'de_CH', LANG: 'fr_FR' }, 'Stärke'], [[], { LC_ALL: 'C', LANG: 'de_DE' }, 'strength'], [[], { LANG: 'fr_FR.UTF-8' }, 'strength'], [[], {}, 'strength'],
  ])('%j in %j says %s', async (flags, env, word) => { expect((await washline(['mix', '60 ml gin 40 %', ...flags], env as Record<string, string>)).out).toContain(word); });
  it('another is refused with a sentence', async () => {
    const { status, err } = await washline(['mix', '60 ml gin', '--language', 'fr']);
    expect([status, err]).toEqual([2, '--language is en or de\n']);
  });
});

describe('German', () => {
  it('says a whole reading without a word of English, numbers with a comma', async () => {
    const { status, out, err } = await washline(['read', COLADA, '--language', 'de']);
    expect([status, err]).toEqual([0, '']);
    for (const part of ['Vorbereitungen', 'Nicht geschrieben, also angenommen', 'ergibt', 'Klare Ananas (klären mit Agar)', 'Für wen', 'Gerechnet, nicht gemessen']) expect(out).toContain(part);
    expect(out).toMatch(/Stärke +\d+,\d/);
    expect(out.split('\n').slice(0, -1).filter((line) => /\b(?:the|is|are|with|goes|yields|to|of|and|ready after)\b/.test(line) && !/by |; Quellen|\//.test(line))).toEqual([]);
  });
  it('of findings and problems the message alone', async () => {
    const spec = 'Ein Drink\nSprache: de\n60 ml Gin 40 %\n1 Eiweiß\nwirbeln\n';
    const [german, english] = [json((await washline(['read', '-', '--json', '--language', 'de'], {}, spec)).out), json((await washline(['read', '-', '--json'], {}, spec)).out)];
    expect(german['problems'][0]).toEqual({ ...english['problems'][0], message: expect.stringContaining('nicht zu verstehen') });
    const [raw, other] = [german['reading'].findings, english['reading'].findings].map((list) => list.find((one: { code: string }) => one.code === 'egg-raw'));
    expect(raw.message).toMatch(/^Rohes Ei/);
    expect({ ...raw, message: '', remedy: { ...raw.remedy, say: '' } }).toEqual({ ...other, message: '', remedy: { ...other.remedy, say: '' } });
    expect(raw.remedy.splices[0].insert).toBe('pasteurisiertes Eiweiß');
    expect(german['reading'].figures).toEqual(english['reading'].figures);
  });
  it('helps, and refuses, in German', async () => {
    const { out } = await washline(['read', '--help'], { LANG: 'de_DE' });
    for (const part of ['AUFRUF', 'SCHALTER', 'ARGUMENTE', 'Hilfe zeigen']) expect(out).toContain(part);
    expect((await washline(['les'], { LANG: 'de' })).err).toMatch(/^es gibt keinen Befehl `les`/);
    expect((await washline(['read', '--warum', 'x'], { LANG: 'de' })).err).toContain('es gibt keinen Schalter --warum');
    expect((await washline(['read'], { LANG: 'de' })).err).toBe('SPEC fehlt\n');
  });
  it('every key of cli.json that the source names is there', () => {
    const keys = json(readFileSync(new URL('../../../messages/de/cli.json', import.meta.url), 'utf8'));
    expect(Object.values(keys).every((sentence) => typeof sentence === 'string' && sentence !== '')).toBe(true);
  });
});
