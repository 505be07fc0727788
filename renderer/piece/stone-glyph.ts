import { SHOWN_LATER } from '../../app/conclusions/withhold.ts';
import type { StoneSummary } from '../../app/contract/cases.ts';
import type { ConclusionId } from '../../app/domain/conclusion.ts';
import type { Mark } from '../../app/piece/mark.ts';
import { conclusionWords, isWithheld } from '../stones/conclusion-words.ts';
import { shownConclusion } from '../stones/shown-conclusion.ts';
import { STAGE_WORDS } from '../stones/stage-words.ts';

/** What a mark carries beside its number: the sign of its stone, and both in words. */
export type MarkSign = { readonly glyph: ConclusionId | null; readonly words: string };

/** A stone's conclusion in words, as far as it has come. */
export const stoneSays = (stone: StoneSummary): string =>
  (isWithheld(stone) ? [SHOWN_LATER] : [conclusionWords(stone, 'not concluded'), stone.stage === 'open' ? '' : STAGE_WORDS[stone.stage]]).filter(Boolean).join(', ');

export function markSign(mark: Mark, stones: ReadonlyMap<string, StoneSummary>): MarkSign {
  const stone = mark.stoneId === null ? undefined : stones.get(mark.stoneId);
  if (!stone) return { glyph: null, words: `Mark ${mark.number}, tied to no stone` };
  return { glyph: shownConclusion(stone), words: `Mark ${mark.number}, stone ${stone.label}: ${stoneSays(stone)}` };
}
