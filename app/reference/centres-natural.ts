import { defineCentre } from './define-centre.ts';
import type { OpticalCentre } from './optical-centre.ts';

const E = ['emission'] as const;
const A = ['absorption'] as const;
const EA = ['emission', 'absorption'] as const;
const SI_NATURAL = 'Silicon in natural type IIa and type IaB diamond, Gems & Gemology Lab Notes, Winter 2013';
const CAPE = 'Cape series as listed in gemmological handbooks; N2 at 2.596 eV from memory';
const DEFORMED = 'Fisher & Spits 2000; Lim et al. 2010 (from memory)';
const NICKEL = 'Mintrone, Phan, Chalain, Int. Gemmological Conf. 2023; Vohra et al., Phys. Rev. B 39 (1989) 5464';

/** Lines that speak for natural growth. */
export const NATURAL_CENTRES: readonly OpticalCentre[] = [
  {
    id: 'N3', name: 'N3', model: 'three nitrogen atoms around a vacancy, neutral', modes: EA, coldNm: 415.2, roomNm: 415.3, roomWindowNm: [414.2, 416.5] as const,
    coldFwhmNm: 0.45, roomFwhmNm: 3, neededFwhmNm: 2, supports: 'natural' as const, strength: 'strong' as const, emissionSideband: [417, 475] as const, absorptionSideband: [374, 412] as const,
    caution: 'laboratory-grown diamond after extreme annealing, and a natural core under a CVD layer, show it too',
    source: 'Green et al. 2017, arXiv 1702.02959; Reinitz et al., Gems & Gemology 36(2) (2000) 128; Ardon & McElhenny, Gems & Gemology, Spring 2019',
  },
  {
    id: 'N2', name: 'N2 (cape line)', model: 'forbidden transition of N3, induced by vibration', modes: A, coldNm: 477.6, roomNm: 477.6, roomWindowNm: [476.5, 479] as const,
    roomFwhmNm: 9, coldFwhmNm: 7, neededFwhmNm: 3, supports: 'natural' as const, strength: 'strong' as const,
    caution: 'same exceptions as N3: a natural core under a CVD layer, extreme annealing', source: CAPE,
  },
  ...[[423, 5], [435, 8], [452, 9], [465, 9]].map(([nm, width]) => ({
    id: `CAPE${nm}`, name: `cape line ${nm}`, model: 'vibronic companion of N3 and N2', modes: A, coldNm: nm!, roomNm: nm!, roomWindowNm: [nm! - 2, nm! + 2] as const,
    roomFwhmNm: width!, coldFwhmNm: width!, companionOf: 'N3', supports: 'natural' as const, strength: 'supporting' as const, caution: 'counts only beside N3; broad and weak', source: CAPE,
  })),
  {
    id: 'S2A', name: 'S2', model: 'nickel–nitrogen complex', modes: EA, coldNm: 489.2, roomWindowNm: [488.2, 490.2] as const, neededFwhmNm: 0.5,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'natural hydrogen- or nickel-rich stones and heat-treated HPHT-grown ones', source: 'Lawson & Kanda 1993 (from memory)',
  },
  {
    id: 'S2B', name: 'S2', model: 'nickel–nitrogen complex', modes: EA, coldNm: 491.2, roomWindowNm: [490.2, 492.2] as const, neededFwhmNm: 0.5,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'natural hydrogen- or nickel-rich stones and heat-treated HPHT-grown ones', source: 'Lawson & Kanda 1993 (from memory)',
  },
  {
    id: 'D490', name: '490.7', model: 'extended defect of plastic deformation', modes: E, coldNm: 490.7, roomWindowNm: [490, 491.4] as const, neededFwhmNm: 0.5, yieldsTo: 'S2B',
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'found in two irradiated CVD stones', source: 'J. Gemmology 37(3) (2020) 86–88',
  },
  {
    id: 'S1A', name: 'S1 503.4', model: 'unidentified, yellow luminescence', modes: E, coldNm: 503.4, roomWindowNm: [502.4, 504.4] as const, neededFwhmNm: 0.1, yieldsTo: 'H3',
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'looks like H3 and 3H', source: 'Pereira & Thomaz; Zaitsev 2001 (from memory)',
  },
  {
    id: 'S1B', name: 'S1 510.7', model: 'unidentified, yellow luminescence', modes: E, coldNm: 510.7, roomWindowNm: [509.7, 511.7] as const,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'lies on the sideband of H3', source: 'Pereira & Thomaz; Zaitsev 2001 (from memory)',
  },
  {
    id: 'B525', name: '525 band', model: 'nickel or hydrogen related', modes: A, coldNm: 525, roomWindowNm: [523, 527] as const, roomFwhmNm: 15, coldFwhmNm: 12,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'rare; CVD stones have a broad band at 520 nm', source: 'Gems & Gemology Lab Notes, Spring 2024; Caplan & Wang, GSA Connects 2022',
  },
  ...[[550.3, '550'], [554.2, '554'], [558.0, '558'], [589.8, '590'], [714.6, '715']].map(([nm, id]) => ({
    id: `NAT${id}`, name: `${nm} (natural companion)`, model: 'unidentified companion of SiV⁻ in natural stones', modes: E, coldNm: nm as number, roomWindowNm: [(nm as number) - 0.7, (nm as number) + 0.7] as const,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'weighs only when several of the family occur together', source: SI_NATURAL,
  })),
  ...[[566, '566', undefined], [569, '569', undefined], [576, '576', 'NV0'], [578.8, '579', undefined]].map(([nm, id, yieldsTo]) => ({
    id: `DEF${id}`, name: `${nm} (deformation)`, model: 'plastic deformation in type IIa', modes: E, coldNm: nm as number, roomWindowNm: [(nm as number) - 0.7, (nm as number) + 0.7] as const,
    neededFwhmNm: 0.8, ...(yieldsTo ? { yieldsTo: yieldsTo as string } : {}),
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'destroyed by HPHT treatment, so absence says nothing', source: DEFORMED,
  })),
  {
    id: 'B648', name: '648.2', model: 'boron with an interstitial', modes: E, coldNm: 648.2, roomWindowNm: [647.5, 649] as const, neededFwhmNm: 0.7,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'also in boron-doped grown stones after irradiation', source: 'Gems & Gemology Lab Notes, Fall 2023',
  },
  {
    id: 'NAT664', name: '664.3', model: 'unidentified, type IaB with SiV⁻', modes: E, coldNm: 664.3, roomWindowNm: [663.6, 665] as const,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'few stones studied', source: SI_NATURAL,
  },
  ...[[694, '694'], [700.4, '700'], [709, '709'], [711, '711']].map(([nm, id]) => ({
    id: `NI${id}`, name: `${nm} (nickel–nitrogen)`, model: 'nickel–nitrogen complex', modes: E, coldNm: nm as number, roomWindowNm: [(nm as number) - 1, (nm as number) + 1] as const,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'some heated HPHT-grown stones show the family', source: NICKEL,
  })),
  {
    id: 'NI787', name: '787 (nickel–nitrogen)', model: 'nickel–nitrogen complex', modes: E, coldNm: 787, roomWindowNm: [786, 788] as const, neededFwhmNm: 1.5,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'strong only together with 794 and 711; beside a 785 nm laser it may be stray light', source: NICKEL,
  },
  {
    id: 'NI794', name: '794 (nickel–nitrogen)', model: 'nickel–nitrogen complex', modes: E, coldNm: 793.7, roomWindowNm: [792.6, 794.8] as const, neededFwhmNm: 1.5,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'strong only together with 787 and 711', source: NICKEL,
  },
  {
    id: 'H835', name: '835 band', model: 'hydrogen related', modes: A, coldNm: 835, roomWindowNm: [825, 845] as const, roomFwhmNm: 30, coldFwhmNm: 30,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'broad; beside detector changes of the instrument', source: 'Caplan & Wang, GSA Connects 2022',
  },
  {
    id: 'H905', name: '905', model: 'hydrogen related, vibronic', modes: A, coldNm: 905, roomWindowNm: [903, 907] as const,
    supports: 'natural' as const, strength: 'supporting' as const, caution: 'hydrogen-rich stones only', source: 'Hainschwang et al., Diamond Relat. Mater. 2006',
  },
].map(defineCentre);
