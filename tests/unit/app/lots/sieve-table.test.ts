import { describe, expect, test } from 'vitest';
import { defaultSieves, parseSieves, sieveTable, sievesText, sieveWords } from '../../../../app/lots/sieve-table.ts';

describe('sieves', () => {
  test('the default set is a set, and survives being written and read', () => {
    expect(sieveTable.safeParse(defaultSieves()).success).toBe(true);
    expect(parseSieves(sievesText(defaultSieves()))).toEqual(defaultSieves());
    expect(parseSieves('6.5 1,80; 7 1.90 mm')).toEqual([{ plate: '6.5', mm: 1.8 }, { plate: '7', mm: 1.9 }]);
    expect(parseSieves('6.5 wide')).toBeUndefined();
    expect(sieveTable.safeParse([{ plate: '7', mm: 1.9 }, { plate: '6.5', mm: 1.8 }]).success).toBe(false);
  });
  test('a class in words', () => {
    expect(sieveWords('6.5', '11', defaultSieves())).toBe('+6.5 −11 (1.80 to 2.70 mm)');
    expect(sieveWords(null, '2', defaultSieves())).toBe('−2 (below 1.25 mm)');
    expect(sieveWords('11', null, defaultSieves())).toBe('+11 (above 2.70 mm)');
  });
});
