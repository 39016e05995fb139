import type { CircleShape, Drawing, Fill, HatchKey, Part, PathShape, Pen, Run, Shape } from '../shapes.ts';
import { runsWidth } from './lettering.ts';
import { line, written, type Step } from './path.ts';

/** A box in px of the layout. */
export interface Box { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

export interface Inked { readonly fill?: Fill | undefined; readonly hatch?: HatchKey | undefined; readonly stroke?: Fill | undefined; readonly width?: number | undefined; readonly dash?: readonly number[] | undefined; readonly round?: boolean | undefined }

/** How each line class is drawn, px. */
export const PENS: Readonly<Record<Pen, Inked>> = {
  wall: { stroke: 'ink', width: 2, round: true },
  washline: { stroke: 'ink', width: 3.5 },
  level: { stroke: 'ink', width: 1.25 },
  leader: { stroke: 'ink2', width: 0.8 },
  dimension: { stroke: 'ink3', width: 0.6 },
  extension: { stroke: 'ink3', width: 0.6 },
  arrowhead: { fill: 'ink' },
  centre: { stroke: 'ink3', width: 0.7, dash: [14, 3, 2, 3] },
  hidden: { stroke: 'ink2', width: 0.9, dash: [4, 3] },
  phantom: { stroke: 'ink2', width: 0.9, dash: [9, 2.5, 1.5, 2.5, 1.5, 2.5] },
  fall: { stroke: 'ink', width: 1, round: true },
  hose: {},
  carry: { stroke: 'ink2', width: 1.25, dash: [7, 4] },
  net: { stroke: 'ground', width: 0.6 },
  fill: {},
  garnish: { stroke: 'ink', width: 1.25, round: true },
  ice: { stroke: 'ink', width: 1.25, round: true },
  letter: { stroke: 'ink', width: 1.25, fill: 'sheet' },
  stop: { fill: 'signal' },
  warn: { stroke: 'signal', width: 1.5, round: true },
  shelf: { stroke: 'ink', width: 1.25 },
  dot: { fill: 'ink' },
  hand: { fill: 'ink' },
  bar: { stroke: 'ink', width: 1.25 },
  tide: { stroke: 'ink', width: 1.7, round: true },
  'tide-fails': { stroke: 'signal', width: 1.4 },
};

/** Collects parts and shapes in px and hands them over in millimetres. */
export class Pad {
  readonly parts: Part[] = [];
  readonly shapes: Shape[] = [];
  readonly boxes: { readonly part: string; readonly box: Box }[] = [];
  private readonly counts = new Map<string, number>();
  private part = '';

  open(part: Part): void {
    if (!this.parts.some((p) => p.id === part.id)) this.parts.push(part);
    this.part = part.id;
  }

  private next(): string {
    const n = this.counts.get(this.part) ?? 0;
    this.counts.set(this.part, n + 1);
    return `${this.part}/${n}`;
  }

  path(pen: Pen, steps: readonly Step[], ink: Inked = {}): void {
    if (steps.length === 0) return;
    const shape: PathShape = { kind: 'path', id: this.next(), part: this.part, pen, d: steps as unknown as string, ...PENS[pen], ...ink };
    this.shapes.push(shape);
  }

  line(pen: Pen, x1: number, y1: number, x2: number, y2: number, ink: Inked = {}): void { this.path(pen, line(x1, y1, x2, y2), ink); }

  circle(pen: Pen, x: number, y: number, r: number, ink: Inked = {}): void {
    const shape: CircleShape = { kind: 'circle', id: this.next(), part: this.part, pen, x, y, r, ...PENS[pen], ...ink };
    this.shapes.push(shape);
  }

  /** Sets a text on its base line and returns the box it takes. */
  text(x: number, y: number, runs: readonly Run[], anchor: 'start' | 'middle' | 'end' = 'start'): Box {
    this.shapes.push({ kind: 'text', id: this.next(), part: this.part, x, y, anchor, runs });
    const box = textBox(x, y, runs, anchor);
    this.boxes.push({ part: this.part, box });
    return box;
  }

  target(box: Box): void { this.shapes.push({ kind: 'target', id: this.next(), part: this.part, ...box }); }

  finish(width: number, height: number, pxPerMm: number, washline_y: number | null, axis_x: number): Drawing {
    const k = 1 / pxPerMm;
    return {
      width: width * k, height: height * k, mmPerPx: k, parts: this.parts,
      washline_y: washline_y === null ? null : washline_y * k, axis_x: axis_x * k,
      shapes: this.shapes.map((shape) => scaled(shape, k)),
    };
  }
}

export function textBox(x: number, y: number, runs: readonly Run[], anchor: 'start' | 'middle' | 'end'): Box {
  const width = runsWidth(runs);
  const size = Math.max(0, ...runs.map((r) => r.size));
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { x: left, y: y - size * 0.74, width, height: size * 0.94 };
}

export function overlap(a: Box, b: Box, gap = 0): boolean {
  return a.x < b.x + b.width + gap && b.x < a.x + a.width + gap && a.y < b.y + b.height + gap && b.y < a.y + a.height + gap;
}

/** The same shape in millimetres: the pad made it for itself and is done with it, so it is not copied. */
function scaled(shape: Shape, k: number): Shape {
  const s = shape as Own<Shape>;
  switch (s.kind) {
    case 'path': s.d = written(s.d as unknown as readonly Step[], k); inked(s, k); break;
    case 'circle': s.x *= k; s.y *= k; s.r *= k; inked(s, k); break;
    // runs may be another's too
    case 'text': s.x *= k; s.y *= k; s.runs = s.runs.map((r) => ({ ...r, size: r.size * k, ...(r.gap === undefined ? {} : { gap: r.gap * k }) })); break;
    case 'target': s.x *= k; s.y *= k; s.width *= k; s.height *= k; break;
  }
  return s;
}
type Own<T> = T extends unknown ? { -readonly [K in keyof T]: T[K] } : never;

function inked(s: Own<PathShape | CircleShape>, k: number): void {
  if (s.width !== undefined) s.width *= k;
  if (s.dash !== undefined) s.dash = s.dash.map((n) => n * k);
}
