import { draw, svgOf } from '@washline/drawing';
import { saidOf } from './glass/said.ts';
import { drinks, liquid } from './head.ts';
import type { Read } from './read.ts';

/** Room of the drawing on a phone, CSS px: the width of a narrow one, the height that the style gives it. */
const ROOM = { width: 375, height: 545 };

/**
 * The demo drink as a phone shows it first, as HTML: a picture, to be there before the scripts are, on either sheet. It holds nothing that can be pressed, is not
 * told to a screen reader, and goes when the page itself stands.
 */
export function firstDrawing({ reading, document, findings, weights }: Read): string {
  const said = saidOf(findings);
  const sheet = (scheme: 'light' | 'dark'): string => svgOf(draw(reading, { ...ROOM, scheme, document, findings: said, weights }), scheme, reading.drink)
    .replace('<svg ', `<svg class="on-${scheme}" `).replace(/<title>.*?<\/title>/, '').replace(/ (?:aria-label|data-figure|data-value|xmlns)="[^"]*"/g, '').replaceAll('<g>\n</g>\n', '')
    // two pictures on one page: each has hatches of its own
    .replaceAll('id="h-', `id="first-${scheme}-`).replaceAll('url(#h-', `url(#first-${scheme}-`);
  return `<div class="page of-glass at-once" aria-hidden="true"><div class="phone-head"><h1>${reading.drink}</h1><p>${liquid(reading)}<br>${drinks(reading)}</p></div><div class="drawing">${sheet('light')}${sheet('dark')}</div></div>`;
}
