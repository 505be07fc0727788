import { expect, test } from 'vitest';
import { checkPassword, MAX_PASSWORD, normalPassword } from '../../../../app/people/check-password.ts';

test('length decides, not kinds of characters', () => {
  expect(checkPassword('several invented words', [])).toBeNull();
  expect(checkPassword('elevenchars', [])).toContain('at least 12');
  expect(checkPassword('äöüßéèñçøåæœ', [])).toBeNull();
  expect(checkPassword('abcde'.repeat(MAX_PASSWORD), [])).toContain('At most');
});

test('a few characters over and over, or a name, are refused', () => {
  expect(checkPassword('abababababab', [])).toContain('repeats');
  expect(checkPassword('ada INVENTED-laboratory', ['Ada Invented Laboratory'])).toContain('name');
});

test('differently composed letters are one password', () => {
  expect(normalPassword('cafe\u0301')).toBe(normalPassword('caf\u00e9'));
});
