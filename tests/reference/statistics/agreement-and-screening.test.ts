import { describe, expect, test } from 'vitest';
import type { ConclusionId } from '../../../app/domain/conclusion.ts';
import { cohenKappa, kappaLimits } from '../../../app/statistics/cohen-kappa.ts';
import { controlLimits, controlSignals, INDIVIDUALS_FACTOR } from '../../../app/statistics/control-chart.ts';
import { quantile } from '../../../app/statistics/quantile.ts';
import { missedAmongPassed, missedAtMost, screeningFigures, type Truth } from '../../../app/statistics/screening-figures.ts';

describe('Cohen’s kappa', () => {
  // Computed apart from this program by the published formulas; the first row is equal in the R packages psych and epiR.
  test.each([
    [[[20, 5], [10, 15]], 0.7, 0.5, 0.4, 0.126996, 0.138564],
    [[[45, 15], [25, 15]], 0.6, 0.54, 0.130435, 0.098662, 0.097608],
    [[[25, 35], [5, 35]], 0.6, 0.46, 0.259259, 0.07716, 0.083148],
    [[[88, 4, 1], [3, 40, 2], [0, 2, 10]], 0.92, 0.475067, 0.8476, 0.041422, 0.066429],
  ])('of %j', (table, observed, byChance, kappa, error, underChance) => {
    const found = cohenKappa(table);
    expect(found.observed).toBeCloseTo(observed, 6);
    expect(found.byChance).toBeCloseTo(byChance, 6);
    expect(found.kappa).toBeCloseTo(kappa, 6);
    expect(found.standardError).toBeCloseTo(error, 6);
    expect(found.errorUnderChance).toBeCloseTo(underChance, 6);
  });

  test('where both always say the same one thing it is not defined; where they never agree it is below nought', () => {
    expect(cohenKappa([[50, 0], [0, 0]])).toMatchObject({ observed: 1, kappa: null, standardError: null });
    expect(cohenKappa([[0, 50], [0, 0]]).kappa).toBe(0);
    expect(cohenKappa([[0, 5], [5, 0]]).kappa).toBe(-1);
    expect(cohenKappa([[0, 0], [0, 0]])).toMatchObject({ n: 0, kappa: null });
    expect(kappaLimits(cohenKappa([[50, 0], [0, 0]]))).toBeNull();
    expect(kappaLimits(cohenKappa([[0, 1], [0, 0]]))).toBeNull(); // one stone has no spread
    expect(kappaLimits(cohenKappa([[20, 5], [10, 15]]))).toEqual({ low: expect.closeTo(0.4 - 1.96 * 0.126996, 4) as number, high: expect.closeTo(0.4 + 1.96 * 0.126996, 4) as number });
  });
});

const many = (count: number, truth: Truth, outcome: ConclusionId) => Array.from({ length: count }, () => ({ truth, outcome }));

describe('figures of a screening', () => {
  // Limits computed with scipy.stats (beta.ppf), those of counts of 50 also with R's binom.test.
  test('200 natural (190 pass, 8 sent on, 2 flagged) and 50 grown (44 flagged, 5 sent on, 1 pass)', () => {
    const found = screeningFigures([
      ...many(190, 'natural', 'natural'), ...many(6, 'natural', 'undetermined'), ...many(2, 'natural', 'out-of-scope'), ...many(2, 'natural', 'grown-cvd'),
      ...many(30, 'grown-cvd', 'grown-cvd'), ...many(14, 'grown-hpht', 'grown-undetermined-method'), ...many(5, 'grown-cvd', 'undetermined'), ...many(1, 'grown-hpht', 'natural'),
    ]);
    expect(found.falseAlarm).toMatchObject({ count: 2, of: 200, limits: { low: expect.closeTo(0.001213, 6) as number, high: expect.closeTo(0.035655, 6) as number } });
    expect(found.falseNatural).toMatchObject({ count: 1, of: 50, limits: { low: expect.closeTo(0.000506, 6) as number, high: expect.closeTo(0.10647, 5) as number }, atMost: expect.closeTo(0.091398, 6) as number });
    expect(found.referred).toMatchObject({ count: 13, of: 250, limits: { low: expect.closeTo(0.027975, 6) as number, high: expect.closeTo(0.08728, 5) as number } });
    expect(found.referredNatural).toMatchObject({ count: 8, of: 200, limits: { low: expect.closeTo(0.017425, 6) as number, high: expect.closeTo(0.077292, 6) as number } });
    expect(found.detected).toMatchObject({ count: 44, of: 50, limits: { low: expect.closeTo(0.756899, 6) as number, high: expect.closeTo(0.954665, 6) as number } });
    expect(missedAmongPassed(found, 0.02)).toBeCloseTo(0.000429461, 9);
    expect(missedAtMost(found, 0.02)).toBeCloseTo((0.091398 * 0.02) / (0.091398 * 0.02 + 0.95 * 0.98), 6); // the same rule with the limit above
    expect(found.byTruth['grown-hpht']).toEqual({ passed: 1, flagged: 14, referred: 0, all: 15 });
  });

  test('none missed of 60 still allows some, and no trial says nothing', () => {
    const { falseNatural } = screeningFigures(many(60, 'grown-cvd', 'grown-hpht'));
    expect(falseNatural.limits.high).toBeCloseTo(0.059629, 6);
    expect(falseNatural.atMost).toBeCloseTo(0.048703, 6);
    const nothing = screeningFigures([]);
    expect(nothing.falseNatural).toMatchObject({ count: 0, of: 0, limits: { low: 0, high: 1 }, atMost: 1 });
    expect(missedAmongPassed(nothing, 0.02)).toBeNaN();
  });
});

describe('chart of individual values', () => {
  test('its factor is that of the tables', () => {
    // 2.6587 computed by integration of the range of two normal values; 2.66 in the familiar tables.
    expect(INDIVIDUALS_FACTOR).toBeCloseTo(2.6587, 4);
  });

  test('limits of a worked example', () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, flow rates of ten batches, from memory: mean 50.81, mean moving range 1.8778, limits 45.815 and 55.804.
    const limits = controlLimits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])!;
    expect(limits.mean).toBeCloseTo(50.81, 2);
    expect(limits.low).toBeCloseTo(45.815, 1);
    expect(limits.high).toBeCloseTo(55.804, 1);
  });

  test('too few values, or all the same, give no limits; further values do not move them', () => {
    expect(controlLimits([1, 2, 3, 4, 5, 6, 7])).toBeNull();
    expect(controlLimits(Array.from({ length: 12 }, () => 546.07))).toBeNull();
    const base = Array.from({ length: 20 }, (_v, i) => 10 + (i % 2));
    expect(controlLimits([...base, 99, 99])).toEqual(controlLimits(base));
  });

  // Western Electric rules 1 to 4; strings of standard deviations with their answers as the rules are printed.
  test.each([
    [[0.5, -0.2, 3.1], 'beyond-3'], [[0.1, 2.1, 2.2], 'two-of-three'], [[2.1, 0.3, 2.2], 'two-of-three'], [[1.1, 1.2, -0.1, 1.4, 1.3], 'four-of-five'], [Array.from({ length: 8 }, () => 0.1), 'eight-in-a-row'],
  ] as const)('%j', (values, rule) => {
    expect(controlSignals(values).at(-1)).toContain(rule);
  });

  test.each([[[0, 0, 3]], [[2, 0, 2]], [[2.1, 0.3]], [[2.1, -2.1]], [[1, 1, 1, 1, 1]], [Array.from({ length: 7 }, () => 0.1)], [[0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0]], [[2.1, 2.1, 0.1]]])(
    'nothing with the last of %j', (values) => { expect(controlSignals(values).at(-1)).toEqual([]); });
});

describe('quantiles', () => {
  test('of twelve published measurements', () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.2: gauge study, the 90th percentile by the definition of spreadsheets is 95.1957 (from memory).
    const values = [95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682].toSorted((a, b) => a - b);
    expect(quantile(values, 0.9)).toBeCloseTo(95.1957, 4);
  });
  test('at the ends, of one value, and of none', () => {
    expect([0, 1].map((p) => quantile([1, 2, 4], p))).toEqual([1, 4]);
    expect(quantile([7], 0.3)).toBe(7);
    expect(quantile([1, 2, 3, 4], 0.5)).toBe(2.5);
    expect(quantile([], 0.5)).toBeNaN();
  });
});
