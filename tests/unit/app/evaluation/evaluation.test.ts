import { describe, expect, test } from 'vitest';
import { EVALUATED_KINDS, measuredStone, sampledStone } from '../../../../app/evaluation/evaluate.ts';
import { evaluationReport, reportText } from '../../../../app/evaluation/evaluation-report.ts';
import { EVALUATION_DEFAULTS, inOrder, runPart } from '../../../../app/evaluation/run-part.ts';
import { tally } from '../../../../app/evaluation/tally.ts';
import { evidenceRowOf } from '../../../../app/evidence/evidence-table.ts';

// The drawn stones of `npm run evaluate` as it stands by default.
const RUN = runPart({ seed: EVALUATION_DEFAULTS.seed, sampled: EVALUATION_DEFAULTS.stones, measured: 0, part: 0, of: 1 });
const verdicts = inOrder([RUN.sampled]);

describe('the kinds', () => {
  test('every code they can show has its row, every chance lies between none and all, every kind names its source', () => {
    expect(new Set(EVALUATED_KINDS.map((kind) => kind.id)).size).toBe(EVALUATED_KINDS.length);
    for (const kind of EVALUATED_KINDS) {
      for (const [code, p] of [...Object.entries(kind.luminescence), ...Object.entries(kind.absorption)]) {
        expect(evidenceRowOf(code), `${kind.id} ${code}`).toBeDefined();
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThanOrEqual(1);
      }
      for (const [, names] of kind.infrared) for (const name of names) expect(evidenceRowOf(`infrared:${name}`), name).toBeDefined();
      expect(kind.source.length, kind.id).toBeGreaterThan(8);
      expect(kind.share).toBeGreaterThan(0);
    }
  });
  test('the documented traps are among them', () => {
    const traps = EVALUATED_KINDS.map((kind) => `${kind.id} ${kind.trap ?? ''}`).join('; ');
    for (const one of ['silicon-vacancy in natural', 'nickel in natural', 'after-glow', 'no strain', 'straight boundary in natural', 'sectors in natural', 'under a CVD layer', 'made in a press', 'quenched', 'H2 without treatment', 'H3 in laboratory-grown', 'orange fluorescence', 'blue 435', 'strain in HPHT', 'natural boron', 'moissanite']) expect(traps).toContain(one);
  });
});

test('a seed fixes every stone, whatever the number of parts', () => {
  expect(sampledStone(42)).toEqual(sampledStone(42));
  const parts = [0, 1, 2].map((part) => runPart({ seed: 1, sampled: 600, measured: 0, part, of: 3 }).sampled);
  expect(inOrder(parts)).toEqual(verdicts.slice(0, 600));
  expect(inOrder([runPart({ seed: 2, sampled: 50, measured: 0, part: 0, of: 1 }).sampled])).not.toEqual(verdicts.slice(0, 50));
});

test('no laboratory-grown stone of the run is called natural, no imitation diamond; typical stones are settled', () => {
  const one = tally(verdicts);
  expect(one.falseNatural.of).toBeGreaterThan(7000);
  expect(one.falseNatural.count).toBe(0);
  expect(one.imitationAsDiamond.count).toBe(0);
  expect(one.falseGrown.share!).toBeLessThan(0.001);
  expect(one.looseNaturalIa.share!).toBeLessThanOrEqual(0.05);
  const plain = verdicts.filter(({ kind, mounting, set, inOrder: ok }) => (kind.id === 'CVD as grown' || kind.id === 'HPHT-grown, colourless') && mounting === 'loose' && set === 'full' && ok);
  expect(plain.filter(({ conclusion }) => conclusion.startsWith('grown')).length / plain.length).toBeGreaterThan(0.9);
});

test('layers on natural cores are kept from being called natural by the rules made for them', () => {
  const layers = verdicts.filter(({ kind }) => kind.truth === 'layer');
  expect(layers.length).toBeGreaterThan(10);
  expect(layers.filter(({ rule }) => rule === 'layer-suspected' || rule === 'contradiction' || rule === 'layer-not-looked-for').length).toBeGreaterThan(layers.length / 4);
});

test('simulated curves through the analysis: the same targets', () => {
  const measured = Array.from({ length: 27 }, (_, i) => measuredStone(i, 500 + i));
  const one = tally(measured);
  expect(one.falseNatural.of).toBeGreaterThan(5);
  expect(one.falseNatural.count).toBe(0);
  expect(one.falseGrown.count).toBe(0);
});

test('the report says rates with their limits and whether the targets are met', () => {
  const report = evaluationReport(1, [RUN]);
  const text = reportText(report);
  expect(report.targets.map((target) => target.met)).toEqual([true, true]);
  expect(text).toMatch(/laboratory-grown called natural +0 of \d+: 0\.00 % \(0\.00 % to 0\.\d\d %\)/);
  expect(text).toContain('all methods');
  expect(report.sampled.furtherTesting.map((cell) => `${cell.mounting} ${cell.set}`)).toHaveLength(15);
  const wrong = evaluationReport(1, [{ sampled: [{ index: 0, verdict: { ...verdicts.find(({ kind }) => kind.truth === 'cvd')!, conclusion: 'natural' } }], measured: [] }]);
  expect(wrong.targets[0]).toMatchObject({ met: false });
  expect(wrong.sampled.errors).toHaveLength(1);
});
