import { expect, test } from 'vitest';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import type { SimulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { simulatedStone, STONE_KINDS } from '../../../../app/spectra/simulate/stone.ts';
import { analysed, centres } from './made-spectra.ts';

/** Laser, temperature, resolution, counts: good and poor runs. */
const RUNS = [[532, 295, 0.5, 40000], [532, 77, 0.15, 40000], [405, 295, 1, 40000], [532, 295, 1.5, 3000], [532, 77, 0.5, 600], [785, 77, 0.3, 20000]] as const;

/** Names that the stone does not justify; H3 stands for 3H where the two can't be told apart. */
function unjustified(named: readonly string[], stone: SimulatedStone): string[] {
  return named.filter((id) => {
    if (id === 'RAMAN') return !stone.isDiamond;
    if (id === 'MOISSANITE' || id === 'CORUNDUM') return stone.kind !== id.toLowerCase();
    if (id === 'CVD596-597') return !stone.emission['CVD596'];
    if (id === 'GR1-744') return !stone.emission['GR1'];
    return !(stone.emission[id] ?? (id === 'H3' ? stone.emission['3H'] : 0));
  });
}

test('360 stones in good and poor runs: hardly a name too many, no diamond denied, nothing grown called natural', () => {
  let wrong = 0;
  for (const kind of STONE_KINDS) for (const seed of [1, 2, 3, 4]) for (const [laserNm, temperatureK, resolutionNm, fullCounts] of RUNS) {
    const stone = simulatedStone(kind, seed);
    const instrument = emissionInstrument({ laserNm, temperatureK, resolutionNm, fullCounts, fromNm: laserNm + 6, toNm: Math.min(1000, laserNm + 420) });
    const result = analysed(simulatePhotoluminescence(stone, instrument, seed * 7 + laserNm), { laserNm, temperatureK, resolution: resolutionNm });
    wrong += unjustified(centres(result), stone).length;
    const supports = result.findings.map((finding) => finding.supports);
    if (stone.isDiamond) expect(supports).not.toContain('not-diamond');
    else expect(supports).not.toContain('diamond');
    if (kind.startsWith('cvd') || kind.startsWith('hpht')) expect(supports).not.toContain('natural');
    if (['natural-ia', 'natural-iia', 'natural-iib', 'natural-ib'].includes(kind)) expect(supports.filter((s) => s.startsWith('grown'))).toEqual([]);
  }
  expect(wrong).toBeLessThanOrEqual(2);
});
