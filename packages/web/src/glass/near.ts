/** The part of the drawing something lies in, as the sheet knows it: a vessel, a fall, the hose of a siphon. */
export function partAt(target: EventTarget | null, svg: SVGSVGElement): string | null {
  const id = (target as Element | null)?.closest<SVGElement>('[data-part^="prep:"], [data-part^="fall:"], [data-part="hose"]')?.dataset['part'] ?? null;
  if (id !== 'hose') return id;
  const from = siphon(svg);
  return from === null ? null : `hose:${from}`;
}
const siphon = (svg: SVGSVGElement): string | null => svg.querySelector<SVGElement>('[data-section] [data-pen="hose"]')?.closest<SVGElement>('[data-section]')?.dataset['section'] ?? null;

/** Lets parts stand out, and those that stood out no longer; of each list the first that is drawn. */
export function makeStandOut(svg: SVGSVGElement): (parts: readonly (readonly string[])[]) => void {
  let out: Element[] = [];
  const nodeOf = (id: string): Element | null => svg.querySelector(`[data-part="${CSS.escape(id.startsWith('hose:') ? (siphon(svg) === id.slice(5) ? 'hose' : '') : id)}"]`);
  return (parts) => {
    if (parts.length === 0 && out.length === 0) return;
    const next = parts.flatMap((list) => { for (const id of list) { const node = nodeOf(id); if (node !== null) return [node]; } return []; });
    for (const node of out) if (!next.includes(node)) node.classList.remove('near');
    for (const node of next) node.classList.add('near');
    out = next;
  };
}
