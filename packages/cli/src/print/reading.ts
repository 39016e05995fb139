import { terminalGlass, terminalLater } from '@washline/drawing';
import type { Figure, Figures, PrepReading, Stage } from '@washline/engine';
import { plainWithin } from '../plain.ts';
import type { LineAt, Reading } from '../reader.ts';
import { named, say } from '../sentences.ts';
import type { World } from '../world.ts';
import { printFindings } from './findings.ts';
import { heading } from './heading.ts';
import { inkFor, plainTerminal, type Ink } from './ink.ts';
import { duration, number, withSpread } from './numbers.ts';
import { printCloth, printFrozen, printGas } from './preps.ts';
import { printAssumed, printPeople } from './rest.ts';
import { printCost, printTaken } from './taken.ts';
import { fit, WIDTH, wrap } from './text.ts';
import { printWhy } from './why.ts';

/** A reading for a terminal of 80 columns: glass and figures, stages, preps, findings, what was assumed, for whom. */
export function printReading(world: World, found: Reading, color: boolean, lineAt?: LineAt): void {
  const reading = plainWithin(found);
  const ink = inkFor(world, color), ascii = plainTerminal(world);
  const lines = [
    ...title(reading, ink), ...glassAndFigures(reading, ink, ascii), ...printCost(reading.cost, lineAt), ...stages(reading.stages, ink), ...later(reading, ink, ascii), ...preps(reading.preps, ink), ...printFindings(reading, ink),
    ...printTaken(reading.taken, ink), ...printAssumed(reading.assumed, ink), ...printWhy(reading.why, ink), ...printPeople(reading, ink, lineAt),
  ];
  world.stdout.write(`${lines.map((line) => line.trimEnd()).join('\n')}\n\n`);
}

function title(reading: Reading, ink: Ink): string[] {
  const name = reading.drink === '' ? say('read.nameless') : reading.drink;
  const whole = reading.variant === null ? name : say('read.variant', { drink: name, variant: reading.variant });
  return [...wrap(whole, '', '').map(ink.bold), ...(reading.partial ? [ink.signal(say('read.partial'))] : []), ''];
}

const ORDER = ['strength', 'volume', 'mass', 'ethanol', 'sugar', 'acidity', 'ph', 'density', 'brix', 'temperature', 'dilution', 'frozen', 'co2', 'energy', 'cost'];
/** Figures that most drinks have no need of: not said to be missing. */
const SOME = ['dilution', 'frozen', 'co2', 'cost'];

function figureRow(name: string, figure: Figure, shows: Reading['shows']): string {
  return say(`figure.${name}`).padEnd(13) + (figure.unit === 'mL' && shows === 'oz' ? `${withSpread(inOunces(figure))} oz` : `${withSpread(figure)} ${figure.unit}`);
}

/** mL as US fluid ounces: 231 in³ / 128. */
function inOunces(figure: Figure): Figure {
  const oz = (mL: number): number => mL / 29.5735295625;
  return { ...figure, value: oz(figure.value), low: oz(figure.low), high: oz(figure.high) };
}

/** The glass in section with its washline, and under it the figures in two columns. */
function glassAndFigures(reading: Reading, ink: Ink, ascii: boolean): string[] {
  const figures = ORDER.flatMap((name) => { const figure = reading.figures[name]; return figure && (name !== 'frozen' || figure.high > 0) ? [figureRow(name, figure, reading.shows)] : []; });
  const missing = ORDER.filter((name) => !reading.figures[name] && !SOME.includes(name));
  const half = Math.ceil(figures.length / 2);
  const rows = Array.from({ length: half }, (_, at) => `${fit(figures[at] ?? '', WIDTH / 2)}${figures[at + half] ?? ''}`);
  const absent = missing.length > 0 ? wrap(say('read.absent', { names: missing.map((name) => say(`figure.${name}`)).join(', ') }), '', '') : [];
  if (!reading.glass) return [...rows, ...absent];
  const drawn = terminalGlass(reading, { width: WIDTH, height: 14, ascii });
  return [...drawn, ...wrap(say('read.glass', { glass: named(reading.glass.name), brim: number(Math.round(reading.glass.brim_mL)) }), '', '').map(ink.dim), '', ...rows, ...absent];
}

function cell(figures: Figures, name: string, unit: string): string {
  const figure = figures[name];
  return figure ? `${withSpread({ ...figure, skewed: false })} ${unit}` : '';
}

function stages(list: readonly Stage[], ink: Ink): string[] {
  if (list.length === 0) return [];
  const rows = list.flatMap(({ step, figures }) => {
    const [first = '', ...rest] = wrap(step, '', '  ', 32);
    return [`${fit(first, 33)}${[cell(figures, 'strength', '%'), cell(figures, 'temperature', '°C'), cell(figures, 'volume', 'mL')].map((text) => fit(text, 15)).join('')}`, ...rest];
  });
  return [...heading('stages', ink), ...rows];
}

/** The drink left alone in its glass, a row for each time told, and its curves. */
function later(reading: Reading, ink: Ink, ascii: boolean): string[] {
  const list = reading.later;
  if (!list || list.length === 0) return [];
  const rows = list.map(({ minutes, figures }) => {
    const always = [cell(figures, 'temperature', '°C'), cell(figures, 'strength', '%'), cell(figures, 'volume', 'mL')].map((text, k) => fit(text, [11, 12, 14][k]!));
    const some = [cell(figures, 'ice_left', `g ${say('read.ice')}`), cell(figures, 'co2', 'g/L CO2'), cell(figures, 'foam_mm', `mm ${say('read.foam')}`)].filter((text) => text !== '');
    return `${fit(say('read.later', { minutes }), 13)}${always.join('')}${some.map((text) => text.padEnd(16)).join('').trimEnd()}`;
  });
  const curves = terminalLater(reading, { width: WIDTH, ascii });
  return [...heading('later', ink), ...rows, ...(curves.length > 0 ? ['', ...curves] : [])];
}

function preps(all: Readonly<Record<string, PrepReading>>, ink: Ink): string[] {
  const list = Object.entries(all);
  if (list.length === 0) return [];
  const rows = list.flatMap(([key, prep]) => {
    const first = `${prep.name || key} (${named(prep.method)})`;
    const shown = ['strength', 'sugar', 'acidity', 'ph', 'brix', 'temperature'].flatMap((name) => { const figure = prep.figures[name]; return figure ? [`${say(`figure.${name}`)} ${withSpread(figure)} ${figure.unit}`] : []; });
    return [
      ...wrap(first, '', '  '),
      ...wrap(say('read.yield', { yield: `${withSpread(prep.yield)} ${prep.yield.unit}`, ready: duration(prep.ready_after) }), '  ', '  '),
      ...(shown.length > 0 ? wrap(shown.join(' · '), '  ', '  ') : []),
      ...printFrozen(prep.frozen, prep.figures['temperature']), ...printGas(prep.gas), ...printCloth(prep.cloth),
    ];
  });
  return [...heading('preps', ink), ...rows];
}
