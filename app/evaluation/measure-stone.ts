import type { FindingFact } from '../domain/finding.ts';
import type { MethodId } from '../domain/method.ts';
import { analyseSpectrum } from '../spectra/analyse-spectrum.ts';
import { analysisParameters } from '../spectra/analysis.ts';
import type { AnalysisParameters } from '../spectra/analysis.ts';
import { absorptionInstrument, simulateAbsorption } from '../spectra/simulate/absorption.ts';
import { infraredInstrument, simulateInfrared } from '../spectra/simulate/infrared.ts';
import { emissionInstrument } from '../spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../spectra/simulate/photoluminescence.ts';
import { simulateRaman } from '../spectra/simulate/raman.ts';
import type { SeededRandom } from '../spectra/simulate/seeded-random.ts';
import { simulatedStone } from '../spectra/simulate/stone.ts';
import type { SimulatedStone, StoneKind } from '../spectra/simulate/stone.ts';
import type { Spectrum } from '../spectra/spectrum.ts';

/** Methods that the spectra simulator can give a curve for. */
export const MEASURED: readonly MethodId[] = ['raman', 'photoluminescence', 'absorption', 'infrared'];

function findingsOf(spectrum: Spectrum, parameters: Partial<AnalysisParameters> & Pick<AnalysisParameters, 'method'>): FindingFact[] {
  const analysed = analyseSpectrum(spectrum, analysisParameters.parse(parameters));
  return analysed.ok ? analysed.value.result.findings : [];
}

/** Wavelength scale off by this much, nm: a spectrometer in order, seldom one that has drifted. */
const drift = (r: SeededRandom): number => (r.uniform() < 0.04 ? 0.6 : 0.05) * r.normal();
const shifted = (spectrum: Spectrum, by: number): Spectrum => ({ ...spectrum, x: spectrum.x.map((x) => x + by) });

function curveFindings(method: MethodId, stone: SimulatedStone, r: SeededRandom, seed: number): FindingFact[] {
  const light = r.uniform() < 0.12 ? 0.05 : 1;
  switch (method) {
    case 'raman': {
      const instrument = { ...emissionInstrument({ laserNm: 532, points: 1400, fullCounts: 40_000 * light }), fromCm1: 150, toCm1: 1600 };
      return findingsOf(simulateRaman(stone, instrument, seed), { method: 'raman', laserNm: 532 });
    }
    case 'photoluminescence': {
      const cold = r.uniform() < 0.6;
      const green = emissionInstrument({ temperatureK: cold ? 77 : 295, fullCounts: 40_000 * light });
      const blue = emissionInstrument({ laserNm: 405, fromNm: 410, toNm: 850, fullCounts: 40_000 * light });
      return [
        ...findingsOf(shifted(simulatePhotoluminescence(stone, green, seed + 1), drift(r)), { method: 'photoluminescence', laserNm: 532, temperatureK: green.temperatureK, resolution: green.resolutionNm }),
        ...findingsOf(shifted(simulatePhotoluminescence(stone, blue, seed + 2), drift(r)), { method: 'photoluminescence', laserNm: 405, temperatureK: 295, resolution: blue.resolutionNm }),
      ];
    }
    case 'infrared': return findingsOf(simulateInfrared(stone, infraredInstrument({ noise: r.logBetween(0.0006, 0.008) }), seed + 3), { method: 'infrared' });
    case 'absorption': return findingsOf(simulateAbsorption(stone, absorptionInstrument({ noise: r.logBetween(0.0004, 0.003) }), seed + 4), { method: 'absorption' });
    default: return [];
  }
}

/** The findings of one simulated stone's curves, through the program's own analysis. Other methods are passed over. */
export function measureStone(kind: StoneKind, methods: readonly MethodId[], r: SeededRandom, seed: number): FindingFact[] {
  const stone = simulatedStone(kind, seed);
  return methods.flatMap((method) => curveFindings(method, stone, r, seed));
}
