import type { MethodId } from './method.ts';

/** Methods whose resolution is stated in cm-1; the others state nm. */
const IN_WAVENUMBERS: readonly MethodId[] = ['infrared', 'raman'];

/** Unit in which the resolution of a method's runs is stated. */
export const resolutionUnitOf = (method: MethodId): 'cm-1' | 'nm' => (IN_WAVENUMBERS.includes(method) ? 'cm-1' : 'nm');

/** The same as it is shown and printed. */
export const resolutionUnit = (method: MethodId): string => (resolutionUnitOf(method) === 'cm-1' ? 'cm⁻¹' : 'nm');
