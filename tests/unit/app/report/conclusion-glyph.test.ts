import { expect, test } from 'vitest';
import { CONCLUSION_IDS } from '../../../../app/domain/conclusion.ts';
import { CONCLUSION_GLYPHS, GLYPH_BOX } from '../../../../app/report/conclusion-glyph.ts';

test('every conclusion has a sign, and no two have the same shape: colour is never needed', () => {
  const shapes = CONCLUSION_IDS.map((id) => JSON.stringify(CONCLUSION_GLYPHS[id].parts));
  expect(new Set(shapes).size).toBe(CONCLUSION_IDS.length);
});

test('all signs stay in their square', () => {
  for (const id of CONCLUSION_IDS) {
    for (const { d } of CONCLUSION_GLYPHS[id].parts) {
      expect(d).toMatch(/^M[\d\s.MLAZ]+$/);
      for (const number of d.match(/[\d.]+/g)!.map(Number)) {
        expect(number).toBeGreaterThanOrEqual(0);
        expect(number).toBeLessThanOrEqual(GLYPH_BOX);
      }
    }
  }
});
