import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';

const LAMPS: readonly MethodId[] = ['fluorescence-long-wave', 'fluorescence-short-wave', 'phosphorescence'];

/** What a laboratory may own: sets of methods under which stones are tried. 'some' draws its own for every stone. */
export const METHOD_SETS = {
  full: METHOD_IDS,
  spectroscopy: ['raman', 'photoluminescence', 'infrared', 'absorption', ...LAMPS, 'microscopy'],
  luminescence: ['raman', 'photoluminescence', 'growth-pattern', ...LAMPS, 'microscopy'],
  bench: ['raman', 'ultraviolet-transmission', ...LAMPS, 'crossed-polarisers', 'microscopy', 'magnet', 'thermal-probe', 'electrical-conductivity'],
  some: METHOD_IDS,
} as const satisfies Record<string, readonly MethodId[]>;

export type MethodSet = keyof typeof METHOD_SETS;
export const METHOD_SET_IDS = Object.keys(METHOD_SETS) as MethodSet[];
export const METHOD_SET_WORDS: Readonly<Record<MethodSet, string>> = {
  full: 'all methods', spectroscopy: 'Raman, luminescence, infrared, absorption, lamps, microscope', luminescence: 'Raman, luminescence, growth pattern, lamps, microscope',
  bench: 'Raman, transmission, lamps, polarisers, bench tests', some: 'three to nine methods drawn at random',
};
