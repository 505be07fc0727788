import { describe, expect, test } from 'vitest';
import { drawSample } from '../../../../app/lots/draw-sample.ts';
import { lotFigures } from '../../../../app/lots/lot-statement.ts';
import { statementSentences } from '../../../../app/lots/statement-words.ts';
import { planOf, resultOf, resultsOf } from './made-lot.ts';

const FORBIDDEN = /certif|guarantee|genuine|\breal\b|free of/i;
const plan = planOf(340);
const list = drawSample(340, plan.size, plan.seed!);
const said = (...[lot, results, ofPlan]: Parameters<typeof lotFigures>): string => {
  const text = statementSentences(lotFigures(lot, results, ofPlan), ofPlan).join(' ');
  expect(text).not.toMatch(FORBIDDEN);
  return text;
};

describe('what a lot’s results say', () => {
  test('none found: the limit, the untested part, and what the sample would have shown', () => {
    const text = said(340, resultsOf(list), plan);
    expect(text).toContain('Tested: 54 of 340 stones. None showed the characteristics of laboratory-grown diamond');
    expect(text).toContain('286 stones are untested');
    expect(text).toContain('With 95 % confidence (one-sided) the whole lot holds no more than 16 of 340 (4.71 %)');
    expect(text).toContain('Had 5 % or more of the lot been laboratory-grown');
  });
  test('found and undetermined: limits both ways, undetermined counted apart', () => {
    const figures = lotFigures(340, resultsOf(list, { 0: 'grown-cvd', 1: 'grown-hpht', 2: 'undetermined', 3: 'not-diamond' }), plan);
    expect(figures).toMatchObject({ tested: 54, grown: 2, undetermined: 1, notDiamond: 1, certain: { low: 2, high: 289 } });
    expect(figures.bounds!.asGrown.high).toBeGreaterThan(figures.bounds!.asNatural.high);
    expect(figures.bounds!.asGrown.low).toBe(3);
    const text = statementSentences(figures, plan).join(' ');
    expect(text).toContain('2 stones showed the characteristics of laboratory-grown diamond (1 CVD, 1 HPHT)');
    expect(text).toContain('1 stone stayed undetermined and is referred');
    expect(text).toContain('1 stone is not diamond');
    expect(text).toMatch(/if the undetermined ones are not, and no more than \d+ of 340 .* if all of them are/);
    expect(text).not.toContain('Had 5 %');
  });
  test('not drawn at random: nothing follows for the others, the certain range stays', () => {
    for (const drawn of ['chosen', 'unknown'] as const) {
      const text = said(340, resultsOf(list, { 0: 'grown-cvd' }), planOf(340, { drawn, seed: null }));
      expect(text).toContain('not drawn at random, so nothing follows for the untested ones');
      expect(text).toContain('certain only that between 1 and 287 of the lot');
      expect(text).not.toContain('confidence');
    }
  });
  test('without a plan the same', () => {
    expect(said(340, resultsOf([1, 2, 3]), null)).toContain('No plan says how the tested stones were taken');
  });
  test('stones outside the drawn list count as found, not as sample', () => {
    const outside = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].filter((n) => !list.includes(n)).slice(0, 3);
    const figures = lotFigures(340, [...resultsOf(list), ...outside.map((n) => resultOf(n, 'grown-cvd'))], plan);
    expect(figures.sample).toMatchObject({ size: 54, grown: 0, outside: 3 });
    // Limits never contradict what was found.
    expect(figures.bounds!.asNatural.low).toBe(3);
    expect(statementSentences(figures, plan).join(' ')).toContain('3 stones outside the drawn list were tested as well');
  });
  test('an unfinished list gives provisional limits', () => {
    expect(said(340, resultsOf(list.slice(0, 20)), plan)).toContain('34 of the 54 stones of the plan are still to be tested: these limits are provisional');
  });
  test('all tested: the number itself; undetermined ones leave a range', () => {
    const all = Array.from({ length: 20 }, (_, i) => i + 1);
    const every = planOf(20, { aim: { is: 'all' }, seed: null });
    expect(said(20, resultsOf(all, { 4: 'grown-hpht' }), every)).toContain('All stones were tested: the lot holds 1 that showed these characteristics');
    expect(said(20, resultsOf(all, { 4: 'grown-hpht', 5: 'undetermined' }), every)).toContain('between 1 and 2 are laboratory-grown');
    expect(said(20, resultsOf(all.slice(0, 10)), every)).toContain('nothing follows for the others');
  });
  test('an acceptance plan decides, stays open, or refuses', () => {
    const acceptance = planOf(200, { aim: { is: 'acceptance', level: 'II', aql: 1 } });
    const drawn = drawSample(200, 50, acceptance.seed!);
    expect(said(200, resultsOf(drawn, { 0: 'grown-cvd' }), acceptance)).toContain('1 found, 1 allowed: the lot is accepted by it, which does not say that the lot holds none');
    expect(said(200, resultsOf(drawn, { 0: 'grown-cvd', 1: 'undetermined' }), acceptance)).toContain('open until the undetermined stones are decided');
    expect(said(200, resultsOf(drawn, { 0: 'grown-cvd', 1: 'not-diamond' }), acceptance)).toContain('the lot is not accepted by it');
    expect(said(200, resultsOf(drawn.slice(0, 9)), acceptance)).toContain('not finished');
  });
  test('a count that changed after the plan takes its limits away', () => {
    expect(said(338, resultsOf(list.filter((n) => n <= 338)), plan)).toContain('make the plan anew');
  });
  test('results beyond the count are not counted', () => {
    expect(lotFigures(10, [resultOf(11, 'grown-cvd'), resultOf(3, 'natural')], null)).toMatchObject({ tested: 1, grown: 0 });
  });
  test('two sides give two ends', () => {
    const both = planOf(340, { sides: 'both' });
    expect(said(340, resultsOf(list, { 0: 'grown-cvd', 1: 'grown-cvd' }), both)).toMatch(/\(two-sided\) the whole lot holds between 3 and 40 of 340 \(0\.88 % to 11\.76 %\)/);
  });
});
