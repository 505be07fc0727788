import { expect, test } from 'vitest';
import { statementBytes } from '../../../../app/signature/signed-statement.ts';

test('what is signed is the canonical form, in UTF-8', () => {
  expect(new TextDecoder().decode(statementBytes({ statement: 'example', b: 'é', a: 1 }))).toBe('{"a":1,"b":"é","statement":"example"}');
  expect(() => statementBytes({ statement: 'example', a: Number.NaN })).toThrow();
});
