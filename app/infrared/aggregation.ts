/**
 * Second-order aggregation of nitrogen, A to B: dN_A/dt = -k N_A², k = frequency · exp(-activationK / T).
 * W. R. Taylor, A. L. Jaques, M. Ridd, Am. Mineral. 75 (1990) 1290; A. C. Leahy, W. R. Taylor, Geol. Geofiz. 38 (1997) 44 (values from memory).
 * The two belong together: the activation energy that is often printed beside this factor (7.03 eV) shifts every temperature by 7 to 8 °C.
 */
export const AGGREGATION = {
  /** Activation energy over the gas constant, kelvin (6.994 eV). */
  activationK: 81_160,
  /** Per ppm and second. */
  frequency: 293_608,
} as const;
export type AggregationConstants = { readonly activationK: number; readonly frequency: number };

/** Julian year. */
const SECONDS_PER_GA = 3.15576e16;
const KELVIN = 273.15;
/** Residence where none is stated, 10⁹ years: common practice for stones of old kimberlites, no source. */
export const RESIDENCE_GA = 3;

/**
 * Temperature, °C, at which `totalPpm` of nitrogen, all A at first, is aggregated to the fraction B within the residence time: a model of one even stage.
 * Null where the fraction is not between 0 and 1.
 */
export function aggregationTemperature(totalPpm: number, fractionB: number, residenceGa: number, constants: AggregationConstants = AGGREGATION): number | null {
  if (!(fractionB > 0 && fractionB < 1 && totalPpm > 0 && residenceGa > 0)) return null;
  const rate = fractionB / (1 - fractionB) / (residenceGa * SECONDS_PER_GA * totalPpm);
  const kelvin = -constants.activationK / Math.log(rate / constants.frequency);
  return kelvin > 0 && Number.isFinite(kelvin) ? kelvin - KELVIN : null;
}

/** Fraction B that `totalPpm` of nitrogen reaches at a temperature, °C, in a time, 10⁹ years. */
export function aggregatedFraction(totalPpm: number, celsius: number, residenceGa: number, constants: AggregationConstants = AGGREGATION): number {
  const rate = constants.frequency * Math.exp(-constants.activationK / (celsius + KELVIN));
  const aged = rate * totalPpm * residenceGa * SECONDS_PER_GA;
  return aged / (1 + aged);
}

/**
 * Standard error of the model temperature, °C, from the variances and the covariance of A and B, ppm; the model's own error is not in it.
 */
export function aggregationTemperatureError(a: number, b: number, celsius: number, covariance: { readonly aa: number; readonly bb: number; readonly ab: number }, constants: AggregationConstants = AGGREGATION): number {
  // T = -E / ln q', q' proportional to b / (a (a + b)): dT = T²/E d(ln q').
  const byA = -1 / a - 1 / (a + b);
  const byB = 1 / b - 1 / (a + b);
  const variance = byA * byA * covariance.aa + byB * byB * covariance.bb + 2 * byA * byB * covariance.ab;
  return ((celsius + KELVIN) ** 2 / constants.activationK) * Math.sqrt(Math.max(0, variance));
}
