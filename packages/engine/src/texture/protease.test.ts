import { describe, expect, it } from 'vitest';
import { decadesLost, enzymeOf, inactivationMargin, proteaseLeft, reductionTime, treatedLeft } from './protease.ts';

describe('enzymes', () => {
  // Sriwatanapongse 2000, kinetics in pineapple juice.
  it.each([[55, 131.757], [60, 21.925], [65, 3.847], [70, 0.71]])('bromelain at %f °C: D %f min', (celsius, D) => { expect(Math.abs(reductionTime('bromelain', celsius) / D - 1)).toBeLessThan(0.02); });
  it('bromelain keeps 83 to 85 % in an hour at 50 °C, nothing in 8 min at 80 (Jutamongkon 2010)', () => {
    expect(Math.abs(proteaseLeft('bromelain', 50, 3600) - 0.83)).toBeLessThan(0.03); expect(proteaseLeft('bromelain', 80, 480)).toBeLessThan(1e-6);
  });
  it.each([[70, 171], [80, 67], [90, 28]])('papain at %f °C: D %f min (Park 1979, Eyring)', (celsius, D) => { expect(Math.abs(reductionTime('papain', celsius) / D - 1)).toBeLessThan(0.05); });
  it('papaya survives what pineapple does not', () => {
    expect(inactivationMargin('bromelain', 85, 300)).toBeLessThan(0); expect(inactivationMargin('papain', 85, 300)).toBeGreaterThan(0);
  });
  it('zingibain halves in 2.1 days at 5 °C and 20 min at 30 (Adulyatham 2005)', () => {
    expect(proteaseLeft('zingibain', 5, 2.1 * 86400)).toBeCloseTo(0.5, 6); expect(proteaseLeft('zingibain', 30, 1200)).toBeCloseTo(0.5, 6);
  });
  it('actinidin is gone in 5 min at 60 and 65 °C, nearly whole after 30 min at 50', () => {
    expect(proteaseLeft('actinidin', 60, 300)).toBeLessThan(0.01); expect(proteaseLeft('actinidin', 50, 1800)).toBeGreaterThan(0.95);
  });
  it('says nothing of figs', () => { expect(decadesLost('ficin', 90, 600)).toBeNaN(); expect(reductionTime('rennet', 40)).toBeNaN(); });
  it('canned none, pasteurised up to 17 %', () => {
    expect(treatedLeft('bromelain', 'canned')).toBe(0); expect(treatedLeft('bromelain', 'pasteurised')).toBe(0.17); expect(treatedLeft('bromelain', 'fresh')).toBe(1);
    expect(treatedLeft('papain', 'boiled')).toBeGreaterThan(0.5);
  });
  it('knows the fruit', () => { expect(enzymeOf('kiwi')).toBe('actinidin'); expect(enzymeOf('lime')).toBeUndefined(); });
});
