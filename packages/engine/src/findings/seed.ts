import type { BuildResult } from '../program/build.ts';
import type { Facts, Rule } from './facts.ts';
import type { Context } from '../program/context.ts';
import type { Ordered } from '../program/order.ts';
import { bubbles } from './bubbles.ts';
import { clear } from './clear.ts';
import { dairy } from './dairy.ts';
import { fat } from './fat.ts';
import { flame } from './flame.ts';
import { foam } from './foam.ts';
import { freezer } from './freezer.ts';
import { gel } from './gel.ts';
import { hidden } from './hidden.ts';
import { overfull } from './glass.ts';
import { harm } from './harm.ts';
import { infusion } from './infusion.ts';
import { keeping } from './keeping.ts';
import { layers } from './layers.ts';
import { measures } from './measures.ts';
import { metal } from './metal.ts';
import { names } from './names.ts';
import { plant } from './plant.ts';
import { pressure } from './pressure.ts';
import { siphon } from './siphon.ts';
import { syrup } from './syrup.ts';
import { vessel } from './vessel.ts';
import { wash } from './wash.ts';

/** Every limit that this recipe could break, as margins to be judged after the run. @source none - definition */
export function seedFindings(ctx: Context, build: BuildResult | null, ordered: Ordered): void {
  for (const rule of RULES) rule({ ctx, build, ordered });
}

const RULES: readonly Rule[] = [names, measures, overfull, vessel, layers, bubbles, clear, dairy, plant, setting, foam, gel, siphon, fat, wash, infusion, syrup, freezer, pressure, harm, keeping, flame, metal, hidden];

/** What a prep itself says about setting. */
function setting({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) ctx.margins.push(...prep.setting);
}
