import type { Strength, Supports } from '../domain/finding.ts';

export type CentreMode = 'emission' | 'absorption';

/** One zero-phonon line of diamond. Wavelengths in air, nm. */
export type OpticalCentre = {
  /** Stable id, stored with every analysis. */
  readonly id: string;
  /** Name as people write it. */
  readonly name: string;
  /** What the defect is, in a few words. */
  readonly model: string;
  readonly modes: readonly CentreMode[];
  /** Position at about 77 K; the mean where the line is a doublet. */
  readonly coldNm: number;
  /** Half of the interval to accept at 77 K. */
  readonly coldHalfWindowNm: number;
  /** Position at room temperature and the interval to accept there. */
  readonly roomNm: number;
  readonly roomWindowNm: readonly [number, number];
  /** The two lines of a doublet at 77 K. */
  readonly doubletNm?: readonly [number, number];
  /** Full width at half maximum, nm, without the instrument; null where not published. */
  readonly coldFwhmNm: number | null;
  readonly roomFwhmNm: number | null;
  /** Resolution (FWHM, nm) at which the line still stands alone; coarser instruments lower its strength. */
  readonly neededFwhmNm: number | null;
  readonly supports: Supports;
  readonly strength: Strength;
  /** The commoner centre that keeps the name where the two can't be told apart. */
  readonly yieldsTo?: string;
  /** The line counts only beside this one. */
  readonly companionOf?: string;
  /** Sideband region in emission (red of the line) and in absorption (blue of it), nm. */
  readonly emissionSideband?: readonly [number, number];
  readonly absorptionSideband?: readonly [number, number];
  /** Counter-example, in a short clause. */
  readonly caution: string;
  readonly source: string;
};

/** Liquid nitrogen and room temperature: the two conditions the literature gives positions for. */
export const COLD_K = 77;
export const ROOM_K = 295;

/** 0 at 77 K and below, 1 at room temperature and above; linear in between (judgement: shifts are small below 150 K, windows cover it). */
export const warmth = (temperatureK: number): number => Math.max(0, Math.min(1, (temperatureK - COLD_K) / (ROOM_K - COLD_K)));

export type ExpectedLine = { readonly nm: number; readonly lo: number; readonly hi: number; readonly fwhmNm: number | null };

/** Position, interval to accept and width of a centre at this temperature. */
export function expectedLine(centre: OpticalCentre, temperatureK: number): ExpectedLine {
  const t = warmth(temperatureK);
  const mix = (cold: number, room: number): number => cold + (room - cold) * t;
  const { coldFwhmNm: cold, roomFwhmNm: room } = centre;
  return {
    nm: mix(centre.coldNm, centre.roomNm),
    lo: mix(centre.coldNm - centre.coldHalfWindowNm, centre.roomWindowNm[0]),
    hi: mix(centre.coldNm + centre.coldHalfWindowNm, centre.roomWindowNm[1]),
    fwhmNm: cold === null || room === null ? room ?? cold : mix(cold, room),
  };
}
