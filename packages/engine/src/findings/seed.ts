import type { BuildResult } from '../program/build.ts';
import type { Facts, Rule } from './facts.ts';
import type { Context } from '../program/context.ts';
import type { Ordered } from '../program/order.ts';
import { dairy } from './dairy.ts';
import { fat } from './fat.ts';
import { hidden } from './hidden.ts';
import { overfull } from './glass.ts';
import { harm } from './harm.ts';
import { names } from './names.ts';

/** Every limit that this recipe could break, as margins to be judged after the run. @source none - definition */
export function seedFindings(ctx: Context, build: BuildResult | null, ordered: Ordered): void {
  for (const rule of RULES) rule({ ctx, build, ordered });
}

const RULES: readonly Rule[] = [names, overfull, dairy, setting, fat, harm, hidden];

/** What a prep itself says about setting. */
function setting({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) ctx.margins.push(...prep.setting);
}
