import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { battery, read } from './battery.ts';

const own = 'an acceptance names a line as it stands';
const egg = (line: string, at: string) => `A\n${line}\n60 ml gin 40 %\n30 ml lemon juice\n\nAccept:\negg-raw at ${at}: our guests are told`;

describe('findings knowingly accepted', () => {
  battery('acceptance-lapsed', {
    remedies: 'none',
    raises: [
      { text: egg('2 egg whites', '1 egg white'), why: 'the line was changed', source: own },
      { text: egg('30 ml pasteurised egg white', '1 egg white'), why: 'the line and its finding are gone', source: own },
      { text: 'A\n60 ml gin 40 %\n\nAccept:\nglass-overfull at 200 ml soda water: it is meant to', why: 'no such line was ever there', source: own },
    ],
    twins: [
      { text: egg('1 egg white', '1 egg white'), why: 'the line stands', source: own },
      { text: egg('1  Egg white', '1 egg white'), why: 'case and blanks do not matter', source: own },
      { text: egg('1 egg white', 'Build'), why: 'a section\'s name', source: own },
    ],
  });

  it('an accepted warn moves aside', () => {
    const { reading } = read(egg('1 egg white', '1 egg white'));
    expect(reading.findings).toEqual([]);
    expect(reading.accepted.map((f) => [f.code, f.severity])).toEqual([['egg-raw', 'warn']]);
  });
  it('an acceptance lapses when its line changes: the finding is back, with a note', () => {
    const { reading } = read(egg('2 egg whites', '1 egg white'));
    expect(reading.accepted).toEqual([]);
    expect(reading.findings.map((f) => f.code)).toEqual(['egg-raw', 'acceptance-lapsed']);
    expect(reading.findings[1]!.message).toContain('1 egg white');
  });
  it('an acceptance of one finding is none of another', () => {
    const { reading } = read('A\nglass: shot glass\n1 egg white\n60 ml gin 40 %\n\nAccept:\negg-raw at 1 egg white: told');
    expect(reading.findings.map((f) => f.code)).toEqual(['glass-overfull']);
  });
  it('a stop about harm stays, accepted or not', () => {
    const text = 'A\nBark (infusion):\n10 g cinchona bark\n500 ml water\nsteep 30 min\nstrain through cheesecloth\nBuild:\n30 ml bark\n100 ml soda water\n\nAccept:\nhazard-plant at 10 g cinchona bark: mine\nhazard-dose at 10 g cinchona bark: mine';
    const { reading } = read(text);
    expect(reading.findings.map((f) => [f.code, f.severity]).sort()).toEqual([['hazard-dose', 'stop'], ['hazard-plant', 'stop']]);
    expect(reading.accepted).toEqual([]);
  });
  it('a stop that is not about harm moves aside and keeps its severity and its reason', () => {
    const text = 'A\nglass: shot glass\n60 ml gin 40 %\n\nAccept:\nglass-overfull at glass: shot glass: it is passed round: twice';
    const { reading, problems } = read(text);
    expect(problems).toEqual([]);
    expect(reading.findings).toEqual([]);
    expect(reading.accepted.map((f) => [f.code, f.severity, f.reason])).toEqual([['glass-overfull', 'stop', 'it is passed round: twice']]);
    expect(read(text.replace('glass: shot glass', 'glass: small shot glass')).reading.findings.map((f) => f.code)).toEqual(['glass-overfull', 'acceptance-lapsed']);
  });
  it('a stop about harm that is accepted carries the reason', () => {
    const bark = 'A\nBark (infusion):\n10 g cinchona bark\n500 ml water\nsteep 30 min\nstrain through cheesecloth\nBuild:\n30 ml bark\n100 ml soda water\n\nAccept:\nhazard-plant at Bark (infusion): a small glass';
    expect(read(bark).reading.findings.find((f) => f.code === 'hazard-plant')).toMatchObject({ severity: 'stop', reason: 'a small glass' });
    expect(read(bark.replace('hazard-plant at', 'hazard-plant at build or')).reading.findings.find((f) => f.code === 'hazard-plant')!.reason).toBeUndefined();
  });
  it('a remark behind the line, its heading and its section all name it', () => {
    for (const [line, at] of [['1 egg white # from the neighbour', '1 egg white'], ['1 egg white', 'build']] as const) expect(read(egg(line, at)).reading.accepted.map((f) => f.code)).toEqual(['egg-raw']);
    expect(read(egg('1 egg white # from the neighbour', '1 egg')).reading.accepted).toEqual([]);
  });
  it('a code no finding has is a problem at its place, with the nearest; one that has a name is none', () => {
    const text = egg('1 egg white', '1 egg white').replace('egg-raw at', 'egg-row at');
    const { reading, problems } = read(text);
    expect(problems).toMatchObject([{ code: 'accept-code-unknown', where: { line: 7, column: 1 } }]);
    expect(problems[0]!.message).toContain('egg-raw');
    expect(reading.findings.map((f) => f.code)).toEqual(['egg-raw']);
    expect(read(egg('1 egg white', '1 egg white').replace('egg-raw at', 'gas-lost at')).problems).toEqual([]);
  });
  it('without a line it is not understood', () => {
    expect(read('A\n1 egg white\n\nAccept:\negg-raw: told').problems.map((p) => p.code)).toEqual(['accept-unclear']);
  });
  it('a variant may accept for itself', () => {
    const text = `${egg('1 egg white', '1 egg white').replace('Accept:', 'two / Build:\n2 egg whites\n60 ml gin 40 %\n\nAccept:')}\n\ntwo / Accept:\negg-raw at 2 egg whites: told twice`;
    const of = (variant: string | null) => readText(text, { tables, variant }).reading;
    expect([of(null).accepted.map((f) => f.reason), of('two').accepted.map((f) => f.reason)]).toEqual([['our guests are told'], ['told twice']]);
    expect([...of(null).findings, ...of('two').findings]).toEqual([]);
  });
  it('the line of the base is not the line of a variant that changed it', () => {
    const text = egg('1 egg white', '1 egg white').replace('Accept:', 'two / Build:\n2 egg whites\n60 ml gin 40 %\n\nAccept:');
    const two = readText(text, { tables, variant: 'two' }).reading;
    expect([two.accepted, two.findings.map((f) => f.code)]).toEqual([[], ['egg-raw']]);
  });
});
