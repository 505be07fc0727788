import type { Result } from '../result.ts';
import { err, ok } from '../result.ts';
import { UNIT_NAMES, type StatableXUnit } from './spectrum.ts';

/** h·c/e in eV·nm, exact in the SI of 2019 (CODATA 2018). */
export const EV_NM = 1239.841984332003;

/**
 * Refractive index minus one of standard air (dry, 15 °C, 101 325 Pa, 450 ppm CO2) at a vacuum wavelength in nm.
 * Source: P. E. Ciddor, Appl. Opt. 35 (1996) 1566; stated for 300–1690 nm, used outside as an extrapolation.
 */
export function standardAirRefractivity(vacuumNm: number): number {
  const s2 = (1000 / vacuumNm) ** 2; // (1/µm)²
  return (5792105 / (238.0185 - s2) + 167917 / (57.362 - s2)) * 1e-8;
}

/** Wavelength in standard air, nm, of light with this vacuum wavelength, nm. */
export const airFromVacuum = (vacuumNm: number): number => vacuumNm / (1 + standardAirRefractivity(vacuumNm));

/** Vacuum wavelength, nm, of light with this wavelength in standard air, nm. Round trip better than 1e-9 nm. */
export function vacuumFromAir(airNm: number): number {
  let vacuum = airNm;
  // One step leaves 1.4e-6 nm at 633 nm; each further step gains about five digits.
  for (let step = 0; step < 4; step++) vacuum = airNm * (1 + standardAirRefractivity(vacuum));
  return vacuum;
}

/** Raman shift in cm-1 of scattered light; both wavelengths in air, nm. */
export const ramanShiftFromAir = (laserNm: number, scatteredNm: number): number => 1e7 / vacuumFromAir(laserNm) - 1e7 / vacuumFromAir(scatteredNm);

/** Wavelength in air, nm, of light scattered with this Raman shift in cm-1; laser in air, nm. */
export const airFromRamanShift = (laserNm: number, shiftCm1: number): number => airFromVacuum(1e7 / (1e7 / vacuumFromAir(laserNm) - shiftCm1));

export type ConvertError = { readonly code: 'laser-missing' | 'position-not-physical'; readonly message: string };
export type ConvertOptions = { readonly laserNm?: number };

const LASER_MISSING: ConvertError = {
  code: 'laser-missing',
  message: 'The laser wavelength is needed to convert to or from Raman shift: enter it in the run’s settings.',
};

function toAirNm(value: number, from: StatableXUnit, laserNm: number): number {
  switch (from) {
    case 'nm': return value;
    case 'nm-vacuum': return airFromVacuum(value);
    case 'angstrom': return value / 10;
    case 'cm-1': return airFromVacuum(1e7 / value);
    case 'ev': return airFromVacuum(EV_NM / value);
    case 'raman-shift': return airFromRamanShift(laserNm, value);
  }
}

function fromAirNm(airNm: number, to: StatableXUnit, laserNm: number): number {
  switch (to) {
    case 'nm': return airNm;
    case 'nm-vacuum': return vacuumFromAir(airNm);
    case 'angstrom': return airNm * 10;
    case 'cm-1': return 1e7 / vacuumFromAir(airNm);
    case 'ev': return EV_NM / vacuumFromAir(airNm);
    case 'raman-shift': return ramanShiftFromAir(laserNm, airNm);
  }
}

/** One position from one unit to another; NaN where it has no meaning. nm and ångström are wavelengths in air. */
export function convertPosition(value: number, from: StatableXUnit, to: StatableXUnit, options: ConvertOptions = {}): number {
  if (from === to) return value;
  const laser = options.laserNm ?? Number.NaN;
  return fromAirNm(toAirNm(value, from, laser), to, laser);
}

/**
 * Positions from one unit to another, same length and order. nm and ångström are wavelengths in air, nm-vacuum, cm-1 and eV belong to vacuum.
 * Errors: Raman shift without a laser, or a position that is no light (zero or negative energy).
 */
export function convertPositions(x: Float64Array, from: StatableXUnit, to: StatableXUnit, options: ConvertOptions = {}): Result<Float64Array, ConvertError> {
  if (from === to) return ok(x);
  if ((from === 'raman-shift' || to === 'raman-shift') && options.laserNm === undefined) return err(LASER_MISSING);
  const out = new Float64Array(x.length);
  for (let i = 0; i < x.length; i++) {
    const value = convertPosition(x[i]!, from, to, options);
    if (!Number.isFinite(value) || (to !== 'raman-shift' && value <= 0)) {
      return err({ code: 'position-not-physical', message: `Point ${i + 1} (${x[i]} ${UNIT_NAMES[from]}) is no wavelength that light can have: check the axis unit and the laser wavelength.` });
    }
    out[i] = value;
  }
  return ok(out);
}
