/** A line that one of two texts has and the other has not; `with`: the line that stands in its place there. */
export interface Changed { readonly a: string | null; readonly b: string | null }

/** More lines than this are compared by their words alone, not by their order. */
const MOST = 400;

/**
 * The lines in which two texts differ, in order, by the longest common subsequence of their lines; what was taken out and what was put in at one place stand side by
 * side. Blank lines and how many spaces stand in a line are no difference.
 */
export function changedLines(a: string, b: string): Changed[] {
  const x = linesOf(a), y = linesOf(b);
  if (x.length > MOST || y.length > MOST) {
    const inA = new Set(x), inB = new Set(y);
    return [...x.filter((line) => !inB.has(line)).map((line) => ({ a: line, b: null })), ...y.filter((line) => !inA.has(line)).map((line) => ({ a: null, b: line }))];
  }
  const width = y.length + 1, longest = new Uint16Array((x.length + 1) * width);
  for (let i = x.length - 1; i >= 0; i -= 1) for (let j = y.length - 1; j >= 0; j -= 1) longest[i * width + j] = x[i] === y[j] ? 1 + longest[(i + 1) * width + j + 1]! : Math.max(longest[(i + 1) * width + j]!, longest[i * width + j + 1]!);
  const out: Changed[] = [], gone: string[] = [], come: string[] = [];
  const close = (): void => { for (let k = 0; k < Math.max(gone.length, come.length); k += 1) out.push({ a: gone[k] ?? null, b: come[k] ?? null }); gone.length = 0; come.length = 0; };
  let i = 0, j = 0;
  while (i < x.length || j < y.length) {
    if (i < x.length && j < y.length && x[i] === y[j]) { close(); i += 1; j += 1; }
    else if (j >= y.length || (i < x.length && longest[(i + 1) * width + j]! >= longest[i * width + j + 1]!)) gone.push(x[i++]!);
    else come.push(y[j++]!);
  }
  close();
  return out;
}

function linesOf(text: string): string[] { return text.split('\n').map((line) => line.trim().replace(/\s+/g, ' ')).filter((line) => line !== ''); }
