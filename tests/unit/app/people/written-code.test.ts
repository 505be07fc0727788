import { expect, test } from 'vitest';
import { CODE_LENGTH, readCode, writeCode } from '../../../../app/people/written-code.ts';

test('is written in groups and read back however it is typed', () => {
  const code = writeCode(Uint8Array.from({ length: CODE_LENGTH.once }, (_, i) => i));
  expect(code).toBe('0123-4567-89AB');
  expect(readCode('o123 4567-89ab')).toBe('0123456789AB');
  expect(readCode('0I23L')).toBe('01231');
});

test('every character may come', () => {
  const all = writeCode(Uint8Array.from({ length: 32 }, (_, i) => i + 224)).replaceAll('-', '');
  expect(new Set(all).size).toBe(32);
  expect(readCode(all)).toBe(all);
});
