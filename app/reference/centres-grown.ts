import { defineCentre } from './define-centre.ts';
import type { OpticalCentre } from './optical-centre.ts';

const E = ['emission'] as const;
const A = ['absorption'] as const;
const EA = ['emission', 'absorption'] as const;
const COBALT = 'Lawson et al., J. Appl. Phys. 79 (1996): 1.989–2.590 eV, cobalt solvent only';
const CVD = 'Wang et al., Gems & Gemology 2003–2012 (from memory)';
const BLUE_CVD = 'Blue CVD synthetic diamond coloured by SiV and GR1 defects, J. Gems & Gemmology 25(3) (2023)';

/** Lines that speak for growth in a laboratory. */
export const GROWN_CENTRES: readonly OpticalCentre[] = [
  {
    id: 'CVD468', name: '468', model: 'unidentified, CVD growth', modes: E, coldNm: 467.7, roomNm: 468, roomWindowNm: [467, 469] as const, neededFwhmNm: 1,
    supports: 'grown-cvd' as const, strength: 'strong' as const, caution: 'removed by heating, so absence says nothing',
    source: '10 ct HPHT-treated CVD laboratory-grown diamond, Gems & Gemology Lab Notes, Summer 2022; position from memory',
  },
  {
    id: 'NI484', name: '484 (nickel)', model: 'substitutional nickel, negative', modes: E, coldNm: 484, roomWindowNm: [483, 485] as const, neededFwhmNm: 1,
    supports: 'grown-hpht' as const, strength: 'supporting' as const, caution: 'nickel-rich natural stones; weighs with 494 and 883/885', source: 'arXiv 2310.08591 (2.56 eV)',
  },
  {
    id: 'NI494', name: '494 (nickel)', model: 'substitutional nickel, negative', modes: A, coldNm: 493.9, roomWindowNm: [493, 495] as const, neededFwhmNm: 1,
    supports: 'grown-hpht' as const, strength: 'strong' as const, caution: 'needs nickel in the melt; weighs with 484 and 883/885', source: 'Nazaré, Lopes, Kanda, MRS Proc. (1994): 2.509–2.511 eV at 4 K',
  },
  {
    id: 'CVD499', name: '499.6', model: 'unidentified, CVD growth', modes: E, coldNm: 499.6, roomWindowNm: [499, 500.2] as const, neededFwhmNm: 1,
    supports: 'grown-cvd' as const, strength: 'strong' as const, caution: 'one main study; those stones also show a blue band that imitates natural type IIa',
    source: 'Anomalous green luminescent properties in CVD synthetic diamonds, phys. status solidi',
  },
  {
    id: 'CVD533', name: '533', model: 'unidentified, CVD growth', modes: E, coldNm: 533, roomWindowNm: [532.3, 534] as const, neededFwhmNm: 0.5,
    supports: 'grown-cvd' as const, strength: 'supporting' as const, caution: 'a radiation line lies at 533.6 nm, and a 532 nm laser leaks here', source: 'Zaitsev 2001; Wang et al., Gems & Gemology 2003–2012 (from memory)',
  },
  {
    id: 'CVD563', name: '562.5', model: 'unidentified, CVD growth', modes: E, coldNm: 562.6, roomWindowNm: [561.8, 563.6] as const, neededFwhmNm: 0.8,
    supports: 'grown-cvd' as const, strength: 'supporting' as const, caution: 'a cobalt line lies at 561.6 nm', source: CVD,
  },
  ...[[478.6, '479'], [523.7, '524'], [544.4, '544'], [561.6, '562'], [623.2, '623']].map(([nm, id]) => ({
    id: `CO${id}`, name: `${nm} (cobalt)`, model: 'cobalt–nitrogen complex', modes: E, coldNm: nm as number, roomWindowNm: [(nm as number) - 1, (nm as number) + 1] as const, neededFwhmNm: 0.5,
    supports: 'grown-hpht' as const, strength: 'supporting' as const, caution: 'grows in on annealing; weighs with 580.6', source: COBALT,
  })),
  {
    id: 'CO580', name: '580.6 (cobalt)', model: 'cobalt–nitrogen complex', modes: E, coldNm: 580.6, roomWindowNm: [579.6, 581.6] as const, neededFwhmNm: 0.5,
    supports: 'grown-hpht' as const, strength: 'strong' as const, caution: 'a radiation line lies at 580 nm, a deformation line at 578.8 nm', source: COBALT,
  },
  {
    id: 'CVD596', name: '596.5 (of 596/597)', model: 'unidentified doublet, CVD growth', modes: E, coldNm: 596.5, roomNm: 596.5, roomWindowNm: [595.8, 596.95] as const, neededFwhmNm: 0.35,
    supports: 'grown-cvd' as const, strength: 'strong' as const, caution: 'disappears on high-temperature treatment, so absence says nothing', source: `${BLUE_CVD}; exact position from memory`,
  },
  {
    id: 'CVD597', name: '597.2 (of 596/597)', model: 'unidentified doublet, CVD growth', modes: E, coldNm: 597.2, roomNm: 597.2, roomWindowNm: [596.9, 597.8] as const, neededFwhmNm: 0.35,
    supports: 'grown-cvd' as const, strength: 'strong' as const, caution: 'disappears on high-temperature treatment, so absence says nothing', source: `${BLUE_CVD}; exact position from memory`,
  },
  {
    id: 'SIV', name: 'SiV⁻', model: 'silicon in a split vacancy, negative', modes: EA, coldNm: 736.75, doubletNm: [736.6, 736.9] as const, roomNm: 738, roomWindowNm: [736.4, 739.2] as const,
    coldFwhmNm: 0.3, roomFwhmNm: 5.5, neededFwhmNm: 2, supports: 'grown' as const, strength: 'strong' as const, emissionSideband: [748, 782] as const,
    caution: 'known in rare natural stones (types IIa, IaAB, IaB), and in HPHT-grown as well as CVD-grown ones',
    source: 'Wang et al., GSA 2016, abstract 280126; Gems & Gemology Lab Notes, Winter 2013; Neu et al. 2013, arXiv 1210.3201',
  },
  {
    id: 'SI830', name: '830', model: 'silicon related', modes: A, coldNm: 830, roomWindowNm: [828, 832] as const,
    supports: 'grown-cvd' as const, strength: 'supporting' as const, caution: 'weak', source: BLUE_CVD,
  },
  {
    id: 'SI856', name: '856', model: 'silicon related', modes: A, coldNm: 856, roomWindowNm: [854, 858] as const,
    supports: 'grown-cvd' as const, strength: 'supporting' as const, caution: 'weak', source: BLUE_CVD,
  },
  {
    id: 'NI883', name: '883/885 (nickel)', model: 'nickel–vacancy complex, 1.40 eV', modes: EA, coldNm: 883.9, coldHalfWindowNm: 2.1, doubletNm: [883.0, 884.7] as const, roomNm: 883.9, roomWindowNm: [881.5, 886] as const,
    coldFwhmNm: 0.3, roomFwhmNm: 2.5, neededFwhmNm: 0.8, supports: 'grown-hpht' as const, strength: 'strong' as const, emissionSideband: [889, 932] as const,
    caution: 'documented in natural stones (type IIa, orange type Ia, with olivine inclusions)',
    source: 'Wang et al., GSA 2016, abstract 280126; Gems & Gemology, Winter 2017 and Spring 2024; Nazaré et al., Phys. Rev. B 43 (1991)',
  },
  {
    id: 'SIV0', name: 'SiV⁰', model: 'silicon in a split vacancy, neutral', modes: EA, coldNm: 946, roomWindowNm: [945, 947.5] as const, neededFwhmNm: 1,
    supports: 'grown-cvd' as const, strength: 'strong' as const, emissionSideband: [952, 1005] as const,
    caution: 'weak at room temperature; second-order Raman of a 785 nm laser starts here', source: "D'Haenens-Johansson et al., Phys. Rev. B 84 (2011)",
  },
].map(defineCentre);
