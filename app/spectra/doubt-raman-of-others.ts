import { ramanShiftFromAir } from './convert-axis.ts';
import type { Match } from './match-centres.ts';

/** Stands for a Raman line of another material among the candidates of a line. */
export const RAMAN_OF_OTHERS = 'RAMAN-OTHER';
/** Where other materials have their first-order Raman lines, cm-1 (judgement); a Raman run also meets the two bands of graphite. */
const OTHERS_CM1 = { photoluminescence: [[90, 1300]], raman: [[90, 1400], [1500, 1650]] } as const;
/** Sidebands must be this share of their line to vouch for it, and N3 has three that show (judgement). */
const LEAST_SHARE = 0.03;
/** Centres that no other material imitates easily, and how clear they must be. */
const COMMON: readonly string[] = ['N3', 'H3', 'NV0', 'NV-', 'SIV', 'GR1', 'NI883'];
const LEAST_SNR = 10;
const sidebandsAsked = (id: string): number => (id === 'N3' ? 2 : 1);

/**
 * Without a diamond line, and in a Raman run always (a mount, a neighbour or graphite may lie in the beam), a line close to the laser may be the Raman line of another material.
 * It keeps its name only where its own sideband, or a centre of diamond farther away, vouches for it; a glass must not come out as N3.
 */
export function doubtRamanOfOthers(matches: readonly Match[], laserNm: number, method: 'photoluminescence' | 'raman'): Match[] {
  const doubtful = (match: Match): boolean => {
    const shift = ramanShiftFromAir(laserNm, match.line.position);
    return OTHERS_CM1[method].some(([from, to]) => shift >= from && shift <= to);
  };
  const diamondShows = matches.some((match) => match.centre !== null && COMMON.includes(match.centre.id) && match.line.snr >= LEAST_SNR && !doubtful(match));
  return matches.map((match) => {
    if (match.centre === null || diamondShows || !doubtful(match)) return match;
    const id = match.centre.id;
    const vouching = matches.filter((other) => other.sidebandOf === id && other.ambiguousWith.length === 0 && other.line.height > LEAST_SHARE * match.line.height).length;
    return vouching >= sidebandsAsked(id) ? match : { ...match, centre: null, expectedNm: null, ambiguousWith: [id, ...match.ambiguousWith, RAMAN_OF_OTHERS] };
  });
}
