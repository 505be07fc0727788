/** Refractive index of diamond at a wavelength in nm: F. Peter 1923, Sellmeier form (coefficients from memory; n(589.3) = 2.4173). */
export function diamondIndex(nm: number): number {
  const l2 = (nm / 1000) ** 2;
  return Math.sqrt(1 + (4.3356 * l2) / (l2 - 0.106 ** 2) + (0.3306 * l2) / (l2 - 0.175 ** 2));
}

/** Transmittance of a clear diamond plate through both surfaces, reflections added incoherently. */
export function latticeTransmittance(nm: number): number {
  const n = diamondIndex(Math.max(200, nm));
  const reflectance = ((n - 1) / (n + 1)) ** 2;
  return (1 - reflectance) / (1 + reflectance);
}
