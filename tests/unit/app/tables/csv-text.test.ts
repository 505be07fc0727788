import { expect, test } from 'vitest';
import { csvText } from '../../../../app/tables/csv-text.ts';

test('splits where a comma is meant, quotes what would split, and keeps formulas text and numbers numbers', () => {
  expect(csvText(['a', 'b'], [['x, y', 'say "so"'], ['=1+1', -2.5], [null, '-2.5'], ['@a', 'two\nlines']]))
    .toBe('a,b\r\n"x, y","say ""so"""\r\n\'=1+1,-2.5\r\n,\'-2.5\r\n\'@a,"two\nlines"\r\n');
});
