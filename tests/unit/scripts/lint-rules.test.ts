import { ESLint } from 'eslint';
import { expect, test } from 'vitest';
import { inRoot } from '../../../scripts/lib/paths.mjs';

const eslint = new ESLint({ cwd: inRoot() });

async function rulesBroken(code: string, file: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath: inRoot(file) });
  return result!.messages.map((message) => message.ruleId ?? message.message);
}

test.each([
  ['the clock', 'export const x = Date.now();', 'no-restricted-properties'],
  ['today\'s date', 'export const x = new Date();', 'no-restricted-syntax'],
  ['chance', 'export const x = Math.random();', 'no-restricted-properties'],
  ['a file of more than 400 lines', `export const x = 1;\n${'// more\n'.repeat(401)}`, 'max-lines'],
])('the core may not use %s', async (_case, code, rule) => {
  expect(await rulesBroken(code, 'app/domain/made-up.ts')).toEqual([rule]);
});

test('a date that was handed in is fine, and so is the clock outside the core', async () => {
  expect(await rulesBroken('export const x = (t: number): Date => new Date(t);', 'app/domain/made-up.ts')).toEqual([]);
  expect(await rulesBroken('export const x = (): Date => new Date();', 'main/made-up.ts')).toEqual([]);
});
