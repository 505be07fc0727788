import { absorptionInstrument, simulateAbsorption } from '../../app/spectra/simulate/absorption.ts';
import { infraredInstrument, simulateInfrared } from '../../app/spectra/simulate/infrared.ts';
import { emissionInstrument } from '../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../app/spectra/simulate/photoluminescence.ts';
import { simulateRaman } from '../../app/spectra/simulate/raman.ts';
import { simulatedStone } from '../../app/spectra/simulate/stone.ts';
import { simulateUltravioletTransmission, ULTRAVIOLET_DEFAULTS } from '../../app/spectra/simulate/ultraviolet-transmission.ts';
import type { Spectrum } from '../../app/spectra/spectrum.ts';
import type { ScenarioStone, Setup } from './scenario-schema.ts';

/** Digits an instrument would write: positions in 0.0001 of their unit, ordinates in a millionth (counts are whole). */
const X_STEP = 1e4;
const Y_STEP = 1e6;
const rounded = (values: Float64Array, steps: number): Float64Array => values.map((value) => Math.round(value * steps) / steps);

function curve(stone: ScenarioStone, setup: Setup, seed: number): Spectrum {
  const made = simulatedStone(stone.is, stone.seed);
  const { from, to, points } = setup;
  const emission = emissionInstrument({ laserNm: setup.laserNm ?? 532, temperatureK: setup.temperatureK ?? 295, resolutionNm: setup.resolution ?? 0.5, fromNm: from, toNm: to, points });
  switch (setup.method) {
    case 'photoluminescence': return simulatePhotoluminescence(made, emission, seed);
    case 'raman': return simulateRaman(made, { ...emission, fromCm1: from, toCm1: to }, seed);
    case 'infrared': return simulateInfrared(made, infraredInstrument({ fromCm1: from, toCm1: to, stepCm1: (to - from) / (points - 1) }), seed);
    case 'absorption': return simulateAbsorption(made, absorptionInstrument({ fromNm: from, toNm: to, points }), seed);
    case 'ultraviolet-transmission': return simulateUltravioletTransmission(made, { ...ULTRAVIOLET_DEFAULTS, fromNm: from, toNm: to, points }, seed);
  }
}

/** What an instrument of the demonstration would write of a stone. Invented; `seed` fixes the noise. */
export function simulateCurve(stone: ScenarioStone, setup: Setup, seed: number): Spectrum {
  const made = curve(stone, setup, seed);
  return { ...made, x: rounded(made.x, X_STEP), y: rounded(made.y, Y_STEP) };
}
