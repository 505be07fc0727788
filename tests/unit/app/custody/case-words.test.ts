import { describe, expect, test } from 'vitest';
import { caseNext, caseSummary, type CaseHoldings, type CaseProgress } from '../../../../app/custody/case-words.ts';

const holdings = (h: Partial<CaseHoldings>): CaseHoldings => ({ parcelRemark: '', declared: '', parcels: 1, items: 1, loose: 0, jewellery: 0, lots: 0, lotCount: 0, ...h });
const progress = (p: Partial<CaseProgress>): CaseProgress => ({
  state: 'open', stones: 4, tested: 4, concluded: 4, confirmed: 4, disagreed: 0, unconfirmedLabel: null, disputedLabel: null, ...p,
});

describe('caseSummary', () => {
  test.each([
    [holdings({ loose: 1, declared: 'round brilliant' }), 'round brilliant'],
    [holdings({ lots: 1, lotCount: 340, declared: 'melee' }), 'melee, a lot of 340'],
    [holdings({ items: 18, loose: 17, lots: 1, lotCount: 340, parcelRemark: 'estate parcel' }), 'estate parcel, 17 stones and a lot of 340'],
    [holdings({ items: 4, loose: 1, jewellery: 1, lots: 2, lotCount: 90, parcels: 2, parcelRemark: 'not shown' }), '1 stone, 1 piece of jewellery and 2 lots of 90 together'],
    [holdings({ loose: 1, declared: 'x'.repeat(80) }), `${'x'.repeat(59)}…`],
  ])('%#', (given, words) => {
    expect(caseSummary(given)).toBe(words);
  });
});

describe('caseNext', () => {
  test.each([
    [progress({ state: 'returned' }), 'returned'],
    [progress({ state: 'reported' }), 'reported, to be collected'],
    [progress({ stones: 0, tested: 0, concluded: 0, confirmed: 0 }), 'stones to list'],
    [progress({ tested: 0, concluded: 0, confirmed: 0 }), '4 stones to test'],
    [progress({ tested: 4, concluded: 2, confirmed: 1 }), '2 stones to conclude'],
    [progress({ tested: 3, concluded: 3, confirmed: 1 }), '1 stone to conclude, 1 not yet tested'],
    [progress({ confirmed: 3, unconfirmedLabel: 'A-3' }), 'second person to confirm A-3'],
    [progress({ confirmed: 1 }), 'second person to confirm 3 stones'],
    [progress({ confirmed: 3, disagreed: 1, disputedLabel: 'B-1' }), 'examiners disagree on B-1'],
    [progress({}), 'report to issue'],
  ])('%#', (given, words) => {
    expect(caseNext(given)).toBe(words);
  });
});
