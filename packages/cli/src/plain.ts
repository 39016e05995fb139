/** Text safe to show on a terminal: control and bidirectional characters taken out, newlines and tabs made blanks. */
export function plain(text: string): string {
  return text.replace(/[\n\t]/g, ' ').replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\u061c\ufeff]/gu, '');
}

/** The same for every string inside a value, its keys included. */
export function plainWithin<T>(value: T): T {
  if (typeof value === 'string') return plain(value) as T;
  if (Array.isArray(value)) return value.map((item) => plainWithin<unknown>(item)) as T;
  if (value !== null && typeof value === 'object') return Object.fromEntries(Object.entries(value).map(([key, item]) => [plain(key), plainWithin<unknown>(item)])) as T;
  return value;
}
