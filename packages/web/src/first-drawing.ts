import { draw, INKS, svgOf } from '@washline/drawing';
import { saidOf } from './glass/said.ts';
import { drinks, liquid } from './head.ts';
import type { Read } from './read.ts';

/** Room of the drawing on a phone, CSS px: the width of a narrow one, the height that the style gives it. */
const ROOM = { width: 375, height: 545 };
/** Inks as the page's sheet of styles has them, on whichever sheet. */
const inks = Object.fromEntries(Object.keys(INKS.light).map((ink) => [ink, `var(--${ink})`]));

/**
 * The demo drink as a phone shows it first, as HTML: a picture, to be there before the scripts are, on either sheet. It holds nothing that can be pressed, is not
 * told to a screen reader, and goes when the page itself stands.
 */
export function firstDrawing({ reading, document, findings, weights }: Read): string {
  const said = saidOf(findings);
  // parts are the same on both sheets, what stands in them may differ: liquids have tints of their own, and the ground is ruled otherwise
  const [light, dark] = (['light', 'dark'] as const).map((scheme) => svgOf(draw(reading, { ...ROOM, scheme, document, findings: said, weights }), scheme, reading.drink, { inks, bare: true }).split(/^(<\/?g>)$/m)) as [string[], string[]];
  if (light.length !== dark.length) throw new Error('the demo drink has other parts on the dark sheet');
  const picture = light.map((part, i) => (part === dark[i] ? part : both(part.split('\n'), dark[i]!.split('\n')))).join('')
    // the page's own drawing has hatches of the same names
    .replaceAll('id="h-', 'id="first-').replaceAll('url(#h-', 'url(#first-');
  return `<div class="page of-glass at-once" aria-hidden="true"><div class="phone-head"><h1>${reading.drink}</h1><p>${liquid(reading)}<br>${drinks(reading)}</p></div><div class="drawing">${picture}</div></div>`;
}

/** What stands on either sheet once, what stands on one alone said so; each in its place, for what comes later lies over it. */
function both(light: readonly string[], dark: readonly string[]): string {
  const only = (sheet: 'light' | 'dark', line: string | undefined): string => (line ?? '').replace(/^<\w+/, (tag) => `${tag} class="on-${sheet}"`);
  if (light.length !== dark.length) return [...light.map((line) => only('light', line)), ...dark.map((line) => only('dark', line))].join('\n');
  return light.flatMap((line, i) => (line === dark[i] ? [line] : [only('light', line), only('dark', dark[i])])).join('\n');
}
