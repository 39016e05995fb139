import table from '../../../../data/physics/agents.json' with { type: 'json' };

export type Ability = 'yes' | 'weak' | 'no';
/** What an agent is to do: foam, soft or firm gel, thicken; the others are finer words of the same. */
export type Purpose = 'foam' | 'soft' | 'firm' | 'thicken' | 'shot' | 'gummy' | 'clarify' | 'fluid' | 'suspend' | 'body' | 'airs';

/** One gelling, foaming or thickening agent. Doses g per kg of the whole mix, alcohol % vol of the mix, temperatures °C. */
export interface Agent {
  readonly key: string;
  /** larder ids it stands for */
  readonly ids: readonly string[];
  readonly constituent: string;
  /** makes a foam */
  readonly whips: Ability;
  /** keeps a foam or gel */
  readonly holds: Ability;
  readonly dose: Readonly<Partial<Record<Purpose, readonly [number, number]>>>;
  readonly doseSource: string;
  /** the doses are for this Bloom */
  readonly doseAtBloom?: number;
  readonly useLevel?: readonly [number, number];
  readonly partner?: { readonly agent: string; readonly dose: readonly [number, number]; readonly source: string };
  /** before it is heated: at least so long, in water no warmer, g of water taken per g */
  readonly soak?: { readonly seconds: number; readonly water: number; readonly celsius: number; readonly source: string };
  readonly hydrate: { readonly celsius: number; readonly seconds: number; readonly cold?: boolean; readonly disperseAbove?: number; readonly tooHot?: number; readonly source: string };
  readonly set?: { readonly celsius: number; readonly seconds: number; readonly source: string };
  /** it begins to set below: what is put to it must be warmer */
  readonly setsBelow?: number;
  readonly combineAbove?: number;
  readonly melts?: number;
  readonly gelsAbove?: number;
  readonly needsBrix?: number;
  readonly needsFat?: number;
  readonly alcohol: {
    readonly foam?: { readonly easy: number; readonly more: number; readonly warn: number; readonly stop: number; readonly source: string };
    readonly gel?: { readonly warn: number; readonly stop: number; readonly source: string };
    readonly supplier?: number;
    readonly supplierSource?: string;
  };
  readonly pH: readonly [number, number];
  readonly pHSource: string;
  /** below this pH boiling takes it apart */
  readonly acidBoil?: number;
  /** proteases digest it */
  readonly protease: boolean;
}

/** All agents by key. @source none - table data/physics/agents.json, a source beside each value */
export const AGENTS: Readonly<Record<string, Agent>> = Object.fromEntries(
  Object.entries(table.agents).map(([key, row]) => [key, { key, ...row } as unknown as Agent]),
);

const BY_ID = new Map(Object.values(AGENTS).flatMap((agent) => agent.ids.map((id) => [id, agent] as const)));

/** The agent a larder id stands for; undefined for what is none. @source none - table */
export function agentOf(id: string): Agent | undefined {
  return BY_ID.get(id);
}

/**
 * How far a dose lies outside its window, g per kg: positive below `low`, or above `high`; both negative inside.
 * g_per_kg of the whole mix; bloom: of the gelatin, for agents whose window is of one Bloom (dose × root of the ratio). undefined where the agent has no window for it.
 * @source common-practice windows; ward-courts Bloom as the square of concentration
 */
export function doseMargins(agent: Agent, purpose: Purpose, g_per_kg: number, bloom?: number): { readonly low: number; readonly high: number } | undefined {
  const window = agent.dose[purpose];
  if (!window) return undefined;
  const dose = agent.doseAtBloom !== undefined && bloom !== undefined ? g_per_kg * Math.sqrt(bloom / agent.doseAtBloom) : g_per_kg;
  return { low: window[0] - dose, high: dose - window[1] };
}

/** How strong a mix is for a foam: easy, wants more agent, doubtful, does not hold. @source none - definition */
export const EASY = 0, MORE = 1, DOUBTFUL = 2, TOO_STRONG = 3;

/**
 * Degree of a foam's strength. pct: % vol of the mix as charged or whipped; the ceilings belong to the lower degree.
 * @source common-practice to 10 % vol easy, to 15 with more agent, to 20 doubtful
 */
export function foamStrength(agent: Agent, pct: number): number {
  const c = agent.alcohol.foam ?? GENERAL_FOAM;
  return pct > c.stop ? TOO_STRONG : pct > c.more ? DOUBTFUL : pct > c.easy ? MORE : EASY;
}

/** Ceilings for a foam of any agent, % vol. @source common-practice below 20, better 10 */
export const GENERAL_FOAM = { easy: 10, more: 15, warn: 15, stop: 20 } as const;

/** % vol above the ceiling at which a foam (or gel) stops: positive is too strong. undefined where nothing is known. @source hydrocolloids-overview; gelatin-strength-trial; common-practice */
export function strengthMargin(agent: Agent, use: 'foam' | 'gel', pct: number): number | undefined {
  const stop = use === 'foam' ? (agent.alcohol.foam ?? GENERAL_FOAM).stop : agent.alcohol.gel?.stop;
  return stop === undefined ? undefined : pct - stop;
}

/** pH outside the window of an agent: positive too acid (`acid`) or too alkaline (`base`). @source hydrocolloids-overview */
export function acidMargins(agent: Agent, pH: number): { readonly acid: number; readonly base: number } {
  return { acid: agent.pH[0] - pH, base: pH - agent.pH[1] };
}

/** Kelvins and seconds an agent still lacks to be hydrated: positive is missing. Cold agents lack no heat. @source hydrocolloids-compared */
export function hydrationMargins(agent: Agent, celsius: number, seconds: number): { readonly celsius: number; readonly seconds: number } {
  return { celsius: agent.hydrate.cold ? -Infinity : agent.hydrate.celsius - celsius, seconds: agent.hydrate.seconds - seconds };
}
