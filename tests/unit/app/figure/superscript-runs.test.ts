import { expect, test } from 'vitest';
import { superscriptRuns, textPrimitives, textWidth } from '../../../../app/figure/superscript-runs.ts';

const measure = (text: string, _font: string, size: number): number => [...text].length * size;
const style = { font: 'sans', size: 10, ink: 'ink', anchor: 'end' } as const;

test('splits raised signs off', () => {
  expect(superscriptRuns('cm⁻¹')).toEqual([{ text: 'cm', raised: false }, { text: '−1', raised: true }]);
  expect(superscriptRuns('plain')).toEqual([{ text: 'plain', raised: false }]);
  expect(superscriptRuns('')).toEqual([]);
});

test('a text keeps its anchor: the last run ends where the text ends', () => {
  const runs = textPrimitives('SiV⁻ or GR1', 200, 50, style, measure);
  const last = runs.at(-1)!;
  expect(last.x + measure(last.text, 'sans', last.size)).toBeCloseTo(200, 9);
  expect(runs[0]!.x).toBeCloseTo(200 - textWidth('SiV⁻ or GR1', 'sans', 10, measure), 9);
  expect(runs.map((run) => run.text)).toEqual(['SiV', '−', 'or GR1']);
  expect(runs[1]!.y).toBeLessThan(50);
});
