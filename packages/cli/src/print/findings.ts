import type { Severity } from '@washline/engine';
import type { Finding, Reading } from '../reader.ts';
import { CODES } from '@washline/engine';
import { say } from '../sentences.ts';
import { heading } from './heading.ts';
import type { Ink } from './ink.ts';
import { number } from './numbers.ts';
import { wrap } from './text.ts';

const SEVERITIES: readonly Severity[] = ['stop', 'warn', 'note'];

/** Findings, stops first, each with its place, its odds and what would mend it; then those knowingly accepted. */
export function printFindings(reading: Reading, ink: Ink): string[] {
  const rank = (finding: Finding): number => SEVERITIES.indexOf(finding.severity);
  const found = [...reading.findings].sort((a, b) => rank(a) - rank(b));
  return [
    ...(found.length === 0 ? [] : [...heading('findings', ink), ...found.flatMap((finding) => one(finding, ink, 'read.stays'))]),
    ...(reading.accepted.length === 0 ? [] : [...heading('accepted', ink), ...reading.accepted.flatMap((finding) => one(finding, ink, 'read.reason'))]),
  ];
}

function one(finding: Finding, ink: Ink, accepted: 'read.stays' | 'read.reason'): string[] {
  const mark = say(`severity.${finding.severity}`);
  const [first = '', ...rest] = wrap(`${placeOf(finding)}${finding.message}`, `${mark.padEnd(5)} `, '      ');
  const lead = finding.severity === 'stop' ? ink.signal(ink.bold(mark)) : ink.bold(mark);
  return [lead + first.slice(mark.length), ...rest, ...oddsOf(finding), ...(finding.remedy ? wrap(finding.remedy.say, '      → ', '        ') : []), ...reasonOf(finding, accepted), ink.dim(`      ${finding.code}`)];
}

/** Why it was accepted, where it was. */
function reasonOf({ reason }: Finding, key: 'read.stays' | 'read.reason'): string[] {
  return reason === undefined ? [] : wrap(say(key, { reason: reason === '' ? say('read.reason.none') : reason }), '      ', '        ');
}

function placeOf(finding: Finding): string {
  const { line, column, path } = finding.where;
  if (line !== undefined) return say('read.place', { line, column: column ?? 1 });
  return path.length > 0 ? `${path.join(' / ')}: ` : '';
}

function oddsOf(finding: Finding): string[] {
  if (finding.margin === undefined || finding.odds === undefined) return [];
  const { value, low, high, unit } = finding.margin;
  if (CODES[finding.code]?.presence || low === high) return [];                                           // it is so, or it is not: there is nothing to weigh
  return wrap(say(value > 0 ? 'read.margin' : 'read.short', { value: short(Math.abs(value)), low: short(low), high: short(high), unit, odds: Math.round(finding.odds * 100) }), '      ', '      ');
}

const short = (value: number): string => number(Number(value.toPrecision(2)));
