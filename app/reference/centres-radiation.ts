import { defineCentre } from './define-centre.ts';
import type { OpticalCentre } from './optical-centre.ts';

const E = ['emission'] as const;
const A = ['absorption'] as const;
const EA = ['emission', 'absorption'] as const;
const IRRADIATED = 'J. Gemmology 37(3) (2020) 86–88; J. Gems & Gemmology 25(3) (2023)';

/** Lines of radiation damage: they speak neither for nor against natural growth. */
export const RADIATION_CENTRES: readonly OpticalCentre[] = [
  {
    id: 'ND1', name: 'ND1', model: 'vacancy, negative', modes: A, coldNm: 393.6, roomNm: 393.8, roomWindowNm: [393, 395] as const,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'radiation in nature or in a laboratory', source: 'Davies 1977; Zaitsev 2001 (from memory)',
  },
  {
    id: 'TR12', name: 'TR12', model: 'interstitial type', modes: EA, coldNm: 470, roomNm: 470.1, roomWindowNm: [469.2, 471] as const, neededFwhmNm: 1,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'radiation; a similar line occurs in as-grown CVD films', source: "Davies, Foy, O'Donnell, J. Phys. C 14 (1981) 4153",
  },
  ...[486.3, 488.0, 488.9, 492.0, 515.8, 523.6].map((nm) => ({
    id: `RAD${Math.floor(nm)}${nm === 488.9 ? 'B' : ''}`, name: `${nm.toFixed(1)} (radiation)`, model: 'radiation product', modes: E, coldNm: nm, roomWindowNm: [nm - 0.8, nm + 0.8] as const, neededFwhmNm: 0.5,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'radiation in nature or in a laboratory', source: IRRADIATED,
  })),
  {
    id: '3H', name: '3H', model: 'self-interstitial', modes: EA, coldNm: 503.45, roomNm: 503.6, roomWindowNm: [502.8, 504.6] as const, neededFwhmNm: 0.1, yieldsTo: 'H3',
    supports: 'none' as const, strength: 'neutral' as const, caution: 'not separable from H3 at room temperature; radiation, and as-grown CVD films', source: 'Gems & Gemology Lab Notes, Winter 2013; Iakoubovskii et al.',
  },
  {
    id: 'RAD533', name: '533.6 (radiation)', model: 'radiation product', modes: E, coldNm: 533.6, roomWindowNm: [532.8, 534.4] as const, neededFwhmNm: 0.3,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'a CVD line lies at 533 nm', source: IRRADIATED,
  },
  {
    id: 'RAD580', name: '580 (radiation)', model: 'radiation product', modes: E, coldNm: 580, roomWindowNm: [579.2, 580.8] as const, neededFwhmNm: 0.3,
    supports: 'none' as const, strength: 'neutral' as const, caution: 'a cobalt line lies at 580.6 nm', source: IRRADIATED,
  },
  {
    id: '595', name: '595', model: 'radiation damage with nitrogen', modes: EA, coldNm: 594.3, roomNm: 594.4, roomWindowNm: [593.6, 595.2] as const, neededFwhmNm: 1,
    supports: 'treatment' as const, strength: 'supporting' as const, caution: 'some natural radiation; destroyed between about 700 and 1000 °C',
    source: 'Collins, Davies, Woods 1986; Wang et al., Gems & Gemology 41 (2005)',
  },
  {
    id: 'GR1', name: 'GR1', model: 'vacancy, neutral', modes: EA, coldNm: 740.9, roomNm: 741.4, roomWindowNm: [740.2, 743] as const, coldFwhmNm: 0.7, roomFwhmNm: 4, neededFwhmNm: 2,
    supports: 'none' as const, strength: 'neutral' as const, emissionSideband: [745, 870] as const, absorptionSideband: [550, 735] as const,
    caution: 'radiation in nature or in a laboratory; weak in most untreated natural type IIa', source: 'J. Spectroscopy 2018, 8153941; Gems & Gemology, Winter 2017',
  },
  {
    id: 'GR1-744', name: 'GR1 (744)', model: 'vacancy, neutral, second line', modes: EA, coldNm: 744.4, roomNm: 744.9, roomWindowNm: [744, 745.8] as const, coldFwhmNm: 0.9, roomFwhmNm: 4, neededFwhmNm: 1.5, companionOf: 'GR1',
    supports: 'none' as const, strength: 'neutral' as const, caution: 'counts only beside 741', source: 'J. Spectroscopy 2018, 8153941',
  },
].map(defineCentre);
