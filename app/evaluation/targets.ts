import type { Tally } from './tally.ts';

/** What the house asks of its rules. */
export const MOST_FURTHER_TESTING = 0.05;

export type Target = { readonly asks: string; readonly met: boolean; readonly found: string };

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.001 ? 4 : 2)} %`;

/** The targets and whether a run met them. A run without a stone of the kind meets nothing. */
export function targetsOf({ falseNatural, looseNaturalIa }: Pick<Tally, 'falseNatural' | 'looseNaturalIa'>): Target[] {
  return [
    { asks: 'no laboratory-grown stone called natural', met: falseNatural.of > 0 && falseNatural.count === 0, found: `${falseNatural.count} of ${falseNatural.of}; at most ${percent(falseNatural.upperOneSided)} with 95 % confidence` },
    {
      asks: `at most ${100 * MOST_FURTHER_TESTING} % of loose natural type Ia sent to further testing with all methods, instruments in order`, met: looseNaturalIa.share !== null && looseNaturalIa.share <= MOST_FURTHER_TESTING,
      found: looseNaturalIa.share === null ? 'no such stone' : `${looseNaturalIa.count} of ${looseNaturalIa.of}, ${percent(looseNaturalIa.share)} (${percent(looseNaturalIa.low)} to ${percent(looseNaturalIa.high)})`,
    },
  ];
}
