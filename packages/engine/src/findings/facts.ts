import type { BuildResult } from '../program/build.ts';
import type { Context } from '../program/context.ts';
import type { Ordered } from '../program/order.ts';

/** What a rule may look at: the recipe as compiled. */
export interface Facts { readonly ctx: Context; readonly build: BuildResult | null; readonly ordered: Ordered }
export type Rule = (facts: Facts) => void;
