import type { Document, Grade } from '@washline/engine';

/** What a grade means, in words. */
export const GRADE: Readonly<Record<Grade, string>> = {
  defined: 'defined: exact by definition', measured: 'measured', own: 'own: measured by you', compiled: 'compiled: from published tables', reviewed: 'reviewed: from a review of published work',
  predicted: 'predicted: worked out by a model', trade: 'trade: common practice, no source', memory: 'memory: remembered, not looked up',
};

const NAMES: Readonly<Record<string, string>> = { ph: 'pH', brix: 'Brix', washline: 'Level' };
export function nameOf(figure: string): string { return NAMES[figure] ?? figure.charAt(0).toUpperCase() + figure.slice(1); }

/** Methods and inputs have keys of plain words joined by signs; the signs go. */
export function methodWords(method: string): string { return method.replaceAll(/[-_/]+/g, ' '); }
export function inputWords(key: string, lines: ReadonlyMap<string, string>): string {
  const [kind = '', ...rest] = key.split('/');
  const line = lines.get(rest.join('/')) ?? lines.get(rest.slice(1).join('/'));
  const first = rest[0] ?? '', last = rest.at(-1) ?? '';
  const plain = (text: string): string => text.replace(/#1$/, '').replace(/#(\d+)$/, ', number $1').replaceAll(/[-_]/g, ' ');
  const quoted = line === undefined ? '' : `: ${line}`;
  switch (kind) {
    case 'pour': return `${plain(last)} as poured${first === 'build' || rest.length < 2 ? '' : `, for ${plain(first)}`}`;
    case 'time': return `how long${quoted === '' ? `, ${plain(rest.join(' '))}` : quoted}`;
    case 'temperature': return `how warm${quoted === '' ? `, ${plain(rest.join(' '))}` : quoted}`;
    case 'start': return `start temperature of ${plain(last)}`;
    case 'agitation': return first === 'area' ? `surface of the ${plain(last)}` : `how hard one ${last === 'stir' ? 'stirs' : last === 'shake' ? 'shakes' : plain(last)}`;
    case 'ice': return first === 'mass' ? `mass of ice${quoted}` : first === 'temperature' ? 'temperature of the ice' : first === 'size' ? 'size of the ice' : `ice, ${plain(rest.join(' '))}`;
    case 'bottle': return `${plain(last)} of the bottle of ${plain(first)}`;
    case 'strength': return `strength of ${plain(rest.join(' '))}`;
    case 'fruit': return first === 'yield' ? `what a ${plain(last)} gives` : `${plain(last)} in ${plain(first)}`;
    case 'larder': return `${plain(last).replace(/ g$/, '')} in ${plain(first)}`;
    case 'syrup': return `${plain(last)} in ${plain(first)}`;
    case 'place': return `temperature of the ${plain(first)}`;
    case 'cloth': return `what the ${plain(rest.join(' '))} keeps`;
    case 'yield': return `yield of ${plain(rest.join(' '))}`;
    case 'tool': return `the ${plain(rest.filter((w) => w !== 'for').join(' '))}`;
    case 'glass': return `size of the ${plain(last)} glass`;
    case 'vessel': return `warmth the ${plain(rest.join(' '))} takes`.replace(/ heat takes$/, ' takes');
    case 'model': return `the model's own residual: ${plain(rest.join(' '))}`;
    default: return plain([kind, ...rest].join(', '));
  }
}

/** Texts of the lines by their path, as keys of inputs name them. */
export function linesByPath(document: Document): ReadonlyMap<string, string> {
  return new Map(document.sections.flatMap((s) => s.lines.map((l) => [l.path.join('/'), l.text] as const)));
}
