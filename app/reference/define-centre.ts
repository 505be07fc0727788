import type { OpticalCentre } from './optical-centre.ts';

type Defaulted = 'coldHalfWindowNm' | 'roomNm' | 'coldFwhmNm' | 'roomFwhmNm' | 'neededFwhmNm';
export type CentreEntry = Omit<OpticalCentre, Defaulted> & Partial<Pick<OpticalCentre, Defaulted>>;

/** Half of the interval accepted at 77 K where the entry gives none: covers scatter between papers and strain (judgement). */
const COLD_HALF_WINDOW_NM = 0.35;

/** Fills in what most entries share. Without a room position the middle of the room window stands. */
export function defineCentre(entry: CentreEntry): OpticalCentre {
  return {
    coldHalfWindowNm: COLD_HALF_WINDOW_NM,
    roomNm: 0.5 * (entry.roomWindowNm[0] + entry.roomWindowNm[1]),
    coldFwhmNm: null,
    roomFwhmNm: null,
    neededFwhmNm: null,
    ...entry,
  };
}
