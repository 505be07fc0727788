const LN16 = 4 * Math.LN2;

/** Gaussian of unit height. */
export const gaussian = (x: number, at: number, fwhm: number): number => Math.exp(-LN16 * ((x - at) / fwhm) ** 2);
/** Lorentzian of unit height. */
export const lorentzian = (x: number, at: number, fwhm: number): number => 1 / (1 + 4 * ((x - at) / fwhm) ** 2);

/** Full width of a Voigt line from its Lorentzian and Gaussian parts, within 0.03 % (J. J. Olivero, R. L. Longbothum, JQSRT 17 (1977) 233). */
export const voigtWidth = (lorentz: number, gauss: number): number => 0.5346 * lorentz + Math.sqrt(0.2166 * lorentz ** 2 + gauss ** 2);

/** Voigt line of unit height as a pseudo-Voigt (P. Thompson et al., J. Appl. Cryst. 20 (1987) 79; from memory). */
export function voigt(x: number, at: number, lorentzFwhm: number, gaussFwhm: number): number {
  const width = voigtWidth(lorentzFwhm, gaussFwhm);
  const r = lorentzFwhm / width;
  const eta = 1.36603 * r - 0.47719 * r * r + 0.11116 * r ** 3;
  return eta * lorentzian(x, at, width) + (1 - eta) * gaussian(x, at, width);
}
