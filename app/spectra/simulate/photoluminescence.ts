import { expectedLine, warmth } from '../../reference/optical-centre.ts';
import type { OpticalCentre } from '../../reference/optical-centre.ts';
import { opticalCentre } from '../../reference/optical-centres.ts';
import { DIAMOND_RAMAN_CM1, DIAMOND_RAMAN_COLD_CM1, DIAMOND_RAMAN_FWHM_CM1, SECOND_ORDER_RAMAN_CM1 } from '../../reference/reference-lines.ts';
import { airFromRamanShift, ramanShiftFromAir, vacuumFromAir } from '../convert-axis.ts';
import type { Spectrum } from '../spectrum.ts';
import { gaussian, voigt, voigtWidth } from './line-shapes.ts';
import { addNoise, axisOf } from './instrument.ts';
import type { EmissionInstrument } from './instrument.ts';
import type { SeededRandom } from './seeded-random.ts';
import { seededRandom } from './seeded-random.ts';
import type { SimulatedStone } from './stone.ts';
import { sidebandPerNm, VIBRONIC } from './vibronic.ts';

/** Width for lines without a published one, nm, cold and warm (judgement). */
const USUAL_FWHM_NM = { cold: 0.4, room: 1.6 } as const;
/** Height of the second-order band against the first-order line as a fine instrument shows it (judgement). */
const SECOND_ORDER_SHARE = 0.012;

type Part = { readonly nm: number; readonly share: number };

/** The lines of a centre at this temperature: a doublet parts where it is sharper than its splitting. */
function partsOf(centre: OpticalCentre, temperatureK: number): Part[] {
  const { nm } = expectedLine(centre, temperatureK);
  if (centre.doubletNm === undefined) return [{ nm, share: 1 }];
  const half = 0.5 * (centre.doubletNm[1] - centre.doubletNm[0]);
  return [{ nm: nm - half, share: 0.8 }, { nm: nm + half, share: 1 }];
}

/** Adds one centre's line, of this height as the instrument sees it, and its sideband. */
export function addCentre(x: Float64Array, y: Float64Array, centre: OpticalCentre, height: number, temperatureK: number, resolutionNm: number, mode: 'emission' | 'absorption'): void {
  const t = warmth(temperatureK);
  const own = expectedLine(centre, temperatureK).fwhmNm ?? USUAL_FWHM_NM.cold + (USUAL_FWHM_NM.room - USUAL_FWHM_NM.cold) * t;
  for (const part of partsOf(centre, temperatureK)) {
    const reach = 40 * Math.max(own, resolutionNm);
    for (let i = 0; i < x.length; i++) {
      if (Math.abs(x[i]! - part.nm) < reach) y[i] = y[i]! + height * part.share * voigt(x[i]!, part.nm, own, resolutionNm);
    }
  }
  const model = VIBRONIC[centre.id];
  if (!model) return;
  const { nm } = expectedLine(centre, temperatureK);
  const zero = vacuumFromAir(nm);
  // Area of the zero-phonon line as seen; the sideband follows from it. Lines sharpen on cooling, areas stay.
  const roomWidth = voigtWidth(centre.roomFwhmNm ?? own, resolutionNm);
  const area = height * 1.3 * (t * voigtWidth(own, resolutionNm) + (1 - t) * 0.3 * roomWidth);
  for (let i = 0; i < x.length; i++) y[i] = y[i]! + area * sidebandPerNm(vacuumFromAir(x[i]!), zero, model, mode);
}

function addDiamondRaman(x: Float64Array, y: Float64Array, instrument: EmissionInstrument): void {
  const { laserNm, temperatureK, resolutionNm } = instrument;
  const shift = DIAMOND_RAMAN_COLD_CM1 + (DIAMOND_RAMAN_CM1 - DIAMOND_RAMAN_COLD_CM1) * warmth(temperatureK);
  const at = airFromRamanShift(laserNm, shift);
  const own = DIAMOND_RAMAN_FWHM_CM1 * at * at * 1e-7;
  for (let i = 0; i < x.length; i++) {
    y[i] = y[i]! + voigt(x[i]!, at, own, resolutionNm);
    const s = ramanShiftFromAir(laserNm, x[i]!);
    const { from, maximum, cutOff } = SECOND_ORDER_RAMAN_CM1;
    if (s > from - 60 && s < cutOff + 30) {
      const edge = 1 / (1 + Math.exp((s - cutOff) / 6)) / (1 + Math.exp((from - s) / 15));
      y[i] = y[i]! + SECOND_ORDER_SHARE * edge * (0.35 + 0.65 * gaussian(s, maximum, 190));
    }
  }
}

/** Raman lines of imitations, cm-1, with relative heights; broad where the material is disordered. From memory. */
export const IMITATION_RAMAN: Readonly<Record<string, readonly { readonly cm1: number; readonly height: number; readonly fwhm: number }[]>> = {
  moissanite: [{ cm1: 789, height: 1, fwhm: 3 }, { cm1: 767, height: 0.55, fwhm: 3 }, { cm1: 965, height: 0.35, fwhm: 4 }, { cm1: 149, height: 0.2, fwhm: 3 }],
  corundum: [{ cm1: 418, height: 1, fwhm: 5 }, { cm1: 378, height: 0.35, fwhm: 5 }, { cm1: 645, height: 0.4, fwhm: 6 }, { cm1: 751, height: 0.35, fwhm: 6 }, { cm1: 432, height: 0.15, fwhm: 6 }, { cm1: 577, height: 0.1, fwhm: 6 }],
  'cubic-zirconia': [{ cm1: 620, height: 0.6, fwhm: 90 }, { cm1: 280, height: 0.4, fwhm: 150 }, { cm1: 480, height: 0.25, fwhm: 140 }],
  glass: [{ cm1: 470, height: 0.5, fwhm: 220 }, { cm1: 560, height: 0.35, fwhm: 100 }, { cm1: 1050, height: 0.3, fwhm: 200 }, { cm1: 800, height: 0.2, fwhm: 90 }],
};

/** Light of the stone without noise, on the scale where the diamond line is 1. x in nm, ascending. */
export function emissionOf(x: Float64Array, stone: SimulatedStone, instrument: EmissionInstrument, r: SeededRandom): Float64Array {
  const y = new Float64Array(x.length);
  const { laserNm, temperatureK, resolutionNm } = instrument;
  if (stone.isDiamond) addDiamondRaman(x, y, instrument);
  for (const line of IMITATION_RAMAN[stone.kind] ?? []) {
    const at = airFromRamanShift(laserNm, line.cm1);
    const width = line.fwhm * at * at * 1e-7;
    for (let i = 0; i < x.length; i++) y[i] = y[i]! + line.height * voigt(x[i]!, at, width, resolutionNm);
  }
  for (const [id, height] of Object.entries(stone.emission)) {
    const centre = opticalCentre(id);
    // Light shorter than the laser's can't be emitted; the line must lie clear of the edge filter.
    if (!centre || height <= 0 || centre.roomNm < laserNm + 5 || !centre.modes.includes('emission')) continue;
    addCentre(x, y, centre, height, temperatureK, resolutionNm, 'emission');
  }
  const tilt = r.between(-0.02, 0.02);
  for (let i = 0; i < x.length; i++) {
    const u = (x[i]! - x[0]!) / (x[x.length - 1]! - x[0]!);
    let glow = 0.02 + tilt * (u - 0.5) + 0.01 * u * u + 0.4 * Math.exp(-Math.max(0, x[i]! - laserNm) / 2);
    for (const band of stone.glow) if (band.nm > laserNm - 40) glow += band.height * gaussian(x[i]!, Math.max(band.nm, laserNm + 15), band.fwhmNm);
    // Silicon detectors ripple in the near infrared.
    const etalon = x[i]! > 750 ? 1 + 0.01 * Math.sin((2 * Math.PI * (x[i]! - 750)) / 4.5) * Math.min(1, (x[i]! - 750) / 80) : 1;
    y[i] = (y[i]! + glow) * etalon;
  }
  return y;
}

/** An emission spectrum in nm and counts. Invented, and to be marked as such. */
export function simulatePhotoluminescence(stone: SimulatedStone, instrument: EmissionInstrument, seed: number): Spectrum {
  const r = seededRandom(seed);
  const x = axisOf(instrument.fromNm, instrument.toNm, instrument.points);
  const clean = emissionOf(x, stone, instrument, r);
  return { x, y: addNoise(clean, instrument, r), xUnit: 'nm', yUnit: 'counts' };
}
