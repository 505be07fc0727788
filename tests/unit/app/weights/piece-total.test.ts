import { describe, expect, test } from 'vitest';
import { CUTS, factorAt, FORMULAS } from '../../../../app/weights/cuts.ts';
import { estimateWeight, weightMeasures, type WeightMeasures } from '../../../../app/weights/estimate-weight.ts';
import { pieceTotal } from '../../../../app/weights/piece-total.ts';

const measures: WeightMeasures = { cut: 'round', length: 4, width: 4.1, depth: 2.5, depthWay: 'measured', girdle: 'thin-to-medium', shapePercent: 0 };
const one = estimateWeight(measures, 0.05);

describe('the total of a piece', () => {
  test('shared errors add, own ones add in squares', () => {
    const total = pieceTotal([one, one, one, one], 0, null);
    expect(total.estimated).toBe(4 * one.weight);
    expect(total.uncertainty).toBe(Math.round(2 * Math.hypot(4 * one.formula, 2 * one.reading)));
    expect(total.sentence).toContain('no total was declared');
  });
  test('agrees within the uncertainty, named beyond it', () => {
    const { estimated, uncertainty } = pieceTotal([one, one], 0, null);
    expect(pieceTotal([one, one], 0, estimated + uncertainty)).toMatchObject({ agrees: true });
    const beyond = pieceTotal([one, one], 0, estimated + uncertainty + 1);
    expect(beyond).toMatchObject({ agrees: false });
    expect(beyond.sentence).toContain('beyond the uncertainty of the estimates');
  });
  test('a stone without an estimate leaves it open', () => {
    expect(pieceTotal([one], 1, 4000)).toMatchObject({ agrees: null, withoutEstimate: 1 });
    expect(pieceTotal([], 3, 4000).sentence).toContain('No stone of this piece has an estimate yet');
  });
});

describe('estimates', () => {
  test('factors between the printed ratios lie on a line, outside the nearest holds', () => {
    expect(factorAt('emerald', 1.4)).toBeCloseTo(0.00896, 10);
    expect(factorAt('pear', 1)).toBe(0.00615);
    expect(factorAt('marquise', 4)).toBe(0.00595);
    for (const cut of CUTS) expect(FORMULAS[cut].uncertainty).toBeGreaterThan(0.01);
  });
  test('a guessed depth widens the error, a thick girdle adds weight', () => {
    expect(estimateWeight({ ...measures, depthWay: 'closed-back' }, 0.05).uncertainty).toBeGreaterThan(4 * one.uncertainty);
    expect(estimateWeight({ ...measures, girdle: 'extremely-thick' }, 0.05).weight).toBeGreaterThan(one.weight);
    expect(estimateWeight({ ...measures, length: measures.width, width: measures.length }, 0.05)).toEqual(one);
  });
  test('measures outside what a stone has are refused in words', () => {
    expect(weightMeasures.safeParse({ ...measures, depth: 0 }).error?.issues[0]?.message).toBe('The depth is at least 0.3 mm.');
  });
});
