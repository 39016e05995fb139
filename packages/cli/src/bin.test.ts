import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = new URL('../../../', import.meta.url), place = (path: string): string => fileURLToPath(new URL(path, root));
const bin = place('packages/cli/bin/washline.js'), colada = place('demo/clear-colada.drink');

// the command as it is installed: a process of its own, that leaves when its answer is out
describe('the command as a process', () => {
  it('gives its whole answer to a reader that is slow to take it', () => {
    const whole = execFileSync(process.execPath, [bin, 'read', '--json', colada], { encoding: 'utf8' });
    expect(whole.length).toBeGreaterThan(65_536);                          // more than a pipe holds
    const slow = spawnSync('sh', ['-c', `"${process.execPath}" "${bin}" read --json "${colada}" | (sleep 1; cat)`], { encoding: 'utf8' });
    expect([slow.stderr, slow.stdout]).toEqual(['', whole]);
  });
  it('ends with 1 where something stops, 2 where it was asked wrongly, without a word beside', () => {
    expect(spawnSync(process.execPath, [bin, 'read', place('demo/colada-with-faults.drink')], { encoding: 'utf8' })).toMatchObject({ status: 1, stderr: '' });
    expect(spawnSync(process.execPath, [bin, 'read', 'nothing.drink'], { encoding: 'utf8' })).toMatchObject({ status: 2 });
  });
  it('takes a reader that leaves early for no fault', () => {
    const done = spawnSync('sh', ['-c', `"${process.execPath}" "${bin}" read --json "${colada}" | head -c 10`], { encoding: 'utf8' });
    expect([done.stdout.length, done.stderr]).toEqual([10, '']);
  });
  it('adds to a German text in German, whatever is spoken', () => {
    const german = readFileSync(place('demo/clear-colada.de.drink'), 'utf8').replace('1,5 Blatt', '9 Blatt');
    const says = (language: string): string => spawnSync(process.execPath, [bin, 'read', '-', '--json', '--language', language], { encoding: 'utf8', input: german }).stdout;
    const inserts = (text: string): string[] => (JSON.parse(text) as { assumed: { splices: { text: string }[] }[] }).assumed.flatMap((one) => one.splices.map((splice) => splice.text)).filter((word) => /[a-z]{3}/i.test(word));
    expect(inserts(says('en')).length).toBeGreaterThan(3);
    expect(inserts(says('en'))).toEqual(inserts(says('de')));
  });
});
