import { expect, test } from 'vitest';
import { cleanText, codePointName, splitByRise } from '../../../../app/report/printable-text.ts';

test('letters and their marks are composed, control and direction signs removed', () => {
  expect(cleanText('Zoe\u0308')).toBe('Zoë');
  expect(cleanText('a\u0000b\u202Ec\u200Bd\uFEFF')).toBe('abcd');
  expect(cleanText('a\r\nb\rc')).toBe('a\nb\nc');
});

test('signs without a face are written plainly', () => {
  expect(cleanText('≤ 4 ppm, 20\u202Fnm\t→')).toBe('<= 4 ppm, 20\u00a0nm ->');
});

test('raised and lowered signs are split off and keep what they mean', () => {
  expect(splitByRise('cm⁻¹ N₃')).toEqual([
    { text: 'cm', means: 'cm', rise: 'base' }, { text: '−1', means: '⁻¹', rise: 'raised' },
    { text: ' N', means: ' N', rise: 'base' }, { text: '3', means: '₃', rise: 'lowered' },
  ]);
  expect(splitByRise('')).toEqual([]);
});

test('a sign outside the first plane is one sign', () => {
  expect(codePointName('💎')).toBe('U+1F48E');
  expect(splitByRise('a💎')).toEqual([{ text: 'a💎', means: 'a💎', rise: 'base' }]);
});
