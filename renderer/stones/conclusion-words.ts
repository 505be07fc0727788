import { SHOWN_LATER } from '../../app/conclusions/withhold.ts';
import type { StoneSummary } from '../../app/contract/cases.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';

type Concluded = Pick<StoneSummary, 'conclusion' | 'stage'>;

/** True where there is a conclusion that this person does not get to see yet. */
export const isWithheld = ({ conclusion, stage }: Concluded): boolean => conclusion === null && stage === 'concluded';

/** What was concluded of a stone in words; `ifOpen` where nobody has. */
export function conclusionWords(stone: Concluded, ifOpen: string): string {
  if (stone.conclusion !== null) return CONCLUSION_WORDS[stone.conclusion];
  return isWithheld(stone) ? SHOWN_LATER : ifOpen;
}
