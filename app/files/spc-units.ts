import type { AxisWords } from './resolve-units.ts';
import type { SpcHeader } from './spc-header.ts';

/** Codes of the abscissa, in words that the unit reader knows. */
const X_TYPES: Readonly<Record<number, string>> = {
  0: 'Arbitrary', 1: 'Wavenumber (cm-1)', 2: 'Micrometers', 3: 'Nanometers (nm)', 4: 'Seconds', 5: 'Minutes', 6: 'Hertz', 7: 'kHz', 8: 'MHz', 9: 'Mass (m/z)', 10: 'ppm', 11: 'Days', 12: 'Years',
  13: 'Raman shift (cm-1)', 14: 'eV', 16: 'Pixel', 17: 'Channel', 18: 'Degree', 19: 'Temperature (F)', 20: 'Temperature (C)', 21: 'Kelvin', 22: 'Points', 23: 'Milliseconds', 24: 'Microseconds',
  25: 'Nanoseconds', 26: 'GHz', 27: 'Centimetres', 28: 'Metres', 29: 'Millimetres (mm)', 30: 'Hours', 255: 'Double interferogram',
};
/** Codes of the ordinate. */
const Y_TYPES: Readonly<Record<number, string>> = {
  0: 'Arbitrary', 1: 'Interferogram (V)', 2: 'Absorbance', 3: 'Kubelka-Munk', 4: 'Counts', 5: 'Volts', 6: 'Degrees (deg)', 7: 'Current (mA)', 8: 'Length (mm)', 9: 'Voltage (mV)', 10: 'Log(1/R)', 11: 'Percent (%)',
  12: 'Intensity', 13: 'Relative intensity', 14: 'Energy (J)', 16: 'Level (dB)', 19: 'Temperature (F)', 20: 'Temperature (C)', 21: 'Temperature (K)', 22: 'Refractive index (n)', 23: 'Extinction coefficient (k)',
  24: 'Real (re)', 25: 'Imaginary (im)', 26: 'Complex (c)', 128: 'Transmittance', 129: 'Reflectance', 130: 'Single beam intensity', 131: 'Emission',
};
/** Experiment code of Raman spectra, whose wavenumbers are shifts. */
const RAMAN_EXPERIMENT = 11;

/** The file's words about its axes; its own labels where the codes say nothing. */
export function spcAxisWords({ xType, yType, labels, experiment }: SpcHeader): AxisWords {
  const own = (label: string | undefined, coded: string): string => (label !== undefined && label !== '' ? label : coded);
  const x = X_TYPES[xType] ?? 'Arbitrary';
  const y = Y_TYPES[yType] ?? 'Arbitrary';
  return { x: xType === 0 ? own(labels[0], x) : x, y: yType === 0 ? own(labels[1], y) : y, raman: experiment === RAMAN_EXPERIMENT };
}
