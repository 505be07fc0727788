import { expect, test } from 'vitest';
import type { FindingFact } from '../../../../app/domain/finding.ts';
import { mergeFindings, statementOfOne } from '../../../../app/runs/merge-findings.ts';

const n3 = (signal: number, more: Partial<FindingFact> = {}): FindingFact =>
  ({ code: 'centre:N3', statement: `Emission line at 415.27 ± 0.10 nm, signal over noise ${signal}: N3.`, strength: 'strong', supports: 'natural', method: 'photoluminescence', ...more });
const siv: FindingFact = { code: 'centre:SIV', statement: 'Emission line at 738.02 ± 0.10 nm, signal over noise 9: SiV⁻.', strength: 'strong', supports: 'grown', method: 'photoluminescence' };

test('the same finding of four curves is one, as the clearest curve says it', () => {
  expect(mergeFindings([[n3(12)], [n3(53), siv], [n3(20)], [n3(53)]])).toEqual([
    [], [n3(53, { statement: 'Emission line at 415.27 ± 0.10 nm, signal over noise 53: N3, in 4 curves.' }), siv], [], []]);
});

test('the stronger one is kept whatever its signal', () => {
  expect(mergeFindings([[n3(90, { strength: 'supporting' })], [n3(8)]]).map((facts) => facts.map((fact) => fact.strength))).toEqual([[], ['strong']]);
});

test('where no signal is stated the smaller uncertainty is kept, and of equals the first', () => {
  const nitrogen = (error: string): FindingFact => ({ ...n3(1), code: 'infrared:type-IaAB', statement: `Type IaAB: aggregated nitrogen 307 ± ${error} ppm.` });
  expect(mergeFindings([[nitrogen('33')], [nitrogen('7.5')]])).toEqual([[], [{ ...nitrogen('7.5'), statement: 'Type IaAB: aggregated nitrogen 307 ± 7.5 ppm, in 2 curves.' }]]);
  expect(mergeFindings([[n3(5)], [n3(5)]]).map((facts) => facts.length)).toEqual([1, 0]);
});

test('another meaning, or two facts of one curve alone, stay', () => {
  expect(mergeFindings([[n3(5)], [n3(5, { supports: 'none' })]]).flat()).toHaveLength(2);
  expect(mergeFindings([[n3(5), n3(6)]])).toEqual([[n3(5), n3(6)]]);
  expect(mergeFindings([])).toEqual([]);
});

test('the number of curves can be taken off again', () => {
  const [kept] = mergeFindings([[siv], [siv]]).flat();
  expect(statementOfOne(kept!.statement)).toBe(siv.statement);
  expect(statementOfOne(siv.statement)).toBe(siv.statement);
});
