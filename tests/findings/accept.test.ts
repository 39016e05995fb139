import { describe, expect, it } from 'vitest';
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
});
