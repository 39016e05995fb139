import type { Path, Problem, Span } from '@washline/engine';

/** Every code a text can raise, with the words its sentence carries besides the place. */
export const PROBLEM_CODES = {
  'bytes-not-utf8': ['byte'], 'text-too-large': ['limit'], 'too-many-lines': ['limit'], 'too-many-sections': ['limit'], 'line-too-long': ['limit'],
  'control-character': ['character'], 'preps-too-deep': ['prep', 'limit'],
  'name-missing': [], 'key-late': ['key'], 'key-twice': ['key'], 'key-unclear': ['key', 'value'], 'glass-unknown': ['glass', 'nearest'],
  'build-twice': [], 'prep-twice': ['prep'], 'section-twice': ['section'], 'section-empty': ['section'], 'section-nameless': [], 'method-unknown': ['method', 'nearest'], 'variant-unclear': ['variant', 'section'],
  'prep-ring': ['prep'], 'prep-unclear': ['words', 'preps'],
  unread: ['text'], 'step-unknown': ['word', 'nearest'], 'no-thing': ['amount'], 'no-amount': ['unit'], 'unit-missing': ['number', 'thing'], 'number-unclear': ['number'], 'number-unused': ['number'], 'second-measure': ['number'],
  'amount-negative': ['number'], 'amount-too-large': ['number', 'limit'], 'share-too-large': ['number'], 'list-number': ['number'], 'temperature-too-low': ['number'],
  'variant-unknown': ['variant', 'variants'], 'figure-unknown': ['figure', 'near', 'all'], 'bench-unclear': ['section'], 'bench-word-unknown': ['word', 'nearest'], 'bench-line-unclear': ['text', 'example'], 'bench-value-unlikely': ['value', 'low', 'high', 'unit'], 'bench-head-unclear': ['key', 'value', 'may'], 'bench-other-money': ['currency', 'other'],
  'shelf-unclear': ['text'], 'accept-unclear': ['text'], 'accept-code-unknown': ['code', 'nearest'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type ProblemCode = keyof typeof PROBLEM_CODES;

/** A problem at a span of one line. */
export function problem(code: ProblemCode, path: Path | null, line: number, column: number, span: Span, words: Readonly<Record<string, string | number>> = {}): Problem {
  return { code, path, line, column, span, words };
}
