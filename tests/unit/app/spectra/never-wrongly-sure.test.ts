import { describe, expect, test } from 'vitest';
import { analysed, codes, madeSpectrum, PL, RAMAN_532 } from './made-spectra.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import { infraredInstrument, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { airFromRamanShift } from '../../../../app/spectra/convert-axis.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';

/** Lines at Raman shifts of a 532 nm laser, as a Raman run would show them, on its own axis. */
function raman(lines: readonly { readonly shift: number; readonly height: number; readonly fwhm: number }[]): Spectrum {
  const made = madeSpectrum(lines.map(({ shift, height, fwhm }) => ({ nm: shift, height, fwhm })), { from: 150, to: 3200, points: 3051 });
  return { ...made, xUnit: 'raman-shift' };
}

const supports = (spectrum: Spectrum, parameters: Parameters<typeof analysed>[1]) => analysed(spectrum, parameters).findings.map((f) => `${f.supports} ${f.strength}`);

describe('what may not be said', () => {
  test('a diamond line that melts into NV⁰ is masked, not absent', () => {
    const result = analysed(madeSpectrum([{ nm: 572.6, height: 3000, fwhm: 3 }, { nm: 575, height: 2500, fwhm: 3.6 }]), { resolution: 3 });
    expect(result.diamondRaman?.state).toBe('masked');
    expect(codes(result)).not.toContain('diamond-line:absent');
  });

  test('light on the short side of the stated laser says that the laser was another', () => {
    const result = analysed(madeSpectrum([RAMAN_532], { from: 540, to: 950 }), { laserNm: 785 });
    expect(result.warnings.map((w) => w.code)).toContain('laser-doubtful');
    expect(supports(madeSpectrum([RAMAN_532], { from: 540, to: 950 }), { laserNm: 785 })).not.toContain('not-diamond strong');
  });

  test('graphite beside a diamond is not cobalt, and sapphire of the mount is not a natural stone', () => {
    const parameters = { ...PL, method: 'raman' as const, resolution: 4 };
    for (const others of [[{ shift: 1585, height: 2500, fwhm: 60 }], [{ shift: 418, height: 2500, fwhm: 7 }, { shift: 645, height: 1800, fwhm: 8 }, { shift: 751, height: 2000, fwhm: 8 }]]) {
      const result = analysed(raman([{ shift: 1332.4, height: 4000, fwhm: 5 }, ...others]), parameters);
      expect(result.diamondRaman?.state).toBe('present');
      expect(result.findings.filter((f) => f.supports !== 'diamond' && f.supports !== 'none')).toEqual([]);
    }
  });

  test('a strong line at the place of SiV⁻ is never a sideband of a weaker line, nor passed over', () => {
    const result = analysed(madeSpectrum([RAMAN_532, { nm: 637.0, height: 2500, fwhm: 0.5 }, { nm: 736.8, height: 4000, fwhm: 4.5 }]), { temperatureK: 77 });
    const line = result.peaks.find((p) => Math.abs(p.position - 736.8) < 0.5);
    expect(line?.sidebandOf).toBeNull();
    expect(result.warnings.map((w) => w.code)).toContain('wide-for-temperature');
    const alone = analysed(madeSpectrum([RAMAN_532, { nm: 736.8, height: 4000, fwhm: 4.5 }]), { temperatureK: 77 });
    expect(codes(alone)).not.toContain('centres:none');
  });

  test.each([736.8, 739.0, 741.0])('at 3 nm resolution a line at %s nm may be silicon or a vacancy', (nm) => {
    const result = analysed(madeSpectrum([RAMAN_532, { nm, height: 4000, fwhm: 3.2 }]), { temperatureK: 77, resolution: 3 });
    expect(result.findings.filter((f) => f.supports.startsWith('grown'))).toEqual([]);
    expect(result.peaks.find((p) => Math.abs(p.position - nm) < 1)?.ambiguousWith).toEqual(expect.arrayContaining(['SIV', 'GR1']));
  });

  test('a saturated nitrogen region gives no type', () => {
    const parameters = { method: 'infrared', temperatureK: 295, calibrationErrorNm: 0.1, resolution: 4 } as const;
    const cut = analyseSpectrum(natural(3), parameters);
    expect(cut.ok && cut.value.result.warnings.map((w) => w.code)).toContain('one-phonon-saturated');
    expect(cut.ok && cut.value.result.infrared?.type).toBe('not-determined');
    expect(cut.ok && cut.value.result.findings.filter((f) => f.supports === 'natural')).toEqual([]);
  });
});

/** A natural stone with much nitrogen, simulated, its nitrogen region cut off where a detector ends. */
function natural(cutAt: number): Spectrum {
  const made = simulateInfrared(simulatedStone('natural-ia', 3), infraredInstrument(), 3);
  const inRegion = (x: number) => x > 1000 && x < 1400;
  const most = made.y.reduce((top, v, i) => (inRegion(made.x[i]!) && v > top ? v : top), 0);
  // Scaled so that the strongest of the nitrogen bands would reach twice the cut; the lattice's own bands stay below it.
  return { ...made, y: made.y.map((v, i) => (inRegion(made.x[i]!) ? Math.min(cutAt, (v * 2 * cutAt) / most) : v)) };
}

test('the Raman places used above are where the laser puts them', () => {
  expect(airFromRamanShift(532, 1332.4)).toBeCloseTo(572.6, 1);
});
