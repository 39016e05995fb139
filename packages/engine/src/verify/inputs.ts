import type { Inputs } from './types.ts';

/** Thrown inside a binding where a case lacks what it needs; the runner turns it into `skipped`. */
export class InputMissing extends Error {
  readonly names: readonly string[];
  constructor(names: readonly string[]) {
    super(names.join(', '));
    this.names = names;
  }
}

/**
 * Reads a case's inputs by name.
 * @param all the `inputs` of a case
 * @param note its note, where the inputs leave something to words
 * @returns readers that take several names for one quantity
 * @source none - definition
 */
export function inputsOf(all: Readonly<Record<string, unknown>>, note = ''): Inputs {
  const own = (name: string): unknown => (Object.hasOwn(all, name) ? all[name] : undefined);
  const maybe = (...names: string[]): number | undefined => {
    for (const name of names) {
      const value = own(name);
      if (typeof value === 'number' && Number.isFinite(value)) return value;
    }
    return undefined;
  };
  return {
    all, maybe, note, raw: own,
    number: (...names) => {
      const value = maybe(...names);
      if (value === undefined) throw new InputMissing(names);
      return value;
    },
    text: (...names) => {
      for (const name of names) {
        const value = own(name);
        if (typeof value === 'string') return value;
      }
      return undefined;
    },
    has: (name) => own(name) !== undefined,
  };
}
