// The tests of the grammar as one, so that the vocabulary is taken apart once for each mutant; the fuzz is left out: it asks that nothing is thrown.
import.meta.glob(['../../packages/spec/src/**/*.test.ts', '!**/fuzz.test.ts'], { eager: true });
