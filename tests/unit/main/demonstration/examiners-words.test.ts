import { expect, test } from 'vitest';
import { examinersWords } from '../../../../main/demonstration/examiners-words.ts';

test('an examiner writes what decides and the rule, not everything that adds to it', () => {
  expect(examinersWords({ reasons: ['Passed.', 'Strong a.', 'Strong b.', 'Two strong findings from independent methods meet the rule.', 'Supports c.', 'CVD growth is named by a.', 'Nothing recorded speaks against it.'] }))
    .toBe('Passed. Strong a. Strong b. Two strong findings from independent methods meet the rule. CVD growth is named by a. Nothing recorded speaks against it.');
  expect(examinersWords({ reasons: ['Passed.', 'No counted finding speaks for an origin.'] })).toBe('Passed. No counted finding speaks for an origin.');
});
