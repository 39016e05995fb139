// What is mutated, and which tests have to notice: those that stand beside it, no others.
export const DOMAINS = {
  units: { mutate: ['packages/engine/src/units/*.ts'], tests: ['packages/engine/src/units/*.test.ts'], share: 1 },
  liquids: { mutate: ['packages/engine/src/liquids/*.ts'], tests: ['tools/mutation/liquids.mjs'], share: 1 },
  acids: { mutate: ['packages/engine/src/acids/*.ts'], tests: ['tools/mutation/acids.mjs'], share: 1 },
  grammar: {
    mutate: ['line', 'phrase', 'tokens', 'sections', 'document'].map((folder) => `packages/spec/src/${folder}/*.ts`),
    tests: ['tools/mutation/grammar.mjs'], share: 0.05,
  },
};
/** The least share of mutants that some test must notice. */
export const LEAST = 70;
/** Words of a language are data in code's clothes: a changed word is another word, and the tables of lines hold them. */
export const EXCLUDED = ['StringLiteral', 'Regex'];
