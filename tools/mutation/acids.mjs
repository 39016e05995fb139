// The tests of the domain as one, so that a worker and the engine's tables are made once for each mutant.
import.meta.glob('../../packages/engine/src/acids/*.test.ts', { eager: true });
