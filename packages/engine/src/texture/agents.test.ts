import { describe, expect, it } from 'vitest';
import { CONSTITUENTS } from '../matter/constituents.ts';
import { acidMargins, agentOf, AGENTS, doseMargins, DOUBTFUL, EASY, foamStrength, hydrationMargins, MORE, strengthMargin, TOO_STRONG } from './agents.ts';

const gelatin = AGENTS['gelatin']!, agar = AGENTS['agar']!, xanthan = AGENTS['xanthan']!;

describe('the table of agents', () => {
  it('names only constituents, windows in order, and every partner', () => {
    for (const agent of Object.values(AGENTS)) {
      expect(CONSTITUENTS as readonly string[]).toContain(agent.constituent);
      for (const window of Object.values(agent.dose)) expect(window[0]).toBeLessThan(window[1]);
      expect(agent.pH[0]).toBeLessThan(agent.pH[1]);
      if (agent.partner) expect(AGENTS[agent.partner.agent]).toBeDefined();
      if (agent.whips !== 'no' && agent.alcohol.foam) expect(agent.alcohol.foam.easy).toBeLessThan(agent.alcohol.foam.stop);
    }
  });
  it('has one agent for an id', () => {
    const ids = Object.values(AGENTS).flatMap((agent) => agent.ids);
    expect(new Set(ids).size).toBe(ids.length);
    expect(agentOf('gelatin-sheet-gold')).toBe(gelatin); expect(agentOf('lime-juice')).toBeUndefined();
  });
  // Ethanol ceilings, % vol, of one supplier's overview.
  it.each([['konjac', 20], ['gelatin', 20], ['xanthan', 50], ['agar', 20], ['alginate', 40], ['kappa carrageenan', 20], ['iota carrageenan', 20], ['lambda carrageenan', 20]])('%s stands to %f %% vol (supplier table)', (key, pct) => {
    expect(AGENTS[key]!.alcohol.supplier).toBe(pct);
  });
  it('a gum holds and does not whip; gelatin does both; lecithin only whips', () => {
    expect([xanthan.whips, xanthan.holds]).toEqual(['no', 'yes']); expect([gelatin.whips, gelatin.holds]).toEqual(['yes', 'yes']);
    expect([AGENTS['lecithin']!.whips, AGENTS['lecithin']!.holds]).toEqual(['weak', 'no']);
  });
  it('gelatin foam: 10 % vol easy, 15 with more, 20 doubtful, above not (common practice)', () => {
    expect([7.5, 10, 12, 15, 18, 20, 24].map((pct) => foamStrength(gelatin, pct))).toEqual([EASY, EASY, MORE, MORE, DOUBTFUL, DOUBTFUL, TOO_STRONG]);
    expect(strengthMargin(gelatin, 'foam', 24.1)).toBeCloseTo(4.1, 9);
    expect(strengthMargin(agar, 'gel', 10)).toBeLessThan(0);
    expect(strengthMargin(AGENTS['lecithin']!, 'gel', 10)).toBeUndefined();
  });
  it('gelatin of 9.8 g/kg at 205 Bloom is inside a foam, at 100 Bloom it is near the low end', () => {
    expect(doseMargins(gelatin, 'foam', 9.8, 205)!.low).toBeLessThan(0); expect(doseMargins(gelatin, 'foam', 9.8, 205)!.high).toBeLessThan(0);
    expect(doseMargins(gelatin, 'foam', 9.8, 100)!.low).toBeCloseTo(5 - 9.8 * Math.sqrt(0.5), 9);
    expect(doseMargins(xanthan, 'firm', 2)).toBeUndefined();
  });
  it('agar wants the boil, xanthan none; lime juice is too acid for gelatin', () => {
    expect(hydrationMargins(agar, 85, 120).celsius).toBe(5); expect(hydrationMargins(xanthan, 5, 120).celsius).toBe(-Infinity);
    expect(acidMargins(gelatin, 2.4).acid).toBeCloseTo(1.6, 9);
  });
});
