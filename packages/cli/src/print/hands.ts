import type { HandsAnswer, SaidMatter, SaidOdds } from '@washline/spec';
import { plain } from '../plain.ts';
import { named, pointed, say } from '../sentences.ts';
import type { World } from '../world.ts';
import { heading } from './heading.ts';
import { inkFor, type Ink } from './ink.ts';
import { fit, wrap } from './text.ts';

/** Figures of the drink that are shown as bands, in this order; then the level in the glass. */
const ORDER = ['strength', 'volume', 'sugar', 'acidity', 'ph', 'brix', 'temperature', 'dilution', 'washline_mm'];
/** Figures of which it is said what moves them. */
const MOVED = ['strength', 'washline_mm'];
/** So many inputs are named for what decides. */
const NAMED = 3;
/** A second input with a smaller share is not named. */
const TOLD = 0.05;
/** An input that held leaves more than this of the failures saves nobody. */
const SAVES = 0.8;

/** What many kitchens make of a spec, for a terminal: bands, how often it fails, and which lines decide that. */
export function printHands(world: World, answer: HandsAnswer, color: boolean): void {
  const { hands: h, document } = answer, ink = inkFor(world, color);
  const textOf = (line: number): string => plain((document.text.split(/\r\n|\r|\n/)[line - 1] ?? '').trim().replace(/\s+/g, ' '));
  const stops = h.findings.filter((f) => f.stops), others = h.findings.filter((f) => !f.stops);
  world.stdout.write(`${[
    ...wrap(say('hands.title', { drink: document.name === '' ? say('read.nameless') : document.name, makers: h.makers, profile: say(`hands.kitchen.${h.profile}`), seed: h.seed }), '', '').map(ink.bold), '',
    ...bands(answer, ink),
    ...heading('hands', ink), ...wrap(howOften(answer), '  ', '  '),
    ...stops.flatMap((f) => ['', ...finding(answer, f, ink, textOf)]),
    ...(others.length > 0 ? heading('hands.others', ink) : []), ...others.flatMap((f) => finding(answer, f, ink, textOf)),
    ...MOVED.flatMap((name) => moves(answer, name)),
  ].map((line) => line.trimEnd()).join('\n')}\n\n`);
}

function bands({ hands: h }: HandsAnswer, ink: Ink): string[] {
  const rows = ORDER.flatMap((name) => {
    const band = h.figures[name];
    if (!band) return [];
    const digits = digitsOf(band.p97_5 - band.p2_5);
    const cell = (v: number) => pointed(v.toFixed(digits)).padStart(9);
    return [`  ${fit(say(`figure.${name}`), 14)}${cell(band.p2_5)}${cell(band.p50)}${cell(band.p97_5)}  ${named(band.unit)}`];
  });
  return rows.length === 0 ? [] : [ink.dim(`  ${fit('', 14)}${say('hands.low').padStart(9)}${say('hands.middle').padStart(9)}${say('hands.high').padStart(9)}`), ...rows];
}

function howOften({ hands: { fails, makers } }: HandsAnswer): string {
  if (fails.odds === 1) return say('hands.always');
  // none of n: with more than this share one would have been seen, nineteen times in twenty
  return fails.odds === 0 ? say('hands.never', { makers, most: of100(1 - 0.05 ** (1 / makers)) }) : say('hands.fails', { odds: of100(fails.odds), error: errorOf(fails.error) });
}

/** How often, of which line; then the line that decides, and the input. */
function finding({ hands: h }: HandsAnswer, f: SaidOdds, ink: Ink, textOf: (line: number) => string): string[] {
  const always = f.odds === 1, own = f.line === undefined ? whereabouts(f) : say('read.from', { line: f.line, text: textOf(f.line) });
  const by = always ? [] : h.matters.filter((m) => m.code === f.code && m.path === f.path).filter((m, i) => i === 0 || m.share >= TOLD).slice(0, f.stops ? NAMED : 1);
  const often = always ? say('hands.every') : say('hands.odds', { odds: of100(f.odds), error: errorOf(f.error) });
  const here = by.length === 0 || by[0]!.line !== f.line || f.line === undefined;
  const [first = '', ...rest] = wrap(`${often}${f.accepted ? ` (${say('hands.accepted')})` : ''}${here ? `, ${own}` : ''}`, `  ${f.code}: `, '    ');
  const out = [first.replace(f.code, f.stops ? ink.signal(ink.bold(f.code)) : f.code), ...rest];
  by.filter((m, i) => i === by.findIndex((x) => sameLine(x, m))).forEach((m, i) => {
    const place = m.line === undefined ? say(m.at?.[0] === 'glass' ? 'hands.the-glass' : 'hands.tools') : say('read.from', { line: m.line, text: textOf(m.line) });
    out.push(...wrap(say(i === 0 ? 'hands.decides' : 'hands.then', { place }), '    ', '      '));
    for (const x of by.filter((y) => sameLine(y, m))) {
      const held = h.fix.find((y) => y.code === f.code && y.path === f.path && y.input === x.input);
      out.push(...wrap(`${told(x)}${held && held.odds < SAVES * f.odds ? `; ${say('hands.held', { odds: of100(held.odds) })}` : ''}`, '      ', '        '));
    }
  });
  return out;
}

/** Inputs of one line; those of no line are the kitchen's, or the glass's. */
const sameLine = (a: SaidMatter, b: SaidMatter): boolean => a.line === b.line && (a.line !== undefined || (a.at?.[0] === 'glass') === (b.at?.[0] === 'glass'));

/** A place without a line: the glass that is not named, a prep without a heading. */
function whereabouts({ path }: SaidOdds): string { return path[0] === 'glass' ? say('hands.the-glass') : plain(path.join(' / ')); }

function moves({ hands: h }: HandsAnswer, name: string): string[] {
  const by = h.matters.filter((m) => m.figure === name && h.figures[name]).slice(0, NAMED);
  return by.length === 0 ? [] : ['', ...wrap(say('hands.moves', { figure: say(`figure.${name}`), inputs: by.map((m) => `${m.line === undefined ? '' : `${say('hands.in-line', { line: m.line })} `}${told(m)}`).join('; ') }), '  ', '    ')];
}

const told = (m: SaidMatter): string => say('hands.input', { words: m.words, share: Math.round(m.share * 100) });

/** A share as so many of a hundred, finer near the ends. */
function of100(share: number): string {
  const near = Math.min(share, 1 - share), digits = near === 0 || near >= 0.1 ? 0 : near >= 0.01 ? 1 : -Math.floor(Math.log10(near * 100) + 1e-9);
  return pointed((share * 100).toFixed(digits));
}

function errorOf(error: number): string { return pointed(error >= 0.001 ? (error * 100).toFixed(1) : String(Number((error * 100).toPrecision(1)))); }

/** Decimals that show a hundredth of a width. */
function digitsOf(width: number): number { return width > 0 ? Math.min(4, Math.max(0, 1 - Math.floor(Math.log10(width)))) : 1; }
