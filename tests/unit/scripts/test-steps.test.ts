import { describe, expect, test } from 'vitest';
import { chosenSteps, closingLine, countOf, steps, sum } from '../../../scripts/lib/test-steps.mjs';

describe('countOf', () => {
  test('reads the numbers of a report', () => {
    expect(countOf({ numPassedTests: 7, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1 }, 1)).toEqual({ passed: 7, failed: 2, skipped: 2 });
  });
  test.each([
    ['a test file that does not load', { numPassedTests: 7, numFailedTests: 0 }],
    ['a run that left no report', null],
  ])('counts %s as a failure', (_case, report) => {
    expect(countOf(report, 1).failed).toBe(1);
  });
});

test('the closing line adds the steps up and names skipped tests only where there are some', () => {
  const total = sum({ passed: 1, failed: 0, skipped: 0 }, { passed: 40, failed: 2, skipped: 0 });
  expect(closingLine(total)).toBe('41 passed, 2 failed');
  expect(closingLine(sum(total, { passed: 0, failed: 0, skipped: 3 }))).toBe('41 passed, 2 failed, 3 skipped');
});

describe('chosenSteps', () => {
  const names = (args: string[]) => chosenSteps(args).map((step) => step.name);
  test('all of them without a wish, the build before what drives it', () => {
    expect(names([])).toEqual(steps.map((step) => step.name));
    expect(names([]).indexOf('build')).toBeLessThan(names([]).indexOf('faults'));
  });
  test('only those named, in their own order', () => {
    expect(names(['--only', 'unit,typecheck'])).toEqual(['typecheck', 'unit']);
    expect(names(['--only=lint'])).toEqual(['lint']);
  });
  test('end-to-end tests bring the build with them', () => {
    expect(names(['--only', 'e2e'])).toEqual(['build', 'e2e']);
  });
  test.each([[['--only', 'unti']], [['--only']], [['unit']], [['--onyl=unit']]])('refuses %j with the words that would do', (args) => {
    expect(() => chosenSteps(args)).toThrow(/npm test -- --only typecheck,/);
  });
});
