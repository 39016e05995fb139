import type { Grade } from '@washline/engine';

/** What a grade means, in words. */
export const GRADE: Readonly<Record<Grade, string>> = {
  defined: 'defined: exact by definition', measured: 'measured', own: 'own: measured by you', compiled: 'compiled: from published tables', reviewed: 'reviewed: from a review of published work',
  predicted: 'predicted: worked out by a model', trade: 'trade: common practice, no source', memory: 'memory: remembered, not looked up',
};

const NAMES: Readonly<Record<string, string>> = { ph: 'pH', brix: 'Brix', washline: 'Level' };
export function nameOf(figure: string): string { return NAMES[figure] ?? figure.charAt(0).toUpperCase() + figure.slice(1); }

/** Methods and inputs have keys of plain words joined by signs; the signs go. */
export function methodWords(method: string): string { return method.replaceAll(/[-_/]+/g, ' '); }
export function inputWords(key: string): string {
  const [kind = '', ...rest] = key.split('/');
  const words = rest.map((w) => w.replace(/#1$/, '').replace(/#(\d+)$/, ', $1')).filter((w) => w !== '');
  if (kind === 'pour') return `${words.slice(1).join(', ')}, as poured${words[0] === undefined || words[0] === 'build' ? '' : ` for ${words[0]}`}`;
  return (kind === 'model' ? ['the model', ...words] : words.length === 0 ? [kind] : words).join(', ').replaceAll(/[-_]/g, ' ');
}
