import { expect, test } from 'vitest';
import { acceptanceRisks } from '../../../../app/lots/acceptance-risks.ts';
import { planOf } from './made-lot.ts';

// 1 − hypergeom.cdf(3, 340, 8, 50) and the smallest M with hypergeom.cdf(3, 340, M, 50) ≤ 0.1: SciPy 1.17.1.
test('the risks of a plan for a lot of 340, level II, AQL 2.5 %: 50 stones, 3 allowed', () => {
  const plan = planOf(340, { aim: { is: 'acceptance', level: 'II', aql: 2.5 } });
  expect([plan.size, plan.acceptance]).toEqual([50, expect.objectContaining({ accept: 3, refuse: 4 })]);
  const { good, bad } = acceptanceRisks(plan)!;
  expect([good.against, bad.against]).toEqual([8, 43]);
  expect(good.refused).toBeCloseTo(0.0185684972353104, 12);
  expect(bad.accepted).toBeCloseTo(0.09019357371627014, 12);
});

test('a plan of another aim, or one that tests every stone, has none', () => {
  expect(acceptanceRisks(planOf(340))).toBeNull();
  expect(acceptanceRisks(planOf(4, { aim: { is: 'acceptance', level: 'II', aql: 1 } }))).toBeNull();
});
