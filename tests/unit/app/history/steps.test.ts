import { describe, expect, test } from 'vitest';
import { isoWeek, stepsAtMost, stepsOf } from '../../../../app/history/steps.ts';

describe('steps of a period', () => {
  test('months, the last one cut short', () => {
    expect(stepsOf('2025-12-01', '2026-02-10', 'month')).toEqual([
      { label: '2025-12', from: '2025-12-01', to: '2025-12-31', isPart: false },
      { label: '2026-01', from: '2026-01-01', to: '2026-01-31', isPart: false },
      { label: '2026-02', from: '2026-02-01', to: '2026-02-10', isPart: true },
    ]);
  });
  test('quarters and years', () => {
    expect(stepsOf('2025-11-15', '2026-06-30', 'quarter').map(({ label, isPart }) => [label, isPart])).toEqual([['2025-Q4', true], ['2026-Q1', false], ['2026-Q2', false]]);
    expect(stepsOf('2024-01-01', '2025-12-31', 'year').map(({ label, isPart }) => [label, isPart])).toEqual([['2024', false], ['2025', false]]);
  });
  test('weeks begin on Monday', () => {
    expect(stepsOf('2026-11-25', '2026-12-06', 'week')).toEqual([
      { label: '2026-W48', from: '2026-11-25', to: '2026-11-29', isPart: true }, { label: '2026-W49', from: '2026-11-30', to: '2026-12-06', isPart: false },
    ]);
  });
  // ISO 8601: the week of the year's first Thursday is the first; examples as they stand in many calendars.
  test.each([['2026-01-01', '2026-W01'], ['2027-01-01', '2026-W53'], ['2024-12-30', '2025-W01'], ['2021-01-03', '2020-W53'], ['2026-11-29', '2026-W48']])('%s lies in %s', (day, week) => {
    expect(isoWeek(day)).toBe(week);
  });
  test('one day, and none where the period runs backwards', () => {
    expect(stepsOf('2026-02-28', '2026-02-28', 'month')).toEqual([{ label: '2026-02', from: '2026-02-28', to: '2026-02-28', isPart: true }]);
    expect(stepsOf('2026-03-02', '2026-02-28', 'month')).toEqual([]);
  });
  test('steps follow one another without a gap, and their number is bounded beforehand', () => {
    for (const grain of ['week', 'month', 'quarter', 'year'] as const) {
      const steps = stepsOf('2019-02-13', '2026-11-25', grain);
      expect(steps[0]!.from).toBe('2019-02-13');
      expect(steps.at(-1)!.to).toBe('2026-11-25');
      for (const [i, step] of steps.slice(1).entries()) expect(Date.parse(step.from) - Date.parse(steps[i]!.to)).toBe(86_400_000);
      expect(steps.length).toBeLessThanOrEqual(stepsAtMost('2019-02-13', '2026-11-25', grain));
    }
  });
});
