import { expect, test } from 'vitest';
import type { ConclusionId } from '../../../../app/domain/conclusion.ts';
import type { FindingFact } from '../../../../app/domain/finding.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import { analysisParameters } from '../../../../app/spectra/analysis.ts';
import type { AnalysableMethod } from '../../../../app/spectra/analysis.ts';
import { absorptionInstrument, simulateAbsorption } from '../../../../app/spectra/simulate/absorption.ts';
import { infraredInstrument, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import type { StoneKind } from '../../../../app/spectra/simulate/stone.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';
import { propose, weigh } from './finding-fixtures.ts';

const SEEDS = 8;

function findingsOf(spectrum: Spectrum, method: AnalysableMethod, settings: { laserNm?: number; temperatureK?: number; resolution?: number }): FindingFact[] {
  const analysed = analyseSpectrum(spectrum, analysisParameters.parse({ method, ...settings }));
  return analysed.ok ? analysed.value.result.findings : [];
}

/** Everything the instruments say of one simulated stone: two lasers, cooled and warm, infrared, absorption. */
function allFindings(kind: StoneKind, seed: number): FindingFact[] {
  const stone = simulatedStone(kind, seed);
  const green = emissionInstrument({ temperatureK: 77 });
  const blue = emissionInstrument({ laserNm: 405, fromNm: 410, toNm: 850 });
  return [
    ...findingsOf(simulatePhotoluminescence(stone, green, seed), 'photoluminescence', { laserNm: green.laserNm, temperatureK: 77, resolution: green.resolutionNm }),
    ...findingsOf(simulatePhotoluminescence(stone, blue, seed + 1), 'photoluminescence', { laserNm: 405, temperatureK: 295, resolution: blue.resolutionNm }),
    ...findingsOf(simulateInfrared(stone, infraredInstrument(), seed + 2), 'infrared', {}),
    ...findingsOf(simulateAbsorption(stone, absorptionInstrument(), seed + 3), 'absorption', {}),
  ];
}

const conclusions = (kind: StoneKind): ConclusionId[] => Array.from({ length: SEEDS }, (_, i) => propose(weigh(allFindings(kind, 100 + 10 * i))).conclusion);

test.each(['cvd-as-grown', 'cvd-treated', 'hpht', 'hpht-iib'] as const)('%s, from simulated spectra to the proposal: never natural', (kind) => {
  const found = conclusions(kind);
  console.log(`${kind}: ${found.join(', ')}`);
  expect(found).not.toContain('natural');
  expect(found).not.toContain('not-diamond');
});

test.each(['moissanite', 'corundum', 'cubic-zirconia', 'glass'] as const)('%s is never any diamond', (kind) => {
  const found = conclusions(kind);
  console.log(`${kind}: ${found.join(', ')}`);
  for (const conclusion of found) expect(['not-diamond', 'undetermined']).toContain(conclusion);
});

test.each(['natural-ia', 'natural-iia', 'natural-iia-silicon'] as const)('%s is never called grown', (kind) => {
  const found = conclusions(kind);
  console.log(`${kind}: ${found.join(', ')}`);
  for (const conclusion of found) expect(conclusion).not.toMatch(/grown/);
  if (kind === 'natural-ia') expect(found.filter((conclusion) => conclusion === 'natural').length).toBeGreaterThan(SEEDS / 2);
});
