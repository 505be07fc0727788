import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { evidenceTableText, ruleBookText } from '../../../../app/evidence/table-text.ts';
import { inRoot } from '../../../../scripts/lib/paths.mjs';

test('the table and the rules in the documentation are those of the program', () => {
  const text = readFileSync(inRoot('docs', 'evidence.md'), 'utf8');
  expect(text).toContain(evidenceTableText());
  expect(text).toContain(ruleBookText());
});
