import { EV_NM } from '../convert-axis.ts';

/** One effective vibration coupled to an electronic transition. Energies in eV. */
export type VibronicModel = {
  /** Huang–Rhys factor. */
  readonly s: number;
  readonly phonon: number;
  /** Full widths of the zero-phonon line and of one phonon's spread. */
  readonly zeroWidth: number;
  readonly phononWidth: number;
};

/** Couplings of the commonest centres at room temperature: literature values, from memory (Davies; Zaitsev 2001; Alkauskas et al. 2014). */
export const VIBRONIC: Readonly<Record<string, VibronicModel>> = {
  N3: { s: 3.45, phonon: 0.08, zeroWidth: 0.025, phononWidth: 0.045 },
  H3: { s: 3.6, phonon: 0.041, zeroWidth: 0.018, phononWidth: 0.035 },
  H4: { s: 3.6, phonon: 0.043, zeroWidth: 0.02, phononWidth: 0.035 },
  NV0: { s: 3.3, phonon: 0.046, zeroWidth: 0.008, phononWidth: 0.045 },
  'NV-': { s: 3.73, phonon: 0.065, zeroWidth: 0.0075, phononWidth: 0.05 },
  GR1: { s: 2.8, phonon: 0.041, zeroWidth: 0.009, phononWidth: 0.035 },
  SIV: { s: 0.29, phonon: 0.064, zeroWidth: 0.0115, phononWidth: 0.025 },
  NI883: { s: 0.7, phonon: 0.04, zeroWidth: 0.004, phononWidth: 0.03 },
  SIV0: { s: 1.2, phonon: 0.05, zeroWidth: 0.003, phononWidth: 0.04 },
  H2: { s: 3, phonon: 0.05, zeroWidth: 0.005, phononWidth: 0.04 },
};
const MOST_PHONONS = 25;
const LN16 = 4 * Math.LN2;

/**
 * Sideband of an emission (or, mirrored, absorption) line at a photon energy, relative to the area of the zero-phonon line, per eV:
 * sum over n >= 1 of S^n/n! Gaussians of width sqrt(zeroWidth² + n phononWidth²) at E0 -+ n phonon, with the factor (E/E0)³ (E/E0 in absorption).
 * Low-temperature form.
 */
export function sideband(energy: number, zeroEnergy: number, model: VibronicModel, mode: 'emission' | 'absorption'): number {
  const sign = mode === 'emission' ? -1 : 1;
  let weight = 1;
  let sum = 0;
  for (let n = 1; n <= MOST_PHONONS; n++) {
    weight *= model.s / n;
    const width = Math.sqrt(model.zeroWidth ** 2 + n * model.phononWidth ** 2);
    const u = (energy - (zeroEnergy + sign * n * model.phonon)) / width;
    if (u * u < 12) sum += (weight * Math.sqrt(LN16 / Math.PI) * Math.exp(-LN16 * u * u)) / width;
  }
  return sum * (energy / zeroEnergy) ** (mode === 'emission' ? 3 : 1);
}

/** The same per nm at a vacuum wavelength. */
export function sidebandPerNm(vacuumNm: number, zeroVacuumNm: number, model: VibronicModel, mode: 'emission' | 'absorption'): number {
  return (sideband(EV_NM / vacuumNm, EV_NM / zeroVacuumNm, model, mode) * EV_NM) / vacuumNm ** 2;
}
