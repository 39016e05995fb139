import { SIZE, broken, cut, run, runsWidth, textWidth } from '../pen/lettering.ts';
import { decimalsFor, figureShown, shown, spreadShown } from '../pen/numbers.ts';
import type { Run } from '../shapes.ts';
import { words } from '../words.ts';
import type { FlowBuild, FlowPrep, Flow } from './flow.ts';
import type { Reading } from '../reading.ts';

/** What stands beside a vessel: letter and name, then a few short lines. A line with a giver shows its letter in a circle. */
export interface Caption { readonly letter: string; readonly name: readonly (readonly Run[])[]; readonly lines: readonly CaptionLine[]; readonly said: SaidAt | null; readonly width: number; readonly height: number }
export interface CaptionLine { readonly figure: 'yield' | 'strength' | null; readonly giver: string | null; readonly from: string | null; readonly runs: readonly Run[] }

/** A stop or a warning of a prep, under its caption; without lines its mark stands alone beside the name. */
export interface SaidAt { readonly severity: 'stop' | 'warn'; readonly index: number; readonly lines: readonly string[] }

const LEAD = 24;
/** From one line of a name to the next, px. */
export const NAME_PITCH = 17;
/** How wide the words of a finding run at a vessel, px. */
const SAID_WIDTH = 136;

export function captionOf(prep: FlowPrep, flow: Flow, poured: ReadonlySet<string>, short: boolean, said: SaidAs | null = null): Caption {
  const lines: CaptionLine[] = [];
  const made = prep.reading?.yield;
  if (made !== undefined) {
    const decimals = decimalsFor(made.low, made.high);
    const spread = spreadShown(made, decimals);
    lines.push({ figure: 'yield', giver: null, from: null, runs: [run(`${figureShown(made)}${spread === '' || short ? '' : `, ${spread}`}`, SIZE.small, 'ink2')] });
  }
  const strength = prep.reading?.figures['strength'];
  if (strength !== undefined && strength.value > 0.05) lines.push({ figure: 'strength', giver: null, from: null, runs: [run(`${shown(strength.value, Math.max(1, decimalsFor(strength.low, strength.high)))} % vol`, SIZE.small, 'ink2')] });
  for (const take of prep.takes) {
    if (poured.has(`${take.from}>${prep.key}`)) continue;
    const giver = flow.preps.find((p) => p.key === take.from);
    if (giver !== undefined) lines.push({ figure: null, giver: giver.letter, from: take.from, runs: [run(take.amount, SIZE.small, 'ink2')] });
  }
  return caption(prep.letter, nameLines(prep.name.toLowerCase(), short ? 104 : 170), short ? lines.slice(0, 2) : lines.slice(0, 4), said === null ? null : { severity: said.severity, index: said.index, lines: short ? [] : broken(said.head, SAID_WIDTH, SIZE.small, 500) });
}

export function buildCaption(build: FlowBuild, reading: Reading): Caption {
  const stage = reading.stages.find((s) => s.step === build.step);
  const melt = stage?.figures['melt'] ?? stage?.figures['dilution'];
  const lines: CaptionLine[] = [];
  if (melt !== undefined) {
    const decimals = decimalsFor(melt.low, melt.high);
    lines.push({ figure: null, giver: null, from: null, runs: [run([`${figureShown(melt)} ${words(melt.unit === 'g' ? 'melts' : 'short.dilution', {})}`, spreadShown(melt, decimals)].filter((t) => t !== '').join(', '), SIZE.small, 'ink2')] });
  }
  return caption(build.letter, [[run(build.title, SIZE.name, 'ink', 600)]], lines, null);
}

/** What is to be said at a prep, before it is broken into lines. */
export interface SaidAs { readonly severity: 'stop' | 'warn'; readonly index: number; readonly head: string }

/** A name in one line or two; only what two do not hold is cut. */
function nameLines(name: string, room: number): Run[][] {
  const lines = broken(name, room, SIZE.name, 600), rest = lines.slice(1).join(' ');
  return [lines[0] ?? '', ...(rest === '' ? [] : [rest])].map((text) => [run(cut(text, room, SIZE.name, 600), SIZE.name, 'ink', 600)]);
}

function caption(letter: string, name: readonly (readonly Run[])[], lines: readonly CaptionLine[], said: SaidAt | null): Caption {
  const mark = said !== null && said.lines.length === 0 ? 16 : 0;
  const width = Math.max(LEAD + mark + Math.max(0, ...name.map((n) => runsWidth(n))), ...(said?.lines ?? []).map((l) => 14 + textWidth(l, SIZE.small, 500)), ...lines.map((l) => (l.giver === null ? 0 : LEAD) + runsWidth(l.runs)));
  return { letter, name, lines, width, said, height: 22 + Math.max(0, name.length - 1) * NAME_PITCH + lines.reduce((sum, l) => sum + (l.giver === null ? 15 : 19), 0) + saidHeight(said) };
}

/** How much of a caption's height its finding takes, px. */
export function saidHeight(said: SaidAt | null): number { return said === null || said.lines.length === 0 ? 0 : 4 + said.lines.length * 15; }
