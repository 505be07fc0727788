import { describe, expect, test } from 'vitest';
import { breakLines, withEllipsis } from '../../../../app/report/break-lines.ts';

/** One unit for each letter. */
const measure = (text: string): number => Array.from(text).length;

describe('breaking lines', () => {
  test('no line is wider than allowed and no word is lost', () => {
    const text = 'Rests on two strong findings from independent methods and one supporting one';
    for (const width of [9, 12, 20, 33, 200]) {
      const lines = breakLines(text, width, measure);
      for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(Math.max(width, 11));
      expect(lines.join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''));
    }
  });

  test('a word wider than a line is cut between letters', () => {
    expect(breakLines('abcdefghij', 4, measure)).toEqual(['abcd', 'efgh', 'ij']);
    expect(breakLines('x abcdefghij', 4, measure)).toEqual(['x', 'abcd', 'efgh', 'ij']);
  });

  test('a long word breaks after its hyphens first', () => {
    expect(breakLines('Okafor-Lindqvist', 10, measure)).toEqual(['Okafor-', 'Lindqvist']);
  });

  test('a number keeps its unit, its uncertainty, its month and year', () => {
    expect(breakLines('vacancy at 737.9 ± 0.3 nm', 20, measure)).toEqual(['vacancy at', '737.9 ± 0.3 nm']);
    expect(breakLines('checked on 3 Nov 2026', 18, measure)).toEqual(['checked on', '3 Nov 2026']);
  });

  test('line feeds stay, an empty text is one empty line', () => {
    expect(breakLines('a\n\nb', 10, measure)).toEqual(['a', '', 'b']);
    expect(breakLines('', 10, measure)).toEqual(['']);
  });

  test('what does not fit ends in an ellipsis that fits', () => {
    const lines = breakLines('one two three four five six', 9, measure, 2);
    expect(lines).toEqual(['one two', 'three…']);
    expect(breakLines('one two', 9, measure, 2)).toEqual(['one two']);
  });

  test('an ellipsis does not stand inside a word where a space is near', () => {
    expect(withEllipsis('Teaching Collection of', 21, measure)).toBe('Teaching Collection…');
    expect(withEllipsis('abcdefghijkl', 6, measure)).toBe('abcde…');
    expect(measure(withEllipsis('a', 0, measure))).toBe(1);
  });
});
