import { SIZE, cut, run, runsWidth } from '../pen/lettering.ts';
import { decimalsFor, figureShown, shown, spreadShown } from '../pen/numbers.ts';
import type { Run } from '../shapes.ts';
import { lettered, words } from '../words.ts';
import type { FlowBuild, FlowPrep, Flow } from './flow.ts';
import type { Reading } from '../reading.ts';

/** What stands beside a vessel: letter and name, then a few short lines. A line with a giver shows its letter in a circle. */
export interface Caption { readonly letter: string; readonly name: readonly Run[]; readonly lines: readonly CaptionLine[]; readonly width: number; readonly height: number }
export interface CaptionLine { readonly figure: 'yield' | 'strength' | null; readonly giver: string | null; readonly from: string | null; readonly runs: readonly Run[] }

const LEAD = 24;

export function captionOf(prep: FlowPrep, flow: Flow, poured: ReadonlySet<string>, short: boolean): Caption {
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
  return caption(prep.letter, [run(cut(lettered(prep.name), short ? 92 : 170, SIZE.name, 600), SIZE.name, 'ink', 600)], short ? lines.slice(0, 2) : lines.slice(0, 4));
}

export function buildCaption(build: FlowBuild, reading: Reading): Caption {
  const stage = reading.stages.find((s) => s.step === build.step);
  const melt = stage?.figures['melt'] ?? stage?.figures['dilution'];
  const lines: CaptionLine[] = [];
  if (melt !== undefined) {
    const decimals = decimalsFor(melt.low, melt.high);
    lines.push({ figure: null, giver: null, from: null, runs: [run([`${figureShown(melt)} ${words(melt.unit === 'g' ? 'melts' : 'short.dilution', {})}`, spreadShown(melt, decimals)].filter((t) => t !== '').join(', '), SIZE.small, 'ink2')] });
  }
  return caption(build.letter, [run(build.title, SIZE.name, 'ink', 600)], lines);
}

function caption(letter: string, name: readonly Run[], lines: readonly CaptionLine[]): Caption {
  const width = Math.max(LEAD + runsWidth(name), ...lines.map((l) => (l.giver === null ? 0 : LEAD) + runsWidth(l.runs)));
  return { letter, name, lines, width, height: 22 + lines.reduce((sum, l) => sum + (l.giver === null ? 15 : 19), 0) };
}
