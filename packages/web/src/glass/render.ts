import type { Drawing, Fill, Part, Shape } from '@washline/drawing';

const SVG = 'http://www.w3.org/2000/svg';
/** An element, and the part or shape it was last given. */
interface Kept<T> { readonly node: SVGElement; readonly hatch: SVGElement | null; said: T | null }
/** What stands, in the order of the drawing. */
interface Stood { readonly parts: readonly Kept<Part>[]; readonly shapes: readonly Kept<Shape>[] }

/**
 * Keeps an SVG equal to a drawing: one element per shape and part, found again by id, touched only where it changed. Styles are
 * presentation attributes, which a strict content security policy allows.
 */
export function makeRenderer(svg: SVGSVGElement): (drawing: Drawing) => void {
  const parts = new Map<string, Kept<Part>>(), shapes = new Map<string, Kept<Shape>>();
  let before: Stood | null = null;
  return (drawing) => {
    set(svg, 'viewBox', `0 0 ${round(drawing.width)} ${round(drawing.height)}`);
    // where the same things stand in the same order, as at most strokes, none has to be looked for
    if (before !== null && standsAs(before, drawing)) {
      const stood = before;
      drawing.parts.forEach((part, i) => { dress(stood.parts[i] as Kept<Part>, part); });
      drawing.shapes.forEach((shape, i) => { reshape(stood.shapes[i] as Kept<Shape>, shape); });
      return;
    }
    const held = svg.contains(document.activeElement) ? document.activeElement as SVGElement : null, ringed = held?.matches(':focus-visible') === true;
    // What is gone goes first: what stays is then in its place and keeps the focus.
    const live = new Set(drawing.parts.map((part) => part.id)), drawn = new Set(drawing.shapes.map((shape) => shape.id));
    for (const [id, kept] of shapes) if (!drawn.has(id)) { kept.node.remove(); kept.hatch?.remove(); shapes.delete(id); }
    for (const [id, kept] of parts) if (!live.has(id)) { kept.node.remove(); parts.delete(id); }
    for (const part of drawing.parts) {
      let kept = parts.get(part.id);
      if (kept === undefined) { kept = { node: document.createElementNS(SVG, part.href === undefined ? 'g' : 'a'), hatch: null, said: null }; parts.set(part.id, kept); }
      dress(kept, part);
    }
    // a part holds its own shapes, then the parts within it: in that order nothing that stays is ever moved
    const last = new Map<string, SVGElement>();
    for (const shape of drawing.shapes) {
      const parent = parts.get(shape.part)?.node ?? svg;
      let kept = shapes.get(shape.id);
      if (kept !== undefined && kept.node.localName !== elementOf(shape)) { kept.node.remove(); kept.hatch?.remove(); kept = undefined; }
      if (kept === undefined) {
        kept = { node: document.createElementNS(SVG, elementOf(shape)), hatch: shape.kind === 'path' || shape.kind === 'circle' ? document.createElementNS(SVG, elementOf(shape)) : null, said: null };
        shapes.set(shape.id, kept);
      }
      const hatch = isHatched(shape) ? kept.hatch : null;
      place(kept.node, parent, last.get(shape.part) ?? null);
      last.set(shape.part, kept.node);
      if (hatch !== null) { place(hatch, parent, kept.node); last.set(shape.part, hatch); } else if (kept.hatch?.isConnected === true) kept.hatch.remove();
      reshape(kept, shape);
    }
    for (const part of drawing.parts) {
      const { node } = parts.get(part.id) as Kept<Part>, within = part.within ?? '';
      place(node, part.within === null ? svg : parts.get(part.within)?.node ?? svg, last.get(within) ?? null);
      last.set(within, node);
    }
    before = { parts: drawing.parts.map((part) => parts.get(part.id) as Kept<Part>), shapes: drawing.shapes.map((shape) => shapes.get(shape.id) as Kept<Shape>) };
    if (held?.isConnected === true && document.activeElement !== held) held.focus({ preventScroll: true, focusVisible: ringed });
  };
}

const isHatched = (shape: Shape): boolean => (shape.kind === 'path' || shape.kind === 'circle') && shape.hatch !== undefined;

/** Are all parts and shapes those of the drawing before, in its order, each in the same element and with a hatch or without? */
function standsAs(before: Stood, { parts, shapes }: Drawing): boolean {
  return parts.length === before.parts.length && shapes.length === before.shapes.length
    && parts.every((part, i) => { const was = before.parts[i]?.said as Part; return part.id === was.id && part.within === was.within && (part.href === undefined) === (was.href === undefined); })
    && shapes.every((shape, i) => { const was = before.shapes[i]?.said as Shape; return shape.id === was.id && shape.part === was.part && shape.kind === was.kind && isHatched(shape) === isHatched(was); });
}

/** Gives a shape what it says, where that is another. */
function reshape(kept: Kept<Shape>, shape: Shape): void {
  if (alike(shape, kept.said)) return;
  ink(kept.node, isHatched(shape) ? kept.hatch : null, shape);
  kept.said = shape;
}

/** Do two say the same? Everything they hold is a word, a number, a list of such or a small thing of such. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return typeof a === 'number' && a !== a && b !== b;
  const one = a as Readonly<Record<string, unknown>>, two = b as Readonly<Record<string, unknown>>;
  let own = 0;
  for (const name in one) { own += 1; if (!alike(one[name], two[name])) return false; }
  for (const _ in two) own -= 1;
  return own === 0;
}

/** Puts a node behind another within its parent, or first; behind the hatches of the whole. */
function place(node: Element, parent: Element, after: Element | null): void {
  const before = after ?? (parent.localName === 'svg' ? parent.querySelector(':scope > defs') : null);
  if (node.parentNode === parent && node.previousElementSibling === before) return;
  if (before === null) parent.prepend(node); else before.after(node);
}

function elementOf(shape: Shape): 'path' | 'circle' | 'text' | 'rect' { return shape.kind === 'target' ? 'rect' : shape.kind; }

/** Gives a part what it says. What stays is left alone: without its `tabindex` for a moment it would lose the focus, and to give that back the page is laid out. */
function dress(kept: Kept<Part>, part: Part): void {
  if (alike(part, kept.said)) return;
  kept.said = part;
  const g = kept.node, worn = new Map(wornBy(part));
  for (const name of g.getAttributeNames()) if (name !== 'aria-expanded' && !worn.has(name)) g.removeAttribute(name);
  for (const [name, value] of worn) set(g, name, value);
}

function wornBy(part: Part): (readonly [name: string, value: string])[] {
  const worn: (readonly [string, string])[] = [['class', `part-${part.role}`], ['data-part', part.id]];
  if (part.reading !== undefined) worn.push(['data-reading', part.reading]);
  if (part.figure !== undefined) {
    const f = part.figure;
    worn.push(
      ['data-figure', f.name], ['data-value', String(f.value)], ['data-unit', f.unit], ['data-low', String(f.low)], ['data-high', String(f.high)], ['data-of', f.reading],
      ['role', 'button'], ['tabindex', '0'], ['aria-haspopup', 'dialog'], ['aria-label', part.name ?? f.name],
    );
  } else if (part.level !== undefined) {
    const { of, value, unit, perPx } = part.level, name = part.name ?? '';
    worn.push(
      ['role', 'slider'], ['tabindex', '0'], ['aria-orientation', 'vertical'], ['aria-label', name || of], ['aria-valuetext', name], ['aria-valuenow', String(value)], ['aria-valuemin', '0'],
      ['aria-valuemax', String(Math.max(100, value * 4))], ['data-level', of], ['data-at', String(value)], ['data-in', unit], ['data-per', String(perPx)],
    );
  } else if (part.role === 'glass') worn.push(['data-drawing', 'glass'], ['role', 'group'], ['tabindex', '-1'], ['id', 'glass'], ['aria-label', part.name ?? '']);
  else if (part.role === 'reading' || part.role === 'figure') { /* its texts speak */
  } else if (part.role === 'vessel') worn.push(['data-section', part.prep ?? ''], ['role', 'group'], ['aria-label', part.name ?? '']);
  else if (part.name !== undefined) worn.push(['role', 'img'], ['aria-label', part.name]);
  else if (part.role !== 'fall' && part.href === undefined) worn.push(['aria-hidden', 'true']);
  if (part.href !== undefined) worn.push(['href', part.href]);
  if (part.tide !== undefined) worn.push(['data-tide', String(part.tide)]);
  if (part.layer !== undefined) worn.push(['data-layer', part.layer]);
  if (part.washline_mm !== undefined) worn.push(['data-washline', String(part.washline_mm)]);
  return worn;
}

function ink(node: SVGElement, hatch: SVGElement | null, shape: Shape): void {
  switch (shape.kind) {
    case 'target':
      set(node, 'class', 'target');
      for (const key of ['x', 'y', 'width', 'height'] as const) set(node, key, round(shape[key]));
      return;
    case 'text':
      set(node, 'x', round(shape.x)); set(node, 'y', round(shape.y)); set(node, 'text-anchor', shape.anchor);
      write(node, shape.runs);
      return;
    case 'path': case 'circle':
      for (const one of hatch === null ? [node] : [node, hatch]) {
        if (shape.kind === 'path') set(one, 'd', shape.d); else { set(one, 'cx', round(shape.x)); set(one, 'cy', round(shape.y)); set(one, 'r', round(shape.r)); }
      }
      set(node, 'fill', colour(shape.fill));
      set(node, 'data-pen', shape.pen);
      stroke(hatch ?? node, shape);
      if (hatch !== null) { set(hatch, 'fill', `url(#h-${shape.hatch ?? ''})`); node.removeAttribute('stroke'); }
  }
}

/** Runs of a text, each in the element that the run before it in this place had: a new one would be styled anew. */
function write(node: SVGElement, runs: Extract<Shape, { kind: 'text' }>['runs']): void {
  while (node.childElementCount > runs.length) node.lastElementChild?.remove();
  for (const [i, run] of runs.entries()) {
    const span = node.children[i] ?? node.appendChild(document.createElementNS(SVG, 'tspan'));
    if (span.textContent !== run.text) span.textContent = run.text;
    set(span, 'font-size', round(run.size)); set(span, 'font-weight', String(run.weight)); set(span, 'fill', colour(run.tone));
    if (run.gap === undefined) span.removeAttribute('dx'); else set(span, 'dx', round(run.gap));
  }
}

function stroke(node: SVGElement, line: { readonly stroke?: Fill | undefined; readonly width?: number | undefined; readonly dash?: readonly number[] | undefined; readonly round?: boolean | undefined }): void {
  if (line.stroke === undefined) { node.removeAttribute('stroke'); return; }
  set(node, 'stroke', colour(line.stroke));
  set(node, 'stroke-width', round(line.width ?? 0));
  if (line.dash === undefined) node.removeAttribute('stroke-dasharray'); else set(node, 'stroke-dasharray', line.dash.map(round).join(' '));
  if (line.round === true) { set(node, 'stroke-linecap', 'round'); set(node, 'stroke-linejoin', 'round'); } else { node.removeAttribute('stroke-linecap'); node.removeAttribute('stroke-linejoin'); }
}

export function colour(fill: Fill | undefined): string { return fill === undefined ? 'none' : fill.startsWith('#') ? fill : `var(--${fill})`; }
function set(node: Element, name: string, value: string): void { if (node.getAttribute(name) !== value) node.setAttribute(name, value); }
function round(n: number): string { return String(Math.round(n * 1000) / 1000); }
