import { describe, expect, test } from 'vitest';
import type { LotView } from '../../../../../app/contract/lots.ts';
import type { LaboratoryView } from '../../../../../app/contract/casebook.ts';
import { houseSettings } from '../../../../../app/domain/house-settings.ts';
import { drawSample } from '../../../../../app/lots/draw-sample.ts';
import { lotText } from '../../../../../app/report/content/lot-part.ts';
import { planOf, resultsOf } from '../../lots/made-lot.ts';

const laboratory = { settings: houseSettings.parse({}) } as LaboratoryView;
const signed = { at: '2026-11-25T09:00:00.000Z', by: 'Ada Invented' };
const plan = planOf(340);
const bare: LotView = {
  caseId: 'c', caseNumber: 'C-2026-0001', clientName: 'Invented Client', itemId: 'i', label: 'A', declared: 'small stones', condition: '', returned: false, weight: 81_400, weighedIn: 'ct', tolerance: 20,
  count: 340, counted: null, plan: null, split: null, folders: [], book: [],
};
const list = drawSample(340, plan.size, plan.seed!);

describe('what a report says of a lot', () => {
  test('how it was drawn, why, what was found with its numbers, the statement, sizes, parts and their balance', () => {
    const lot: LotView = {
      ...bare, plan: { ...signed, ordinal: 1, content: plan }, counted: { ...signed, note: '', sieves: [{ over: '6.5', through: '11', count: 340, weight: null }] },
      split: { ...signed, note: '', parts: [{ sort: 'passing', name: '', count: 339, weight: 81_000 }, { sort: 'laboratory-grown', name: 'paper 2', count: 1, weight: 100 }] },
    };
    const text = lotText({ lot, results: resultsOf(list, { 0: 'grown-cvd' }) }, laboratory)!;
    expect(text.sampling).toEqual([expect.stringContaining('drawn by a list of random numbers (starting number 11'), 'Reason for this plan: First look at a new source.', 'Each stone was tested by: short-wave ultraviolet, invented viewer']);
    expect(text.outcomes).toEqual([{ words: 'natural, consistent', count: 53 }, { words: 'laboratory-grown, CVD', count: 1 }, { words: 'untested', count: 286 }]);
    expect(text.named).toEqual([{ words: 'laboratory-grown, CVD', numbers: String(list[0]) }]);
    expect(text.statement.join(' ')).toContain('With 95 % confidence (one-sided)');
    expect(text.sizes).toEqual([{ size: '+6.5 −11 (1.80 to 2.70 mm)', count: '340', weight: '–' }]);
    expect(text.parts[1]).toEqual({ part: 'laboratory-grown, paper 2', count: '1', weight: '0.01 ct' });
    expect(text.balance[1]).toContain('0.03 ct missing, beyond the tolerance');
  });
  test('weights of a lot and of its parts carry what the house states of the balance they were read on', () => {
    const stated = { settings: houseSettings.parse({ balanceUncertaintyCarat: 15, balanceUncertaintyGram: 200 }) } as LaboratoryView;
    const split = { ...signed, note: '', parts: [{ sort: 'passing' as const, name: '', count: 340, weight: 81_000 }] };
    const weights = (weighedIn: 'ct' | 'g') => {
      const text = lotText({ lot: { ...bare, weighedIn, plan: { ...signed, ordinal: 1, content: plan }, split }, results: [] }, stated)!;
      return [text.facts[1]!.value, text.parts[0]!.weight];
    };
    expect(weights('ct')).toEqual(['8.1400 ± 0.0015 ct', '8.1000 ± 0.0015 ct']);
    // 0.002 g is 0.01 ct; the parts are weighed in carats.
    expect(weights('g')).toEqual(['8.14 ± 0.01 ct', '8.1000 ± 0.0015 ct']);
  });
  test('an unsampled lot says so; one without any record of its own is left out', () => {
    expect(lotText({ lot: bare, results: resultsOf([4]) }, laboratory)!.sampling).toEqual(['No sampling plan was recorded.']);
    expect(lotText({ lot: bare, results: [] }, laboratory)).toBeNull();
  });
  test('a long list of numbers is cut and counted', () => {
    const numbers = Array.from({ length: 200 }, (_, i) => i + 1);
    const text = lotText({ lot: bare, results: resultsOf(numbers, Object.fromEntries(numbers.map((_, i) => [i, 'undetermined' as const]))) }, laboratory)!;
    expect(text.named[0]!.numbers).toMatch(/, 150 and 50 more$/);
  });
});
