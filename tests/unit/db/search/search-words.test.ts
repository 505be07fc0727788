import { describe, expect, test } from 'vitest';
import { holdsTerm, indexedText, matchPartly, matchWholly, searchTerms } from '../../../../db/search/search-words.ts';

describe('the words of a text', () => {
  test('stand between two spaces, folded, numbers and labels also in parts', () => {
    expect(indexedText(['C-2026-0012'])).toBe('  c-2026-0012  c  2026  0012  12  c20260012  ');
    expect(indexedText(['A-1', ' “Müller” & Söhne, ﬁne Straße '])).toBe('  a-1  a  1  a1  muller  &  sohne  fine  strasse  ');
    expect(indexedText(['', '  '])).toBe('');
  });
  test.each([
    ['C-2026-0012', '0012', true], ['C-2026-0012', '2026-00', true], ['C-2026-0012', '12', true], ['C-2026-0012', '26', false], ['A-1', 'a1', true],
    ['Émeraude', 'emer', true], ['Schmuckhandlung', 'handlung', true], ['ΛΌΓΟΣ', 'λογος', true], ['Łódź', 'łodz', true], ['鑽石鑑定', '鑽石', true], ['Straße', 'STRASSE', true], ['İstanbul', 'istanbul', true],
  ])('%s holds %s: %s', (text, typed, holds) => {
    expect(searchTerms(typed).every((term) => holdsTerm(text, term))).toBe(holds);
  });
});

describe('what a person typed', () => {
  test('becomes words, each once and at most eight', () => {
    expect(searchTerms('  Marrow,  marrow (A-1) ')).toEqual(['marrow', 'a-1']);
    expect(searchTerms('1 2 3 4 5 6 7 8 9 10')).toHaveLength(8);
    expect(searchTerms(' \u0000\t ')).toEqual([]);
  });
  test('is quoted, so that nothing of it is a query', () => {
    expect(matchPartly(['or', 'a"b', 'near('])).toBe('"  or" AND "a""b" AND "near("');
    expect(matchWholly(['a-1'])).toBe('"  a-1  "');
  });
});
