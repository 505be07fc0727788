import { expect, test } from 'vitest';
import { FAILURE_DELAY, waitAfterFailures } from '../../../../app/people/failure-delay.ts';

test('two slips are free, then each doubles the wait, up to the longest', () => {
  expect([0, 1, 2, 3, 4, 5].map((failures) => waitAfterFailures(failures, 0))).toEqual([0, 0, 0, 2_000, 4_000, 8_000]);
  expect(waitAfterFailures(60, 0)).toBe(FAILURE_DELAY.longest);
});

test('the wait passes, and a clock that was put back locks nobody out', () => {
  expect(waitAfterFailures(3, 1_500)).toBe(500);
  expect(waitAfterFailures(3, 2_000)).toBe(0);
  expect(waitAfterFailures(60, -FAILURE_DELAY.longest)).toBe(0);
});
