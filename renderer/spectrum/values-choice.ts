import { convertOrdinates } from '../../app/spectra/convert-ordinate.ts';
import type { YUnit } from '../../app/spectra/spectrum.ts';

/** The units that values can be shown in, as the switch names them. */
const VALUE_WORDS = { absorbance: 'absorbance', transmittance: 'transmittance', 'percent-transmittance': 'transmittance, %', 'absorption-coefficient': 'coefficient', reflectance: 'reflectance', 'percent-reflectance': 'reflectance, %' } as const satisfies Partial<Record<YUnit, string>>;
export type ShownValues = keyof typeof VALUE_WORDS;

/** Any path makes a conversion possible in principle; the true one is asked for when it is needed. */
const SOME_PATH_CM = 1;

/** What values of this unit can be shown in, itself included; none for light that was counted. A fraction is offered only to curves that are one. */
export function valuesFor(yUnit: YUnit): { readonly value: ShownValues; readonly label: string }[] {
  return (Object.keys(VALUE_WORDS) as ShownValues[]).filter((to) => (to !== 'transmittance' || yUnit === to) && convertOrdinates(new Float64Array(0), yUnit, to, SOME_PATH_CM).ok).map((value) => ({ value, label: VALUE_WORDS[value] }));
}

/** Whether this pair of units can only be turned into each other with the length of the light path. */
export const needsPath = (from: YUnit, to: YUnit): boolean => from !== to && (from === 'absorption-coefficient' || to === 'absorption-coefficient');
