import type { Document, Splice } from '../document/types.ts';
import type { Compiled } from '../program/compile.ts';
import { inHead } from '../program/words.ts';
import { place } from './place.ts';
import type { Assumed } from './types.ts';

/** Words with a colon are a line of the head. */
const HEAD = /^[^:\d]+: \S/;

/** Where words go that were given no place: into the head, if they are a line of it. */
function placed(document: Document, say: string, splices: readonly Splice[] | undefined): readonly Splice[] {
  return splices ?? (HEAD.test(say) ? inHead(document, say) : []);
}

/**
 * What was not written but needed: inputs and words, each with the words that would replace it and the splices that put them in.
 * Numbers of the models have no words and are not listed: their width is the model's.
 * @source none - definition
 */
export function assumedOf(c: Compiled): Assumed[] {
  const { document, book } = c.ctx, out: Assumed[] = [];
  for (const i of c.program.inputs) {
    if (!i.assumed || i.role === 'model' || i.source === 'bench') continue;
    const { say, key } = i.assumed, range = i.spread.kind === 'range' ? i.spread : null;
    out.push({ key: key ?? i.key, value: i.value, unit: i.unit, low: range?.low ?? null, high: range?.high ?? null, grade: i.grade, source: i.source, where: place(document, i.at ?? []), say, splices: placed(document, say, i.assumed.splices) });
  }
  for (const w of book.words) if (w.source !== 'bench') out.push({ key: w.key, value: w.value, unit: '', low: null, high: null, grade: w.grade, source: w.source, where: place(document, w.at), say: w.say, splices: placed(document, w.say, w.splices) });
  return out;
}
