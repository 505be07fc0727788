import { expect, test } from 'vitest';
import { CAUTION_FIRST_LINE, CAUTIONS } from '../../../../app/domain/cautions.ts';
import { METHODS } from '../../../../app/domain/method.ts';

test('every hazard of every method has its caution with a source and something to confirm', () => {
  for (const method of Object.values(METHODS)) {
    for (const hazard of method.hazards) {
      expect(CAUTIONS[hazard].sentences.length).toBeGreaterThan(0);
      expect(CAUTIONS[hazard].source).not.toBe('');
      expect(CAUTIONS[hazard].acknowledge).not.toBe('');
    }
  }
});

test('no caution calls anything safe', () => {
  const all = [CAUTION_FIRST_LINE, ...Object.values(CAUTIONS).flatMap((c) => [c.title, ...c.sentences, c.acknowledge])].join(' ');
  expect(all).not.toMatch(/\b(safe|harmless)\b/i);
  expect(all).toMatch(/not a hazard assessment/);
});
