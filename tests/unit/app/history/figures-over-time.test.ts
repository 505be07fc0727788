import { expect, test } from 'vitest';
import { figuresOverTime, type StepBounds, type TimeFacts } from '../../../../app/history/figures-over-time.ts';
import { perCent, shareWords } from '../../../../app/history/share-words.ts';

const step = (label: string, begins: string, ends: string): StepBounds => ({ label, from: '', to: '', isPart: false, begins, ends });
const STEPS = [step('Jan', '2026-01-01T00:00:00.000Z', '2026-02-01T00:00:00.000Z'), step('Feb', '2026-02-01T00:00:00.000Z', '2026-03-01T00:00:00.000Z')];

const FACTS: TimeFacts = {
  cases: [
    { receivedAt: '2025-12-20T10:00:00.000Z', doneAt: null }, // open all the time
    { receivedAt: '2026-01-01T00:00:00.000Z', doneAt: '2026-01-31T23:59:59.999Z' },
    { receivedAt: '2026-01-15T10:00:00.000Z', doneAt: '2026-02-01T00:00:00.000Z' }, // open at the end of January
    { receivedAt: '2026-03-01T00:00:00.000Z', doneAt: null }, // after the period
  ],
  reports: [
    { receivedAt: '2026-01-01T00:00:00.000Z', issuedAt: '2026-01-03T12:00:00.000Z' },
    { receivedAt: '2026-01-01T00:00:00.000Z', issuedAt: '2026-01-11T00:00:00.000Z' },
    { receivedAt: '2026-01-15T10:00:00.000Z', issuedAt: '2026-02-01T00:00:00.000Z' },
  ],
  amended: ['2026-02-10T00:00:00.000Z'], withdrawn: ['2026-02-28T23:59:59.999Z', '2026-03-01T00:00:00.000Z'],
  settled: [
    { at: '2026-01-05T00:00:00.000Z', conclusion: 'natural' }, { at: '2026-01-05T00:00:00.000Z', conclusion: 'undetermined' }, { at: '2026-01-06T00:00:00.000Z', conclusion: 'natural' },
  ],
};

test('counts by step, with its first instant and without that of the next', () => {
  const { steps: [january, february], whole } = figuresOverTime(FACTS, STEPS);
  expect(january).toMatchObject({ received: 2, settled: 3, reported: 2, amended: 0, withdrawn: 0, open: 2, turnaround: { n: 2, least: 2.5, lower: 4.375, median: 6.25, upper: 8.125, greatest: 10 } });
  expect(february).toMatchObject({ received: 0, settled: 0, reported: 1, amended: 1, withdrawn: 1, open: 1, sentFurther: { count: 0, of: 0, limits: { low: 0, high: 1 } } });
  expect(january!.outcomes).toMatchObject({ natural: 2, undetermined: 1, 'grown-cvd': 0 });
  expect(january!.sentFurther).toMatchObject({ count: 1, of: 3 });
  expect(whole).toMatchObject({ received: 2, settled: 3, reported: 3, open: 1, turnaround: { n: 3, greatest: expect.closeTo(16.5833, 3) as number } });
});

test('without any record there is nothing to time', () => {
  const nothing: TimeFacts = { cases: [], reports: [], amended: [], withdrawn: [], settled: [] };
  expect(figuresOverTime(nothing, STEPS).whole).toMatchObject({ received: 0, open: 0, turnaround: null });
});

test('a share is never said without its count', () => {
  // Limits of 3 of 50: Clopper and Pearson, scipy and R binom.test.
  expect(shareWords({ count: 3, of: 50, limits: { low: 0.012549, high: 0.165482 } })).toBe('3 of 50 (6.0 %; 1.3 to 17 %)');
  expect(shareWords({ count: 0, of: 0, limits: { low: 0, high: 1 } })).toBe('none counted');
  expect([0, 0.00041, 0.0377, 0.2, 1].map(perCent)).toEqual(['0 %', '0.04 %', '3.8 %', '20 %', '100 %']);
});
