import { hatches } from './pen/hatch.ts';
import type { Scheme } from './pen/tint.ts';
import type { Drawing, Fill, Part, Shape } from './shapes.ts';

export type Inks = Readonly<Record<string, string>>;
/** What the names of inks stand for; the page's sheet of styles says the same. */
export const INKS: Readonly<Record<Scheme, Inks>> = {
  light: {
    paper: '#EDF2EE', sheet: '#F8FAF6', ink: '#10242B', ink2: '#3D5157', ink3: '#53676C', ink4: '#A9BAB6', ground: '#DCE6E1', ground2: '#C9D7D1', signal: '#B0182B',
    wall: '#FFFFFF', 'wall-up': '#FFFFFF', grain: '#EAF4F6', cut: '#10242B', hatch: '#53676C',
  },
  dark: {
    paper: '#1A2321', sheet: '#212C29', ink: '#E8EEE6', ink2: '#BECBC4', ink3: '#9DAFA8', ink4: '#586B65', ground: 'none', ground2: 'none', signal: '#FF9482',
    wall: '#7C948B', 'wall-up': '#5A6F67', grain: '#304A51', cut: '#1A2321', hatch: '#BECBC4',
  },
};

/**
 * A drawing as a file of its own: SVG with its inks written out, in millimetres of the glass times `mmPerPx` px. Text is text; the lettering is the reader's own
 * where it has not ours.
 * @param title what the file is called: a drink
 * @param options other inks; `bare`: as a picture within a page, without what names and numbers it and without paper of its own
 */
export function svgOf(drawing: Drawing, scheme: Scheme, title: string, { inks = INKS[scheme], bare = false }: { readonly inks?: Inks; readonly bare?: boolean } = {}): string {
  const width = drawing.width / drawing.mmPerPx, height = drawing.height / drawing.mmPerPx;
  const lines = [
    `<svg${bare ? '' : ' xmlns="http://www.w3.org/2000/svg"'} width="${short(width)}" height="${short(height)}" viewBox="0 0 ${short(drawing.width)} ${short(drawing.height)}" font-family="'National Park Variable', 'National Park', system-ui, sans-serif">`,
    ...(bare ? [] : [`<title>${safe(title)}</title>`]), '<defs>', ...tiles(drawing, inks), '</defs>', ...(bare ? [] : [`<rect width="100%" height="100%" fill="${inks['paper']}"/>`]),
  ];
  const children = (within: string | null): void => {
    for (const part of drawing.parts) {
      // what is there for a hand alone does not stand in a file
      if (part.within !== within || part.role === 'handle') continue;
      const from = lines.push(`<g${bare ? '' : said(part)}>`);
      for (const shape of drawing.shapes) if (shape.part === part.id) lines.push(...inked(shape, inks));
      children(part.id);
      if (bare && lines.length === from) lines.pop(); else lines.push('</g>');
    }
  };
  children(null);
  lines.push('</svg>');
  return `${lines.filter((line) => line !== '').join('\n')}\n`;
}

/** The tiles that the drawing uses, as patterns. */
function tiles(drawing: Drawing, inks: Inks): string[] {
  const used = new Set(drawing.shapes.map((s) => ((s.kind === 'path' || s.kind === 'circle') ? s.hatch : undefined)));
  return Object.entries(hatches).filter(([key]) => used.has(key as never)).map(([key, tile]) => {
    const tone = inks[key === 'glass' ? 'cut' : tile.tone === 'ink3' ? 'hatch' : tile.tone] ?? 'none';
    const inside = [...(tile.rounds ?? []).map(([cx = 0, cy = 0, r = 1]) => `<circle cx="${cx}" cy="${cy}" r="${r}"/>`), ...(tile.paths ?? []).map((d) => `<path d="${d}"/>`)].join('');
    const dress = tile.filled === true ? `fill="${tone}"` : `fill="${tile.grain === true ? inks['grain'] : 'none'}" stroke="${tone}" stroke-width="${tile.stroke ?? 0.6}" stroke-linecap="round"`;
    return `<pattern id="h-${key}" width="${tile.width}" height="${tile.height}" patternUnits="userSpaceOnUse" patternTransform="scale(${short(drawing.mmPerPx)}) rotate(${tile.turn})"><g ${dress}>${inside}</g></pattern>`;
  });
}

function said(part: Part): string {
  return (part.name === undefined ? '' : ` aria-label="${safe(part.name)}"`) + (part.figure === undefined ? '' : ` data-figure="${safe(part.figure.name)}" data-value="${short(part.figure.value)}"`);
}

function inked(shape: Shape, inks: Inks): string[] {
  const colour = (fill: Fill | undefined): string => (fill === undefined ? 'none' : fill.startsWith('#') ? fill : inks[fill] ?? 'none');
  switch (shape.kind) {
    case 'target': return [];
    case 'text': return [`<text x="${short(shape.x)}" y="${short(shape.y)}" text-anchor="${shape.anchor}">${shape.runs.map((run) => `<tspan${run.gap === undefined ? '' : ` dx="${short(run.gap)}"`} font-size="${short(run.size)}" font-weight="${run.weight}" fill="${colour(run.tone)}">${safe(run.text)}</tspan>`).join('')}</text>`];
    case 'path': case 'circle': {
      const place = shape.kind === 'path' ? `path d="${shape.d}"` : `circle cx="${short(shape.x)}" cy="${short(shape.y)}" r="${short(shape.r)}"`;
      const line = shape.stroke === undefined ? '' : ` stroke="${colour(shape.stroke)}" stroke-width="${short(shape.width ?? 0)}"${shape.dash === undefined ? '' : ` stroke-dasharray="${shape.dash.map(short).join(' ')}"`}${shape.round === true ? ' stroke-linecap="round" stroke-linejoin="round"' : ''}`;
      return shape.hatch === undefined ? [`<${place} fill="${colour(shape.fill)}"${line}/>`] : [`<${place} fill="${colour(shape.fill)}"/>`, `<${place} fill="url(#h-${shape.hatch})"${line}/>`];
    }
  }
}

const short = (n: number): string => String(Math.round(n * 1000) / 1000);
const safe = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
