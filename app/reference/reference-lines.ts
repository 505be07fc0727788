/** First-order Raman line of diamond, cm-1, room temperature, unstrained (working value from memory; quoted 1332–1332.5). */
export const DIAMOND_RAMAN_CM1 = 1332.4;
/** The same extrapolated to 0 K: Liu, Bursill, Prawer, Beserman, Phys. Rev. B 61 (2000): 1332.7 ± 0.2 cm-1. */
export const DIAMOND_RAMAN_COLD_CM1 = 1332.7;
/** Intrinsic width at room temperature, cm-1 (from memory). */
export const DIAMOND_RAMAN_FWHM_CM1 = 1.7;
/** Second-order Raman of diamond, cm-1: continuum, its maximum, its cut-off. Solin & Ramdas, Phys. Rev. B 1 (1970) 1687 (numbers from memory). */
export const SECOND_ORDER_RAMAN_CM1 = { from: 2150, maximum: 2460, cutOff: 2667 } as const;

export type Simulant = {
  readonly id: string;
  readonly name: string;
  /** Raman shifts, cm-1, strongest first; each ± 4. Two must be seen where two are given and covered. */
  readonly linesCm1: readonly number[];
};
/** Sharp Raman lines of diamond imitations at room temperature: mineral-spectra handbooks, from memory. */
export const SIMULANTS: readonly Simulant[] = [
  { id: 'MOISSANITE', name: 'moissanite', linesCm1: [789, 767, 965] },
  { id: 'MOISSANITE4H', name: 'moissanite (4H)', linesCm1: [776, 796, 964] },
  { id: 'CORUNDUM', name: 'corundum', linesCm1: [418, 378, 645, 751, 432, 577] },
  { id: 'SPINEL', name: 'spinel', linesCm1: [406, 665, 766] },
  { id: 'ZIRCON', name: 'zircon', linesCm1: [1008, 974, 439, 357] },
  { id: 'RUTILE', name: 'rutile', linesCm1: [612, 447, 235] },
  { id: 'QUARTZ', name: 'quartz', linesCm1: [464] },
  { id: 'TOPAZ', name: 'topaz', linesCm1: [925, 268] },
  { id: 'YAG', name: 'yttrium aluminium garnet', linesCm1: [783, 370, 262, 401, 719, 857] },
  { id: 'GGG', name: 'gadolinium gallium garnet', linesCm1: [355, 741] },
];
/** Tolerance on those shifts, cm-1. */
export const SIMULANT_TOLERANCE_CM1 = 4;

export type ArtefactLine = { readonly id: string; readonly nm: number; readonly halfWindowNm: number; readonly what: string };
/** Light that is not the stone's. Positions in air, nm: line tables, from memory. */
export const ARTEFACT_LINES: readonly ArtefactLine[] = [
  { id: 'HG405', nm: 404.66, halfWindowNm: 0.4, what: 'a mercury lamp line' },
  { id: 'HG408', nm: 407.78, halfWindowNm: 0.4, what: 'a mercury lamp line' },
  { id: 'HG436', nm: 435.83, halfWindowNm: 0.4, what: 'a mercury lamp line' },
  { id: 'TB542', nm: 542.4, halfWindowNm: 0.8, what: 'the green phosphor line of a lamp' },
  { id: 'TB544', nm: 544.4, halfWindowNm: 0.8, what: 'the green phosphor line of a lamp' },
  { id: 'HG546', nm: 546.07, halfWindowNm: 0.4, what: 'a mercury lamp line' },
  { id: 'HG577', nm: 576.96, halfWindowNm: 0.4, what: 'a mercury lamp line' },
  { id: 'HG579', nm: 579.07, halfWindowNm: 0.4, what: 'a mercury lamp line' },
  { id: 'EU611', nm: 611.5, halfWindowNm: 0.8, what: 'the red phosphor line of a lamp' },
  { id: 'CR693', nm: 692.8, halfWindowNm: 0.5, what: 'a chromium line of ruby or sapphire' },
  { id: 'CR694', nm: 694.3, halfWindowNm: 0.5, what: 'a chromium line of ruby or sapphire' },
  { id: 'CR685', nm: 685, halfWindowNm: 1, what: 'a chromium line of spinel' },
  { id: 'O2-761', nm: 760.8, halfWindowNm: 0.8, what: 'a line of daylight' },
  { id: 'PUMP808', nm: 808, halfWindowNm: 1, what: 'the pump of a 532 nm laser' },
  { id: 'LASER1064', nm: 1064, halfWindowNm: 1, what: 'the fundamental of a 532 nm laser' },
];

/** Short-wave lamp line used for the transparency test, nm. */
export const SHORT_WAVE_NM = 253.65;
