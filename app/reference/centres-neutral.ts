import { defineCentre } from './define-centre.ts';
import type { OpticalCentre } from './optical-centre.ts';

const A = ['absorption'] as const;
const EA = ['emission', 'absorption'] as const;
const NV = 'Manson et al. 2013, arXiv 1301.3542';

/** Lines that occur with every origin, or speak for treatment only. */
export const NEUTRAL_CENTRES: readonly OpticalCentre[] = [
  {
    id: 'H4', name: 'H4', model: 'four nitrogen atoms with two vacancies', modes: EA, coldNm: 496, roomNm: 496.2, roomWindowNm: [495, 497] as const, coldFwhmNm: 0.6, roomFwhmNm: 3.5, neededFwhmNm: 1.5,
    supports: 'natural' as const, strength: 'supporting' as const, emissionSideband: [499, 545] as const, absorptionSideband: [460, 493] as const,
    caution: 'made by treatment as well as by nature; implies B aggregates, not an untreated stone', source: 'Gems & Gemology Lab Notes, Winter 2013; Luo & Breeding, Gems & Gemology 49 (2013)',
  },
  {
    id: 'S3', name: 'S3', model: 'nickel–nitrogen complex', modes: EA, coldNm: 496.7, roomWindowNm: [495.8, 497.6] as const, neededFwhmNm: 0.2, yieldsTo: 'H4',
    supports: 'none' as const, strength: 'neutral' as const, caution: 'overlaps H4 at room temperature', source: 'Mintrone, Phan, Chalain, Int. Gemmological Conf. 2023',
  },
  {
    id: 'H3', name: 'H3', model: 'two nitrogen atoms with a vacancy, neutral', modes: EA, coldNm: 503.2, roomNm: 503.3, roomWindowNm: [502.4, 504.4] as const, coldFwhmNm: 0.45, roomFwhmNm: 3.2, neededFwhmNm: 1.5,
    supports: 'none' as const, strength: 'neutral' as const, emissionSideband: [506, 575] as const, absorptionSideband: [455, 499] as const,
    caution: 'natural or treated; in a CVD-grown stone it points to heat treatment', source: 'Luo & Breeding, Gems & Gemology 49 (2013); Wang et al., Gems & Gemology 48(2) (2012) 80',
  },
  {
    id: 'NV0', name: 'NV⁰', model: 'nitrogen beside a vacancy, neutral', modes: EA, coldNm: 575, roomNm: 575.1, roomWindowNm: [574.2, 576.2] as const, coldFwhmNm: 0.45, roomFwhmNm: 2.7, neededFwhmNm: 1.5,
    supports: 'none' as const, strength: 'neutral' as const, emissionSideband: [579, 655] as const, absorptionSideband: [510, 571] as const,
    caution: 'occurs in natural, treated and laboratory-grown diamond', source: NV,
  },
  {
    id: 'NV-', name: 'NV⁻', model: 'nitrogen beside a vacancy, negative', modes: EA, coldNm: 637.2, roomNm: 637.4, roomWindowNm: [636.4, 638.8] as const, coldFwhmNm: 0.4, roomFwhmNm: 2.7, neededFwhmNm: 2,
    supports: 'none' as const, strength: 'neutral' as const, emissionSideband: [641, 790] as const, absorptionSideband: [500, 632] as const,
    caution: 'occurs in natural, treated and laboratory-grown diamond', source: NV,
  },
  {
    id: 'H2', name: 'H2', model: 'two nitrogen atoms with a vacancy, negative', modes: EA, coldNm: 986, roomNm: 986.2, roomWindowNm: [984.8, 987.5] as const, coldFwhmNm: 0.5, roomFwhmNm: 3.5, neededFwhmNm: 2,
    supports: 'treatment' as const, strength: 'supporting' as const, emissionSideband: [990, 1065] as const,
    caution: 'untreated natural stones with A, B and C nitrogen show it; trades with H3 under light', source: 'J. Spectroscopy 2018, 8153941; Hainschwang et al., Diamond Relat. Mater. 2006',
  },
  {
    id: 'NV1042', name: 'NV⁻ singlet', model: 'nitrogen beside a vacancy, negative', modes: EA, coldNm: 1042, roomWindowNm: [1041, 1043.5] as const,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'occurs wherever NV⁻ is strong', source: 'arXiv 1407.6244',
  },
  {
    id: 'N536', name: '536', model: 'unidentified, with 575 in absorption', modes: A, coldNm: 536, roomWindowNm: [535.3, 536.7] as const,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'with an absorption near 575 nm it is not NV⁰', source: 'Collins & Ly, J. Phys.: Condens. Matter 14 (2002) L467',
  },
].map(defineCentre);
