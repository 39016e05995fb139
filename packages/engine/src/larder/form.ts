import type { Ingredient } from './types.ts';
import { CONSTITUENTS, type Constituent } from '../matter/constituents.ts';

/** What an ingredient is at the bench: what a step does with it. */
export type Form = 'liquid' | 'soluble' | 'botanical' | 'fat' | 'agent' | 'egg' | 'puree' | 'insoluble' | 'gas' | 'ice' | 'piece';
const FORMS: readonly string[] = ['liquid', 'soluble', 'botanical', 'fat', 'agent', 'egg', 'puree', 'insoluble', 'gas', 'ice', 'piece'] satisfies readonly Form[];

/**
 * What an ingredient is at the bench, from the table of forms (by category, with exceptions by id).
 * @param ingredient a row of the larder
 * @returns its form; `liquid` for a row without one
 * @source common-practice data/larder/forms.tsv
 */
export function form(ingredient: Ingredient): Form {
  const written = ingredient.text['form'];
  return FORMS.includes(written ?? '') ? (written as Form) : 'liquid';
}

/**
 * The assumption that gives the temperature an ingredient goes in at when none is written.
 * @returns a key of `data/assumptions.tsv` such as `start/spirit`; `place/room` for a row without one
 * @source common-practice data/larder/forms.tsv
 */
export const startOf = (ingredient: Ingredient): string => ingredient.text['start'] ?? 'place/room';

/**
 * The spread of the strength on a bottle's label.
 * @returns a key of `data/spreads.tsv` such as `label/strength/spirits`; null for what carries no strength
 * @source eu1169_xii data/larder/forms.tsv
 */
export const labelStrengthOf = (ingredient: Ingredient): string | null => ingredient.text['label'] ?? null;

/**
 * The constituent a setting, thickening or foaming agent counts as.
 * @returns `gelatin`, `agar`, `methylcellulose`, …; null for what is no agent
 * @source none - definition
 */
export function agentOf(ingredient: Ingredient): Constituent | null {
  const written = ingredient.text['agent'];
  return CONSTITUENTS.find((constituent) => constituent === written) ?? null;
}

/**
 * What a solid keeps when it is strained off, and what it gives away when it is steeped.
 * @returns liquid held in g per g as put in, and the share of its own mass (0 to 1) that dissolves; null where the table has neither
 * @source common-practice data/larder/forms.tsv
 */
export function steeping(ingredient: Ingredient): { readonly held_g_g: number; readonly extractable: number } | null {
  const held = ingredient.cells['held_g_g'];
  const extractable = ingredient.cells['extractable_share'];
  return held && extractable ? { held_g_g: held.value, extractable: extractable.value } : null;
}
