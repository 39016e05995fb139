import { airPressure, boilingPoint } from '@washline/engine';
import type { Atom } from './atoms.ts';
import type { BenchRow, Draft } from './draft.ts';
import { rowOf, wordRow } from './row.ts';

/** A line of the bench taken apart: its word, what stands behind the colon, its numbers and the width it gives. */
export interface BenchLine { readonly word: string; readonly rest: string; readonly atoms: readonly Atom[]; readonly plusMinus: number | null; readonly none: boolean }

/** What a line sets beyond one number for one row: which atoms it used, or null where it is not understood. */
export type Special = (draft: Draft, row: BenchRow, line: BenchLine) => readonly Atom[] | null;

const first = (line: BenchLine, of: string): Atom | undefined => line.atoms.find((a) => a.of === of && !a.off);

const scale: Special = (draft, row, line) => {
  const tool = row.tool!;
  const reads = first(line, 'g');
  if (!line.none && !reads && line.plusMinus === null) return null;
  draft.tools[tool] = reads?.value ?? null;
  // a dose is weighed on the fine scale, where there is none on the other
  const step = draft.tools.fineScale_g ?? (draft.tools.fineScale_g === null ? draft.tools.scale_g : undefined) ?? undefined;
  if (step !== undefined) draft.values.set('tool/scale step', rowOf({ value: step, low: step, high: step }, null, { kind: 'per cent', a: 0, b: 0 }, 'g'));
  if (line.none) return [];
  for (const spread of row.spreads ?? []) {
    const sd = line.plusMinus !== null ? line.plusMinus / 1.96 : (spread.sd * reads!.value) / spread.per;
    draft.spreads.set(spread.key, { kind: 'normal sd', a: sd, b: NaN, unit: 'g', grade: 'own', source: 'bench' });
  }
  return reads ? [reads] : [];
};

/** "15 / 30 / 45 ml, steps of 5 ml": sizes, and the step of the marks between them. */
const jigger: Special = (draft, _row, line) => {
  if (line.none) { draft.tools.jigger = null; return []; }
  const all = line.atoms.filter((a) => a.of === 'mL' && !a.off);
  const stepAt = line.rest.search(/\b(?:steps?|marks|marked|striche|stufen|schritte)\b/i);
  const step = stepAt < 0 ? undefined : all.find((a) => a.at > stepAt);
  const sizes = all.filter((a) => a !== step);
  if (sizes.length === 0) return null;
  draft.tools.jigger = { sizes_mL: sizes.map((a) => a.value).sort((a, b) => a - b), step_mL: step?.value ?? null };
  return all;
};

const thermometer: Special = (draft, _row, line) => {
  if (line.plusMinus === null) return null;
  draft.spreads.set('tool/thermometer', { kind: 'normal sd', a: line.plusMinus / 1.96, b: NaN, unit: '°C', grade: 'own', source: 'bench' });
  return [];
};

/** "500 ml, holds 760 ml": the size it is sold as, and what it holds full of water. The first is the one that is used where none is named. */
const siphon: Special = (draft, _row, line) => {
  if (line.none) return [];
  const [size, gross] = line.atoms.filter((a) => a.of === 'mL' && !a.off);
  if (!size || (gross && gross.value < size.value)) return null;
  if (draft.tools.siphons.length === 0) draft.values.set('siphon/size', rowOf({ ...size, low: size.value, high: size.value }, null, { kind: 'per cent', a: 0, b: 0 }, 'mL'));
  draft.tools.siphons.push({ size_mL: size.value, gross_mL: gross?.value ?? null });
  if (gross) draft.values.set(`siphon/gross volume/${size.value}`, rowOf(gross, line.plusMinus, { kind: 'per cent', a: -1, b: 1 }, 'mL'));
  return gross ? [size, gross] : [size];
};

const CLOTHS: readonly (readonly [RegExp, string, string])[] = [
  [/paper|papier/i, 'cloth/paper hold', 'paper filter'], [/bag|muslin|beutel/i, 'cloth/bag hold', 'bag'], [/sieve|strainer|sieb/i, 'cloth/sieve hold', 'sieve'], [/cloth|tuch|cheese/i, 'cloth/cheesecloth hold', 'cheesecloth'],
];
/** "cheesecloth holds 12 ml": what a cloth keeps; under `cloth` also which one is used. */
const cloth: Special = (draft, _row, line) => {
  const named = /^(cloth|tuch)$/i.test(line.word);
  const kindIn = (text: string) => CLOTHS.find(([words]) => words.test(text));
  const kind = (named ? kindIn(line.rest) : undefined) ?? kindIn(line.word);
  if (!kind) return null;
  const holds = first(line, 'mL');
  if (holds) draft.values.set(kind[1], rowOf(holds, line.plusMinus, { kind: 'lognormal cv', a: 0.2 }, 'mL'));
  if (named) draft.values.set('cloth/not said', wordRow(kind[2]));
  return holds || named ? (holds ? [holds] : []) : null;
};

/** "32 mm cubes at -10 °C": the size of cubes and the temperature of ice; "clear" or "crushed" before it are those kinds. */
const ice: Special = (draft, _row, line) => {
  const size = first(line, 'mm'), celsius = first(line, '°C');
  if (!size && !celsius) return null;
  if (celsius && celsius.value > 0 || size && (size.value < 1 || size.value > 200)) return null;
  const kind = /crushed|gestoßen/i.test(line.rest) ? 'crushed' : /clear|large|klar|groß/i.test(line.rest) ? 'large cube' : 'cubes';
  const sizes = kind === 'cubes' ? ['ice/size/shake', 'ice/size/stir', 'ice/size/highball', 'ice/size/rocks'] : [`ice/size/${kind}`];
  if (size) for (const key of sizes) draft.values.set(key, rowOf(size, null, { kind: 'normal sd', a: 0.5 }, 'mm'));
  const place = kind === 'crushed' ? 'ice/temperature/crushed' : kind === 'cubes' ? 'ice/temperature/not said' : 'ice/temperature/tempered clear';
  if (celsius) { const row = rowOf(celsius, line.plusMinus, { kind: 'normal sd', a: 1.5 }, '°C'); draft.values.set(place, { ...row, high: Math.min(0, row.high ?? 0), low: row.low }); }
  return [size, celsius].filter((a) => a !== undefined);
};

/** Height or air pressure: how the air presses, and at what water boils there. */
const air: Special = (draft, row, line) => {
  const atom = first(line, row.of);
  if (!atom) return null;
  const hPa = row.of === 'm' ? airPressure(atom.value) * 10 : atom.value;
  const wide = row.of === 'hPa' && line.plusMinus !== null ? line.plusMinus : 10;
  draft.values.set('place/pressure', rowOf({ value: hPa, low: hPa - wide, high: hPa + wide }, null, { kind: 'offset', a: -wide, b: wide }, 'hPa'));
  const boils = boilingPoint(hPa / 10);
  draft.values.set('place/boiling point', rowOf({ value: boils, low: boils - 0.5, high: boils + SUGAR_K }, null, { kind: 'offset', a: -0.5, b: SUGAR_K }, '°C'));
  return [atom];
};
/** How far above water a sugared liquid boils, as the table of assumptions has it. */
const SUGAR_K = 2;

export const SPECIAL: Readonly<Record<string, Special>> = { scale, jigger, thermometer, siphon, cloth, ice, air };
